from collections.abc import Sequence
from typing import final

from foilwork import _words
from foilwork._native import Bounds, _Answer, _Percent

__all__ = [
    "Region",
    "Template",
    "partition",
]

@final
class Region(_Answer):
    """A region of the head.

    Args:
        name: what it is called.
        area_percent: its share of the scalp that bears hair.
        density_percent: hairs on a square centimetre against the mean of the head, in percent of it, or its bounds.
        outline: whether it is part of hairline or nape line.
        inward_percent: how far inside it lies: 0 at the outline, 100 at the crown.
        front: whether it is seen from the front.
        place: where it lies: left, top, width, height on a map of 12 by 16, the face at the top; without it a template is
            drawn as a list.

    Raises:
        FoilworkError: a share out of range.

    Examples:
        >>> from foilwork.head import Region
        >>> Region("edge", 20, outline=True).inward_percent
        0.0
    """

    __match_args__ = ("name", "area_percent", "density_percent", "outline", "inward_percent", "front", "place")
    def __new__(
        cls, name: str, area_percent: float, *, density_percent: _Percent = 100, outline: bool = False, inward_percent: float | None = None, front: bool = False, place: tuple[float, float, float, float] | None = None
    ) -> Region: ...
    @property
    def name(self) -> str:
        """What it is called."""
    @property
    def area_percent(self) -> float:
        """Its share of the scalp that bears hair, in percent."""
    @property
    def density_percent(self) -> Bounds[float]:
        """Density against the mean of the head, in percent of it."""
    @property
    def outline(self) -> bool:
        """Whether it is part of the outline."""
    @property
    def inward_percent(self) -> float:
        """How far inside it lies, in percent."""
    @property
    def front(self) -> bool:
        """Whether it is seen from the front."""
    @property
    def place(self) -> tuple[float, float, float, float] | None:
        """Where it lies: left, top, width, height; ``None`` where that is not stated."""

@final
class Template(_Answer):
    """The regions of a head, which together are all of it.

    Args:
        regions: your own; foilwork's, whose areas are assumed, where none are given.

    Raises:
        FoilworkError: a name that is there twice, or areas that are not the whole head.

    Examples:
        >>> from foilwork.head import Template
        >>> [region.name for region in Template().regions if region.outline]
        ['front hairline', 'left temple', 'right temple', 'nape line']
        >>> round(sum(share.best for share in Template().hair_percent()), 6)
        100.0
    """

    __match_args__ = ("regions", "basis")
    def __new__(
        cls, regions: Sequence[Region] | None = None
    ) -> Template: ...
    @property
    def regions(self) -> list[Region]:
        """Its regions."""
    @property
    def basis(self) -> str:
        """What the shares rest on: ``"assumed"`` for foilwork's own, ``"stated"`` for yours."""
    def hair_percent(self) -> list[Bounds[float]]:
        """The share of all the hair that each region bears, in their order: area times density, in percent."""

def partition(
    placements: Sequence[tuple[str, str, float]], template: Template | None = None, *, rest: _words._Rest = "natural"
) -> list[tuple[str, Bounds[float]]]:
    """The share of all the hair that each section has, checked: no place of the head belongs to two sections.

    Args:
        placements: section, region, and how much of the region the section is, in percent.
        template: the regions; foilwork's where none is given.
        rest: ``"natural"``, or ``"refused"`` when the sections have to be all of the head.

    Returns:
        Section and its share in percent, in the order of their first placement.

    Raises:
        FoilworkError: sections that overlap, a gap that is refused, or an unknown region; both sections are named.

    Examples:
        >>> from foilwork.head import partition
        >>> [(name, round(share.best, 1)) for name, share in partition([("halo", "crown", 60), ("veil", "crown", 40)])]
        [('halo', 8.1), ('veil', 5.4)]
    """
