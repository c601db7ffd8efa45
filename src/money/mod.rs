//! What a service costs, what to charge for it, and whether it pays.
//!
//! Amounts are whole minor units of one currency; rates are decimals; every rounding is named and happens once.
//! Chemistry is unknown here: quantities come in as masses, volumes, counts and times.

mod allocate;
mod amount;
mod card_fee;
mod cost_table;
mod currency;
mod ending;
mod error;
mod exact;
mod labour;
mod measure;
mod overhead;
mod parse;
mod percent;
mod price;
mod product;
mod rounding;
mod service_cost;
mod tax;
mod unit_price;

pub use allocate::allocate;
pub use amount::Money;
pub use card_fee::CardFee;
pub use cost_table::{CostLine, CostTable, Part};
pub use currency::Currency;
pub use ending::{PriceEnding, Toward};
pub use error::MoneyError;
pub use labour::{Labour, labour_per_minute, pay_per_hour};
pub use measure::Measure;
pub use overhead::{Overhead, overhead_per_chair_hour};
pub use parse::parse_decimal;
pub use percent::{CardRate, CommissionRate, Discount, Margin, Markup, OnCosts, TaxRate};
pub use price::{SetPrice, cost_from_markup, price_from_margin, price_from_markup};
pub use product::{packs_needed, product_cost, supply_cost, unit_price};
pub use rounding::Rounding;
pub use service_cost::{CostLineError, ServiceCost, SupplyUse, Variance, compare};
pub use tax::{TaxedPrice, add_tax, take_tax_out, tax_fraction, tax_rate};
pub use unit_price::UnitPrice;
