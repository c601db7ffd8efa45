from collections.abc import Sequence
from typing import final

from foilwork import _words
from foilwork._native import Bounds, _Answer
from foilwork._native.head._strand import Profile

__all__ = [
    "OutlineChange",
    "OutlineLook",
    "OutlinePart",
    "read_outline",
]

@final
class OutlinePart(_Answer):
    """Hair of one section on the outline.

    Args:
        section: the section.
        hair_percent: how much of all the hair grows there.
        taken_percent: of the hair there, what the section takes.
        profile: how that is covered along the strand.

    Raises:
        FoilworkError: a share outside 0 to 100 %.

    Examples:
        >>> from foilwork.head import OutlinePart, profile
        >>> OutlinePart("hairline", hair_percent=5, taken_percent=45, profile=profile("weave", 30)).taken_percent
        45.0
    """

    __match_args__ = ("section", "hair_percent", "taken_percent", "profile")
    def __new__(cls, section: str, *, hair_percent: float, taken_percent: float, profile: Profile) -> OutlinePart: ...
    @property
    def section(self) -> str:
        """The section."""
    @property
    def hair_percent(self) -> float:
        """How much of all the hair grows there, in percent."""
    @property
    def taken_percent(self) -> float:
        """Of the hair there, what the section takes, in percent."""
    @property
    def profile(self) -> Profile:
        """How that is covered along the strand."""

@final
class OutlineChange(_Answer):
    """What to change so that the outline reads as wanted: the share of a section, or how it starts."""

    __match_args__ = ("section", "light_percent", "wanted_percent", "blend_start", "advice")
    @property
    def section(self) -> str:
        """The section."""
    @property
    def light_percent(self) -> float:
        """Of its hair, what is light behind its start, in percent."""
    @property
    def wanted_percent(self) -> float:
        """What would have to be, in percent; the same where only its start is to change."""
    @property
    def blend_start(self) -> bool:
        """Whether its start has to be blended: it is a line, and not at the scalp."""
    @property
    def advice(self) -> str:
        """The same in words."""

@final
class OutlineLook(_Answer):
    """How solid the outline reads; made by ``read_outline``."""

    __match_args__ = ("light_percent", "reads", "as_wanted", "sure", "changes")
    @property
    def light_percent(self) -> Bounds[float]:
        """Of the hair of the outline, what is light behind its start, in percent."""
    @property
    def reads(self) -> _words._Solidity | None:
        """``"solid"`` or ``"soft"`` by the best estimate; ``None`` where it is neither."""
    @property
    def as_wanted(self) -> bool | None:
        """Whether it reads as wanted; ``None`` where nothing is asked for."""
    @property
    def sure(self) -> bool | None:
        """Whether the bounds say the same, and not only the best estimate; ``None`` where nothing is asked for."""
    @property
    def changes(self) -> list[OutlineChange]:
        """What to change when it does not, the change that does most first; all of them together are enough."""

def read_outline(parts: Sequence[OutlinePart], wish: _words._Solidity | None = None) -> OutlineLook | None:
    """Whether the outline reads solid, soft, or neither, and the sections to change where that is not as wanted.

    Args:
        parts: the hair of sections on the outline.
        wish: ``"solid"`` or ``"soft"``; without one it is only read.

    Returns:
        An ``OutlineLook``, or ``None`` without a section there.

    Raises:
        FoilworkError: another wish.

    Source:
        Assumed: solid from 70 % of light hair on, soft up to 50 % where no section begins in a line away from the scalp.

    Examples:
        >>> from foilwork.head import OutlinePart, profile, read_outline
        >>> woven = [OutlinePart("hairline", hair_percent=5, taken_percent=45, profile=profile("weave", 30))]
        >>> read_outline(woven, "soft").as_wanted
        True
        >>> read_outline(woven, "solid").changes[0].advice
        'make 70 % of the hair in "hairline" light instead of 45 %'
    """
