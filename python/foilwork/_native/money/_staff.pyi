from collections.abc import Sequence
from decimal import Decimal

from foilwork._native import _Number
from foilwork._native.money._amount import Money
from foilwork._native.money._business import Pay, RentOrWageAnswer, Reorder

__all__ = [
    "commission_pay",
    "productivity",
    "rent_or_wage",
    "reorder",
    "share_tips",
]

def commission_pay(
    takings: Money,
    *,
    percent: _Number | None = None,
    threshold: Money | None = None,
    tiers: Sequence[tuple[Money | None, _Number]] | None = None,
    base: Money | None = None,
    rounding: str = "midpoint-away-from-zero",
) -> Pay:
    """Commission on the net takings of one period, with the base pay beside it.

    Args:
        takings: net takings of the period.
        percent: one rate on everything, or on what exceeds ``threshold``.
        threshold: nothing is paid up to here.
        tiers: ``(up_to, percent)`` for each slice, rising; the last has ``None`` and no end. Instead of ``percent``.
        base: wage or retainer; nothing when left out.
        rounding: how the commission becomes whole minor units, once; see :class:`Money`.

    Raises:
        FoilworkError: no rule or two, a rate outside 0 to 100, tiers that do not rise, negative takings.

    Source:
        Yale-New Haven Teachers Institute, unit 80.07.07, 1980, examples 1-3.

    Examples:
        >>> from foilwork.money import Money, commission_pay
        >>> commission_pay(Money("1300", "USD"), tiers=[(Money("800", "USD"), 8), (None, 14)]).commission
        Money('134.00', 'USD')
        >>> week, base = Money("1540", "USD"), Money("120", "USD")
        >>> commission_pay(week, percent=5, threshold=Money("500", "USD"), base=base).total
        Money('172.00', 'USD')
    """

def share_tips(tips: Money, worked_h: Sequence[float]) -> list[Money]:
    """Share pooled tips by time worked, and lose no minor unit.

    Args:
        tips: all tips.
        worked_h: hours of each person.

    Raises:
        FoilworkError: nobody, or nobody worked; tips below nothing.

    Examples:
        >>> from foilwork.money import Money, share_tips
        >>> [str(share) for share in share_tips(Money("50.00", "EUR"), [8, 8, 5])]
        ['19.05 EUR', '19.05 EUR', '11.90 EUR']
    """

def rent_or_wage(
    takings: Money,
    *,
    rent: Money,
    own_costs: Money,
    variable_percent: _Number,
    wage: Money,
    commission_percent: _Number,
    rounding: str = "midpoint-away-from-zero",
) -> RentOrWageAnswer:
    """Chair rent against wage for the same chair and period, seen by the one who works at it.

    Args:
        takings: net takings of the period.
        rent: rent of the chair.
        own_costs: what else a self-employed stylist pays for.
        variable_percent: what the work itself costs, in percent of the takings.
        wage: the wage when employed.
        commission_percent: commission when employed, in percent of the takings.
        rounding: how amounts become whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: shares that take all of the takings, a value out of range, two currencies.

    Examples:
        >>> from foilwork.money import Money, rent_or_wage
        >>> eur = lambda text: Money(text, "EUR")
        >>> renting = {"rent": eur("200"), "own_costs": eur("50"), "variable_percent": 12}
        >>> choice = rent_or_wage(eur("1500"), **renting, wage=eur("480"), commission_percent=15)
        >>> choice.break_even_takings, choice.difference
        (Money('1000.00', 'EUR'), Money('365.00', 'EUR'))
    """

def productivity(productive_h: float, of_h: float, *, denominator: str) -> tuple[Decimal, str]:
    """Productive time in percent of a stated other time.

    Args:
        productive_h: hours with a client in the chair.
        of_h: the hours to compare with.
        denominator: what these are: ``"recorded-time"``, ``"paid-time"``, ``"rostered-time"``, ``"opening-time"`` or
            ``"standard-time"``. The same week reads 75 or 125, so it must be said.

    Returns:
        The percentage, unrounded, and the denominator again.

    Raises:
        FoilworkError: no hours to compare with, an unknown denominator.

    Examples:
        >>> from foilwork.money import productivity
        >>> productivity(30, 40, denominator="recorded-time")
        (Decimal('75'), 'recorded-time')
    """

def reorder(
    on_hand: float,
    daily_use: float,
    pack: float,
    *,
    unit: str,
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
        >>> from foilwork.money import reorder
        >>> reorder(900, 120, 500, unit="g", lead_days=5, cover_days=14, reserve=300)
        Reorder(reorder_point=Decimal('900'), due=True, packs=4, stock_days=Decimal('7.5'))
    """
