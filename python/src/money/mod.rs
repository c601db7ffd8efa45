//! Wrappers of `foilwork::money`.
//!
//! Amounts are `Money` objects; percentages and rates go in and out as `decimal.Decimal`; masses and times are floats
//! whose unit is in their name.

mod amount;
mod columns;
pub mod cost;
mod discount;
pub mod price;
pub mod rule;
pub mod table;

pub use amount::PyMoney;

use crate::error::raise;
use foilwork::money::Rounding;
use foilwork::quantity::{Duration, Mass};
use pyo3::PyResult;

/// What every rounding is unless the caller names another: a half goes away from zero.
pub const HALF_UP: &str = "midpoint-away-from-zero";

pub fn rounding(name: &str) -> PyResult<Rounding> {
    name.parse().map_err(raise)
}

pub fn grams(g: f64) -> PyResult<Mass> {
    Mass::from_g(g).map_err(raise)
}

pub fn hours(h: f64) -> PyResult<Duration> {
    Duration::from_h(h).map_err(raise)
}

pub fn minutes(min: f64) -> PyResult<Duration> {
    Duration::from_min(min).map_err(raise)
}

crate::room::room! {
    /// Money: what a service costs and what to charge for it.
    money {
        amount { PyMoney }
        columns { CostColumns, cost_columns }
        cost {
            allocate, labour_cost, labour_per_minute, overhead_cost, overhead_per_chair_hour,
            packs_needed, pay_per_hour, supply_cost, unit_price,
        }
        discount { DiscountedPrice, apply_discount, price_before_discount }
        price {
            ServicePrice, SetPrice, TaxedPrice, add_tax, cost_from_markup, end_price,
            margin_and_markup, margin_to_markup, markup_to_margin, price_from_margin,
            price_from_markup, take_tax_out, tax_rate, trace_margin, trace_markup,
        }
        rule { PyPriceRule }
        table { CostLine, PyCostTable, Variance }
    }
}
