from typing import final

from foilwork._native import _Answer
from foilwork._native.colour._level import _Level

__all__ = [
    "LogEntry",
    "LogProblem",
    "ServiceLog",
    "log_line",
    "read_log",
]

@final
class LogEntry(_Answer):
    """A line of the log.

    Args:
        what: ``"begun"``, ``"applied"``, ``"rinsed"``, ``"seen"``, ``"comfort"``, ``"foil"``, ``"elasticity"``,
            ``"weighed"``, ``"left-over"``, ``"result"`` or ``"incident"``.
        at_min: when, from the first brush.
        section: the section, where it is about one.
        level: a level, for ``"seen"`` and ``"result"``.
        tone: a tone in words.
        comfort: ``"fine"``, ``"tingling"``, ``"itching"`` or ``"burning"``.
        foil: ``"cool"``, ``"warm"``, ``"hot"`` or ``"swollen"``.
        elasticity: ``"good"``, ``"reduced"`` or ``"poor"``.
        mass_g: a mass of mix, for ``"weighed"`` and ``"left-over"``.
        note: words, for ``"incident"``.

    Raises:
        FoilworkError: a value out of range, another word, or a field that is missing.

    Examples:
        >>> from foilwork.record import LogEntry
        >>> LogEntry("seen", at_min=20, section="nape", level=7.5).level
        7.5
    """

    __match_args__ = ("what", "at_min", "section", "level", "tone", "comfort", "foil", "elasticity", "mass_g", "note")
    def __new__(cls, what: str, *, at_min: float, section: str | None = None, level: _Level | None = None, tone: str | None = None, comfort: str | None = None, foil: str | None = None, elasticity: str | None = None, mass_g: float | None = None, note: str | None = None) -> LogEntry: ...
    @property
    def what(self) -> str:
        """What is noted."""
    @property
    def at_min(self) -> float:
        """When, in min from the first brush."""
    @property
    def section(self) -> str | None:
        """The section."""
    @property
    def level(self) -> float | None:
        """A level."""
    @property
    def tone(self) -> str | None:
        """A tone in words."""
    @property
    def comfort(self) -> str | None:
        """How the scalp feels."""
    @property
    def foil(self) -> str | None:
        """What a foil is like."""
    @property
    def elasticity(self) -> str | None:
        """Stretch and return."""
    @property
    def mass_g(self) -> float | None:
        """A mass of mix, in g."""
    @property
    def note(self) -> str | None:
        """Words."""

@final
class LogProblem(_Answer):
    """A line of a log that cannot be read."""

    __match_args__ = ("line", "message")
    @property
    def line(self) -> int:
        """The line, counted from one."""
    @property
    def message(self) -> str:
        """What is wrong, and the way out."""

@final
class ServiceLog(_Answer):
    """What a log holds, and what could not be read."""

    __match_args__ = ("entries", "problems")
    @property
    def entries(self) -> list[LogEntry]:
        """The entries, in the order of the lines."""
    @property
    def problems(self) -> list[LogProblem]:
        """Lines that could not be read; all others count."""

def log_line(entry: LogEntry) -> str:
    r"""The line of an entry, with its line break; append it to the log in one write.

    Args:
        entry: the entry.

    Returns:
        The line.

    Raises:
        FoilworkError: never for an entry that was made.

    Examples:
        >>> from foilwork.record import LogEntry, log_line
        >>> log_line(LogEntry("begun", at_min=3, section="nape"))
        '{"format":1,"at_min":3.0,"what":"begun","section":"nape"}\n'
    """
def read_log(text: str) -> ServiceLog:
    r"""Read a log; a line that a crash has torn is reported, and the others count.

    Args:
        text: the lines, as ``log_line`` and ``foilwork note`` write them.

    Returns:
        The entries, and the lines that could not be read.

    Examples:
        >>> from foilwork.record import read_log
        >>> log = read_log('{"format":1,"at_min":3,"what":"begun","section":"nape"}\n{"format":1,"at_mi')
        >>> len(log.entries), log.problems[0].line
        (1, 2)
    """
