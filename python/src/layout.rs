//! Where the values of an argument lie: in one piece, with gaps, backwards, or repeated; a kernel of the core takes each
//! without a copy of the whole.

use crate::{
    columns::{Column, MOST_DIMENSIONS, numpy_module},
    error::{FoilworkError, raise},
    stepped::{Stepped, Steps, stepped},
};
use foilwork::column::{Cells, Draw};
use numpy::{
    Element, PyArray, PyArrayDyn, PyArrayMethods, PyReadonlyArray, PyReadonlyArrayDyn, PyUntypedArrayMethods,
    ndarray::{ArrayView1, ArrayViewD, ArrayViewMut1, Axis, Dimension, Ix1, s},
};
use pyo3::{PyTypeInfo, prelude::*, types::PyTuple};
use std::fmt;

/// Rows of the last axis below which fetching lane by lane costs more than a copy.
const WORTH_A_LANE: usize = 16;

/// The right to read an array; refused while a call of another thread writes its results there.
pub fn read<'py, T: Element, D: Dimension>(array: &Bound<'py, PyArray<T, D>>) -> PyResult<PyReadonlyArray<'py, T, D>> {
    array.try_readonly().map_err(|_| {
        FoilworkError::new_err("an argument is being written to by another thread: wait for it, or give a copy")
    })
}

/// An array as the kernels take it: no conversion, no subclass with ways of its own.
pub fn plain<'py>(obj: &Bound<'py, PyAny>) -> Option<PyReadonlyArrayDyn<'py, f64>> {
    // What asks whether it is an array panics where there is no NumPy.
    numpy_module(obj.py()).ok()?;
    let array = obj.cast::<PyArrayDyn<f64>>().ok()?;
    let usual =
        obj.get_type().is(PyArrayDyn::<f64>::type_object(obj.py())) && (1..=MOST_DIMENSIONS).contains(&array.ndim());
    // In step with the words of the machine, whether or not there are gaps between the values.
    let in_step = |places: usize| places.is_multiple_of(size_of::<f64>());
    let usual =
        usual && in_step(array.data().addr()) && array.strides().iter().all(|stride| in_step(stride.unsigned_abs()));
    array.try_readonly().ok().filter(|_| usual)
}

/// A column brought to the common shape.
pub enum Spread<'a, 'py> {
    Same(f64),
    /// In one piece, in the order of the rows.
    Each(&'a PyReadonlyArrayDyn<'py, f64>),
    /// The same, in an array of our own.
    Copied(PyReadonlyArrayDyn<'py, f64>),
    /// One after the other with equal gaps, in an array that holds what lies in the gaps too.
    Stepped(PyReadonlyArrayDyn<'py, f64>, Steps),
    /// Anywhere.
    Apart(&'a PyReadonlyArrayDyn<'py, f64>),
    /// Anywhere, with repeats.
    Scattered(PyReadonlyArrayDyn<'py, f64>),
}

impl<'a, 'py> Spread<'a, 'py> {
    /// A column as rows of a shape. A copy, where one is needed, is made by NumPy: it raises ``MemoryError`` where there is no
    /// room for it.
    pub fn new(py: Python<'py>, column: &'a Column<'py>, shape: &[usize]) -> PyResult<Self> {
        let array = match column {
            Column::Number(number) => return Ok(Self::Same(*number)),
            Column::Array(array) => array,
        };
        let again = |array: &Bound<'py, PyAny>| read(array.cast::<PyArrayDyn<f64>>()?);
        let as_it_is = array.shape() == shape;
        if as_it_is && array.is_c_contiguous() {
            return Ok(Self::Each(array));
        }
        let lanes = shape.len() == 1 || shape.last().is_some_and(|last| *last >= WORTH_A_LANE);
        if as_it_is && lanes {
            return Ok(stepped(array).map_or(Self::Apart(array), |(whole, steps)| Self::Stepped(whole, steps)));
        }
        let numpy = numpy_module(py)?;
        let view = numpy.call_method1("broadcast_to", (array.as_any(), PyTuple::new(py, shape)?))?;
        if lanes {
            return Ok(Self::Scattered(again(&view)?));
        }
        Ok(Self::Copied(again(&numpy.call_method1("ascontiguousarray", (view,))?)?))
    }

    /// What the kernels look at.
    pub fn view(&self) -> PyResult<View<'_>> {
        Ok(match self {
            Self::Same(number) => View::Same(*number),
            Self::Each(values) => View::Each(values.as_slice().map_err(raise)?),
            Self::Copied(values) => View::Each(values.as_slice().map_err(raise)?),
            Self::Stepped(whole, steps) => View::Stepped(steps.over(whole.as_slice().map_err(raise)?)),
            Self::Apart(values) => View::Scattered(Scattered(values.as_array())),
            Self::Scattered(values) => View::Scattered(Scattered(values.as_array())),
        })
    }
}

/// A column brought to a shape, its values in one piece in the order of the rows.
pub fn in_one_piece<'py>(
    py: Python<'py>,
    column: &Column<'py>,
    shape: &[usize],
) -> PyResult<PyReadonlyArrayDyn<'py, f64>> {
    let numpy = numpy_module(py)?;
    let values = match column {
        Column::Number(number) => numpy.call_method1("float64", (*number,))?,
        Column::Array(array) => array.as_any().clone(),
    };
    let view = numpy.call_method1("broadcast_to", (values, PyTuple::new(py, shape)?))?;
    read(numpy.call_method1("ascontiguousarray", (view,))?.cast::<PyArrayDyn<f64>>()?)
}

/// A column as the kernels of the core take it.
pub enum View<'a> {
    Same(f64),
    Each(&'a [f64]),
    Stepped(Stepped<'a>),
    Scattered(Scattered<'a>),
}

impl View<'_> {
    pub fn cells(&self) -> Cells<'_> {
        match self {
            Self::Same(number) => Cells::Same(*number),
            Self::Each(values) => Cells::Each(values),
            Self::Stepped(column) => Cells::Drawn(column),
            Self::Scattered(column) => Cells::Drawn(column),
        }
    }
}

/// Values fetched along the last axis, in the order of the rows.
pub struct Scattered<'a>(ArrayViewD<'a, f64>);

impl fmt::Debug for Scattered<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_tuple("Scattered").field(&self.0.shape()).finish()
    }
}

impl Scattered<'_> {
    /// The values along the last axis at a place of the others.
    fn lane(&self, mut place: usize) -> Option<ArrayView1<'_, f64>> {
        let mut view = self.0.view();
        while view.ndim() > 1 {
            let last_but_one = view.ndim() - 2;
            let length = view.len_of(Axis(last_but_one)).max(1);
            view = view.index_axis_move(Axis(last_but_one), place % length);
            place /= length;
        }
        view.into_dimensionality::<Ix1>().ok()
    }
}

impl Draw for Scattered<'_> {
    fn rows(&self) -> usize {
        self.0.len()
    }

    fn draw(&self, start: usize, block: &mut [f64]) {
        let lane_rows = self.0.shape().last().copied().unwrap_or(1).max(1);
        let (mut row, mut rest) = (start, block);
        while !rest.is_empty() {
            let within = row % lane_rows;
            let (now, later) = rest.split_at_mut((lane_rows - within).min(rest.len()));
            if let Some(lane) = self.lane(row / lane_rows) {
                let lane = lane.slice_move(s![within..within + now.len()]);
                ArrayViewMut1::from(&mut *now).assign(&lane);
            }
            row += now.len();
            rest = later;
        }
    }
}
