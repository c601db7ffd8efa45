//! Wrappers of `foilwork::business`.

mod chair;
pub mod list;
mod quote;
mod sales;
mod staff;
mod stock;
mod trace;

crate::room::room! {
    /// Business: whether the salon lives from its prices.
    business {
        chair {
            Productivity, RankedService, average_bill, beside_trade, median_count, productivity, rank_by_chair_hour,
            retail_share, trace_productivity,
        }
        list { PricedLine, PricedTable, Totals, price_services, price_services_csv, price_services_json, trace_services }
        quote { PriceListEntry, Quote, QuoteDriver, price_list, quote_range, trace_quote }
        sales {
            Contribution, DiscountBreakEven, MarginOfSafety, SalesMixLine, SalesMixPlan, SalesNeeded, break_even,
            contribution, discount_break_even, margin_of_safety, profit_at, profit_before_tax, sales_mix_profit,
            sales_mix_target, split_costs,
        }
        staff {
            HiringStep, Pay, RentOrWageAt, best_number_to_hire, commission_pay, commission_rate, hiring_steps,
            rent_or_wage, share_tips, tip_percent, trace_commission, trace_rent_or_wage, trace_tips,
        }
        stock { ProductOrder, Reorder, reorder, reorder_list, trace_reorder }
        trace { trace_discount, trace_sales_mix, trace_target_profit }
    }
}
