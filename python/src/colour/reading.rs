//! Wrappers of `foilwork::colour`: levels from an instrument, and levels of blends.

use super::{
    level::{AnyLevel, product_of},
    swatches::white,
};
use crate::{
    answer::answer,
    bounds::Estimate,
    columns::{Column, OnRefusal, apply_kernel},
    error::{Shaped, Three, raise},
    sequence::Sequence,
    target::How,
};
use foilwork::{
    colour::{self, Scale, ScaleError, ScaleMapping, ScaleReading},
    column::{self, Cells},
    quantity::{Mass, Share},
    source::Basis,
};
use pyo3::prelude::*;

/// The level whose natural hair is as light as an instrument reads.
///
/// Args:
///     lab: L*, a*, b* measured on the hair.
///     instrument: ``"spectrophotometer"`` or ``"calibrated-photograph"``; a plain ``"photograph"`` is refused.
///     observer_degrees: observer of the reading, 2 or 10.
///
/// Returns:
///     The level with its bounds: the spread of repeated readings and of the model.
///
/// Raises:
///     FoilworkError: a photograph, or a lightness that no level has.
///
/// Source:
///     Measurement of hair luster, J. Cosmet. Sci. 51(5):293, 2000, for the spread of readings.
///
/// Examples:
///     >>> from foilwork.colour import level_from_reading
///     >>> level = level_from_reading((22.7, 4.0, 4.8))
///     >>> level.low < 3 < level.high
///     True
#[pyfunction]
#[pyo3(signature = (lab, *, instrument = "spectrophotometer", observer_degrees = 10))]
pub fn level_from_reading(lab: Three, instrument: &str, observer_degrees: u8) -> PyResult<Estimate<f64>> {
    let Shaped((l, a, b)) = lab;
    let reading = colour::Lab::new(l, a, b, white(observer_degrees)?).map_err(raise)?;
    let level = colour::level_from_reading(reading, instrument.parse().map_err(raise)?).map_err(raise)?.value;
    Ok(Estimate::by(level, colour::Level::number))
}

/// The level that a reading on another scale stands for: straight lines between stated anchors, nothing beyond them.
///
/// Args:
///     reading: the number read on the scale, or an array.
///     scale: ``"japanese-20"``, ``"us-10"``, ``"european-10"`` or ``"twelve"``.
///     anchors: (reading, level) pairs of your own, both rising; without them the Japanese scale is mapped through the
///         underlying pigment that is printed for both.
///     uncertainty_levels: how far off your anchors may be, in levels.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
///     out: a tuple of three arrays of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     The level with its bounds: floats for a number, else float64 arrays.
///
/// Raises:
///     FoilworkError: a reading off its scale or beyond the anchors, anchors that do not rise, or a scale without any.
///
/// Source:
///     Your anchors, or assumed within one level.
///
/// Examples:
///     >>> from foilwork.colour import level_on_scale
///     >>> level_on_scale(9.5, scale="japanese-20")
///     Bounds(low=6.0, best=7.0, high=8.0)
#[pyfunction]
#[pyo3(
    signature = (reading, *, scale, anchors = None, uncertainty_levels = 0.5, errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(reading, *, scale, anchors=None, uncertainty_levels=0.5, errors='raise', out=None, where=None)"
)]
#[expect(clippy::too_many_arguments, reason = "the keywords of a column")]
pub fn level_on_scale<'py>(
    py: Python<'py>,
    reading: Column<'py>,
    scale: &str,
    anchors: Option<Sequence<(f64, AnyLevel)>>,
    uncertainty_levels: f64,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Estimate<Bound<'py, PyAny>>> {
    let scale: Scale = scale.parse().map_err(raise)?;
    let mapping = match anchors {
        None => ScaleMapping::japanese_by_underlying_pigment(),
        Some(anchors) => {
            let anchor = |(number, level): &(f64, AnyLevel)| Ok((ScaleReading::new(scale, *number)?, level.0));
            let anchors = anchors.0.iter().map(anchor).collect::<Result<Vec<_>, ScaleError>>().map_err(raise)?;
            ScaleMapping::new(&anchors, uncertainty_levels, Basis::Stated).map_err(raise)?
        }
    };
    let rule = |[reading]: [f64; 1]| {
        let found = mapping.level(ScaleReading::new(scale, reading)?)?;
        Ok::<_, ScaleError>(found.level.to_array().map(colour::Level::number))
    };
    let kernel =
        |[readings]: [Cells<'_>; 1], out: [&mut [f64]; 3]| column::levels_on_scale(readings, scale, &mapping, out);
    Ok(Estimate(apply_kernel(py, [&reading], How::new(errors, out, r#where)?, rule, kernel)?))
}

answer! {
    in "foilwork.colour";
    /// What a permanent shade gives on hair that is white in part; made by ``white_blend``.
    WhiteBlend {
        /// Share of white hair, in percent.
        white_percent: f64,
        /// The level of the white hair: that of the shade.
        white_part_level: f64,
        /// The level of the other hair: the mean of its own and the shade's.
        pigmented_part_level: f64,
    }
}

/// The two levels that a permanent shade gives on hair that is white in part.
///
/// Args:
///     natural_level: natural level of the hair that is not white.
///     applied_level: level of the shade.
///     white_percent: share of white hair, from 0 to 100 %.
///     product: ``"permanent"``; every other product is refused with the reason.
///
/// Returns:
///     A ``WhiteBlend``: white hair takes the shade's own level.
///
/// Raises:
///     FoilworkError: another product, or a value out of range.
///
/// Source:
///     As ``result_level``.
///
/// Examples:
///     >>> from foilwork.colour import white_blend
///     >>> blend = white_blend(4, 8, 30)
///     >>> blend.white_part_level, blend.pigmented_part_level
///     (8.0, 6.0)
#[pyfunction]
#[pyo3(signature = (natural_level, applied_level, white_percent, *, product = "permanent"))]
pub fn white_blend(
    natural_level: AnyLevel,
    applied_level: AnyLevel,
    white_percent: f64,
    product: &str,
) -> PyResult<WhiteBlend> {
    let white = Share::from_percent(white_percent).map_err(raise)?;
    let blend = colour::white_blend(natural_level.0, applied_level.0, white, product_of(product)?).map_err(raise)?;
    Ok(WhiteBlend {
        white_percent: blend.value.white.percent(),
        white_part_level: blend.value.white_part.number(),
        pigmented_part_level: blend.value.pigmented_part.number(),
    })
}

/// The level of shades mixed in a bowl: the mean of their levels by mass.
///
/// Args:
///     parts: (level, mass in g) of each shade.
///
/// Returns:
///     The level of the mix.
///
/// Raises:
///     FoilworkError: no mass at all, or a value out of range.
///
/// Source:
///     Common practice.
///
/// Examples:
///     >>> from foilwork.colour import blended_level
///     >>> blended_level([(6, 30), (8, 10)])
///     6.5
#[pyfunction]
pub fn blended_level(parts: Sequence<(AnyLevel, f64)>) -> PyResult<f64> {
    let parts = parts.0;
    let part = |(level, mass): (AnyLevel, f64)| Ok((level.0, Mass::from_g(mass).map_err(raise)?));
    let parts = parts.into_iter().map(part).collect::<PyResult<Vec<_>>>()?;
    Ok(colour::blended_level(parts).map_err(raise)?.value.number())
}
