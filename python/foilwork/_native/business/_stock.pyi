from collections.abc import Sequence
from decimal import Decimal
from typing import final

from foilwork._native import _Answer, _Mapping, _MeasureUnit
from foilwork._native.source._trail import TracedResult

__all__ = [
    "ProductOrder",
    "Reorder",
    "reorder",
    "reorder_list",
    "trace_reorder",
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

@final
class ProductOrder(_Answer):
    """One product of the shop: how fast it goes, and whether to order it."""

    __match_args__ = ("product", "daily_use_g", "in_hand_g", "pack_g", "stock_days", "reorder_point", "due", "packs")
    @property
    def product(self) -> str:
        """The product, by its name in the shop."""
    @property
    def daily_use_g(self) -> float:
        """Used on an average day, waste included."""
    @property
    def in_hand_g(self) -> float | None:
        """On the shelf; ``None`` where the shop does not say."""
    @property
    def pack_g(self) -> float | None:
        """What a pack holds; ``None`` where the shop has no pack with a price."""
    @property
    def stock_days(self) -> Decimal | None:
        """How many days the stock in hand lasts; ``None`` where it is not known or nothing is used."""
    @property
    def reorder_point(self) -> Decimal | None:
        """Order at this stock or below, in g; ``None`` where stock or pack is not known."""
    @property
    def due(self) -> bool | None:
        """Whether that is the case now."""
    @property
    def packs(self) -> int | None:
        """How many whole packs to order; 0 while nothing is due."""

def reorder_list(
    services: Sequence[_Mapping] | _Mapping,
    shop: _Mapping,
    *,
    sold_in_days: int,
    lead_days: int,
    cover_days: int,
    reserve_days: int = 0,
) -> list[ProductOrder]:
    """What to order of the products that a list of services takes.

    What is ordered and not yet delivered the shop does not know.

    Args:
        services: as in :func:`price_services`; ``product`` and ``developer`` name products of the shop, ``sold`` counts.
        shop: the shop as a mapping of the shape of a shop file, with ``in_hand_g``, ``pack_g`` and ``price`` of its products.
        sold_in_days: the days in which the list was sold.
        lead_days: days from order to delivery.
        cover_days: days a delivery should last.
        reserve_days: of how many days' use is kept for bad days.

    Returns:
        A ``ProductOrder`` for each product that the list names, in the order of first mention.

    Raises:
        FoilworkError: everything that is wrong with list or shop; no days at all.

    Examples:
        >>> from foilwork.business import reorder_list
        >>> powder = {"name": "powder", "ratio": "1:2", "in_hand_g": 900, "pack_g": 500, "price": "31.50"}
        >>> foils = {
        ...     "service": "foils", "product": "powder", "product_g": 32, "product_waste_g": 4, "hands_on_min": 65,
        ...     "chair_min": 120, "sold": 100,
        ... }
        >>> shop = {"currency": "EUR", "lightener": [powder]}
        >>> order = reorder_list([foils], shop, sold_in_days=30, lead_days=5, cover_days=14, reserve_days=3)[0]
        >>> order.daily_use_g, order.due, order.packs
        (120.0, True, 4)
    """

def trace_reorder(
    on_hand: float,
    daily_use: float,
    pack: float,
    *,
    unit: _MeasureUnit,
    lead_days: int,
    cover_days: int,
    reserve: float = 0.0,
    on_order: float = 0.0,
) -> list[TracedResult]:
    """How the point at which to order a product, the packs and the days that it lasts come about.

    Args:
        on_hand: on the shelf now, in ``unit``.
        daily_use: used on an average day.
        pack: what a pack holds.
        unit: ``"g"``, ``"mL"`` or ``"piece"`` for all of them.
        lead_days: days from order to delivery.
        cover_days: days the delivery should last.
        reserve: kept for bad days.
        on_order: ordered and not yet delivered.

    Returns:
        A :class:`foilwork.source.TracedResult` for each.

    Raises:
        FoilworkError: as :func:`reorder`.

    Examples:
        >>> from foilwork.business import trace_reorder
        >>> trace_reorder(900, 120, 500, unit="g", lead_days=5, cover_days=14, reserve=300)[0].worked
        '120 x 5 + 300'
    """
