//! Wrappers of `foilwork::money`.
//!
//! Amounts are `Money` objects; percentages and rates go in and out as `decimal.Decimal`; masses and times are floats
//! whose unit is in their name.

mod amount;
mod answer;
mod business;
mod columns;
mod cost;
mod exact;
mod price;
mod quote;
mod rule;
mod staff;
mod table;

pub use amount::PyMoney;
pub use business::*;
pub use columns::{ServiceCosts, cost_columns};
pub use cost::*;
pub use price::*;
pub use quote::*;
pub use rule::*;
pub use staff::*;
pub use table::{PricedServices, price_services, price_services_csv, price_services_json};

use crate::error::raise;
use foilwork::money::Rounding;
use foilwork::quantity::{Duration, Mass};
use pyo3::PyResult;

/// What every rounding is unless the caller names another: a half goes away from zero.
const HALF_UP: &str = "midpoint-away-from-zero";

fn rounding(name: &str) -> PyResult<Rounding> {
    name.parse().map_err(raise)
}

fn grams(g: f64) -> PyResult<Mass> {
    Mass::from_g(g).map_err(raise)
}

fn hours(h: f64) -> PyResult<Duration> {
    Duration::from_h(h).map_err(raise)
}

fn minutes(min: f64) -> PyResult<Duration> {
    Duration::from_min(min).map_err(raise)
}
