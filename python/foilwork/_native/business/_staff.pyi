from collections.abc import Sequence
from decimal import Decimal
from typing import final

from foilwork import _words
from foilwork._native import _Answer, _Number
from foilwork._native.money._amount import Money
from foilwork._native.source._trail import TracedResult

__all__ = [
    "HiringStep",
    "Pay",
    "RentOrWageAt",
    "best_number_to_hire",
    "commission_pay",
    "commission_rate",
    "hiring_steps",
    "rent_or_wage",
    "share_tips",
    "tip_percent",
    "trace_commission",
    "trace_rent_or_wage",
    "trace_tips",
]

@final
class Pay(_Answer):
    """What someone is paid for a period."""

    __match_args__ = ("base", "commission", "total")
    @property
    def base(self) -> Money:
        """The wage or retainer."""
    @property
    def commission(self) -> Money:
        """The commission."""
    @property
    def total(self) -> Money:
        """Both."""

@final
class RentOrWageAt(_Answer):
    """Chair rent against wage."""

    __match_args__ = ("break_even_takings", "renting", "employed", "difference")
    @property
    def break_even_takings(self) -> Money:
        """Net takings above which renting leaves more."""
    @property
    def renting(self) -> Money:
        """What is left when renting, at the takings given."""
    @property
    def employed(self) -> Money:
        """What is earned when employed, at the takings given."""
    @property
    def difference(self) -> Money:
        """Renting less employed."""

@final
class HiringStep(_Answer):
    """What one more stylist brings."""

    __match_args__ = ("stylists", "more_services", "more_contribution", "left")
    @property
    def stylists(self) -> int:
        """How many stylists there are then."""
    @property
    def more_services(self) -> int:
        """How many more services they do together."""
    @property
    def more_contribution(self) -> Money:
        """What these leave, before the wage."""
    @property
    def left(self) -> Money:
        """The same less the wage: below zero, the last one hired does not pay."""

def commission_pay(
    takings: Money,
    *,
    percent: _Number | None = None,
    threshold: Money | None = None,
    tiers: Sequence[tuple[Money | None, _Number]] | None = None,
    base: Money | None = None,
    rounding: _words._Rounding = "midpoint-away-from-zero",
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
        >>> from foilwork.business import commission_pay
        >>> from foilwork.money import Money
        >>> commission_pay(Money("1300", "USD"), tiers=[(Money("800", "USD"), 8), (None, 14)]).commission
        Money('134.00', 'USD')
        >>> week, base = Money("1540", "USD"), Money("120", "USD")
        >>> commission_pay(week, percent=5, threshold=Money("500", "USD"), base=base).total
        Money('172.00', 'USD')
    """

def rent_or_wage(
    takings: Money,
    *,
    rent: Money,
    own_costs: Money,
    variable_percent: _Number,
    wage: Money,
    commission_percent: _Number,
    rounding: _words._Rounding = "midpoint-away-from-zero",
) -> RentOrWageAt:
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
        >>> from foilwork.business import rent_or_wage
        >>> from foilwork.money import Money
        >>> eur = lambda text: Money(text, "EUR")
        >>> renting = {"rent": eur("200"), "own_costs": eur("50"), "variable_percent": 12}
        >>> choice = rent_or_wage(eur("1500"), **renting, wage=eur("480"), commission_percent=15)
        >>> choice.break_even_takings, choice.difference
        (Money('1000.00', 'EUR'), Money('365.00', 'EUR'))
    """

def share_tips(tips: Money, worked_h: Sequence[float]) -> list[Money]:
    """Share pooled tips by time worked, and lose no minor unit.

    Args:
        tips: all tips.
        worked_h: hours of each person.

    Raises:
        FoilworkError: nobody, or nobody worked; tips below nothing.

    Examples:
        >>> from foilwork.business import share_tips
        >>> from foilwork.money import Money
        >>> [str(share) for share in share_tips(Money("50.00", "EUR"), [8, 8, 5])]
        ['19.05 EUR', '19.05 EUR', '11.90 EUR']
    """

def hiring_steps(services: Sequence[int], contribution: Money, wage: Money) -> list[HiringStep]:
    """What each further stylist brings.

    Args:
        services: how many services one stylist, two, three and so on do together in a period.
        contribution: what one service leaves.
        wage: the wage of one stylist for the period.

    Raises:
        FoilworkError: an empty list, two currencies.

    Examples:
        >>> from foilwork.business import hiring_steps
        >>> from foilwork.money import Money
        >>> [str(step.left) for step in hiring_steps([8, 16, 23], Money("8", "USD"), Money("60", "USD"))]
        ['4.00 USD', '4.00 USD', '-4.00 USD']
    """

def best_number_to_hire(services: Sequence[int], contribution: Money, wage: Money) -> int:
    """How many stylists leave the most in all.

    Args:
        services: how many services one stylist, two, three and so on do together in a period.
        contribution: what one service leaves.
        wage: the wage of one stylist for the period.

    Raises:
        FoilworkError: an empty list, two currencies.

    Examples:
        >>> from foilwork.business import best_number_to_hire
        >>> from foilwork.money import Money
        >>> best_number_to_hire([8, 16, 23, 29, 34, 38], Money("8", "USD"), Money("60", "USD"))
        2
    """

def commission_rate(earned: Money, takings: Money) -> Decimal:
    """The flat rate at which takings earned a commission, in percent.

    Args:
        earned: the commission.
        takings: the net takings that it was paid on.

    Raises:
        FoilworkError: no takings, or a rate outside 0 to 100.

    Examples:
        >>> from foilwork.business import commission_rate
        >>> from foilwork.money import Money
        >>> commission_rate(Money("120", "USD"), Money("1600", "USD"))
        Decimal('7.5')
    """

def tip_percent(tip: Money, bill: Money) -> Decimal:
    """A tip in percent of the bill, unrounded.

    Args:
        tip: the tip.
        bill: the bill.

    Raises:
        FoilworkError: a negative tip, no bill, two currencies.

    Examples:
        >>> from foilwork.business import tip_percent
        >>> from foilwork.money import Money
        >>> tip_percent(Money("12", "EUR"), Money("80", "EUR"))
        Decimal('15')
    """

def trace_commission(
    takings: Money,
    *,
    percent: _Number | None = None,
    threshold: Money | None = None,
    tiers: Sequence[tuple[Money | None, _Number]] | None = None,
    base: Money | None = None,
    rounding: _words._Rounding = "midpoint-away-from-zero",
) -> list[TracedResult]:
    """How commission and pay come about.

    Args:
        takings: net takings of the period.
        percent: as of :func:`commission_pay`.
        threshold: nothing is paid up to here.
        tiers: ``(up_to, percent)`` for each slice, instead of ``percent``.
        base: wage or retainer; nothing when left out.
        rounding: how the commission becomes whole minor units; see :class:`Money`.

    Returns:
        A :class:`foilwork.source.TracedResult` for commission and for pay.

    Raises:
        FoilworkError: as :func:`commission_pay`.

    Examples:
        >>> from foilwork.business import trace_commission
        >>> from foilwork.money import Money
        >>> trace_commission(Money("1540", "USD"), percent=5, threshold=Money("500", "USD"))[0].worked
        'largest (0, 1540.00 - 500.00) x (5 / 100)'
    """

def trace_tips(tips: Money, worked_h: Sequence[float]) -> list[TracedResult]:
    """How each share of pooled tips comes about.

    Args:
        tips: all tips.
        worked_h: hours of each person.

    Returns:
        A :class:`foilwork.source.TracedResult` for each person.

    Raises:
        FoilworkError: as :func:`share_tips`.

    Examples:
        >>> from foilwork.business import trace_tips
        >>> from foilwork.money import Money
        >>> trace_tips(Money("50.00", "EUR"), [8, 2])[0].worked
        '50.00 x 8 / (8 + 2)'
    """

def trace_rent_or_wage(
    takings: Money,
    *,
    rent: Money,
    own_costs: Money,
    variable_percent: _Number,
    wage: Money,
    commission_percent: _Number,
    rounding: _words._Rounding = "midpoint-away-from-zero",
) -> list[TracedResult]:
    """How chair rent against wage comes about.

    Args:
        takings: net takings of the period.
        rent: rent of the chair.
        own_costs: what else a self-employed stylist pays for.
        variable_percent: what the work itself costs, in percent of the takings.
        wage: the wage when employed.
        commission_percent: commission when employed, in percent of the takings.
        rounding: how amounts become whole minor units; see :class:`Money`.

    Returns:
        A :class:`foilwork.source.TracedResult` for each way, and for the takings at which they are alike.

    Raises:
        FoilworkError: as :func:`rent_or_wage`.

    Examples:
        >>> from foilwork.business import trace_rent_or_wage
        >>> from foilwork.money import Money
        >>> eur = lambda text: Money(text, "EUR")
        >>> renting = {"rent": eur("200"), "own_costs": eur("50"), "variable_percent": 12}
        >>> trace_rent_or_wage(eur("1500"), **renting, wage=eur("480"), commission_percent=15)[1].worked
        '480.00 + 1500.00 x (15 / 100)'
    """
