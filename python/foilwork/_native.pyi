"""Types of the compiled half. Docstrings here are copied from the compiled functions by ``make stubs``."""

from collections.abc import Sequence
from typing import Any, Literal, TypeAlias, final, overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

__all__ = [
    "FoilworkError",
    "HandlingFact",
    "LabelReadings",
    "Level",
    "OutOfRangeWarning",
    "Plan",
    "ServiceFileError",
    "Shade",
    "ShelfBlend",
    "Stock",
    "Swatch",
    "TonerAnswer",
    "blend_shelf",
    "blend_two",
    "ciede2000",
    "complement",
    "convert",
    "convert_bounds",
    "density",
    "density_bounds",
    "dilute",
    "dilute_volume",
    "dilution_table",
    "formula_level",
    "half_life_days",
    "handling_facts",
    "lab_to_lch",
    "lab_to_srgb",
    "lab_to_xyz",
    "lch_to_lab",
    "lift_needed",
    "loss_rate",
    "loss_rate_from_half_life",
    "made_up",
    "main",
    "make_up",
    "mix_strengths",
    "mix_volumes",
    "molar_volumes",
    "permanganate_strength",
    "permanganate_titre",
    "plan",
    "pre_pigmentation",
    "read_label",
    "read_shades",
    "result_level",
    "round_to_scale",
    "service_schema",
    "srgb_to_lab",
    "strength_after",
    "strength_units",
    "strength_ww",
    "swatch",
    "time_until",
    "toner",
    "xyz_to_lab",
]

# --- errors ---------------------------------------------------------------------------------------------------------

class FoilworkError(ValueError): ...

class ServiceFileError(FoilworkError):
    problems: list[tuple[int | None, str, str]]

class OutOfRangeWarning(UserWarning):
    count: int

# --- command line ---------------------------------------------------------------------------------------------------

def main(args: Sequence[str]) -> int: ...

# --- peroxide -------------------------------------------------------------------------------------------------------

_Errors: TypeAlias = Literal["raise", "nan"]
_Bounds: TypeAlias = tuple[float, float, float]
_Reading: TypeAlias = float | tuple[float, float]

@overload
def convert(
    value: float,
    from_unit: str,
    to_unit: str,
    *,
    temperature_c: float = 20.0,
    molar_volume: str = "ideal-1atm",
    density_g_per_ml: float | None = None,
    errors: _Errors = "raise",
) -> float:
    """Convert a strength of hydrogen peroxide from one unit to another.

    The best value only: where a density stands between the units, ``convert_bounds`` also gives the bounds it brings. A
    trade label is no strength and has no unit here; see ``read_label``.

    Args:
        value: Strength in ``from_unit``, a number or an array.
        from_unit: One of ``strength_units()``: ``"% w/w"``, ``"% w/v"``, ``"g/L"``, ``"mol/L"``, ``"mol/kg"`` (per
            kilogram of water), ``"N"`` (two equivalents per mole), ``"% active oxygen"``, ``"volumes"`` (of oxygen).
        to_unit: Another of them.
        temperature_c: Temperature of the solution in C, a number or an array that broadcasts with ``value``.
        molar_volume: How oxygen is counted for ``"volumes"``, one of ``molar_volumes()``: an ideal gas at 0 C and 1 atm
            unless you say otherwise.
        density_g_per_ml: Density of the product in g/mL if you measured it; otherwise that of a clear solution.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.

    Returns:
        Strength in ``to_unit``: a float for numbers, else a float64 array of the broadcast shape. NaN stays NaN.

    Raises:
        FoilworkError: A strength out of range, an unknown unit, or no density (known from 0 to 70 % w/w and 0 to 50 C).

    Source:
        ``volumes = c Vm / 2`` with CODATA constants; density of aqueous peroxide checked against handbook tables.

    >>> from foilwork.peroxide import convert
    >>> round(convert(12, "% w/w", "volumes"), 1)
    41.2
    >>> convert([3, 6], "% w/v", "g/L").tolist()
    [30.0, 60.0]
    """

@overload
def convert(
    value: ArrayLike,
    from_unit: str,
    to_unit: str,
    *,
    temperature_c: ArrayLike = 20.0,
    molar_volume: str = "ideal-1atm",
    density_g_per_ml: float | None = None,
    errors: _Errors = "raise",
) -> NDArray[float64]: ...
@overload
def convert_bounds(
    value: float,
    from_unit: str,
    to_unit: str,
    *,
    temperature_c: float = 20.0,
    molar_volume: str = "ideal-1atm",
    density_g_per_ml: float | None = None,
    medium: Literal["aqueous", "emulsion"] = "aqueous",
    errors: _Errors = "raise",
) -> tuple[float, float, float]:
    """Convert a strength of hydrogen peroxide, with the bounds that the density brings.

    Args:
        value: Strength in ``from_unit``, a number or an array.
        from_unit: One of ``strength_units()``.
        to_unit: Another of them.
        temperature_c: Temperature of the solution in C, a number or an array that broadcasts with ``value``.
        molar_volume: One of ``molar_volumes()``.
        density_g_per_ml: Density of the product in g/mL if you measured it; taken as exact.
        medium: ``"aqueous"`` for a clear solution, ``"emulsion"`` for a cream of unknown density: assumed to lie from 8 %
            below to 2 % above that of the clear solution.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.

    Returns:
        ``(low, best, high)`` in ``to_unit``: floats for numbers, else float64 arrays. All three are the same where no
        density stands between the units.

    Raises:
        FoilworkError: As for ``convert``.

    Source:
        As for ``convert``; the bounds cover the differences between independent density tables.

    >>> from foilwork.peroxide import convert_bounds
    >>> [round(x, 1) for x in convert_bounds(6, "% w/w", "volumes", medium="emulsion")]
    [18.5, 20.2, 20.6]
    """

@overload
def convert_bounds(
    value: ArrayLike,
    from_unit: str,
    to_unit: str,
    *,
    temperature_c: ArrayLike = 20.0,
    molar_volume: str = "ideal-1atm",
    density_g_per_ml: float | None = None,
    medium: Literal["aqueous", "emulsion"] = "aqueous",
    errors: _Errors = "raise",
) -> tuple[NDArray[float64], NDArray[float64], NDArray[float64]]: ...
@overload
def density(strength_ww: float, temperature_c: float = 20.0, *, errors: _Errors = "raise") -> float:
    """Density of aqueous hydrogen peroxide.

    Args:
        strength_ww: Strength in % w/w, from 0 to 70, a number or an array.
        temperature_c: Temperature in C, from 0 to 50, a number or an array that broadcasts with it.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.

    Returns:
        Density in g/mL: a float for numbers, else a float64 array. Good to 0.0005 g/mL up to 50 % w/w, then less:
        ``density_bounds`` says how much.

    Raises:
        FoilworkError: A strength or temperature out of range.

    Source:
        Kell (1975) for water; coefficients of unnamed origin for the increment, checked against handbook tables.

    >>> from foilwork.peroxide import density
    >>> round(density(12), 4)
    1.0415
    """

@overload
def density(
    strength_ww: ArrayLike, temperature_c: ArrayLike = 20.0, *, errors: _Errors = "raise"
) -> NDArray[float64]: ...
@overload
def density_bounds(
    strength_ww: float, temperature_c: float = 20.0, *, errors: _Errors = "raise"
) -> tuple[float, float, float]:
    """Density of aqueous hydrogen peroxide, with the bounds within which independent tables agree.

    Args:
        strength_ww: Strength in % w/w, from 0 to 70, a number or an array.
        temperature_c: Temperature in C, from 0 to 50, a number or an array that broadcasts with it.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.

    Returns:
        ``(low, best, high)`` in g/mL: floats for numbers, else float64 arrays.

    Raises:
        FoilworkError: A strength or temperature out of range.

    Source:
        As for ``density``.

    >>> from foilwork.peroxide import density_bounds
    >>> [round(x, 4) for x in density_bounds(12)]
    [1.041, 1.0415, 1.042]
    """

@overload
def density_bounds(
    strength_ww: ArrayLike, temperature_c: ArrayLike = 20.0, *, errors: _Errors = "raise"
) -> tuple[NDArray[float64], NDArray[float64], NDArray[float64]]: ...

@final
class LabelReadings:
    """What a trade label can mean; made by ``read_label``."""
    @property
    def vol(self) -> int:
        """Number on the label."""
    @property
    def as_ww(self) -> float:
        """Percent that the trade pairs with it, read as % w/w."""
    @property
    def as_wv(self) -> _Bounds:
        """The percent read as % w/v, in % w/w: low, best, high."""
    @property
    def as_volumes(self) -> _Bounds:
        """The number read as true oxygen volumes, in % w/w: low, best, high."""
    @property
    def volumes_if_ww(self) -> _Bounds:
        """Oxygen volumes that the w/w reading really gives: low, best, high."""
    @property
    def volumes_if_wv(self) -> float:
        """Oxygen volumes that the w/v reading really gives."""
    @property
    def span_ww(self) -> _Bounds:
        """Span of the w/w and w/v readings in % w/w: low, best, high."""

def read_label(
    vol: float,
    *,
    temperature_c: float = 20.0,
    molar_volume: str = "ideal-1atm",
    density_g_per_ml: float | None = None,
    medium: Literal["aqueous", "emulsion"] = "aqueous",
) -> LabelReadings:
    """Read a trade label (10, 20, 30 or 40 vol) every way it can be read.

    By trade convention the labels stand for 3, 6, 9 and 12 percent, without saying of what: % w/w and % w/v differ, and
    neither gives just that many volumes of oxygen.

    Args:
        vol: Number on the label: 10, 20, 30 or 40.
        temperature_c: Temperature in C.
        molar_volume: One of ``molar_volumes()``.
        density_g_per_ml: Density of the product in g/mL if you measured it.
        medium: ``"aqueous"`` or ``"emulsion"``; see ``convert_bounds``.

    Returns:
        ``LabelReadings``.

    Raises:
        FoilworkError: Another number, or no density at that temperature.

    Source:
        Common practice of the trade for the pairing; arithmetic for the rest.

    >>> from foilwork.peroxide import read_label
    >>> read_label(40)
    <40 vol label: 12 % w/w (41.18 volumes) or 12 % w/v (11.54 % w/w, 39.54 volumes)>
    """

def strength_ww(
    text: str,
    *,
    temperature_c: float = 20.0,
    molar_volume: str = "ideal-1atm",
    density_g_per_ml: float | None = None,
    medium: Literal["aqueous", "emulsion"] = "aqueous",
) -> _Bounds:
    """The strength in % w/w of a bottle as it is labelled.

    Args:
        text: ``"6 % w/w"``, ``"6 % w/v"``, ``"60 g/L"``, ``"19.8 volumes"`` or ``"20 vol label"``.
        temperature_c: Temperature in C.
        molar_volume: One of ``molar_volumes()``.
        density_g_per_ml: Density of the product in g/mL if you measured it.
        medium: ``"aqueous"`` or ``"emulsion"``; see ``convert_bounds``.

    Returns:
        ``(low, best, high)`` in % w/w. A w/w figure is exact; a trade label spans its w/w and w/v readings.

    Raises:
        FoilworkError: A text that states no strength (a bare ``%`` does not), or no density.

    Source:
        As for ``convert`` and ``read_label``.

    >>> from foilwork.peroxide import strength_ww
    >>> strength_ww("6 % w/w")
    (6.0, 6.0, 6.0)
    >>> [round(x, 2) for x in strength_ww("20 vol label")]
    [5.88, 6.0, 6.0]
    """

def strength_units() -> list[str]:
    """The units that a strength can be stated in.

    Returns:
        Their names, as ``convert`` takes them.

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

    >>> from foilwork.peroxide import molar_volumes
    >>> round(molar_volumes()["ideal-1bar"], 3)
    22.711
    """

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

@final
class Stock:
    """One bottle on the shelf.

    Args:
        name: What you call it; no two bottles of a blend share a name.
        strength_ww: Its strength in % w/w.
        in_hand_g: How much is in it, in g; None when there is always enough, as of tap water.
        price_per_kg: What a kilogram costs, in the one currency of all prices; None counts as free.

    Raises:
        FoilworkError: A strength, amount or price out of range.

    >>> from foilwork.peroxide import Stock
    >>> Stock("12 %", 12, in_hand_g=500, price_per_kg=8.5)
    Stock('12 %', 12.0, in_hand_g=500.0, price_per_kg=8.5)
    """
    def __new__(
        cls, name: str, strength_ww: float, *, in_hand_g: float | None = None, price_per_kg: float | None = None
    ) -> Stock: ...
    def __eq__(self, other: object, /) -> bool: ...
    @property
    def name(self) -> str:
        """What you call it."""
    @property
    def strength_ww(self) -> float:
        """Its strength in % w/w."""
    @property
    def in_hand_g(self) -> float | None:
        """How much is in it, in g, or None."""
    @property
    def price_per_kg(self) -> float | None:
        """What a kilogram costs, or None."""

@final
class ShelfBlend:
    """A blend from the shelf; made by ``blend_shelf``."""
    @property
    def portions(self) -> list[tuple[str, float]]:
        """What to take: ``(name, mass_g)`` for each bottle used, in the order of the shelf. Nothing is rounded."""
    @property
    def total_g(self) -> float:
        """Everything together, in g."""
    @property
    def cost(self) -> float:
        """What it costs, in the currency of the prices."""
    @property
    def leftover_g(self) -> float:
        """What stays in the bottles used, in g; bottles without an amount in hand do not count."""
    def round_to_scale(self, division_g: float) -> tuple[list[tuple[str, float]], float, float]:
        """The blend as a scale shows it.

        Args:
            division_g: What the last figure of the scale counts, in g.

        Returns:
            ``(portions, total_g, strength_ww)``: ``(name, mass_g)`` to weigh, their sum, and their true strength.

        Raises:
            FoilworkError: A division of zero or coarser than the blend.
        """

def blend_shelf(
    stocks: Sequence[Stock],
    target_ww: float,
    total_g: float,
    *,
    objective: Literal["least-cost", "fewest-bottles", "least-leftover"] = "least-cost",
) -> ShelfBlend:
    """Blend any number of stocks to a strength and a total.

    Args:
        stocks: The bottles, ``Stock`` objects with different names.
        target_ww: Strength wanted in % w/w.
        total_g: How much is wanted, in g.
        objective: ``"least-cost"``, ``"fewest-bottles"`` (then least cost) or ``"least-leftover"`` in the bottles used
            (then fewest bottles, then least cost). The last two look at every combination, of at most 16 bottles.

    Returns:
        ``ShelfBlend``.

    Raises:
        FoilworkError: Nothing on the shelf, two bottles of one name, or a target or total out of reach: the text says what
            is reachable.

    Source:
        Conservation of mass and of peroxide; least cost is a linear programme solved exactly by its dual.

    >>> from foilwork.peroxide import Stock, blend_shelf
    >>> shelf = [Stock("strong", 12, in_hand_g=30, price_per_kg=9), Stock("weak", 3, price_per_kg=5)]
    >>> blend_shelf(shelf, 6, 60)
    <blend of 20.00 g of strong + 40.00 g of weak>
    """

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
def made_up(stock: float, unit: str, taken_ml: float, total_ml: float, *, errors: _Errors = "raise") -> float:
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

    >>> from foilwork.peroxide import made_up
    >>> made_up(3, "% w/v", 417, 10_000)
    0.1251
    """

@overload
def made_up(
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

def permanganate_strength(
    titre_ml: _Reading,
    aliquot_ml: _Reading,
    titrant_mol_per_l: _Reading,
    *,
    taken_ml: _Reading | None = None,
    made_up_to_ml: _Reading | None = None,
) -> _Bounds:
    """The strength of a bottle from a titration with permanganate in acid.

    Every reading is a number, or ``(value, tolerance)`` with the tolerance printed on the glass. The bounds are what
    follows when all readings are off at once in the worst way; an end point overrun or an old titrant is not in them.

    Args:
        titre_ml: Permanganate used, in mL.
        aliquot_ml: Sample in the flask, in mL.
        titrant_mol_per_l: Concentration of the permanganate in mol/L (0.1 N is 0.02 mol/L).
        taken_ml: Taken from the bottle for a dilution, in mL, if there was one.
        made_up_to_ml: The mark of that dilution, in mL.

    Returns:
        ``(low, best, high)`` of the bottle in mol/L; ``convert`` puts them into other units.

    Raises:
        FoilworkError: A volume that may be zero, or a dilution that is none.

    Source:
        2 MnO4- + 5 H2O2 + 6 H+ -> 2 Mn2+ + 5 O2 + 8 H2O; British Pharmacopoeia, 1 mL of 0.02 mol/L is 1.701 mg.

    >>> from foilwork.peroxide import permanganate_strength
    >>> found = permanganate_strength((12, 0.03), (10, 0.02), 0.02, taken_ml=(10, 0.02), made_up_to_ml=(100, 0.1))
    >>> [round(x, 3) for x in found]
    [0.596, 0.6, 0.605]
    """

def permanganate_titre(
    strength_mol_per_l: _Reading,
    aliquot_ml: _Reading,
    titrant_mol_per_l: _Reading,
    *,
    taken_ml: _Reading | None = None,
    made_up_to_ml: _Reading | None = None,
) -> _Bounds:
    """The titre to expect when a bottle is titrated with permanganate in acid.

    Every reading is a number, or ``(value, tolerance)``.

    Args:
        strength_mol_per_l: Strength of the bottle in mol/L.
        aliquot_ml: Sample in the flask, in mL.
        titrant_mol_per_l: Concentration of the permanganate in mol/L (0.1 N is 0.02 mol/L).
        taken_ml: Taken from the bottle for a dilution, in mL, if there is one.
        made_up_to_ml: The mark of that dilution, in mL.

    Returns:
        ``(low, best, high)`` in mL.

    Raises:
        FoilworkError: A volume that may be zero, or a dilution that is none.

    Source:
        As for ``permanganate_strength``.

    >>> from foilwork.peroxide import permanganate_titre
    >>> [round(x, 2) for x in permanganate_titre(0.6, 10, 0.02, taken_ml=10, made_up_to_ml=100)]
    [12.0, 12.0, 12.0]
    """

@overload
def strength_after(fresh: float, unit: str, rate_per_day: float, days: float, *, errors: _Errors = "raise") -> float:
    """The strength after storage, by first-order loss at a rate that you measured.

    There is no default rate: it depends on the stabiliser, the bottle, light and warmth, and holds only for the storage it
    was measured in. ``loss_rate`` gets it from two assays.

    Args:
        fresh: Strength at the start in ``unit``, a number or an array.
        unit: One of ``strength_units()``. By mass, the oxygen that leaves the bottle is allowed for; by volume, the volume
            is taken as unchanged.
        rate_per_day: Loss rate per day, a number or an array.
        days: Time in days, a number or an array.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.

    Returns:
        Strength in ``unit``: a float for numbers, else a float64 array.

    Raises:
        FoilworkError: A value out of range.

    Source:
        First-order decay; 2 H2O2 -> 2 H2O + O2.

    >>> from foilwork.peroxide import loss_rate_from_half_life, strength_after
    >>> round(strength_after(1.0, "mol/L", loss_rate_from_half_life(0.25), 0.75), 3)
    0.125
    """

@overload
def strength_after(
    fresh: ArrayLike, unit: str, rate_per_day: ArrayLike, days: ArrayLike, *, errors: _Errors = "raise"
) -> NDArray[float64]: ...
@overload
def loss_rate(first: float, later: float, unit: str, days: float, *, errors: _Errors = "raise") -> float:
    """The rate of loss between two assays of one bottle.

    Args:
        first: First strength in ``unit``, a number or an array.
        later: Later strength in the same unit, a number or an array.
        unit: One of ``strength_units()``.
        days: Time between them in days, a number or an array.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.

    Returns:
        Loss rate per day: a float for numbers, else a float64 array.

    Raises:
        FoilworkError: A strength that rose, a zero, or a value out of range.

    Source:
        First-order decay.

    >>> from foilwork.peroxide import loss_rate
    >>> round(loss_rate(6.0, 5.7, "% w/w", 90), 6)
    0.000586
    """

@overload
def loss_rate(
    first: ArrayLike, later: ArrayLike, unit: str, days: ArrayLike, *, errors: _Errors = "raise"
) -> NDArray[float64]: ...
@overload
def time_until(fresh: float, wanted: float, unit: str, rate_per_day: float, *, errors: _Errors = "raise") -> float:
    """How long until a bottle has fallen to a strength, in days.

    Args:
        fresh: Strength now in ``unit``, a number or an array.
        wanted: Strength to wait for in the same unit, a number or an array.
        unit: One of ``strength_units()``.
        rate_per_day: Loss rate per day, a number or an array.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.

    Returns:
        Days: a float for numbers, else a float64 array.

    Raises:
        FoilworkError: A bottle that is below already, a zero rate, or a value out of range.

    Source:
        First-order decay.

    >>> from foilwork.peroxide import time_until
    >>> round(time_until(1.0, 0.2, "mol/L", 0.1), 2)
    16.09
    """

@overload
def time_until(
    fresh: ArrayLike, wanted: ArrayLike, unit: str, rate_per_day: ArrayLike, *, errors: _Errors = "raise"
) -> NDArray[float64]: ...
def loss_rate_from_half_life(half_life_days: float) -> float:
    """The loss rate of a half-life.

    Args:
        half_life_days: Time in which half is lost, in days, above 0.

    Returns:
        Loss rate per day.

    Raises:
        FoilworkError: A half-life out of range.

    >>> from foilwork.peroxide import loss_rate_from_half_life
    >>> round(loss_rate_from_half_life(0.25) / 86_400, 7)
    3.21e-05
    """

def half_life_days(rate_per_day: float) -> float:
    """The half-life of a loss rate.

    Args:
        rate_per_day: Loss rate per day, above 0.

    Returns:
        Time in which half is lost, in days.

    Raises:
        FoilworkError: A rate out of range.

    >>> from foilwork.peroxide import half_life_days
    >>> round(half_life_days(0.1), 2)
    6.93
    """

@final
class HandlingFact:
    """What a law or a transport list says about a range of strengths; made by ``handling_facts``.

    A fact about the text, not advice. Nothing here says that a strength is harmless.
    """
    @property
    def jurisdiction(self) -> str:
        """Where it holds: ``"EU"``, ``"UK"``, or ``"UN"`` for transport."""
    @property
    def scheme(self) -> str:
        """The text."""
    @property
    def class_name(self) -> str:
        """Class or status."""
    @property
    def code(self) -> str:
        """Hazard statement or UN number; empty where there is none."""
    @property
    def lower(self) -> tuple[float, bool] | None:
        """Lower end in % w/w and whether it is in the range, or None."""
    @property
    def upper(self) -> tuple[float, bool] | None:
        """Upper end in % w/w and whether it is in the range, or None."""
    @property
    def note(self) -> str:
        """What to bear in mind."""
    @property
    def source(self) -> str:
        """The source."""
    @property
    def bearing(self) -> str:
        """``"applies"``, ``"may apply"`` (part of the span is in the range: treat it as if it applied) or ``"substance"``."""

def handling_facts(strength_ww: float, high_ww: float | None = None) -> list[HandlingFact]:
    """What classification, transport and precursor law say about a strength of hydrogen peroxide.

    Args:
        strength_ww: Strength in % w/w, or its lower bound.
        high_ww: Its upper bound in % w/w, when the strength is known only within bounds.

    Returns:
        A list of ``HandlingFact``, in the order of the texts. Other components, the pack and local law can add to it.

    Raises:
        FoilworkError: A strength out of range, or bounds out of order.

    Source:
        Cited with each fact.

    >>> from foilwork.peroxide import handling_facts
    >>> [fact.code for fact in handling_facts(12) if fact.bearing == "applies" and fact.code]
    ['H318', 'UN 2984']
    """

# --- mix ------------------------------------------------------------------------------------------------------------

# --- limits ---------------------------------------------------------------------------------------------------------

# --- colour ---------------------------------------------------------------------------------------------------------

@final
class Level:
    def __new__(cls, level: float | str | Level) -> Level: ...
    @property
    def number(self) -> float: ...
    def name(self, naming: Literal["european", "us"] = "european") -> str | None: ...
    def underlying_pigment(self) -> dict[str, Any]: ...
    def __float__(self) -> float: ...
    def __hash__(self) -> int: ...
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __lt__(self, value: Level, /) -> bool: ...
    def __le__(self, value: Level, /) -> bool: ...
    def __gt__(self, value: Level, /) -> bool: ...
    def __ge__(self, value: Level, /) -> bool: ...

@final
class Shade:
    def __new__(
        cls, code: str, level: float | str | Level, tones: Sequence[str] = (), strength_percent: float = 100.0
    ) -> Shade: ...
    @property
    def code(self) -> str: ...
    @property
    def level(self) -> float: ...
    @property
    def tones(self) -> list[tuple[str, float]]: ...
    @property
    def strength_percent(self) -> float: ...
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...

@final
class Swatch:
    @property
    def lab(self) -> tuple[float, float, float]: ...
    @property
    def bounds(self) -> dict[str, tuple[float, float]]: ...
    @property
    def uncertainty(self) -> float: ...
    @property
    def srgb(self) -> str: ...
    @property
    def hue(self) -> str | None: ...
    @property
    def basis(self) -> str: ...
    @property
    def notice(self) -> str: ...
    def difference(self, other: Swatch) -> dict[str, float]: ...
    def beside(self, other: Swatch, share_percent: float) -> Swatch: ...
    def _repr_html_(self) -> str: ...

@final
class TonerAnswer:
    @property
    def reached(self) -> bool: ...
    @property
    def mix_g(self) -> list[tuple[str, float]]: ...
    @property
    def predicted(self) -> Swatch: ...
    @property
    def target(self) -> Swatch: ...
    @property
    def residual(self) -> float: ...
    @property
    def before(self) -> float: ...
    @property
    def alternatives(self) -> list[tuple[list[tuple[str, float]], float]]: ...
    def findings(self) -> list[dict[str, str]]: ...
    def _repr_html_(self) -> str: ...

def complement(hue: str) -> str: ...
def pre_pigmentation(
    lightened_level: float | str | Level, target_level: float | str | Level
) -> dict[str, Any] | None: ...
def read_shades(text: str) -> list[Shade]: ...
def swatch(
    level: float | str | Level | None = None,
    *,
    lightened_from: float | str | Level | None = None,
    tones: Sequence[str] | None = None,
    white_percent: float = 0.0,
    lab: tuple[float, float, float] | None = None,
    observer_degrees: int = 10,
) -> Swatch: ...
def toner(
    shades: Sequence[Shade],
    *,
    lifted_level: float | str | Level,
    natural_level: float | str | Level | None = None,
    exposed_lab: tuple[float, float, float] | None = None,
    target_level: float | str | Level | None = None,
    target_tones: Sequence[str] | None = None,
    target_lab: tuple[float, float, float] | None = None,
    observer_degrees: int = 10,
    porous: bool = False,
    most_shades: int = 3,
    bowl_g: float = 30.0,
    division_g: float = 1.0,
) -> TonerAnswer: ...
def lab_to_srgb(lab: tuple[float, float, float], *, observer_degrees: int = 2) -> tuple[str, bool]: ...
def srgb_to_lab(srgb: str) -> tuple[float, float, float]: ...
@overload
def formula_level(
    natural_level: float,
    target_level: float,
    *,
    product: str = "permanent",
    coloured: bool = False,
    top_level: int = 10,
    errors: Literal["raise", "nan"] = "raise",
) -> float: ...
@overload
def formula_level(
    natural_level: ArrayLike,
    target_level: ArrayLike,
    *,
    product: str = "permanent",
    coloured: bool = False,
    top_level: int = 10,
    errors: Literal["raise", "nan"] = "raise",
) -> NDArray[float64]: ...
@overload
def result_level(
    natural_level: float, applied_level: float, *, product: str = "permanent", errors: Literal["raise", "nan"] = "raise"
) -> float: ...
@overload
def result_level(
    natural_level: ArrayLike,
    applied_level: ArrayLike,
    *,
    product: str = "permanent",
    errors: Literal["raise", "nan"] = "raise",
) -> NDArray[float64]: ...
@overload
def lift_needed(from_level: float, target_level: float, *, errors: Literal["raise", "nan"] = "raise") -> float: ...
@overload
def lift_needed(
    from_level: ArrayLike, target_level: ArrayLike, *, errors: Literal["raise", "nan"] = "raise"
) -> NDArray[float64]: ...
@overload
def ciede2000(  # type: ignore[overload-overlap]
    lab_1: tuple[float, float, float], lab_2: tuple[float, float, float], *, errors: Literal["raise", "nan"] = "raise"
) -> float: ...
@overload
def ciede2000(lab_1: ArrayLike, lab_2: ArrayLike, *, errors: Literal["raise", "nan"] = "raise") -> NDArray[float64]: ...
@overload
def lab_to_xyz(  # type: ignore[overload-overlap]
    lab: tuple[float, float, float], *, observer_degrees: int = 2, errors: Literal["raise", "nan"] = "raise"
) -> tuple[float, float, float]: ...
@overload
def lab_to_xyz(
    lab: ArrayLike, *, observer_degrees: int = 2, errors: Literal["raise", "nan"] = "raise"
) -> NDArray[float64]: ...
@overload
def xyz_to_lab(  # type: ignore[overload-overlap]
    xyz: tuple[float, float, float], *, observer_degrees: int = 2, errors: Literal["raise", "nan"] = "raise"
) -> tuple[float, float, float]: ...
@overload
def xyz_to_lab(
    xyz: ArrayLike, *, observer_degrees: int = 2, errors: Literal["raise", "nan"] = "raise"
) -> NDArray[float64]: ...
@overload
def lab_to_lch(  # type: ignore[overload-overlap]
    lab: tuple[float, float, float], *, errors: Literal["raise", "nan"] = "raise"
) -> tuple[float, float, float]: ...
@overload
def lab_to_lch(lab: ArrayLike, *, errors: Literal["raise", "nan"] = "raise") -> NDArray[float64]: ...
@overload
def lch_to_lab(  # type: ignore[overload-overlap]
    lch: tuple[float, float, float], *, errors: Literal["raise", "nan"] = "raise"
) -> tuple[float, float, float]: ...
@overload
def lch_to_lab(lch: ArrayLike, *, errors: Literal["raise", "nan"] = "raise") -> NDArray[float64]: ...

# --- money ----------------------------------------------------------------------------------------------------------

# --- service --------------------------------------------------------------------------------------------------------

@final
class Plan:
    """A service plan: what to weigh, in which order, what was checked, what it costs."""

    @property
    def is_blocked(self) -> bool: ...
    def text(self) -> str: ...
    def json(self) -> str: ...
    def data(self) -> dict[str, Any]: ...
    def cards(self) -> list[dict[str, Any]]: ...
    def _repr_html_(self) -> str: ...

def plan(text: str, format: Literal["toml", "json"] = "toml") -> Plan: ...
def service_schema() -> dict[str, Any]: ...
