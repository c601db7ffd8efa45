use super::{
    handling::{Bearing, HandlingFact},
    handling_table::HANDLING_FACTS,
};
use crate::{quantity::MassFraction, source::Interval};

/// Every fact that bears on a strength, in the order of the texts.
///
/// # Units
///
/// Strength in % w/w, with its bounds.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::handling_facts, quantity::MassFraction, source::Interval};
///
/// let twelve = Interval::exact(MassFraction::from_ww_percent(12.0)?);
/// let codes: Vec<_> = handling_facts(twelve).map(|(fact, _)| fact.code).filter(|code| !code.is_empty()).collect();
/// assert_eq!(codes, ["H318", "H302; H332", "UN 2984"]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Cited with each fact.
pub fn handling_facts(strength: Interval<MassFraction>) -> impl Iterator<Item = (&'static HandlingFact, Bearing)> {
    HANDLING_FACTS.iter().filter_map(move |fact| Some((fact, fact.bears_on(strength)?)))
}
