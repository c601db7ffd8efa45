from collections.abc import Iterable
from typing import final

from foilwork._native import Bounds, _Answer
from foilwork._native.colour._level import _LevelBounds
from foilwork._native.lift._book import StrandReading
from foilwork._native.lift._situation import Situation

__all__ = [
    "Advice",
    "Belief",
    "advice",
]

@final
class Belief:
    """What is known of how a hair lightens: two rates and an end point, each with its spread.

    Args:
        readings: strand readings of the salon; without any, what is believed of hair that nobody has tested.
        guest: whose hair it is about, by the code of the readings.
        product: which product it is about.

    Raises:
        FoilworkError: a reading out of range.

    Source:
        Rates near the one published series of levels; see ``foilwork.source.register()``, ``"lightening-series"``.

    Examples:
        >>> from foilwork.lift import Belief, Situation, StrandReading
        >>> strand = StrandReading(Situation(4), time_min=30, before_level=4, after_level=8.5, guest="J-014")
        >>> known, unknown = Belief([strand], guest="J-014"), Belief()
        >>> known.readings, known.pigment_per_min.best > unknown.pigment_per_min.best
        (1, True)
    """
    def __new__(
        cls, readings: Iterable[StrandReading] = (), *, guest: str | None = None, product: str | None = None
    ) -> Belief: ...
    @property
    def readings(self) -> int:
        """Strand readings it rests on: those of the guest, or of the product where none is of the guest."""
    @property
    def pigment_per_min(self) -> Bounds[float]:
        """The rate of pigment loss of the reference mixture, per min: median and 80 % interval."""
    @property
    def oxidant_per_min(self) -> Bounds[float]:
        """The rate at which the oxidant is used up, per min: median and 80 % interval."""
    @property
    def ceiling(self) -> Bounds[float]:
        """The level reached at the very end: median and 80 % interval."""
    def after_readings(self, readings: Iterable[StrandReading]) -> Belief:
        """The same belief after more readings of this hair and product, for example a level seen during the service.

        Args:
            readings: the readings.
        """
    def __eq__(self, other: object, /) -> bool: ...
    def __hash__(self) -> int: ...

@final
class Advice(_Answer):
    """What strand tests have pinned down, and which test to do next."""

    __match_args__ = ("known", "read_at_min", "width_now", "width_then")
    @property
    def known(self) -> str:
        """What is known and what is not, in words."""
    @property
    def read_at_min(self) -> float:
        """After how many min the next reading narrows the forecast most."""
    @property
    def width_now(self) -> float:
        """Width of the 80 % interval of the level at the planned time now, in levels."""
    @property
    def width_then(self) -> float:
        """The same after that reading, if it comes out as expected."""

def advice(belief: Belief, situation: Situation, start_level: _LevelBounds, planned_min: float) -> Advice:
    """What the readings so far have and have not pinned down, and when to read the next strand.

    Args:
        belief: what is known.
        situation: the mixture and the hair.
        start_level: the level now, or its bounds as far as its reading may be off.
        planned_min: the time that is planned.

    Returns:
        The advice. The times tried are every five minutes up to the planned one.

    Raises:
        FoilworkError: a value out of range.

    Examples:
        >>> from foilwork.lift import Belief, Situation, advice
        >>> told = advice(Belief(), Situation(4), start_level=4, planned_min=40)
        >>> told.width_then < told.width_now
        True
    """
