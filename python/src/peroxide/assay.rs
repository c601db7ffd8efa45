//! Titration.

use crate::{
    bounds::Estimate,
    error::{FoilworkError, raise},
    source::TracedResult,
};
use foilwork::{
    peroxide::{self, PreDilution, Titration},
    quantity::{AmountConcentration, Quantity, Volume},
    source::Interval,
};
use pyo3::prelude::*;

/// A reading and its tolerance, a number taken as exact, or bounds found before.
#[derive(FromPyObject)]
pub enum Reading {
    Exact(f64),
    Within(f64, f64),
    Found(Estimate<f64>),
}

impl Reading {
    fn ml(&self) -> PyResult<Interval<Volume>> {
        match *self {
            Self::Exact(value) => within(value, 0.0),
            Self::Within(value, tolerance) => {
                let [value, tolerance] = [value, tolerance].map(|ml| Volume::from_ml(ml).map_err(raise));
                peroxide::read_glass(value?, tolerance?).map_err(raise)
            }
            Self::Found(Estimate(values)) => found(values),
        }
    }

    fn mol_per_l(&self) -> PyResult<Interval<AmountConcentration>> {
        match *self {
            Self::Exact(value) => within(value, 0.0),
            Self::Within(value, tolerance) => within(value, tolerance),
            Self::Found(Estimate(values)) => found(values),
        }
    }
}

fn within<Q: Quantity>(value: f64, tolerance: f64) -> PyResult<Interval<Q>> {
    found([value - tolerance, value, value + tolerance])
}

fn found<Q: Quantity>(values: [f64; 3]) -> PyResult<Interval<Q>> {
    let [low, best, high] = values.map(|value| Q::from_unit(value).map_err(raise));
    Interval::new(low?, best?, high?).map_err(raise)
}

fn titration(
    titrant: &Reading,
    aliquot: &Reading,
    taken: Option<Reading>,
    made_up_to: Option<Reading>,
) -> PyResult<Titration> {
    let dilution = match (taken, made_up_to) {
        (Some(taken), Some(mark)) => Some(PreDilution { taken: taken.ml()?, made_up_to: mark.ml()? }),
        (None, None) => None,
        _ => return Err(FoilworkError::new_err("a dilution needs both taken_ml and made_up_to_ml")),
    };
    Ok(Titration { titrant: titrant.mol_per_l()?, aliquot: aliquot.ml()?, dilution })
}

/// The strength of a bottle from a titration with permanganate in acid.
///
/// Every reading is a number, ``(value, tolerance)`` with the tolerance printed on the glass, or ``Bounds``. The bounds are what
/// follows when all readings are off at once in the worst way; an end point overrun or an old titrant is not in them.
///
/// Args:
///     titre_ml: permanganate used, in mL.
///     aliquot_ml: sample in the flask, in mL.
///     titrant_mol_per_l: concentration of the permanganate in mol/L (0.1 N is 0.02 mol/L).
///     taken_ml: taken from the bottle for a dilution, in mL, if there was one.
///     made_up_to_ml: the mark of that dilution, in mL.
///
/// Returns:
///     The strength of the bottle in mol/L with its bounds; ``convert`` puts them into other units.
///
/// Raises:
///     FoilworkError: a volume that may be zero, or a dilution that is none.
///
/// Source:
///     2 MnO4- + 5 H2O2 + 6 H+ -> 2 Mn2+ + 5 O2 + 8 H2O; British Pharmacopoeia, 1 mL of 0.02 mol/L is 1.701 mg.
///
/// Examples:
///     >>> from foilwork.peroxide import permanganate_strength
///     >>> found = permanganate_strength((12, 0.03), (10, 0.02), 0.02, taken_ml=(10, 0.02), made_up_to_ml=(100, 0.1))
///     >>> [round(x, 3) for x in found]
///     [0.596, 0.6, 0.605]
#[pyfunction]
#[pyo3(signature = (titre_ml, aliquot_ml, titrant_mol_per_l, *, taken_ml = None, made_up_to_ml = None))]
pub fn permanganate_strength(
    titre_ml: Reading,
    aliquot_ml: Reading,
    titrant_mol_per_l: Reading,
    taken_ml: Option<Reading>,
    made_up_to_ml: Option<Reading>,
) -> PyResult<Estimate<f64>> {
    let titration = titration(&titrant_mol_per_l, &aliquot_ml, taken_ml, made_up_to_ml)?;
    Ok(titration.strength(titre_ml.ml()?).map_err(raise)?.into())
}

/// The titre to expect when a bottle is titrated with permanganate in acid.
///
/// Every reading is a number, ``(value, tolerance)``, or ``Bounds``.
///
/// Args:
///     strength_mol_per_l: strength of the bottle in mol/L.
///     aliquot_ml: sample in the flask, in mL.
///     titrant_mol_per_l: concentration of the permanganate in mol/L (0.1 N is 0.02 mol/L).
///     taken_ml: taken from the bottle for a dilution, in mL, if there is one.
///     made_up_to_ml: the mark of that dilution, in mL.
///
/// Returns:
///     The titre in mL with its bounds.
///
/// Raises:
///     FoilworkError: a volume that may be zero, or a dilution that is none.
///
/// Source:
///     As for ``permanganate_strength``.
///
/// Examples:
///     >>> from foilwork.peroxide import permanganate_titre
///     >>> [round(x, 2) for x in permanganate_titre(0.6, 10, 0.02, taken_ml=10, made_up_to_ml=100)]
///     [12.0, 12.0, 12.0]
#[pyfunction]
#[pyo3(signature = (strength_mol_per_l, aliquot_ml, titrant_mol_per_l, *, taken_ml = None, made_up_to_ml = None))]
pub fn permanganate_titre(
    strength_mol_per_l: Reading,
    aliquot_ml: Reading,
    titrant_mol_per_l: Reading,
    taken_ml: Option<Reading>,
    made_up_to_ml: Option<Reading>,
) -> PyResult<Estimate<f64>> {
    let titration = titration(&titrant_mol_per_l, &aliquot_ml, taken_ml, made_up_to_ml)?;
    Ok(titration.expected_titre(strength_mol_per_l.mol_per_l()?).map_err(raise)?.into())
}

/// How the strength of a bottle comes about from a titration.
///
/// Args:
///     titre_ml: permanganate used, in mL, as of ``permanganate_strength``.
///     aliquot_ml: sample in the flask, in mL.
///     titrant_mol_per_l: concentration of the permanganate in mol/L.
///     taken_ml: taken from the bottle for a dilution, in mL, if there was one.
///     made_up_to_ml: the mark of that dilution, in mL.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult`.
///
/// Raises:
///     FoilworkError: as ``permanganate_strength``.
///
/// Examples:
///     >>> from foilwork.peroxide import trace_titration
///     >>> trace_titration((12, 0.03), (10, 0.02), 0.02).worked
///     '2.5 x 0.02 x 12 / 10'
#[pyfunction]
#[pyo3(signature = (titre_ml, aliquot_ml, titrant_mol_per_l, *, taken_ml = None, made_up_to_ml = None))]
pub fn trace_titration(
    titre_ml: Reading,
    aliquot_ml: Reading,
    titrant_mol_per_l: Reading,
    taken_ml: Option<Reading>,
    made_up_to_ml: Option<Reading>,
) -> PyResult<TracedResult> {
    let titration = titration(&titrant_mol_per_l, &aliquot_ml, taken_ml, made_up_to_ml)?;
    peroxide::trace_titration(&titration, titre_ml.ml()?).map(Into::into).map_err(raise)
}

/// How the titre to expect from a bottle comes about.
///
/// Args:
///     strength_mol_per_l: strength of the bottle in mol/L, as of ``permanganate_titre``.
///     aliquot_ml: sample in the flask, in mL.
///     titrant_mol_per_l: concentration of the permanganate in mol/L.
///     taken_ml: taken from the bottle for a dilution, in mL, if there is one.
///     made_up_to_ml: the mark of that dilution, in mL.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult`.
///
/// Raises:
///     FoilworkError: as ``permanganate_titre``.
///
/// Examples:
///     >>> from foilwork.peroxide import trace_titre
///     >>> trace_titre(0.06, 10, 0.02).worked
///     '0.06 x 10 / (2.5 x 0.02)'
#[pyfunction]
#[pyo3(signature = (strength_mol_per_l, aliquot_ml, titrant_mol_per_l, *, taken_ml = None, made_up_to_ml = None))]
pub fn trace_titre(
    strength_mol_per_l: Reading,
    aliquot_ml: Reading,
    titrant_mol_per_l: Reading,
    taken_ml: Option<Reading>,
    made_up_to_ml: Option<Reading>,
) -> PyResult<TracedResult> {
    let titration = titration(&titrant_mol_per_l, &aliquot_ml, taken_ml, made_up_to_ml)?;
    peroxide::trace_titre(&titration, strength_mol_per_l.mol_per_l()?).map(Into::into).map_err(raise)
}
