//! Wrappers of `foilwork::colour`: how levels and modelled colours come about.

use super::{
    level::{AnyLevel, StatedLevel},
    shade::tone_of,
    swatches::white,
};
use crate::{
    error::{FoilworkError, Shaped, Three, raise},
    source::TracedResult,
};
use foilwork::{
    colour::{self, Canvas, Scale},
    source::Sourced,
};
use pyo3::prelude::*;

/// How far hair has to go, above 0 lighter, and how that comes about.
///
/// Args:
///     natural_level: level now, or its bounds.
///     target_level: level wanted.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult`.
///
/// Raises:
///     FoilworkError: a level outside 1 to 12.
///
/// Examples:
///     >>> from foilwork.colour import trace_lift
///     >>> trace_lift(5, 9).worked
///     '9 - 5'
#[pyfunction]
pub fn trace_lift(natural_level: StatedLevel, target_level: AnyLevel) -> TracedResult {
    colour::trace_lift(Sourced::stated(natural_level.0), target_level.0).into()
}

/// How the level of a permanent shade comes about that brings hair to a level.
///
/// Args:
///     natural_level: level of the hair, or its bounds.
///     target_level: level wanted.
///     coloured: whether the hair carries artificial colour, which colour does not lighten.
///     top_level: top of the scale the shades are numbered on, 10 or 12.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult`.
///
/// Raises:
///     FoilworkError: a lift that permanent colour or the scale does not give.
///
/// Examples:
///     >>> from foilwork.colour import trace_shade_level
///     >>> trace_shade_level(6, 8).worked
///     '2 x 8 - 6'
#[pyfunction]
#[pyo3(signature = (natural_level, target_level, *, coloured = false, top_level = 10))]
pub fn trace_shade_level(
    natural_level: StatedLevel,
    target_level: AnyLevel,
    coloured: bool,
    top_level: u8,
) -> PyResult<TracedResult> {
    let canvas = if coloured { Canvas::Coloured } else { Canvas::Natural };
    let scale = match top_level {
        10 => Scale::European10,
        12 => Scale::Twelve,
        other => return Err(FoilworkError::new_err(format!("unknown top_level {other}: give 10 or 12"))),
    };
    let natural = Sourced::stated(natural_level.0);
    colour::trace_shade_level(natural, target_level.0, canvas, scale).map(Into::into).map_err(raise)
}

/// How the level comes about that a permanent shade gives on natural hair.
///
/// Args:
///     natural_level: level of the hair, or its bounds.
///     applied_level: level of the shade.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult`.
///
/// Raises:
///     FoilworkError: a level outside 1 to 12.
///
/// Examples:
///     >>> from foilwork.colour import trace_result_level
///     >>> trace_result_level(5, 9).worked
///     '(5 + 9) / 2'
#[pyfunction]
pub fn trace_result_level(natural_level: StatedLevel, applied_level: AnyLevel) -> PyResult<TracedResult> {
    colour::trace_result_level(Sourced::stated(natural_level.0), applied_level.0).map(Into::into).map_err(raise)
}

/// How the level of hair comes about that an instrument read.
///
/// Args:
///     lab: L*, a*, b* measured on the hair.
///     instrument: ``"spectrophotometer"`` or ``"calibrated-photograph"``; a plain ``"photograph"`` is refused.
///     observer_degrees: observer of the reading, 2 or 10.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult`.
///
/// Raises:
///     FoilworkError: as :func:`level_from_reading`.
///
/// Examples:
///     >>> from foilwork.colour import trace_reading
///     >>> trace_reading((22.7, 4.0, 4.8)).sources[0]
///     'hair-luster-2000'
#[pyfunction]
#[pyo3(signature = (lab, *, instrument = "spectrophotometer", observer_degrees = 10))]
pub fn trace_reading(lab: Three, instrument: &str, observer_degrees: u8) -> PyResult<TracedResult> {
    let Shaped((l, a, b)) = lab;
    let reading = colour::Lab::new(l, a, b, white(observer_degrees)?).map_err(raise)?;
    colour::trace_reading(reading, instrument.parse().map_err(raise)?).map(Into::into).map_err(raise)
}

/// Which pigment shows when natural hair is lightened to a level, and what says so.
///
/// Args:
///     target_level: the level it is lightened to.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult`.
///
/// Raises:
///     FoilworkError: a level outside 1 to 12.
///
/// Examples:
///     >>> from foilwork.colour import trace_underlying_pigment
///     >>> trace_underlying_pigment(8).basis
///     'common-practice'
#[pyfunction]
pub fn trace_underlying_pigment(target_level: AnyLevel) -> TracedResult {
    colour::trace_underlying_pigment(target_level.0).into()
}

/// How L*, a* and b* of a modelled colour come about.
///
/// Args:
///     level: level of the hair.
///     lightened_from: natural level it was lightened from; ``None`` for natural hair (or with ``tones``).
///     tones: hue words of a colour of this level, shown as on white hair.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult` for each of the three.
///
/// Raises:
///     FoilworkError: a value out of range, or ``tones`` together with ``lightened_from``.
///
/// Examples:
///     >>> from foilwork.colour import trace_swatch
///     >>> [one.what for one in trace_swatch(8, lightened_from=4)]
///     ['L*', 'a*', 'b*']
#[pyfunction]
#[pyo3(signature = (level, *, lightened_from = None, tones = None))]
pub fn trace_swatch(
    level: AnyLevel,
    lightened_from: Option<AnyLevel>,
    tones: Option<Vec<String>>,
) -> PyResult<Vec<TracedResult>> {
    if lightened_from.is_some() && tones.is_some() {
        return Err(FoilworkError::new_err("give one of tones and lightened_from: they exclude each other"));
    }
    let tone = tones.map(|words| tone_of(&words)).transpose()?;
    let found = colour::trace_swatch(level.0, lightened_from.map(|from| from.0), tone.as_ref());
    Ok(found.into_iter().map(Into::into).collect())
}
