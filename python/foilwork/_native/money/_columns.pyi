from typing import Literal, final

from numpy import int64
from numpy.typing import ArrayLike, NDArray

from foilwork import _words
from foilwork._native import _Mapping
from foilwork._native.money._amount import Money

__all__ = [
    "CostColumns",
    "cost_columns",
]

@final
class CostColumns:
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
    @property
    def refused(self) -> list[tuple[int, str]]:
        """The rows that cannot be costed, counted from 0, with what is wrong; they hold 0. None unless ``errors="apart"``."""

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
    rounding: _words._Rounding = "midpoint-away-from-zero",
    errors: Literal["raise", "apart"] = "raise",
    out: tuple[NDArray[int64], NDArray[int64], NDArray[int64], NDArray[int64]] | None = None,
) -> CostColumns:
    """Cost a long list of services, column by column; needs NumPy.

    Each row is exactly what :func:`supply_cost`, :func:`labour_cost` and :func:`overhead_cost` give.

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
        errors: ``"raise"``, or ``"apart"`` to list in ``refused`` what cannot be costed, with 0 in its row.
        out: a tuple of four arrays of int64 for product, labour, overhead and cost; without it new ones are made.

    Raises:
        FoilworkError: columns of different lengths; rows that cannot be costed (the first one is named, all are
            counted); terms that are wrong; NumPy is missing; ``out`` that cannot be written to or is one of the columns.
        TypeError: amounts that are no integers, ``out`` of another type.

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
