from collections.abc import Iterable
from typing import final

from foilwork._native import Bounds, _Answer
from foilwork._native.lift._choose import Visit
from foilwork._native.record._log import LogEntry
from foilwork._native.service._plan import Plan

__all__ = [
    "AgainRejected",
    "SecondApplication",
    "second_applications",
]

@final
class AgainRejected(_Answer):
    """What was not taken, and why."""

    __match_args__ = ("what", "why")
    @property
    def what(self) -> str:
        """What: one of the decisions of :class:`SecondApplication`."""
    @property
    def why(self) -> str:
        """Why."""

@final
class SecondApplication(_Answer):
    """The decision on a second application of one section."""

    __match_args__ = ("section", "level", "target_level", "decision", "look_again_min", "reasons", "rejected", "applications", "on_hair_min", "fresh_min", "fresh_chance_percent", "strain_with_fresh", "wait_weeks", "not_before", "visits", "basis")
    @property
    def section(self) -> str:
        """The section."""
    @property
    def level(self) -> float:
        """The level seen last."""
    @property
    def target_level(self) -> float:
        """The level wanted."""
    @property
    def decision(self) -> str:
        """``"go-on"``, ``"look-now"``, ``"stop-and-tone"``, ``"fresh-mix"``, ``"test-first"``, ``"next-visit"`` or ``"treat-only"``."""
    @property
    def look_again_min(self) -> float | None:
        """When to look again, in min of the log, where it is left on or looked at now."""
    @property
    def reasons(self) -> list[str]:
        """Why, the weightiest first."""
    @property
    def rejected(self) -> list[AgainRejected]:
        """What was not taken, with its reason."""
    @property
    def applications(self) -> int:
        """How often it was put on so far."""
    @property
    def on_hair_min(self) -> float:
        """How long the hair has carried mixture, all applications together."""
    @property
    def fresh_min(self) -> Bounds[float] | None:
        """How long a fresh mix would take to the target; ``None`` where it is reached, or none reaches it."""
    @property
    def fresh_chance_percent(self) -> Bounds[float]:
        """The chance in percent that a fresh mix reaches the target within one application."""
    @property
    def strain_with_fresh(self) -> str:
        """What the fibre has been through with such a fresh mix."""
    @property
    def wait_weeks(self) -> Bounds[float]:
        """Weeks to leave before another visit, by what the fibre has been through so far."""
    @property
    def not_before(self) -> str | None:
        """The first day of another visit, as ``YYYY-MM-DD``; ``None`` where hair and scalp are only treated."""
    @property
    def visits(self) -> list[Visit]:
        """The visits that are left then, with the same mixture and time; empty where the target is reached, or where hair and scalp are only treated."""
    @property
    def basis(self) -> str:
        """What the decision rests on."""

def second_applications(plan: Plan, entries: Iterable[LogEntry]) -> list[SecondApplication]:
    """Decide on a second application, for every section whose level was seen.

    What is left of the target, what hair and scalp say, how long and how often it was on, and what a fresh mix would bring,
    in one. Comfort and condition come before the level; a condition that nobody noted is never taken as good.

    Args:
        plan: the plan made with ``levels_seen``.
        entries: the entries of the log.

    Returns:
        The decisions with their reasons and what was not taken.

    Raises:
        FoilworkError: never for entries that were made.

    Source:
        Elasticity and comfort before level: common practice. How often in a visit, and the chance that is worth it: assumed.

    Examples:
        >>> from foilwork import plan_file
        >>> from foilwork.record import LogEntry, second_applications
        >>> entries = [LogEntry("begun", at_min=0, section="nape"), LogEntry("seen", at_min=48, section="nape", level=9)]
        >>> nape = second_applications(plan_file("examples/soft-gradient.toml"), entries)[0]
        >>> nape.decision, "fresh-mix" in [one.what for one in nape.rejected]
        ('stop-and-tone', True)
    """
