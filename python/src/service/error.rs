//! The exception for a service file that cannot be planned.

use crate::error::{FoilworkError, told};
use foilwork::reader::Problems;
use pyo3::{create_exception, prelude::*};

create_exception!(
    foilwork.service,
    ServiceFileError,
    FoilworkError,
    "A service file that cannot be planned. ``problems`` lists (line, field, message) for everything that is wrong."
);

/// The text of all problems, and the same as a list of (line, field, message).
pub fn raise_problems(py: Python<'_>, problems: &Problems) -> PyErr {
    let error = ServiceFileError::new_err(told(problems));
    let list: Vec<(Option<usize>, &str, &str)> = problems
        .0
        .iter()
        .map(|problem| (problem.at.map(|at| at.line), problem.field.as_str(), problem.message.as_str()))
        .collect();
    match error.value(py).setattr("problems", list) {
        Ok(()) => error,
        Err(other) => other,
    }
}
