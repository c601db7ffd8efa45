from collections.abc import Iterable
from typing import final, overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

from foilwork._native import Bounds, _Answer, _Errors, _Percent

__all__ = [
    "blend_two",
    "dilute",
    "dilution_table",
    "mix_strengths",
    "round_to_scale",
]

@overload
def dilute(
    stock_ww_percent: float,
    target_ww_percent: float,
    total_g: float | None = None,
    *,
    stock_g: float | None = None,
    diluent_g: float | None = None,
    errors: _Errors = "raise",
) -> tuple[float, float]:
    """Split an amount into stock and diluent, by mass.

    Give exactly one of ``total_g``, ``stock_g`` and ``diluent_g``; the rest is worked out. Weigh it: by volume it would be
    wrong by the density.

    Args:
        stock_ww_percent: Strength of the bottle in % w/w, a number or an array.
        target_ww_percent: Strength wanted in % w/w, a number or an array.
        total_g: How much is wanted altogether, in g, a number or an array.
        stock_g: Or how much stock there is, in g.
        diluent_g: Or how much diluent there is, in g.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.

    Returns:
        ``(stock_g, diluent_g)``: floats for numbers, else float64 arrays. Nothing is rounded.

    Raises:
        FoilworkError: A target above the stock, a zero amount, or not exactly one amount.

    Source:
        Conservation of mass and of peroxide.

    >>> from foilwork.peroxide import dilute
    >>> dilute(12, 3, 60)
    (15.0, 45.0)
    >>> dilute(12, 3, stock_g=40)
    (40.0, 120.0)
    """
@overload
def dilute(
    stock_ww_percent: ArrayLike,
    target_ww_percent: ArrayLike,
    total_g: ArrayLike | None = None,
    *,
    stock_g: ArrayLike | None = None,
    diluent_g: ArrayLike | None = None,
    errors: _Errors = "raise",
) -> tuple[NDArray[float64], NDArray[float64]]: ...

@overload
def blend_two(
    first_ww_percent: float,
    second_ww_percent: float,
    target_ww_percent: float,
    total_g: float | None = None,
    *,
    first_g: float | None = None,
    second_g: float | None = None,
    errors: _Errors = "raise",
) -> tuple[float, float]:
    """Blend two strengths to a third (alligation), by mass.

    Give exactly one of ``total_g``, ``first_g`` and ``second_g``; the rest is worked out. The order of the two does not
    matter.

    Args:
        first_ww_percent: Strength of the first part in % w/w, a number or an array.
        second_ww_percent: Strength of the second part in % w/w, a number or an array.
        target_ww_percent: Strength wanted in % w/w, a number or an array.
        total_g: How much is wanted altogether, in g, a number or an array.
        first_g: Or how much of the first part there is, in g.
        second_g: Or how much of the second part there is, in g.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.

    Returns:
        ``(first_g, second_g)``: floats for numbers, else float64 arrays. Nothing is rounded.

    Raises:
        FoilworkError: A target outside the two strengths, a zero amount, or not exactly one amount.

    Source:
        Conservation of mass and of peroxide.

    >>> from foilwork.peroxide import blend_two
    >>> blend_two(6, 12, 9, 80)
    (40.0, 40.0)
    """
@overload
def blend_two(
    first_ww_percent: ArrayLike,
    second_ww_percent: ArrayLike,
    target_ww_percent: ArrayLike,
    total_g: ArrayLike | None = None,
    *,
    first_g: ArrayLike | None = None,
    second_g: ArrayLike | None = None,
    errors: _Errors = "raise",
) -> tuple[NDArray[float64], NDArray[float64]]: ...

@final
class Mixture(_Answer):
    """x"""

    __match_args__ = ("strength_ww_percent", "total_g")
    @property
    def strength_ww_percent(self) -> Bounds[float]:
        """x"""
    @property
    def total_g(self) -> float:
        """x"""

def mix_strengths(strengths_ww_percent: Iterable[_Percent], masses_g: ArrayLike) -> Mixture:
    """x"""

@final
class RoundedBlend(_Answer):
    """x"""

    __match_args__ = ("masses_g", "total_g", "strength_ww_percent")
    @property
    def masses_g(self) -> list[float]:
        """x"""
    @property
    def total_g(self) -> float:
        """x"""
    @property
    def strength_ww_percent(self) -> Bounds[float]:
        """x"""

def round_to_scale(
    strengths_ww_percent: Iterable[_Percent], masses_g: ArrayLike, division_g: float
) -> RoundedBlend:
    """x"""

@final
class DilutionRow(_Answer):
    """x"""

    __match_args__ = ("stock_ww_percent", "target_ww_percent", "stock_g", "diluent_g", "strength_ww_percent", "diluent_parts", "refused")
    @property
    def stock_ww_percent(self) -> float:
        """x"""
    @property
    def target_ww_percent(self) -> float:
        """x"""
    @property
    def stock_g(self) -> float | None:
        """x"""
    @property
    def diluent_g(self) -> float | None:
        """x"""
    @property
    def strength_ww_percent(self) -> float | None:
        """x"""
    @property
    def diluent_parts(self) -> float | None:
        """x"""
    @property
    def refused(self) -> str | None:
        """x"""

def dilution_table(
    stocks_ww_percent: ArrayLike, targets_ww_percent: ArrayLike, total_g: float, division_g: float
) -> list[DilutionRow]:
    """x"""
