from typing import final

from foilwork._native import _Answer

__all__ = [
    "TracedInput",
    "TracedResult",
]

@final
class TracedInput(_Answer):
    """One number that goes into a result."""

    __match_args__ = ("what", "value", "bounds", "unit", "basis")
    @property
    def what(self) -> str:
        """What it is."""
    @property
    def value(self) -> str:
        """Its value as decimal text, for an estimate the best."""
    @property
    def bounds(self) -> tuple[str, str] | None:
        """Its lower and its upper bound, where it is an estimate."""
    @property
    def unit(self) -> str:
        """Its unit."""
    @property
    def basis(self) -> str | None:
        """What it rests on, where that is known apart from the result."""

@final
class TracedResult(_Answer):
    """A result and how it came about."""

    __match_args__ = ("what", "value", "bounds", "unit", "formula", "worked", "inputs", "basis", "sources", "foilwork")
    @property
    def what(self) -> str:
        """What it is."""
    @property
    def value(self) -> str:
        """Its value as decimal text, for an estimate the best."""
    @property
    def bounds(self) -> tuple[str, str] | None:
        """Its lower and its upper bound, where it is an estimate."""
    @property
    def unit(self) -> str:
        """Its unit."""
    @property
    def formula(self) -> str:
        """How it is found."""
    @property
    def worked(self) -> str | None:
        """The same with the numbers put in; ``None`` where it is no arithmetic, as of a model."""
    @property
    def inputs(self) -> list[TracedInput]:
        """From what."""
    @property
    def basis(self) -> str:
        """What it rests on."""
    @property
    def sources(self) -> list[str]:
        """The citations behind it, by their ids; none where it is arithmetic or no source is known."""
    @property
    def foilwork(self) -> str:
        """The version of foilwork that found it."""
