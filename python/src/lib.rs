//! The compiled half of the Python module `foilwork`: unwrap the arguments, call the core, wrap the answer.

use pyo3::prelude::*;

mod colour;
mod columns;
mod error;
mod limits;
mod mix;
mod money;
mod peroxide;
mod service;

/// Compiled functions and classes of foilwork; import them from `foilwork` and its submodules.
#[pymodule]
mod _native {
    #[pymodule_export]
    use super::error::{FoilworkError, OutOfRangeWarning, ServiceFileError};

    #[pymodule_export]
    use super::service::main;

    // --- peroxide ---
    #[pymodule_export]
    use super::peroxide::{convert, dilute};

    // --- mix ---

    // --- limits ---

    // --- colour ---

    // --- money ---

    // --- service ---
    #[pymodule_export]
    use super::service::{Plan, plan, service_schema};
}
