from foilwork._native.limits._check import *
from foilwork._native.limits._rows import *
from foilwork._native.limits._table import *

__all__ = [
    "Judgement",
    "Limit",
    "ListedLimit",
    "Notice",
    "Report",
    "SumJudgement",
    "Table",
    "check",
    "check_peroxide",
    "jurisdictions",
    "salt_factor",
]
