"""Workbooks for spreadsheets, as bytes: live formulas, inputs that are checked, texts that are never formulas."""

from foilwork._native.workbook import *
from foilwork._native.workbook import __all__ as __all__
