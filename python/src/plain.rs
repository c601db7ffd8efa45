//! Serialised data of the core as plain Python data.

use crate::error::FoilworkError;
use pyo3::prelude::*;
use serde::Serialize;

/// Serialised data as dicts, lists, strings and numbers.
pub fn plain<'py>(py: Python<'py>, data: &impl Serialize) -> PyResult<Bound<'py, PyAny>> {
    let json = serde_json::to_string(data).map_err(|error| FoilworkError::new_err(error.to_string()))?;
    py.import("json")?.call_method1("loads", (json,))
}
