from collections.abc import Sequence
from typing import final

from foilwork._native import Bounds, _Answer

__all__ = [
    "WhiteShare",
    "white_share",
]

@final
class WhiteShare(_Answer):
    """How much of the hair is white; made by ``white_share``."""

    __match_args__ = ("white_percent", "counted_percent", "regions")
    @property
    def white_percent(self) -> Bounds[float]:
        """Of all the hair, in percent."""
    @property
    def counted_percent(self) -> float:
        """How much of the hair was counted; the rest is taken like it, with the bounds of its least and most white region."""
    @property
    def regions(self) -> list[str]:
        """The regions that were counted."""

def white_share(counts: Sequence[tuple[str, float, int, int]]) -> WhiteShare | None:
    """The share of white hair from counts in some regions, each weighed by its share of the hair.

    Args:
        counts: for each region its name, its share of all the hair in percent, white hairs, hairs looked at.

    Returns:
        A ``WhiteShare``, or ``None`` when nothing was counted.

    Raises:
        FoilworkError: a share outside 0 to 100 %, or more white hairs than were looked at.

    Source:
        Bounds of each count by Wilson's score (80 of 100), independent of each other.

    Examples:
        >>> from foilwork.hair import white_share
        >>> white_share([("sides", 30, 60, 100), ("back", 70, 10, 100)]).white_percent.best
        25.0
    """
