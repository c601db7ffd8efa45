from foilwork._native.business._chair import *
from foilwork._native.business._list import *
from foilwork._native.business._quote import *
from foilwork._native.business._sales import *
from foilwork._native.business._staff import *
from foilwork._native.business._stock import *

__all__ = [
    "DiscountBreakEven",
    "MarginOfSafety",
    "Pay",
    "PriceListEntry",
    "PricedLine",
    "PricedTable",
    "Productivity",
    "Quote",
    "QuoteDriver",
    "RankedService",
    "RentOrWageAt",
    "Reorder",
    "SalesMixLine",
    "SalesMixPlan",
    "SalesNeeded",
    "Totals",
    "break_even",
    "commission_pay",
    "discount_break_even",
    "margin_of_safety",
    "price_list",
    "price_services",
    "price_services_csv",
    "price_services_json",
    "productivity",
    "profit_before_tax",
    "quote_range",
    "rank_by_chair_hour",
    "rent_or_wage",
    "reorder",
    "sales_mix_target",
    "share_tips",
]
