"""What the law allows on the hair, by jurisdiction, with the source of every figure. No table is complete."""

from foilwork._native import LimitReport, LimitTable, check_limits, check_peroxide, jurisdictions, salt_factor

__all__ = ["LimitReport", "LimitTable", "check_limits", "check_peroxide", "jurisdictions", "salt_factor"]
