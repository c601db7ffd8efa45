from collections.abc import Sequence
from decimal import Decimal
from typing import final

from foilwork import _words
from foilwork._native import _Answer, _Number
from foilwork._native.money._amount import Money
from foilwork._native.source._trail import TracedResult

__all__ = [
    "Productivity",
    "RankedService",
    "average_bill",
    "beside_trade",
    "median_count",
    "productivity",
    "rank_by_chair_hour",
    "retail_share",
    "trace_productivity",
]

@final
class RankedService(_Answer):
    """A service with what it earns for an hour of the chair."""

    __match_args__ = ("what", "contribution", "per_chair_hour")
    @property
    def what(self) -> str:
        """The service."""
    @property
    def contribution(self) -> Money:
        """Net price less variable cost."""
    @property
    def per_chair_hour(self) -> Decimal:
        """The contribution for one hour of the chair, unrounded."""

@final
class Productivity(_Answer):
    """Productive time in percent of a stated other time."""

    __match_args__ = ("percent", "of")
    @property
    def percent(self) -> Decimal:
        """The percentage, unrounded."""
    @property
    def of(self) -> str:
        """Of what: one of the denominators of :func:`productivity`."""

def productivity(productive_h: float, of_h: float, *, denominator: _words._Denominator) -> Productivity:
    """Productive time in percent of a stated other time.

    Args:
        productive_h: hours with a guest in the chair.
        of_h: the hours to compare with.
        denominator: what these are: ``"recorded-time"``, ``"paid-time"``, ``"rostered-time"``, ``"opening-time"`` or
            ``"standard-time"``. The same week reads 75 or 125, so it must be said.

    Returns:
        The percentage, unrounded, and the denominator again.

    Raises:
        FoilworkError: no hours to compare with, an unknown denominator.

    Examples:
        >>> from foilwork.business import productivity
        >>> productivity(30, 40, denominator="recorded-time")
        Productivity(percent=Decimal('75'), of='recorded-time')
    """

def rank_by_chair_hour(services: Sequence[tuple[str, Money, Money, float]]) -> list[RankedService]:
    """Rank services by what they leave for an hour of the chair, the best first.

    Args:
        services: ``(what, price, variable, chair_min)`` for each: net price, cost of one more, chair time in min.

    Raises:
        FoilworkError: no time, two currencies.

    Examples:
        >>> from foilwork.business import rank_by_chair_hour
        >>> from foilwork.money import Money
        >>> eur = lambda text: Money(text, "EUR")
        >>> foils, toner = ("foils", eur("140"), eur("20"), 180), ("toner", eur("35"), eur("5"), 40)
        >>> [(service.what, str(service.per_chair_hour)) for service in rank_by_chair_hour([foils, toner])]
        [('toner', '45'), ('foils', '40')]
    """

def beside_trade(productive_percent: _Number) -> str:
    """Where a share of productive hours lies beside what a guide to the trade gives for it.

    Args:
        productive_percent: productive hours in percent of all paid hours.

    Returns:
        ``"below-all"`` (below 30), ``"low"``, ``"typical"`` (40 to 55), ``"high"`` or ``"above-all"`` (above 70).

    Raises:
        FoilworkError: a share outside 0 to 100.

    Source:
        CCH, Hairdressing trade sector guide; see ``cch-productive-hours`` in :func:`foilwork.source.register`.

    Examples:
        >>> from foilwork.business import beside_trade
        >>> beside_trade(50)
        'typical'
    """

def average_bill(takings: Money, guests: int, *, rounding: _words._Rounding = "midpoint-away-from-zero") -> Money:
    """Net takings for each guest, rounded once.

    Args:
        takings: net takings of a period.
        guests: how many came.
        rounding: how the amount becomes whole minor units; see :class:`foilwork.money.Money`.

    Raises:
        FoilworkError: no guests.

    Examples:
        >>> from foilwork.business import average_bill
        >>> from foilwork.money import Money
        >>> average_bill(Money("500", "EUR"), 6)
        Money('83.33', 'EUR')
    """

def retail_share(retail: Money, all_takings: Money) -> Decimal:
    """Retail sales in percent of all net takings, services and retail together, unrounded.

    Args:
        retail: net retail sales.
        all_takings: net takings of services and retail.

    Raises:
        FoilworkError: retail below zero or above the takings, two currencies.

    Examples:
        >>> from foilwork.business import retail_share
        >>> from foilwork.money import Money
        >>> retail_share(Money("120", "EUR"), Money("1500", "EUR"))
        Decimal('8')
    """

def median_count(counts: Sequence[int]) -> Decimal:
    """The middle of a list of counts, such as guests a day: half the days had fewer, half had more.

    Args:
        counts: the counts.

    Raises:
        FoilworkError: an empty list.

    Examples:
        >>> from foilwork.business import median_count
        >>> median_count([9, 4, 11, 7])
        Decimal('8')
    """

def trace_productivity(productive_h: float, of_h: float, *, denominator: _words._Denominator) -> TracedResult:
    """How productive time in percent of a stated other time comes about.

    Args:
        productive_h: hours with a guest in the chair.
        of_h: the hours to compare with.
        denominator: what these are, as of :func:`productivity`.

    Returns:
        A :class:`foilwork.source.TracedResult`.

    Raises:
        FoilworkError: as :func:`productivity`.

    Examples:
        >>> from foilwork.business import trace_productivity
        >>> trace_productivity(30, 40, denominator="paid-time").worked
        '1800 / 2400 x 100'
    """
