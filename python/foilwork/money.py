"""Money: what a service costs and what to charge for it.

Amounts are :class:`Money` (whole minor units and a currency); percentages and rates are ``decimal.Decimal``; masses and
times are floats with their unit in the name. Every rounding is named and happens once.
"""

from foilwork._native.money import *
from foilwork._native.money import __all__ as __all__
