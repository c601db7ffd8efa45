from typing import final

from foilwork._native import Bounds, _Answer, _Percent
from foilwork._native.colour._level import _Level
from foilwork._native.head._strand import Profile
from foilwork._native.head._template import Template

__all__ = [
    "Gradient",
    "OverDirection",
    "RegionFoils",
    "ShadowStep",
    "level_along",
    "root_shadow_length",
    "shadow_steps",
]

@final
class RegionFoils(_Answer):
    """What a gradient asks for in a region; made by ``Gradient.lay``."""

    __match_args__ = ("region", "order", "start_cm", "taken_percent", "of_head_percent", "foils")
    @property
    def region(self) -> str:
        """The region."""
    @property
    def order(self) -> int:
        """Its place in the work, from one."""
    @property
    def start_cm(self) -> float:
        """Where the colour begins, in cm from the scalp."""
    @property
    def taken_percent(self) -> float:
        """Of the hair there, what is taken, in percent."""
    @property
    def of_head_percent(self) -> float:
        """Of all the hair, what is taken there, in percent."""
    @property
    def foils(self) -> int | None:
        """Foils; ``None`` where no count was given."""

@final
class Gradient(_Answer):
    """A blend from the outline inward: the colour starts further from the scalp, and less of the hair is lightened.

    Args:
        start_outline_cm: where the colour begins at the outline.
        start_interior_cm: where it begins at the crown.
        share_outline_percent: share of the hair that is taken at the outline.
        share_interior_percent: share of the hair that is taken at the crown.
        length_cm: of the hair.

    Raises:
        FoilworkError: an outline that would be the quieter part, or a start beyond the ends; both fields are named.

    Examples:
        >>> from foilwork.head import Gradient
        >>> laid = Gradient(start_outline_cm=1, start_interior_cm=5, share_outline_percent=70,
        ...     share_interior_percent=20, length_cm=30).lay(60)
        >>> sum(region.foils for region in laid), max(laid, key=lambda region: region.order).region
        (60, 'front hairline')
    """

    __match_args__ = ("start_outline_cm", "start_interior_cm", "share_outline_percent", "share_interior_percent", "length_cm")
    def __new__(
        cls, *, start_outline_cm: float, start_interior_cm: float, share_outline_percent: float, share_interior_percent: float, length_cm: float
    ) -> Gradient: ...
    @property
    def start_outline_cm(self) -> float:
        """Where the colour begins at the outline, in cm."""
    @property
    def start_interior_cm(self) -> float:
        """Where it begins at the crown, in cm."""
    @property
    def share_outline_percent(self) -> float:
        """Share of the hair that is taken at the outline, in percent."""
    @property
    def share_interior_percent(self) -> float:
        """Share of the hair that is taken at the crown, in percent."""
    @property
    def length_cm(self) -> float:
        """Of the hair, in cm."""
    def lay(self, foils: int | None = None, template: Template | None = None) -> list[RegionFoils]:
        """So many foils over the whole head: each region by the hair that is taken there, the counts adding up.

        Args:
            foils: how many in all; what is asked of each region where there is no count.
            template: the regions; foilwork's where none is given.

        Returns:
            A ``RegionFoils`` for each region.
        """

@final
class OverDirection(_Answer):
    """Sections held to one place and coloured to one line: released, the start drops further the further back the root.

    Args:
        ahead_cm: the line in front of the first root, along the scalp.
        out_cm: the line out from the scalp at the first root.
        scalp_radius_cm: radius of the scalp, about 9 cm; flat where it is not said.

    Raises:
        FoilworkError: a length out of range.

    Source:
        Plane geometry.

    Examples:
        >>> from foilwork.head import OverDirection
        >>> [round(OverDirection(3, 6).start_cm(behind), 2) for behind in (0, 1, 2, 3)]
        [6.71, 7.21, 7.81, 8.49]
    """

    __match_args__ = ("ahead_cm", "out_cm", "scalp_radius_cm")
    def __new__(
        cls, ahead_cm: float, out_cm: float, scalp_radius_cm: float | None = None
    ) -> OverDirection: ...
    @property
    def ahead_cm(self) -> float:
        """In front of the first root, in cm."""
    @property
    def out_cm(self) -> float:
        """Out from the scalp, in cm."""
    @property
    def scalp_radius_cm(self) -> float | None:
        """Radius of the scalp, in cm; ``None`` for flat."""
    def start_cm(self, behind_cm: float) -> float:
        """From the root to the line of colour along a strand, in cm.

        Args:
            behind_cm: how far behind the first section it is rooted, measured on the scalp.
        """

def level_along(
    profile: Profile, from_level: _Level, to_level: _Level, length_cm: float, taken_percent: _Percent = 100
) -> list[tuple[float, Bounds[float]]]:
    """How light a section reads at every whole centimetre from the scalp to the ends; the light of its strands adds up.

    Args:
        profile: how its strands are covered.
        from_level: the level of what stays as it is.
        to_level: the level that is reached where it is covered.
        length_cm: of the hair.
        taken_percent: of the hair, what is taken, or its bounds.

    Returns:
        Centimetre and level with its bounds.

    Raises:
        FoilworkError: a value out of range.

    Examples:
        >>> from foilwork.head import level_along, profile
        >>> levels = level_along(profile("back-comb", 30), 5, 9, 30)
        >>> len(levels), levels[0][1].best, levels[30][1].best > 7
        (31, 5.0, True)
    """
def root_shadow_length(region: str, template: Template | None = None) -> Bounds[float]:
    """How long a root shadow is in a region, in cm: shortest at the hairline, longer inside; assumed.

    Args:
        region: the region by its name.
        template: the regions; foilwork's where none is given.

    Returns:
        ``Bounds`` in cm.

    Raises:
        FoilworkError: a region that is not there.

    Examples:
        >>> from foilwork.head import root_shadow_length
        >>> root_shadow_length("front hairline").best, root_shadow_length("crown").best
        (1.0, 3.0)
    """

@final
class ShadowStep(_Answer):
    """A stretch of a root shadow; made by ``shadow_steps``."""

    __match_args__ = ("from_cm", "to_cm", "level")

    @property
    def from_cm(self) -> float:
        """Where it begins, from the scalp, in cm."""
    @property
    def to_cm(self) -> float:
        """Where it ends."""
    @property
    def level(self) -> float:
        """How deep it is there."""

def shadow_steps(shadow_level: _Level, light_level: _Level, length_cm: float) -> list[ShadowStep]:
    """How a root shadow is blended into lighter hair: deep for two thirds of its length, then in even steps of at most two levels.

    Args:
        shadow_level: how deep it is at the scalp.
        light_level: the hair that it runs into.
        length_cm: how long it is.

    Returns:
        A ``ShadowStep`` for each stretch; one where the hair is no lighter. The two thirds are assumed.

    Raises:
        FoilworkError: a value out of range.

    Examples:
        >>> from foilwork.head import shadow_steps
        >>> [(step.level, step.to_cm) for step in shadow_steps(5, 9, 3)]
        [(5.0, 2.0), (7.0, 3.0)]
    """
