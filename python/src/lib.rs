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
    use super::peroxide::{
        HandlingFact, LabelReadings, ShelfBlend, Stock, blend_shelf, blend_two, convert, convert_bounds, density,
        density_bounds, dilute, dilute_volume, dilution_table, half_life_days, handling_facts, loss_rate,
        loss_rate_from_half_life, made_up, make_up, mix_strengths, mix_volumes, molar_volumes, permanganate_strength,
        permanganate_titre, read_label, round_to_scale, strength_after, strength_units, strength_ww, time_until,
    };

    // --- mix ---

    // --- limits ---

    // --- colour ---

    // --- money ---

    // --- service ---
    #[pymodule_export]
    use super::service::{Plan, plan, service_schema};
}
