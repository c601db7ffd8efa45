//! Wrappers of `foilwork::hair`: weeks and centimetres.

use crate::{
    bounds::{Estimate, Stated},
    error::raise,
};
use foilwork::{
    hair::{self, GrowthRate, Weeks},
    quantity::Length,
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
///     weeks: how many weeks, or their bounds.
///     rate_cm_per_month: how fast it grows; without it as people do.
///
/// Returns:
///     ``Bounds`` in cm.
///
/// Raises:
///     FoilworkError: a value out of range.
///
/// Examples:
///     >>> from foilwork.hair import grown
///     >>> round(grown(8, 1.12).best, 2)
///     2.06
#[pyfunction]
#[pyo3(signature = (weeks, rate_cm_per_month = None))]
pub fn grown(weeks: Stated<Weeks>, rate_cm_per_month: Option<Stated<GrowthRate>>) -> Estimate<f64> {
    hair::grown(weeks.0, rate_of(rate_cm_per_month)).into()
}

/// The weeks after which so much has grown.
///
/// Args:
///     length_cm: the regrowth, or its bounds.
///     rate_cm_per_month: how fast it grows; without it as people do.
///
/// Returns:
///     ``Bounds`` in weeks.
///
/// Raises:
///     FoilworkError: a value out of range.
///
/// Examples:
///     >>> from foilwork.hair import weeks_to_grow
///     >>> round(weeks_to_grow(2, 1.12).best, 1)
///     7.8
#[pyfunction]
#[pyo3(signature = (length_cm, rate_cm_per_month = None))]
pub fn weeks_to_grow(length_cm: Stated<Length>, rate_cm_per_month: Option<Stated<GrowthRate>>) -> Estimate<f64> {
    hair::weeks_to_grow(length_cm.0, rate_of(rate_cm_per_month)).into()
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
