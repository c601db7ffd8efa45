from typing import overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

from foilwork import _words
from foilwork._native import Bounds, _Errors, _Percent

__all__ = [
    "grown",
    "growth",
    "warm_band",
    "weeks_to_grow",
]

@overload
def grown(  # type: ignore[overload-overlap]
    weeks: _Percent, rate_cm_per_month: _Percent | None = None, *, errors: _Errors = "raise", out: None = None, where: None = None
) -> Bounds[float]:
    """The regrowth after some weeks, in cm.

    Args:
        weeks: how many weeks, or their bounds, or an array.
        rate_cm_per_month: how fast it grows, with bounds or as an array likewise; without it as people do.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
        out: a tuple of three arrays of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        ``Bounds`` in cm: floats, or float64 arrays where an array came in.

    Raises:
        FoilworkError: a value out of range.

    Examples:
        >>> from foilwork.hair import grown
        >>> round(grown(8, 1.12).best, 2)
        2.06
    """
@overload
def grown(
    weeks: ArrayLike | Bounds[float], rate_cm_per_month: ArrayLike | Bounds[float] | None = None, *, errors: _Errors = "raise", out: tuple[NDArray[float64], NDArray[float64], NDArray[float64]] | None = None, where: ArrayLike | None = None
) -> Bounds[NDArray[float64]]: ...
def growth(group: _words._Group | None = None) -> Bounds[float]:
    """How fast scalp hair grows, in cm a month of 30.44 days.

    Args:
        group: a group whose mean is published: ``"african"``, ``"asian"`` or ``"european"``; without it the bounds of all.

    Returns:
        ``Bounds``, which hold 80 of 100 people.

    Raises:
        FoilworkError: another word.

    Source:
        ``"growth-by-group"``, ``"growth-review"``.

    Examples:
        >>> from foilwork.hair import growth
        >>> round(growth("european").best, 2)
        1.12
    """
def warm_band() -> Bounds[float]:
    """How far from the scalp its warmth speeds up a mixture, in cm.

    Returns:
        ``Bounds``, assumed: training texts name the warm band and no length was found.

    Examples:
        >>> from foilwork.hair import warm_band
        >>> warm_band()
        Bounds(low=0.5, best=1.0, high=1.5)
    """
@overload
def weeks_to_grow(  # type: ignore[overload-overlap]
    length_cm: _Percent, rate_cm_per_month: _Percent | None = None, *, errors: _Errors = "raise", out: None = None, where: None = None
) -> Bounds[float]:
    """The weeks after which so much has grown.

    Args:
        length_cm: the regrowth, or its bounds, or an array.
        rate_cm_per_month: how fast it grows, with bounds or as an array likewise; without it as people do.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
        out: a tuple of three arrays of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        ``Bounds`` in weeks: floats, or float64 arrays where an array came in.

    Raises:
        FoilworkError: a value out of range.

    Examples:
        >>> from foilwork.hair import weeks_to_grow
        >>> round(weeks_to_grow(2, 1.12).best, 1)
        7.8
    """
@overload
def weeks_to_grow(
    length_cm: ArrayLike | Bounds[float], rate_cm_per_month: ArrayLike | Bounds[float] | None = None, *, errors: _Errors = "raise", out: tuple[NDArray[float64], NDArray[float64], NDArray[float64]] | None = None, where: ArrayLike | None = None
) -> Bounds[NDArray[float64]]: ...
