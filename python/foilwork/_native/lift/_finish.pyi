from collections.abc import Iterable
from typing import final

from foilwork._native import Bounds, _Answer, _Percent
from foilwork._native.colour._level import _Level, _LevelBounds
from foilwork._native.lift._belief import Belief
from foilwork._native.lift._situation import Situation

__all__ = [
    "FinishTogether",
    "TimedChoice",
    "TimedSection",
    "finish_together",
]

@final
class TimedSection(_Answer):
    """A section that is to finish with the others.

    Args:
        situation: the mixture and the hair; its strength is replaced by each of those to choose from.
        on_hair_ww_percent: strengths on the hair to choose from, in % w/w; a fixed one is a list of one.
        start_level: the level now, or its bounds as far as its reading may be off.
        target_level: the level wanted.
        apply_min: how long its application takes.
        longest_min: the longest that any strand may carry the mixture, from the first one.
        tolerance_levels: how far the target may be overshot.
        busy_before_min: how long other work keeps the hands busy before it.
        belief: what is known of this hair.

    Raises:
        FoilworkError: a value out of range.

    Examples:
        >>> from foilwork.lift import Situation, TimedSection
        >>> nape = TimedSection(Situation(4), [2, 4, 6], start_level=4, target_level=7, apply_min=10, longest_min=50)
        >>> nape.tolerance_levels
        0.5
    """

    __match_args__ = ("situation", "on_hair_ww_percent", "start_level", "target_level", "apply_min", "longest_min", "tolerance_levels", "busy_before_min", "belief")
    def __new__(
        cls,
        situation: Situation,
        on_hair_ww_percent: Iterable[_Percent],
        *,
        start_level: _LevelBounds,
        target_level: _Level,
        apply_min: float,
        longest_min: float,
        tolerance_levels: float = 0.5,
        busy_before_min: float = 0.0,
        belief: Belief | None = None,
    ) -> TimedSection: ...
    @property
    def situation(self) -> Situation:
        """The mixture and the hair."""
    @property
    def on_hair_ww_percent(self) -> list[Bounds[float]]:
        """Strengths on the hair to choose from, in % w/w."""
    @property
    def start_level(self) -> Bounds[float]:
        """The level now, as far as its reading may be off."""
    @property
    def target_level(self) -> float:
        """The level wanted."""
    @property
    def apply_min(self) -> float:
        """How long its application takes, in min."""
    @property
    def longest_min(self) -> float:
        """The longest that any strand may carry the mixture, in min."""
    @property
    def tolerance_levels(self) -> float:
        """How far the target may be overshot."""
    @property
    def busy_before_min(self) -> float:
        """How long other work keeps the hands busy before it, in min."""
    @property
    def belief(self) -> Belief | None:
        """What is known of this hair; ``None`` for hair that nobody has tested."""

@final
class TimedChoice(_Answer):
    """What is chosen for one section. Times count from the start of the first application."""

    __match_args__ = ("strength", "begin_min", "reaches_min", "level")
    @property
    def strength(self) -> int:
        """The place of the strength among those to choose from, from 0."""
    @property
    def begin_min(self) -> float:
        """When its application begins, in min."""
    @property
    def reaches_min(self) -> float:
        """When its middle strand is expected to reach the target (median), in min."""
    @property
    def level(self) -> Bounds[float]:
        """Level expected at the common rinse: median and 80 % interval, for the middle strand."""

@final
class FinishTogether(_Answer):
    """Sections that finish together."""

    __match_args__ = ("sections", "rinse_min", "window_min", "short_levels")
    @property
    def sections(self) -> list[TimedChoice]:
        """One choice for each section, in the order given."""
    @property
    def rinse_min(self) -> float:
        """When all are rinsed, in min."""
    @property
    def window_min(self) -> float:
        """The window that was needed, in min: the one asked for, or a wider one."""
    @property
    def short_levels(self) -> float:
        """By how many levels the section furthest behind falls short at the rinse."""

def finish_together(sections: Iterable[TimedSection], window_min: float) -> FinishTogether:
    """Choose strength and start of each section so that all reach their targets within a window before one common rinse.

    The sum of the strengths is the lowest possible: the search is exact. No strand carries the mixture beyond its limit and
    none overshoots beyond its tolerance. Where nothing fits, the window is widened by the fewest minutes, or the targets are
    missed by the fewest levels, and the answer says by how much.

    Args:
        sections: the sections in the order in which they are applied, by one pair of hands.
        window_min: how far apart they may reach their targets.

    Returns:
        The choices and the common rinse.

    Raises:
        FoilworkError: no section, a section without strengths, or one that cannot be applied in its longest time.

    Examples:
        >>> from foilwork.lift import Situation, TimedSection, finish_together
        >>> def section(start):
        ...     return TimedSection(Situation(4), [2, 6], start_level=start, target_level=7, apply_min=10,
        ...                         longest_min=50, tolerance_levels=1)
        >>> together = finish_together([section(4), section(6)], window_min=10)
        >>> [choice.strength for choice in together.sections]
        [1, 0]
    """
