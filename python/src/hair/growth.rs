//! Wrappers of `foilwork::hair`: weeks and centimetres.

use crate::{
    bounds::{Estimate, Stated},
    columns::{BoundedColumn, OnRefusal, apply_kernel},
    error::raise,
    target::How,
};
use foilwork::{
    column::{self, Cells, ColumnError, ColumnOutcome},
    hair::{self, GrowthRate, Weeks},
    quantity::{InvalidQuantity, Length, Quantity},
    source::Interval,
};
use pyo3::prelude::*;

/// The rate that was given, or that of a group, or that of all people.
pub fn rate_of(rate: Option<Stated<GrowthRate>>) -> Interval<GrowthRate> {
    rate.map_or_else(|| hair::growth(None).value, |rate| rate.0)
}

/// How fast scalp hair grows, in cm a month of 30.44 days.
///
/// Args:
///     group: a group whose mean is published: ``"african"``, ``"asian"`` or ``"european"``; without it the bounds of all.
///
/// Returns:
///     ``Bounds``, which hold 80 of 100 people.
///
/// Raises:
///     FoilworkError: another word.
///
/// Source:
///     ``"growth-by-group"``, ``"growth-review"``.
///
/// Examples:
///     >>> from foilwork.hair import growth
///     >>> round(growth("european").best, 2)
///     1.12
#[pyfunction]
#[pyo3(signature = (group = None))]
pub fn growth(group: Option<&str>) -> PyResult<Estimate<f64>> {
    let group = group.map(str::parse).transpose().map_err(raise)?;
    Ok(hair::growth(group).value.into())
}

/// The regrowth after some weeks, in cm.
///
/// Args:
///     weeks: how many weeks, or their bounds, or an array.
///     rate_cm_per_month: how fast it grows, with bounds or as an array likewise; without it as people do.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
///     out: a tuple of three arrays of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     ``Bounds`` in cm: floats, or float64 arrays where an array came in.
///
/// Raises:
///     FoilworkError: a value out of range.
///
/// Examples:
///     >>> from foilwork.hair import grown
///     >>> round(grown(8, 1.12).best, 2)
///     2.06
#[pyfunction]
#[pyo3(
    signature = (weeks, rate_cm_per_month = None, *, errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(weeks, rate_cm_per_month=None, *, errors='raise', out=None, where=None)"
)]
#[expect(clippy::needless_pass_by_value, reason = "extracted from Python")]
pub fn grown<'py>(
    py: Python<'py>,
    weeks: BoundedColumn<'py, Weeks>,
    rate_cm_per_month: Option<BoundedColumn<'py, GrowthRate>>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Estimate<Bound<'py, PyAny>>> {
    let rule = |weeks, rate| hair::grown(weeks, rate).to_array().map(Length::cm);
    at_rates(py, &weeks, rate_cm_per_month, How::new(errors, out, r#where)?, rule, column::regrowths)
}

/// The weeks after which so much has grown.
///
/// Args:
///     length_cm: the regrowth, or its bounds, or an array.
///     rate_cm_per_month: how fast it grows, with bounds or as an array likewise; without it as people do.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
///     out: a tuple of three arrays of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     ``Bounds`` in weeks: floats, or float64 arrays where an array came in.
///
/// Raises:
///     FoilworkError: a value out of range.
///
/// Examples:
///     >>> from foilwork.hair import weeks_to_grow
///     >>> round(weeks_to_grow(2, 1.12).best, 1)
///     7.8
#[pyfunction]
#[pyo3(
    signature = (length_cm, rate_cm_per_month = None, *, errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(length_cm, rate_cm_per_month=None, *, errors='raise', out=None, where=None)"
)]
#[expect(clippy::needless_pass_by_value, reason = "extracted from Python")]
pub fn weeks_to_grow<'py>(
    py: Python<'py>,
    length_cm: BoundedColumn<'py, Length>,
    rate_cm_per_month: Option<BoundedColumn<'py, GrowthRate>>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Estimate<Bound<'py, PyAny>>> {
    let rule = |length, rate| hair::weeks_to_grow(length, rate).to_array().map(Weeks::weeks);
    at_rates(py, &length_cm, rate_cm_per_month, How::new(errors, out, r#where)?, rule, column::growth_times)
}

/// Low, best and high of one thing and of the rates in, the same of the answer out.
type Kernel = fn([Cells<'_>; 3], [Cells<'_>; 3], [&mut [f64]; 3]) -> Result<ColumnOutcome, ColumnError>;

/// What a kernel makes of columns and the rates of growth beside them.
fn at_rates<'py, Q: Quantity>(
    py: Python<'py>,
    column: &BoundedColumn<'py, Q>,
    rate: Option<BoundedColumn<'py, GrowthRate>>,
    how: How<'py>,
    rule: impl Fn(Interval<Q>, Interval<GrowthRate>) -> [f64; 3],
    kernel: Kernel,
) -> PyResult<Estimate<Bound<'py, PyAny>>> {
    let rate = rate.unwrap_or_else(|| rate_of(None).into());
    let ([a, b, c], [d, e, f]) = (column.columns(), rate.columns());
    let rule = |[a, b, c, d, e, f]: [f64; 6]| {
        let one = Interval::ordered(Q::from_unit(a)?, Q::from_unit(b)?, Q::from_unit(c)?);
        let [low, best, high] = [d, e, f].map(GrowthRate::from_cm_per_month);
        Ok::<_, InvalidQuantity>(rule(one, Interval::ordered(low?, best?, high?)))
    };
    let kernel = |[a, b, c, d, e, f]: [Cells<'_>; 6], out: [&mut [f64]; 3]| kernel([a, b, c], [d, e, f], out);
    Ok(Estimate(apply_kernel(py, [a, b, c, d, e, f], how, rule, kernel)?))
}

/// How far from the scalp its warmth speeds up a mixture, in cm.
///
/// Returns:
///     ``Bounds``, assumed: training texts name the warm band and no length was found.
///
/// Examples:
///     >>> from foilwork.hair import warm_band
///     >>> warm_band()
///     Bounds(low=0.5, best=1.0, high=1.5)
#[pyfunction]
pub fn warm_band() -> Estimate<f64> {
    hair::warm_band().value.into()
}
