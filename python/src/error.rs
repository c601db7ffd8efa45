use foilwork::text::inert;
use pyo3::{
    PyErr, create_exception,
    exceptions::{PyUnicodeError, PyUserWarning, PyValueError},
    prelude::*,
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

/// A wrong shape or number that Python or NumPy found first, as the one exception; everything else as it is.
pub fn ours(py: Python<'_>, error: PyErr) -> PyErr {
    if !error.is_instance_of::<PyValueError>(py) || is_ours_or_of_text(py, &error) {
        return error;
    }
    let told = FoilworkError::new_err(inert(&error.value(py).to_string()).into_owned());
    told.set_cause(py, Some(error));
    told
}

/// A text that is none has its own exception, which says where.
fn is_ours_or_of_text(py: Python<'_>, error: &PyErr) -> bool {
    error.is_instance_of::<FoilworkError>(py) || error.is_instance_of::<PyUnicodeError>(py)
}

/// An argument of a fixed shape, such as a tuple of three; another shape is refused by the one exception.
#[derive(Clone, Copy)]
pub struct Shaped<T>(pub T);

/// The coordinates of one colour.
pub type Three = Shaped<(f64, f64, f64)>;

impl<'py, T> FromPyObject<'_, 'py> for Shaped<T>
where
    T: for<'a> FromPyObject<'a, 'py>,
{
    type Error = PyErr;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        obj.extract().map(Self).map_err(|error: <T as FromPyObject<'_, 'py>>::Error| ours(obj.py(), error.into()))
    }
}
