from collections.abc import Iterable
from typing import final

from foilwork._native import _Answer
from foilwork._native.record._log import LogEntry
from foilwork._native.service._plan import Plan
from foilwork._native.source._trail import TracedResult

__all__ = [
    "Evenness",
    "Instruction",
    "PlannedActual",
    "Record",
    "instructions",
    "record",
    "trace_record",
]

@final
class Instruction(_Answer):
    """What follows from the log."""

    __match_args__ = ("verdict", "section", "text", "basis")
    @property
    def verdict(self) -> str:
        """How urgent it is: ``"stop"``, ``"warning"`` and so on."""
    @property
    def section(self) -> str | None:
        """The section, where it is about one."""
    @property
    def text(self) -> str:
        """What to do, and why."""
    @property
    def basis(self) -> str:
        """What it rests on."""

@final
class PlannedActual(_Answer):
    """One thing of one section, as planned and as it was."""

    __match_args__ = ("section", "what", "planned", "actual", "words")
    @property
    def section(self) -> str:
        """The section."""
    @property
    def what(self) -> str:
        """What of it: ``"mass-g"``, ``"applying-min"``, ``"on-hair-min"`` or ``"level"``."""
    @property
    def planned(self) -> float:
        """As planned, in the unit of ``what``."""
    @property
    def actual(self) -> float:
        """As it was."""
    @property
    def words(self) -> str:
        """The difference in words."""

@final
class Evenness(_Answer):
    """How even the sections are, each against its own target."""

    __match_args__ = ("spread_levels", "worst", "short_levels", "text", "basis")
    @property
    def spread_levels(self) -> float:
        """From the section furthest below its target to the one furthest above, in levels."""
    @property
    def worst(self) -> str:
        """The section furthest below its target."""
    @property
    def short_levels(self) -> float:
        """By how many levels it is below."""
    @property
    def text(self) -> str:
        """What to do."""
    @property
    def basis(self) -> str:
        """What the bounds of that advice rest on."""

@final
class Record(_Answer):
    """What happened, beside what was planned."""

    __match_args__ = ("title", "guest", "colourist", "pairs", "evenness", "model_error_levels", "inside_interval", "forecasts", "for_planned_time", "not_judged", "left_out", "to_repeat", "instructions")
    @property
    def title(self) -> str:
        """The service."""
    @property
    def guest(self) -> str | None:
        """The guest's code."""
    @property
    def colourist(self) -> str | None:
        """Who works."""
    @property
    def pairs(self) -> list[PlannedActual]:
        """Planned beside actual, section by section."""
    @property
    def evenness(self) -> Evenness | None:
        """How even the levels are, where at least two are known."""
    @property
    def model_error_levels(self) -> float | None:
        """Levels that came out, less the median of the forecast for the minutes that the first strand carried the mix: the
        mean over the sections.
        """
    @property
    def inside_interval(self) -> int:
        """How many of them lie inside the interval that holds 80 of 100."""
    @property
    def forecasts(self) -> int:
        """How many there are."""
    @property
    def for_planned_time(self) -> list[str]:
        """Sections among them whose begin or rinse is not noted: held against the forecast for the time planned."""
    @property
    def not_judged(self) -> list[str]:
        """Sections that came to a level and whose forecast is not judged, with the reason."""
    @property
    def left_out(self) -> list[str]:
        """Lines that the plan does not know, in words."""
    @property
    def to_repeat(self) -> list[str]:
        """What it takes to repeat the result, a line for each section; what was on and is not repeated where a stop is among the
        instructions."""
    @property
    def instructions(self) -> list[Instruction]:
        """What follows from the log and from what its plan allows."""

def instructions(entries: Iterable[LogEntry]) -> list[Instruction]:
    """What follows from the log, the worst first. Where there is none, it does not say that anything is safe.

    Args:
        entries: the entries of the log.

    Returns:
        What to do, and why.

    Raises:
        FoilworkError: never for entries that were made.

    Examples:
        >>> from foilwork.record import LogEntry, instructions
        >>> instructions([LogEntry("comfort", at_min=20, comfort="burning")])[0].verdict
        'stop'
    """
def record(plan: Plan, entries: Iterable[LogEntry]) -> Record:
    """Hold what happened against the plan.

    Args:
        plan: the plan as made before the service; levels seen since then move a forecast.
        entries: the entries of the log.

    Returns:
        Planned beside actual, evenness, the error of the forecast, and what it takes to repeat the result.

    Raises:
        FoilworkError: never for entries that were made.

    Examples:
        >>> from foilwork import plan_file
        >>> from foilwork.record import LogEntry, record
        >>> entries = [LogEntry("weighed", at_min=0, section="nape", mass_g=52.2)]
        >>> entries += [LogEntry("result", at_min=60, section=name, level=8) for name in ("nape", "crown")]
        >>> found = record(plan_file("examples/soft-gradient.toml"), entries)
        >>> found.pairs[0].words, found.evenness.worst
        ('5.8 more than planned', 'nape')
    """

def trace_record(plan: Plan, entries: Iterable[LogEntry]) -> list[TracedResult]:
    """How the differences from the plan, the spread of the levels and the error of the forecast come about.

    Args:
        plan: the plan as made before the service.
        entries: the entries of the log.

    Returns:
        A :class:`foilwork.source.TracedResult` for each.

    Raises:
        FoilworkError: never for entries that were made.

    Examples:
        >>> from foilwork import plan_file
        >>> from foilwork.record import LogEntry, trace_record
        >>> plan = plan_file("examples/soft-gradient.toml")
        >>> trace_record(plan, [LogEntry("weighed", at_min=0, section="nape", mass_g=52.2)])[0].what
        'nape: mix, more than planned'
    """
