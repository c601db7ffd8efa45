from decimal import Decimal
from typing import final

from foilwork import _words
from foilwork._native import _Answer, _Number
from foilwork._native.money._amount import Money
from foilwork._native.source._trail import TracedResult

__all__ = [
    "ServicePrice",
    "SetPrice",
    "TaxedPrice",
    "add_tax",
    "cost_from_markup",
    "end_price",
    "margin_and_markup",
    "margin_to_markup",
    "markup_to_margin",
    "price_from_margin",
    "price_from_markup",
    "take_tax_out",
    "tax_rate",
    "trace_margin",
    "trace_markup",
]

@final
class TaxedPrice(_Answer):
    """A price with its tax: ``net + tax == gross``, always."""

    __match_args__ = ("net", "tax", "gross")
    @property
    def net(self) -> Money:
        """Without the tax."""
    @property
    def tax(self) -> Money:
        """The tax."""
    @property
    def gross(self) -> Money:
        """With the tax."""

@final
class SetPrice(_Answer):
    """A net price over a cost, with both percentages, so that neither is taken for the other."""

    __match_args__ = ("cost", "price", "profit", "margin_percent", "markup_percent")
    @property
    def cost(self) -> Money:
        """What the service costs."""
    @property
    def price(self) -> Money:
        """The net price."""
    @property
    def profit(self) -> Money:
        """Price less cost."""
    @property
    def margin_percent(self) -> Decimal:
        """Profit in percent of the price."""
    @property
    def markup_percent(self) -> Decimal:
        """Profit in percent of the cost."""
    def trail(self, *, margin_percent: _Number | None = None, markup_percent: _Number | None = None) -> list[TracedResult]:
        """How the price came about, where it was set to reach something, and what it leaves.

        Args:
            margin_percent: the margin that was asked for.
            markup_percent: or the mark-up.

        Returns:
            A :class:`foilwork.source.TracedResult` for each.

        Raises:
            FoilworkError: a percentage out of range.

        Examples:
            >>> from foilwork.money import Money, price_from_margin
            >>> found = price_from_margin(Money("75.00", "EUR"), 25).trail(margin_percent=25)
            >>> found[0].value, found[0].formula
            ('100.00', 'cost / (1 - margin)')
        """

@final
class ServicePrice(_Answer):
    """A price, its tax, and what it really leaves after rounding, price ending and card fee."""

    __match_args__ = ("taxed", "card_fee", "set_price", "target_net", "moved", "per_chair_hour")
    @property
    def taxed(self) -> TaxedPrice:
        """Net, tax and gross."""
    @property
    def card_fee(self) -> Money:
        """What the card terminal keeps."""
    @property
    def set_price(self) -> SetPrice:
        """Net price over full cost, card fee included."""
    @property
    def target_net(self) -> Money:
        """Net price at which the target is met exactly."""
    @property
    def moved(self) -> bool:
        """Whether the price ending moved the price with its tax."""
    @property
    def per_chair_hour(self) -> Decimal | None:
        """What the price leaves for an hour of the chair, unrounded; ``None`` without a time."""

def price_from_margin(cost: Money, margin_percent: _Number, *, rounding: _words._Rounding = "midpoint-away-from-zero") -> SetPrice:
    """Net price at which profit is the stated part of the price: ``cost / (1 - margin)``.

    Args:
        cost: what the service costs.
        margin_percent: profit in percent of the net price, below 100.
        rounding: how the price becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: a margin of 100 or more, a cost of nothing.

    Examples:
        >>> from foilwork.money import Money, price_from_margin
        >>> set_price = price_from_margin(Money("75.00", "EUR"), 25)
        >>> set_price.price, round(set_price.markup_percent, 2)
        (Money('100.00', 'EUR'), Decimal('33.33'))
    """

def price_from_markup(cost: Money, markup_percent: _Number, *, rounding: _words._Rounding = "midpoint-away-from-zero") -> SetPrice:
    """Net price with the stated part of the cost on top: ``cost * (1 + mark-up)``.

    Args:
        cost: what the service costs.
        markup_percent: profit in percent of the cost, above -100.
        rounding: how the price becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: a mark-up of -100 or less, a cost of nothing.

    Source:
        OpenStax, Contemporary Mathematics, module m00058.

    Examples:
        >>> from foilwork.money import Money, price_from_markup
        >>> price_from_markup(Money("750.00", "USD"), 45).price
        Money('1087.50', 'USD')
    """

def margin_and_markup(cost: Money, price: Money) -> SetPrice:
    """Margin and mark-up of a net price that is already there.

    Args:
        cost: what the service costs.
        price: its net price.

    Raises:
        FoilworkError: a cost or a price of nothing, two currencies.

    Examples:
        >>> from foilwork.money import Money, margin_and_markup
        >>> both = margin_and_markup(Money("60.00", "EUR"), Money("80.00", "EUR"))
        >>> both.margin_percent, round(both.markup_percent, 2)
        (Decimal('25'), Decimal('33.33'))
    """

def margin_to_markup(margin_percent: _Number) -> Decimal:
    """The mark-up that sets the same price as a margin: ``m / (100 - m)``, in percent.

    Args:
        margin_percent: profit in percent of the price, below 100.

    Raises:
        FoilworkError: a margin of 100 or more.

    Examples:
        >>> from foilwork.money import margin_to_markup
        >>> margin_to_markup(20)
        Decimal('25')
    """

def markup_to_margin(markup_percent: _Number) -> Decimal:
    """The margin that sets the same price as a mark-up: ``k / (100 + k)``, in percent.

    Args:
        markup_percent: profit in percent of the cost, above -100.

    Raises:
        FoilworkError: a mark-up of -100 or less.

    Examples:
        >>> from foilwork.money import markup_to_margin
        >>> markup_to_margin(25)
        Decimal('20')
    """

def trace_markup(margin_percent: _Number) -> TracedResult:
    """How the mark-up that sets the same price as a margin comes about.

    Args:
        margin_percent: profit in percent of the price, below 100.

    Returns:
        A :class:`foilwork.source.TracedResult`.

    Raises:
        FoilworkError: a margin of 100 or more.

    Examples:
        >>> from foilwork.money import trace_markup
        >>> trace_markup(20).worked
        '(20 / 100) / (1 - (20 / 100)) x 100'
    """

def trace_margin(markup_percent: _Number) -> TracedResult:
    """How the margin that sets the same price as a mark-up comes about.

    Args:
        markup_percent: profit in percent of the cost, above -100.

    Returns:
        A :class:`foilwork.source.TracedResult`.

    Raises:
        FoilworkError: a mark-up of -100 or less.

    Examples:
        >>> from foilwork.money import trace_margin
        >>> trace_margin(25).worked
        '(25 / 100) / (1 + (25 / 100)) x 100'
    """

def add_tax(net: Money, tax_percent: _Number, *, rounding: _words._Rounding = "midpoint-away-from-zero") -> TaxedPrice:
    """Put tax on a net price. The tax is rounded; the gross price is the sum.

    Args:
        net: the price without tax.
        tax_percent: tax in percent of the net price.
        rounding: how the tax becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: a tax rate outside 0 to 1000.

    Source:
        OpenStax, Contemporary Mathematics, module m00058; HM Revenue & Customs, Calculating VAT.

    Examples:
        >>> from foilwork.money import Money, add_tax
        >>> add_tax(Money("34.88", "USD"), "8.25")
        TaxedPrice(net=Money('34.88', 'USD'), tax=Money('2.88', 'USD'), gross=Money('37.76', 'USD'))
    """

def take_tax_out(gross: Money, tax_percent: _Number, *, rounding: _words._Rounding = "midpoint-away-from-zero") -> TaxedPrice:
    """Take the tax out of a gross price; net is what is left.

    Undoes :func:`add_tax` to the minor unit when both round to the nearest.

    Args:
        gross: the price with tax.
        tax_percent: tax in percent of the net price.
        rounding: how the tax becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: a tax rate outside 0 to 1000.

    Source:
        HM Revenue & Customs, Calculating VAT.

    Examples:
        >>> from foilwork.money import Money, take_tax_out
        >>> take_tax_out(Money("120.00", "GBP"), 20).tax
        Money('20.00', 'GBP')
    """

def end_price(price: Money, step: Money, ending: Money, toward: _words._Toward = "up") -> Money:
    """Move a price to one that the price list allows: every ``step``, starting from ``ending``.

    Args:
        price: the price.
        step: how far apart allowed prices are.
        ending: where they start, below ``step``.
        toward: ``"up"``, ``"down"`` or ``"nearest"``.

    Raises:
        FoilworkError: an ending outside the step, an unknown direction, two currencies.

    Examples:
        >>> from foilwork.money import Money, end_price
        >>> end_price(Money("48.13", "EUR"), Money("1.00", "EUR"), Money("0.90", "EUR"))
        Money('48.90', 'EUR')
    """

def tax_rate(net: Money, gross: Money) -> Decimal:
    """The tax rate that turns a net price into a gross one, in percent.

    Args:
        net: the price without tax.
        gross: the price with tax.

    Raises:
        FoilworkError: no net price, or a gross price below it.

    Examples:
        >>> from foilwork.money import Money, tax_rate
        >>> tax_rate(Money("100", "EUR"), Money("119", "EUR"))
        Decimal('19')
    """

def cost_from_markup(price: Money, markup_percent: _Number, *, rounding: _words._Rounding = "midpoint-away-from-zero") -> SetPrice:
    """The cost under a price that was set by a mark-up.

    Args:
        price: the net price.
        markup_percent: profit in percent of the cost.
        rounding: how the cost becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: no price, a mark-up of -100 or below.

    Examples:
        >>> from foilwork.money import Money, cost_from_markup
        >>> cost_from_markup(Money("150", "EUR"), 50).cost
        Money('100.00', 'EUR')
    """
