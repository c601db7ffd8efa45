from collections.abc import Iterable
from typing import final

from foilwork._native import _Answer
from foilwork._native.day._timeline import Timeline
from foilwork._native.record._log import LogEntry
from foilwork._native.record._looked import AfterLevel
from foilwork._native.record._whole import Instruction
from foilwork._native.service._plan import Plan

__all__ = [
    "RestOfService",
    "rest_of_service",
]

@final
class RestOfService(_Answer):
    """What is left of a service, on the clock of its log."""

    __match_args__ = ("now_min", "at_once", "overdue", "timeline", "why_not", "instructions", "left_out", "levels")
    @property
    def now_min(self) -> float:
        """The latest minute noted."""
    @property
    def at_once(self) -> list[str]:
        """Sections that come off now, with the reason."""
    @property
    def overdue(self) -> list[str]:
        """Sections that are on for longer than they may before the water can reach them."""
    @property
    def timeline(self) -> Timeline | None:
        """What is left, in the best order; ``None`` where all has to come off, or where there is none."""
    @property
    def why_not(self) -> str | None:
        """Why there is none."""
    @property
    def instructions(self) -> list[Instruction]:
        """What follows from the log, the worst first."""
    @property
    def left_out(self) -> list[str]:
        """Lines that the plan does not know or that count for nothing, in words."""
    @property
    def levels(self) -> list[AfterLevel]:
        """What the level known last of each section that is on says to do."""

def rest_of_service(plan: Plan, entries: Iterable[LogEntry]) -> RestOfService:
    """Arrange what is left of a service from where its log stands.

    A section that has to be rinsed by what was seen, or by what the log says to do, comes off before anything else is begun. Nothing
    more is begun while the scalp itches, after a foil that swelled, or where the plan says stop.

    Args:
        plan: the plan, made with ``levels_seen``.
        entries: the entries of the log.

    Returns:
        What is left, what comes off now, what is overdue.

    Raises:
        FoilworkError: never for entries that were made.

    Examples:
        >>> from foilwork import plan_file
        >>> from foilwork.record import LogEntry, rest_of_service
        >>> entries = [LogEntry("begun", at_min=3, section="nape"), LogEntry("applied", at_min=24, section="nape")]
        >>> rest = rest_of_service(plan_file("examples/soft-gradient.toml"), entries)
        >>> rest.timeline.pieces[0].kind, rest.timeline.pieces[0].from_min
        ('mix', 24.0)
    """
