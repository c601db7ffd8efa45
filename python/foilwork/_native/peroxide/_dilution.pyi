from typing import Any, overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

from foilwork._native import _Errors

__all__ = [
    "blend_two",
    "dilute",
    "dilution_table",
    "mix_strengths",
    "round_to_scale",
]

@overload
def dilute(
    stock_ww: float,
    target_ww: float,
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
        stock_ww: Strength of the bottle in % w/w, a number or an array.
        target_ww: Strength wanted in % w/w, a number or an array.
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
    stock_ww: ArrayLike,
    target_ww: ArrayLike,
    total_g: ArrayLike | None = None,
    *,
    stock_g: ArrayLike | None = None,
    diluent_g: ArrayLike | None = None,
    errors: _Errors = "raise",
) -> tuple[NDArray[float64], NDArray[float64]]: ...

@overload
def blend_two(
    first_ww: float,
    second_ww: float,
    target_ww: float,
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
        first_ww: Strength of the first part in % w/w, a number or an array.
        second_ww: Strength of the second part in % w/w, a number or an array.
        target_ww: Strength wanted in % w/w, a number or an array.
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
    first_ww: ArrayLike,
    second_ww: ArrayLike,
    target_ww: ArrayLike,
    total_g: ArrayLike | None = None,
    *,
    first_g: ArrayLike | None = None,
    second_g: ArrayLike | None = None,
    errors: _Errors = "raise",
) -> tuple[NDArray[float64], NDArray[float64]]: ...

def mix_strengths(strengths_ww: ArrayLike, masses_g: ArrayLike) -> tuple[float, float]:
    """Strength and mass of weighed parts stirred together.

    Args:
        strengths_ww: Strength of each part in % w/w.
        masses_g: Mass of each part in g.

    Returns:
        ``(strength_ww, total_g)``.

    Raises:
        FoilworkError: No mass at all, or not one mass for each strength.

    Source:
        Conservation of mass and of peroxide.

    >>> from foilwork.peroxide import mix_strengths
    >>> mix_strengths([12, 6], [30, 30])
    (9.0, 60.0)
    """

def round_to_scale(strengths_ww: ArrayLike, masses_g: ArrayLike, division_g: float) -> tuple[list[float], float, float]:
    """Round the parts of a blend to the divisions of a scale, and say what strength that really is.

    The total is rounded to the nearest division and the parts share it; no part moves by a whole division.

    Args:
        strengths_ww: Strength of each part in % w/w.
        masses_g: Mass of each part in g.
        division_g: What the last figure of the scale counts, in g.

    Returns:
        ``(masses_g, total_g, strength_ww)``: the masses to weigh, their sum, and their true strength.

    Raises:
        FoilworkError: A division of zero or coarser than the blend, or not one mass for each strength.

    Source:
        Conservation of mass and of peroxide.

    >>> from foilwork.peroxide import round_to_scale
    >>> round_to_scale([9, 0], [22.22, 27.78], 1)
    ([22.0, 28.0], 50.0, 3.96)
    """

def dilution_table(
    stocks_ww: ArrayLike, targets_ww: ArrayLike, total_g: float, division_g: float
) -> list[dict[str, Any]]:
    """Build a dilution table, one row for each stock and target: the rows of a wall chart.

    Args:
        stocks_ww: Strengths of the bottles in % w/w.
        targets_ww: Strengths wanted in % w/w.
        total_g: Total of every row in g.
        division_g: What the last figure of the scale counts, in g.

    Returns:
        A list of dictionaries with ``stock_ww``, ``target_ww``, ``stock_g``, ``diluent_g``, ``true_strength_ww`` (what the
        rounded masses give), ``diluent_parts`` (parts to one part of stock) and ``refused``: why a target cannot be had,
        with None in the masses. A list of such rows is what a data frame is made from.

    Raises:
        FoilworkError: A strength out of range, or a division of zero or coarser than the total.

    Source:
        Conservation of mass and of peroxide.

    >>> from foilwork.peroxide import dilution_table
    >>> row = dilution_table([9], [3, 12], 100, 1)[0]
    >>> row["stock_g"], row["diluent_g"], row["true_strength_ww"], row["diluent_parts"]
    (33.0, 67.0, 2.97, 2.0)
    """
