//! Colour coordinates in, colour coordinates or differences out: three numbers, or arrays whose last axis has length 3.

use crate::{
    columns::{Column, OnRefusal, apply, common_shape, results, settle},
    error::{FoilworkError, ours, raise},
    layout::in_one_piece,
};
use foilwork::{
    colour::White,
    column::{self, Cells, ColumnError, ColumnOutcome, Coordinates},
};
use numpy::{PyArrayMethods, PyReadonlyArrayDyn};
use pyo3::{prelude::*, types::PyTuple};
use std::error::Error;

/// Colour coordinates: three numbers, or an array whose last axis has length 3.
pub enum Triples<'py> {
    One([f64; 3]),
    /// In one piece, row after row.
    Many(Column<'py>),
}

impl<'py> FromPyObject<'_, 'py> for Triples<'py> {
    type Error = PyErr;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        if let Ok(one) = obj.extract::<[f64; 3]>() {
            return Ok(Self::One(one));
        }
        let numpy = obj.py().import("numpy")?;
        let array =
            numpy.call_method1("ascontiguousarray", (&*obj, "float64")).map_err(|error| ours(obj.py(), error))?;
        let shape: Vec<usize> = array.getattr("shape")?.extract()?;
        if shape.last() != Some(&3) {
            let text = format!("colours need three coordinates in the last axis (got an array of shape {shape:?})");
            return Err(FoilworkError::new_err(text));
        }
        array.extract().map(Self::Many)
    }
}

impl<'py> Triples<'py> {
    /// In other coordinates, by the kernel of the core; what it refuses is worded by the scalar rule.
    pub fn turned<E: Error>(
        &self,
        py: Python<'py>,
        errors: OnRefusal,
        (turn, white): (Coordinates, White),
        rule: impl Fn([f64; 3]) -> Result<[f64; 3], E> + Send + Sync,
    ) -> PyResult<Bound<'py, PyAny>> {
        match self {
            Self::One(one) => {
                let [a, b, c] = &one.map(Column::Number);
                Ok(PyTuple::new(py, apply(py, [a, b, c], errors.into(), rule)?)?.into_any())
            }
            Self::Many(column) => {
                apply_triples(py, column, errors, rule, |values, out| column::coordinates(turn, white, values, out))
            }
        }
    }
}

/// Applies a whole-column kernel of the core to pairs of colours, which broadcast together; `rule` is the scalar form, for
/// numbers and for the text of an error.
pub fn apply_pairs<'py, E: Error>(
    py: Python<'py>,
    pair: [&Triples<'py>; 2],
    on_refusal: OnRefusal,
    rule: impl Fn([[f64; 3]; 2]) -> Result<f64, E> + Send + Sync,
    kernel: impl FnOnce([column::Triples<'_>; 2], &mut [f64]) -> Result<ColumnOutcome, ColumnError> + Send,
) -> PyResult<Bound<'py, PyAny>> {
    let arrays = match pair {
        [Triples::One([l1, a1, b1]), Triples::One([l2, a2, b2])] => {
            let [l1, a1, b1, l2, a2, b2] = &[l1, a1, b1, l2, a2, b2].map(|number| Column::Number(*number));
            let rule = |[l1, a1, b1, l2, a2, b2]: [f64; 6]| rule([[l1, a1, b1], [l2, a2, b2]]).map(|found| [found]);
            let [result] = apply(py, [l1, a1, b1, l2, a2, b2], on_refusal.into(), rule)?;
            return Ok(result);
        }
        [Triples::Many(first), Triples::Many(second)] => vec![first, second],
        [Triples::Many(only), _] | [_, Triples::Many(only)] => vec![only],
    };
    let shape = common_shape(&arrays)?.unwrap_or_default();
    let mut spread = Vec::with_capacity(2);
    for array in &arrays {
        spread.push(in_one_piece(py, array, &shape)?);
    }
    let mut rows = spread.iter().map(rows_of);
    let mut triples = |of: &Triples<'py>| match of {
        Triples::One(one) => Ok(column::Triples::Columns(one.map(Cells::Same))),
        Triples::Many(_) => rows.next().unwrap_or(Ok(column::Triples::Rows(&[]))),
    };
    let pair = [triples(pair[0])?, triples(pair[1])?];
    let shape = shape.get(..shape.len().saturating_sub(1)).unwrap_or_default();
    let result = results(py, shape)?;
    {
        let mut writer = result.readwrite();
        let out = writer.as_slice_mut().map_err(raise)?;
        let outcome = py.detach(|| kernel(pair, out)).map_err(raise)?;
        settle(py, outcome, shape, on_refusal, |row| rule(pair.map(|colours| colours.get(row))).err())?;
    }
    Ok(result.into_any())
}

/// An array in one piece, as rows of three.
fn rows_of<'a>(array: &'a PyReadonlyArrayDyn<'_, f64>) -> PyResult<column::Triples<'a>> {
    Ok(column::Triples::Rows(array.as_slice().map_err(raise)?))
}

/// Applies a rule of three numbers to three along the last axis of an array, which has length 3, by its kernel; what the
/// kernel refuses is worded by the rule.
fn apply_triples<'py, E: Error>(
    py: Python<'py>,
    column: &Column<'py>,
    on_refusal: OnRefusal,
    rule: impl Fn([f64; 3]) -> Result<[f64; 3], E> + Send + Sync,
    kernel: impl FnOnce(&[f64], &mut [f64]) -> Result<ColumnOutcome, ColumnError> + Send,
) -> PyResult<Bound<'py, PyAny>> {
    let shape = column.shape().to_vec();
    let result = results(py, &shape)?;
    {
        let whole = in_one_piece(py, column, &shape)?;
        let values = whole.as_slice().map_err(raise)?;
        let mut writer = result.readwrite();
        let out = writer.as_slice_mut().map_err(raise)?;
        let outcome = py.detach(|| kernel(values, out)).map_err(raise)?;
        let rows = shape.get(..shape.len().saturating_sub(1)).unwrap_or_default();
        let of = |row: usize, place: usize| values.get(3 * row + place).copied().unwrap_or(f64::NAN);
        settle(py, outcome, rows, on_refusal, |row| rule([of(row, 0), of(row, 1), of(row, 2)]).err())?;
    }
    Ok(result.into_any())
}
