//! What a service costs and what to charge for it.
//!
//! Amounts are whole minor units of one currency; rates are decimals; every rounding is named and happens once.
//! Chemistry is unknown here: quantities come in as masses, volumes, counts and times. Whether the salon lives from
//! it all is the next room, [`business`](crate::business).
//!
//! # Amounts
//!
//! [`Money`] with its [`Currency`], written in a [`MoneyStyle`], a named [`Rounding`], and [`allocate`](allocate()) to share an amount out without
//! losing a minor unit. Percentages are types that say of what they are a part: [`Margin`] is no [`Markup`].
//!
//! # Cost a service
//!
//! [`PackPrice`] and [`supply_cost`] for what comes from a pack, [`Labour`] for hands-on time, [`Overhead`] for the
//! chair, [`CardFee`] for the terminal. [`cost_line`](cost_line()) works one line out, [`ServiceCost`] a whole service
//! as a [`CostTable`], [`cost_columns`] a column of services; [`compare`] holds what was planned against what happened.
//!
//! # Set a price
//!
//! [`PriceRule`] puts margin or mark-up, tax, card fee and price ending together; [`price_from_margin`],
//! [`price_from_markup`] and [`add_tax`] are the single steps, and [`SetPrice::of`] judges a price that exists.
//! [`apply_discount`] takes something off.

pub(crate) mod allocate;
mod amount;
mod arithmetic;
mod block_costing;
mod card_fee;
mod columns;
mod cost_kind;
mod cost_line;
mod cost_table;
mod currency;
mod discount;
mod ending;
mod error;
pub(crate) mod exact;
mod labour;
mod measure;
mod measured;
mod overhead;
mod pack_price;
mod parse;
mod percent;
mod price;
mod price_rule;
mod rounding;
mod row_costing;
mod service_columns;
mod service_cost;
mod style;
mod tax;
mod trace;
mod unit_price;
mod variance;
#[cfg(test)]
mod vouched;

pub use allocate::allocate;
pub use amount::Money;
pub use card_fee::CardFee;
pub use columns::{BadRow, ColumnError, ColumnTotals, CostColumns, cost_columns, cost_columns_apart};
pub use cost_kind::CostKind;
pub use cost_line::{CostSource, cost_line};
pub use cost_table::{CostLine, CostShare, CostTable};
pub use currency::{Currency, InvalidCurrency};
pub use discount::{DiscountedPrice, apply_discount, price_before_discount};
pub use ending::{PriceEnding, Toward};
pub use error::MoneyError;
pub use labour::{Labour, labour_per_minute, pay_per_hour};
pub use measure::Measure;
pub use overhead::{Overhead, overhead_per_chair_hour};
pub use pack_price::{PackPrice, packs_needed, supply_cost, unit_price};
pub use parse::parse_decimal;
pub use percent::{CardRate, CommissionRate, Discount, Margin, Markup, OnCosts, ProductiveShare, ProfitTax, TaxRate};
pub use price::{SetPrice, cost_from_markup, price_from_margin, price_from_markup};
pub use price_rule::{PriceRule, PriceTarget, ServicePrice};
pub use rounding::Rounding;
pub use service_columns::ServiceColumns;
pub use service_cost::{CostEntry, CostLineError, ServiceCost};
pub use style::MoneyStyle;
pub use tax::{TaxedPrice, add_tax, take_tax_out, tax_fraction, tax_rate};
pub(crate) use trace::{COST_FORMULA, amount, net_of, of, percent, share};
pub use trace::{trace_margin, trace_markup};
pub use unit_price::UnitPrice;
pub use variance::{Variance, compare};
