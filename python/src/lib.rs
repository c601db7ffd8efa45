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
    use super::peroxide::{
        HandlingFact, LabelReadings, ShelfBlend, Stock, blend_shelf, blend_two, convert, convert_bounds, density,
        density_bounds, dilute, dilute_volume, dilution_table, half_life_days, handling_facts, loss_rate,
        loss_rate_from_half_life, made_up, make_up, mix_strengths, mix_volumes, molar_volumes, permanganate_strength,
        permanganate_titre, read_label, round_to_scale, strength_after, strength_units, strength_ww, time_until,
    };

    // --- mix ---
    #[pymodule_export]
    use super::composition::{Composition, DeclaredProduct, Ingredient, handling};
    #[pymodule_export]
    use super::mix::{Bowl, BowlPlan, Ratio, Weighing, as_applied, bowls, minimum_bowl, minimum_mass, weigh};
    #[pymodule_export]
    use super::recipe::{Additive, Recipe, convert_amount, mixing_card, natural_share};

    // --- limits ---
    #[pymodule_export]
    use super::limits::{LimitReport, LimitTable, check_limits, check_peroxide, jurisdictions, salt_factor};

    // --- colour ---
    #[pymodule_export]
    use super::colour::{
        Level, Shade, Swatch, TonerAnswer, ciede2000, complement, formula_level, lab_to_lch, lab_to_srgb, lab_to_xyz,
        lch_to_lab, lift_needed, pre_pigmentation, read_shades, result_level, srgb_to_lab, swatch, toner, xyz_to_lab,
    };

    // --- money ---
    #[pymodule_export]
    use super::money::{
        DiscountBreakEven, DiscountedPrice, MarginOfSafety, Pay, PriceListEntry, PricedServices, PyCostTable, PyMoney,
        PyPriceRule, Quote, QuoteDriver, RankedService, RentOrWageAnswer, Reorder, SalesMixLine, SalesMixPlan,
        SalesNeeded, ServiceCosts, ServicePrice, SetPrice, TaxedPrice, add_tax, allocate, apply_discount, break_even,
        commission_pay, cost_columns, discount_break_even, end_price, labour_cost, labour_per_minute,
        margin_and_markup, margin_of_safety, margin_to_markup, markup_to_margin, overhead_cost,
        overhead_per_chair_hour, packs_needed, price_before_discount, price_from_margin, price_from_markup, price_list,
        price_services, price_services_csv, price_services_json, product_cost, productivity, profit_before_tax,
        quote_range, rank_by_chair_hour, rent_or_wage, reorder, sales_mix_target, share_tips, supply_cost,
        take_tax_out, unit_price,
    };

    // --- service ---
    #[pymodule_export]
    use super::service::{Plan, plan, service_schema};
}
