from typing import final, overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

from foilwork import _words
from foilwork._native import Bounds, _Answer, _Errors

__all__ = [
    "LabelReadings",
    "convert",
    "convert_interval",
    "density",
    "density_interval",
    "molar_volumes",
    "read_label",
    "strength_units",
    "strength_ww_percent",
]

@overload
def convert(
    value: float,
    from_unit: _words._StrengthUnit,
    to_unit: _words._StrengthUnit,
    *,
    temperature_c: float = 20.0,
    molar_volume: _words._MolarVolume = "ideal-1atm",
    density_g_per_ml: float | None = None,
    errors: _Errors = "raise", out: None = None, where: None = None
) -> float:
    """Convert a strength of hydrogen peroxide from one unit to another.

    The best value only: where a density stands between the units, ``convert_interval`` also gives the bounds it brings. A
    trade label is no strength and has no unit here; see ``read_label``.

    Args:
        value: strength in ``from_unit``, a number or an array.
        from_unit: one of ``strength_units()``: ``"% w/w"``, ``"% w/v"``, ``"g/L"``, ``"mol/L"``, ``"mol/kg"`` (per
            kilogram of water), ``"N"`` (two equivalents per mole), ``"% active oxygen"``, ``"volumes"`` (of oxygen).
        to_unit: another of them.
        temperature_c: temperature of the solution in C, a number or an array that broadcasts with ``value``.
        molar_volume: how oxygen is counted for ``"volumes"``, one of ``molar_volumes()``: an ideal gas at 0 C and 1 atm
            unless you say otherwise.
        density_g_per_ml: density of the product in g/mL if you measured it; otherwise that of a clear solution.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
        out: an array of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        Strength in ``to_unit``: a float for numbers, else a float64 array of the broadcast shape. NaN stays NaN.

    Raises:
        FoilworkError: a strength out of range, an unknown unit, or no density (known from 0 to 70 % w/w and 0 to 50 C).

    Source:
        ``volumes = c Vm / 2`` with CODATA constants; density of aqueous peroxide checked against handbook tables.

    Examples:
        >>> from foilwork.peroxide import convert
        >>> round(convert(12, "% w/w", "volumes"), 1)
        41.2
        >>> convert([3, 6], "% w/v", "g/L").tolist()
        [30.0, 60.0]
    """
@overload
def convert(
    value: ArrayLike,
    from_unit: _words._StrengthUnit,
    to_unit: _words._StrengthUnit,
    *,
    temperature_c: ArrayLike = 20.0,
    molar_volume: _words._MolarVolume = "ideal-1atm",
    density_g_per_ml: float | None = None,
    errors: _Errors = "raise", out: NDArray[float64] | None = None, where: ArrayLike | None = None
) -> NDArray[float64]: ...

@overload
def convert_interval(
    value: float,
    from_unit: _words._StrengthUnit,
    to_unit: _words._StrengthUnit,
    *,
    temperature_c: float = 20.0,
    molar_volume: _words._MolarVolume = "ideal-1atm",
    density_g_per_ml: float | None = None,
    medium: _words._SolutionKind = "aqueous",
    errors: _Errors = "raise", out: None = None, where: None = None
) -> Bounds[float]:
    """Convert a strength of hydrogen peroxide, with the bounds that the density brings.

    Args:
        value: strength in ``from_unit``, a number or an array.
        from_unit: one of ``strength_units()``.
        to_unit: another of them.
        temperature_c: temperature of the solution in C, a number or an array that broadcasts with ``value``.
        molar_volume: one of ``molar_volumes()``.
        density_g_per_ml: density of the product in g/mL if you measured it; taken as exact.
        medium: ``"aqueous"`` for a clear solution, ``"emulsion"`` for a cream of unknown density: assumed to lie from 8 %
            below to 2 % above that of the clear solution.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
        out: a tuple of three arrays of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        ``Bounds`` in ``to_unit``: floats for numbers, else float64 arrays. All three are the same where no
        density stands between the units.

    Raises:
        FoilworkError: as for ``convert``.

    Source:
        As for ``convert``; the bounds cover the differences between independent density tables.

    Examples:
        >>> from foilwork.peroxide import convert_interval
        >>> [round(x, 1) for x in convert_interval(6, "% w/w", "volumes", medium="emulsion")]
        [18.5, 20.2, 20.6]
    """
@overload
def convert_interval(
    value: ArrayLike,
    from_unit: _words._StrengthUnit,
    to_unit: _words._StrengthUnit,
    *,
    temperature_c: ArrayLike = 20.0,
    molar_volume: _words._MolarVolume = "ideal-1atm",
    density_g_per_ml: float | None = None,
    medium: _words._SolutionKind = "aqueous",
    errors: _Errors = "raise", out: tuple[NDArray[float64], NDArray[float64], NDArray[float64]] | None = None, where: ArrayLike | None = None
) -> Bounds[NDArray[float64]]: ...

@overload
def density(strength_ww_percent: float, temperature_c: float = 20.0, *, errors: _Errors = "raise", out: None = None, where: None = None) -> float:
    """Density of aqueous hydrogen peroxide.

    Args:
        strength_ww_percent: strength in % w/w, from 0 to 70, a number or an array.
        temperature_c: temperature in C, from 0 to 50, a number or an array that broadcasts with it.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
        out: an array of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        Density in g/mL: a float for numbers, else a float64 array. Good to 0.0005 g/mL up to 50 % w/w, then less:
        ``density_interval`` says how much.

    Raises:
        FoilworkError: a strength or temperature out of range.

    Source:
        Kell (1975) for water; coefficients of unnamed origin for the increment, checked against handbook tables.

    Examples:
        >>> from foilwork.peroxide import density
        >>> round(density(12), 4)
        1.0415
    """
@overload
def density(
    strength_ww_percent: ArrayLike, temperature_c: ArrayLike = 20.0, *, errors: _Errors = "raise", out: NDArray[float64] | None = None, where: ArrayLike | None = None
) -> NDArray[float64]: ...

@overload
def density_interval(
    strength_ww_percent: float, temperature_c: float = 20.0, *, errors: _Errors = "raise", out: None = None, where: None = None
) -> Bounds[float]:
    """Density of aqueous hydrogen peroxide, with the bounds within which independent tables agree.

    Args:
        strength_ww_percent: strength in % w/w, from 0 to 70, a number or an array.
        temperature_c: temperature in C, from 0 to 50, a number or an array that broadcasts with it.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
        out: a tuple of three arrays of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        ``Bounds`` in g/mL: floats for numbers, else float64 arrays.

    Raises:
        FoilworkError: a strength or temperature out of range.

    Source:
        As for ``density``.

    Examples:
        >>> from foilwork.peroxide import density_interval
        >>> [round(x, 4) for x in density_interval(12)]
        [1.041, 1.0415, 1.042]
    """
@overload
def density_interval(
    strength_ww_percent: ArrayLike, temperature_c: ArrayLike = 20.0, *, errors: _Errors = "raise", out: tuple[NDArray[float64], NDArray[float64], NDArray[float64]] | None = None, where: ArrayLike | None = None
) -> Bounds[NDArray[float64]]: ...

@final
class LabelReadings(_Answer):
    """What a trade label can mean; made by ``read_label``."""

    __match_args__ = ("vol", "as_ww_ww_percent", "as_wv_ww_percent", "as_volumes_ww_percent", "volumes_if_ww", "volumes_if_wv", "spread_ww_percent")
    @property
    def vol(self) -> float:
        """Number on the label."""
    @property
    def as_ww_ww_percent(self) -> float:
        """Percent that the trade pairs with it, read as % w/w."""
    @property
    def as_wv_ww_percent(self) -> Bounds[float]:
        """The percent read as % w/v, in % w/w."""
    @property
    def as_volumes_ww_percent(self) -> Bounds[float]:
        """The number read as true oxygen volumes, in % w/w."""
    @property
    def volumes_if_ww(self) -> Bounds[float]:
        """Oxygen volumes that the w/w reading really gives."""
    @property
    def volumes_if_wv(self) -> float:
        """Oxygen volumes that the w/v reading really gives."""
    @property
    def spread_ww_percent(self) -> Bounds[float]:
        """Span of all three readings in % w/w."""

def read_label(
    vol: float,
    *,
    temperature_c: float = 20.0,
    molar_volume: _words._MolarVolume = "ideal-1atm",
    density_g_per_ml: float | None = None,
    medium: _words._SolutionKind = "aqueous",
) -> LabelReadings:
    """Read a trade label (``20 vol`` and its like) every way it can be read.

    By trade convention N vol stands for 0.3 N percent (20 vol for 6), without saying of what: % w/w and % w/v differ, and
    neither gives just that many volumes of oxygen.

    Args:
        vol: number on the label, from 1 to 60.
        temperature_c: temperature in C.
        molar_volume: one of ``molar_volumes()``.
        density_g_per_ml: density of the product in g/mL if you measured it.
        medium: ``"aqueous"`` or ``"emulsion"``; see ``convert_interval``.

    Returns:
        The readings, and the span of them all.

    Raises:
        FoilworkError: another number, or no density at that temperature.

    Source:
        Common practice of the trade for the pairing; arithmetic for the rest.

    Examples:
        >>> from foilwork.peroxide import read_label
        >>> readings = read_label(40)
        >>> round(readings.volumes_if_ww.best, 1), round(readings.volumes_if_wv, 1)
        (41.2, 39.5)
    """

def strength_ww_percent(
    text: str,
    *,
    temperature_c: float = 20.0,
    molar_volume: _words._MolarVolume = "ideal-1atm",
    density_g_per_ml: float | None = None,
    medium: _words._SolutionKind = "aqueous",
) -> Bounds[float]:
    """The strength in % w/w of a bottle as it is labelled.

    Args:
        text: ``"6 % w/w"``, ``"6 % w/v"``, ``"60 g/L"``, ``"19.8 volumes"`` or ``"20 vol label"``.
        temperature_c: temperature in C.
        molar_volume: one of ``molar_volumes()``.
        density_g_per_ml: density of the product in g/mL if you measured it.
        medium: ``"aqueous"`` or ``"emulsion"``; see ``convert_interval``.

    Returns:
        ``Bounds`` in % w/w. A w/w figure is exact; a trade label spans all its readings.

    Raises:
        FoilworkError: a text that states no strength (a bare ``%`` does not), or no density.

    Source:
        As for ``convert`` and ``read_label``.

    Examples:
        >>> from foilwork.peroxide import strength_ww_percent
        >>> strength_ww_percent("6 % w/w")
        Bounds(low=6.0, best=6.0, high=6.0)
        >>> [round(x, 2) for x in strength_ww_percent("20 vol label")]
        [5.88, 6.0, 6.0]
    """

def strength_units() -> list[_words._StrengthUnit]:
    """The units that a strength can be stated in.

    Returns:
        Their names, as ``convert`` takes them.

    Examples:
        >>> from foilwork.peroxide import strength_units
        >>> strength_units()[:3]
        ['% w/w', '% w/v', 'g/L']
    """

def molar_volumes() -> dict[str, float]:
    """The ways to count a volume of oxygen, all at 0 C.

    Returns:
        Molar volume in L/mol by name, as ``convert`` takes the names.

    Source:
        CODATA constants; Schmidt & Wagner's equation of state for real oxygen; 22.4 L/mol in school books.

    Examples:
        >>> from foilwork.peroxide import molar_volumes
        >>> round(molar_volumes()["ideal-1bar"], 3)
        22.711
    """
