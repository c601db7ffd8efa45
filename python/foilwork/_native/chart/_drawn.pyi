from collections.abc import Sequence
from typing import Literal

from foilwork._native import _Number
from foilwork._native.chart._picture import Picture
from foilwork._native.colour._level import _Level
from foilwork._native.money import CostTable, Money
from foilwork._words import _Hue

__all__ = [
    "cost_chart",
    "dilution_chart",
    "hue_wheel",
    "margin_chart",
    "pigment_chart",
]

def dilution_chart(
    stocks_ww_percent: Sequence[float],
    targets_ww_percent: Sequence[float],
    total_g: float,
    division_g: float = 1.0,
    *,
    weaker_ww_percent: float = 0.0,
    title: str = "Dilution",
) -> Picture:
    """A dilution grid: a line for each bottle, a column for each strength wanted, in each cell the grams of both parts.

    Args:
        stocks_ww_percent: the bottles, at most 12, in % w/w.
        targets_ww_percent: the strengths wanted, at most 12, in % w/w.
        total_g: what every mix comes to.
        division_g: the scale's division.
        weaker_ww_percent: what is added: 0 for a diluent, or a weaker developer.
        title: what stands above it.

    Returns:
        The picture.

    Raises:
        FoilworkError: a value out of range, or more lines or columns than can be read.

    Examples:
        >>> from foilwork.chart import dilution_chart
        >>> "15 g + 45 g" in dilution_chart([12], [3], 60).svg
        True
    """

def pigment_chart(
    natural_level: _Level, names: Literal["european", "us"] = "european", *, title: str = "Levels and their warmth"
) -> Picture:
    """Levels 1 to 10: natural hair, hair lightened to the level, the warmth that shows and the hue that neutralises it.

    Args:
        natural_level: the level from which hair is lightened.
        names: whose names the levels have besides: ``"european"`` or ``"us"``.
        title: what stands above it.

    Returns:
        The picture; its swatches are a model, not a photograph.

    Raises:
        FoilworkError: a level that is not on the scale, or other names.

    Examples:
        >>> from foilwork.chart import pigment_chart
        >>> "yellow-orange" in pigment_chart(4).svg
        True
    """

def hue_wheel(marked: _Hue | None = None, *, title: str = "Twelve hues") -> Picture:
    """The wheel of twelve hues; a marked one is joined to the one that neutralises it.

    Args:
        marked: a hue such as ``"orange"``.
        title: what stands above it.

    Returns:
        The picture.

    Raises:
        FoilworkError: a hue that is not on the wheel.

    Examples:
        >>> from foilwork.chart import hue_wheel
        >>> "orange is neutralised by blue" in hue_wheel("orange").svg
        True
    """

def cost_chart(table: CostTable, *, title: str = "Cost", left_out: Sequence[str] = ()) -> Picture:
    """What a service costs, kind by kind, with the share of each.

    Args:
        table: the costs, a :class:`foilwork.money.CostTable`.
        title: what stands above it.
        left_out: what the costs leave out, in words; without any they are all there is.

    Returns:
        The picture.

    Examples:
        >>> from foilwork.chart import cost_chart
        >>> from foilwork.money import CostTable, Money
        >>> table = CostTable("EUR")
        >>> table.add("product", "lightener", Money("10.00", "EUR"))
        >>> table.add("labour", "hands-on time", Money("30.00", "EUR"))
        >>> "30.00 EUR, 75.0 %" in cost_chart(table).svg
        True
    """

def margin_chart(
    cost: Money, marked_percent: _Number | None = None, *, title: str = "Net price against margin"
) -> Picture:
    """Net price against margin for a cost; a marked margin says its price and its mark-up.

    Args:
        cost: what the service costs, a :class:`foilwork.money.Money`.
        marked_percent: a margin that is marked, in percent of the net price, 0 to 95.
        title: what stands above it.

    Returns:
        The picture.

    Raises:
        FoilworkError: a cost that is not above zero, or a margin outside 0 to 95 %.

    Examples:
        >>> from foilwork.chart import margin_chart
        >>> from foilwork.money import Money
        >>> "margin 40 %: 100.00 EUR, mark-up 66.7 %" in margin_chart(Money("60.00", "EUR"), 40).svg
        True
    """
