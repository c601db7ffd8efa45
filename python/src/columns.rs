//! Numbers or arrays of numbers in, the same out: what every column-wise function of the Python module shares.
//!
//! A function takes its arguments as [`Column`], its `errors=` keyword as [`OnRefusal`], and calls [`apply`] with a scalar rule of
//! the core (or [`apply_kernel`] where the core has a kernel for the whole column). Arguments broadcast as those of a
//! NumPy universal function do; the arithmetic is float64; a missing value (NaN) in an array stays missing; only numbers
//! in give a Python float out. NumPy is loaded when the first array comes in, not before.

use crate::{
    bounds::Estimate,
    error::{FoilworkError, OutOfRangeWarning, raise},
    sequence::room_for,
};
use foilwork::column::{self, Cells, ColumnError, ColumnOutcome, rows};
use numpy::{PyArrayDyn, PyArrayMethods, PyReadonlyArrayDyn, PyUntypedArrayMethods};
use pyo3::{
    exceptions::PyTypeError,
    prelude::*,
    types::{PyBool, PyFloat, PyInt, PyString, PyTuple},
};
use std::error::Error;

/// The most dimensions the binding can walk through.
const MOST_DIMENSIONS: usize = 32;

/// One argument: a number for all rows or an array of float64.
pub enum Column<'py> {
    Number(f64),
    Array(PyReadonlyArrayDyn<'py, f64>),
}

/// What becomes of a row that the core refuses: the keyword `errors="raise"` or `errors="nan"`.
#[derive(Clone, Copy, PartialEq)]
pub enum OnRefusal {
    /// Raise ``FoilworkError`` with the row and the reason.
    Raise,
    /// Put NaN, and say how many in an ``OutOfRangeWarning``.
    Nan,
}

impl<'py> FromPyObject<'_, 'py> for OnRefusal {
    type Error = PyErr;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        match obj.extract::<&str>() {
            Ok("raise") => Ok(Self::Raise),
            Ok("nan") => Ok(Self::Nan),
            _ => Err(FoilworkError::new_err(format!("errors must be 'raise' or 'nan' (got {})", obj.repr()?))),
        }
    }
}

impl<'py> FromPyObject<'_, 'py> for Column<'py> {
    type Error = PyErr;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        if let Ok(number) = obj.cast::<PyFloat>() {
            return Ok(Self::Number(number.value()));
        }
        let refuse =
            || PyTypeError::new_err(format!("expected a number or an array of numbers, not {}", obj.get_type()));
        if obj.is_none() || obj.is_instance_of::<PyBool>() || obj.is_instance_of::<PyString>() {
            return Err(refuse());
        }
        if !obj.is_instance_of::<PyInt>() && (obj.hasattr("__array__")? || obj.hasattr("__len__")?) {
            return Self::from_array_like(&obj);
        }
        obj.extract().map(Self::Number).map_err(|_| refuse())
    }
}

impl<'py> Column<'py> {
    /// Anything NumPy makes an array of numbers from; masked elements are missing.
    fn from_array_like(obj: &Bound<'py, PyAny>) -> PyResult<Self> {
        let py = obj.py();
        let numpy = py.import("numpy").map_err(|error| {
            let told = FoilworkError::new_err("arrays need numpy (pip install 'foilwork[numpy]')");
            told.set_cause(py, Some(error));
            told
        })?;
        let array = if obj.is_instance(&numpy.getattr("ma")?.getattr("MaskedArray")?)? {
            obj.call_method1("astype", ("float64",))?.call_method1("filled", (f64::NAN,))?
        } else {
            numpy.call_method1("asarray", (obj,))?
        };
        let dtype = array.getattr("dtype")?;
        if !matches!(dtype.getattr("kind")?.extract()?, 'i' | 'u' | 'f') {
            return Err(PyTypeError::new_err(format!("expected numbers, not an array of {}", dtype.str()?)));
        }
        let floats =
            array.call_method1("astype", ("float64", "K", "unsafe", true, false))?.cast_into::<PyArrayDyn<f64>>()?;
        match floats.ndim() {
            more if more > MOST_DIMENSIONS => {
                Err(FoilworkError::new_err(format!("an array of {more} dimensions: give at most {MOST_DIMENSIONS}")))
            }
            0 => floats.call_method0("item")?.extract().map(Self::Number),
            _ => Ok(Self::Array(floats.readonly())),
        }
    }

    /// All values in row order; a number is a list of one.
    pub fn to_vec(&self) -> PyResult<Vec<f64>> {
        match self {
            Self::Number(number) => Ok(vec![*number]),
            Self::Array(array) => {
                let view = array.as_array();
                let mut values = room_for(view.len())?;
                values.extend(view.iter().copied());
                Ok(values)
            }
        }
    }

    pub fn shape(&self) -> &[usize] {
        match self {
            Self::Number(_) => &[],
            Self::Array(array) => array.shape(),
        }
    }

    /// The values in row order, repeated where the shape asks for it.
    ///
    /// NumPy makes the copy where one is needed: it raises ``MemoryError`` where there is no room for it.
    pub fn values(&self, py: Python<'py>, shape: &[usize]) -> PyResult<Spread<'py>> {
        let array = match self {
            Self::Number(number) => return Ok(Spread::Same(*number)),
            Self::Array(array) => array,
        };
        if array.shape() == shape && array.is_c_contiguous() {
            return Ok(Spread::Each(array.as_any().clone().cast_into::<PyArrayDyn<f64>>()?.readonly()));
        }
        let numpy = py.import("numpy")?;
        let view = numpy.call_method1("broadcast_to", (array.as_any(), PyTuple::new(py, shape)?))?;
        let copy = numpy.call_method1("ascontiguousarray", (view,))?;
        Ok(Spread::Each(copy.cast_into::<PyArrayDyn<f64>>()?.readonly()))
    }
}

/// A column brought to the common shape.
pub enum Spread<'py> {
    Same(f64),
    Each(PyReadonlyArrayDyn<'py, f64>),
}

impl Spread<'_> {
    fn cells(&self) -> PyResult<Cells<'_>> {
        match self {
            Self::Same(number) => Ok(Cells::Same(*number)),
            Self::Each(values) => Ok(Cells::Each(values.as_slice().map_err(raise)?)),
        }
    }
}

/// An array for the results, made by NumPy itself: it raises ``MemoryError`` where there is no room.
pub fn results<'py>(py: Python<'py>, shape: &[usize]) -> PyResult<Bound<'py, PyArrayDyn<f64>>> {
    let made = py.import("numpy")?.call_method1("zeros", (PyTuple::new(py, shape)?,))?;
    Ok(made.cast_into::<PyArrayDyn<f64>>()?)
}

/// The shape that all columns broadcast to; none when all are numbers.
pub fn common_shape(columns: &[&Column<'_>]) -> PyResult<Option<Vec<usize>>> {
    if columns.iter().all(|column| matches!(column, Column::Number(_))) {
        return Ok(None);
    }
    let dims = columns.iter().map(|column| column.shape().len()).max().unwrap_or(0);
    let mut shape = vec![1; dims];
    for column in columns {
        for (slot, &length) in shape.iter_mut().rev().zip(column.shape().iter().rev()) {
            match (*slot, length) {
                (1, _) => *slot = length,
                (have, new) if new == 1 || new == have => {}
                _ => {
                    let shapes: Vec<String> = columns.iter().map(|column| format!("{:?}", column.shape())).collect();
                    let shapes = shapes.join(" and ");
                    return Err(FoilworkError::new_err(format!("shapes {shapes} do not broadcast together")));
                }
            }
        }
    }
    Ok(Some(shape))
}

/// Applies a scalar rule of the core to columns: `N` arguments, `M` results.
///
/// With numbers only, the rule's own error is raised; with arrays, the error also names the row.
pub fn apply<'py, const N: usize, const M: usize, E: Error>(
    py: Python<'py>,
    columns: [&Column<'py>; N],
    on_refusal: OnRefusal,
    rule: impl Fn([f64; N]) -> Result<[f64; M], E>,
) -> PyResult<[Bound<'py, PyAny>; M]> {
    let Some(shape) = common_shape(&columns)? else {
        let numbers = columns.map(|column| if let Column::Number(number) = column { *number } else { f64::NAN });
        let found = match rule(numbers) {
            Ok(found) => found,
            Err(error) if on_refusal == OnRefusal::Raise => return Err(raise(error)),
            Err(_) if numbers.iter().any(|number| number.is_nan()) => [f64::NAN; M],
            Err(error) => {
                warn(py, 1, "", &error)?;
                [f64::NAN; M]
            }
        };
        return Ok(found.map(|number| PyFloat::new(py, number).into_any()));
    };
    let mut spread = Vec::with_capacity(N);
    for column in columns {
        spread.push(column.values(py, &shape)?);
    }
    let cells = spread.iter().map(Spread::cells).collect::<PyResult<Vec<_>>>()?;
    let cells: [Cells<'_>; N] = std::array::from_fn(|i| cells[i]);
    let made = (0..M).map(|_| results(py, &shape)).collect::<PyResult<Vec<_>>>()?;
    let made: [Bound<'py, PyArrayDyn<f64>>; M] = std::array::from_fn(|i| made[i].clone());
    {
        let mut writers = made.each_ref().map(PyArrayMethods::readwrite);
        let mut slices = Vec::with_capacity(M);
        for writer in &mut writers {
            slices.push(writer.as_slice_mut().map_err(raise)?);
        }
        let mut slices = slices.into_iter();
        let outputs: [&mut [f64]; M] = std::array::from_fn(|_| slices.next().unwrap_or_default());
        let outcome = rows(cells, outputs, &rule).map_err(raise)?;
        settle(py, outcome, &shape, on_refusal, |row| rule(cells.map(|column| column.get(row))).err())?;
    }
    Ok(made.map(Bound::into_any))
}

/// Applies a whole-column kernel of the core to one column; `rule` is the scalar form, for a number and for the text of
/// an error.
pub fn apply_kernel<'py, E: Error>(
    py: Python<'py>,
    column: &Column<'py>,
    on_refusal: OnRefusal,
    rule: impl Fn(f64) -> Result<f64, E>,
    kernel: impl FnOnce(&[f64], &mut [f64]) -> Result<ColumnOutcome, ColumnError>,
) -> PyResult<Bound<'py, PyAny>> {
    let Column::Array(array) = column else {
        let [result] = apply(py, [column], on_refusal, |[number]| rule(number).map(|found| [found]))?;
        return Ok(result);
    };
    let shape = array.shape().to_vec();
    let result = results(py, &shape)?;
    {
        let spread = column.values(py, &shape)?;
        let Spread::Each(values) = &spread else { return Err(PyTypeError::new_err("expected an array")) };
        let values = values.as_slice().map_err(raise)?;
        let cells = Cells::Each(values);
        let mut writer = result.readwrite();
        let outcome = kernel(values, writer.as_slice_mut().map_err(raise)?).map_err(raise)?;
        settle(py, outcome, &shape, on_refusal, |row| rule(cells.get(row)).err())?;
    }
    Ok(result.into_any())
}

/// Applies a rule that gives an estimate with its bounds: `Bounds` for a number, three arrays for an array.
pub fn apply_bounded<'py, E: Error>(
    py: Python<'py>,
    column: &Column<'py>,
    on_refusal: OnRefusal,
    rule: impl Fn(f64) -> Result<[f64; 3], E> + Sync,
) -> PyResult<Bound<'py, PyAny>> {
    apply_bounded_kernel(py, column, on_refusal, &rule, |values, out| column::bounded(values, out, &rule))
}

/// The same by a kernel of the core for the whole column; `rule` is the scalar form, for a number and for the text of an error.
pub fn apply_bounded_kernel<'py, E: Error>(
    py: Python<'py>,
    column: &Column<'py>,
    on_refusal: OnRefusal,
    rule: impl Fn(f64) -> Result<[f64; 3], E>,
    kernel: impl FnOnce(&[f64], &mut [f64]) -> Result<ColumnOutcome, ColumnError>,
) -> PyResult<Bound<'py, PyAny>> {
    let Column::Array(array) = column else {
        let found = apply(py, [column], on_refusal, |[number]| rule(number))?;
        let [low, best, high] = found.map(|bound| bound.extract::<f64>());
        return Ok(Estimate([low?, best?, high?]).into_pyobject(py)?.into_any());
    };
    let shape = array.shape().to_vec();
    let result = results(py, &[shape.as_slice(), &[3]].concat())?;
    {
        let spread = column.values(py, &shape)?;
        let cells = spread.cells()?;
        let Cells::Each(values) = cells else { return Err(PyTypeError::new_err("expected an array")) };
        let mut writer = result.readwrite();
        let outcome = kernel(values, writer.as_slice_mut().map_err(raise)?).map_err(raise)?;
        settle(py, outcome, &shape, on_refusal, |row| rule(cells.get(row)).err())?;
    }
    let whole = py.import("builtins")?.getattr("Ellipsis")?;
    let bound = |place: usize| result.as_any().get_item((&whole, place));
    Ok(PyTuple::new(py, [bound(0)?, bound(1)?, bound(2)?])?.into_any())
}

/// Raises for the first refused row, or warns how many there are.
pub fn settle<E: Error>(
    py: Python<'_>,
    outcome: ColumnOutcome,
    shape: &[usize],
    on_refusal: OnRefusal,
    reason: impl Fn(usize) -> Option<E>,
) -> PyResult<()> {
    let Some(first) = outcome.first else { return Ok(()) };
    let place = place(first, shape);
    let Some(error) = reason(first) else { return Ok(()) };
    match on_refusal {
        OnRefusal::Raise => Err(FoilworkError::new_err(format!(
            "{place}: {} ({} refused; errors='nan' makes them NaN)",
            error,
            counted(outcome.refused)
        ))),
        OnRefusal::Nan => warn(py, outcome.refused, &place, &error),
    }
}

/// One ``OutOfRangeWarning`` for the whole call; its ``count`` attribute is the number of refused values.
fn warn(py: Python<'_>, count: usize, place: &str, error: &impl Error) -> PyResult<()> {
    let place = if place.is_empty() { String::new() } else { format!("the first at {place}: ") };
    let text = format!("{} out of range became NaN; {place}{error}", counted(count));
    let warning = py.get_type::<OutOfRangeWarning>().call1((text,))?;
    warning.setattr("count", count)?;
    py.import("warnings")?.call_method1("warn", (warning,))?;
    Ok(())
}

fn counted(count: usize) -> String {
    if count == 1 { "1 value".to_owned() } else { format!("{count} values") }
}

/// `index 3`, or `index (1, 2)` in more than one dimension.
fn place(mut flat: usize, shape: &[usize]) -> String {
    let mut index: Vec<String> = Vec::with_capacity(shape.len());
    for &length in shape.iter().rev() {
        index.push((flat % length.max(1)).to_string());
        flat /= length.max(1);
    }
    index.reverse();
    if index.len() == 1 { format!("index {}", index.concat()) } else { format!("index ({})", index.join(", ")) }
}
