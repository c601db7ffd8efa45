from collections.abc import Sequence
from typing import Literal

from foilwork._native import _Mapping, _Number
from foilwork._native.mix._recipe import Recipe
from foilwork._native.service._plan import Plan
from foilwork._native.teach._sheet import Worksheet

__all__ = [
    "dilution_workbook",
    "list_in_workbook",
    "plan_workbook",
    "recipe_workbook",
    "services_workbook",
    "worksheet_workbook",
]

def dilution_workbook(
    stocks_ww_percent: Sequence[float],
    targets_ww_percent: Sequence[float],
    total_g: float,
    division_g: float = 1.0,
    *,
    weaker_ww_percent: float = 0.0,
) -> bytes:
    """The wall chart of a dilution: bottles, targets, total and scale may be changed; grams and strength follow.

    Args:
        stocks_ww_percent: the bottles, in % w/w.
        targets_ww_percent: the strengths wanted, in % w/w.
        total_g: what every mix comes to.
        division_g: the scale's division.
        weaker_ww_percent: what is added: 0 for a diluent, or a weaker developer.

    Returns:
        The workbook; write it into a file that ends in .xlsx.

    Raises:
        FoilworkError: a value out of range, or more rows than a sheet holds.

    Source:
        Conservation of mass and of peroxide.

    Examples:
        >>> from foilwork.workbook import dilution_workbook
        >>> dilution_workbook([12, 9], [6, 3], 100)[:2]
        b'PK'
    """

def recipe_workbook(recipe: Recipe, total: _Number, division_g: float = 1.0) -> bytes:
    """A recipe and its size as a sheet: amounts and total may be changed; every part follows, in g as the scale can weigh it.

    Args:
        recipe: the recipe.
        total: its new total, in its own unit.
        division_g: the scale's division.

    Returns:
        The workbook; write it into a file that ends in .xlsx.

    Raises:
        FoilworkError: the recipe mixes units, or the scale is coarser than the bowl.

    Source:
        The rule of three.

    Examples:
        >>> from foilwork.mix import Recipe
        >>> from foilwork.workbook import recipe_workbook
        >>> recipe_workbook(Recipe("30 g lightener + 60 g 6%"), 75)[:2]
        b'PK'
    """

def plan_workbook(plan: Plan) -> bytes:
    """The bench sheet of a plan: what to weigh bowl by bowl, at any size of the bowl, and costs and price where there are any.

    Args:
        plan: the plan.

    Returns:
        The workbook; write it into a file that ends in .xlsx.

    Raises:
        FoilworkError: more rows than a sheet holds.

    Examples:
        >>> from foilwork.service import plan_file
        >>> from foilwork.workbook import plan_workbook
        >>> plan_workbook(plan_file("examples/soft-gradient.toml"))[:2]
        b'PK'
    """

def services_workbook(services: Sequence[_Mapping] | _Mapping, terms: _Mapping) -> bytes:
    """A list of services, costed and priced: the list for the wall, and what each costs and leaves.

    Args:
        services: the list, as for ``foilwork.business.price_services``.
        terms: what the salon pays and how it prices, as there.

    Returns:
        The workbook; write it into a file that ends in .xlsx.

    Raises:
        FoilworkError: as for ``price_services``.

    Examples:
        >>> from foilwork.workbook import services_workbook
        >>> toner = {"service": "toner", "hands_on_min": 15, "chair_min": 40, "price": "35.00"}
        >>> terms = {
        ...     "currency": "EUR", "wage_per_h": "18.00", "paid_h": 38, "productive_h": 19, "overhead": "48000",
        ...     "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
        ... }
        >>> services_workbook([toner], terms)[:2]
        b'PK'
    """

def worksheet_workbook(sheet: Worksheet, half: Literal["both", "problems", "key"] = "both") -> bytes:
    """A worksheet: problems with room for the answers, and the key on a page of its own; answers are marked as they are written.

    Args:
        sheet: the worksheet.
        half: ``"both"``, ``"problems"`` or ``"key"``.

    Returns:
        The workbook; write it into a file that ends in .xlsx.

    Raises:
        FoilworkError: another half.

    Examples:
        >>> from foilwork.teach import worksheet
        >>> from foilwork.workbook import worksheet_workbook
        >>> worksheet_workbook(worksheet(seed=4))[:2]
        b'PK'
    """

def list_in_workbook(workbook: bytes) -> str:
    """The first sheet of a workbook as the text of a CSV file, for whatever reads a list from text.

    Args:
        workbook: the bytes of an .xlsx file.

    Returns:
        The text, its fields separated by commas.

    Raises:
        FoilworkError: no workbook, an empty one, or a cell that is neither text nor number: its sheet and cell are named.

    Examples:
        >>> from foilwork.workbook import dilution_workbook, list_in_workbook
        >>> list_in_workbook(dilution_workbook([12], [3], 60)).partition(",")[0]
        'Dilution by mass'
    """
