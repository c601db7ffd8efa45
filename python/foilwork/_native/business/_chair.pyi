from collections.abc import Sequence
from decimal import Decimal
from typing import final

from foilwork._native.money._amount import Money

__all__ = [
    "RankedService",
    "productivity",
    "rank_by_chair_hour",
]

@final
class RankedService:
    """A service with what it earns for an hour of the chair."""
    @property
    def what(self) -> str:
        """The service."""
    @property
    def contribution(self) -> Money:
        """Net price less variable cost."""
    @property
    def per_chair_hour(self) -> Decimal:
        """The contribution for one hour of the chair, unrounded."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

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
        >>> from foilwork.business import productivity
        >>> productivity(30, 40, denominator="recorded-time")
        (Decimal('75'), 'recorded-time')
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
