from typing import final

from foilwork._native import _Answer
from foilwork._native.source._trail import TracedResult

__all__ = [
    "FoilGroup",
    "Piece",
    "SectionTimes",
    "Timeline",
]

@final
class FoilGroup(_Answer):
    """Foils that are closed in one go, numbered within their section."""

    __match_args__ = ("first", "last")
    @property
    def first(self) -> int:
        """The first of them, from 1."""
    @property
    def last(self) -> int:
        """The last."""

@final
class Piece(_Answer):
    """A piece of work of one person, without a break."""

    __match_args__ = ("kind", "section", "person", "from_min", "to_min", "foils")
    @property
    def kind(self) -> str:
        """What is done: ``"mix"``, ``"apply"``, ``"look"``, ``"walk"`` or ``"rinse"``."""
    @property
    def section(self) -> int | None:
        """The place of the section, from 0; ``None`` for a look, which is at all that is on, and for a walk."""
    @property
    def person(self) -> int:
        """Who does it, from 0."""
    @property
    def from_min(self) -> float:
        """When it begins, in min from the first work on the guest."""
    @property
    def to_min(self) -> float:
        """When it ends, in min."""
    @property
    def foils(self) -> FoilGroup | None:
        """The foils that are closed in it."""

@final
class SectionTimes(_Answer):
    """The times of one section, in min from the first work on the guest."""

    __match_args__ = ("section", "name", "visit", "person", "mix_at_min", "start_min", "applied_min", "look_at_min", "rinse_min", "rinsed_min", "on_hair_min", "spare_min")
    @property
    def section(self) -> int:
        """Its place in the list of the work, from 0."""
    @property
    def name(self) -> str:
        """Its name."""
    @property
    def visit(self) -> int:
        """At which visit to the basin it is rinsed, from 1."""
    @property
    def person(self) -> int:
        """Who puts it on, from 0."""
    @property
    def mix_at_min(self) -> list[float]:
        """When each of its bowls is begun."""
    @property
    def start_min(self) -> float:
        """Its first strand."""
    @property
    def applied_min(self) -> float:
        """Its last strand is on, its last foil closed."""
    @property
    def look_at_min(self) -> list[float]:
        """When it is looked at."""
    @property
    def rinse_min(self) -> float:
        """When it is rinsed."""
    @property
    def rinsed_min(self) -> float:
        """When it is rinsed out."""
    @property
    def on_hair_min(self) -> float:
        """How long its first strand carries the mix."""
    @property
    def spare_min(self) -> float:
        """How much longer it might."""

@final
class Timeline(_Answer):
    """When everything is done. Minutes count from the first work on the guest."""

    __match_args__ = ("sections", "pieces", "visits", "finish_min", "idle_min", "hands_min", "bound_min", "proven")
    @property
    def sections(self) -> list[SectionTimes]:
        """The sections in the order in which they are put on."""
    @property
    def pieces(self) -> list[Piece]:
        """Every piece of work, in the order of its begin."""
    @property
    def visits(self) -> int:
        """How often the guest goes to the basin."""
    @property
    def finish_min(self) -> float:
        """When the last section is rinsed, in min."""
    @property
    def idle_min(self) -> float:
        """How long nobody works on the guest, in min."""
    @property
    def hands_min(self) -> list[float]:
        """How long each person works on the guest, in min."""
    @property
    def bound_min(self) -> float:
        """A finish that no order of these people can beat, in min."""
    @property
    def proven(self) -> bool:
        """Whether this finish is proven to be the earliest."""
    def svg(self, title: str = "The day") -> str:
        """The day as a picture.

        Args:
            title: what stands above it.

        Returns:
            SVG text, without scripts.

        Raises:
            FoilworkError: a time out of range.

        Examples:
            >>> from foilwork.day import SectionWork, arrange
            >>> nape = SectionWork("nape", apply_min=15, develop_min=35, longest_min=60)
            >>> arrange([nape]).svg("one section")[:4]
            '<svg'
        """
    def trail(self) -> list[TracedResult]:
        """How the finish, and the time that each section carries its mixture, came about.

        Returns:
            A :class:`foilwork.source.TracedResult` for each.

        Examples:
            >>> from foilwork.day import SectionWork, arrange
            >>> nape = SectionWork("nape", apply_min=15, develop_min=35, longest_min=60)
            >>> [one.what for one in arrange([nape]).trail()]
            ['nape: time of the first strand', 'finish']
        """
    def _repr_svg_(self) -> str: ...

