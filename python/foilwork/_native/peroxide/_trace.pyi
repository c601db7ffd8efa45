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
    """x"""

def trace_blend(
    first_ww_percent: _Percent,
    second_ww_percent: _Percent,
    target_ww_percent: _Percent,
    total_g: float,
    *,
    names: tuple[str, str] = ("first", "second"),
) -> list[TracedResult]:
    """x"""

def trace_mixture(names: Sequence[str], strengths_ww_percent: Iterable[_Percent], masses_g: ArrayLike) -> TracedResult:
    """x"""
