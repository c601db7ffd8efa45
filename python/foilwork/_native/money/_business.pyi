from collections.abc import Sequence
from decimal import Decimal
from typing import final

from foilwork._native import _Answer, _Number
from foilwork._native.money._amount import Money

__all__ = [
    "MarginOfSafety",
    "Pay",
    "RankedService",
    "RentOrWageAnswer",
    "Reorder",
    "SalesMixLine",
    "SalesMixPlan",
    "SalesNeeded",
    "break_even",
    "margin_of_safety",
    "profit_before_tax",
    "rank_by_chair_hour",
    "sales_mix_target",
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
class RentOrWageAnswer(_Answer):
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
class Reorder(_Answer):
    """When to order, and how much."""

    __match_args__ = ("reorder_point", "due", "packs", "stock_days")
    @property
    def reorder_point(self) -> Decimal:
        """Order at this stock or below, in the unit of the stock."""
    @property
    def due(self) -> bool:
        """Whether that is the case now."""
    @property
    def packs(self) -> int:
        """How many whole packs to order; 0 while nothing is due."""
    @property
    def stock_days(self) -> Decimal | None:
        """How many days the stock on hand lasts; ``None`` when nothing is used."""

def break_even(
    fixed: Money,
    price: Money,
    variable: Money,
    *,
    profit: Money | None = None,
    rounding: str = "midpoint-away-from-zero",
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
        >>> from foilwork.money import Money, break_even
        >>> usd = lambda text: Money(text, "USD")
        >>> break_even(usd("3000"), usd("35"), usd("20")).count
        200
    """

def profit_before_tax(after_tax: Money, tax_percent: _Number, *, rounding: str = "midpoint-away-from-zero") -> Money:
    """The profit before tax that leaves a profit after it.

    Args:
        after_tax: profit wanted after tax.
        tax_percent: tax on the profit, in percent of the profit, below 100.
        rounding: how the profit becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: a tax outside 0 to below 100.

    Examples:
        >>> from foilwork.money import Money, profit_before_tax
        >>> profit_before_tax(Money("24000", "USD"), 40)
        Money('40000.00', 'USD')
    """

def margin_of_safety(sales: Money, break_even_sales: Money) -> MarginOfSafety:
    """How far sales can fall before there is a loss.

    Args:
        sales: net takings.
        break_even_sales: net takings at which there is neither profit nor loss.

    Raises:
        FoilworkError: no sales, two currencies.

    Examples:
        >>> from foilwork.money import Money, margin_of_safety
        >>> margin_of_safety(Money("225000", "USD"), Money("153000", "USD")).percent_of_sales
        Decimal('32')
    """


def rank_by_chair_hour(services: Sequence[tuple[str, Money, Money, float]]) -> list[RankedService]:
    """Rank services by what they leave for an hour of the chair, the best first.

    Args:
        services: ``(what, price, variable, chair_min)`` for each: net price, cost of one more, chair time in min.

    Raises:
        FoilworkError: no time, two currencies.

    Examples:
        >>> from foilwork.money import Money, rank_by_chair_hour
        >>> eur = lambda text: Money(text, "EUR")
        >>> foils, toner = ("foils", eur("140"), eur("20"), 180), ("toner", eur("35"), eur("5"), 40)
        >>> [(service.what, str(service.per_chair_hour)) for service in rank_by_chair_hour([foils, toner])]
        [('toner', '45'), ('foils', '40')]
    """

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

def sales_mix_target(fixed: Money, profit: Money, items: Sequence[tuple[str, Money, Money, _Number]]) -> SalesMixPlan:
    """How many services, sold in a given mix, cover the fixed costs and leave a profit before tax.

    Args:
        fixed: fixed costs of a period.
        profit: profit wanted before tax.
        items: ``(what, price, variable, weight)`` for each service; weights are proportions.

    Raises:
        FoilworkError: no services, a mix that leaves nothing, a negative weight, two currencies.

    Examples:
        >>> from foilwork.money import Money, sales_mix_target
        >>> eur = lambda text: Money(text, "EUR")
        >>> mix = [("foils", eur("120"), eur("30"), 1), ("gloss", eur("45"), eur("10"), 3)]
        >>> plan = sales_mix_target(eur("4000"), eur("0"), mix)
        >>> plan.count, [line.count for line in plan.services]
        (83, [21, 62])
    """

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
