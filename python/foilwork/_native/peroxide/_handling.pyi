from typing import final

__all__ = [
    "HandlingFact",
    "handling_facts",
]

@final
class HandlingFact:
    """What a law or a transport list says about a range of strengths; made by ``handling_facts``.

    A fact about the text, not advice. Nothing here says that a strength is harmless.
    """
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
    def lower(self) -> tuple[float, bool] | None:
        """Lower end in % w/w and whether it is in the range, or None."""
    @property
    def upper(self) -> tuple[float, bool] | None:
        """Upper end in % w/w and whether it is in the range, or None."""
    @property
    def note(self) -> str:
        """What to bear in mind."""
    @property
    def source(self) -> str:
        """The source."""
    @property
    def bearing(self) -> str:
        """``"applies"``, ``"may apply"`` (part of the span is in the range: treat it as if it applied) or ``"substance"``."""

def handling_facts(strength_ww: float, high_ww: float | None = None) -> list[HandlingFact]:
    """What classification, transport and precursor law say about a strength of hydrogen peroxide.

    Args:
        strength_ww: Strength in % w/w, or its lower bound.
        high_ww: Its upper bound in % w/w, when the strength is known only within bounds.

    Returns:
        A list of ``HandlingFact``, in the order of the texts. Other components, the pack and local law can add to it.

    Raises:
        FoilworkError: A strength out of range, or bounds out of order.

    Source:
        Cited with each fact.

    >>> from foilwork.peroxide import handling_facts
    >>> [fact.code for fact in handling_facts(12) if fact.bearing == "applies" and fact.code]
    ['H318', 'UN 2984']
    """
