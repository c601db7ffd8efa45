from collections.abc import Iterable
from typing import final

from foilwork._native import _Answer
from foilwork._native.day._timeline import Timeline
from foilwork._native.day._work import Before, Floor, SectionWork

__all__ = [
    "OnHair",
    "RestOfDay",
    "go_on",
]

@final
class OnHair(_Answer):
    """A section on the hair.

    Args:
        section: its place in the list of the work, from 0.
        start_min: its first strand.
        applied_min: when all of it was on; as its work says where that is not known or not over.
        at_once: whether it has to come off now, developed or not.
        left_on_until_min: until when a look says to leave it on, longer than its work says; no later than its longest time.
        comes_off_by_min: when its longest time is over by what was noted, where that is known: it comes off no later, nor later than
            its work says unless a look leaves it on.

    Raises:
        FoilworkError: a time out of range.

    Examples:
        >>> from foilwork.day import OnHair
        >>> OnHair(0, start_min=3, applied_min=25).at_once
        False
    """

    __match_args__ = ("section", "start_min", "applied_min", "at_once", "left_on_until_min", "comes_off_by_min")
    def __new__(
        cls,
        section: int,
        *,
        start_min: float,
        applied_min: float | None = None,
        at_once: bool = False,
        left_on_until_min: float | None = None,
        comes_off_by_min: float | None = None,
    ) -> OnHair: ...
    @property
    def section(self) -> int:
        """Its place in the list of the work, from 0."""
    @property
    def start_min(self) -> float:
        """Its first strand, in min."""
    @property
    def applied_min(self) -> float | None:
        """When all of it was on, in min."""
    @property
    def at_once(self) -> bool:
        """Whether it has to come off now."""
    @property
    def left_on_until_min(self) -> float | None:
        """Until when a look says to leave it on, in min."""
    @property
    def comes_off_by_min(self) -> float | None:
        """When its longest time is over by what was noted, in min."""

@final
class RestOfDay(_Answer):
    """The rest of a day."""

    __match_args__ = ("timeline", "overdue")
    @property
    def timeline(self) -> Timeline:
        """What is left to do, on the clock of the argument ``now_min``."""
    @property
    def overdue(self) -> list[int]:
        """Sections that are on the hair for longer than they may before the water can reach them, by their places."""

def go_on(
    work: Iterable[SectionWork],
    *,
    now_min: float,
    on: Iterable[OnHair] | None = None,
    rinsed: Iterable[int] | None = None,
    before: Iterable[Before] | None = None,
    floor: Floor | None = None,
    effort: str = "quick",
) -> RestOfDay:
    """Arrange what is left of a day: the same rules, the same limits, from where it stands.

    What has to come off at once, or would pass its longest time, is rinsed before anything else is begun.

    Args:
        work: all the sections.
        now_min: what time it is, on a clock of your own; all other times are of the same.
        on: what is on the hair.
        rinsed: what is rinsed, by its place in the list of the work.
        before: what comes before what.
        floor: hands, basins and the small work; one pair of hands where it is not said.
        effort: ``"quick"`` for a few thousandths of a second, ``"thorough"`` for about one.

    Returns:
        What is left, and what is overdue.

    Raises:
        FoilworkError: as for ``arrange``; a section that is named twice, does not exist or has its first strand after now; a time more
            than a week from the zero of the clock.

    Examples:
        >>> from foilwork.day import OnHair, SectionWork, go_on
        >>> nape = SectionWork("nape", apply_min=15, develop_min=35, longest_min=60)
        >>> hairline = SectionWork("hairline", apply_min=10, develop_min=20, longest_min=50)
        >>> rest = go_on([nape, hairline], now_min=25, on=[OnHair(0, start_min=3, applied_min=25)])
        >>> [(section.name, section.mix_at_min) for section in rest.timeline.sections]
        [('nape', []), ('hairline', [25.0])]
    """
