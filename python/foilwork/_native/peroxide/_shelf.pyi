from collections.abc import Sequence
from typing import Literal, final

__all__ = [
    "ShelfBlend",
    "Stock",
    "blend_shelf",
]

@final
class Stock:
    """One bottle on the shelf.

    Args:
        name: What you call it; no two bottles of a blend share a name.
        strength_ww: Its strength in % w/w.
        in_hand_g: How much is in it, in g; None when there is always enough, as of tap water.
        price_per_kg: What a kilogram costs, in the one currency of all prices; None counts as free.

    Raises:
        FoilworkError: A strength, amount or price out of range.

    >>> from foilwork.peroxide import Stock
    >>> Stock("12 %", 12, in_hand_g=500, price_per_kg=8.5)
    Stock('12 %', 12.0, in_hand_g=500.0, price_per_kg=8.5)
    """
    def __new__(
        cls, name: str, strength_ww: float, *, in_hand_g: float | None = None, price_per_kg: float | None = None
    ) -> Stock: ...
    def __eq__(self, other: object, /) -> bool: ...
    @property
    def name(self) -> str:
        """What you call it."""
    @property
    def strength_ww(self) -> float:
        """Its strength in % w/w."""
    @property
    def in_hand_g(self) -> float | None:
        """How much is in it, in g, or None."""
    @property
    def price_per_kg(self) -> float | None:
        """What a kilogram costs, or None."""

@final
class ShelfBlend:
    """A blend from the shelf; made by ``blend_shelf``."""
    @property
    def portions(self) -> list[tuple[str, float]]:
        """What to take: ``(name, mass_g)`` for each bottle used, in the order of the shelf. Nothing is rounded."""
    @property
    def total_g(self) -> float:
        """Everything together, in g."""
    @property
    def cost(self) -> float:
        """What it costs, in the currency of the prices."""
    @property
    def leftover_g(self) -> float:
        """What stays in the bottles used, in g; bottles without an amount in hand do not count."""
    def round_to_scale(self, division_g: float) -> tuple[list[tuple[str, float]], float, float]:
        """The blend as a scale shows it.

        Args:
            division_g: What the last figure of the scale counts, in g.

        Returns:
            ``(portions, total_g, strength_ww)``: ``(name, mass_g)`` to weigh, their sum, and their true strength.

        Raises:
            FoilworkError: A division of zero or coarser than the blend.
        """

def blend_shelf(
    stocks: Sequence[Stock],
    target_ww: float,
    total_g: float,
    *,
    objective: Literal["least-cost", "fewest-bottles", "least-leftover"] = "least-cost",
) -> ShelfBlend:
    """Blend any number of stocks to a strength and a total.

    Args:
        stocks: The bottles, ``Stock`` objects with different names.
        target_ww: Strength wanted in % w/w.
        total_g: How much is wanted, in g.
        objective: ``"least-cost"``, ``"fewest-bottles"`` (then least cost) or ``"least-leftover"`` in the bottles used
            (then fewest bottles, then least cost). The last two look at every combination, of at most 16 bottles.

    Returns:
        ``ShelfBlend``.

    Raises:
        FoilworkError: Nothing on the shelf, two bottles of one name, or a target or total out of reach: the text says what
            is reachable.

    Source:
        Conservation of mass and of peroxide; least cost is a linear programme solved exactly by its dual.

    >>> from foilwork.peroxide import Stock, blend_shelf
    >>> shelf = [Stock("strong", 12, in_hand_g=30, price_per_kg=9), Stock("weak", 3, price_per_kg=5)]
    >>> blend_shelf(shelf, 6, 60)
    <blend of 20.00 g of strong + 40.00 g of weak>
    """
