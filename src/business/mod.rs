//! Whether the salon pays: break-even, the mix of sales, pay, rent, hiring, productivity, stock, quotes and lists.
//!
//! Costs and prices come from [`money`](crate::money); chemistry is unknown here.

mod break_even;
mod chair_hour;
mod chair_rent;
mod commission;
mod discount_break_even;
mod hiring;
pub mod list;
mod price_list;
mod productivity;
mod quote;
mod sales_mix;
mod stock;
mod tips;

pub use break_even::{
    Contribution, MarginOfSafety, MixedCost, SalesNeeded, break_even, contribution, margin_of_safety, profit_at,
    profit_before_tax, split_costs, target_profit,
};
pub use chair_hour::{ChairService, RankedService, contribution_per_chair_hour, rank_by_chair_hour};
pub use chair_rent::{RentOrWage, RentOrWageAt};
pub use commission::{CommissionRule, CommissionTier, Pay, commission_pay, commission_rate};
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
