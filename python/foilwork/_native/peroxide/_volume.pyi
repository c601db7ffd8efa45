from typing import overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

from foilwork._native import _Bounds, _Errors

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

def dilute_volume(
    stock_ww: float, target_ww: float, total_ml: float, *, temperature_c: float = 20.0
) -> tuple[_Bounds, _Bounds, float]:
    """Split a volume into volumes of stock and water, with the contraction allowed for.

    Clear solutions only, all at one temperature. Weighing (``dilute``) is exact; this is as good as the densities.

    Args:
        stock_ww: Strength of the stock in % w/w.
        target_ww: Strength wanted in % w/w.
        total_ml: Volume wanted in mL.
        temperature_c: Temperature in C.

    Returns:
        ``(stock_ml, water_ml, contraction_ml)``: the first two as ``(low, best, high)``; the third is by how much the sum
        of the two shrinks on mixing.

    Raises:
        FoilworkError: A target above the stock, a zero volume, or no density.

    Source:
        Conservation of mass and of peroxide; ``density_bounds``.

    >>> from foilwork.peroxide import dilute_volume
    >>> stock, water, contraction = dilute_volume(35, 3, 1000)
    >>> round(stock[1], 1), round(water[1], 1), round(contraction, 1)
    (76.4, 924.0, 0.5)
    """

def mix_volumes(
    strengths_ww: ArrayLike, volumes_ml: ArrayLike, *, temperature_c: float = 20.0
) -> tuple[float, float, float, float]:
    """Strength and volume of clear solutions that are measured by volume and poured together.

    Args:
        strengths_ww: Strength of each part in % w/w.
        volumes_ml: Volume of each part in mL.
        temperature_c: Temperature in C.

    Returns:
        ``(strength_ww, total_g, poured_ml, volume_ml)``: the sum of the volumes, and what it shrinks to.

    Raises:
        FoilworkError: No volume at all, no density, or not one volume for each strength.

    Source:
        Conservation of mass and of peroxide; ``density``.

    >>> from foilwork.peroxide import mix_volumes
    >>> [round(x, 1) for x in mix_volumes([50, 0], [100, 100])]
    [27.2, 219.3, 200.0, 199.4]
    """
