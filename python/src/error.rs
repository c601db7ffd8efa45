use foilwork::text::inert;
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
    FoilworkError::new_err(told(error))
}

/// The text of an error, in which nothing that was typed acts on the terminal it is printed on.
pub fn told(error: impl std::error::Error) -> String {
    inert(&error.to_string()).into_owned()
}
