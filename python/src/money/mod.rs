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
use business::SalesMixLine;
use price::{ServicePrice, SetPrice, TaxedPrice};
use quote::QuoteDriver;
use rule::PyPriceRule;

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

crate::room::room! {
    /// Money: what a service costs, what to charge, and whether it pays.
    money {
        amount { PyMoney }
        business {
            MarginOfSafety, SalesMixLine, SalesMixPlan, Pay, RankedService, RentOrWageAnswer, Reorder, SalesNeeded, break_even,
            margin_of_safety, sales_mix_target, profit_before_tax, rank_by_chair_hour,
        }
        columns { ServiceCosts, cost_columns }
        cost {
            PyCostTable, allocate, labour_cost, labour_per_minute, overhead_cost, overhead_per_chair_hour,
            packs_needed, product_cost, supply_cost, unit_price,
        }
        price {
            DiscountBreakEven, DiscountedPrice, ServicePrice, SetPrice, TaxedPrice, add_tax, apply_discount,
            discount_break_even, end_price, margin_and_markup, margin_to_markup, markup_to_margin,
            price_before_discount, price_from_margin, price_from_markup, take_tax_out,
        }
        quote { PriceListEntry, Quote, QuoteDriver, price_list, quote_range }
        rule { PyPriceRule }
        staff { commission_pay, productivity, rent_or_wage, reorder, share_tips }
        table { PricedServices, price_services, price_services_csv, price_services_json }
    }
}
