//! Wrappers of `foilwork::peroxide`: how a strength or a blend came about.

use super::{
    conditions::Product,
    dilution::{Strengths, parts},
    strength::units,
};
use crate::{bounds::Stated, columns::Column, error::raise, sequence::Sequence, source::TracedResult};
use foilwork::{
    peroxide::{self, Strength},
    quantity::{Mass, MassFraction},
};
use pyo3::prelude::*;

/// How a strength in another unit comes about: each step between the two units, with the constants and the density in it.
///
/// Args:
///     value: the strength in ``from_unit``.
///     from_unit: as in :func:`convert`.
///     to_unit: as in :func:`convert`.
///     temperature_c: of the solution.
///     molar_volume: how oxygen is counted, as in :func:`convert`.
///     density_g_per_ml: as measured; without it that of ``medium``.
///     medium: ``"aqueous"`` or ``"emulsion"``.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult`.
///
/// Raises:
///     FoilworkError: as :func:`convert`.
///
/// Examples:
///     >>> from foilwork.peroxide import trace_conversion
///     >>> found = trace_conversion(6, "% w/w", "% w/v")
///     >>> found.formula
///     'g/L = 10 x % w/w x density; % w/v = g/L / 10'
#[pyfunction]
#[pyo3(signature = (value, from_unit, to_unit, *, temperature_c = 20.0, molar_volume = "ideal-1atm", density_g_per_ml = None, medium = "aqueous"))]
pub fn trace_conversion(
    value: f64,
    from_unit: &str,
    to_unit: &str,
    temperature_c: f64,
    molar_volume: &str,
    density_g_per_ml: Option<f64>,
    medium: &str,
) -> PyResult<TracedResult> {
    let (from, to) = units(from_unit, to_unit)?;
    let conditions = Product::new(molar_volume, medium, density_g_per_ml)?.at_celsius(temperature_c)?;
    let strength = Strength::of(value, from).map_err(raise)?;
    peroxide::trace_conversion(strength, to, &conditions).map(Into::into).map_err(raise)
}

/// How the grams of a blend of two come about, before rounding: a stock and a diluent of 0 % w/w, or two stocks.
///
/// Args:
///     first_ww_percent: strength of the first in % w/w, or its bounds.
///     second_ww_percent: strength of the second.
///     target_ww_percent: strength wanted.
///     total_g: how much of it, in g.
///     names: what the two are called.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult` for each of the two.
///
/// Raises:
///     FoilworkError: as :func:`blend_two`.
///
/// Examples:
///     >>> from foilwork.peroxide import trace_blend
///     >>> [one.value for one in trace_blend(12, 0, 3, 60, names=("12 %", "water"))]
///     ['15', '45']
#[pyfunction]
#[pyo3(signature = (first_ww_percent, second_ww_percent, target_ww_percent, total_g, *, names = ("first".to_owned(), "second".to_owned())), text_signature = "(first_ww_percent, second_ww_percent, target_ww_percent, total_g, *, names=('first', 'second'))")]
pub fn trace_blend(
    first_ww_percent: Stated<MassFraction>,
    second_ww_percent: Stated<MassFraction>,
    target_ww_percent: Stated<MassFraction>,
    total_g: f64,
    names: (String, String),
) -> PyResult<Vec<TracedResult>> {
    let total = Mass::from_g(total_g).map_err(raise)?;
    let (one, two) = ((names.0.as_str(), first_ww_percent.0), (names.1.as_str(), second_ww_percent.0));
    let found = peroxide::trace_blend(one, two, target_ww_percent.0, total).map_err(raise)?;
    Ok(found.into_iter().map(Into::into).collect())
}

/// How the strength of what was weighed comes about.
///
/// Args:
///     names: what the parts are called.
///     strengths_ww_percent: strength of each in % w/w, a number or ``Bounds``.
///     masses_g: mass of each in g.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult`.
///
/// Raises:
///     FoilworkError: as :func:`mix_strengths`.
///
/// Examples:
///     >>> from foilwork.peroxide import trace_mixture
///     >>> trace_mixture(["12 %", "water"], [12, 0], [15, 45]).value
///     '3'
#[pyfunction]
pub fn trace_mixture(
    names: Sequence<String>,
    strengths_ww_percent: Strengths,
    masses_g: Column<'_>,
) -> PyResult<TracedResult> {
    let parts = parts(strengths_ww_percent, &masses_g)?;
    let names = names.0.iter().map(String::as_str).chain(std::iter::repeat("part"));
    let named: Vec<_> = names.zip(parts).map(|(name, (strength, mass))| ((name, strength), mass)).collect();
    peroxide::trace_mixture(&named).map(Into::into).map_err(raise)
}
