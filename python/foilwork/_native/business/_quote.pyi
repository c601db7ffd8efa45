from collections.abc import Sequence
from decimal import Decimal
from typing import final

from foilwork._native import _Answer, _Number, _Span
from foilwork._native.money._amount import Money
from foilwork._native.money._price import ServicePrice
from foilwork._native.money._rule import PriceRule
from foilwork._native.source._trail import TracedResult

__all__ = [
    "PriceListEntry",
    "Quote",
    "QuoteDriver",
    "price_list",
    "quote_range",
    "trace_quote",
]

@final
class QuoteDriver(_Answer):
    """How much one part of a quote moves the net price, alone."""

    __match_args__ = ("what", "low", "high", "swing", "share_percent")
    @property
    def what(self) -> str:
        """The part."""
    @property
    def low(self) -> Money:
        """Net price with this part at its least."""
    @property
    def high(self) -> Money:
        """Net price with this part at its most."""
    @property
    def swing(self) -> Money:
        """The difference."""
    @property
    def share_percent(self) -> Decimal | None:
        """The swing in percent of all swings; together they are exactly 100, ``None`` when nothing moves."""

@final
class Quote(_Answer):
    """A price from-to, with what drives it."""

    __match_args__ = ("low", "best", "high", "drivers", "deposit", "balance")
    @property
    def low(self) -> ServicePrice:
        """Every part at its least."""
    @property
    def best(self) -> ServicePrice:
        """Every part as expected."""
    @property
    def high(self) -> ServicePrice:
        """Every part at its most."""
    @property
    def drivers(self) -> list[QuoteDriver]:
        """What moves the price, the most important first."""
    @property
    def deposit(self) -> Money:
        """What is paid in advance; never more than the low end."""
    @property
    def balance(self) -> Money:
        """What is left to pay at the expected price."""

@final
class PriceListEntry(_Answer):
    """One entry of a price list, gross."""

    __match_args__ = ("service", "guest_class", "low", "usual", "high", "driver")
    @property
    def service(self) -> str:
        """The service."""
    @property
    def guest_class(self) -> str:
        """The class of guest."""
    @property
    def low(self) -> Money:
        """When all goes well."""
    @property
    def usual(self) -> Money:
        """As expected."""
    @property
    def high(self) -> Money:
        """When all goes badly."""
    @property
    def driver(self) -> QuoteDriver | None:
        """What moves the price most; ``None`` when nothing does."""

def quote_range(
    parts: Sequence[tuple[str, Money, Money, Money]],
    rule: PriceRule,
    *,
    chair_min: _Span | None = None,
    deposit_percent: _Number | None = None,
    deposit: Money | None = None,
) -> Quote:
    """A quotation: least, expected and most, each by the same price rule, and what drives the difference.

    Args:
        parts: ``(what, least, expected, most)`` for each part of the cost.
        rule: how prices are set.
        chair_min: time in the chair as ``(least, expected, most)``; needed for a target by the hour.
        deposit_percent: what is paid in advance, in percent of the expected gross price.
        deposit: what is paid in advance, as an amount; give one of the two or neither.

    Raises:
        FoilworkError: no parts, bounds that do not enclose the expected cost, a deposit out of range, no price.

    Examples:
        >>> from foilwork.business import quote_range
        >>> from foilwork.money import Money, PriceRule
        >>> euros = lambda text: Money(text, "EUR")
        >>> parts = [
        ...     ("lightener", euros("4.00"), euros("6.00"), euros("10.00")),
        ...     ("hands-on time", euros("30.00"), euros("34.00"), euros("44.00")),
        ... ]
        >>> quote = quote_range(parts, PriceRule(markup_percent=100), deposit_percent=25)
        >>> quote.low.taxed.gross, quote.high.taxed.gross, quote.deposit
        (Money('68.00', 'EUR'), Money('108.00', 'EUR'), Money('20.00', 'EUR'))
        >>> quote.drivers[0].what
        'hands-on time'
    """

def price_list(
    classes: Sequence[
        tuple[str, str, Sequence[tuple[str, Money, Money, Money]]]
        | tuple[str, str, Sequence[tuple[str, Money, Money, Money]], _Span]
    ],
    rule: PriceRule,
) -> list[PriceListEntry]:
    """A price list by class of service: low, usual and high, gross, by one price rule.

    Args:
        classes: ``(service, class, parts)`` or ``(service, class, parts, chair_min)`` for each entry, parts and
            time as in :func:`quote_range`.
        rule: how prices are set.

    Raises:
        FoilworkError: as :func:`quote_range`.

    Examples:
        >>> from foilwork.business import price_list
        >>> from foilwork.money import Money, PriceRule
        >>> euros = lambda text: Money(text, "EUR")
        >>> cost = ("product and time", euros("40.00"), euros("46.00"), euros("55.00"))
        >>> rule = PriceRule(margin_percent=40, tax_percent=20, price_step=euros("5.00"))
        >>> entry = price_list([("half head of foils", "long", [cost])], rule)[0]
        >>> entry.low, entry.usual, entry.high
        (Money('80.00', 'EUR'), Money('95.00', 'EUR'), Money('110.00', 'EUR'))
    """

def trace_quote(
    parts: Sequence[tuple[str, Money, Money, Money]],
    rule: PriceRule,
    *,
    chair_min: _Span | None = None,
    deposit_percent: _Number | None = None,
    deposit: Money | None = None,
) -> list[TracedResult]:
    """How a quotation comes about: the expected price, with the least and the most as its bounds.

    Args:
        parts: as of :func:`quote_range`.
        rule: how prices are set.
        chair_min: time in the chair as ``(least, expected, most)``; needed for a target by the hour.
        deposit_percent: what is paid in advance, in percent of the expected gross price.
        deposit: what is paid in advance, as an amount; give one of the two or neither.

    Returns:
        A :class:`foilwork.source.TracedResult` for each step.

    Raises:
        FoilworkError: as :func:`quote_range`.

    Examples:
        >>> from foilwork.business import trace_quote
        >>> from foilwork.money import Money, PriceRule
        >>> parts = [("hands-on time", Money("30.00", "EUR"), Money("34.00", "EUR"), Money("44.00", "EUR"))]
        >>> trace_quote(parts, PriceRule(markup_percent=100))[1].bounds
        ('60.00', '88.00')
    """
