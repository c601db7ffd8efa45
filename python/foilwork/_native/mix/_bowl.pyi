from collections.abc import Sequence
from decimal import Decimal
from typing import final

from foilwork._native import _Percent
from foilwork._native.mix._recipe import Additive, Recipe

__all__ = [
    "Bowl",
    "BowlPlan",
    "Ratio",
    "Weighing",
    "as_applied",
    "bowls",
    "minimum_bowl",
    "minimum_mass",
    "weigh",
]

@final
class Ratio:
    """A mixing ratio by mass, kept as the exact decimals that were written.

    Args:
        text: parts joined by ``:`` or ``+``, for example ``"1:1.5"``, ``"1+2"`` or ``"3:1:6"``.

    Raises:
        FoilworkError: with the position of the character that cannot be read.

    Examples:
        >>> from foilwork.mix import Ratio
        >>> Ratio("1:1.5").split_total(75)
        [30.0, 45.0]
        >>> str(Ratio("1+2")), Ratio("1:1.5").lowest_terms()
        ('1+2', [2, 3])
    """
    def __new__(cls, text: str) -> Ratio: ...
    @property
    def parts(self) -> list[Decimal]:
        """The parts as written, exact."""
    def lowest_terms(self) -> list[int]:
        """The same ratio in the smallest whole numbers."""
    def same_mix(self, other: Ratio) -> bool:
        """Whether both ratios weigh out alike, as ``1:1.5`` and ``2:3`` do."""
    def split_total(self, total_g: float) -> list[float]:
        """The masses in g that make up ``total_g``; nothing is rounded."""
    def split_decimal(self, total: Decimal) -> list[Decimal]:
        """The shares of a total as decimals of 28 digits, in the unit of the total."""
    def given_part(self, part: int, mass_g: float) -> list[float]:
        """All masses in g when part ``part`` (counted from 0) weighs ``mass_g``."""
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...

@final
class Weighing:
    """A bowl as the scale can weigh it; made by :func:`weigh`."""
    @property
    def masses_g(self) -> list[float]:
        """What to put on the scale, in g, in the order of the recipe."""
    @property
    def total_g(self) -> float:
        """The total on the scale in g."""
    @property
    def ratio_errors_percent(self) -> list[float]:
        """How far each part's share of the bowl is from the recipe, in percent of the share; negative is too little."""
    @property
    def worst_ratio_error_percent(self) -> float:
        """The largest of them without sign; no other weighing with this total has a smaller one."""
    @property
    def vanished(self) -> list[int]:
        """Parts (counted from 0) that the recipe wants and the scale cannot show."""
    def strength_shift_percentage_points(self, strengths_ww_percent: Sequence[_Percent]) -> float:
        """Change of the bowl's strength by rounding, in percentage points w/w.

        ``strengths_ww_percent`` gives the strength of each part in % w/w, as a number or (low, best, high);
        missing ones are 0.
        """
    def tare_order(self, last: int | None = None) -> list[tuple[int, float, float]]:
        """The order on the scale: smallest first, ``last`` (the developer) last.

        Each step is (part, mass to add in g, reading in g).
        """

def minimum_mass(division_g: float, tolerance_percent: float) -> float:
    """The least a scale can weigh of one thing so that rounding is off by no more than a tolerance.

    Args:
        division_g: division of the scale in g.
        tolerance_percent: largest error in percent of the mass.

    Returns:
        The mass in g: half a division over the tolerance.

    Raises:
        FoilworkError: for a tolerance below 0.01 %, or a division of 0 g.

    Examples:
        >>> from foilwork.mix import minimum_mass
        >>> minimum_mass(1, 5)
        10.0
    """

def weigh(masses_g: Sequence[float], division_g: float) -> Weighing:
    """Round parts to a scale: they add up to the rounded total, and the worst error of ratio is the least possible.

    Args:
        masses_g: masses of the parts in g.
        division_g: division of the scale in g.

    Raises:
        FoilworkError: when there is nothing to weigh, or the division does not suit the bowl.

    Examples:
        >>> from foilwork.mix import weigh
        >>> weigh([33.34, 33.33, 33.33], 1).masses_g
        [34.0, 33.0, 33.0]

    Source:
        Greedy increments for separable convex allocation (Ibaraki and Katoh 1988, from memory); checked by brute force.
    """

def as_applied(masses_g: Sequence[float], strengths_ww_percent: Sequence[_Percent]) -> tuple[float, float, float]:
    """Strength of the mixed bowl: the mass-weighted mean of the strengths of its parts.

    Args:
        masses_g: masses of the parts in g.
        strengths_ww_percent: strength of each part in % w/w, as a number or (low, best, high). An additive has 0.

    Returns:
        Lower bound, best estimate and upper bound in % w/w.

    Raises:
        FoilworkError: when the bowl is empty, or the lists differ in length.

    Examples:
        >>> from foilwork.mix import as_applied
        >>> as_applied([30, 60], [0, 9])
        Bounds(low=6.0, best=6.0, high=6.0)

    Source:
        Conservation of solute mass.
    """

def minimum_bowl(ratio: Ratio, division_g: float, tolerance_percent: float) -> tuple[float, float]:
    """The least that can be weighed in a ratio so that no part's share is off by more than a tolerance.

    Args:
        ratio: the ratio.
        division_g: division of the scale in g.
        tolerance_percent: largest error of a part's share, in percent of that share.

    Returns:
        The smallest bowl that happens to be within the tolerance, and the mass from which on every bowl is, in g.

    Raises:
        FoilworkError: for a tolerance below 0.01 %, or a part too small for any scale.

    Examples:
        >>> from foilwork.mix import Ratio, minimum_bowl
        >>> minimum_bowl(Ratio("1:1.5"), 1, 5)
        (5.0, 50.0)
    """

@final
class Bowl:
    """One fresh bowl of a :class:`BowlPlan`. Times count in min from the start of the first mixing."""
    @property
    def mixed_g(self) -> float:
        """Mass to mix in g, residue included."""
    @property
    def applied_g(self) -> float:
        """Mass that goes onto the hair in g."""
    @property
    def mix_at_min(self) -> float:
        """When to start mixing."""
    @property
    def ready_at_min(self) -> float:
        """When it is mixed and application goes on."""
    @property
    def empty_at_min(self) -> float:
        """When the last of it is on the hair."""
    @property
    def use_by_min(self) -> float:
        """When it must no longer be used."""

@final
class BowlPlan:
    """Fresh bowls in the order of mixing; made by :func:`bowls`."""
    @property
    def bowls(self) -> list[Bowl]:
        """The bowls, all of one size."""
    @property
    def mixed_g(self) -> float:
        """Everything mixed in g, which is what the bowls cost."""
    @property
    def applied_g(self) -> float:
        """Everything that reaches the hair in g."""
    @property
    def leftover_g(self) -> float:
        """Mixed and thrown away, in g."""
    def recipes(self, base: Recipe, additives: Sequence[Additive] = ()) -> list[Recipe]:
        """The recipe of each bowl: ``base`` scaled so that base and additives together fill it."""
    def leftovers(self, base: Recipe, additives: Sequence[Additive] = ()) -> list[tuple[str, float, float]]:
        """What each product loses: (product, mass put into bowls, mass of that thrown away), in g."""

def bowls(
    total_g: float,
    capacity_g: float,
    working_life_min: float,
    pace_g_per_min: float,
    *,
    mixing_min: float = 0.0,
    residue_g: float = 0.0,
) -> BowlPlan:
    """Number, size and mixing times of fresh bowls.

    Args:
        total_g: product that must reach the hair, in g.
        capacity_g: the most one bowl holds, in g.
        working_life_min: how long a mixed bowl may be used, in min, from the product's directions.
        pace_g_per_min: how fast product goes onto the hair, in g/min.
        mixing_min: time application stands still for each mixing, in min.
        residue_g: what stays behind in bowl and brush, in g.

    Raises:
        FoilworkError: when a bowl could put nothing on the hair, or hundreds would be needed.

    Examples:
        >>> from foilwork.mix import bowls
        >>> plan = bowls(200, 120, 40, 2)
        >>> len(plan.bowls), round(plan.mixed_g)
        (3, 200)
    """
