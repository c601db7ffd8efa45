from decimal import Decimal
from typing import final

from foilwork._native import _Answer, _MeasureUnit

__all__ = [
    "Reorder",
    "reorder",
]

@final
class Reorder(_Answer):
    """When to order, and how much."""

    __match_args__ = ("reorder_point", "due", "packs", "stock_days")
    @property
    def reorder_point(self) -> Decimal:
        """Order at this stock or below, in the unit of the stock."""
    @property
    def due(self) -> bool:
        """Whether that is the case now."""
    @property
    def packs(self) -> int:
        """How many whole packs to order; 0 while nothing is due."""
    @property
    def stock_days(self) -> Decimal | None:
        """How many days the stock on hand lasts; ``None`` when nothing is used."""

def reorder(
    on_hand: float,
    daily_use: float,
    pack: float,
    *,
    unit: _MeasureUnit,
    lead_days: int,
    cover_days: int,
    reserve: float = 0.0,
    on_order: float = 0.0,
) -> Reorder:
    """When to order a product, how many packs, and how long the stock lasts.

    Args:
        on_hand: on the shelf now, in ``unit``.
        daily_use: used on an average day.
        pack: what a pack holds.
        unit: ``"g"``, ``"mL"`` or ``"piece"`` for all of them.
        lead_days: days from order to delivery.
        cover_days: days the delivery should last.
        reserve: kept for bad days.
        on_order: ordered and not yet delivered.

    Raises:
        FoilworkError: a value out of range, an empty pack, an unknown unit.

    Examples:
        >>> from foilwork.business import reorder
        >>> reorder(900, 120, 500, unit="g", lead_days=5, cover_days=14, reserve=300)
        Reorder(reorder_point=Decimal('900'), due=True, packs=4, stock_days=Decimal('7.5'))
    """
