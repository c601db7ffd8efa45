from typing import final

from foilwork import _words
from foilwork._native import _Number
from foilwork._native.money._amount import Money
from foilwork._native.money._price import ServicePrice

__all__ = [
    "PriceRule",
]

@final
class PriceRule:
    """How prices are set in a salon: one target, tax, card fee, price ending; apply it to the cost of each service.

    Args:
        margin_percent: profit in percent of the net price. Give one of the three targets.
        markup_percent: profit in percent of the cost, card fee included.
        per_chair_hour: amount over the cost for an hour of the chair; the cost is the variable cost then.
        tax_percent: tax in percent of the net price.
        card_percent: what the card terminal keeps, in percent of the gross price.
        card_fixed: what it keeps of each payment.
        price_step: how far apart allowed gross prices are.
        price_ending: where they start, below the step.
        price_toward: ``"up"``, ``"down"`` or ``"nearest"``.
        rounding: how price, tax and fee become whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: no target or several, a value out of its range.

    Examples:
        >>> from foilwork.money import Money, PriceRule
        >>> rule = PriceRule(margin_percent=30, tax_percent=19, price_step=Money("1.00", "EUR"))
        >>> price = rule.price(Money("61.20", "EUR"))
        >>> price.taxed.gross, round(price.set_price.margin_percent, 2)
        (Money('105.00', 'EUR'), Decimal('30.64'))
    """
    def __new__(
        cls,
        *,
        margin_percent: _Number | None = None,
        markup_percent: _Number | None = None,
        per_chair_hour: Money | None = None,
        tax_percent: _Number = 0,
        card_percent: _Number = 0,
        card_fixed: Money | None = None,
        price_step: Money | None = None,
        price_ending: Money | None = None,
        price_toward: _words._Toward = "up",
        rounding: _words._Rounding = "midpoint-away-from-zero",
    ) -> PriceRule: ...
    def __getnewargs_ex__(self) -> tuple[tuple[()], dict[str, object]]: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...
    def __hash__(self) -> int: ...
    def price(self, cost: Money, chair_min: float | None = None) -> ServicePrice:
        """The price for a cost; ``chair_min`` is needed for a target by the hour."""
    def check(self, cost: Money, gross: Money, chair_min: float | None = None) -> ServicePrice:
        """What a gross price that is already on the list leaves, by the same tax and card fee."""
