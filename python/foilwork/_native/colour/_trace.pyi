from collections.abc import Sequence

from foilwork import _words
from foilwork._native import _Lab
from foilwork._native.colour._level import _Level, _LevelBounds
from foilwork._native.source._trail import TracedResult

__all__ = [
    "trace_lift",
    "trace_reading",
    "trace_result_level",
    "trace_shade_level",
    "trace_swatch",
    "trace_underlying_pigment",
]

def trace_lift(natural_level: _LevelBounds, target_level: _Level) -> TracedResult:
    """How far hair has to go, above 0 lighter, and how that comes about.

    Args:
        natural_level: level now, or its bounds.
        target_level: level wanted.

    Returns:
        A :class:`foilwork.source.TracedResult`.

    Raises:
        FoilworkError: a level outside 1 to 12.

    Examples:
        >>> from foilwork.colour import trace_lift
        >>> trace_lift(5, 9).worked
        '9 - 5'
    """

def trace_shade_level(
    natural_level: _LevelBounds, target_level: _Level, *, coloured: bool = False, top_level: int = 10
) -> TracedResult:
    """How the level of a permanent shade comes about that brings hair to a level.

    Args:
        natural_level: level of the hair, or its bounds.
        target_level: level wanted.
        coloured: whether the hair carries artificial colour, which colour does not lighten.
        top_level: top of the scale the shades are numbered on, 10 or 12.

    Returns:
        A :class:`foilwork.source.TracedResult`.

    Raises:
        FoilworkError: a lift that permanent colour or the scale does not give.

    Examples:
        >>> from foilwork.colour import trace_shade_level
        >>> trace_shade_level(6, 8).worked
        '2 x 8 - 6'
    """

def trace_result_level(natural_level: _LevelBounds, applied_level: _Level) -> TracedResult:
    """How the level comes about that a permanent shade gives on natural hair.

    Args:
        natural_level: level of the hair, or its bounds.
        applied_level: level of the shade.

    Returns:
        A :class:`foilwork.source.TracedResult`.

    Raises:
        FoilworkError: a level outside 1 to 12.

    Examples:
        >>> from foilwork.colour import trace_result_level
        >>> trace_result_level(5, 9).worked
        '(5 + 9) / 2'
    """

def trace_reading(
    lab: _Lab, *, instrument: _words._Instrument = "spectrophotometer", observer_degrees: int = 10
) -> TracedResult:
    """How the level of hair comes about that an instrument read.

    Args:
        lab: L*, a*, b* measured on the hair.
        instrument: ``"spectrophotometer"`` or ``"calibrated-photograph"``; a plain ``"photograph"`` is refused.
        observer_degrees: observer of the reading, 2 or 10.

    Returns:
        A :class:`foilwork.source.TracedResult`.

    Raises:
        FoilworkError: as :func:`level_from_reading`.

    Examples:
        >>> from foilwork.colour import trace_reading
        >>> trace_reading((22.7, 4.0, 4.8)).sources[0]
        'hair-luster-2000'
    """

def trace_underlying_pigment(target_level: _Level) -> TracedResult:
    """Which pigment shows when natural hair is lightened to a level, and what says so.

    Args:
        target_level: the level it is lightened to.

    Returns:
        A :class:`foilwork.source.TracedResult`.

    Raises:
        FoilworkError: a level outside 1 to 12.

    Examples:
        >>> from foilwork.colour import trace_underlying_pigment
        >>> trace_underlying_pigment(8).basis
        'common-practice'
    """

def trace_swatch(
    level: _Level, *, lightened_from: _Level | None = None, tones: Sequence[_words._Hue] | None = None
) -> list[TracedResult]:
    """How L*, a* and b* of a modelled colour come about.

    Args:
        level: level of the hair.
        lightened_from: natural level it was lightened from; ``None`` for natural hair (or with ``tones``).
        tones: hue words of a colour of this level, shown as on white hair.

    Returns:
        A :class:`foilwork.source.TracedResult` for each of the three.

    Raises:
        FoilworkError: a value out of range, or ``tones`` together with ``lightened_from``.

    Examples:
        >>> from foilwork.colour import trace_swatch
        >>> [one.what for one in trace_swatch(8, lightened_from=4)]
        ['L*', 'a*', 'b*']
    """
