use super::{Titration, TitrationError};
use crate::{
    quantity::{AmountConcentration, Quantity, Volume},
    source::{Basis, Interval, TracedInput, TracedResult, citations::peroxide},
    text::traced,
};

const STRENGTH: &str = "2.5 x titrant x titre / aliquot";
const STRENGTH_DILUTED: &str = "2.5 x titrant x titre / aliquot x made up to / taken";
const TITRE: &str = "strength of the bottle x aliquot / (2.5 x titrant)";
const TITRE_DILUTED: &str = "strength of the bottle x taken / made up to x aliquot / (2.5 x titrant)";

/// How the strength of a bottle comes about from a titre: two permanganate for five peroxide. Its bounds are those of every
/// reading off at once in the worst way.
///
/// # Errors
///
/// [`TitrationError`], as of [`Titration::strength`].
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::{Titration, trace_titration}, quantity::{AmountConcentration, Volume}, source::Interval};
///
/// let ml = |value| Volume::from_ml(value).map(Interval::exact);
/// let titrant = Interval::exact(AmountConcentration::from_mol_per_l(0.02)?);
/// let found = trace_titration(&Titration { titrant, aliquot: ml(10.0)?, dilution: None }, ml(12.0)?)?;
/// assert_eq!(found.worked.as_deref(), Some("2.5 x 0.02 x 12 / 10"));
/// assert_eq!((found.value.as_str(), found.unit.as_str()), ("0.06", "mol/L"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn trace_titration(titration: &Titration, titre: Interval<Volume>) -> Result<TracedResult, TitrationError> {
    let found = titration.strength(titre)?.map(Quantity::in_unit);
    let formula = if titration.dilution.is_some() { STRENGTH_DILUTED } else { STRENGTH };
    Ok(TracedResult::new("strength of the bottle", found, AmountConcentration::UNIT, formula, Basis::Measured)
        .made_of(readings(titration).chain([traced("titre", titre).resting(Basis::Measured)]))
        .resting_on(&[peroxide::BP_SIX.id]))
}

/// How the titre to expect from a bottle comes about.
///
/// # Errors
///
/// [`TitrationError`], as of [`Titration::expected_titre`].
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::{Titration, trace_titre}, quantity::{AmountConcentration, Volume}, source::Interval};
///
/// let molar = |value| AmountConcentration::from_mol_per_l(value).map(Interval::exact);
/// let aliquot = Interval::exact(Volume::from_ml(10.0)?);
/// let found = trace_titre(&Titration { titrant: molar(0.02)?, aliquot, dilution: None }, molar(0.06)?)?;
/// assert_eq!(found.worked.as_deref(), Some("0.06 x 10 / (2.5 x 0.02)"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn trace_titre(
    titration: &Titration,
    strength: Interval<AmountConcentration>,
) -> Result<TracedResult, TitrationError> {
    let found = titration.expected_titre(strength)?.map(Quantity::in_unit);
    let formula = if titration.dilution.is_some() { TITRE_DILUTED } else { TITRE };
    Ok(TracedResult::new("titre to expect", found, Volume::UNIT, formula, Basis::Derived)
        .made_of(readings(titration).chain([traced("strength of the bottle", strength)]))
        .resting_on(&[peroxide::BP_SIX.id]))
}

/// Flask, titrant and glass: as somebody states them.
fn readings(titration: &Titration) -> impl Iterator<Item = TracedInput> {
    let Titration { titrant, aliquot, dilution } = titration;
    let first = [traced("titrant", *titrant), traced("aliquot", *aliquot)];
    let diluted = dilution.map(|by| [traced("taken", by.taken), traced("made up to", by.made_up_to)]);
    first.into_iter().chain(diluted.into_iter().flatten()).map(|input| input.resting(Basis::Stated))
}
