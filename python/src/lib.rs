//! The compiled half of the Python module `foilwork`: unwrap the arguments, call the core, wrap the answer.

use error::FoilworkError;
use foilwork::text::inert;
use pyo3::prelude::*;

mod answer;
mod bounds;
mod business;
mod chart;
mod colour;
mod columns;
mod command;
mod day;
mod error;
mod exact;
mod figures;
mod finding;
mod hair;
mod head;
mod history;
mod layout;
mod lift;
mod limits;
mod mix;
mod money;
mod peroxide;
mod plain;
mod record;
mod room;
mod sequence;
mod service;
mod shop;
mod source;
mod stepped;
mod target;
mod teach;
mod toner;
mod triples;
mod workbook;

/// The rooms by name. A room is made when it is first imported: its classes cost more than all else that an import does.
macro_rules! rooms {
    ($($room:ident),+ $(,)?) => {
        const ROOMS: &[&str] = &[$(stringify!($room)),+];

        fn made(py: Python<'_>, name: &str) -> PyResult<Py<PyModule>> {
            match name {
                $(stringify!($room) => Ok(pyo3::wrap_pymodule!($room::$room)(py)),)+
                _ => Err(FoilworkError::new_err(format!("no room is called \"{}\" (they are {})", inert(name), ROOMS.join(", ")))),
            }
        }
    };
}
rooms!(
    business, chart, colour, day, finding, hair, head, history, lift, limits, mix, money, peroxide, record, service,
    shop, source, teach, toner, workbook,
);

/// The compiled half of a room, by its name among ``ROOMS``; ``import foilwork._native.<room>`` asks for it.
///
/// Raises:
///     FoilworkError: no room has this name.
///
/// Examples:
///     >>> from foilwork._native import open_room
///     >>> open_room("peroxide").__name__
///     'foilwork._native.peroxide'
#[pyfunction]
fn open_room(py: Python<'_>, name: &str) -> PyResult<Py<PyModule>> {
    let (room, full) = (made(py, name)?, format!("foilwork._native.{name}"));
    // It is the same one whenever it is asked for.
    if room.bind(py).name()? != full.as_str() {
        room::opened(room.bind(py), &full)?;
    }
    Ok(room)
}

/// Compiled functions and classes of foilwork; import them from `foilwork` and its submodules.
#[pymodule]
mod _native {
    use super::PyResult;
    use pyo3::{prelude::*, types::PyTuple};

    #[pymodule_export]
    use super::{
        bounds::Bounds,
        command::{fill_words, main, number_for_all_rows, poured_cautions},
        error::{FoilworkError, OutOfRangeWarning},
        open_room,
    };

    #[pymodule_init]
    fn publish(module: &Bound<'_, PyModule>) -> PyResult<()> {
        let py = module.py();
        module.setattr("__version__", env!("CARGO_PKG_VERSION"))?;
        module.setattr("ROOMS", PyTuple::new(py, super::ROOMS)?)?;
        // Like a package: rooms are imported from it, by the finder of `foilwork`.
        module.setattr("__path__", PyTuple::empty(py))
    }
}
