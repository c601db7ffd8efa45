from collections.abc import Sequence
from typing import final

from foilwork import _words
from foilwork._native import Bounds, _Answer, _Percent
from foilwork._native.peroxide._dilution import RoundedBlend

__all__ = [
    "Portion",
    "ShelfBlend",
    "Stock",
    "blend_shelf",
]

@final
class Stock:
    """One bottle on the shelf.

    Args:
        name: what you call it; no two bottles of a blend share a name.
        strength_ww_percent: its strength in % w/w, a number or ``Bounds``.
        in_hand_g: how much is in it, in g; None when there is always enough, as of tap water.
        price_per_kg: what a kilogram costs, in the one currency of all prices; None counts as free.

    Raises:
        FoilworkError: a strength, amount or price out of range.

    Examples:
        >>> from foilwork.peroxide import Stock
        >>> Stock("12 %", 12, in_hand_g=500, price_per_kg=8.5)
        Stock('12 %', 12.0, in_hand_g=500.0, price_per_kg=8.5)
    """

    def __new__(
        cls,
        name: str,
        strength_ww_percent: _Percent,
        in_hand_g: float | None = None,
        price_per_kg: float | None = None,
    ) -> Stock: ...
    @property
    def name(self) -> str:
        """What you call it."""
    @property
    def strength_ww_percent(self) -> Bounds[float]:
        """Its strength in % w/w, with its bounds."""
    @property
    def in_hand_g(self) -> float | None:
        """How much is in it, in g, or None."""
    @property
    def price_per_kg(self) -> float | None:
        """What a kilogram costs, or None."""
    def to_dict(self) -> dict[str, object]:
        """The fields as a dict, bounds as a dict of ``low``, ``best`` and ``high``."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...
    def __hash__(self) -> int: ...

@final
class Portion(_Answer):
    """What to take from one bottle."""

    __match_args__ = ("stock", "mass_g")
    @property
    def stock(self) -> Stock:
        """The bottle."""
    @property
    def mass_g(self) -> float:
        """How much of it, in g. Nothing is rounded."""

@final
class ShelfBlend(_Answer):
    """A blend from the shelf; made by ``blend_shelf``."""

    __match_args__ = ("portions", "total_g", "strength_ww_percent", "cost", "leftover_g")
    @property
    def portions(self) -> list[Portion]:
        """What to take from each bottle used, in the order of the shelf."""
    @property
    def total_g(self) -> float:
        """Everything together, in g."""
    @property
    def strength_ww_percent(self) -> Bounds[float]:
        """The strength of the whole in % w/w, with the bounds of the bottles."""
    @property
    def cost(self) -> float:
        """What it costs, in the currency of the prices."""
    @property
    def leftover_g(self) -> float:
        """What stays in the bottles used, in g; bottles without an amount in hand do not count."""
    def round_to_scale(self, division_g: float) -> RoundedBlend:
        """The blend as a scale shows it; no bottle is asked for more than is in hand.

        Args:
            division_g: what the last figure of the scale counts, in g.

        Returns:
            The masses to weigh in the order of the portions, their sum, and their true strength.

        Raises:
            FoilworkError: a division of zero or coarser than the blend.
        """

def blend_shelf(
    stocks: Sequence[Stock],
    target_ww_percent: float,
    total_g: float,
    *,
    objective: _words._Objective = "least-cost",
) -> ShelfBlend:
    """Blend any number of stocks to a strength and a total.

    Args:
        stocks: the bottles, ``Stock`` objects with different names.
        target_ww_percent: strength wanted in % w/w.
        total_g: how much is wanted, in g.
        objective: ``"least-cost"``, ``"fewest-bottles"`` (then least cost) or ``"least-leftover"`` in the bottles used
            (then fewest bottles, then least cost). The last two look at every combination, of at most 16 bottles.

    Returns:
        The blend, with the bottles used.

    Raises:
        FoilworkError: nothing on the shelf, two bottles of one name, or a target or total out of reach: the text says what
            is reachable.

    Source:
        Conservation of mass and of peroxide; least cost is a linear programme solved exactly by its dual.

    Examples:
        >>> from foilwork.peroxide import Stock, blend_shelf
        >>> shelf = [Stock("strong", 12, in_hand_g=30, price_per_kg=9), Stock("weak", 3, price_per_kg=5)]
        >>> [(portion.stock.name, portion.mass_g) for portion in blend_shelf(shelf, 6, 60).portions]
        [('strong', 20.0), ('weak', 40.0)]
    """
