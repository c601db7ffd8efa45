//! Lists that a caller hands over, taken so that a length that cannot be is an error and not the end of the interpreter.

use crate::error::{FoilworkError, ours};
use pyo3::{exceptions::PyMemoryError, prelude::*, types::PyString};

/// An empty list with room for so many items.
pub fn room_for<T>(count: usize) -> PyResult<Vec<T>> {
    let mut items = Vec::new();
    items.try_reserve_exact(count).map_err(|_| PyMemoryError::new_err(format!("no room for {count} items")))?;
    Ok(items)
}

/// The most items of a list that is no column.
const MOST_ITEMS: usize = 1_000_000;

/// The items of any iterable. The length that it claims is not believed: an object may claim any.
pub struct Sequence<T>(pub Vec<T>);

impl<'py, T> FromPyObject<'_, 'py> for Sequence<T>
where
    T: for<'a> FromPyObject<'a, 'py>,
{
    type Error = PyErr;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        if obj.is_instance_of::<PyString>() {
            return Err(pyo3::exceptions::PyTypeError::new_err("expected a list, not a text"));
        }
        let mut items = Vec::new();
        // A list that is longer than this is a mistake, such as an array of rows where one blend belongs.
        for item in obj.try_iter()? {
            if items.len() == MOST_ITEMS {
                return Err(FoilworkError::new_err(format!(
                    "a list of more than {MOST_ITEMS} items: give at most that many"
                )));
            }
            items.try_reserve(1).map_err(|_| PyMemoryError::new_err("no room for so many items"))?;
            let item = item?;
            items.push(item.extract::<T>().map_err(|error| ours(item.py(), error.into()))?);
        }
        Ok(Self(items))
    }
}
