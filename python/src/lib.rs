//! The compiled half of the Python module `foilwork`: unwrap the arguments, call the core, wrap the answer.

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
mod target;
mod teach;
mod toner;
mod triples;
mod workbook;

/// Compiled functions and classes of foilwork; import them from `foilwork` and its submodules.
#[pymodule]
mod _native {
    use super::PyResult;
    use pyo3::prelude::*;

    #[pymodule_export]
    use super::{
        bounds::Bounds,
        command::{fill_words, main, poured_cautions},
        error::{FoilworkError, OutOfRangeWarning},
    };

    #[pymodule_export]
    use super::{
        business::business, chart::chart, colour::colour, day::day, finding::finding, hair::hair, head::head,
        history::history, lift::lift, limits::limits, mix::mix, money::money, peroxide::peroxide, record::record,
        service::service, shop::shop, source::source, teach::teach, toner::toner, workbook::workbook,
    };

    #[pymodule_init]
    fn publish(module: &Bound<'_, PyModule>) -> PyResult<()> {
        module.setattr("__version__", env!("CARGO_PKG_VERSION"))?;
        super::room::publish(module)
    }
}
