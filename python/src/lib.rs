//! The compiled half of the Python module `foilwork`: unwrap the arguments, call the core, wrap the answer.

use pyo3::prelude::*;

mod colour;
mod columns;
mod composition;
mod error;
mod limits;
mod mix;
mod money;
mod peroxide;
mod plain;
mod recipe;
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
    #[pymodule_export]
    use super::composition::{Composition, DeclaredProduct, Ingredient, handling};
    #[pymodule_export]
    use super::mix::{Bowl, BowlPlan, Ratio, Weighing, as_applied, bowls, minimum_bowl, weigh};
    #[pymodule_export]
    use super::recipe::{Additive, Recipe, convert_amount, mixing_card, natural_share};

    // --- limits ---
    #[pymodule_export]
    use super::limits::{LimitReport, LimitTable, check_limits, check_peroxide, jurisdictions, salt_factor};

    // --- colour ---

    // --- money ---

    // --- service ---
    #[pymodule_export]
    use super::service::{Plan, plan, service_schema};
}
