from collections.abc import Sequence
from typing import final

from foilwork._native import Bounds, _Answer
from foilwork._native.colour._level import _Level

__all__ = [
    "LightFoils",
    "LowlightPlace",
    "Lowlights",
    "lowlight_places",
    "lowlights",
]

@final
class Lowlights(_Answer):
    """Darker strands for depth; made by ``lowlights``."""

    __match_args__ = ("level", "share_percent", "foils", "light_foils_between")
    @property
    def level(self) -> float:
        """Their level."""
    @property
    def share_percent(self) -> Bounds[float]:
        """The share of the section's hair that is made darker, in percent, by what it may read as now."""
    @property
    def foils(self) -> Bounds[int] | None:
        """Foils of them; ``None`` where the hair of a foil is not known."""
    @property
    def light_foils_between(self) -> int | None:
        """Light foils between two of them, so that they lie evenly; ``None`` where none are counted."""

def lowlights(
    now_level: _Level,
    wanted_level: _Level,
    *,
    lowlight_level: _Level,
    natural_level: _Level,
    per_foil_percent: float | None = None,
    light_foils: int | None = None,
) -> Lowlights:
    """How much of a section to take darker so that it reads at a deeper level, and in how many foils.

    Args:
        now_level: what it reads as now.
        wanted_level: what it is to read as.
        lowlight_level: the level of the darker strands.
        natural_level: the natural base; nothing at the root is darker than it.
        per_foil_percent: the share of its hair that is in one light foil, where that is known.
        light_foils: how many light foils it has, where they are counted.

    Returns:
        A ``Lowlights``.

    Raises:
        FoilworkError: strands darker than the natural base, or a wish that they cannot fulfil; both levels are named.

    Source:
        Light adds up in reflectance: ``(now - wanted) / (now - lowlight)``.

    Examples:
        >>> from foilwork.head import lowlights
        >>> depth = lowlights(9, 8, lowlight_level=6, natural_level=6, per_foil_percent=5, light_foils=12)
        >>> 30 < depth.share_percent.best < 60
        True
    """

@final
class LightFoils(_Answer):
    """Light foils of a section that lie together, in a region or in the whole of it.

    Args:
        first: number of its first light foil, in the order of the work.
        last: number of its last light foil.
        region: the region, where the section says where it lies.
        hair_percent: how much of all the hair the section has there.
        inward_percent: how far inside it lies: 0 at the outline, 100 at the crown.

    Raises:
        FoilworkError: a share outside 0 to 100 %.

    Examples:
        >>> from foilwork.head import LightFoils
        >>> LightFoils(1, 6).hair_percent
        100.0
    """

    __match_args__ = ("first", "last", "region", "hair_percent", "inward_percent")
    def __new__(
        cls,
        first: int,
        last: int,
        region: str | None = None,
        *,
        hair_percent: float = 100.0,
        inward_percent: float = 100.0,
    ) -> LightFoils: ...
    @property
    def first(self) -> int:
        """Number of its first light foil, in the order of the work."""
    @property
    def last(self) -> int:
        """Number of its last light foil."""
    @property
    def region(self) -> str | None:
        """The region; ``None`` where the section does not say where it lies."""
    @property
    def hair_percent(self) -> float:
        """How much of all the hair the section has there, in percent."""
    @property
    def inward_percent(self) -> float:
        """How far inside it lies, in percent."""

@final
class LowlightPlace(_Answer):
    """Where lowlights go; made by ``lowlight_places``."""

    __match_args__ = ("region", "foils", "behind_foils")
    @property
    def region(self) -> str | None:
        """The region; ``None`` where the section does not say where it lies."""
    @property
    def foils(self) -> int:
        """Foils of them there."""
    @property
    def behind_foils(self) -> list[int]:
        """Numbers of the light foils behind each of which one goes; a number that is there twice has two behind it."""

def lowlight_places(foils: int, light: Sequence[LightFoils]) -> list[LowlightPlace]:
    """Where so many foils of lowlights go: most where most hair lies furthest inside, none on the outline as long as there is
    another place, and within a region evenly between its light foils.

    Args:
        foils: how many foils of them.
        light: the light foils that they go between.

    Returns:
        A list of ``LowlightPlace``, without the places that get none.

    Raises:
        FoilworkError: a share out of range.

    Source:
        Assumed: shares by hair times how far inside it lies.

    Examples:
        >>> from foilwork.head import LightFoils, lowlight_places
        >>> lowlight_places(3, [LightFoils(1, 6, "crown", hair_percent=8)])[0].behind_foils
        [1, 3, 5]
    """
