from foilwork._native.limits._check import *

__all__ = [
    "LimitReport",
    "LimitTable",
    "check_limits",
    "check_peroxide",
    "jurisdictions",
    "salt_factor",
]
