from typing import overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

from foilwork import _words
from foilwork._native import _Errors

__all__ = [
    "half_life_days",
    "loss_rate",
    "loss_rate_from_half_life",
    "strength_after",
    "time_until",
]

@overload
def strength_after(fresh: float, unit: _words._StrengthUnit, rate_per_day: float, days: float, *, errors: _Errors = "raise", out: None = None, where: None = None) -> float:
    """The strength after storage, by first-order loss at a rate that you measured.

    There is no default rate: it depends on the stabiliser, the bottle, light and warmth, and holds only for the storage it
    was measured in. ``loss_rate`` gets it from two assays.

    Args:
        fresh: strength at the start in ``unit``, a number or an array.
        unit: one of ``strength_units()``. By mass, the oxygen that leaves the bottle is allowed for; by volume, the volume
            is taken as unchanged.
        rate_per_day: loss rate per day, a number or an array.
        days: time in days, a number or an array.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
        out: an array of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        Strength in ``unit``: a float for numbers, else a float64 array.

    Raises:
        FoilworkError: a value out of range.

    Source:
        First-order decay; 2 H2O2 -> 2 H2O + O2.

    Examples:
        >>> from foilwork.peroxide import loss_rate_from_half_life, strength_after
        >>> round(strength_after(1.0, "mol/L", loss_rate_from_half_life(0.25), 0.75), 3)
        0.125
    """
@overload
def strength_after(
    fresh: ArrayLike, unit: _words._StrengthUnit, rate_per_day: ArrayLike, days: ArrayLike, *, errors: _Errors = "raise", out: NDArray[float64] | None = None, where: ArrayLike | None = None
) -> NDArray[float64]: ...

@overload
def loss_rate(first: float, later: float, unit: _words._StrengthUnit, days: float, *, errors: _Errors = "raise", out: None = None, where: None = None) -> float:
    """The rate of loss between two assays of one bottle.

    Args:
        first: first strength in ``unit``, a number or an array.
        later: later strength in the same unit, a number or an array.
        unit: one of ``strength_units()``.
        days: time between them in days, a number or an array.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
        out: an array of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        Loss rate per day: a float for numbers, else a float64 array.

    Raises:
        FoilworkError: a strength that rose, a zero, or a value out of range.

    Source:
        First-order decay.

    Examples:
        >>> from foilwork.peroxide import loss_rate
        >>> round(loss_rate(6.0, 5.7, "% w/w", 90), 6)
        0.000586
    """
@overload
def loss_rate(
    first: ArrayLike, later: ArrayLike, unit: _words._StrengthUnit, days: ArrayLike, *, errors: _Errors = "raise", out: NDArray[float64] | None = None, where: ArrayLike | None = None
) -> NDArray[float64]: ...

@overload
def time_until(fresh: float, wanted: float, unit: _words._StrengthUnit, rate_per_day: float, *, errors: _Errors = "raise", out: None = None, where: None = None) -> float:
    """How long until a bottle has fallen to a strength, in days.

    Args:
        fresh: strength now in ``unit``, a number or an array.
        wanted: strength to wait for in the same unit, a number or an array.
        unit: one of ``strength_units()``.
        rate_per_day: loss rate per day, a number or an array.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
        out: an array of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        Days: a float for numbers, else a float64 array.

    Raises:
        FoilworkError: a bottle that is below already, a zero rate, or a value out of range.

    Source:
        First-order decay.

    Examples:
        >>> from foilwork.peroxide import time_until
        >>> round(time_until(1.0, 0.2, "mol/L", 0.1), 2)
        16.09
    """
@overload
def time_until(
    fresh: ArrayLike, wanted: ArrayLike, unit: _words._StrengthUnit, rate_per_day: ArrayLike, *, errors: _Errors = "raise", out: NDArray[float64] | None = None, where: ArrayLike | None = None
) -> NDArray[float64]: ...

@overload
def loss_rate_from_half_life(half_life_days: float, *, errors: _Errors = "raise", out: None = None, where: None = None) -> float:
    """The loss rate of a half-life.

    Args:
        half_life_days: time in which half is lost, in days, above 0, a number or an array.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
        out: an array of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        Loss rate per day: a float for a number, else a float64 array.

    Raises:
        FoilworkError: a half-life out of range.

    Examples:
        >>> from foilwork.peroxide import loss_rate_from_half_life
        >>> round(loss_rate_from_half_life(0.25) / 86_400, 7)
        3.21e-05
    """
@overload
def loss_rate_from_half_life(half_life_days: ArrayLike, *, errors: _Errors = "raise", out: NDArray[float64] | None = None, where: ArrayLike | None = None) -> NDArray[float64]: ...

@overload
def half_life_days(rate_per_day: float, *, errors: _Errors = "raise", out: None = None, where: None = None) -> float:
    """The half-life of a loss rate.

    Args:
        rate_per_day: loss rate per day, above 0, a number or an array.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
        out: an array of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        Time in which half is lost, in days: a float for a number, else a float64 array.

    Raises:
        FoilworkError: a rate out of range.

    Examples:
        >>> from foilwork.peroxide import half_life_days
        >>> round(half_life_days(0.1), 2)
        6.93
    """
@overload
def half_life_days(rate_per_day: ArrayLike, *, errors: _Errors = "raise", out: NDArray[float64] | None = None, where: ArrayLike | None = None) -> NDArray[float64]: ...
