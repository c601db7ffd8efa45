//! Colour coordinates in, colour coordinates or differences out: three numbers, or arrays whose last axis has length 3.

use crate::{
    columns::{Column, OnRefusal, apply, results, settle},
    error::{FoilworkError, raise},
    layout::in_one_piece,
    target::{How, Target},
};
use foilwork::{
    colour::White,
    column::{self, Cells, ColumnError, ColumnOutcome, Coordinates},
};
use numpy::{PyArrayMethods, PyReadonlyArrayDyn};
use pyo3::{
    prelude::*,
    types::{PyBytes, PySlice, PyTuple},
};
use std::error::Error;

/// Colour coordinates: three numbers, or an array whose last axis has length 3.
pub enum Triples<'py> {
    One([f64; 3]),
    Many(Column<'py>),
}

impl<'py> FromPyObject<'_, 'py> for Triples<'py> {
    type Error = PyErr;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        // NumPy would make a number of a truth among numbers, and Python one of each byte.
        if !obj.is_instance_of::<PyBytes>()
            && let Ok([a, b, c]) = obj.extract::<[Bound<'py, PyAny>; 3]>()
            && let (Column::Number(a), Column::Number(b), Column::Number(c)) =
                (a.extract()?, b.extract()?, c.extract()?)
        {
            return Ok(Self::One([a, b, c]));
        }
        in_rows(&obj).map(Self::Many)
    }
}

/// An array whose last axis has length 3.
fn in_rows<'py>(obj: &Bound<'py, PyAny>) -> PyResult<Column<'py>> {
    let column: Column<'py> = obj.extract()?;
    let shape = column.shape();
    if shape.last() == Some(&3) {
        return Ok(column);
    }
    let text = format!("colours need three coordinates in the last axis (got an array of shape {shape:?})");
    Err(FoilworkError::new_err(text))
}

impl<'py> Triples<'py> {
    /// In other coordinates, by the kernel of the core; what it refuses is worded by the scalar rule.
    pub fn turned<E: Error>(
        &self,
        py: Python<'py>,
        how: How<'py>,
        (turn, white): (Coordinates, White),
        rule: impl Fn([f64; 3]) -> Result<[f64; 3], E> + Send + Sync,
    ) -> PyResult<Bound<'py, PyAny>> {
        match self {
            Self::One(one) if how.is_plain() => {
                let [a, b, c] = &one.map(Column::Number);
                Ok(PyTuple::new(py, apply(py, [a, b, c], how, rule)?)?.into_any())
            }
            _ => apply_triples(py, &self.rows(py)?, &how.along_last_axis(py)?, rule, |values, out| {
                column::coordinates(turn, white, values, out)
            }),
        }
    }

    /// As rows of an array; one colour is one row.
    fn rows(&self, py: Python<'py>) -> PyResult<Column<'py>> {
        match self {
            Self::One(one) => in_rows(one.into_pyobject(py)?.as_any()),
            Self::Many(Column::Array(array)) => Ok(Column::Array(array.clone())),
            Self::Many(Column::Number(_)) => Err(FoilworkError::new_err("colours need three coordinates")),
        }
    }
}

/// Applies a whole-column kernel of the core to pairs of colours, which broadcast together; `rule` is the scalar form, for
/// numbers and for the text of an error.
pub fn apply_pairs<'py, E: Error>(
    py: Python<'py>,
    pair: [&Triples<'py>; 2],
    how: How<'py>,
    rule: impl Fn([[f64; 3]; 2]) -> Result<f64, E> + Send + Sync,
    kernel: impl FnOnce([column::Triples<'_>; 2], &mut [f64]) -> Result<ColumnOutcome, ColumnError> + Send,
) -> PyResult<Bound<'py, PyAny>> {
    if let ([Triples::One([l1, a1, b1]), Triples::One([l2, a2, b2])], true) = (pair, how.is_plain()) {
        let [l1, a1, b1, l2, a2, b2] = &[l1, a1, b1, l2, a2, b2].map(|number| Column::Number(*number));
        let rule = |[l1, a1, b1, l2, a2, b2]: [f64; 6]| rule([[l1, a1, b1], [l2, a2, b2]]).map(|found| [found]);
        let [result] = apply(py, [l1, a1, b1, l2, a2, b2], how, rule)?;
        return Ok(result);
    }
    let of_coordinates = how.along_last_axis(py)?;
    // A colour for all rows stays one, but where rows are left out: that takes a row of its own for each.
    let first = match pair[0] {
        Triples::One(_) if how.is_plain() => None,
        first => Some(first.rows(py)?),
    };
    let second = match pair[1] {
        Triples::One(_) => None,
        second @ Triples::Many(_) => Some(second.rows(py)?),
    };
    let given: Vec<&Column<'_>> = first.iter().chain(&second).collect();
    let shape = of_coordinates.row_shape(&given)?;
    let masked = of_coordinates.masked(py, first.as_ref(), &shape)?;
    let spread = |column: Option<&Column<'py>>| column.map(|column| in_one_piece(py, column, &shape)).transpose();
    let (first, second) = (spread(masked.as_ref().or(first.as_ref()))?, spread(second.as_ref())?);
    let pair = [triples(pair[0], first.as_ref())?, triples(pair[1], second.as_ref())?];
    let rows = shape.get(..shape.len().saturating_sub(1)).unwrap_or_default();
    let [mut target] = one(how.targets::<1>(py, &given, rows)?)?;
    {
        let mut writer = target.writer()?;
        let out = writer.as_slice_mut().map_err(raise)?;
        let outcome = py.detach(|| kernel(pair, out)).map_err(raise)?;
        settle(py, outcome, rows, how.errors, |row| rule(pair.map(|colours| colours.get(row))).err())?;
    }
    target.handed_back(py, &how)
}

/// Colours as the kernel takes them: rows of three where there are such, else the one for all rows.
fn triples<'a>(of: &Triples<'_>, rows: Option<&'a PyReadonlyArrayDyn<'_, f64>>) -> PyResult<column::Triples<'a>> {
    Ok(match (of, rows) {
        (_, Some(rows)) => column::Triples::Rows(rows.as_slice().map_err(raise)?),
        (Triples::One(one), None) => column::Triples::Columns(one.map(Cells::Same)),
        (Triples::Many(_), None) => column::Triples::Rows(&[]),
    })
}

/// The only target.
fn one(targets: Vec<Target<'_>>) -> PyResult<[Target<'_>; 1]> {
    targets.try_into().map_err(|_| FoilworkError::new_err("one result, one array"))
}

/// Applies a rule of three numbers to three along the last axis of an array, which has length 3, by its kernel; what the
/// kernel refuses is worded by the rule.
fn apply_triples<'py, E: Error>(
    py: Python<'py>,
    column: &Column<'py>,
    how: &How<'py>,
    rule: impl Fn([f64; 3]) -> Result<[f64; 3], E> + Send + Sync,
    kernel: impl FnOnce(&[f64], &mut [f64]) -> Result<ColumnOutcome, ColumnError> + Send,
) -> PyResult<Bound<'py, PyAny>> {
    let shape = how.row_shape(&[column])?;
    let masked = how.masked(py, Some(column), &shape)?;
    let [mut target] = one(how.targets::<1>(py, &[column], &shape)?)?;
    {
        let whole = in_one_piece(py, masked.as_ref().unwrap_or(column), &shape)?;
        let values = whole.as_slice().map_err(raise)?;
        let mut writer = target.writer()?;
        let out = writer.as_slice_mut().map_err(raise)?;
        let outcome = py.detach(|| kernel(values, out)).map_err(raise)?;
        let rows = shape.get(..shape.len().saturating_sub(1)).unwrap_or_default();
        let of = |row: usize, place: usize| values.get(3 * row + place).copied().unwrap_or(f64::NAN);
        settle(py, outcome, rows, how.errors, |row| rule([of(row, 0), of(row, 1), of(row, 2)]).err())?;
    }
    target.handed_back(py, how)
}

/// Colours for a screen, and whether each is the colour itself: rows of red, green and blue, and one truth for each.
pub fn on_a_screen<'py, E: Error>(
    py: Python<'py>,
    labs: &Column<'py>,
    white: White,
    errors: OnRefusal,
    rule: impl Fn([f64; 3]) -> Result<(), E>,
) -> PyResult<[Bound<'py, PyAny>; 2]> {
    let shape = labs.shape().to_vec();
    let rows = shape.get(..shape.len().saturating_sub(1)).unwrap_or_default();
    let shown = results(py, &[rows, &[4]].concat())?;
    {
        let whole = in_one_piece(py, labs, &shape)?;
        let values = whole.as_slice().map_err(raise)?;
        let mut writer = shown.readwrite();
        let out = writer.as_slice_mut().map_err(raise)?;
        let outcome = py.detach(|| column::screen_colours(white, values, out)).map_err(raise)?;
        let of = |row: usize, place: usize| values.get(3 * row + place).copied().unwrap_or(f64::NAN);
        settle(py, outcome, rows, errors, |row| rule([of(row, 0), of(row, 1), of(row, 2)]).err())?;
    }
    let ellipsis = py.import("builtins")?.getattr("Ellipsis")?;
    let channels = shown.get_item((&ellipsis, PySlice::new(py, 0, 3, 1)))?;
    let itself = shown.get_item((&ellipsis, 3))?.call_method1("__eq__", (1.0,))?;
    Ok([channels, itself])
}
