from collections.abc import Iterable
from typing import Generic, final, overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

from foilwork._native import _S, Bounds, _Answer, _Errors, _Percent, _Tuple

__all__ = [
    "Dilution",
    "DilutionRow",
    "Mixture",
    "RoundedBlend",
    "TwoPartBlend",
    "blend_two",
    "dilute",
    "dilution_table",
    "mix_strengths",
    "round_to_scale",
]

@final
class Dilution(_Tuple[_S], Generic[_S]):
    """Stock and diluent of one strength; made by ``dilute``. Floats for numbers, else float64 arrays; it unpacks."""

    __match_args__ = ("stock_g", "diluent_g")
    @property
    def stock_g(self) -> _S:
        """Stock to take, in g."""
    @property
    def diluent_g(self) -> _S:
        """Diluent to add, in g."""

@final
class TwoPartBlend(_Tuple[_S], Generic[_S]):
    """Two parts of one strength; made by ``blend_two``. Floats for numbers, else float64 arrays; it unpacks."""

    __match_args__ = ("first_g", "second_g")
    @property
    def first_g(self) -> _S:
        """The first part, in g."""
    @property
    def second_g(self) -> _S:
        """The second part, in g."""

@overload
def dilute(
    stock_ww_percent: float,
    target_ww_percent: float,
    total_g: float | None = None,
    *,
    stock_g: float | None = None,
    diluent_g: float | None = None,
    errors: _Errors = "raise", out: None = None, where: None = None
) -> Dilution[float]:
    """Split an amount into stock and diluent, by mass.

    Give exactly one of ``total_g``, ``stock_g`` and ``diluent_g``; the rest is worked out. Weigh it: by volume it would be
    wrong by the density.

    Args:
        stock_ww_percent: strength of the bottle in % w/w, a number or an array.
        target_ww_percent: strength wanted in % w/w, a number or an array.
        total_g: how much is wanted altogether, in g, a number or an array.
        stock_g: or how much stock there is, in g.
        diluent_g: or how much diluent there is, in g.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
        out: a tuple of two arrays of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        Stock and diluent: floats for numbers, else float64 arrays. Nothing is rounded.

    Raises:
        FoilworkError: a target above the stock, a zero amount, or not exactly one amount.

    Source:
        Conservation of mass and of peroxide.

    Examples:
        >>> from foilwork.peroxide import dilute
        >>> dilute(12, 3, 60)
        Dilution(stock_g=15.0, diluent_g=45.0)
        >>> stock_g, diluent_g = dilute(12, 3, stock_g=40)
        >>> diluent_g
        120.0
    """
@overload
def dilute(
    stock_ww_percent: ArrayLike,
    target_ww_percent: ArrayLike,
    total_g: ArrayLike | None = None,
    *,
    stock_g: ArrayLike | None = None,
    diluent_g: ArrayLike | None = None,
    errors: _Errors = "raise", out: tuple[NDArray[float64], NDArray[float64]] | None = None, where: ArrayLike | None = None
) -> Dilution[NDArray[float64]]: ...

@overload
def blend_two(
    first_ww_percent: float,
    second_ww_percent: float,
    target_ww_percent: float,
    total_g: float | None = None,
    *,
    first_g: float | None = None,
    second_g: float | None = None,
    errors: _Errors = "raise", out: None = None, where: None = None
) -> TwoPartBlend[float]:
    """Blend two strengths to a third (alligation), by mass.

    Give exactly one of ``total_g``, ``first_g`` and ``second_g``; the rest is worked out. The order of the two does not
    matter.

    Args:
        first_ww_percent: strength of the first part in % w/w, a number or an array.
        second_ww_percent: strength of the second part in % w/w, a number or an array.
        target_ww_percent: strength wanted in % w/w, a number or an array.
        total_g: how much is wanted altogether, in g, a number or an array.
        first_g: or how much of the first part there is, in g.
        second_g: or how much of the second part there is, in g.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
        out: a tuple of two arrays of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        The two parts: floats for numbers, else float64 arrays. Nothing is rounded.

    Raises:
        FoilworkError: a target outside the two strengths, a zero amount, or not exactly one amount.

    Source:
        Conservation of mass and of peroxide.

    Examples:
        >>> from foilwork.peroxide import blend_two
        >>> blend_two(6, 12, 9, 80)
        TwoPartBlend(first_g=40.0, second_g=40.0)
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
    errors: _Errors = "raise", out: tuple[NDArray[float64], NDArray[float64]] | None = None, where: ArrayLike | None = None
) -> TwoPartBlend[NDArray[float64]]: ...

@final
class Mixture(_Answer):
    """Strength and mass of parts stirred together; made by ``mix_strengths``."""

    __match_args__ = ("strength_ww_percent", "total_g")
    @property
    def strength_ww_percent(self) -> Bounds[float]:
        """The strength of the whole in % w/w, with its bounds."""
    @property
    def total_g(self) -> float:
        """The mass of the whole in g."""

def mix_strengths(strengths_ww_percent: Iterable[_Percent], masses_g: ArrayLike) -> Mixture:
    """Strength and mass of weighed parts stirred together.

    Args:
        strengths_ww_percent: strength of each part in % w/w, a number or ``Bounds``.
        masses_g: mass of each part in g.

    Returns:
        The mixture; its strength has the bounds that the parts bring.

    Raises:
        FoilworkError: no mass at all, or not one mass for each strength.

    Source:
        Conservation of mass and of peroxide.

    Examples:
        >>> from foilwork.peroxide import mix_strengths
        >>> mixed = mix_strengths([12, (5.88, 6, 6.02)], [30, 30])
        >>> mixed.strength_ww_percent.best, mixed.total_g
        (9.0, 60.0)
    """

@final
class RoundedBlend(_Answer):
    """A blend as a scale shows it; made by ``round_to_scale``."""

    __match_args__ = ("masses_g", "total_g", "strength_ww_percent")
    @property
    def masses_g(self) -> list[float]:
        """The parts in g, in the order given, each a whole number of divisions."""
    @property
    def total_g(self) -> float:
        """Their sum in g."""
    @property
    def strength_ww_percent(self) -> Bounds[float]:
        """The strength in % w/w that these masses really give, with its bounds."""

def round_to_scale(
    strengths_ww_percent: Iterable[_Percent], masses_g: ArrayLike, division_g: float
) -> RoundedBlend:
    """Round the parts of a blend to the divisions of a scale, and say what strength that really is.

    The masses add up to the rounded total, with the least harm to the ratio of the parts.

    Args:
        strengths_ww_percent: strength of each part in % w/w, a number or ``Bounds``.
        masses_g: mass of each part in g.
        division_g: what the last figure of the scale counts, in g.

    Returns:
        The masses to weigh, their sum, and their true strength.

    Raises:
        FoilworkError: a division of zero or coarser than the blend, or not one mass for each strength.

    Source:
        Conservation of mass and of peroxide.

    Examples:
        >>> from foilwork.peroxide import round_to_scale
        >>> weighed = round_to_scale([9, 0], [22.22, 27.78], 1)
        >>> weighed.masses_g, weighed.strength_ww_percent.best
        ([22.0, 28.0], 3.96)
    """

@final
class DilutionRow(_Answer):
    """One stock diluted to one target; a row of ``dilution_table``."""

    __match_args__ = ("stock_ww_percent", "target_ww_percent", "stock_g", "diluent_g", "strength_ww_percent", "parts", "diluent_parts", "refused")
    @property
    def stock_ww_percent(self) -> float:
        """Strength of the bottle in % w/w."""
    @property
    def target_ww_percent(self) -> float:
        """Strength wanted in % w/w."""
    @property
    def stock_g(self) -> float | None:
        """Stock on the scale in g; None when the target cannot be had."""
    @property
    def diluent_g(self) -> float | None:
        """Diluent on the scale in g; None when the target cannot be had."""
    @property
    def strength_ww_percent(self) -> float | None:
        """What the rounded masses really give, in % w/w; None when the target cannot be had."""
    @property
    def parts(self) -> tuple[int, int] | None:
        """Whole parts of stock and of diluent to mix; None where no small numbers do."""
    @property
    def diluent_parts(self) -> float | None:
        """Parts of diluent to one part of stock, before rounding; None when it is all diluent."""
    @property
    def refused(self) -> str | None:
        """Why the target cannot be had."""

def dilution_table(
    stocks_ww_percent: ArrayLike, targets_ww_percent: ArrayLike, total_g: float, division_g: float
) -> list[DilutionRow]:
    """Build a dilution table, one row for each stock and target: the rows of a wall chart.

    Args:
        stocks_ww_percent: strengths of the bottles in % w/w.
        targets_ww_percent: strengths wanted in % w/w.
        total_g: total of every row in g.
        division_g: what the last figure of the scale counts, in g.

    Returns:
        The rows, a target above its stock as one that says so. The ``to_dict()`` of each are what a data frame is made
        from.

    Raises:
        FoilworkError: a strength out of range, or a division of zero or coarser than the total.

    Source:
        Conservation of mass and of peroxide.

    Examples:
        >>> from foilwork.peroxide import dilution_table
        >>> row = dilution_table([9], [3, 12], 100, 1)[0]
        >>> row.stock_g, row.diluent_g, row.strength_ww_percent, row.parts
        (33.0, 67.0, 2.97, (1, 2))
    """
