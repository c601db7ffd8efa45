from decimal import Decimal
from typing import final

from foilwork import _words
from foilwork._native import _Answer, _Number
from foilwork._native.money._amount import Money
from foilwork._native.source._trail import TracedResult

__all__ = [
    "DiscountedPrice",
    "apply_discount",
    "price_before_discount",
]

@final
class DiscountedPrice(_Answer):
    """A price with a discount: ``before - off == after``, always."""

    __match_args__ = ("before", "off", "after", "discount_percent", "full_price_found")
    @property
    def before(self) -> Money:
        """The full price."""
    @property
    def off(self) -> Money:
        """What is taken off."""
    @property
    def after(self) -> Money:
        """What is left to pay."""
    @property
    def discount_percent(self) -> Decimal:
        """The discount, in percent of the full price."""
    @property
    def full_price_found(self) -> bool:
        """Whether the full price was found from the discounted one; else it was given."""
    def trail(self) -> list[TracedResult]:
        """How what is taken off, and what is left to pay, come about from the full price; of one that was found from what is left
        to pay how it was, and what is taken off.

        Returns:
            A :class:`foilwork.source.TracedResult` for each.

        Examples:
            >>> from foilwork.money import Money, apply_discount
            >>> off, after = apply_discount(Money("80.00", "USD"), 30).trail()
            >>> off.worked, after.value
            ('80.00 x (30 / 100)', '56.00')
        """

def apply_discount(
    price: Money, discount_percent: _Number, *, rounding: _words._Rounding = "midpoint-away-from-zero"
) -> DiscountedPrice:
    """Take a discount off a price.

    Args:
        price: the full price.
        discount_percent: what is taken off, in percent of the full price, below 100.
        rounding: how the discount becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: a discount outside 0 to below 100.

    Examples:
        >>> from foilwork.money import Money, apply_discount
        >>> apply_discount(Money("80.00", "USD"), 30).after
        Money('56.00', 'USD')
    """

def price_before_discount(
    after: Money, discount_percent: _Number, *, rounding: _words._Rounding = "midpoint-away-from-zero"
) -> DiscountedPrice:
    """The full price under a discounted one.

    Args:
        after: the price after the discount.
        discount_percent: what was taken off, in percent of the full price, below 100.
        rounding: how the full price becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: a discount outside 0 to below 100.

    Examples:
        >>> from foilwork.money import Money, price_before_discount
        >>> price_before_discount(Money("450.00", "USD"), 10).before
        Money('500.00', 'USD')
    """
