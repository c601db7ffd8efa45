//! Two parts stirred together, over columns.

use crate::{
    columns::{Column, OnRefusal, apply_kernel},
    target::How,
};
use foilwork::{
    column::{self, Cells},
    peroxide::{self, BlendError},
    quantity::{Mass, MassFraction},
};
use pyo3::prelude::*;

/// Strength of two parts stirred together, by mass: a product and its developer, say.
///
/// Args:
///     first_ww_percent: strength of the first part in % w/w, a number or an array; 0 for what has no peroxide.
///     first_g: its mass in g, a number or an array.
///     second_ww_percent: strength of the second part in % w/w, a number or an array.
///     second_g: its mass in g, a number or an array.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
///     out: an array of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     Strength in % w/w: a float for numbers, else a float64 array. ``mix_strengths`` takes more parts, and bounds.
///
/// Raises:
///     FoilworkError: no mass at all, or a value out of range.
///
/// Source:
///     Conservation of mass and of peroxide.
///
/// Examples:
///     >>> from foilwork.peroxide import mix_two
///     >>> mix_two(0, 30, [6, 9], 60).tolist()
///     [4.0, 6.0]
#[pyfunction]
#[pyo3(
    signature = (first_ww_percent, first_g, second_ww_percent, second_g, *, errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(first_ww_percent, first_g, second_ww_percent, second_g, *, errors='raise', out=None, where=None)"
)]
pub fn mix_two<'py>(
    py: Python<'py>,
    first_ww_percent: Column<'py>,
    first_g: Column<'py>,
    second_ww_percent: Column<'py>,
    second_g: Column<'py>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Bound<'py, PyAny>> {
    let rule = |[first, first_g, second, second_g]: [f64; 4]| {
        let part = |percent, g| Ok::<_, BlendError>((MassFraction::from_ww_percent(percent)?, Mass::from_g(g)?));
        Ok::<_, BlendError>([peroxide::mix_two(part(first, first_g)?, part(second, second_g)?)?.ww_percent()])
    };
    let kernel = |[first, first_g, second, second_g]: [Cells<'_>; 4], [out]: [&mut [f64]; 1]| {
        column::strengths_of_two([first, second], [first_g, second_g], out)
    };
    let columns = [&first_ww_percent, &first_g, &second_ww_percent, &second_g];
    let [found] = apply_kernel(py, columns, How::new(errors, out, r#where)?, rule, kernel)?;
    Ok(found)
}
