from collections.abc import Sequence
from decimal import Decimal
from typing import final

from foilwork._native import _Answer, _Mapping
from foilwork._native.money._amount import Money
from foilwork._native.source._trail import TracedResult

__all__ = [
    "PricedLine",
    "PricedTable",
    "Totals",
    "price_services",
    "price_services_csv",
    "price_services_json",
    "trace_services",
]

@final
class PricedLine(_Answer):
    """One service, costed and priced. Amounts are for one service; ``sold`` counts in the totals only."""

    __match_args__ = ("service", "guest_class", "sold", "product", "developer", "consumables", "laundry", "labour", "overhead", "card_fee", "cost", "net", "tax", "gross", "profit", "margin_percent", "markup_percent", "target_net", "contribution_per_chair_hour")
    @property
    def service(self) -> str:
        """The service."""
    @property
    def guest_class(self) -> str | None:
        """The class of guest."""
    @property
    def sold(self) -> int:
        """How many were sold."""
    @property
    def product(self) -> Money:
        """Colour, lightener or toner, waste included."""
    @property
    def developer(self) -> Money:
        """Developer, waste included."""
    @property
    def consumables(self) -> Money:
        """Foils, gloves, film."""
    @property
    def laundry(self) -> Money:
        """Towels and gowns."""
    @property
    def labour(self) -> Money:
        """Hands-on time."""
    @property
    def overhead(self) -> Money:
        """Chair time."""
    @property
    def card_fee(self) -> Money:
        """What the card terminal keeps."""
    @property
    def cost(self) -> Money:
        """The seven together."""
    @property
    def net(self) -> Money:
        """The price without tax."""
    @property
    def tax(self) -> Money:
        """The tax."""
    @property
    def gross(self) -> Money:
        """The price with tax."""
    @property
    def profit(self) -> Money:
        """Net price less cost."""
    @property
    def margin_percent(self) -> Decimal:
        """Profit in percent of the net price."""
    @property
    def markup_percent(self) -> Decimal:
        """Profit in percent of the cost."""
    @property
    def target_net(self) -> Money:
        """Net price at which the target of the rule is met exactly."""
    @property
    def contribution_per_chair_hour(self) -> Decimal:
        """Net price less all costs but the overhead, for an hour of the chair, unrounded."""

@final
class Totals(_Answer):
    """The sums over a list, each amount times the number sold."""

    __match_args__ = ("sold", "product", "developer", "consumables", "laundry", "labour", "overhead", "card_fee", "cost", "net", "tax", "gross", "profit")
    @property
    def sold(self) -> int:
        """Services sold."""
    @property
    def product(self) -> Money:
        """Product."""
    @property
    def developer(self) -> Money:
        """Developer."""
    @property
    def consumables(self) -> Money:
        """Consumables."""
    @property
    def laundry(self) -> Money:
        """Laundry."""
    @property
    def labour(self) -> Money:
        """Labour."""
    @property
    def overhead(self) -> Money:
        """Overhead."""
    @property
    def card_fee(self) -> Money:
        """Card fees."""
    @property
    def cost(self) -> Money:
        """All costs."""
    @property
    def net(self) -> Money:
        """Takings without tax."""
    @property
    def tax(self) -> Money:
        """Tax."""
    @property
    def gross(self) -> Money:
        """Takings with tax."""
    @property
    def profit(self) -> Money:
        """Net takings less all costs."""

@final
class PricedTable(_Answer):
    """A list of services, costed and priced, with totals that add up to the minor unit.

    Made by :func:`price_services`, :func:`price_services_csv` and :func:`price_services_json`.
    """

    __match_args__ = ("lines", "totals", "tax_percent", "rounding", "csv")
    @property
    def lines(self) -> list[PricedLine]:
        """One line for each service, in the order of the list."""
    @property
    def totals(self) -> Totals:
        """The sums."""
    @property
    def tax_percent(self) -> Decimal:
        """The tax in the prices, in percent of the net price."""
    @property
    def rounding(self) -> str:
        """How each amount became whole minor units."""
    @property
    def csv(self) -> str:
        """The table as comma-separated text with a header row and a last line ``total``."""

def price_services(services: Sequence[_Mapping] | _Mapping, terms: _Mapping) -> PricedTable:
    """Cost and price a list of services.

    Args:
        services: a sequence of mappings (one for each service), or a mapping of columns (lists, NumPy arrays, a pandas
            ``DataFrame``). Keys: ``service``, ``class``, ``product`` (its name in the shop) or ``product_pack_price`` and
            ``product_pack_g``, ``product_g``, ``product_waste_g``, the same for ``developer``, ``consumables``,
            ``laundry``, ``hands_on_min``, ``chair_min``, ``price`` (gross; left out to have one set), ``sold``,
            ``note``. Amounts as ``Decimal`` or ``str``; ``None``, an empty text and NaN mean left out.
        terms: the shop as a mapping of the shape of a shop file, or its ``currency`` and the fields of its ``terms`` in
            one: ``wage_per_h``, ``on_costs_percent``, ``productive_percent`` (or ``paid_h`` and ``productive_h``),
            ``overhead_per_h`` (or ``overhead``, ``chairs`` and ``productive_h_per_chair``); one of ``margin_percent``,
            ``markup_percent``, ``per_chair_h``; and ``tax_percent``, ``card_percent``, ``card_fixed``,
            ``price_step``, ``price_ending``, ``price_toward``, ``rounding``. Amounts are texts, the rest numbers.

    Raises:
        FoilworkError: everything that is wrong, one problem to a line of its text, each with its place.

    Examples:
        >>> from foilwork.business import price_services
        >>> terms = {
        ...     "currency": "EUR", "wage_per_h": "18.00", "paid_h": 38, "productive_h": 19, "overhead": "48000",
        ...     "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
        ... }
        >>> foils = {
        ...     "service": "half head of foils", "product_pack_price": "26.40", "product_pack_g": 500, "product_g": 40,
        ...     "hands_on_min": 70, "chair_min": 120, "sold": 3,
        ... }
        >>> table = price_services([foils], terms)
        >>> table.lines[0].cost, table.totals.profit
        (Money('64.11', 'EUR'), Money('64.11', 'EUR'))
        >>> shop = {
        ...     "currency": "EUR", "terms": {"wage_per_h": "18.00", "overhead_per_h": "10.00", "margin_percent": 25},
        ...     "lightener": [{"name": "powder", "ratio": "1:2", "pack_g": 500, "price": "26.40"}],
        ... }
        >>> by_name = {"service": "foils", "product": "powder", "product_g": 40, "hands_on_min": 70, "chair_min": 120}
        >>> price_services([by_name], shop).lines[0].product
        Money('2.11', 'EUR')
    """

def trace_services(services: Sequence[_Mapping] | _Mapping, terms: _Mapping) -> list[TracedResult]:
    """How cost, price and what is left of each service come about.

    Args:
        services: as in :func:`price_services`.
        terms: as in :func:`price_services`.

    Returns:
        A :class:`foilwork.source.TracedResult` for each number, service by service.

    Raises:
        FoilworkError: as :func:`price_services`.

    Examples:
        >>> from foilwork.business import trace_services
        >>> terms = {
        ...     "currency": "EUR", "wage_per_h": "18.00", "paid_h": 38, "productive_h": 19, "overhead": "48000",
        ...     "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
        ... }
        >>> [one.what for one in trace_services([{"service": "toner", "hands_on_min": 15, "chair_min": 40}], terms)][:2]
        ['toner: cost', 'toner: net price']
    """

def price_services_csv(text: str, terms: _Mapping) -> PricedTable:
    r""":func:`price_services` from comma-separated text with a header row.

    Args:
        text: the text; semicolons or tabs are recognised by the header.
        terms: as in :func:`price_services`.

    Raises:
        FoilworkError: everything that is wrong, one problem to a line of its text, each with its line and column.

    Examples:
        >>> from foilwork.business import price_services_csv
        >>> terms = {
        ...     "currency": "EUR", "wage_per_h": "18.00", "paid_h": 38, "productive_h": 19, "overhead": "48000",
        ...     "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
        ... }
        >>> price_services_csv("service,hands_on_min,chair_min\ntoner,15,40\n", terms).totals.profit
        Money('5.22', 'EUR')
    """

def price_services_json(text: str, terms: _Mapping) -> PricedTable:
    """:func:`price_services` from JSON text: an array of objects.

    Args:
        text: the text.
        terms: as in :func:`price_services`.

    Raises:
        FoilworkError: everything that is wrong, one problem to a line of its text, each with its item and key.

    Examples:
        >>> from foilwork import FoilworkError
        >>> from foilwork.business import price_services_json
        >>> terms = {
        ...     "currency": "EUR", "wage_per_h": "18.00", "paid_h": 38, "productive_h": 19, "overhead": "48000",
        ...     "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
        ... }
        >>> try:
        ...     price_services_json('[{"service": "toner", "hands_on_min": 15}]', terms)
        ... except FoilworkError as error:
        ...     print(error)
        service[1].chair_min: is missing: give a value
    """
