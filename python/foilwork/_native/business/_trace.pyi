from collections.abc import Sequence

from foilwork import _words
from foilwork._native import _Number
from foilwork._native.money._amount import Money
from foilwork._native.source._trail import TracedResult

__all__ = [
    "trace_discount",
    "trace_sales_mix",
    "trace_target_profit",
]

def trace_target_profit(
    fixed: Money,
    price: Money,
    variable: Money,
    *,
    profit: Money | None = None,
    rounding: _words._Rounding = "midpoint-away-from-zero",
) -> list[TracedResult]:
    """How the sales that cover the fixed costs and leave a profit, and their takings, come about.

    Args:
        fixed: fixed costs of a period.
        price: net price of one sale.
        variable: what one more sale costs.
        profit: profit wanted before tax; nothing when left out.
        rounding: how takings become whole minor units; see :class:`Money`.

    Returns:
        A :class:`foilwork.source.TracedResult` for each.

    Raises:
        FoilworkError: as :func:`break_even`.

    Examples:
        >>> from foilwork.business import trace_target_profit
        >>> from foilwork.money import Money
        >>> usd = lambda text: Money(text, "USD")
        >>> trace_target_profit(usd("3000"), usd("35"), usd("20"))[0].worked
        'up ((3000.00 + 0.00) / (35.00 - 20.00))'
    """

def trace_discount(before: Money, after: Money, variable: Money, count: int) -> list[TracedResult]:
    """How what each sale leaves before and after a discount comes about, and the sales that leave as much as before.

    Args:
        before: the full net price.
        after: the reduced net price.
        variable: what one more sale costs.
        count: how many are sold at the full price.

    Returns:
        A :class:`foilwork.source.TracedResult` for each.

    Raises:
        FoilworkError: as :func:`discount_break_even`.

    Examples:
        >>> from foilwork.business import trace_discount
        >>> from foilwork.money import Money
        >>> eur = lambda text: Money(text, "EUR")
        >>> trace_discount(eur("100"), eur("80"), eur("50"), 30)[2].worked
        'up (30 x (100.00 - 50.00) / (80.00 - 50.00))'
    """

def trace_sales_mix(fixed: Money, profit: Money, items: Sequence[tuple[str, Money, Money, _Number]]) -> list[TracedResult]:
    """How the sales of a mix that cover the fixed costs, and their takings, come about.

    Args:
        fixed: fixed costs of a period.
        profit: profit wanted before tax.
        items: ``(what, price, variable, weight)`` for each service; weights are proportions.

    Returns:
        A :class:`foilwork.source.TracedResult` for each.

    Raises:
        FoilworkError: as :func:`sales_mix_target`.

    Examples:
        >>> from foilwork.business import trace_sales_mix
        >>> from foilwork.money import Money
        >>> eur = lambda text: Money(text, "EUR")
        >>> trace_sales_mix(eur("90"), eur("0"), [("foils", eur("100"), eur("40"), 1)])[0].value
        '2'
    """
