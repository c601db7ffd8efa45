from collections.abc import Sequence
from typing import Any, final

from foilwork._native import _Mapping

__all__ = [
    "PricedServices",
    "price_services",
    "price_services_csv",
    "price_services_json",
]

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
