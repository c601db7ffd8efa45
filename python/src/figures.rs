//! A field of a result that is a float, or an array with one for each row.

use pyo3::{basic::CompareOp, prelude::*};
use std::{convert::Infallible, sync::Arc};

/// What a column-wise function puts into a field: a float where all its arguments were numbers, else a float64 array.
#[derive(Clone)]
pub struct Figures(Arc<Py<PyAny>>);

impl From<Bound<'_, PyAny>> for Figures {
    fn from(value: Bound<'_, PyAny>) -> Self {
        Self(Arc::new(value.unbind()))
    }
}

/// Two arrays are equal when all their elements are.
impl PartialEq for Figures {
    fn eq(&self, other: &Self) -> bool {
        Python::attach(|py| same(self.0.bind(py), other.0.bind(py)).unwrap_or(false))
    }
}

fn same(one: &Bound<'_, PyAny>, other: &Bound<'_, PyAny>) -> PyResult<bool> {
    let equal = one.rich_compare(other, CompareOp::Eq)?;
    match equal.getattr_opt("all")? {
        Some(all) => all.call0()?.is_truthy(),
        None => equal.is_truthy(),
    }
}

impl<'py> FromPyObject<'_, 'py> for Figures {
    type Error = Infallible;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> Result<Self, Infallible> {
        Ok(obj.to_owned().into())
    }
}

impl<'py> IntoPyObject<'py> for Figures {
    type Target = PyAny;
    type Output = Bound<'py, PyAny>;
    type Error = Infallible;

    fn into_pyobject(self, py: Python<'py>) -> Result<Self::Output, Infallible> {
        Ok(self.0.bind(py).clone())
    }
}
