from decimal import Decimal
from typing import final

from foilwork._native import _Answer

__all__ = [
    "Exercise",
    "ExerciseAnswer",
    "ExercisePicture",
    "OfferedAnswer",
    "Working",
]

@final
class ExerciseAnswer(_Answer):
    """An answer: a number with its unit, a time of the clock, or words."""

    __match_args__ = ("text", "value", "unit")
    @property
    def text(self) -> str:
        """As it is to be written."""
    @property
    def value(self) -> Decimal | None:
        """The number alone, where it is one."""
    @property
    def unit(self) -> str | None:
        """Its unit."""

@final
class Working(_Answer):
    """One step of the way, with what the library makes of it."""

    __match_args__ = ("what", "formula", "result")
    @property
    def what(self) -> str:
        """What is looked for."""
    @property
    def formula(self) -> str:
        """The formula with its numbers."""
    @property
    def result(self) -> str:
        """What it comes to."""

@final
class OfferedAnswer(_Answer):
    """One of the answers to choose from."""

    __match_args__ = ("letter", "answer", "mistake", "why")
    @property
    def letter(self) -> str:
        """Its letter."""
    @property
    def answer(self) -> ExerciseAnswer:
        """The answer."""
    @property
    def mistake(self) -> str | None:
        """The error that leads to it, by its code; none for the right one."""
    @property
    def why(self) -> str | None:
        """The same in words."""

@final
class ExercisePicture(_Answer):
    """The picture of a problem, and the same in words: with either of them the problem can be solved."""

    __match_args__ = ("says", "svg")
    @property
    def says(self) -> str:
        """What there is to read, in words."""
    @property
    def svg(self) -> str:
        """The picture as SVG."""

@final
class Exercise(_Answer):
    """A problem with its one answer, the way there, and the answers that usual errors lead to."""

    __match_args__ = ("number", "topic", "difficulty", "kind", "question", "picture", "given", "answer", "steps", "options", "basis", "sources")
    @property
    def number(self) -> int:
        """Its place on the sheet, from one."""
    @property
    def topic(self) -> str:
        """What it practises."""
    @property
    def difficulty(self) -> str:
        """How much it asks for."""
    @property
    def kind(self) -> str:
        """Which problem of the topic it is."""
    @property
    def question(self) -> str:
        """The problem in words, with its numbers and how to round."""
    @property
    def picture(self) -> ExercisePicture | None:
        """The picture it is read from or that stands beside it."""
    @property
    def given(self) -> list[tuple[str, str]]:
        """What is given: names that end with the unit, and exact decimals as text."""
    @property
    def answer(self) -> ExerciseAnswer:
        """The answer."""
    @property
    def steps(self) -> list[Working]:
        """The way there."""
    @property
    def options(self) -> list[OfferedAnswer]:
        """The answer among wrong ones."""
    @property
    def basis(self) -> str:
        """What the rule rests on."""
    @property
    def sources(self) -> list[str]:
        """The citations of the rule, by their ids."""
