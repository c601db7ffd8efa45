from collections.abc import Iterable
from typing import final, overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

from foilwork._native import Bounds, _Answer, _Errors, _Percent

__all__ = [
    "dilute_volume",
    "make_up",
    "mix_volumes",
    "strength_after_make_up",
]

@overload
def make_up(
    stock: float,
    target: float,
    unit: str,
    total_ml: float | None = None,
    *,
    stock_ml: float | None = None,
    errors: _Errors = "raise",
) -> tuple[float, float]:
    """Make a solution up to the mark: ``c1 V1 = c2 V2``, exact whatever the contraction.

    Give exactly one of ``total_ml`` and ``stock_ml``.

    Args:
        stock: Strength of the stock in ``unit``, a number or an array.
        target: Strength wanted in the same unit, a number or an array.
        unit: One that counts by volume: ``"% w/v"``, ``"g/L"``, ``"mol/L"``, ``"N"`` or ``"volumes"``.
        total_ml: Volume wanted in mL, a number or an array.
        stock_ml: Or the volume of stock there is, in mL.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.

    Returns:
        ``(stock_ml, total_ml)``: take this much stock and add diluent up to that mark.

    Raises:
        FoilworkError: A target above the stock, something zero, a unit by mass, or not exactly one volume.

    Source:
        Conservation of the solute.

    >>> from foilwork.peroxide import make_up
    >>> make_up(100, 20, "volumes", 500)
    (100.0, 500.0)
    """
@overload
def make_up(
    stock: ArrayLike,
    target: ArrayLike,
    unit: str,
    total_ml: ArrayLike | None = None,
    *,
    stock_ml: ArrayLike | None = None,
    errors: _Errors = "raise",
) -> tuple[NDArray[float64], NDArray[float64]]: ...

@overload
def strength_after_make_up(stock: float, unit: str, taken_ml: float, total_ml: float, *, errors: _Errors = "raise") -> float:
    """The strength after a volume of stock is made up to the mark.

    Args:
        stock: Strength of the stock in ``unit``, a number or an array.
        unit: One that counts by volume: ``"% w/v"``, ``"g/L"``, ``"mol/L"``, ``"N"`` or ``"volumes"``.
        taken_ml: Volume of stock in mL, a number or an array.
        total_ml: The mark in mL, a number or an array.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.

    Returns:
        Strength in ``unit``: a float for numbers, else a float64 array.

    Raises:
        FoilworkError: A mark of zero or below the volume of stock, or a unit by mass.

    Source:
        Conservation of the solute.

    >>> from foilwork.peroxide import strength_after_make_up
    >>> strength_after_make_up(3, "% w/v", 417, 10_000)
    0.1251
    """
@overload
def strength_after_make_up(
    stock: ArrayLike, unit: str, taken_ml: ArrayLike, total_ml: ArrayLike, *, errors: _Errors = "raise"
) -> NDArray[float64]: ...

@final
class VolumeDilution(_Answer):
    """x"""

    __match_args__ = ("stock_ml", "water_ml", "total_ml", "contraction_ml")
    @property
    def stock_ml(self) -> Bounds[float]:
        """x"""
    @property
    def water_ml(self) -> Bounds[float]:
        """x"""
    @property
    def total_ml(self) -> float:
        """x"""
    @property
    def contraction_ml(self) -> Bounds[float]:
        """x"""

def dilute_volume(
    stock_ww_percent: float, target_ww_percent: float, total_ml: float, *, temperature_c: float = 20.0
) -> VolumeDilution:
    """x"""

@final
class PouredMixture(_Answer):
    """x"""

    __match_args__ = ("strength_ww_percent", "total_g", "poured_ml", "volume_ml")
    @property
    def strength_ww_percent(self) -> Bounds[float]:
        """x"""
    @property
    def total_g(self) -> Bounds[float]:
        """x"""
    @property
    def poured_ml(self) -> float:
        """x"""
    @property
    def volume_ml(self) -> Bounds[float]:
        """x"""

def mix_volumes(
    strengths_ww_percent: Iterable[_Percent], volumes_ml: ArrayLike, *, temperature_c: float = 20.0
) -> PouredMixture:
    """x"""
