from typing import final

from foilwork._native import _Answer, _Percent

__all__ = [
    "HandlingFact",
    "StrengthBound",
    "handling_facts",
]

@final
class StrengthBound(_Answer):
    """One end of a range of strengths."""

    __match_args__ = ("ww_percent", "included")
    @property
    def ww_percent(self) -> float:
        """The strength in % w/w."""
    @property
    def included(self) -> bool:
        """Whether this very strength is in the range."""

@final
class HandlingFact(_Answer):
    """What a law or a transport list says about a range of strengths; made by ``handling_facts``.

    A fact about the text, not advice. Nothing here says that a strength is harmless.
    """

    __match_args__ = ("jurisdiction", "scheme", "class_name", "code", "lower", "upper", "note", "source", "bearing")
    @property
    def jurisdiction(self) -> str:
        """Where it holds: ``"EU"``, ``"UK"``, or ``"UN"`` for transport."""
    @property
    def scheme(self) -> str:
        """The text."""
    @property
    def class_name(self) -> str:
        """Class or status."""
    @property
    def code(self) -> str:
        """Hazard statement or UN number; empty where there is none."""
    @property
    def lower(self) -> StrengthBound | None:
        """Lower end, or None."""
    @property
    def upper(self) -> StrengthBound | None:
        """Upper end, or None."""
    @property
    def note(self) -> str:
        """What to bear in mind."""
    @property
    def source(self) -> str:
        """The id of the source, as ``foilwork.source.resolve`` takes it."""
    @property
    def bearing(self) -> str:
        """``"applies"``, ``"may-apply"`` (part of the span is in the range: treat it as if it applied) or ``"substance"``."""

def handling_facts(strength_ww_percent: _Percent) -> list[HandlingFact]:
    """What classification, transport and precursor law say about a strength of hydrogen peroxide.

    Args:
        strength_ww_percent: strength in % w/w, a number, or ``Bounds`` when it is known only within them.

    Returns:
        The facts in the order of the texts. Other components, the pack and local law can add to them.

    Raises:
        FoilworkError: a strength out of range, or bounds out of order.

    Source:
        Cited with each fact.

    Examples:
        >>> from foilwork.peroxide import handling_facts
        >>> [fact.code for fact in handling_facts(12) if fact.bearing == "applies" and fact.code]
        ['H318', 'UN 2984']
    """
