//! Numbers or arrays of numbers in, the same out: what every column-wise function of the Python module shares.
//!
//! A function takes its arguments as [`Column`], its keywords `errors=`, `out=` and `where=` as a [`How`], and calls [`apply_kernel`]
//! with a kernel of the core for the whole column (or [`apply`], where it has a scalar rule only). Arguments broadcast as those of a
//! NumPy universal function do; the arithmetic is float64; a missing value (NaN) in an array stays missing; only numbers
//! in give a Python float out. NumPy is loaded when the first array comes in, not before.

use crate::{
    bounds::{Bounds, Estimate, Stated},
    error::{FoilworkError, OutOfRangeWarning, ours, raise},
    layout::{Spread, View, in_one_piece, plain, read},
    sequence::room_for,
    target::{How, Target},
};
use foilwork::{
    column::{self, Cells, ColumnError, ColumnOutcome, rows},
    quantity::Quantity,
    source::Interval,
};
use numpy::{PyArrayDyn, PyArrayMethods, PyReadonlyArrayDyn, PyUntypedArrayMethods};
use pyo3::{
    PyTypeInfo,
    exceptions::PyTypeError,
    prelude::*,
    sync::PyOnceLock,
    types::{PyBool, PyFloat, PyInt, PyString, PyTuple},
};
use std::{error::Error, marker::PhantomData};

/// Rows below which other threads of Python wait for the kernel: a few microseconds.
const WORTH_LETTING_GO: usize = 2_048;

/// The most dimensions the binding can walk through.
pub const MOST_DIMENSIONS: usize = 32;

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
        // NumPy is not loaded for a whole number.
        if !obj.is_instance_of::<PyInt>() {
            if let Some(array) = plain(&obj) {
                return Ok(Self::Array(array));
            }
            if obj.hasattr("__array__")? || obj.hasattr("__len__")? || is_arrow(&obj)? {
                return Self::from_array_like(&obj);
            }
        }
        obj.extract().map(Self::Number).map_err(|_| refuse())
    }
}

impl<'py> Column<'py> {
    /// Anything NumPy makes an array of numbers from, and columns of the Arrow world; masked elements and nulls are missing.
    fn from_array_like(obj: &Bound<'py, PyAny>) -> PyResult<Self> {
        let py = obj.py();
        let numpy = numpy_module(py)?;
        let masked = is_masked(obj)?;
        let mut array = if masked {
            obj.clone()
        } else if is_arrow(obj)? && !obj.hasattr("__array__")? {
            py.import("foilwork.arrow")?.call_method1("values", (obj,))?
        } else {
            numpy.call_method1("asarray", (obj,)).map_err(|error| ours(py, error))?
        };
        let mut dtype = array.getattr("dtype")?;
        // NumPy makes objects of numbers and nulls.
        if dtype.getattr("kind")?.extract::<char>()? == 'O' && is_arrow(obj)? {
            array = py.import("foilwork.arrow")?.call_method1("values", (obj,))?;
            dtype = array.getattr("dtype")?;
        }
        if !matches!(dtype.getattr("kind")?.extract()?, 'i' | 'u' | 'f') {
            return Err(PyTypeError::new_err(format!("expected numbers, not an array of {}", dtype.str()?)));
        }
        let floats = array.call_method1("astype", ("float64", "K", "unsafe", true, false))?;
        let floats = if masked { floats.call_method1("filled", (f64::NAN,))? } else { floats };
        // Out of step with the words of the machine, as in a packed record: NumPy's copy is in step.
        let aligned = floats.getattr("flags")?.getattr("aligned")?.is_truthy()?;
        let floats = if aligned { floats } else { floats.call_method0("copy")? }.cast_into::<PyArrayDyn<f64>>()?;
        match floats.ndim() {
            more if more > MOST_DIMENSIONS => {
                Err(FoilworkError::new_err(format!("an array of {more} dimensions: give at most {MOST_DIMENSIONS}")))
            }
            0 => floats.call_method0("item")?.extract().map(Self::Number),
            _ => read(&floats).map(Self::Array),
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

    /// As it was given: a float, or the array of floats.
    pub fn given(&self, py: Python<'py>) -> Bound<'py, PyAny> {
        match self {
            Self::Number(number) => PyFloat::new(py, *number).into_any(),
            Self::Array(array) => array.as_any().clone(),
        }
    }

    pub fn shape(&self) -> &[usize] {
        match self {
            Self::Number(_) => &[],
            Self::Array(array) => array.shape(),
        }
    }
}

/// One argument that may have bounds: a number or an array, or else `Bounds` (or a tuple) of three for all rows.
pub enum BoundedColumn<'py, Q> {
    Best(Column<'py>, PhantomData<Q>),
    Bounds([Column<'py>; 3]),
}

impl<'py, Q> BoundedColumn<'py, Q> {
    /// Lower bounds, best estimates, upper bounds.
    pub fn columns(&self) -> [&Column<'py>; 3] {
        match self {
            Self::Best(column, _) => [column; 3],
            Self::Bounds(columns) => columns.each_ref(),
        }
    }
}

impl<Q: Quantity> From<Interval<Q>> for BoundedColumn<'_, Q> {
    fn from(interval: Interval<Q>) -> Self {
        Self::Bounds(interval.to_array().map(|bound| Column::Number(bound.in_unit())))
    }
}

impl<'py, Q: Quantity> FromPyObject<'_, 'py> for BoundedColumn<'py, Q> {
    type Error = PyErr;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        if obj.is_instance_of::<Bounds>() || obj.is_instance_of::<PyTuple>() {
            return Ok(obj.extract::<Stated<Q>>()?.0.into());
        }
        Ok(Self::Best(obj.extract()?, PhantomData))
    }
}

/// NumPy itself, looked up once.
pub fn numpy_module(py: Python<'_>) -> PyResult<&Bound<'_, PyModule>> {
    static NUMPY: PyOnceLock<Py<PyModule>> = PyOnceLock::new();
    let missing = |error| {
        let told = FoilworkError::new_err("arrays need numpy (pip install 'foilwork[numpy]')");
        told.set_cause(py, Some(error));
        told
    };
    NUMPY.get_or_try_init(py, || py.import("numpy").map(Bound::unbind)).map(|module| module.bind(py)).map_err(missing)
}

/// Whether an object is an array of NumPy with a mask; of a plain array nothing is asked.
pub fn is_masked(obj: &Bound<'_, PyAny>) -> PyResult<bool> {
    let numpy = numpy_module(obj.py())?;
    let plain = obj.get_type().is(PyArrayDyn::<f64>::type_object(obj.py()));
    Ok(!plain && obj.is_instance(&numpy.getattr("ma")?.getattr("MaskedArray")?)?)
}

/// Whether an object shows the PyCapsule interface of Arrow.
fn is_arrow(obj: &Bound<'_, PyAny>) -> PyResult<bool> {
    Ok(obj.hasattr("__arrow_c_array__")? || obj.hasattr("__arrow_c_stream__")?)
}

/// An array for the results, made by NumPy itself: it raises ``MemoryError`` where there is no room.
pub fn results<'py>(py: Python<'py>, shape: &[usize]) -> PyResult<Bound<'py, PyArrayDyn<f64>>> {
    static EMPTY: PyOnceLock<Py<PyAny>> = PyOnceLock::new();
    let empty = EMPTY.get_or_try_init(py, || numpy_module(py)?.getattr("empty").map(Bound::unbind))?.bind(py);
    let made = if let [rows] = shape { empty.call1((*rows,)) } else { empty.call1((PyTuple::new(py, shape)?,)) }?;
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

/// Applies a scalar rule of the core to columns, row by row: `N` arguments, `M` results.
///
/// With numbers only, the rule's own error is raised; with arrays, the error also names the row.
pub fn apply<'py, const N: usize, const M: usize, E: Error>(
    py: Python<'py>,
    columns: [&Column<'py>; N],
    how: How<'py>,
    rule: impl Fn([f64; N]) -> Result<[f64; M], E> + Send + Sync,
) -> PyResult<[Bound<'py, PyAny>; M]> {
    let kernel = |cells: [Cells<'_>; N], out: [&mut [f64]; M]| rows(cells, out, &rule);
    apply_kernel(py, columns, how, &rule, kernel)
}

/// Applies a whole-column kernel of the core; `rule` is the scalar form, for numbers and for the text of an error.
///
/// Other threads run while the kernel does.
pub fn apply_kernel<'py, const N: usize, const M: usize, E: Error>(
    py: Python<'py>,
    columns: [&Column<'py>; N],
    how: How<'py>,
    rule: impl Fn([f64; N]) -> Result<[f64; M], E>,
    kernel: impl FnOnce([Cells<'_>; N], [&mut [f64]; M]) -> Result<ColumnOutcome, ColumnError> + Send,
) -> PyResult<[Bound<'py, PyAny>; M]> {
    let Some(shape) = how.shape(&columns)? else {
        let numbers = columns.map(|column| if let Column::Number(number) = column { *number } else { f64::NAN });
        let found = match rule(numbers) {
            Ok(found) => found,
            Err(error) if how.errors == OnRefusal::Raise => return Err(raise(error)),
            Err(_) if numbers.iter().any(|number| number.is_nan()) => [f64::NAN; M],
            Err(error) => {
                warn(py, 1, "", &error)?;
                [f64::NAN; M]
            }
        };
        return Ok(found.map(|number| PyFloat::new(py, number).into_any()));
    };
    let masked = how.masked(py, columns.first().copied(), &shape)?;
    // For a thousand rows a call has less than a microsecond: no list is made that an array can hold.
    let mut spread = [const { Spread::Same(f64::NAN) }; N];
    for (place, (spread, column)) in spread.iter_mut().zip(columns).enumerate() {
        let column = masked.as_ref().filter(|_| place == 0).unwrap_or(column);
        *spread = Spread::new(py, column, &shape)?;
    }
    let mut targets = how.targets::<M>(py, &columns, &shape)?;
    {
        let mut views = [const { View::Same(f64::NAN) }; N];
        for (view, spread) in views.iter_mut().zip(&spread) {
            *view = spread.view()?;
        }
        let cells = views.each_ref().map(View::cells);
        let mut writers = targets.iter_mut().map(Target::writer).collect::<PyResult<Vec<_>>>()?;
        let mut slices = Vec::with_capacity(M);
        for writer in &mut writers {
            slices.push(writer.as_slice_mut().map_err(raise)?);
        }
        let mut slices = slices.into_iter();
        let outputs: [&mut [f64]; M] = std::array::from_fn(|_| slices.next().unwrap_or_default());
        // A few rows are done before another thread would have begun.
        let rows = outputs.first().map_or(0, |column| column.len());
        let run = || kernel(cells, outputs);
        let outcome = if rows < WORTH_LETTING_GO { run() } else { py.detach(run) }.map_err(raise)?;
        settle(py, outcome, &shape, how.errors, |row| rule(cells.map(|column| column.get(row))).err())?;
    }
    let mut given =
        targets.into_iter().map(|target| target.handed_back(py, &how)).collect::<PyResult<Vec<_>>>()?.into_iter();
    Ok(std::array::from_fn(|_| given.next().unwrap_or_else(|| py.None().into_bound(py))))
}

/// Applies a rule that gives an estimate with its bounds: `Bounds` for a number, three arrays for an array.
pub fn apply_bounded<'py, E: Error>(
    py: Python<'py>,
    column: &Column<'py>,
    how: How<'py>,
    rule: impl Fn(f64) -> Result<[f64; 3], E> + Send + Sync,
) -> PyResult<Bound<'py, PyAny>> {
    apply_bounded_kernel(py, column, how, &rule, |values, out| column::bounded(values, out, &rule))
}

/// The same by a kernel of the core for the whole column; `rule` is the scalar form, for a number and for the text of an error.
pub fn apply_bounded_kernel<'py, E: Error>(
    py: Python<'py>,
    column: &Column<'py>,
    how: How<'py>,
    rule: impl Fn(f64) -> Result<[f64; 3], E> + Send + Sync,
    kernel: impl FnOnce(&[f64], &mut [f64]) -> Result<ColumnOutcome, ColumnError> + Send,
) -> PyResult<Bound<'py, PyAny>> {
    let Some(shape) = how.shape(&[column])? else {
        let kernel = |cells: [Cells<'_>; 1], out: [&mut [f64]; 3]| rows(cells, out, |[number]| rule(number));
        let found = apply_kernel(py, [column], how, |[number]| rule(number), kernel)?;
        let [low, best, high] = found.map(|bound| bound.extract::<f64>());
        return Ok(Estimate([low?, best?, high?]).into_pyobject(py)?.into_any());
    };
    let masked = how.masked(py, Some(column), &shape)?;
    let targets = if how.has_out() { how.targets::<3>(py, &[column], &shape)? } else { Vec::new() };
    let result = results(py, &[shape.as_slice(), &[3]].concat())?;
    {
        let whole = in_one_piece(py, masked.as_ref().unwrap_or(column), &shape)?;
        let values = whole.as_slice().map_err(raise)?;
        let mut writer = result.readwrite();
        let out = writer.as_slice_mut().map_err(raise)?;
        let outcome = py.detach(|| kernel(values, out)).map_err(raise)?;
        settle(py, outcome, &shape, how.errors, |row| rule(Cells::Each(values).get(row)).err())?;
    }
    let whole = py.import("builtins")?.getattr("Ellipsis")?;
    let mut bounds = Vec::with_capacity(3);
    for place in 0..3 {
        bounds.push(result.as_any().get_item((&whole, place))?);
    }
    for (bound, target) in bounds.iter_mut().zip(targets) {
        target.fill(py, bound)?;
        *bound = target.handed_back(py, &how)?;
    }
    Ok(PyTuple::new(py, bounds)?.into_any())
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

fn counted(values: usize) -> String {
    foilwork::text::count(values, "value", "values")
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
