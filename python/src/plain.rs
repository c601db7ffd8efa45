//! What wrappers share: bounds in, plain Python data out.

use crate::error::{FoilworkError, raise};
use foilwork::{quantity::MassFraction, source::Interval};
use pyo3::{exceptions::PyTypeError, prelude::*};
use serde::Serialize;

/// A strength in % w/w as an argument: a number, or a tuple of lower bound, best estimate and upper bound.
#[derive(Clone, Copy)]
pub struct Bounds(pub Interval<MassFraction>);

impl<'py> FromPyObject<'_, 'py> for Bounds {
    type Error = PyErr;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        let (low, best, high) = if let Ok(number) = obj.extract::<f64>() {
            (number, number, number)
        } else if let Ok(bounds) = obj.extract::<(f64, f64, f64)>() {
            bounds
        } else {
            let kind = obj.get_type();
            return Err(PyTypeError::new_err(format!("expected a number or (low, best, high) in % w/w, not {kind}")));
        };
        let percent = |value| MassFraction::from_percent_ww(value).map_err(raise);
        Interval::new(percent(low)?, percent(best)?, percent(high)?).map(Self).map_err(raise)
    }
}

/// Lower bound, best estimate and upper bound in % w/w.
pub fn percents(level: Interval<MassFraction>) -> (f64, f64, f64) {
    (level.low().percent_ww(), level.best().percent_ww(), level.high().percent_ww())
}

/// Serialised data as dicts, lists, strings and numbers.
pub fn plain<'py>(py: Python<'py>, data: &impl Serialize) -> PyResult<Bound<'py, PyAny>> {
    let json = serde_json::to_string(data).map_err(|error| FoilworkError::new_err(error.to_string()))?;
    py.import("json")?.call_method1("loads", (json,))
}
