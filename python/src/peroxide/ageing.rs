//! Ageing: losses in storage.

use super::conditions::scale;
use crate::{
    columns::{Column, OnRefusal, apply_kernel},
    error::raise,
    target::How,
};
use foilwork::{
    column::{self, Cells},
    peroxide::{self, AgeingError, Strength, StrengthQuantity, StrengthUnit},
    quantity::{
        ActiveOxygen, AmountConcentration, Duration, InvalidQuantity, LossRate, MassConcentration, MassFraction,
        Molality, Normality, OxygenVolumes,
    },
    source::Interval,
};
use pyo3::prelude::*;

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
///     out: an array of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
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
    signature = (fresh, unit, rate_per_day, days, *, errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(fresh, unit, rate_per_day, days, *, errors='raise', out=None, where=None)"
)]
pub fn strength_after<'py>(
    py: Python<'py>,
    fresh: Column<'py>,
    unit: &str,
    rate_per_day: Column<'py>,
    days: Column<'py>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Bound<'py, PyAny>> {
    fn after<Q: StrengthQuantity>(fresh: f64, rate: LossRate, elapsed: Duration) -> Result<f64, AgeingError> {
        let (fresh, rate) = (Interval::exact(Q::from_unit(fresh)?), Interval::exact(rate));
        Ok(peroxide::strength_after(fresh, rate, elapsed).best().in_unit())
    }
    let unit: StrengthUnit = unit.parse().map_err(raise)?;
    let (scalar, scale) = (in_unit!(unit, after), scale(unit));
    let rule = |[fresh, rate, days]: [f64; 3]| {
        let later = scalar(fresh * scale, LossRate::from_per_day(rate)?, Duration::from_days(days)?)?;
        // There and back may be off in the last place: of what nothing is lost all is left, and never more.
        Ok::<_, AgeingError>([if later < fresh * scale { (later / scale).min(fresh) } else { fresh }])
    };
    let kernel = |[a, b, c]: [Cells<'_>; 3], [out]: [&mut [f64]; 1]| column::strengths_after(a, unit, b, c, out);
    let [found] = apply_kernel(py, [&fresh, &rate_per_day, &days], How::new(errors, out, r#where)?, rule, kernel)?;
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
///     out: an array of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
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
    signature = (first, later, unit, days, *, errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(first, later, unit, days, *, errors='raise', out=None, where=None)"
)]
pub fn loss_rate<'py>(
    py: Python<'py>,
    first: Column<'py>,
    later: Column<'py>,
    unit: &str,
    days: Column<'py>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
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
    let (scalar, scale) = (in_unit!(unit, rate), scale(unit));
    let rule = |[first, later, days]: [f64; 3]| {
        Ok::<_, AgeingError>([scalar(first * scale, later * scale, Duration::from_days(days)?)?])
    };
    let kernel = |[a, b, c]: [Cells<'_>; 3], [out]: [&mut [f64]; 1]| column::loss_rates(a, b, unit, c, out);
    let [found] = apply_kernel(py, [&first, &later, &days], How::new(errors, out, r#where)?, rule, kernel)?;
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
///     out: an array of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
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
    signature = (fresh, wanted, unit, rate_per_day, *, errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(fresh, wanted, unit, rate_per_day, *, errors='raise', out=None, where=None)"
)]
pub fn time_until<'py>(
    py: Python<'py>,
    fresh: Column<'py>,
    wanted: Column<'py>,
    unit: &str,
    rate_per_day: Column<'py>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Bound<'py, PyAny>> {
    fn time<Q: StrengthQuantity + Into<Strength>>(fresh: f64, wanted: f64, rate: LossRate) -> Result<f64, AgeingError> {
        Ok(peroxide::time_until(Interval::exact(Q::from_unit(fresh)?), Q::from_unit(wanted)?, Interval::exact(rate))?
            .best()
            .days())
    }
    let unit: StrengthUnit = unit.parse().map_err(raise)?;
    let (scalar, scale) = (in_unit!(unit, time), scale(unit));
    let rule = |[fresh, wanted, rate]: [f64; 3]| {
        Ok::<_, AgeingError>([scalar(fresh * scale, wanted * scale, LossRate::from_per_day(rate)?)?])
    };
    let kernel = |[a, b, c]: [Cells<'_>; 3], [out]: [&mut [f64]; 1]| column::times_until(a, b, unit, c, out);
    let [found] = apply_kernel(py, [&fresh, &wanted, &rate_per_day], How::new(errors, out, r#where)?, rule, kernel)?;
    Ok(found)
}

/// The loss rate of a half-life.
///
/// Args:
///     half_life_days: time in which half is lost, in days, above 0, a number or an array.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
///     out: an array of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     Loss rate per day: a float for a number, else a float64 array.
///
/// Raises:
///     FoilworkError: a half-life out of range.
///
/// Examples:
///     >>> from foilwork.peroxide import loss_rate_from_half_life
///     >>> round(loss_rate_from_half_life(0.25) / 86_400, 7)
///     3.21e-05
#[pyfunction]
#[pyo3(
    signature = (half_life_days, *, errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(half_life_days, *, errors='raise', out=None, where=None)"
)]
pub fn loss_rate_from_half_life<'py>(
    py: Python<'py>,
    half_life_days: Column<'py>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Bound<'py, PyAny>> {
    let rule =
        |[days]: [f64; 1]| Ok::<_, InvalidQuantity>([LossRate::from_half_life(Duration::from_days(days)?)?.per_day()]);
    let kernel = |[days]: [Cells<'_>; 1], [out]: [&mut [f64]; 1]| column::rates_of_half_lives(days, out);
    let [found] = apply_kernel(py, [&half_life_days], How::new(errors, out, r#where)?, rule, kernel)?;
    Ok(found)
}

/// The half-life of a loss rate.
///
/// Args:
///     rate_per_day: loss rate per day, above 0, a number or an array.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
///     out: an array of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     Time in which half is lost, in days: a float for a number, else a float64 array.
///
/// Raises:
///     FoilworkError: a rate out of range.
///
/// Examples:
///     >>> from foilwork.peroxide import half_life_days
///     >>> round(half_life_days(0.1), 2)
///     6.93
#[pyfunction]
#[pyo3(
    signature = (rate_per_day, *, errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(rate_per_day, *, errors='raise', out=None, where=None)"
)]
pub fn half_life_days<'py>(
    py: Python<'py>,
    rate_per_day: Column<'py>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Bound<'py, PyAny>> {
    let rule = |[rate]: [f64; 1]| Ok::<_, InvalidQuantity>([LossRate::from_per_day(rate)?.half_life()?.days()]);
    let kernel = |[rates]: [Cells<'_>; 1], [out]: [&mut [f64]; 1]| column::half_lives(rates, out);
    let [found] = apply_kernel(py, [&rate_per_day], How::new(errors, out, r#where)?, rule, kernel)?;
    Ok(found)
}
