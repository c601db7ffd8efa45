//! Wrappers of `foilwork::business`.

mod chair;
pub mod list;
mod quote;
mod sales;
mod staff;
mod stock;

crate::room::room! {
    /// Business: whether the salon lives from its prices.
    business {
        chair { Productivity, RankedService, productivity, rank_by_chair_hour }
        list { PricedLine, PricedTable, Totals, price_services, price_services_csv, price_services_json }
        quote { PriceListEntry, Quote, QuoteDriver, price_list, quote_range }
        sales {
            DiscountBreakEven, MarginOfSafety, SalesMixLine, SalesMixPlan, SalesNeeded, break_even,
            discount_break_even, margin_of_safety, profit_before_tax, sales_mix_target,
        }
        staff { Pay, RentOrWageAt, commission_pay, rent_or_wage, share_tips }
        stock { Reorder, reorder }
    }
}
