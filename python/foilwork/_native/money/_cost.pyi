from collections.abc import Sequence
from decimal import Decimal

from foilwork import _words
from foilwork._native import _MeasureUnit, _Number
from foilwork._native.money._amount import Money

__all__ = [
    "allocate",
    "labour_cost",
    "labour_per_minute",
    "overhead_cost",
    "overhead_per_chair_hour",
    "packs_needed",
    "pay_per_hour",
    "supply_cost",
    "unit_price",
]

def unit_price(pack_price: Money, pack: float, *, unit: _MeasureUnit) -> Decimal:
    """Price of one gram, millilitre or piece, unrounded to 28 significant digits.

    Args:
        pack_price: what a pack costs.
        pack: what it holds, in ``unit``.
        unit: ``"g"``, ``"mL"`` or ``"piece"``.

    Raises:
        FoilworkError: as :func:`supply_cost`.

    Source:
        OpenStax, Prealgebra 2e, module m81303.

    Examples:
        >>> from foilwork.money import Money, unit_price
        >>> unit_price(Money("3.99", "USD"), 24, unit="piece")
        Decimal('0.16625')
    """

def packs_needed(need: float, pack: float, *, unit: _MeasureUnit) -> int:
    """How many whole packs cover the need: always rounded up.

    Args:
        need: what is needed, in ``unit``.
        pack: what a pack holds, in ``unit``.
        unit: ``"g"``, ``"mL"`` or ``"piece"``.

    Raises:
        FoilworkError: an empty pack, a value out of range, an unknown unit.

    Examples:
        >>> from foilwork.money import packs_needed
        >>> packs_needed(17_500, 12, unit="g")
        1459
    """

def labour_per_minute(wage_per_h: Money, on_costs_percent: _Number, paid_h: float, productive_h: float) -> Decimal:
    """Cost of labour for one productive minute, on-costs and idle hours included, unrounded.

    Args:
        wage_per_h: wage for one paid hour.
        on_costs_percent: what the employer pays on top, in percent of the wage.
        paid_h: paid hours of a period.
        productive_h: hours of the same period with hands on a guest.

    Raises:
        FoilworkError: a negative wage, on-costs out of range, productive hours above paid ones.

    Examples:
        >>> from foilwork.money import Money, labour_per_minute
        >>> labour_per_minute(Money("15.00", "EUR"), 20, paid_h=40, productive_h=30)
        Decimal('0.4')
    """

def labour_cost(
    hands_on_min: float,
    wage_per_h: Money,
    on_costs_percent: _Number,
    paid_h: float,
    productive_h: float,
    *,
    rounding: _words._Rounding = "midpoint-away-from-zero",
) -> Money:
    """Cost of so much hands-on time, rounded once from the exact value.

    Args:
        hands_on_min: hands-on time, in min.
        wage_per_h: wage for one paid hour.
        on_costs_percent: what the employer pays on top, in percent of the wage.
        paid_h: paid hours of a period.
        productive_h: hours of the same period with hands on a guest.
        rounding: how the cost becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: as :func:`labour_per_minute`.

    Examples:
        >>> from foilwork.money import Money, labour_cost
        >>> labour_cost(75, Money("16.00", "EUR"), 25, paid_h=38, productive_h=28.5)
        Money('33.33', 'EUR')
    """

def overhead_per_chair_hour(overhead: Money, chairs: int, productive_h_per_chair: float) -> Decimal:
    """Overhead for one productive hour of one chair, unrounded.

    Args:
        overhead: overhead of a period.
        chairs: how many chairs carry it.
        productive_h_per_chair: hours of one chair in that period with a guest in it. Opening hours understate it.

    Raises:
        FoilworkError: a negative overhead, no chair, no productive hours.

    Source:
        Overhead rate per hour of activity: OpenStax, Principles of Accounting, Volume 2, module m68135.

    Examples:
        >>> from foilwork.money import Money, overhead_per_chair_hour
        >>> overhead_per_chair_hour(Money("60000", "EUR"), chairs=4, productive_h_per_chair=1500)
        Decimal('10')
    """

def overhead_cost(
    chair_min: float,
    overhead: Money,
    chairs: int,
    productive_h_per_chair: float,
    *,
    rounding: _words._Rounding = "midpoint-away-from-zero",
) -> Money:
    """Overhead of so much time in the chair, rounded once from the exact value.

    Args:
        chair_min: time in the chair, in min.
        overhead: overhead of a period.
        chairs: how many chairs carry it.
        productive_h_per_chair: hours of one chair in that period with a guest in it.
        rounding: how the cost becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: as :func:`overhead_per_chair_hour`.

    Examples:
        >>> from foilwork.money import Money, overhead_cost
        >>> overhead_cost(100, Money("60000", "EUR"), chairs=4, productive_h_per_chair=1500)
        Money('16.67', 'EUR')
    """

def allocate(amount: Money, weights: Sequence[_Number]) -> list[Money]:
    """Share an amount out in proportion to weights; the shares always add up to the amount.

    Args:
        amount: what is shared out.
        weights: one for each share, nothing or more.

    Raises:
        FoilworkError: no weights, a negative one, or all of them nothing.

    Examples:
        >>> from foilwork.money import Money, allocate
        >>> allocate(Money("10.00", "EUR"), [1, 1, 1])
        [Money('3.34', 'EUR'), Money('3.33', 'EUR'), Money('3.33', 'EUR')]
    """

def pay_per_hour(paid: Money, worked_h: float) -> Decimal:
    """The wage for an hour when a payment covers some hours.

    Args:
        paid: what was paid.
        worked_h: the hours that it covers.

    Raises:
        FoilworkError: no hours.

    Examples:
        >>> from foilwork.money import Money, pay_per_hour
        >>> pay_per_hour(Money("684", "EUR"), 38)
        Decimal('18')
    """

def supply_cost(
    pack_price: Money, pack: float, used: float, *, unit: _MeasureUnit, rounding: _words._Rounding = "midpoint-away-from-zero"
) -> Money:
    """Cost of what was taken from a pack, waste included, at its unrounded price: by mass, by volume or as a count.

    Args:
        pack_price: what a pack costs.
        pack: what it holds, in ``unit``.
        used: what was used and thrown away, in ``unit``.
        unit: ``"g"``, ``"mL"`` or ``"piece"``.
        rounding: how the cost becomes whole minor units, once; see :class:`Money`.

    Raises:
        FoilworkError: an empty pack, a price below nothing, a value out of range, an unknown unit.

    Examples:
        >>> from foilwork.money import Money, supply_cost
        >>> supply_cost(Money("18.90", "EUR"), 1000, 42, unit="g")
        Money('0.79', 'EUR')
        >>> supply_cost(Money("24.00", "EUR"), 500, 42, unit="piece")
        Money('2.02', 'EUR')
    """
