from collections.abc import Sequence
from typing import final

from foilwork._native import _Answer
from foilwork._native.colour._level import _Level

__all__ = [
    "Band",
    "BandedStrand",
]

@final
class Band(_Answer):
    """One colour on a stretch of the strand.

    Args:
        from_cm: where it begins, from the scalp.
        to_cm: where it ends.
        level: its level.
        artificial: whether it was lightened or coloured.
        tone: its tone in words.

    Raises:
        FoilworkError: a value out of range.

    Examples:
        >>> from foilwork.hair import Band
        >>> Band(0, 4, 5).artificial
        False
    """

    __match_args__ = ("from_cm", "to_cm", "level", "artificial", "tone")
    def __new__(
        cls, from_cm: float, to_cm: float, level: _Level, artificial: bool = False, tone: str | None = None
    ) -> Band: ...
    @property
    def from_cm(self) -> float:
        """Where it begins, from the scalp, in cm."""
    @property
    def to_cm(self) -> float:
        """Where it ends, in cm."""
    @property
    def level(self) -> float:
        """Its level."""
    @property
    def artificial(self) -> bool:
        """Whether it was lightened or coloured."""
    @property
    def tone(self) -> str | None:
        """Its tone in words."""

@final
class BandedStrand(_Answer):
    """What lies along a strand, from the scalp to the ends, without a gap.

    Args:
        length_cm: how long the hair is.
        bands: the bands in order from the scalp.

    Raises:
        FoilworkError: bands that overlap, leave a gap, or do not end where the hair ends.

    Examples:
        >>> from foilwork.hair import Band, BandedStrand
        >>> strand = BandedStrand(30, [Band(0, 4, 5), Band(4, 30, 8, artificial=True)])
        >>> strand.level_at(10), strand.overlap_cm(0, 6), strand.regrowth_cm
        (8.0, 2.0, 4.0)
    """

    __match_args__ = ("length_cm", "bands")
    def __new__(cls, length_cm: float, bands: Sequence[Band]) -> BandedStrand: ...
    @property
    def length_cm(self) -> float:
        """How long the hair is, in cm."""
    @property
    def bands(self) -> list[Band]:
        """The bands from the scalp on."""
    def level_at(self, at_cm: float) -> float | None:
        """The level at a place; ``None`` beyond the ends.

        Args:
            at_cm: from the scalp.
        """
    def overlap_cm(self, from_cm: float, to_cm: float) -> float:
        """How much of a stretch is lightened or coloured already, in cm.

        Args:
            from_cm: where the stretch begins.
            to_cm: where it ends.
        """
    @property
    def regrowth_cm(self) -> float:
        """Natural hair from the scalp on, in cm."""
