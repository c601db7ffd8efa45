use pyo3::{
    PyErr, create_exception,
    exceptions::{PyUserWarning, PyValueError},
};

create_exception!(
    foilwork,
    FoilworkError,
    PyValueError,
    "Bad input: the text says which value, its unit, the allowed range and the way out."
);

create_exception!(
    foilwork,
    OutOfRangeWarning,
    PyUserWarning,
    "Values out of range became NaN because ``errors=\"nan\"`` was given; ``count`` says how many."
);

/// Turns any core error into the one Python exception, with the core's own text.
pub fn raise(error: impl std::error::Error) -> PyErr {
    FoilworkError::new_err(error.to_string())
}
