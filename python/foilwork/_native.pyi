"""Types of the compiled half. Docstrings here are copied from the compiled functions by ``make stubs``."""

from collections.abc import Sequence
from decimal import Decimal
from typing import Any, Literal, TypeAlias, final, overload

from _typeshed import SupportsKeysAndGetItem
from numpy import float64, int64
from numpy.typing import ArrayLike, NDArray

__all__ = [
    "CostTable",
    "DiscountBreakEven",
    "DiscountedPrice",
    "FoilworkError",
    "MarginOfSafety",
    "MixLine",
    "MixPlan",
    "Money",
    "OutOfRangeWarning",
    "Pay",
    "Plan",
    "PriceListEntry",
    "PriceRule",
    "PricedServices",
    "Quote",
    "QuoteDriver",
    "RankedService",
    "RentOrWageAnswer",
    "Reorder",
    "SalesNeeded",
    "ServiceCosts",
    "ServiceFileError",
    "ServicePrice",
    "SetPrice",
    "TaxedPrice",
    "add_tax",
    "allocate",
    "apply_discount",
    "break_even",
    "commission_pay",
    "convert",
    "cost_columns",
    "dilute",
    "discount_break_even",
    "end_price",
    "labour_cost",
    "labour_per_minute",
    "main",
    "margin_and_markup",
    "margin_of_safety",
    "margin_to_markup",
    "markup_to_margin",
    "mix_target",
    "overhead_cost",
    "overhead_per_chair_hour",
    "packs_needed",
    "plan",
    "price_before_discount",
    "price_from_margin",
    "price_from_markup",
    "price_list",
    "price_services",
    "price_services_csv",
    "price_services_json",
    "product_cost",
    "productivity",
    "profit_before_tax",
    "quote_range",
    "rank_by_chair_hour",
    "rent_or_wage",
    "reorder",
    "service_schema",
    "share_tips",
    "supply_cost",
    "take_tax_out",
    "unit_price",
]

# --- errors ---------------------------------------------------------------------------------------------------------

class FoilworkError(ValueError):
    """Bad input: the text says which value, its unit, the allowed range and the way out."""

class ServiceFileError(FoilworkError):
    """A service file that cannot be planned. ``problems`` lists (line, field, message) for everything that is wrong."""

    problems: list[tuple[int | None, str, str]]

class OutOfRangeWarning(UserWarning):
    """Values out of range became NaN because ``errors="nan"`` was given; ``count`` says how many."""

    count: int

# --- command line ---------------------------------------------------------------------------------------------------

def main(args: Sequence[str]) -> int:
    """Run the command line with ``args`` (the first is the program's name) and return its exit status.

    0 fine, 1 the plan has findings that say stop, 2 bad input. Prints to the process's own standard output.

    Args:
        args: the words of the command line.

    Returns:
        The exit status.

    Examples:
        >>> from foilwork._native import main
        >>> main(["foilwork", "plan", "no-such-file.toml"])
        2
    """

# --- peroxide -------------------------------------------------------------------------------------------------------

@overload
def convert(
    value: float,
    from_unit: str,
    to_unit: str,
    *,
    temperature_c: float = 20.0,
    molar_volume: str = "ideal-1atm",
    density_g_per_ml: float | None = None,
    errors: Literal["raise", "nan"] = "raise",
) -> float:
    """Convert a strength of hydrogen peroxide from one unit to another.

    Units: ``"% w/w"``, ``"% w/v"``, ``"g/L"``, ``"mol/L"``, ``"mol/kg"`` (of water), ``"N"`` (2 equivalents per mole),
    ``"% active oxygen"``, ``"volumes"`` (oxygen volumes, not the trade label).
    """

@overload
def convert(
    value: ArrayLike,
    from_unit: str,
    to_unit: str,
    *,
    temperature_c: ArrayLike = 20.0,
    molar_volume: str = "ideal-1atm",
    density_g_per_ml: float | None = None,
    errors: Literal["raise", "nan"] = "raise",
) -> NDArray[float64]: ...
@overload
def dilute(
    stock_ww: float, target_ww: float, total_g: float, *, errors: Literal["raise", "nan"] = "raise"
) -> tuple[float, float]:
    """Split a total into stock and diluent."""

@overload
def dilute(
    stock_ww: ArrayLike, target_ww: ArrayLike, total_g: ArrayLike, *, errors: Literal["raise", "nan"] = "raise"
) -> tuple[NDArray[float64], NDArray[float64]]: ...

# --- mix ------------------------------------------------------------------------------------------------------------

# --- limits ---------------------------------------------------------------------------------------------------------

# --- colour ---------------------------------------------------------------------------------------------------------

# --- money ----------------------------------------------------------------------------------------------------------

_Exact: TypeAlias = Decimal | int | str
_Number: TypeAlias = Decimal | float | str
_Mapping: TypeAlias = SupportsKeysAndGetItem[str, Any]

@final
class Money:
    """An amount of money: a whole number of minor units (cents, pence, yen, fils) and an ISO 4217 currency.

    Sums are exact or refused: two currencies never meet, nothing overflows silently, and there is no division
    (:func:`allocate` shares an amount out without losing a minor unit). Immutable and hashable.

    Args:
        amount: units of the currency as ``decimal.Decimal``, ``int`` or ``str``. A float is refused.
        currency: three-letter code in capitals.
        rounding: how an amount between two minor units is rounded; without it, such an amount is refused. One of
            ``"midpoint_away_from_zero"`` (half up), ``"midpoint_nearest_even"``, ``"midpoint_toward_zero"``,
            ``"to_zero"``, ``"away_from_zero"``, ``"to_negative_infinity"``, ``"to_positive_infinity"``.

    Raises:
        FoilworkError: unknown currency, no decimal number, too many decimals, or beyond 64 bits of minor units.

    Examples:
        >>> from foilwork.money import Money
        >>> Money("12.50", "EUR") + Money("0.75", "EUR")
        Money('13.25', 'EUR')
        >>> Money("4.165", "EUR", "midpoint_nearest_even").minor
        416
        >>> Money("12.50", "EUR").amount
        Decimal('12.50')
    """
    def __new__(cls, amount: _Exact, currency: str, rounding: str | None = None) -> Money: ...
    @classmethod
    def from_minor(cls, minor: int, currency: str) -> Money:
        """Take a whole number of minor units."""
    @property
    def amount(self) -> Decimal:
        """The amount in units of the currency, with all its decimals."""
    @property
    def minor(self) -> int:
        """The whole number of minor units."""
    @property
    def currency(self) -> str:
        """The three-letter code."""
    def __add__(self, value: Money, /) -> Money: ...
    def __radd__(self, value: Money, /) -> Money: ...
    def __sub__(self, value: Money, /) -> Money: ...
    def __rsub__(self, value: Money, /) -> Money: ...
    def __mul__(self, value: int, /) -> Money: ...
    def __rmul__(self, value: int, /) -> Money: ...
    def __neg__(self) -> Money: ...
    def __bool__(self) -> bool: ...
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __lt__(self, value: Money, /) -> bool: ...
    def __le__(self, value: Money, /) -> bool: ...
    def __gt__(self, value: Money, /) -> bool: ...
    def __ge__(self, value: Money, /) -> bool: ...
    def __hash__(self) -> int: ...
    def __format__(self, spec: str) -> str: ...
    def __reduce__(self) -> tuple[type[Money], tuple[str, str]]: ...

@final
class TaxedPrice:
    """A price with its tax: ``net + tax == gross``, always."""
    @property
    def net(self) -> Money:
        """Without the tax."""
    @property
    def tax(self) -> Money:
        """The tax."""
    @property
    def gross(self) -> Money:
        """With the tax."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class SetPrice:
    """A net price over a cost, with both percentages, so that neither is taken for the other."""
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
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class DiscountedPrice:
    """A price with a discount: ``before - off == after``, always."""
    @property
    def before(self) -> Money:
        """The full price."""
    @property
    def off(self) -> Money:
        """What is taken off."""
    @property
    def after(self) -> Money:
        """What is left to pay."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class DiscountBreakEven:
    """What an offer must bring in to leave as much as before."""
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
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class ServicePrice:
    """A price, its tax, and what it really leaves after rounding, price ending and card fee."""
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
    def per_chair_hour(self) -> Decimal | None:
        """What the price leaves for an hour of the chair, unrounded; ``None`` without a time."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class QuoteDriver:
    """How much one part of a quote moves the net price, alone."""
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
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class Quote:
    """A price from-to, with what drives it."""
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
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class PriceListEntry:
    """One entry of a price list, gross."""
    @property
    def service(self) -> str:
        """The service."""
    @property
    def client_class(self) -> str:
        """The class of client."""
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
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class SalesNeeded:
    """How much must be sold to reach a goal."""
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
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class MarginOfSafety:
    """How far sales can fall before there is a loss."""
    @property
    def amount(self) -> Money:
        """Sales less break-even sales."""
    @property
    def percent_of_sales(self) -> Decimal:
        """The same in percent of the sales."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class MixLine:
    """One service of a mix that reaches a goal."""
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
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class MixPlan:
    """How many of each service reach a goal."""
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
    def services(self) -> list[MixLine]:
        """Each service."""
    @property
    def sales(self) -> Money:
        """Net takings of all of them."""
    @property
    def left_over(self) -> Money:
        """What they leave beyond the goal."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

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

@final
class Pay:
    """What someone is paid for a period."""
    @property
    def base(self) -> Money:
        """The wage or retainer."""
    @property
    def commission(self) -> Money:
        """The commission."""
    @property
    def total(self) -> Money:
        """Both."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class RentOrWageAnswer:
    """Chair rent against wage."""
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
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class Reorder:
    """When to order, and how much."""
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
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class ServiceCosts:
    """The costs of a long list of services, and their sums."""
    @property
    def product_minor(self) -> NDArray[int64]:
        """Product, waste included: whole minor units."""
    @property
    def labour_minor(self) -> NDArray[int64]:
        """Labour: whole minor units."""
    @property
    def overhead_minor(self) -> NDArray[int64]:
        """Overhead: whole minor units."""
    @property
    def cost_minor(self) -> NDArray[int64]:
        """The three and the consumables together: whole minor units."""
    @property
    def product(self) -> Money:
        """Sum of the product costs."""
    @property
    def consumables(self) -> Money:
        """Sum of the consumables."""
    @property
    def labour(self) -> Money:
        """Sum of the labour costs."""
    @property
    def overhead(self) -> Money:
        """Sum of the overheads."""
    @property
    def cost(self) -> Money:
        """Sum of all costs."""

@final
class CostTable:
    """What a service costs, line by line; the total is the sum of the lines, however they are grouped.

    Args:
        currency: three-letter code of every line.

    Raises:
        FoilworkError: unknown currency.

    Examples:
        >>> from foilwork.money import CostTable, Money
        >>> table = CostTable("EUR")
        >>> table.add("product", "Pale Drift lightener", Money("2.11", "EUR"), section="crown", bowl="A")
        >>> table.add("labour", "hands-on time", Money("33.33", "EUR"))
        >>> table.total
        Money('35.44', 'EUR')
        >>> [str(line["share_percent"]) for line in table.lines()]
        ['6.0', '94.0']
    """
    def __new__(cls, currency: str) -> CostTable: ...
    def add(self, part: str, what: str, amount: Money, *, section: str | None = None, bowl: str | None = None) -> None:
        """Add a line.

        Args:
            part: one of ``"product"``, ``"additive"``, ``"consumables"``, ``"laundry"``, ``"labour"``, ``"overhead"``,
                ``"card fee"``, ``"other"``.
            what: what it is, in your words.
            amount: what it costs, nothing or more.
            section: the section of the head it belongs to, where there is one.
            bowl: the bowl it belongs to, where there is one.

        Raises:
            FoilworkError: an unknown part, a negative amount, another currency.
        """
    @property
    def total(self) -> Money:
        """The sum of the lines."""
    def lines(self) -> list[dict[str, Any]]:
        """The lines as dicts: part, what, section, bowl, amount, share_percent. The shares add up to exactly 100."""
    def by_part(self) -> list[tuple[str, Money]]:
        """The total of each kind of cost."""
    def by_section(self) -> list[tuple[str, Money]]:
        """The total of each section of the head, of the lines that belong to one."""
    def by_bowl(self) -> list[tuple[str, Money]]:
        """The total of each bowl, of the lines that belong to one."""

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
        price_toward: str = "up",
        rounding: str = "midpoint_away_from_zero",
    ) -> PriceRule: ...
    def price(self, cost: Money, chair_min: float | None = None) -> ServicePrice:
        """The price for a cost; ``chair_min`` is needed for a target by the hour."""
    def check(self, cost: Money, gross: Money, chair_min: float | None = None) -> ServicePrice:
        """What a gross price that is already on the list leaves, by the same tax and card fee."""

@final
class PricedServices:
    """A list of services, costed and priced, with totals that add up to the minor unit.

    Made by :func:`price_services`, :func:`price_services_csv` and :func:`price_services_json`.
    """
    def lines(self) -> list[dict[str, Any]]:
        """One dict for each service: its costs part by part, net, tax, gross, profit, margin, mark-up."""
    def totals(self) -> dict[str, Any]:
        """The sums over all services, each amount times the number sold."""
    def reconcile(self) -> bool:
        """Whether the totals agree across: parts make the cost, net and tax the gross, net less cost the profit."""
    def to_csv(self) -> str:
        """The table as comma-separated text with a header row and a last line ``total``."""
    def __len__(self) -> int: ...

def product_cost(
    pack_price: Money, pack_g: float, used_g: float, *, rounding: str = "midpoint_away_from_zero"
) -> Money:
    """Cost of the product that was used, waste included, at its unrounded pack price.

    Args:
        pack_price: what a pack costs.
        pack_g: what it holds, in g.
        used_g: what was used and thrown away, in g.
        rounding: how the cost becomes whole minor units, once; see :class:`Money`.

    Raises:
        FoilworkError: an empty pack, a price below nothing, a mass out of range.

    Source:
        Unit price from the price of a pack: OpenStax, Prealgebra 2e, module m81303.

    Examples:
        >>> from foilwork.money import Money, product_cost
        >>> product_cost(Money("18.90", "EUR"), pack_g=1000, used_g=42)
        Money('0.79', 'EUR')
    """

def supply_cost(
    pack_price: Money, pack: float, used: float, *, unit: str, rounding: str = "midpoint_away_from_zero"
) -> Money:
    """:func:`product_cost` for anything bought in packs: by mass, by volume or as a count.

    Args:
        pack_price: what a pack costs.
        pack: what it holds, in ``unit``.
        used: what was used and thrown away, in ``unit``.
        unit: ``"g"``, ``"mL"`` or ``"piece"``.
        rounding: how the cost becomes whole minor units, once; see :class:`Money`.

    Raises:
        FoilworkError: an empty pack, a price below nothing, a value out of range, an unknown unit.

    Examples:
        >>> from foilwork.money import Money, supply_cost
        >>> supply_cost(Money("24.00", "EUR"), 500, 42, unit="piece")
        Money('2.02', 'EUR')
    """

def unit_price(pack_price: Money, pack: float, *, unit: str) -> Decimal:
    """Price of one gram, millilitre or piece, unrounded to 28 significant digits.

    Args:
        pack_price: what a pack costs.
        pack: what it holds, in ``unit``.
        unit: ``"g"``, ``"mL"`` or ``"piece"``.

    Raises:
        FoilworkError: as :func:`supply_cost`.

    Source:
        OpenStax, Prealgebra 2e, module m81303.

    Examples:
        >>> from foilwork.money import Money, unit_price
        >>> unit_price(Money("3.99", "USD"), 24, unit="piece")
        Decimal('0.16625')
    """

def packs_needed(need: float, pack: float, *, unit: str) -> int:
    """How many whole packs cover the need: always rounded up.

    Args:
        need: what is needed, in ``unit``.
        pack: what a pack holds, in ``unit``.
        unit: ``"g"``, ``"mL"`` or ``"piece"``.

    Raises:
        FoilworkError: an empty pack, a value out of range, an unknown unit.

    Examples:
        >>> from foilwork.money import packs_needed
        >>> packs_needed(17_500, 12, unit="g")
        1459
    """

def labour_per_minute(wage_per_h: Money, on_costs_percent: _Number, paid_h: float, productive_h: float) -> Decimal:
    """Cost of labour for one productive minute, on-costs and idle hours included, unrounded.

    Args:
        wage_per_h: wage for one paid hour.
        on_costs_percent: what the employer pays on top, in percent of the wage.
        paid_h: paid hours of a period.
        productive_h: hours of the same period with hands on a client.

    Raises:
        FoilworkError: a negative wage, on-costs out of range, productive hours above paid ones.

    Examples:
        >>> from foilwork.money import Money, labour_per_minute
        >>> labour_per_minute(Money("15.00", "EUR"), 20, paid_h=40, productive_h=30)
        Decimal('0.4')
    """

def labour_cost(
    hands_on_min: float,
    wage_per_h: Money,
    on_costs_percent: _Number,
    paid_h: float,
    productive_h: float,
    *,
    rounding: str = "midpoint_away_from_zero",
) -> Money:
    """Cost of so much hands-on time, rounded once from the exact value.

    Args:
        hands_on_min: hands-on time, in min.
        wage_per_h: wage for one paid hour.
        on_costs_percent: what the employer pays on top, in percent of the wage.
        paid_h: paid hours of a period.
        productive_h: hours of the same period with hands on a client.
        rounding: how the cost becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: as :func:`labour_per_minute`.

    Examples:
        >>> from foilwork.money import Money, labour_cost
        >>> labour_cost(75, Money("16.00", "EUR"), 25, paid_h=38, productive_h=28.5)
        Money('33.33', 'EUR')
    """

def overhead_per_chair_hour(overhead: Money, chairs: int, productive_h_per_chair: float) -> Decimal:
    """Overhead for one productive hour of one chair, unrounded.

    Args:
        overhead: overhead of a period.
        chairs: how many chairs carry it.
        productive_h_per_chair: hours of one chair in that period with a client in it. Opening hours understate it.

    Raises:
        FoilworkError: a negative overhead, no chair, no productive hours.

    Source:
        Overhead rate per hour of activity: OpenStax, Principles of Accounting, Volume 2, module m68135.

    Examples:
        >>> from foilwork.money import Money, overhead_per_chair_hour
        >>> overhead_per_chair_hour(Money("60000", "EUR"), chairs=4, productive_h_per_chair=1500)
        Decimal('10')
    """

def overhead_cost(
    chair_min: float,
    overhead: Money,
    chairs: int,
    productive_h_per_chair: float,
    *,
    rounding: str = "midpoint_away_from_zero",
) -> Money:
    """Overhead of so much time in the chair, rounded once from the exact value.

    Args:
        chair_min: time in the chair, in min.
        overhead: overhead of a period.
        chairs: how many chairs carry it.
        productive_h_per_chair: hours of one chair in that period with a client in it.
        rounding: how the cost becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: as :func:`overhead_per_chair_hour`.

    Examples:
        >>> from foilwork.money import Money, overhead_cost
        >>> overhead_cost(100, Money("60000", "EUR"), chairs=4, productive_h_per_chair=1500)
        Money('16.67', 'EUR')
    """

def allocate(amount: Money, weights: Sequence[_Number]) -> list[Money]:
    """Share an amount out in proportion to weights; the shares always add up to the amount.

    Args:
        amount: what is shared out.
        weights: one for each share, nothing or more.

    Raises:
        FoilworkError: no weights, a negative one, or all of them nothing.

    Examples:
        >>> from foilwork.money import Money, allocate
        >>> allocate(Money("10.00", "EUR"), [1, 1, 1])
        [Money('3.34', 'EUR'), Money('3.33', 'EUR'), Money('3.33', 'EUR')]
    """

def price_from_margin(cost: Money, margin_percent: _Number, *, rounding: str = "midpoint_away_from_zero") -> SetPrice:
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

def price_from_markup(cost: Money, markup_percent: _Number, *, rounding: str = "midpoint_away_from_zero") -> SetPrice:
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

def add_tax(net: Money, tax_percent: _Number, *, rounding: str = "midpoint_away_from_zero") -> TaxedPrice:
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

def take_tax_out(gross: Money, tax_percent: _Number, *, rounding: str = "midpoint_away_from_zero") -> TaxedPrice:
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

def end_price(price: Money, step: Money, ending: Money, toward: str = "up") -> Money:
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

def apply_discount(
    price: Money, discount_percent: _Number, *, rounding: str = "midpoint_away_from_zero"
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
    after: Money, discount_percent: _Number, *, rounding: str = "midpoint_away_from_zero"
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
        >>> from foilwork.money import Money, discount_break_even
        >>> discount_break_even(Money("100", "EUR"), Money("80", "EUR"), Money("50", "EUR"), 30).count_needed
        50
    """

def quote_range(
    parts: Sequence[tuple[str, Money, Money, Money]],
    rule: PriceRule,
    *,
    chair_min: tuple[float, float, float] | None = None,
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
        >>> from foilwork.money import Money, PriceRule, quote_range
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
        | tuple[str, str, Sequence[tuple[str, Money, Money, Money]], tuple[float, float, float]]
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
        >>> from foilwork.money import Money, PriceRule, price_list
        >>> euros = lambda text: Money(text, "EUR")
        >>> cost = ("product and time", euros("40.00"), euros("46.00"), euros("55.00"))
        >>> rule = PriceRule(margin_percent=40, tax_percent=20, price_step=euros("5.00"))
        >>> entry = price_list([("half head of foils", "long", [cost])], rule)[0]
        >>> entry.low, entry.usual, entry.high
        (Money('80.00', 'EUR'), Money('95.00', 'EUR'), Money('110.00', 'EUR'))
    """

def break_even(
    fixed: Money,
    price: Money,
    variable: Money,
    *,
    profit: Money | None = None,
    rounding: str = "midpoint_away_from_zero",
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

def profit_before_tax(after_tax: Money, tax_percent: _Number, *, rounding: str = "midpoint_away_from_zero") -> Money:
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

def mix_target(fixed: Money, profit: Money, items: Sequence[tuple[str, Money, Money, _Number]]) -> MixPlan:
    """How many services, sold in a given mix, cover the fixed costs and leave a profit before tax.

    Args:
        fixed: fixed costs of a period.
        profit: profit wanted before tax.
        items: ``(what, price, variable, weight)`` for each service; weights are proportions.

    Raises:
        FoilworkError: no services, a mix that leaves nothing, a negative weight, two currencies.

    Examples:
        >>> from foilwork.money import Money, mix_target
        >>> eur = lambda text: Money(text, "EUR")
        >>> mix = [("foils", eur("120"), eur("30"), 1), ("gloss", eur("45"), eur("10"), 3)]
        >>> plan = mix_target(eur("4000"), eur("0"), mix)
        >>> plan.count, [line.count for line in plan.services]
        (83, [21, 62])
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

def commission_pay(
    takings: Money,
    *,
    percent: _Number | None = None,
    threshold: Money | None = None,
    tiers: Sequence[tuple[Money | None, _Number]] | None = None,
    base: Money | None = None,
    rounding: str = "midpoint_away_from_zero",
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
        >>> from foilwork.money import Money, commission_pay
        >>> commission_pay(Money("1300", "USD"), tiers=[(Money("800", "USD"), 8), (None, 14)]).commission
        Money('134.00', 'USD')
        >>> week, base = Money("1540", "USD"), Money("120", "USD")
        >>> commission_pay(week, percent=5, threshold=Money("500", "USD"), base=base).total
        Money('172.00', 'USD')
    """

def share_tips(tips: Money, worked_h: Sequence[float]) -> list[Money]:
    """Share pooled tips by time worked, and lose no minor unit.

    Args:
        tips: all tips.
        worked_h: hours of each person.

    Raises:
        FoilworkError: nobody, or nobody worked; tips below nothing.

    Examples:
        >>> from foilwork.money import Money, share_tips
        >>> [str(share) for share in share_tips(Money("50.00", "EUR"), [8, 8, 5])]
        ['19.05 EUR', '19.05 EUR', '11.90 EUR']
    """

def rent_or_wage(
    takings: Money,
    *,
    rent: Money,
    own_costs: Money,
    variable_percent: _Number,
    wage: Money,
    commission_percent: _Number,
    rounding: str = "midpoint_away_from_zero",
) -> RentOrWageAnswer:
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
        >>> from foilwork.money import Money, rent_or_wage
        >>> eur = lambda text: Money(text, "EUR")
        >>> renting = {"rent": eur("200"), "own_costs": eur("50"), "variable_percent": 12}
        >>> choice = rent_or_wage(eur("1500"), **renting, wage=eur("480"), commission_percent=15)
        >>> choice.break_even_takings, choice.difference
        (Money('1000.00', 'EUR'), Money('365.00', 'EUR'))
    """

def productivity(productive_h: float, of_h: float, *, denominator: str) -> tuple[Decimal, str]:
    """Productive time in percent of a stated other time.

    Args:
        productive_h: hours with a client in the chair.
        of_h: the hours to compare with.
        denominator: what these are: ``"recorded time"``, ``"paid time"``, ``"rostered time"``, ``"opening time"`` or
            ``"standard time"``. The same week reads 75 or 125, so it must be said.

    Returns:
        The percentage, unrounded, and the denominator again.

    Raises:
        FoilworkError: no hours to compare with, an unknown denominator.

    Examples:
        >>> from foilwork.money import productivity
        >>> productivity(30, 40, denominator="recorded time")
        (Decimal('75'), 'recorded time')
    """

def reorder(
    on_hand: float,
    daily_use: float,
    pack: float,
    *,
    unit: str,
    lead_days: int,
    cover_days: int,
    reserve: float = 0.0,
    on_order: float = 0.0,
) -> Reorder:
    """When to order a product, how many packs, and how long the stock lasts.

    Args:
        on_hand: on the shelf now, in ``unit``.
        daily_use: used on an average day.
        pack: what a pack holds.
        unit: ``"g"``, ``"mL"`` or ``"piece"`` for all of them.
        lead_days: days from order to delivery.
        cover_days: days the delivery should last.
        reserve: kept for bad days.
        on_order: ordered and not yet delivered.

    Raises:
        FoilworkError: a value out of range, an empty pack, an unknown unit.

    Examples:
        >>> from foilwork.money import reorder
        >>> reorder(900, 120, 500, unit="g", lead_days=5, cover_days=14, reserve=300)
        Reorder(reorder_point=Decimal('900'), due=True, packs=4, stock_days=Decimal('7.5'))
    """

def price_services(services: Sequence[_Mapping] | _Mapping, terms: _Mapping) -> PricedServices:
    """Cost and price a list of services.

    Args:
        services: a sequence of mappings (one for each service), or a mapping of columns (lists, NumPy arrays, a pandas
            ``DataFrame``). Keys: ``service``, ``class``, ``product_pack_price``, ``product_pack_g``, ``product_g``,
            ``product_waste_g``, the same four for ``developer_``, ``consumables``, ``laundry``, ``hands_on_min``,
            ``chair_min``, ``price`` (gross; left out to have one set), ``sold``, ``note``. Amounts as ``Decimal`` or
            ``str``; ``None``, an empty text and NaN mean left out.
        terms: the salon's terms as a mapping: ``currency``, ``wage_per_h``, ``on_costs_percent``, ``paid_h``,
            ``productive_h``, ``overhead``, ``chairs``, ``productive_h_per_chair``; one of ``margin_percent``,
            ``markup_percent``, ``per_chair_hour``; and ``tax_percent``, ``card_percent``, ``card_fixed``,
            ``price_step``, ``price_ending``, ``price_toward``, ``rounding`` where they differ from nothing.

    Raises:
        FoilworkError: everything that is wrong, one problem to a line of its text, each with its place.

    Examples:
        >>> from foilwork.money import price_services
        >>> terms = {
        ...     "currency": "EUR", "wage_per_h": "18.00", "paid_h": 38, "productive_h": 19, "overhead": "48000",
        ...     "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
        ... }
        >>> foils = {
        ...     "service": "half head of foils", "product_pack_price": "26.40", "product_pack_g": 500, "product_g": 40,
        ...     "hands_on_min": 70, "chair_min": 120, "sold": 3,
        ... }
        >>> table = price_services([foils], terms)
        >>> table.lines()[0]["cost"], table.totals()["profit"]
        (Money('64.11', 'EUR'), Money('64.11', 'EUR'))
    """

def price_services_csv(text: str, terms: _Mapping) -> PricedServices:
    r""":func:`price_services` from comma-separated text with a header row.

    Args:
        text: the text; semicolons or tabs are recognised by the header.
        terms: as in :func:`price_services`.

    Raises:
        FoilworkError: everything that is wrong, one problem to a line of its text, each with its line and column.

    Examples:
        >>> from foilwork.money import price_services_csv
        >>> terms = {
        ...     "currency": "EUR", "wage_per_h": "18.00", "paid_h": 38, "productive_h": 19, "overhead": "48000",
        ...     "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
        ... }
        >>> price_services_csv("service,hands_on_min,chair_min\ntoner,15,40\n", terms)
        <foilwork.money.PricedServices of 1 services, profit 5.22 EUR>
    """

def price_services_json(text: str, terms: _Mapping) -> PricedServices:
    """:func:`price_services` from JSON text: an array of objects.

    Args:
        text: the text.
        terms: as in :func:`price_services`.

    Raises:
        FoilworkError: everything that is wrong, one problem to a line of its text, each with its item and key.

    Examples:
        >>> from foilwork import FoilworkError
        >>> from foilwork.money import price_services_json
        >>> terms = {
        ...     "currency": "EUR", "wage_per_h": "18.00", "paid_h": 38, "productive_h": 19, "overhead": "48000",
        ...     "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
        ... }
        >>> try:
        ...     price_services_json('[{"service": "toner", "hands_on_min": 15}]', terms)
        ... except FoilworkError as error:
        ...     print(error)
        item 1, chair_min: is missing: give a value
    """

def cost_columns(
    pack_price_minor: ArrayLike,
    pack_g: ArrayLike,
    used_g: ArrayLike,
    wasted_g: ArrayLike,
    consumables_minor: ArrayLike,
    hands_on_min: ArrayLike,
    chair_min: ArrayLike,
    terms: _Mapping,
    *,
    rounding: str = "midpoint_away_from_zero",
) -> ServiceCosts:
    """Cost a long list of services, column by column; needs NumPy.

    Each row is exactly what :func:`product_cost`, :func:`labour_cost` and :func:`overhead_cost` give.

    Args:
        pack_price_minor: price of each pack, whole minor units (integers).
        pack_g: what each pack holds, in g.
        used_g: product on the head, in g.
        wasted_g: product thrown away, in g.
        consumables_minor: foils, gloves and the like, whole minor units (integers).
        hands_on_min: hands-on time, in min.
        chair_min: time in the chair, in min.
        terms: the salon's terms, as in :func:`price_services`.
        rounding: how each cost becomes whole minor units, once; see :class:`Money`.

    Raises:
        FoilworkError: columns of different lengths; rows that cannot be costed (the first one is named, all are
            counted); terms that are wrong; NumPy is missing.
        TypeError: amounts that are no integers.

    Examples:
        >>> from foilwork.money import cost_columns
        >>> terms = {
        ...     "currency": "EUR", "wage_per_h": "15.00", "on_costs_percent": 20, "paid_h": 40, "productive_h": 30,
        ...     "overhead": "60000", "chairs": 4, "productive_h_per_chair": 1500, "margin_percent": 25,
        ... }
        >>> costs = cost_columns([2640, 980], [500, 60], [40, 30], [5, 0], [210, 35], [70, 15], [120, 40], terms)
        >>> costs.cost_minor.tolist(), costs.cost
        ([5248, 1792], Money('70.40', 'EUR'))
    """

# --- service --------------------------------------------------------------------------------------------------------

@final
class Plan:
    """A service plan: what to weigh, in which order, what was checked, what it costs.

    Made by :func:`plan`. ``str(plan)`` is the bench sheet; ``plan.data()`` is the whole plan as plain Python data.
    """

    @property
    def is_blocked(self) -> bool:
        """Whether any finding says stop; do not begin then."""
    def text(self) -> str:
        """The bench sheet as plain text, 80 columns wide."""
    def json(self) -> str:
        """The plan as JSON text."""
    def data(self) -> dict[str, Any]:
        """The plan as dicts, lists, strings and numbers; every key carries its unit, every estimate its bounds."""
    def cards(self) -> list[dict[str, Any]]:
        """The mixing cards, one for each fresh bowl, as dicts: who, what, lines, strength on the hair, times."""
    def _repr_html_(self) -> str: ...

def plan(text: str, format: Literal["toml", "json"] = "toml") -> Plan:
    """Plan a service from the text of a service file.

    Args:
        text: the file's text.
        format: ``"toml"`` or ``"json"``; both have the same shape.

    Returns:
        The plan. Findings that say stop are part of it; ask ``plan.is_blocked``.

    Raises:
        ServiceFileError: everything that is wrong with the file, each with its line; ``.problems`` lists it.

    Examples:
        >>> import foilwork
        >>> try:
        ...     foilwork.plan('format = 2')
        ... except foilwork.ServiceFileError as error:
        ...     print(error.problems[-1])
        (1, 'format', '2 is out of range: give 1')
    """

def service_schema() -> dict[str, Any]:
    """The JSON Schema of a service file (draft 2020-12), as plain Python data.

    Returns:
        The schema.

    Examples:
        >>> from foilwork import service_schema
        >>> service_schema()["title"]
        'ServiceFile'
    """
