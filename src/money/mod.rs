//! What a service costs, what to charge for it, and whether it pays.
//!
//! Amounts are whole minor units of one currency; rates are decimals; every rounding is named and happens once.
//! Chemistry is unknown here: quantities come in as masses, volumes, counts and times.

mod allocate;
mod amount;
mod break_even;
mod card_fee;
mod chair_hour;
mod chair_rent;
mod columns;
mod commission;
mod cost_table;
mod currency;
mod discount;
mod ending;
mod error;
mod exact;
mod hiring;
mod labour;
mod measure;
mod overhead;
mod parse;
mod percent;
mod price;
mod price_list;
mod price_rule;
mod product;
mod productivity;
mod quote;
mod rounding;
mod row_costing;
mod service_cost;
mod service_mix;
mod stock;
pub mod table;
mod tax;
mod tips;
mod unit_price;

pub use allocate::allocate;
pub use amount::Money;
pub use break_even::{
    Contribution, MarginOfSafety, MixedCost, SalesNeeded, break_even, contribution, margin_of_safety, profit_at,
    profit_before_tax, split_costs, target_profit,
};
pub use card_fee::CardFee;
pub use chair_hour::{ChairService, RankedService, contribution_per_chair_hour, rank_by_chair_hour};
pub use chair_rent::{RentOrWage, RentOrWageAt};
pub use columns::{ColumnError, ColumnTotals, CostColumns, ServiceColumns, cost_columns};
pub use commission::{CommissionRule, CommissionTier, Pay, commission_pay, commission_rate};
pub use cost_table::{CostLine, CostTable, Part};
pub use currency::Currency;
pub use discount::{DiscountBreakEven, DiscountedPrice, apply_discount, discount_break_even, price_before_discount};
pub use ending::{PriceEnding, Toward};
pub use error::MoneyError;
pub use hiring::{HiringStep, best_number_to_hire, hiring_steps};
pub use labour::{Labour, labour_per_minute, pay_per_hour};
pub use measure::Measure;
pub use overhead::{Overhead, overhead_per_chair_hour};
pub use parse::parse_decimal;
pub use percent::{CardRate, CommissionRate, Discount, Margin, Markup, OnCosts, ProfitTax, TaxRate};
pub use price::{SetPrice, cost_from_markup, price_from_margin, price_from_markup};
pub use price_list::{ClassCost, PriceListEntry, price_list};
pub use price_rule::{PriceRule, PriceTarget, ServicePrice};
pub use product::{packs_needed, product_cost, supply_cost, unit_price};
pub use productivity::{
    BesideTrade, Denominator, Productivity, average_bill, beside_trade, median_count, productivity, retail_share,
};
pub use quote::{Deposit, Quote, QuoteDriver, QuotePart, quote_range};
pub use rounding::Rounding;
pub use service_cost::{CostLineError, ServiceCost, SupplyUse, Variance, compare};
pub use service_mix::{MixItem, MixLine, MixPlan, mix_profit, mix_target};
pub use stock::{Reorder, Stock};
pub use tax::{TaxedPrice, add_tax, take_tax_out, tax_fraction, tax_rate};
pub use tips::{share_tips, tip_percent};
pub use unit_price::UnitPrice;
