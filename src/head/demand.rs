use super::{InFoils, Profile, Technique};
use crate::{
    hair::{Tress, product},
    quantity::{Area, Duration, Length, Mass, Quantity, Share, quantity},
    source::{Basis, Interval, Sourced, citations::hair},
};
use schemars::JsonSchema;
use serde::Serialize;

quantity! {
    /// Mixture on a gram of hair.
    TakeUp: "take-up" in "g/g", key "g_per_g", from_g_per_g / g_per_g,
    0.01..=50.0, "from 0.01 to 50 g/g"
}

quantity! {
    /// Mixture on a square centimetre of scalp.
    FilmMass: "film" in "g/cm2", key "g_per_cm2", from_g_per_cm2 / g_per_cm2,
    0.0..=10.0, "from 0 to 10 g/cm2"
}

/// How much mixture a gram of hair takes up, by technique, and whether it is a lightener.
///
/// Chosen so that an average head takes what the trade uses on it: 180 g (120 to 300) of lightener for a full head of fine
/// weaves, 120 g (90 to 180) of colour on shoulder length. In a laboratory it is 1 g of liquid on 1 g of hair. Weigh what
/// is left over and enter what was used: that replaces it.
///
/// # Example
///
/// ```
/// use foilwork::head::{Technique, take_up};
///
/// assert_eq!(take_up(Technique::Weave, true).value.best().g_per_g(), 2.5);
/// ```
///
/// # Source
///
/// Assumed; citation `liquor-ratio` for the laboratory.
#[must_use]
pub fn take_up(technique: Technique, lightens: bool) -> Sourced<Interval<TakeUp>> {
    let (low, best, high) = match (technique.is_in_foil(), lightens) {
        (true, true) => (1.2, 2.5, 4.5),
        (false, true) | (true, false) => (1.0, 1.5, 2.5),
        (false, false) => (0.7, 1.0, 1.5),
    };
    let value = Interval::ordered(low, best, high).map(TakeUp::nearest);
    Sourced { value, basis: Basis::Assumed, citation: Some(&hair::LIQUOR_RATIO) }
}

/// What a mixture at the scalp leaves on it: chosen so that a regrowth takes 60 g (40 to 90) of colour, the trade's figure.
///
/// # Example
///
/// ```
/// assert_eq!(foilwork::head::film().value.best().g_per_cm2(), 0.08);
/// ```
#[must_use]
pub fn film() -> Sourced<Interval<FilmMass>> {
    Sourced::assumed(Interval::ordered(0.05, 0.08, 0.12).map(FilmMass::nearest))
}

/// Minutes for a foil from parting to closing: 1.3 (0.8 to 2.2), assumed until the user writes down their own.
///
/// # Example
///
/// ```
/// assert_eq!(foilwork::head::minutes_per_foil().value.best().min(), 1.3);
/// ```
#[must_use]
pub fn minutes_per_foil() -> Sourced<Interval<Duration>> {
    Sourced::assumed(Interval::ordered(0.8, 1.3, 2.2).map(Duration::nearest))
}

/// What a section needs.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct Demand {
    /// Hair that is covered.
    #[serde(rename = "hair_g")]
    pub hair: Interval<Mass>,
    /// Mixture on it, without spare.
    #[serde(rename = "mix_g")]
    pub mix: Interval<Mass>,
    /// Mixture for one foil, where there are foils.
    #[serde(rename = "mix_per_foil_g")]
    pub mix_per_foil: Option<Interval<Mass>>,
    /// Minutes for the foils, where there are foils.
    #[serde(rename = "apply_min")]
    pub apply: Option<Interval<Duration>>,
}

/// The grams of a section: its hair, of which `taken` is lifted, covered along the strand as the profile says, times the
/// take-up; a mixture at the scalp leaves a film on `scalp` too.
///
/// # Example
///
/// ```
/// use foilwork::{
///     hair::HairFacts, head::{Technique, demand, take_up}, quantity::{Length, Share},
/// };
///
/// let (length, technique) = (Length::from_cm(20.0)?, Technique::Weave);
/// let head = HairFacts::default().head().part(Share::ALL);
/// let weaves = demand(
///     &head, Share::from_percent(45.0)?.into(), &technique.profile(length).value, length.into(),
///     take_up(technique, true).value, None, None,
/// );
/// // The trade uses 120 to 300 g of lightener for a full head of fine weaves.
/// assert!((120.0..300.0).contains(&weaves.mix.best().g()));
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
#[must_use]
pub fn demand(
    section: &Tress,
    taken: Interval<Share>,
    profile: &Profile,
    length: Interval<Length>,
    take_up: Interval<TakeUp>,
    scalp: Option<Interval<Area>>,
    foils: Option<Interval<u32>>,
) -> Demand {
    let painted = profile.painted(length).map(Length::cm);
    let per_cm = section.mass_per_length.map(crate::hair::MassPerLength::g_per_cm);
    let hair = product(&[per_cm, taken.map(Share::fraction), painted]);
    let on_hair = product(&[hair, take_up.map(TakeUp::g_per_g)]);
    let on_scalp = scalp.map(|area| product(&[area.map(Area::cm2), film().value.map(FilmMass::g_per_cm2)]));
    let mix = on_scalp.map_or(on_hair, |film| on_hair.combine(film, |hair, film| hair + film));
    // A foil more is no gram more: the foils share out what the hair takes.
    let share_out = |count: u32| mix.map(|grams| Mass::nearest(grams / f64::from(count)));
    Demand {
        hair: hair.map(Mass::nearest),
        mix: mix.map(Mass::nearest),
        mix_per_foil: foils.filter(|foils| foils.best() > 0).map(|foils| share_out(foils.best())),
        apply: foils.map(|foils| {
            product(&[foils.map(f64::from), minutes_per_foil().value.map(Duration::min)]).map(Duration::nearest)
        }),
    }
}

impl InFoils {
    /// Minutes for these foils.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::{Layout, Panel}, quantity::Length};
    ///
    /// let panel = Panel { width: Length::from_cm(8.0)?, height: Length::from_cm(6.0)? };
    /// let foils = Layout::slice().on(panel)?;
    /// assert_eq!(foils.apply().best().min(), f64::from(foils.foils.best()) * 1.3);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn apply(&self) -> Interval<Duration> {
        let minutes = minutes_per_foil().value.map(Duration::min);
        product(&[self.foils.map(f64::from), minutes]).map(Duration::nearest)
    }
}
