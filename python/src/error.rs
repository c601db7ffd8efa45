use pyo3::{PyErr, create_exception, exceptions::PyValueError};

create_exception!(
    foilwork,
    FoilworkError,
    PyValueError,
    "Bad input: the text says which value, its unit, the allowed range and the way out."
);

/// Turns any core error into the one Python exception, with the core's own text.
#[expect(dead_code, reason = "used by every wrapper")]
pub fn raise(error: impl std::error::Error) -> PyErr {
    FoilworkError::new_err(error.to_string())
}
