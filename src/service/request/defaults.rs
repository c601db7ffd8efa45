//! Every default of a service file in one place, each with its ground. The sheet prints those that were used.

use crate::{
    quantity::{Duration, InvalidQuantity, Mass, Share, Temperature},
    source::{Basis, COMMON_PRACTICE, Citation, Interval, Sourced, citations::trade},
};
use serde::Serialize;

/// A default that was used because the file did not say.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DefaultUsed {
    /// The field that would replace it.
    pub field: String,
    /// The value with its unit, and its bounds if it is an estimate.
    pub value: String,
    /// What kind of ground it stands on.
    pub basis: Basis,
    /// Where it comes from, or why it was chosen.
    pub source: String,
}

/// Collects the defaults used while a request is built.
#[derive(Debug, Default)]
pub(super) struct Defaults(pub(super) Vec<DefaultUsed>);

impl Defaults {
    /// The stated value, or the default, which is then noted.
    pub(super) fn stated_or<T: Copy + std::fmt::Display>(
        &mut self,
        stated: Option<T>,
        field: &str,
        default: Sourced<T>,
        why: &str,
    ) -> Sourced<T> {
        if let Some(value) = stated {
            return Sourced::stated(value);
        }
        self.note(field, default.value.to_string(), default.basis, default.citation, why);
        default
    }

    /// Notes a default that is more than one value.
    pub(super) fn note(&mut self, field: &str, value: String, basis: Basis, citation: Option<&Citation>, why: &str) {
        let source = match citation {
            Some(citation) if why.is_empty() => citation.to_string(),
            Some(citation) => format!("{why}; {citation}"),
            None => why.to_owned(),
        };
        let used = DefaultUsed { field: field.to_owned(), value, basis, source };
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
