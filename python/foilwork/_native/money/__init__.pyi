from foilwork._native.money._amount import *
from foilwork._native.money._columns import *
from foilwork._native.money._cost import *
from foilwork._native.money._discount import *
from foilwork._native.money._price import *
from foilwork._native.money._rule import *
from foilwork._native.money._table import *

__all__ = [
    "CostColumns",
    "CostLine",
    "CostTable",
    "DiscountedPrice",
    "Money",
    "PriceRule",
    "ServicePrice",
    "SetPrice",
    "TaxedPrice",
    "Variance",
    "add_tax",
    "allocate",
    "apply_discount",
    "cost_columns",
    "cost_from_markup",
    "end_price",
    "labour_cost",
    "labour_per_minute",
    "margin_and_markup",
    "margin_to_markup",
    "markup_to_margin",
    "overhead_cost",
    "overhead_per_chair_hour",
    "packs_needed",
    "pay_per_hour",
    "price_before_discount",
    "price_from_margin",
    "price_from_markup",
    "supply_cost",
    "take_tax_out",
    "tax_rate",
    "trace_margin",
    "trace_markup",
    "unit_price",
]
