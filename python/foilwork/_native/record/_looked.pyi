from collections.abc import Iterable
from typing import final

from foilwork._native import _Answer
from foilwork._native.record._log import LogEntry
from foilwork._native.service._plan import Plan

__all__ = [
    "AfterLevel",
    "LevelsSeen",
    "after_levels",
    "levels_seen",
]

@final
class LevelsSeen(_Answer):
    """Levels of a log, as a plan takes them."""

    __match_args__ = ("levels", "left_out")
    @property
    def levels(self) -> list[str]:
        """Each as the argument ``seen`` of ``plan`` and ``plan_file`` takes it, on the clock of the sheet: as long after
        the planned begin as it was seen after the real one.
        """
    @property
    def left_out(self) -> list[str]:
        """Levels that no forecast can take, with the reason."""

@final
class AfterLevel(_Answer):
    """A level that was seen, and what follows from it. Times are those of the log."""

    __match_args__ = ("section", "at_min", "level", "next", "why", "look_again_min")
    @property
    def section(self) -> str:
        """The section."""
    @property
    def at_min(self) -> float:
        """When it was seen, in min."""
    @property
    def level(self) -> float:
        """What was seen."""
    @property
    def next(self) -> str:
        """What to do."""
    @property
    def why(self) -> str:
        """Why."""
    @property
    def look_again_min(self) -> float | None:
        """When to look again, in min."""

def levels_seen(plan: Plan, entries: Iterable[LogEntry]) -> LevelsSeen:
    """The levels of a log for the plan that it belongs to. Where a begin is not noted, it is taken as planned.

    Args:
        plan: the plan as made before the service.
        entries: the entries of the log.

    Returns:
        The levels, and those left out.

    Raises:
        FoilworkError: never for entries that were made.

    Examples:
        >>> from foilwork import plan_file
        >>> from foilwork.record import LogEntry, levels_seen
        >>> entries = [LogEntry("begun", at_min=4, section="nape")]
        >>> entries += [LogEntry("seen", at_min=29, section="nape", level=7.5)]
        >>> levels_seen(plan_file("examples/soft-gradient.toml"), entries).levels
        ['nape=7.5@25']
    """
def after_levels(plan: Plan, entries: Iterable[LogEntry]) -> list[AfterLevel]:
    """What the levels of a log say to do, on its own clock.

    Args:
        plan: the plan made with ``levels_seen``.
        entries: the entries of the log.

    Returns:
        What follows from each level.

    Raises:
        FoilworkError: never for entries that were made.

    Examples:
        >>> from foilwork import plan_file
        >>> from foilwork.record import LogEntry, after_levels, levels_seen
        >>> file = "examples/soft-gradient.toml"
        >>> entries = [LogEntry("begun", at_min=4, section="nape")]
        >>> entries += [LogEntry("seen", at_min=29, section="nape", level=7.5)]
        >>> moved = plan_file(file, seen=levels_seen(plan_file(file), entries).levels)
        >>> after_levels(moved, entries)[0].at_min
        29.0
    """
