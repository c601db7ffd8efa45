//! Every default of a service file in one place, each with its basis. The sheet prints those that were used.

use crate::{
    colour::LevelChange,
    finding::Reason,
    lift::Cover,
    quantity::{Duration, InvalidQuantity, Length, Mass, Share, Temperature},
    shop::CountsFrom,
    source::{Basis, COMMON_PRACTICE, Citation, Interval, Sourced, citations::trade},
    text::range,
};
use schemars::JsonSchema;
use serde::Serialize;

/// A default that was used because the file did not say.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct DefaultUsed {
    /// The field that would replace it.
    pub field: String,
    /// The value, and its bounds if it is an estimate.
    pub value: DefaultValue,
    /// What kind of basis it has.
    pub basis: Basis,
    /// Why it was chosen, and where it comes from.
    pub sources: Vec<Reason>,
}

/// The value of a default.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub enum DefaultValue {
    /// A mass.
    #[serde(rename = "mass_g")]
    Mass(Mass),
    /// An amount of mix, estimated.
    #[serde(rename = "estimate_g")]
    Estimate(Interval<Mass>),
    /// A share of the hair, estimated.
    #[serde(rename = "share_percent")]
    Share(Interval<Share>),
    /// A length along the strand, estimated.
    #[serde(rename = "length_cm")]
    Length(Interval<Length>),
    /// A time.
    #[serde(rename = "time_min")]
    Time(Duration),
    /// A time, estimated.
    #[serde(rename = "estimate_min")]
    Minutes(Interval<Duration>),
    /// A temperature.
    #[serde(rename = "temperature_c")]
    Temperature(Temperature),
    /// A number of pieces.
    #[serde(rename = "pieces")]
    Pieces(u32),
    /// Steps of the level scale.
    #[serde(rename = "levels")]
    Levels(LevelChange),
    /// What lies over a mix.
    #[serde(rename = "cover")]
    Cover(Cover),
    /// Yes or no.
    #[serde(rename = "yes")]
    Yes(bool),
    /// From when a time limit counts.
    #[serde(rename = "counts_from")]
    CountsFrom(CountsFrom),
}

impl std::fmt::Display for DefaultValue {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Mass(mass) => mass.fmt(f),
            Self::Estimate(mass) => write!(f, "{:.0} ({:.0} to {:.0})", mass.best(), mass.low(), mass.high()),
            Self::Share(share) => write!(f, "{} %", range(share, 0)),
            Self::Length(length) => write!(f, "{} cm", range(length, 1)),
            Self::Time(time) => time.fmt(f),
            Self::Minutes(time) if time.is_exact() => time.best().fmt(f),
            Self::Minutes(time) => write!(f, "{:.0} ({:.0} to {:.0})", time.best(), time.low(), time.high()),
            Self::Temperature(temperature) => temperature.fmt(f),
            Self::Pieces(pieces) => pieces.fmt(f),
            Self::Levels(levels) => write!(f, "{} levels", levels.levels()),
            Self::Cover(cover) => cover.fmt(f),
            Self::Yes(yes) => yes.fmt(f),
            Self::CountsFrom(from) => from.fmt(f),
        }
    }
}

impl From<Mass> for DefaultValue {
    fn from(mass: Mass) -> Self {
        Self::Mass(mass)
    }
}

impl From<Duration> for DefaultValue {
    fn from(time: Duration) -> Self {
        Self::Time(time)
    }
}

impl From<LevelChange> for DefaultValue {
    fn from(levels: LevelChange) -> Self {
        Self::Levels(levels)
    }
}

impl From<Temperature> for DefaultValue {
    fn from(temperature: Temperature) -> Self {
        Self::Temperature(temperature)
    }
}

impl From<Cover> for DefaultValue {
    fn from(cover: Cover) -> Self {
        Self::Cover(cover)
    }
}

/// Collects the defaults used while a request is built.
#[derive(Debug, Default)]
pub(super) struct Defaults(pub(super) Vec<DefaultUsed>);

impl Defaults {
    /// The stated value, or the default, which is then noted.
    pub(super) fn stated_or<T: Copy + Into<DefaultValue>>(
        &mut self,
        stated: Option<T>,
        field: &str,
        default: Sourced<T>,
        why: &'static str,
    ) -> Sourced<T> {
        if let Some(value) = stated {
            return Sourced::stated(value);
        }
        self.note(field, default.value.into(), default.basis, default.citation, why);
        default
    }

    /// Notes a default that is more than one value.
    pub(super) fn note(
        &mut self,
        field: &str,
        value: DefaultValue,
        basis: Basis,
        citation: Option<&Citation>,
        why: &'static str,
    ) {
        let sources = [Reason::stated(why)].into_iter().chain(citation.map(Reason::from)).collect();
        let used = DefaultUsed { field: field.to_owned(), value, basis, sources };
        // Several sections may fall back on the same default: say it once.
        if !self.0.contains(&used) {
            self.0.push(used);
        }
    }
}

/// A kitchen or salon scale that shows whole grams.
pub(super) fn scale_division() -> Result<Sourced<Mass>, InvalidQuantity> {
    Ok(Sourced::assumed(Mass::from_g(1.0)?))
}

/// What an ordinary tint bowl takes without slopping.
pub(super) fn bowl_capacity() -> Result<Sourced<Mass>, InvalidQuantity> {
    Ok(Sourced::assumed(Mass::from_g(120.0)?))
}

/// How long a mixed bowl is worked with.
///
/// Published pages call powder lightener most active in its first 10 to 15 min and spent after 50 min; 30 min lies
/// between and is assumed until the product's leaflet is entered.
pub(super) fn working_life() -> Result<Sourced<Duration>, InvalidQuantity> {
    Ok(Sourced { value: Duration::from_min(30.0)?, basis: Basis::Assumed, citation: Some(&trade::LIGHTENER_ACTIVITY) })
}

/// An ordinary heated room.
pub(super) fn room() -> Result<Sourced<Temperature>, InvalidQuantity> {
    Ok(Sourced::assumed(Temperature::REFERENCE))
}

/// How far apart sections may reach their targets that finish together.
pub(super) fn window() -> Result<Sourced<Duration>, InvalidQuantity> {
    Ok(Sourced::assumed(Duration::from_min(10.0)?))
}

/// How far a target may be overshot.
pub(super) fn tolerance() -> Result<Sourced<LevelChange>, InvalidQuantity> {
    Ok(Sourced::assumed(LevelChange::from_levels(0.5)?))
}

/// Application time of a toner or root shadow that does not state it.
pub(super) fn toner_application() -> Result<Sourced<Duration>, InvalidQuantity> {
    Ok(Sourced::assumed(Duration::from_min(5.0)?))
}

/// Mix for a share of the head where the file gives none: the full-head amount of the trade, times the share.
///
/// Common practice: lightener for a full head of fine weaves 180 g (120 to 300 g); colour for a full head of
/// shoulder length 120 g (90 to 180 g); regrowth 60 g (40 to 90 g). Long, dense or fine hair takes more or less, hence
/// the wide bounds; weigh what is left over and enter `mix_g` next time.
pub(super) fn mix(
    share: Share,
    lightens: bool,
    regrowth: bool,
) -> Result<Sourced<Interval<Mass>>, Box<dyn std::error::Error>> {
    let (low, best, high) = match (lightens, regrowth) {
        (true, _) => (120.0, 180.0, 300.0),
        (false, true) => (40.0, 60.0, 90.0),
        (false, false) => (90.0, 120.0, 180.0),
    };
    // A regrowth amount is for the whole regrowth; the share is then of the hair that has any.
    let part = |full: f64| Mass::from_g(full * share.fraction());
    Ok(Sourced {
        value: Interval::new(part(low)?, part(best)?, part(high)?)?,
        basis: Basis::CommonPractice,
        citation: Some(&COMMON_PRACTICE),
    })
}
