from collections.abc import Sequence
from typing import final

from foilwork import _words
from foilwork._native import Bounds, _Answer
from foilwork._native.colour._swatches import Swatch
from foilwork._native.head._template import Template

__all__ = [
    "Change",
    "HeadLook",
    "Placed",
    "RegionLook",
    "read_head",
]

@final
class Placed(_Answer):
    """Hair of one section in one region.

    Args:
        section: the section.
        region: the region by its name.
        lightened_percent: of the hair there, how much is lightened, the mean along the strand.
        rest: what is left as it was.
        light: what is lightened and toned.
        of_region_percent: how much of the region's area the section is.

    Raises:
        FoilworkError: a share outside 0 to 100 %.

    Examples:
        >>> from foilwork.colour import swatch
        >>> from foilwork.head import Placed
        >>> Placed("halo", "crown", 30, rest=swatch(5), light=swatch(9, lightened_from=5)).of_region_percent
        100.0
    """

    __match_args__ = ("section", "region", "lightened_percent", "rest", "light", "of_region_percent")
    def __new__(
        cls, section: str, region: str, lightened_percent: float, *, rest: Swatch, light: Swatch, of_region_percent: float = 100.0
    ) -> Placed: ...
    @property
    def section(self) -> str:
        """The section."""
    @property
    def region(self) -> str:
        """The region by its name."""
    @property
    def lightened_percent(self) -> float:
        """Of the hair there, how much is lightened, in percent."""
    @property
    def rest(self) -> Swatch:
        """What is left as it was."""
    @property
    def light(self) -> Swatch:
        """What is lightened and toned."""
    @property
    def of_region_percent(self) -> float:
        """How much of the region's area the section is, in percent."""

@final
class RegionLook(_Answer):
    """How one region reads."""

    __match_args__ = ("region", "hair_percent", "lab_l", "colour")
    @property
    def region(self) -> str:
        """Its name."""
    @property
    def hair_percent(self) -> Bounds[float]:
        """Its share of all the hair, in percent."""
    @property
    def lab_l(self) -> Bounds[float]:
        """How light it reads from where strands merge."""
    @property
    def colour(self) -> Swatch:
        """The colour itself."""

@final
class Change(_Answer):
    """The section to change so that the head reads as wanted."""

    __match_args__ = ("section", "lightened_percent", "wanted_percent", "enough", "advice")
    @property
    def section(self) -> str:
        """The section."""
    @property
    def lightened_percent(self) -> float:
        """How much of its hair is lightened now, in percent."""
    @property
    def wanted_percent(self) -> float:
        """How much it would have to be, in percent."""
    @property
    def enough(self) -> bool:
        """Whether that is enough; if not, its light hair has to be another level too."""
    @property
    def advice(self) -> str:
        """The same in words."""

@final
class HeadLook(_Answer):
    """How the head reads; made by ``read_head``. In a notebook it shows as a map."""

    __match_args__ = ("regions", "outline_over_interior_lab_l", "front_over_behind_lab_l", "as_wanted", "change", "placed", "template")
    @property
    def regions(self) -> list[RegionLook]:
        """Region by region."""
    @property
    def outline_over_interior_lab_l(self) -> Bounds[float] | None:
        """L* that the outline is lighter than the interior; negative when it is darker."""
    @property
    def front_over_behind_lab_l(self) -> Bounds[float] | None:
        """The same of what is seen from the front over the rest."""
    @property
    def as_wanted(self) -> bool | None:
        """Whether it reads as wanted, by the best estimates; ``None`` where nothing is asked for."""
    @property
    def change(self) -> Change | None:
        """What to change when it does not; the largest step first."""
    @property
    def placed(self) -> list[Placed]:
        """The hair of sections that it was read of."""
    @property
    def template(self) -> Template:
        """The regions that it was read in."""
    def _repr_svg_(self) -> str: ...
    def svg(self, title: str = "How the head reads") -> str:
        """The map of the head as SVG: each region in the colour of the model, with its name, its lightness and its
        sections as text.

        Args:
            title: what stands above it.

        Returns:
            The text of the picture.
        """

def read_head(
    placed: Sequence[Placed], natural: Swatch, wish: _words._Wish | None = None, template: Template | None = None
) -> HeadLook:
    """How the head reads: in each region the light of its sections adds up by their area, and regions by the hair they bear.

    Args:
        placed: the hair of sections in regions.
        natural: hair that no section has.
        wish: ``"bright-outline"``, ``"bright-front"`` or ``"even"``; without one it is only read.
        template: the regions; foilwork's where none is given.

    Returns:
        A ``HeadLook``.

    Raises:
        FoilworkError: another wish, or a region that is not there.

    Source:
        A model: reflectances add up by area and hair; areas of the template are assumed.

    Examples:
        >>> from foilwork.colour import swatch
        >>> from foilwork.head import Placed, Template, read_head
        >>> rest, light = swatch(5), swatch(9, lightened_from=5)
        >>> placed = [Placed("hairline", region.name, 60, rest=rest, light=light)
        ...     for region in Template().regions if region.outline]
        >>> read_head(placed, rest, "bright-outline").as_wanted
        True
        >>> inside = [Placed("crown", "crown", 60, rest=rest, light=light), Placed("rim", "nape line", 5, rest=rest, light=light)]
        >>> read_head(inside, rest, "bright-outline").change.section
        'rim'
    """
