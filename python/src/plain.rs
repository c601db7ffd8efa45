//! Serialised data of the core as plain Python data, and plain Python data as text for its readers.

use crate::error::{FoilworkError, ours};
use pyo3::{
    prelude::*,
    types::{IntoPyDict, PyBool, PyDict, PyFloat, PyInt, PyString},
};
use serde::Serialize;
use serde_json::{Map, Value};
use std::path::Path;

/// Serialised data as dicts, lists, strings and numbers.
pub fn plain<'py>(py: Python<'py>, data: &impl Serialize) -> PyResult<Bound<'py, PyAny>> {
    let json = serde_json::to_string(data).map_err(|error| FoilworkError::new_err(error.to_string()))?;
    py.import("json")?.call_method1("loads", (json,))
}

/// Data of the core as objects of a class of `foilwork.planned`.
pub fn objects<'py>(py: Python<'py>, kind: &str, data: &impl Serialize) -> PyResult<Bound<'py, PyAny>> {
    let kind = py.import("foilwork.planned")?.getattr(kind)?;
    py.import("foilwork._record")?.getattr("built")?.call1((kind, plain(py, data)?))
}

/// How deep the data of a file may go, as in its text; no shape of a file goes deeper than ten.
const MOST_LEVELS: usize = 100;

/// How many values the data of a file may have, about as many as the text of the longest file holds.
const MOST_VALUES: usize = 1_000_000;

/// A mapping as the data of a file: dates as text, exact decimals too; a number that no JSON holds is refused by name, and
/// so is what has no end.
pub fn data_of(value: &Bound<'_, PyAny>) -> PyResult<Value> {
    Bounded { values: 0 }.read(value, 0)
}

struct Bounded {
    values: usize,
}

impl Bounded {
    fn read(&mut self, value: &Bound<'_, PyAny>, depth: usize) -> PyResult<Value> {
        self.values += 1;
        if depth > MOST_LEVELS {
            let told = format!("data nested more than {MOST_LEVELS} levels deep: give the shape of a file");
            return Err(FoilworkError::new_err(told));
        }
        if self.values > MOST_VALUES {
            let told = format!("data of more than {MOST_VALUES} values: give at most that many");
            return Err(FoilworkError::new_err(told));
        }
        if value.is_none() {
            return Ok(Value::Null);
        }
        if let Ok(flag) = value.cast::<PyBool>() {
            return Ok(Value::Bool(flag.is_true()));
        }
        if let Ok(text) = value.cast::<PyString>() {
            return Ok(Value::String(text.to_string()));
        }
        if value.is_instance_of::<PyInt>()
            && let Ok(whole) = value.extract::<i64>()
        {
            return Ok(Value::from(whole));
        }
        if value.is_instance_of::<PyFloat>() || value.is_instance_of::<PyInt>() {
            let number = value.extract::<f64>().ok().and_then(serde_json::Number::from_f64);
            // A whole number that no f64 holds may be too long to print.
            let told = match value.cast::<PyFloat>() {
                Ok(number) => number.value().to_string(),
                Err(_) => "a whole number above 1.8e308".to_owned(),
            };
            return number
                .map(Value::Number)
                .ok_or_else(|| FoilworkError::new_err(format!("{told} is not a finite number")));
        }
        if value.hasattr("keys")? {
            let mut entries = Map::new();
            for key in value.call_method0("keys")?.try_iter()? {
                let key = key?;
                entries.insert(key.str()?.to_string(), self.read(&value.get_item(&key)?, depth + 1)?);
            }
            return Ok(Value::Object(entries));
        }
        if value.hasattr("isoformat")? {
            return Ok(Value::String(value.call_method0("isoformat")?.str()?.to_string()));
        }
        if let Ok(items) = value.try_iter() {
            return items.map(|item| self.read(&item?, depth + 1)).collect::<PyResult<Vec<_>>>().map(Value::Array);
        }
        Ok(Value::String(value.str()?.to_string()))
    }
}

/// The text of a file that grows line by line: what a crash has left of a character does not spoil the rest.
pub fn read_grown(py: Python<'_>, path: &Path) -> PyResult<String> {
    let how = [("encoding", "utf-8"), ("errors", "replace")].into_py_dict(py)?;
    text_of(py, path, &how)
}

/// The text of a file, by Python's own reader: its exceptions name the file and the reason as a caller expects them.
pub fn read_text(py: Python<'_>, path: &Path) -> PyResult<String> {
    let encoding = [("encoding", "utf-8")].into_py_dict(py)?;
    text_of(py, path, &encoding)
}

fn text_of(py: Python<'_>, path: &Path, how: &Bound<'_, PyDict>) -> PyResult<String> {
    let file = py.import("builtins")?.getattr("open")?.call((path,), Some(how)).map_err(|error| ours(py, error))?;
    let text = file.call_method0("read");
    file.call_method0("close")?;
    text?.extract()
}
