from foilwork._native.workbook._made import *

__all__ = [
    "dilution_workbook",
    "list_in_workbook",
    "plan_workbook",
    "recipe_workbook",
    "services_workbook",
    "worksheet_workbook",
]
