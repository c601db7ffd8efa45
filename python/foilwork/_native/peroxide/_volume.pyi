from collections.abc import Iterable
from typing import Generic, final, overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

from foilwork import _words
from foilwork._native import _S, Bounds, _Answer, _Errors, _Percent, _Tuple

__all__ = [
    "MakeUp",
    "PouredMixture",
    "VolumeDilution",
    "dilute_volume",
    "make_up",
    "mix_volumes",
    "strength_after_make_up",
]

@final
class MakeUp(_Tuple[_S], Generic[_S]):
    """What to take and where to fill up to; made by ``make_up``. Floats for numbers, else float64 arrays; it unpacks."""

    __match_args__ = ("stock_ml", "total_ml")
    @property
    def stock_ml(self) -> _S:
        """Stock to take, in mL."""
    @property
    def total_ml(self) -> _S:
        """The mark to add diluent up to, in mL."""

@overload
def make_up(
    stock: float,
    target: float,
    unit: _words._StrengthUnit,
    total_ml: float | None = None,
    *,
    stock_ml: float | None = None,
    errors: _Errors = "raise", out: None = None, where: None = None
) -> MakeUp[float]:
    """Make a solution up to the mark: ``c1 V1 = c2 V2``, exact whatever the contraction.

    Give exactly one of ``total_ml`` and ``stock_ml``.

    Args:
        stock: strength of the stock in ``unit``, a number or an array.
        target: strength wanted in the same unit, a number or an array.
        unit: one that counts by volume: ``"% w/v"``, ``"g/L"``, ``"mol/L"``, ``"N"`` or ``"volumes"``.
        total_ml: volume wanted in mL, a number or an array.
        stock_ml: or the volume of stock there is, in mL.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
        out: a tuple of two arrays of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        The stock to take and the mark to add diluent up to: floats for numbers, else float64 arrays.

    Raises:
        FoilworkError: a target above the stock, something zero, a unit by mass, or not exactly one volume.

    Source:
        Conservation of the solute.

    Examples:
        >>> from foilwork.peroxide import make_up
        >>> make_up(100, 20, "volumes", 500)
        MakeUp(stock_ml=100.0, total_ml=500.0)
    """
@overload
def make_up(
    stock: ArrayLike,
    target: ArrayLike,
    unit: _words._StrengthUnit,
    total_ml: ArrayLike | None = None,
    *,
    stock_ml: ArrayLike | None = None,
    errors: _Errors = "raise", out: tuple[NDArray[float64], NDArray[float64]] | None = None, where: ArrayLike | None = None
) -> MakeUp[NDArray[float64]]: ...

@overload
def strength_after_make_up(stock: float, unit: _words._StrengthUnit, taken_ml: float, total_ml: float, *, errors: _Errors = "raise", out: None = None, where: None = None) -> float:
    """The strength after a volume of stock is made up to the mark.

    Args:
        stock: strength of the stock in ``unit``, a number or an array.
        unit: one that counts by volume: ``"% w/v"``, ``"g/L"``, ``"mol/L"``, ``"N"`` or ``"volumes"``.
        taken_ml: volume of stock in mL, a number or an array.
        total_ml: the mark in mL, a number or an array.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
        out: an array of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        Strength in ``unit``: a float for numbers, else a float64 array.

    Raises:
        FoilworkError: a mark of zero or below the volume of stock, or a unit by mass.

    Source:
        Conservation of the solute.

    Examples:
        >>> from foilwork.peroxide import strength_after_make_up
        >>> strength_after_make_up(3, "% w/v", 417, 10_000)
        0.1251
    """
@overload
def strength_after_make_up(
    stock: ArrayLike, unit: _words._StrengthUnit, taken_ml: ArrayLike, total_ml: ArrayLike, *, errors: _Errors = "raise", out: NDArray[float64] | None = None, where: ArrayLike | None = None
) -> NDArray[float64]: ...

@final
class VolumeDilution(_Answer, Generic[_S]):
    """A clear solution diluted with water by measuring cylinder; made by ``dilute_volume``. Floats for numbers, else float64
    arrays.
    """

    __match_args__ = ("stock_ml", "water_ml", "total_ml", "contraction_ml")
    @property
    def stock_ml(self) -> Bounds[_S]:
        """Stock to measure, in mL."""
    @property
    def water_ml(self) -> Bounds[_S]:
        """Water to measure, in mL."""
    @property
    def total_ml(self) -> _S:
        """What the two come to once mixed, in mL: the volume asked for."""
    @property
    def contraction_ml(self) -> Bounds[_S]:
        """How much the sum of the two shrinks on mixing, in mL."""

@overload
def dilute_volume(
    stock_ww_percent: float, target_ww_percent: float, total_ml: float, *, temperature_c: float = 20.0, errors: _Errors = "raise", out: None = None, where: None = None
) -> VolumeDilution[float]:
    """Split a volume into volumes of stock and water, with the contraction allowed for.

    Clear solutions only, all at one temperature. Weighing (``dilute``) is exact; this is as good as the densities.

    Args:
        stock_ww_percent: strength of the stock in % w/w, a number or an array.
        target_ww_percent: strength wanted in % w/w, a number or an array.
        total_ml: volume wanted in mL, a number or an array.
        temperature_c: temperature in C, a number or an array.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
        out: a tuple of nine arrays of float64 for the results: stock, water and contraction, each the lower bound, the best
            estimate and the upper bound; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        What to measure, with the bounds of the densities.

    Raises:
        FoilworkError: a target above the stock, a zero volume, or no density.

    Source:
        Conservation of mass and of peroxide; ``density_interval``.

    Examples:
        >>> from foilwork.peroxide import dilute_volume
        >>> made = dilute_volume(35, 3, 1000)
        >>> round(made.stock_ml.best, 1), round(made.water_ml.best, 1), round(made.contraction_ml.best, 1)
        (76.4, 924.0, 0.5)
        >>> dilute_volume(35, [3, 6], 1000).stock_ml.best.round(1).tolist()
        [76.4, 154.5]
    """
@overload
def dilute_volume(
    stock_ww_percent: ArrayLike, target_ww_percent: ArrayLike, total_ml: ArrayLike, *, temperature_c: ArrayLike = 20.0, errors: _Errors = "raise", out: tuple[NDArray[float64], ...] | None = None, where: ArrayLike | None = None
) -> VolumeDilution[NDArray[float64]]: ...

@final
class PouredMixture(_Answer):
    """What comes of pouring measured volumes together; made by ``mix_volumes``."""

    __match_args__ = ("strength_ww_percent", "total_g", "poured_ml", "volume_ml")
    @property
    def strength_ww_percent(self) -> Bounds[float]:
        """The strength of the whole in % w/w."""
    @property
    def total_g(self) -> Bounds[float]:
        """The mass of the whole in g."""
    @property
    def poured_ml(self) -> float:
        """The volumes added up, in mL."""
    @property
    def volume_ml(self) -> Bounds[float]:
        """The volume of the mixture in mL: a little less."""

def mix_volumes(
    strengths_ww_percent: Iterable[_Percent], volumes_ml: ArrayLike, *, temperature_c: float = 20.0
) -> PouredMixture:
    """Strength and volume of clear solutions that are measured by volume and poured together.

    Args:
        strengths_ww_percent: strength of each part in % w/w, a number or ``Bounds``.
        volumes_ml: volume of each part in mL.
        temperature_c: temperature in C.

    Returns:
        The mixture, with the bounds of the densities and of the strengths.

    Raises:
        FoilworkError: no volume at all, no density, or not one volume for each strength.

    Source:
        Conservation of mass and of peroxide; ``density_interval``.

    Examples:
        >>> from foilwork.peroxide import mix_volumes
        >>> mixed = mix_volumes([50, 0], [100, 100])
        >>> round(mixed.strength_ww_percent.best, 1), mixed.poured_ml, round(mixed.volume_ml.best, 1)
        (27.2, 200.0, 199.4)
    """
