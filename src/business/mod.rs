//! Whether the salon lives from its prices: costs and prices come from [`money`](crate::money).
//!
//! Chemistry is unknown here. Takings are net of tax unless a name says gross.
//!
//! # Sell enough
//!
//! [`break_even`](break_even()) and [`target_profit`] for one service, [`sales_mix_target`] for a mix of services,
//! [`margin_of_safety`] for how far sales may fall, [`discount_break_even`](discount_break_even()) for what an offer must
//! bring in.
//!
//! # Use the chair
//!
//! [`rank_by_chair_hour`] finds what to promote on a full day, [`productivity`](productivity()) and [`beside_trade`] how
//! much of the paid time is sold, [`RentOrWage`] whether a chair is better rented.
//!
//! # Pay people
//!
//! [`commission_pay`], [`share_tips`], [`hiring_steps`].
//!
//! # Quote and list
//!
//! [`quote_range`] gives a price from-to with what drives it, [`price_list`](price_list()) a list by class of service; [`read_cost_ranges`] reads what they start from,
//! and [`list`] reads, costs and prices the services of a whole salon. [`StockLevel`] says when to order.

mod break_even;
mod chair_hour;
mod chair_rent;
mod commission;
mod cost_ranges;
mod discount_break_even;
mod hiring;
pub mod list;
mod price_list;
mod productivity;
mod quote;
mod sales_mix;
mod stock;
mod tips;
mod trace;
mod trace_stock;

pub use break_even::{
    Contribution, MarginOfSafety, MixedCost, SalesNeeded, break_even, contribution, margin_of_safety, profit_at,
    profit_before_tax, split_costs, target_profit,
};
pub use chair_hour::{ChairService, RankedService, contribution_per_chair_hour, rank_by_chair_hour};
pub use chair_rent::{RentOrWage, RentOrWageAt};
pub use commission::{CommissionRule, CommissionTier, Pay, commission_pay, commission_rate};
pub use cost_ranges::{COST_RANGE_COLUMNS, read_cost_ranges};
pub use discount_break_even::{DiscountBreakEven, discount_break_even};
pub use hiring::{HiringStep, best_number_to_hire, hiring_steps};
pub use price_list::{ClassCost, PriceListEntry, price_list};
pub use productivity::{
    BesideTrade, Denominator, Productivity, average_bill, beside_trade, median_count, productivity, retail_share,
};
pub use quote::{Deposit, Quote, QuoteDriver, QuotePart, quote_range};
pub use sales_mix::{SalesMixItem, SalesMixLine, SalesMixPlan, sales_mix_profit, sales_mix_target};
pub use stock::{Reorder, StockLevel};
pub use tips::{share_tips, tip_percent};
pub use trace::{
    trace_commission, trace_discount, trace_productivity, trace_sales_mix, trace_target_profit, trace_tips,
};
