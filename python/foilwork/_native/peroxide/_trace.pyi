from collections.abc import Iterable, Sequence

from numpy.typing import ArrayLike

from foilwork import _words
from foilwork._native import _Percent
from foilwork._native.source._trail import TracedResult

__all__ = [
    "trace_blend",
    "trace_conversion",
    "trace_mixture",
]

def trace_conversion(
    value: float,
    from_unit: _words._StrengthUnit,
    to_unit: _words._StrengthUnit,
    *,
    temperature_c: float = 20.0,
    molar_volume: _words._MolarVolume = "ideal-1atm",
    density_g_per_ml: float | None = None,
    medium: _words._SolutionKind = "aqueous",
) -> TracedResult:
    """How a strength in another unit comes about: each step between the two units, with the constants and the density in it.

    Args:
        value: the strength in ``from_unit``.
        from_unit: as in :func:`convert`.
        to_unit: as in :func:`convert`.
        temperature_c: of the solution.
        molar_volume: how oxygen is counted, as in :func:`convert`.
        density_g_per_ml: as measured; without it that of ``medium``.
        medium: ``"aqueous"`` or ``"emulsion"``.

    Returns:
        A :class:`foilwork.source.TracedResult`.

    Raises:
        FoilworkError: as :func:`convert`.

    Examples:
        >>> from foilwork.peroxide import trace_conversion
        >>> found = trace_conversion(6, "% w/w", "% w/v")
        >>> found.formula
        'g/L = 10 x % w/w x density; % w/v = g/L / 10'
    """

def trace_blend(
    first_ww_percent: _Percent,
    second_ww_percent: _Percent,
    target_ww_percent: _Percent,
    total_g: float,
    *,
    names: tuple[str, str] = ("first", "second"),
) -> list[TracedResult]:
    """How the grams of a blend of two come about, before rounding: a stock and a diluent of 0 % w/w, or two stocks.

    Args:
        first_ww_percent: strength of the first in % w/w, or its bounds.
        second_ww_percent: strength of the second.
        target_ww_percent: strength wanted.
        total_g: how much of it, in g.
        names: what the two are called.

    Returns:
        A :class:`foilwork.source.TracedResult` for each of the two.

    Raises:
        FoilworkError: as :func:`blend_two`.

    Examples:
        >>> from foilwork.peroxide import trace_blend
        >>> [one.value for one in trace_blend(12, 0, 3, 60, names=("12 %", "water"))]
        ['15', '45']
    """

def trace_mixture(names: Sequence[str], strengths_ww_percent: Iterable[_Percent], masses_g: ArrayLike) -> TracedResult:
    """How the strength of what was weighed comes about.

    Args:
        names: what the parts are called.
        strengths_ww_percent: strength of each in % w/w, a number or ``Bounds``.
        masses_g: mass of each in g.

    Returns:
        A :class:`foilwork.source.TracedResult`.

    Raises:
        FoilworkError: as :func:`mix_strengths`.

    Examples:
        >>> from foilwork.peroxide import trace_mixture
        >>> trace_mixture(["12 %", "water"], [12, 0], [15, 45]).value
        '3'
    """
