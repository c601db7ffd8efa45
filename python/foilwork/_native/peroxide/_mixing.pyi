from typing import overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

from foilwork._native import _Errors

__all__ = [
    "mix_two",
]

@overload
def mix_two(first_ww_percent: float, first_g: float, second_ww_percent: float, second_g: float, *, errors: _Errors = "raise", out: None = None, where: None = None) -> float:
    """Strength of two parts stirred together, by mass: a product and its developer, say.

    Args:
        first_ww_percent: strength of the first part in % w/w, a number or an array; 0 for what has no peroxide.
        first_g: its mass in g, a number or an array.
        second_ww_percent: strength of the second part in % w/w, a number or an array.
        second_g: its mass in g, a number or an array.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
        out: an array of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        Strength in % w/w: a float for numbers, else a float64 array. ``mix_strengths`` takes more parts, and bounds.

    Raises:
        FoilworkError: no mass at all, or a value out of range.

    Source:
        Conservation of mass and of peroxide.

    Examples:
        >>> from foilwork.peroxide import mix_two
        >>> mix_two(0, 30, [6, 9], 60).tolist()
        [4.0, 6.0]
    """
@overload
def mix_two(
    first_ww_percent: ArrayLike, first_g: ArrayLike, second_ww_percent: ArrayLike, second_g: ArrayLike, *, errors: _Errors = "raise", out: NDArray[float64] | None = None, where: ArrayLike | None = None
) -> NDArray[float64]: ...
