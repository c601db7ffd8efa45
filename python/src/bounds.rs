//! Bounds of an estimate: one class out, one argument in.

use crate::{
    answer::{Reduced, fields, generic_alias, to_dict},
    error::{ours, raise},
};
use foilwork::{
    quantity::Quantity,
    source::{Interval, InvalidInterval},
};
use pyo3::{
    IntoPyObjectExt,
    exceptions::PyTypeError,
    prelude::*,
    types::{PyDict, PyIterator, PyTuple, PyType},
};

/// Lower bound, best estimate and upper bound of one thing, in one unit.
///
/// It unpacks, iterates, compares and hashes as the tuple ``(low, best, high)``, and can be given wherever a value with
/// bounds is asked for.
///
/// Args:
///     low: the lower bound.
///     best: the best estimate, not below it.
///     high: the upper bound, not below the best estimate.
///
/// Raises:
///     FoilworkError: bounds out of order.
///
/// Examples:
///     >>> from foilwork import Bounds
///     >>> low, best, high = Bounds(2.5, 3.0, 3.5)
///     >>> best, Bounds(3, 3, 3).is_exact
///     (3.0, True)
///     >>> Bounds(3, 2, 1)
///     Traceback (most recent call last):
///     foilwork.FoilworkError: invalid interval: the bounds must enclose the best estimate (give low <= best <= high)
#[pyclass(frozen, get_all, sequence, module = "foilwork")]
pub struct Bounds {
    /// The lower bound.
    low: Py<PyAny>,
    /// The best estimate.
    best: Py<PyAny>,
    /// The upper bound.
    high: Py<PyAny>,
}

const NAMES: &[&str] = &["low", "best", "high"];

#[pymethods]
impl Bounds {
    #[classattr]
    fn __match_args__(py: Python<'_>) -> PyResult<Bound<'_, PyTuple>> {
        PyTuple::new(py, NAMES)
    }

    #[new]
    fn new(low: Bound<'_, PyAny>, best: Bound<'_, PyAny>, high: Bound<'_, PyAny>) -> PyResult<Self> {
        if low.le(&best)? && best.le(&high)? {
            Ok(Self { low: low.unbind(), best: best.unbind(), high: high.unbind() })
        } else {
            Err(raise(InvalidInterval))
        }
    }

    /// Whether the three are one value.
    #[getter]
    fn is_exact(slf: &Bound<'_, Self>) -> PyResult<bool> {
        let this = slf.get();
        this.low.bind(slf.py()).eq(&this.high)
    }

    /// ``{"low": .., "best": .., "high": ..}``.
    fn to_dict<'py>(slf: &Bound<'py, Self>) -> PyResult<Bound<'py, PyDict>> {
        to_dict(slf, NAMES)
    }

    fn __iter__<'py>(slf: &Bound<'py, Self>) -> PyResult<Bound<'py, PyIterator>> {
        fields(slf, NAMES)?.try_iter()
    }

    fn __len__(&self) -> usize {
        NAMES.len()
    }

    fn __getitem__<'py>(slf: &Bound<'py, Self>, index: Bound<'py, PyAny>) -> PyResult<Bound<'py, PyAny>> {
        fields(slf, NAMES)?.as_any().get_item(index)
    }

    fn __eq__(slf: &Bound<'_, Self>, other: &Bound<'_, PyAny>) -> PyResult<bool> {
        let mine = fields(slf, NAMES)?;
        match other.cast::<Self>() {
            Ok(other) => mine.eq(fields(other, NAMES)?),
            Err(_) => mine.eq(other),
        }
    }

    fn __hash__(slf: &Bound<'_, Self>) -> PyResult<isize> {
        fields(slf, NAMES)?.hash()
    }

    fn __repr__(slf: &Bound<'_, Self>) -> PyResult<String> {
        let [low, best, high] =
            [&slf.get().low, &slf.get().best, &slf.get().high].map(|value| value.bind(slf.py()).repr());
        Ok(format!("Bounds(low={}, best={}, high={})", low?, best?, high?))
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<Reduced<'py>> {
        Ok((slf.get_type().into_any(), fields(slf, NAMES)?))
    }

    /// ``Bounds[float]`` in an annotation.
    #[classmethod]
    fn __class_getitem__<'py>(cls: &Bound<'py, PyType>, item: Bound<'py, PyAny>) -> PyResult<Bound<'py, PyAny>> {
        generic_alias(cls, item)
    }
}

/// Bounds on their way to Python: as an answer, or as a field of one.
#[derive(Clone, Copy, PartialEq)]
pub struct Estimate<T>(pub [T; 3]);

impl<T> Estimate<T> {
    /// Each bound by a function, for example the getter of a unit.
    pub fn by<Q: Copy + PartialOrd>(interval: Interval<Q>, value: impl Fn(Q) -> T) -> Self {
        Self(interval.to_array().map(value))
    }
}

/// In the quantity's own unit, the one its fields are named after.
impl<Q: Quantity> From<Interval<Q>> for Estimate<f64> {
    fn from(interval: Interval<Q>) -> Self {
        Self::by(interval, Q::in_unit)
    }
}

impl<'py, T: IntoPyObject<'py>> IntoPyObject<'py> for Estimate<T> {
    type Target = Bounds;
    type Output = Bound<'py, Bounds>;
    type Error = PyErr;

    fn into_pyobject(self, py: Python<'py>) -> PyResult<Self::Output> {
        let [low, best, high] = self.0.map(|value| value.into_bound_py_any(py).map(Bound::unbind));
        Bound::new(py, Bounds { low: low?, best: best?, high: high? })
    }
}

impl<'py, T: for<'a> FromPyObject<'a, 'py>> FromPyObject<'_, 'py> for Estimate<T> {
    type Error = PyErr;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        let [low, best, high] = values(&obj)?.map(|value| value.extract::<T>().map_err(Into::into));
        Ok(Self([low?, best?, high?]))
    }
}

/// A quantity as an argument: a number in its own unit for what is known exactly, or `Bounds` (or a tuple) of three.
#[derive(Clone, Copy)]
pub struct Stated<Q>(pub Interval<Q>);

impl<'py, Q: Quantity> FromPyObject<'_, 'py> for Stated<Q> {
    type Error = PyErr;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        if let Ok(number) = obj.extract::<f64>() {
            return Q::from_unit(number).map(Interval::exact).map(Self).map_err(raise);
        }
        let refused = |_| {
            let (unit, kind) = (Q::UNIT, obj.get_type());
            PyTypeError::new_err(format!("expected a number or (low, best, high) in {unit}, not {kind}"))
        };
        let Estimate([low, best, high]) = obj.extract::<Estimate<f64>>().map_err(refused)?;
        let [low, best, high] = [low, best, high].map(|value| Q::from_unit(value).map_err(raise));
        Interval::new(low?, best?, high?).map(Self).map_err(raise)
    }
}

/// The three values of `Bounds`, or of a tuple.
fn values<'py>(obj: &Bound<'py, PyAny>) -> PyResult<[Bound<'py, PyAny>; 3]> {
    if let Ok(bounds) = obj.cast::<Bounds>() {
        let this = bounds.get();
        return Ok([&this.low, &this.best, &this.high].map(|value| value.bind(obj.py()).clone()));
    }
    let (low, best, high) = obj.extract().map_err(|error| ours(obj.py(), error))?;
    Ok([low, best, high])
}
