"""Business: whether the salon lives from its prices.

Break-even, the mix of sales, pay, rent, productivity, stock, quotes and lists of services. Costs and prices come from
:mod:`foilwork.money`; amounts are :class:`foilwork.money.Money`.
"""

from foilwork._native.business import *
from foilwork._native.business import __all__ as __all__
