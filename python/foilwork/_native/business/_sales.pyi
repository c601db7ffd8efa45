from collections.abc import Sequence
from decimal import Decimal
from typing import final

from foilwork import _words
from foilwork._native import _Answer, _Number
from foilwork._native.money._amount import Money

__all__ = [
    "Contribution",
    "DiscountBreakEven",
    "MarginOfSafety",
    "SalesMixLine",
    "SalesMixPlan",
    "SalesNeeded",
    "break_even",
    "contribution",
    "discount_break_even",
    "margin_of_safety",
    "profit_at",
    "profit_before_tax",
    "sales_mix_profit",
    "sales_mix_target",
    "split_costs",
]

@final
class SalesNeeded(_Answer):
    """How much must be sold to reach a goal."""

    __match_args__ = ("count_exact", "count", "sales", "sales_exact")
    @property
    def count_exact(self) -> Decimal:
        """How many sales, unrounded."""
    @property
    def count(self) -> int:
        """How many whole sales, rounded up."""
    @property
    def sales(self) -> Money:
        """The net takings of the whole sales."""
    @property
    def sales_exact(self) -> Money:
        """The net takings at which the goal is met exactly."""

@final
class MarginOfSafety(_Answer):
    """How far sales can fall before there is a loss."""

    __match_args__ = ("amount", "percent_of_sales")
    @property
    def amount(self) -> Money:
        """Sales less break-even sales."""
    @property
    def percent_of_sales(self) -> Decimal:
        """The same in percent of the sales."""

@final
class SalesMixLine(_Answer):
    """One service of a mix that reaches a goal."""

    __match_args__ = ("what", "count", "sales", "contribution")
    @property
    def what(self) -> str:
        """The service."""
    @property
    def count(self) -> int:
        """How many."""
    @property
    def sales(self) -> Money:
        """Their net takings."""
    @property
    def contribution(self) -> Money:
        """What they leave."""

@final
class SalesMixPlan(_Answer):
    """How many of each service reach a goal."""

    __match_args__ = ("average_contribution", "count_exact", "count", "services", "sales", "left_over")
    @property
    def average_contribution(self) -> Decimal:
        """What the average service leaves, unrounded."""
    @property
    def count_exact(self) -> Decimal:
        """How many services in all, unrounded."""
    @property
    def count(self) -> int:
        """How many whole services in all, so that the goal is met."""
    @property
    def services(self) -> list[SalesMixLine]:
        """Each service."""
    @property
    def sales(self) -> Money:
        """Net takings of all of them."""
    @property
    def left_over(self) -> Money:
        """What they leave beyond the goal."""

@final
class DiscountBreakEven(_Answer):
    """What an offer must bring in to leave as much as before."""

    __match_args__ = ("contribution_before", "contribution_after", "count_needed", "extra_percent")
    @property
    def contribution_before(self) -> Money:
        """What one service leaves at the full price."""
    @property
    def contribution_after(self) -> Money:
        """What it leaves at the reduced price."""
    @property
    def count_needed(self) -> int:
        """How many services the offer must sell, rounded up."""
    @property
    def extra_percent(self) -> Decimal:
        """By how much that is more, in percent, unrounded."""

@final
class Contribution(_Answer):
    """What one sale leaves to pay the fixed costs."""

    __match_args__ = ("each", "ratio_percent")
    @property
    def each(self) -> Money:
        """Net price less variable cost."""
    @property
    def ratio_percent(self) -> Decimal:
        """The same in percent of the net price, unrounded."""

def break_even(
    fixed: Money,
    price: Money,
    variable: Money,
    *,
    profit: Money | None = None,
    rounding: _words._Rounding = "midpoint-away-from-zero",
) -> SalesNeeded:
    """How many sales cover the fixed costs and leave a profit before tax: ``(fixed + profit) / (price - variable)``.

    Args:
        fixed: fixed costs of a period. Wages by the hour belong here, not among the variable costs.
        price: net price of one sale.
        variable: what one more sale costs.
        profit: profit wanted before tax; nothing when left out.
        rounding: how ``sales_exact`` becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: a sale that leaves nothing, a negative amount, two currencies.

    Source:
        OpenStax, Principles of Accounting, Volume 2, module m68116.

    Examples:
        >>> from foilwork.business import break_even
        >>> from foilwork.money import Money
        >>> usd = lambda text: Money(text, "USD")
        >>> break_even(usd("3000"), usd("35"), usd("20")).count
        200
    """

def discount_break_even(before: Money, after: Money, variable: Money, count: int) -> DiscountBreakEven:
    """How many services must be sold at a reduced net price to leave what ``count`` leave at the full one.

    Args:
        before: the full net price.
        after: the reduced net price.
        variable: what one more service costs.
        count: how many are sold at the full price.

    Raises:
        FoilworkError: a reduced price that leaves nothing, or one above the full price.

    Examples:
        >>> from foilwork.business import discount_break_even
        >>> from foilwork.money import Money
        >>> discount_break_even(Money("100", "EUR"), Money("80", "EUR"), Money("50", "EUR"), 30).count_needed
        50
    """

def margin_of_safety(sales: Money, break_even_sales: Money) -> MarginOfSafety:
    """How far sales can fall before there is a loss.

    Args:
        sales: net takings.
        break_even_sales: net takings at which there is neither profit nor loss.

    Raises:
        FoilworkError: no sales, two currencies.

    Examples:
        >>> from foilwork.business import margin_of_safety
        >>> from foilwork.money import Money
        >>> margin_of_safety(Money("225000", "USD"), Money("153000", "USD")).percent_of_sales
        Decimal('32')
    """


def profit_before_tax(after_tax: Money, tax_percent: _Number, *, rounding: _words._Rounding = "midpoint-away-from-zero") -> Money:
    """The profit before tax that leaves a profit after it.

    Args:
        after_tax: profit wanted after tax.
        tax_percent: tax on the profit, in percent of the profit, below 100.
        rounding: how the profit becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: a tax outside 0 to below 100.

    Examples:
        >>> from foilwork.business import profit_before_tax
        >>> from foilwork.money import Money
        >>> profit_before_tax(Money("24000", "USD"), 40)
        Money('40000.00', 'USD')
    """

def sales_mix_target(fixed: Money, profit: Money, items: Sequence[tuple[str, Money, Money, _Number]]) -> SalesMixPlan:
    """How many services, sold in a given mix, cover the fixed costs and leave a profit before tax.

    Args:
        fixed: fixed costs of a period.
        profit: profit wanted before tax.
        items: ``(what, price, variable, weight)`` for each service; weights are proportions.

    Raises:
        FoilworkError: no services, a mix that leaves nothing, a negative weight, two currencies.

    Examples:
        >>> from foilwork.business import sales_mix_target
        >>> from foilwork.money import Money
        >>> eur = lambda text: Money(text, "EUR")
        >>> mix = [("foils", eur("120"), eur("30"), 1), ("gloss", eur("45"), eur("10"), 3)]
        >>> plan = sales_mix_target(eur("4000"), eur("0"), mix)
        >>> plan.count, [line.count for line in plan.services]
        (83, [21, 62])
    """

def contribution(price: Money, variable: Money) -> Contribution:
    """Net price less what one more sale costs.

    Args:
        price: net price.
        variable: what one more sale costs.

    Raises:
        FoilworkError: no price, a negative cost, two currencies.

    Source:
        OpenStax, Principles of Accounting, Volume 2, module m68115.

    Examples:
        >>> from foilwork.business import contribution
        >>> from foilwork.money import Money
        >>> contribution(Money("40", "USD"), Money("10", "USD"))
        Contribution(each=Money('30.00', 'USD'), ratio_percent=Decimal('75'))
    """

def profit_at(fixed: Money, price: Money, variable: Money, count: int) -> Money:
    """What a number of sales leaves after the fixed costs; below zero, a loss.

    Args:
        fixed: fixed costs of a period.
        price: net price of one sale.
        variable: what one more sale costs.
        count: how many are sold.

    Raises:
        FoilworkError: two currencies, or too large.

    Examples:
        >>> from foilwork.business import profit_at
        >>> from foilwork.money import Money
        >>> usd = lambda text: Money(text, "USD")
        >>> profit_at(usd("3000"), usd("35"), usd("20"), 150)
        Money('-750.00', 'USD')
    """

def sales_mix_profit(fixed: Money, sold: Sequence[tuple[str, Money, Money, _Number]]) -> Money:
    """What a period leaves when services were sold in these numbers.

    Args:
        fixed: fixed costs of the period.
        sold: ``(what, price, variable, count)`` for each service.

    Raises:
        FoilworkError: two currencies, or a count that is not whole.

    Examples:
        >>> from foilwork.business import sales_mix_profit
        >>> from foilwork.money import Money
        >>> eur = lambda text: Money(text, "EUR")
        >>> sales_mix_profit(eur("450"), [("toner", eur("35"), eur("5"), 20)])
        Money('150.00', 'EUR')
    """

def split_costs(costs: Sequence[tuple[str, Money, Money]]) -> tuple[Money, Money]:
    """The fixed and the variable parts of a list of costs, each added up.

    Args:
        costs: ``(what, fixed, each)`` for each cost: for the period, and for every sale.

    Returns:
        What is fixed for the period, and what comes with every sale.

    Raises:
        FoilworkError: no costs, two currencies.

    Examples:
        >>> from foilwork.business import split_costs
        >>> from foilwork.money import Money
        >>> eur = lambda text: Money(text, "EUR")
        >>> split_costs([("water", eur("40"), eur("0.60")), ("till", eur("25"), eur("0.10"))])
        (Money('65.00', 'EUR'), Money('0.70', 'EUR'))
    """
