from collections.abc import Sequence
from typing import final, overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

from foilwork._native import Bounds, _Answer, _Errors, _Percent, _Tuple
from foilwork._native.mix._ratio import Ratio

__all__ = [
    "MinimumBowl",
    "StrengthShift",
    "TareStep",
    "Weighing",
    "as_applied",
    "minimum_bowl",
    "minimum_mass",
    "weigh",
]

@final
class TareStep(_Tuple[float]):
    """One step on the scale; made by :meth:`Weighing.tare_order`."""

    __match_args__ = ("part", "add_g", "reading_g")
    @property
    def part(self) -> int:
        """The part, counted from 0."""
    @property
    def add_g(self) -> float:
        """What to add, in g."""
    @property
    def reading_g(self) -> float:
        """What the scale then shows, in g."""

@final
class StrengthShift(_Answer):
    """The strength of a bowl as meant and as weighed; made by :meth:`Weighing.strength_shift`."""

    __match_args__ = ("wanted_ww_percent", "weighed_ww_percent", "percentage_points")
    @property
    def wanted_ww_percent(self) -> Bounds[float]:
        """The strength by the recipe, in % w/w."""
    @property
    def weighed_ww_percent(self) -> Bounds[float]:
        """The strength of what is on the scale, in % w/w."""
    @property
    def percentage_points(self) -> float:
        """Change of the best estimate by rounding, in percentage points w/w."""

@final
class Weighing(_Answer):
    """A bowl as the scale can weigh it; made by :func:`weigh`."""

    __match_args__ = ("masses_g", "wanted_g", "division_g", "total_g", "ratio_errors_percent", "worst_ratio_error_percent", "vanished")
    @property
    def masses_g(self) -> list[float]:
        """What to put on the scale, in g, in the order of the recipe."""
    @property
    def wanted_g(self) -> list[float]:
        """What the recipe wants, in g."""
    @property
    def division_g(self) -> float:
        """The division of the scale, in g."""
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
    def strength_shift(self, strengths_ww_percent: Sequence[_Percent]) -> StrengthShift:
        """What rounding does to the strength of the bowl.

        Args:
            strengths_ww_percent: strength of each part in % w/w, as a number or (low, best, high); missing ones are 0.

        Returns:
            The strength as meant and as weighed.

        Raises:
            FoilworkError: a strength outside 0 to 100 % w/w.
        """
    def tare_order(self, last: int | None = None) -> list[TareStep]:
        """The order on the scale: smallest first.

        Args:
            last: the part (counted from 0) that comes last whatever its mass: the developer.

        Returns:
            The steps.
        """

@final
class MinimumBowl(_Tuple[float]):
    """From which mass on a ratio can be weighed; made by :func:`minimum_bowl`."""

    __match_args__ = ("first_g", "always_from_g")
    @property
    def first_g(self) -> float:
        """The smallest bowl that happens to be within the tolerance, in g."""
    @property
    def always_from_g(self) -> float:
        """The mass from which on every bowl is, in g."""

def weigh(masses_g: Sequence[float], division_g: float) -> Weighing:
    """Round parts to a scale: they add up to the rounded total, and the worst error of ratio is the least possible.

    Args:
        masses_g: masses of the parts in g.
        division_g: division of the scale in g.

    Returns:
        The weighing.

    Raises:
        FoilworkError: when there is nothing to weigh, or the division does not suit the bowl.

    Examples:
        >>> from foilwork.mix import weigh
        >>> weigh([33.34, 33.33, 33.33], 1).masses_g
        [34.0, 33.0, 33.0]
        >>> bowl = weigh([20.4, 40.8], 1)
        >>> [(step.part, step.reading_g) for step in bowl.tare_order(last=0)]
        [(1, 41.0), (0, 61.0)]
        >>> round(bowl.strength_shift([0, 9]).percentage_points, 3)
        0.049

    Source:
        Greedy increments for separable convex allocation (Ibaraki and Katoh 1988, from memory); checked by brute force.
    """

def as_applied(masses_g: Sequence[float], strengths_ww_percent: Sequence[_Percent]) -> Bounds[float]:
    """Strength of the mixed bowl: the mass-weighted mean of the strengths of its parts.

    Args:
        masses_g: masses of the parts in g.
        strengths_ww_percent: strength of each part in % w/w, as a number or (low, best, high). An additive has 0.

    Returns:
        The strength in % w/w, with its bounds.

    Raises:
        FoilworkError: when the bowl is empty, or the lists differ in length.

    Examples:
        >>> from foilwork.mix import as_applied
        >>> as_applied([30, 60], [0, 9])
        Bounds(low=6.0, best=6.0, high=6.0)

    Source:
        Conservation of solute mass.
    """

def minimum_bowl(ratio: Ratio, division_g: float, tolerance_percent: float) -> MinimumBowl:
    """The least that can be weighed in a ratio so that no part's share is off by more than a tolerance.

    Args:
        ratio: the ratio.
        division_g: division of the scale in g.
        tolerance_percent: largest error of a part's share, in percent of that share.

    Returns:
        The smallest bowl within the tolerance, and from where on every bowl is; it unpacks.

    Raises:
        FoilworkError: for a tolerance below 0.01 %, or a part too small for any scale.

    Examples:
        >>> from foilwork.mix import Ratio, minimum_bowl
        >>> minimum_bowl(Ratio("1:1.5"), 1, 5)
        MinimumBowl(first_g=5.0, always_from_g=50.0)
    """

@overload
def minimum_mass(division_g: float, tolerance_percent: float, *, errors: _Errors = "raise", out: None = None, where: None = None) -> float:
    """The least a scale can weigh of one thing so that rounding is off by no more than a tolerance.

    Args:
        division_g: division of the scale in g, a number or an array.
        tolerance_percent: largest error in percent of the mass, a number or an array that broadcasts with it.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
        out: an array of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        The mass in g, half a division over the tolerance: a float for numbers, else a float64 array.

    Raises:
        FoilworkError: for a tolerance below 0.01 %, or a division of 0 g.

    Examples:
        >>> from foilwork.mix import minimum_mass
        >>> minimum_mass(1, 5)
        10.0
    """
@overload
def minimum_mass(
    division_g: ArrayLike, tolerance_percent: ArrayLike, *, errors: _Errors = "raise", out: NDArray[float64] | None = None, where: ArrayLike | None = None
) -> NDArray[float64]: ...
