from typing import final

from foilwork import _words
from foilwork._native import _Answer
from foilwork._native.colour._level import _Level
from foilwork._native.lift._situation import Situation

__all__ = [
    "BookProblem",
    "StrandBook",
    "StrandReading",
    "read_strand_book",
    "strand_json_line",
    "strand_line",
]

@final
class StrandReading(_Answer):
    """One reading of a test strand: what lay on it, how long, and the levels before and after.

    Args:
        situation: the mixture and the hair.
        time_min: how long it lay on the strand.
        before_level: the level before, as read.
        after_level: the level after, as read.
        reader: how it was read: ``"eye"`` or ``"instrument"``.
        guest: whose hair, by a code; readings of one guest hang together.
        product: the product; readings of one product hang together.

    Raises:
        FoilworkError: a time or a level out of range, or another reader.

    Examples:
        >>> from foilwork.lift import Situation, StrandReading
        >>> StrandReading(Situation(4), time_min=30, before_level=4, after_level=8, guest="J-014").after_level
        8.0
    """

    __match_args__ = ("situation", "time_min", "before_level", "after_level", "reader", "guest", "product")
    def __new__(
        cls,
        situation: Situation,
        *,
        time_min: float,
        before_level: _Level,
        after_level: _Level,
        reader: _words._Reader = "eye",
        guest: str | None = None,
        product: str | None = None,
    ) -> StrandReading: ...
    @property
    def situation(self) -> Situation:
        """The mixture and the hair."""
    @property
    def time_min(self) -> float:
        """How long it lay on the strand, in min."""
    @property
    def before_level(self) -> float:
        """The level before, as read."""
    @property
    def after_level(self) -> float:
        """The level after, as read."""
    @property
    def reader(self) -> str:
        """How it was read."""
    @property
    def guest(self) -> str | None:
        """Whose hair, by a code."""
    @property
    def product(self) -> str | None:
        """The product."""

@final
class BookProblem(_Answer):
    """A line of a strand book that cannot be read."""

    __match_args__ = ("line", "message")
    @property
    def line(self) -> int:
        """The line, counted from one."""
    @property
    def message(self) -> str:
        """What is wrong, and the way out."""

@final
class StrandBook(_Answer):
    """What a strand book holds, and what could not be read."""

    __match_args__ = ("readings", "problems")
    @property
    def readings(self) -> list[StrandReading]:
        """The readings, in the order of the lines."""
    @property
    def problems(self) -> list[BookProblem]:
        """Lines that could not be read; all others count."""

def read_strand_book(text: str) -> StrandBook:
    r"""Read a book of strand readings, as ``strand_line`` and ``foilwork strand-test`` write it.

    Args:
        text: comma-separated text with a heading, or one JSON object in each line. A line that a crash has torn is
            reported and kept apart.

    Returns:
        The readings, and the lines that could not be read.

    Examples:
        >>> from foilwork.lift import read_strand_book, strand_line
        >>> text = strand_line(None) + "J-014,,4,8.5,30,4,4,4,25,persulfate,,normal,medium,foil,eye,.\nJ-014,,4,8"
        >>> book = read_strand_book(text)
        >>> [reading.after_level for reading in book.readings], [problem.line for problem in book.problems]
        ([8.5], [3])
    """

def strand_json_line(reading: StrandReading) -> str:
    """The line of one reading as a JSON object, for a book with an object in each line; append it in one write.

    Args:
        reading: the reading.

    Returns:
        The line, with its line break.

    Examples:
        >>> from foilwork.lift import Situation, StrandReading, read_strand_book, strand_json_line
        >>> strand = StrandReading(Situation(4), time_min=30, before_level=4, after_level=8)
        >>> read_strand_book(strand_json_line(strand)).readings == [strand]
        True
    """
def strand_line(reading: StrandReading | None) -> str:
    r"""The line of one reading, with its line break; append it to the book in one write.

    Args:
        reading: the reading; ``None`` gives the heading.

    Returns:
        The line.

    Examples:
        >>> from foilwork.lift import Situation, StrandReading, strand_line
        >>> strand_line(StrandReading(Situation(4), time_min=30, before_level=4, after_level=8))
        ',,4,8,30,4,4,4,25,persulfate,,normal,medium,foil,eye,.\n'
    """
