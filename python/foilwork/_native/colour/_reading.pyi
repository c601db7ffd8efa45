from collections.abc import Sequence
from typing import final, overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

from foilwork import _words
from foilwork._native import Bounds, _Answer, _Errors, _Lab
from foilwork._native.colour._level import _Level

__all__ = [
    "WhiteBlend",
    "blended_level",
    "level_from_reading",
    "level_on_scale",
    "white_blend",
]

@final
class WhiteBlend(_Answer):
    """What a permanent shade gives on hair that is white in part; made by ``white_blend``."""

    __match_args__ = ("white_percent", "white_part_level", "pigmented_part_level")
    @property
    def white_percent(self) -> float:
        """Share of white hair, in percent."""
    @property
    def white_part_level(self) -> float:
        """The level of the white hair: that of the shade."""
    @property
    def pigmented_part_level(self) -> float:
        """The level of the other hair: the mean of its own and the shade's."""

def level_from_reading(lab: _Lab, *, instrument: _words._Instrument = "spectrophotometer", observer_degrees: int = 10) -> Bounds[float]:
    """The level whose natural hair is as light as an instrument reads.

    Args:
        lab: L*, a*, b* measured on the hair.
        instrument: ``"spectrophotometer"`` or ``"calibrated-photograph"``; a plain ``"photograph"`` is refused.
        observer_degrees: observer of the reading, 2 or 10.

    Returns:
        The level with its bounds: the spread of repeated readings and of the model.

    Raises:
        FoilworkError: a photograph, or a lightness that no level has.

    Source:
        Measurement of hair luster, J. Cosmet. Sci. 51(5):293, 2000, for the spread of readings.

    Examples:
        >>> from foilwork.colour import level_from_reading
        >>> level = level_from_reading((22.7, 4.0, 4.8))
        >>> level.low < 3 < level.high
        True
    """

@overload
def level_on_scale(
    reading: float, *, scale: _words._Scale, anchors: Sequence[tuple[float, _Level]] | None = None, uncertainty_levels: float = 0.5, errors: _Errors = "raise", out: None = None, where: None = None
) -> Bounds[float]:
    """The level that a reading on another scale stands for: straight lines between stated anchors, nothing beyond them.

    Args:
        reading: the number read on the scale, or an array.
        scale: ``"japanese-20"``, ``"us-10"``, ``"european-10"`` or ``"twelve"``.
        anchors: (reading, level) pairs of your own, both rising; without them the Japanese scale is mapped through the
            underlying pigment that is printed for both.
        uncertainty_levels: how far off your anchors may be, in levels.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
        out: a tuple of three arrays of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        The level with its bounds: floats for a number, else float64 arrays.

    Raises:
        FoilworkError: a reading off its scale or beyond the anchors, anchors that do not rise, or a scale without any.

    Source:
        Your anchors, or assumed within one level.

    Examples:
        >>> from foilwork.colour import level_on_scale
        >>> level_on_scale(9.5, scale="japanese-20")
        Bounds(low=6.0, best=7.0, high=8.0)
    """
@overload
def level_on_scale(
    reading: ArrayLike, *, scale: _words._Scale, anchors: Sequence[tuple[float, _Level]] | None = None, uncertainty_levels: float = 0.5, errors: _Errors = "raise", out: tuple[NDArray[float64], NDArray[float64], NDArray[float64]] | None = None, where: ArrayLike | None = None
) -> Bounds[NDArray[float64]]: ...

def white_blend(natural_level: _Level, applied_level: _Level, white_percent: float, *, product: _words._ProductKind = "permanent") -> WhiteBlend:
    """The two levels that a permanent shade gives on hair that is white in part.

    Args:
        natural_level: natural level of the hair that is not white.
        applied_level: level of the shade.
        white_percent: share of white hair, from 0 to 100 %.
        product: ``"permanent"``; every other product is refused with the reason.

    Returns:
        A ``WhiteBlend``: white hair takes the shade's own level.

    Raises:
        FoilworkError: another product, or a value out of range.

    Source:
        As ``result_level``.

    Examples:
        >>> from foilwork.colour import white_blend
        >>> blend = white_blend(4, 8, 30)
        >>> blend.white_part_level, blend.pigmented_part_level
        (8.0, 6.0)
    """

def blended_level(parts: Sequence[tuple[_Level, float]]) -> float:
    """The level of shades mixed in a bowl: the mean of their levels by mass.

    Args:
        parts: (level, mass in g) of each shade.

    Returns:
        The level of the mix.

    Raises:
        FoilworkError: no mass at all, or a value out of range.

    Source:
        Common practice.

    Examples:
        >>> from foilwork.colour import blended_level
        >>> blended_level([(6, 30), (8, 10)])
        6.5
    """
