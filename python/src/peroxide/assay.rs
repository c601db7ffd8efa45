//! Titration and ageing.

use super::conditions::scale;
use crate::{
    bounds::Estimate,
    columns::{Column, OnRefusal, apply},
    error::{FoilworkError, raise},
};
use foilwork::{
    peroxide::{self, AgeingError, PreDilution, Strength, StrengthQuantity, StrengthUnit, Titration},
    quantity::{
        ActiveOxygen, AmountConcentration, Duration, LossRate, MassConcentration, MassFraction, Molality, Normality,
        OxygenVolumes, Quantity, Volume,
    },
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

/// Picks the core function for the quantity type of a unit; % w/v and g/L are one type.
macro_rules! in_unit {
    ($unit:expr, $function:ident) => {
        match $unit {
            StrengthUnit::WwPercent => $function::<MassFraction>,
            StrengthUnit::WvPercent | StrengthUnit::GPerL => $function::<MassConcentration>,
            StrengthUnit::MolPerL => $function::<AmountConcentration>,
            StrengthUnit::MolPerKg => $function::<Molality>,
            StrengthUnit::EqPerL => $function::<Normality>,
            StrengthUnit::ActiveOxygenPercent => $function::<ActiveOxygen>,
            // Volumes: the one that is left.
            _ => $function::<OxygenVolumes>,
        }
    };
}

/// The strength after storage, by first-order loss at a rate that you measured.
///
/// There is no default rate: it depends on the stabiliser, the bottle, light and warmth, and holds only for the storage it
/// was measured in. ``loss_rate`` gets it from two assays.
///
/// Args:
///     fresh: strength at the start in ``unit``, a number or an array.
///     unit: one of ``strength_units()``. By mass, the oxygen that leaves the bottle is allowed for; by volume, the volume
///         is taken as unchanged.
///     rate_per_day: loss rate per day, a number or an array.
///     days: time in days, a number or an array.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
///
/// Returns:
///     Strength in ``unit``: a float for numbers, else a float64 array.
///
/// Raises:
///     FoilworkError: a value out of range.
///
/// Source:
///     First-order decay; 2 H2O2 -> 2 H2O + O2.
///
/// Examples:
///     >>> from foilwork.peroxide import loss_rate_from_half_life, strength_after
///     >>> round(strength_after(1.0, "mol/L", loss_rate_from_half_life(0.25), 0.75), 3)
///     0.125
#[pyfunction]
#[pyo3(
    signature = (fresh, unit, rate_per_day, days, *, errors = OnRefusal::Raise),
    text_signature = "(fresh, unit, rate_per_day, days, *, errors='raise')"
)]
pub fn strength_after<'py>(
    py: Python<'py>,
    fresh: Column<'py>,
    unit: &str,
    rate_per_day: Column<'py>,
    days: Column<'py>,
    errors: OnRefusal,
) -> PyResult<Bound<'py, PyAny>> {
    fn after<Q: StrengthQuantity>(fresh: f64, rate: LossRate, elapsed: Duration) -> Result<f64, AgeingError> {
        let (fresh, rate) = (Interval::exact(Q::from_unit(fresh)?), Interval::exact(rate));
        Ok(peroxide::strength_after(fresh, rate, elapsed).best().in_unit())
    }
    let unit: StrengthUnit = unit.parse().map_err(raise)?;
    let (rule, scale) = (in_unit!(unit, after), scale(unit));
    let [found] = apply(py, [&fresh, &rate_per_day, &days], errors, |[fresh, rate, days]| {
        Ok::<_, AgeingError>([rule(fresh * scale, LossRate::from_per_day(rate)?, Duration::from_days(days)?)? / scale])
    })?;
    Ok(found)
}

/// The rate of loss between two assays of one bottle.
///
/// Args:
///     first: first strength in ``unit``, a number or an array.
///     later: later strength in the same unit, a number or an array.
///     unit: one of ``strength_units()``.
///     days: time between them in days, a number or an array.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
///
/// Returns:
///     Loss rate per day: a float for numbers, else a float64 array.
///
/// Raises:
///     FoilworkError: a strength that rose, a zero, or a value out of range.
///
/// Source:
///     First-order decay.
///
/// Examples:
///     >>> from foilwork.peroxide import loss_rate
///     >>> round(loss_rate(6.0, 5.7, "% w/w", 90), 6)
///     0.000586
#[pyfunction]
#[pyo3(
    signature = (first, later, unit, days, *, errors = OnRefusal::Raise),
    text_signature = "(first, later, unit, days, *, errors='raise')"
)]
pub fn loss_rate<'py>(
    py: Python<'py>,
    first: Column<'py>,
    later: Column<'py>,
    unit: &str,
    days: Column<'py>,
    errors: OnRefusal,
) -> PyResult<Bound<'py, PyAny>> {
    fn rate<Q: StrengthQuantity + Into<Strength>>(
        first: f64,
        later: f64,
        elapsed: Duration,
    ) -> Result<f64, AgeingError> {
        let [first, later] = [Q::from_unit(first)?, Q::from_unit(later)?].map(Interval::exact);
        Ok(peroxide::loss_rate(first, later, elapsed)?.best().per_day())
    }
    let unit: StrengthUnit = unit.parse().map_err(raise)?;
    let (rule, scale) = (in_unit!(unit, rate), scale(unit));
    let [found] = apply(py, [&first, &later, &days], errors, |[first, later, days]| {
        Ok::<_, AgeingError>([rule(first * scale, later * scale, Duration::from_days(days)?)?])
    })?;
    Ok(found)
}

/// How long until a bottle has fallen to a strength, in days.
///
/// Args:
///     fresh: strength now in ``unit``, a number or an array.
///     wanted: strength to wait for in the same unit, a number or an array.
///     unit: one of ``strength_units()``.
///     rate_per_day: loss rate per day, a number or an array.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
///
/// Returns:
///     Days: a float for numbers, else a float64 array.
///
/// Raises:
///     FoilworkError: a bottle that is below already, a zero rate, or a value out of range.
///
/// Source:
///     First-order decay.
///
/// Examples:
///     >>> from foilwork.peroxide import time_until
///     >>> round(time_until(1.0, 0.2, "mol/L", 0.1), 2)
///     16.09
#[pyfunction]
#[pyo3(
    signature = (fresh, wanted, unit, rate_per_day, *, errors = OnRefusal::Raise),
    text_signature = "(fresh, wanted, unit, rate_per_day, *, errors='raise')"
)]
pub fn time_until<'py>(
    py: Python<'py>,
    fresh: Column<'py>,
    wanted: Column<'py>,
    unit: &str,
    rate_per_day: Column<'py>,
    errors: OnRefusal,
) -> PyResult<Bound<'py, PyAny>> {
    fn time<Q: StrengthQuantity + Into<Strength>>(fresh: f64, wanted: f64, rate: LossRate) -> Result<f64, AgeingError> {
        Ok(peroxide::time_until(Interval::exact(Q::from_unit(fresh)?), Q::from_unit(wanted)?, Interval::exact(rate))?
            .best()
            .days())
    }
    let unit: StrengthUnit = unit.parse().map_err(raise)?;
    let (rule, scale) = (in_unit!(unit, time), scale(unit));
    let [found] = apply(py, [&fresh, &wanted, &rate_per_day], errors, |[fresh, wanted, rate]| {
        Ok::<_, AgeingError>([rule(fresh * scale, wanted * scale, LossRate::from_per_day(rate)?)?])
    })?;
    Ok(found)
}

/// The loss rate of a half-life.
///
/// Args:
///     half_life_days: time in which half is lost, in days, above 0.
///
/// Returns:
///     Loss rate per day.
///
/// Raises:
///     FoilworkError: a half-life out of range.
///
/// Examples:
///     >>> from foilwork.peroxide import loss_rate_from_half_life
///     >>> round(loss_rate_from_half_life(0.25) / 86_400, 7)
///     3.21e-05
#[pyfunction]
pub fn loss_rate_from_half_life(half_life_days: f64) -> PyResult<f64> {
    let half_life = Duration::from_days(half_life_days).map_err(raise)?;
    Ok(LossRate::from_half_life(half_life).map_err(raise)?.per_day())
}

/// The half-life of a loss rate.
///
/// Args:
///     rate_per_day: loss rate per day, above 0.
///
/// Returns:
///     Time in which half is lost, in days.
///
/// Raises:
///     FoilworkError: a rate out of range.
///
/// Examples:
///     >>> from foilwork.peroxide import half_life_days
///     >>> round(half_life_days(0.1), 2)
///     6.93
#[pyfunction]
pub fn half_life_days(rate_per_day: f64) -> PyResult<f64> {
    Ok(LossRate::from_per_day(rate_per_day).and_then(LossRate::half_life).map_err(raise)?.days())
}
