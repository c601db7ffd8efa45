"""Types of the compiled half. Docstrings here are copied from the compiled functions by ``make stubs``."""

from collections.abc import Sequence
from decimal import Decimal
from typing import Any, Literal, TypeAlias, final, overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

__all__ = [
    "Additive",
    "Bowl",
    "BowlPlan",
    "Composition",
    "DeclaredProduct",
    "FoilworkError",
    "HandlingFact",
    "Ingredient",
    "LabelReadings",
    "Level",
    "LimitReport",
    "LimitTable",
    "OutOfRangeWarning",
    "Plan",
    "Ratio",
    "Recipe",
    "ServiceFileError",
    "Shade",
    "ShelfBlend",
    "Stock",
    "Swatch",
    "TonerAnswer",
    "Weighing",
    "as_applied",
    "blend_shelf",
    "blend_two",
    "bowls",
    "check_limits",
    "check_peroxide",
    "ciede2000",
    "complement",
    "convert",
    "convert_amount",
    "convert_bounds",
    "density",
    "density_bounds",
    "dilute",
    "dilute_volume",
    "dilution_table",
    "formula_level",
    "half_life_days",
    "handling",
    "handling_facts",
    "jurisdictions",
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
    "minimum_bowl",
    "mix_strengths",
    "mix_volumes",
    "mixing_card",
    "molar_volumes",
    "natural_share",
    "permanganate_strength",
    "permanganate_titre",
    "plan",
    "pre_pigmentation",
    "read_label",
    "read_shades",
    "result_level",
    "round_to_scale",
    "salt_factor",
    "service_schema",
    "srgb_to_lab",
    "strength_after",
    "strength_units",
    "strength_ww",
    "swatch",
    "time_until",
    "toner",
    "weigh",
    "xyz_to_lab",
]

# A strength or level in % w/w, or its (low, best, high).
_Percent: TypeAlias = float | tuple[float, float, float]

# --- errors ---------------------------------------------------------------------------------------------------------

class FoilworkError(ValueError):
    """Bad input: the text says which value, its unit, the allowed range and the way out."""

class ServiceFileError(FoilworkError):
    """A service file that cannot be planned. ``problems`` lists (line, field, message) for everything that is wrong."""
    problems: list[tuple[int | None, str, str]]

class OutOfRangeWarning(UserWarning):
    """Values out of range became NaN because ``errors="nan"`` was given; ``count`` says how many."""
    count: int

# --- command line ---------------------------------------------------------------------------------------------------

def main(args: Sequence[str]) -> int:
    """Run the command line with ``args`` (the first is the program's name) and return its exit status.

    0 fine, 1 the plan has findings that say stop, 2 bad input. Prints to the process's own standard output.

    Args:
        args: the words of the command line.

    Returns:
        The exit status.

    Examples:
        >>> from foilwork._native import main
        >>> main(["foilwork", "plan", "no-such-file.toml"])
        2
    """

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

@final
class Ratio:
    """A mixing ratio by mass, kept as the exact decimals that were written.

    Args:
        text: parts joined by ``:`` or ``+``, for example ``"1:1.5"``, ``"1+2"`` or ``"3:1:6"``.

    Raises:
        FoilworkError: with the position of the character that cannot be read.

    Examples:
        >>> from foilwork.mix import Ratio
        >>> Ratio("1:1.5").split_total(75)
        [30.0, 45.0]
        >>> str(Ratio("1+2")), Ratio("1:1.5").lowest_terms()
        ('1+2', [2, 3])
    """
    def __new__(cls, text: str) -> Ratio: ...
    @property
    def parts(self) -> list[Decimal]:
        """The parts as written, exact."""
    def lowest_terms(self) -> list[int]:
        """The same ratio in the smallest whole numbers."""
    def same_mix(self, other: Ratio) -> bool:
        """Whether both ratios weigh out alike, as ``1:1.5`` and ``2:3`` do."""
    def split_total(self, total_g: float) -> list[float]:
        """The masses in g that make up ``total_g``; nothing is rounded."""
    def split_decimal(self, total: Decimal) -> list[Decimal]:
        """The shares of a total as decimals of 28 digits, in the unit of the total."""
    def from_part(self, part: int, mass_g: float) -> list[float]:
        """All masses in g when part ``part`` (counted from 0) weighs ``mass_g``."""
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...

@final
class Weighing:
    """A bowl as the scale can weigh it; made by :func:`weigh`."""
    @property
    def masses_g(self) -> list[float]:
        """What to put on the scale, in g, in the order of the recipe."""
    @property
    def total_g(self) -> float:
        """The total on the scale in g."""
    @property
    def ratio_errors_percent(self) -> list[float]:
        """How far each part's share of the bowl is from the recipe, in percent of the share; negative is too little."""
    @property
    def worst_ratio_error_percent(self) -> float:
        """The largest of them without sign; no other weighing with this total has a smaller one."""
    @property
    def vanished(self) -> list[int]:
        """Parts (counted from 0) that the recipe wants and the scale cannot show."""
    def strength_shift_percentage_points(self, strengths_ww: Sequence[_Percent]) -> float:
        """Change of the bowl's strength by rounding, in percentage points w/w.

        ``strengths_ww`` gives the strength of each part in % w/w, as a number or (low, best, high);
        missing ones are 0.
        """
    def tare_order(self, last: int | None = None) -> list[tuple[int, float, float]]:
        """The order on the scale: smallest first, ``last`` (the developer) last.

        Each step is (part, mass to add in g, reading in g).
        """

def weigh(masses_g: Sequence[float], division_g: float) -> Weighing:
    """Round parts to a scale so that they add up to the rounded total and the worst error of ratio is the least possible.

    Args:
        masses_g: masses of the parts in g.
        division_g: division of the scale in g.

    Raises:
        FoilworkError: when there is nothing to weigh, or the division does not suit the bowl.

    Examples:
        >>> from foilwork.mix import weigh
        >>> weigh([33.34, 33.33, 33.33], 1).masses_g
        [34.0, 33.0, 33.0]

    Source:
        Greedy increments for separable convex allocation (Ibaraki and Katoh 1988, from memory); checked by brute force.
    """
def as_applied(masses_g: Sequence[float], strengths_ww: Sequence[_Percent]) -> tuple[float, float, float]:
    """Strength of the mixed bowl: the mass-weighted mean of the strengths of its parts.

    Args:
        masses_g: masses of the parts in g.
        strengths_ww: strength of each part in % w/w, as a number or (low, best, high). An additive has 0.

    Returns:
        Lower bound, best estimate and upper bound in % w/w.

    Raises:
        FoilworkError: when the bowl is empty, or the lists differ in length.

    Examples:
        >>> from foilwork.mix import as_applied
        >>> as_applied([30, 60], [0, 9])
        (6.0, 6.0, 6.0)

    Source:
        Conservation of solute mass.
    """
def minimum_bowl(ratio: Ratio, division_g: float, tolerance_percent: float) -> tuple[float, float]:
    """The least that can be weighed in a ratio so that no part's share is off by more than a tolerance.

    Args:
        ratio: the ratio.
        division_g: division of the scale in g.
        tolerance_percent: largest error of a part's share, in percent of that share.

    Returns:
        The smallest bowl that happens to be within the tolerance, and the mass from which on every bowl is, in g.

    Raises:
        FoilworkError: for a tolerance below 0.01 %, or a part too small for any scale.

    Examples:
        >>> from foilwork.mix import Ratio, minimum_bowl
        >>> minimum_bowl(Ratio("1:1.5"), 1, 5)
        (5.0, 50.0)
    """
@final
class Bowl:
    """One fresh bowl of a :class:`BowlPlan`. Times count in min from the start of the first mixing."""
    @property
    def mixed_g(self) -> float:
        """Mass to mix in g, residue included."""
    @property
    def applied_g(self) -> float:
        """Mass that goes onto the hair in g."""
    @property
    def mix_at_min(self) -> float:
        """When to start mixing."""
    @property
    def ready_at_min(self) -> float:
        """When it is mixed and application goes on."""
    @property
    def empty_at_min(self) -> float:
        """When the last of it is on the hair."""
    @property
    def use_by_min(self) -> float:
        """When it must no longer be used."""

@final
class BowlPlan:
    """Fresh bowls in the order of mixing; made by :func:`bowls`."""
    @property
    def bowls(self) -> list[Bowl]:
        """The bowls, all of one size."""
    @property
    def mixed_g(self) -> float:
        """Everything mixed in g, which is what the bowls cost."""
    @property
    def applied_g(self) -> float:
        """Everything that reaches the hair in g."""
    @property
    def leftover_g(self) -> float:
        """Mixed and thrown away, in g."""
    def recipes(self, base: Recipe, additives: Sequence[Additive] = ()) -> list[Recipe]:
        """The recipe of each bowl: ``base`` scaled so that base and additives together fill it."""
    def leftovers(self, base: Recipe, additives: Sequence[Additive] = ()) -> list[tuple[str, float, float]]:
        """What each product loses: (product, mass put into bowls, mass of that thrown away), in g."""

def bowls(
    total_g: float,
    capacity_g: float,
    working_life_min: float,
    pace_g_per_min: float,
    *,
    mixing_min: float = 0.0,
    residue_g: float = 0.0,
) -> BowlPlan:
    """Number, size and mixing times of fresh bowls.

    Args:
        total_g: product that must reach the hair, in g.
        capacity_g: the most one bowl holds, in g.
        working_life_min: how long a mixed bowl may be used, in min, from the product's directions.
        pace_g_per_min: how fast product goes onto the hair, in g/min.
        mixing_min: time application stands still for each mixing, in min.
        residue_g: what stays behind in bowl and brush, in g.

    Raises:
        FoilworkError: when a bowl could put nothing on the hair, or hundreds would be needed.

    Examples:
        >>> from foilwork.mix import bowls
        >>> plan = bowls(200, 120, 40, 2)
        >>> len(plan.bowls), round(plan.mixed_g)
        (3, 200)
    """
@final
class Additive:
    """An additive and its dose; take it from the additive's own leaflet. It holds no peroxide and dilutes the bowl.

    Made by :meth:`per_bowl`, :meth:`of_bowl` or :meth:`of_product`.
    """
    @staticmethod
    def per_bowl(product: str, mass_g: float) -> Additive:
        """staticmethod(function) -> method

        Convert a function to be a static method.

        A static method does not receive an implicit first argument.
        To declare a static method, use this idiom:

             class C:
                 @staticmethod
                 def f(arg1, arg2, argN):
                     ...

        It can be called either on the class (e.g. C.f()) or on an instance
        (e.g. C().f()). Both the class and the instance are ignored, and
        neither is passed implicitly as the first argument to the method.

        Static methods in Python are similar to those found in Java or C++.
        For a more advanced concept, see the classmethod builtin.
        """
    @staticmethod
    def of_bowl(product: str, share_percent: float) -> Additive:
        """staticmethod(function) -> method

        Convert a function to be a static method.

        A static method does not receive an implicit first argument.
        To declare a static method, use this idiom:

             class C:
                 @staticmethod
                 def f(arg1, arg2, argN):
                     ...

        It can be called either on the class (e.g. C.f()) or on an instance
        (e.g. C().f()). Both the class and the instance are ignored, and
        neither is passed implicitly as the first argument to the method.

        Static methods in Python are similar to those found in Java or C++.
        For a more advanced concept, see the classmethod builtin.
        """
    @staticmethod
    def of_product(product: str, other: str, share_percent: float) -> Additive:
        """staticmethod(function) -> method

        Convert a function to be a static method.

        A static method does not receive an implicit first argument.
        To declare a static method, use this idiom:

             class C:
                 @staticmethod
                 def f(arg1, arg2, argN):
                     ...

        It can be called either on the class (e.g. C.f()) or on an instance
        (e.g. C().f()). Both the class and the instance are ignored, and
        neither is passed implicitly as the first argument to the method.

        Static methods in Python are similar to those found in Java or C++.
        For a more advanced concept, see the classmethod builtin.
        """

@final
class Recipe:
    """A written recipe, kept in exact decimals; it prints back as it was read.

    Args:
        text: parts joined by `` + ``, each a number, a unit (``g``, ``mL``, ``US fl oz``, ``UK fl oz``) and a name.

    Raises:
        FoilworkError: with the position of the character that cannot be read.

    Examples:
        >>> from decimal import Decimal
        >>> from foilwork.mix import Recipe
        >>> recipe = Recipe("30 g 7.1 + 15 g 8.3 + 67.5 g 6%")
        >>> str(recipe.to_total(Decimal("56.25")))
        '15 g 7.1 + 7.5 g 8.3 + 33.75 g 6%'
    """
    def __new__(cls, text: str) -> Recipe: ...
    @property
    def parts(self) -> list[tuple[Decimal, str, str]]:
        """The parts as (value, unit, product)."""
    def masses_g(self) -> list[float]:
        """The masses in g; every part must be in g."""
    def total(self) -> Decimal:
        """The sum of all parts, in their one unit."""
    def ratio(self) -> Ratio:
        """The parts as a ratio."""
    def times(self, factor: Decimal | int) -> Recipe:
        """Every amount times a factor."""
    def to_total(self, total: Decimal | int, unit: str = "g") -> Recipe:
        """The recipe with another total."""
    def to_part(self, product: str, value: Decimal | int, unit: str = "g") -> Recipe:
        """The recipe in which one product has a given amount."""
    def to_packs(self, product: str, pack: Decimal | int, packs: int, unit: str = "g") -> Recipe:
        """The recipe that uses up whole packs of one product."""
    def packs_needed(self, product: str, pack: Decimal | int, unit: str = "g") -> int:
        """Whole packs of one product that this recipe needs: always rounded up."""
    def combined(self, other: Recipe) -> Recipe:
        """Both recipes in one bowl; a product of both is named once."""
    def split(self, bowls: Ratio) -> list[Recipe]:
        """The recipe divided over bowls in a ratio."""
    def in_grams(self, densities_g_per_ml: dict[str, float]) -> Recipe:
        """The recipe with every volume turned into g by the density of its product in g/mL."""
    def with_additives(self, additives: Sequence[Additive]) -> Recipe:
        """The recipe with additives on top of it."""
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...

def convert_amount(
    value: Decimal | int, from_unit: str, to_unit: str, *, density_g_per_ml: float | None = None
) -> Decimal:
    """Turn an amount into another unit: ``g``, ``mL``, ``US fl oz``, ``UK fl oz``.

    Between mass and volume a density is needed.

    Args:
        value: the amount, exact as a ``Decimal``.
        from_unit: its unit.
        to_unit: the unit wanted.
        density_g_per_ml: density of the product in g/mL.

    Raises:
        FoilworkError: for an unknown unit, or between mass and volume without a density.

    Examples:
        >>> from decimal import Decimal
        >>> from foilwork.mix import convert_amount
        >>> convert_amount(Decimal(2), "US fl oz", "mL")
        Decimal('59.147059125')

    Source:
        NIST Handbook 44, Appendix C; Weights and Measures Act 1985 (both from memory, checked against pint).
    """
def natural_share(white_percent: float) -> tuple[float, float, float]:
    """How much natural shade the trade adds to cover a share of white hair: a convention, with its range.

    Args:
        white_percent: share of white hair in percent.

    Returns:
        Least, usual and most share of natural shade among the shades of the formula, in percent.

    Examples:
        >>> from foilwork.mix import natural_share
        >>> natural_share(50)
        (33.0, 50.0, 67.0)

    Source:
        Common practice; half at half is printed in a trade article.
    """
def mixing_card(
    who: str,
    what: str,
    recipe: Recipe,
    strengths_ww: Sequence[_Percent | None],
    division_g: float,
    mixed_at: str,
    working_life_min: float,
    *,
    remarks: Sequence[str] = (),
) -> dict[str, Any]:
    """The card to lay beside a bowl, as plain data: who, what, grams, strength as applied, time mixed, use-by.

    Args:
        who: guest or column.
        what: what the bowl is for.
        recipe: the recipe of this bowl, in g.
        strengths_ww: hydrogen peroxide in each part in % w/w, as a number or (low, best, high); None where not known.
        division_g: division of the scale in g.
        mixed_at: date and time on the salon clock, for example ``"2026-11-25T10:05"``.
        working_life_min: how long it may be used, in min.
        remarks: lines to add, for example an exceeded limit.

    Returns:
        A dict; its ``"text"`` is the card to print.

    Raises:
        FoilworkError: when the recipe is not in g, cannot be weighed on the scale, or has no working life.

    Examples:
        >>> from foilwork.mix import Recipe, mixing_card
        >>> card = mixing_card("chair 2", "roots", Recipe("30 g 7.1 + 45 g 6%"), [0, 6], 1, "2026-11-25T10:05", 40)
        >>> card["use_by"], card["strength_as_applied_ww_percent"][1]
        ('2026-11-25 10:45', 3.6)
    """
@final
class Ingredient:
    """One ingredient of a product as its maker or its user states it.

    Args:
        name: the name on the label.
        level_ww: mass fraction in % w/w, as a number or (low, best, high); exactly 0 says the product is free of it.
        cas: CAS number; without it a table is searched by name.
        stated_as: the form the level is stated in, for example ``"free-base"``, when not the substance itself.
        groups: groups of the law it belongs to, for entries without CAS numbers.

    Raises:
        FoilworkError: for a level out of range, a mistyped CAS number or an unknown form.

    Examples:
        >>> from foilwork.mix import Ingredient
        >>> Ingredient("resorcinol", (0.4, 0.5, 0.6), cas="108-46-3")
        Ingredient('resorcinol', (0.4, 0.5, 0.6))
    """
    def __new__(
        cls,
        name: str,
        level_ww: _Percent,
        *,
        cas: str | None = None,
        stated_as: str | None = None,
        groups: Sequence[str] = (),
    ) -> Ingredient: ...

@final
class DeclaredProduct:
    """A product as supplied, with what is known to be in it.

    Args:
        name: what the user calls it.
        ingredients: what is known to be in it.
        fully_declared: whether the list names everything the law may limit; otherwise the rest is unknown, not absent.

    Examples:
        >>> from foilwork.mix import DeclaredProduct
        >>> DeclaredProduct("shade 7.1", [], fully_declared=False)
        DeclaredProduct('shade 7.1', 0 ingredients, not declared in full)
    """
    def __new__(
        cls, name: str, ingredients: Sequence[Ingredient], *, fully_declared: bool = True
    ) -> DeclaredProduct: ...

@final
class Composition:
    """What is in the mixed bowl, and so on the hair: every declared substance with its bounds, and what is not known.

    Args:
        parts: (mass in g, product) for each part.

    Raises:
        FoilworkError: when the bowl is empty.

    Examples:
        >>> from foilwork.mix import Composition, DeclaredProduct, Ingredient
        >>> developer = DeclaredProduct("developer", [Ingredient("hydrogen peroxide", 6, cas="7722-84-1")])
        >>> bowl = Composition([(60, developer), (60, DeclaredProduct("7.1", [], fully_declared=False))])
        >>> [(c["level_ww_percent"][1], c["undeclared_in"]) for c in bowl.constituents()]
        [(3.0, ['7.1'])]
    """
    def __new__(cls, parts: Sequence[tuple[float, DeclaredProduct]]) -> Composition: ...
    @property
    def total_g(self) -> float:
        """The mass of the bowl in g."""
    def constituents(self) -> list[dict[str, Any]]:
        """Every declared substance as a dict: name, cas, level and what undeclared products could add, in % w/w."""
    @property
    def undeclared(self) -> list[str]:
        """Products in the bowl whose contents are not declared in full."""
    @property
    def hazards(self) -> list[str]:
        """What in this bowl calls for care, as codes for :func:`handling`."""

def handling(hazards: Sequence[str]) -> list[dict[str, Any]]:
    """The handling checklist for what is in a bowl, in the order of the work. It informs; it decides nothing.

    Args:
        hazards: any of ``"peroxide"``, ``"persulfate"``, ``"ammonia"``, ``"oxidative-dye"``, ``"resorcinol"``,
            ``"unknown"``.

    Returns:
        Points as dicts: stage, text, what they are about, keys of their sources (none: common practice).

    Raises:
        FoilworkError: for an unknown code.

    Examples:
        >>> from foilwork.mix import handling
        >>> handling(["persulfate"])[0]["stage"]
        'before'
    """

# --- limits ---------------------------------------------------------------------------------------------------------

def jurisdictions() -> list[tuple[str, str]]:
    """The jurisdictions with a built-in table, as (code, name). A table is never complete.

    Examples:
        >>> from foilwork.limits import jurisdictions
        >>> jurisdictions()[0]
        ('EU', 'European Union')
    """
@final
class LimitTable:
    """A table of limits: a built-in one, or the user's own in the same shape.

    Args:
        jurisdiction: code or name, for example ``"EU"``; see :func:`jurisdictions`.

    Raises:
        FoilworkError: when there is no table for it.

    Examples:
        >>> from foilwork.limits import LimitTable
        >>> japan = LimitTable("JP")
        >>> japan.title, len(japan), japan.unverified
        ('Japan', 1, 1)
    """
    def __new__(cls, jurisdiction: str) -> LimitTable: ...
    @staticmethod
    def from_csv(title: str, text: str) -> LimitTable:
        """staticmethod(function) -> method

        Convert a function to be a static method.

        A static method does not receive an implicit first argument.
        To declare a static method, use this idiom:

             class C:
                 @staticmethod
                 def f(arg1, arg2, argN):
                     ...

        It can be called either on the class (e.g. C.f()) or on an instance
        (e.g. C().f()). Both the class and the instance are ignored, and
        neither is passed implicitly as the first argument to the method.

        Static methods in Python are similar to those found in Java or C++.
        For a more advanced concept, see the classmethod builtin.
        """
    def overlaid(self, other: LimitTable) -> LimitTable:
        """This table with the rows of another: a row with a known id replaces the old one, the others are added."""
    @property
    def title(self) -> str:
        """The name of the jurisdiction, or what the user calls the table."""
    @property
    def unverified(self) -> int:
        """How many rows are from memory, and so never the ground for "within"."""
    def listing(self) -> list[dict[str, Any]]:
        """Every row with what a check does with it and what it does not, as dicts."""
    def text(self) -> str:
        """The listing as text: what is checked, what is noted, what is not checked."""
    def __len__(self) -> int: ...

@final
class LimitReport:
    """What a table has to say about a mixture; made by :func:`check_limits` and :func:`check_peroxide`."""
    @property
    def exceeded(self) -> bool:
        """Whether any limit or ratio sum is exceeded."""
    @property
    def within_everything_checked(self) -> bool:
        """Whether everything in the bowl was judged and nothing found exceeded. No table is complete, so this says no more."""
    def findings(self) -> list[dict[str, Any]]:
        """The findings as dicts: substance, level, verdict, reason, margin, figure, legal reference, date, sources."""
    def data(self) -> dict[str, Any]:
        """The whole report as a dict, with ratio sums, notices and products that are not declared in full."""

def check_limits(
    table: LimitTable, bowl: Composition, purpose: str = "oxidative-colour", audience: str = "professional"
) -> LimitReport:
    """Hold a mixed bowl, and the products in it, against a table.

    Args:
        table: the table.
        bowl: the bowl.
        purpose: ``"oxidative-colour"``, ``"non-oxidative-colour"``, ``"lightening"`` or ``"lash-colour"``.
        audience: ``"professional"`` or ``"general"``.

    Returns:
        Findings, each exceeded, within or not to be judged, with margin and source.

    Raises:
        FoilworkError: for an unknown purpose or audience.

    Examples:
        >>> from foilwork.limits import LimitTable, check_limits
        >>> from foilwork.mix import Composition, DeclaredProduct, Ingredient
        >>> developer = DeclaredProduct("developer", [Ingredient("hydrogen peroxide", 9, cas="7722-84-1")])
        >>> bowl = Composition([(60, developer), (30, DeclaredProduct("lightener", []))])
        >>> report = check_limits(LimitTable("EU"), bowl, "lightening")
        >>> [(f["verdict"], f["margin_percentage_points"]) for f in report.findings()]
        [('within', 6.0)]

    Source:
        Each finding carries its own: act and entry, date of the list, how it was obtained.
    """
def check_peroxide(
    jurisdiction: str, strength_ww: _Percent, purpose: str = "lightening", audience: str = "professional"
) -> LimitReport:
    """Hold the hydrogen peroxide strength of a mixed bowl against a built-in table.

    Args:
        jurisdiction: code or name, for example ``"EU"``.
        strength_ww: strength as applied in % w/w, as a number or (low, best, high).
        purpose: as for :func:`check_limits`.
        audience: as for :func:`check_limits`.

    Raises:
        FoilworkError: when there is no such table, purpose or audience, or the strength is out of range.

    Examples:
        >>> from foilwork.limits import check_peroxide
        >>> check_peroxide("EU", 13).exceeded
        True
    """
def salt_factor(cas: str, counted_as: str) -> float | None:
    """Grams of the form the law counts in one gram of a substance: salt to base, releaser to hydrogen peroxide.

    Args:
        cas: CAS number of the substance.
        counted_as: the form, for example ``"free-base"``, ``"h2o2-released"`` or ``"so2"``.

    Returns:
        The factor, or None where it is not known.

    Raises:
        FoilworkError: for a mistyped CAS number or an unknown form.

    Examples:
        >>> from foilwork.limits import salt_factor
        >>> round(salt_factor("124-43-6", "h2o2-released"), 4)
        0.3616

    Source:
        Formulas from chemicals 1.5.2, atomic weights from periodictable 2.1.0.
    """

# --- colour ---------------------------------------------------------------------------------------------------------

@final
class Level:
    """How light hair is, on the European naming: 1 black to 10 lightest blond, up to 12 on scales that run so.

    Args:
        level: a number, a text such as ``"6.5"`` or ``"6,5"``, or a level.

    Raises:
        FoilworkError: outside 1 to 12, or not a number.

    Examples:
        >>> from foilwork.colour import Level
        >>> level = Level("6,5")
        >>> level.number, level.name()
        (6.5, 'between dark blond and medium blond')
        >>> Level(5).name("us")
        'medium brown'
        >>> Level(6).underlying_pigment()["neutralised_by"]
        ['blue', 'blue']
    """
    def __new__(cls, level: float | str | Level) -> Level: ...
    @property
    def number(self) -> float:
        """The number of the level."""
    def name(self, naming: Literal["european", "us"] = "european") -> str | None:
        """The name of the level, ``None`` above 10.

        Args:
            naming: ``"european"`` or ``"us"``; the two differ at levels 5 to 7.

        Raises:
            FoilworkError: another naming.
        """
    def underlying_pigment(self) -> dict[str, Any]:
        """The pigment exposed when natural hair is lightened to this level, and the hue that neutralises it.

        Returns:
            ``exposed``, ``hues``, ``neutralised_by`` (a pair each, darker row first; ``None`` where nothing shows) and
            ``basis``.
        """
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
    """One shade of your own chart.

    Args:
        code: the code printed on the tube.
        level: level it gives on white hair, a number, a text or a ``Level``.
        tones: hue words, the main one first; each following one counts half as much. Empty is neutral.
        strength_percent: how much it deposits of what its level says; 0 is a clear diluter.

    Raises:
        FoilworkError: no code, a level off the scale, a word that is not one of the twelve hues.

    Examples:
        >>> from foilwork.colour import Shade
        >>> Shade("9-7", 9, ["violet"])
        <Shade 9-7 (level 9, violet)>
    """
    def __new__(
        cls, code: str, level: float | str | Level, tones: Sequence[str] = (), strength_percent: float = 100.0
    ) -> Shade: ...
    @property
    def code(self) -> str:
        """The code printed on the tube."""
    @property
    def level(self) -> float:
        """The level it gives on white hair."""
    @property
    def tones(self) -> list[tuple[str, float]]:
        """The hues of its tone with their shares in percent, largest first."""
    @property
    def strength_percent(self) -> float:
        """How much it deposits of what its level says, in percent."""
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...

@final
class Swatch:
    """A modelled or measured colour of hair, with bounds; made by ``swatch``.

    A notebook shows it as a patch of colour with the same facts in words beside it.
    """
    @property
    def lab(self) -> tuple[float, float, float]:
        r"""L\*, a\*, b\* of the best estimate (D65, 2 degrees unless measured otherwise)."""
    @property
    def bounds(self) -> dict[str, tuple[float, float]]:
        """Lowest and highest ``"l"``, ``"a"`` and ``"b"`` over the assumptions of the model."""
    @property
    def uncertainty(self) -> float:
        """Largest CIEDE2000 from the best estimate to any set of assumptions."""
    @property
    def srgb(self) -> str:
        """The nearest colour a screen can show, such as ``"#9d8b6c"``."""
    @property
    def hue(self) -> str | None:
        """The hue in the words of the wheel, ``None`` for a colour too grey to tell."""
    @property
    def basis(self) -> str:
        """What the colour rests on: ``"assumed"`` or ``"measured by you"``."""
    @property
    def notice(self) -> str:
        """The words to show beside the colour."""
    def difference(self, other: Swatch) -> dict[str, float]:
        """From this colour to another: ``ciede2000``, ``lighter``, ``redder``, ``yellower``, ``more_intense``.

        Args:
            other: the other swatch.
        """
    def beside(self, other: Swatch, share_percent: float) -> Swatch:
        """Strands of this and another colour side by side, as a section with highlights looks.

        Args:
            other: the other swatch.
            share_percent: share of the other, from 0 to 100 %.

        Raises:
            FoilworkError: a share outside 0 to 100 %.
        """
    def _repr_html_(self) -> str: ...

@final
class TonerAnswer:
    """The answer of a toner search; made by ``toner``.

    A notebook shows target and prediction as swatches with their text, the mixes and the findings.
    """
    @property
    def reached(self) -> bool:
        """Whether the nearest mix is predicted as close to the target as two readings of one tress."""
    @property
    def mix_g(self) -> list[tuple[str, float]]:
        """The nearest mix: codes with masses in g, largest first."""
    @property
    def predicted(self) -> Swatch:
        """The toned hair as predicted, with bounds."""
    @property
    def target(self) -> Swatch:
        """The colour asked for."""
    @property
    def residual(self) -> float:
        """CIEDE2000 from the prediction to the target."""
    @property
    def before(self) -> float:
        """CIEDE2000 from the untoned hair to the target."""
    @property
    def alternatives(self) -> list[tuple[list[tuple[str, float]], float]]:
        """Other mixes as (codes with masses in g, CIEDE2000 to the target), nearest first."""
    def findings(self) -> list[dict[str, str]]:
        """What the rules of the trade say: dicts with ``rule``, ``weight``, ``text`` and ``basis``."""
    def _repr_html_(self) -> str: ...

def complement(hue: str) -> str:
    """The hue opposite on the colour wheel.

    Args:
        hue: one of the twelve hues, such as ``"yellow-orange"``.

    Raises:
        FoilworkError: not one of the twelve.

    Source:
        Pairs of primaries and secondaries as printed in a cosmetology study guide; the pairs between, common practice.

    Examples:
        >>> from foilwork.colour import complement
        >>> complement("yellow")
        'violet'
    """
def pre_pigmentation(
    lightened_level: float | str | Level, target_level: float | str | Level
) -> dict[str, Any] | None:
    """What to put back before lightened hair is taken darker; ``None`` for less than two levels.

    Args:
        lightened_level: level of the lightened hair.
        target_level: darker level wanted.

    Returns:
        ``tones`` (hue to share in percent), ``level`` and ``text``, or ``None``.

    Raises:
        FoilworkError: a level outside 1 to 12.

    Source:
        Common practice.

    Examples:
        >>> from foilwork.colour import pre_pigmentation
        >>> pre_pigmentation(9, 6)["level"]
        7.0
    """
def read_shades(text: str) -> list[Shade]:
    """Read the shades of a chart file.

    Args:
        text: the text of a TOML chart; see ``examples/juniper_and_tide_shades.toml``.

    Returns:
        The shades in the order of the file.

    Raises:
        FoilworkError: the first mistake, with its line, the shade and the way out.

    Examples:
        >>> from foilwork.colour import read_shades
        >>> read_shades('''
        ... name = "Juniper & Tide"
        ... [[shade]]
        ... code = "9-7"
        ... level = 9
        ... tones = ["violet"]
        ... ''')
        [<Shade 9-7 (level 9, violet)>]
    """
def swatch(
    level: float | str | Level | None = None,
    *,
    lightened_from: float | str | Level | None = None,
    tones: Sequence[str] | None = None,
    white_percent: float = 0.0,
    lab: tuple[float, float, float] | None = None,
    observer_degrees: int = 10,
) -> Swatch:
    r"""The colour of hair: a model with bounds, or a measurement.

    Args:
        level: level of the hair, a number, a text or a ``Level``; ``None`` for white hair or with ``lab``.
        lightened_from: natural level it was lightened from; ``None`` for natural hair (or with ``tones``).
        tones: hue words of a colour of this level, shown as on white hair.
        white_percent: share of white hair mixed in, from 0 to 100 %.
        lab: L\*, a\*, b\* measured on the hair, instead of a level.
        observer_degrees: observer of ``lab``, 2 or 10.

    Returns:
        A ``Swatch``; everything but a measurement is a model, not a photograph.

    Raises:
        FoilworkError: a value out of range, or ``lab`` together with ``level``.

    Source:
        Melanin absorptions of pbrt version 3 (hair.cpp, 2016); how much melanin a level has is assumed. The misfits of
        the model are listed in the documentation of the Rust module ``colour``.

    Examples:
        >>> from foilwork.colour import swatch
        >>> hair = swatch(8, lightened_from=4)
        >>> hair.notice
        'model, not a photograph'
        >>> hair.lab[0] > swatch(4).lab[0]
        True
    """
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
) -> TonerAnswer:
    r"""Find the mix of shades that brings exposed pigment nearest to a target.

    Every choice of up to ``most_shades`` shades is tried, in masses the scale can weigh; dyes mix subtractively.

    Args:
        shades: the shades at hand, at most 48.
        lifted_level: level the hair was lifted to.
        natural_level: natural level it was lifted from; not needed with ``exposed_lab``.
        exposed_lab: L\*, a\*, b\* measured on the lifted hair, instead of the model.
        target_level: level wanted, with ``target_tones``.
        target_tones: hue words wanted, the main one first; empty is neutral.
        target_lab: L\*, a\*, b\* wanted, instead of level and tones.
        observer_degrees: observer of the measured colours, 2 or 10.
        porous: whether the hair is porous.
        most_shades: most shades in a mix, from 1 to 4.
        bowl_g: mass of all shades together, without developer, in g.
        division_g: division of the scale, in g.

    Returns:
        A ``TonerAnswer`` with the mix, alternatives, what is left undone and findings.

    Raises:
        FoilworkError: no shades, a value out of range, a bowl the scale cannot weigh, or no single target.

    Source:
        The model of ``swatch``; how much of a shade hair takes up is assumed (half, from a quarter to all). A strand
        test decides.

    Examples:
        >>> from foilwork.colour import Shade, toner
        >>> shades = [Shade("10-0", 10), Shade("9-7", 9, ["violet"]), Shade("8-8", 8, ["blue-violet"])]
        >>> answer = toner(shades, lifted_level=9, natural_level=5, target_level=8, target_tones=["violet"])
        >>> sum(mass for _, mass in answer.mix_g)
        30.0
        >>> answer.residual < answer.before
        True
    """
def lab_to_srgb(lab: tuple[float, float, float], *, observer_degrees: int = 2) -> tuple[str, bool]:
    r"""CIELAB to the nearest sRGB colour a screen can show.

    Args:
        lab: L\*, a\*, b\* as three numbers.
        observer_degrees: 2 or 10; the white is D65, adapted to that of sRGB.

    Returns:
        The colour, such as ``"#f2d16b"``, and whether it lies within the gamut of sRGB.

    Raises:
        FoilworkError: a coordinate out of range.

    Examples:
        >>> from foilwork.colour import lab_to_srgb
        >>> lab_to_srgb((100, 0, 0))
        ('#ffffff', True)
    """
def srgb_to_lab(srgb: str) -> tuple[float, float, float]:
    r"""An sRGB colour to CIELAB for D65 and the 2 degree observer.

    Args:
        srgb: six hexadecimal digits after a ``#``.

    Returns:
        L\*, a\*, b\*.

    Raises:
        FoilworkError: not such a text.

    Examples:
        >>> from foilwork.colour import srgb_to_lab
        >>> [round(value, 1) + 0.0 for value in srgb_to_lab("#ffffff")]
        [100.0, 0.0, 0.0]
    """
@overload
def formula_level(
    natural_level: float,
    target_level: float,
    *,
    product: str = "permanent",
    coloured: bool = False,
    top_level: int = 10,
    errors: Literal["raise", "nan"] = "raise",
) -> float:
    """The level a permanent shade must have to bring natural hair to the target: ``2 * target - natural``.

    Args:
        natural_level: natural level, a number or an array of any shape.
        target_level: level wanted, a number or an array of any shape.
        product: ``"permanent"``; every other product is refused with the reason.
        coloured: whether the hair carries artificial colour, which colour does not lighten.
        top_level: top of the scale the shades are numbered on, 10 or 12.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.

    Returns:
        The level of the shade, a float or an array.

    Raises:
        FoilworkError: another product, coloured hair to be lifted, or a shade outside the scale.

    Source:
        CK-12 Foundation, Ratios: The Perfect Blond (worked example). A rule of thumb: a strand test decides.

    Examples:
        >>> from foilwork.colour import formula_level
        >>> formula_level(6, 8)
        10.0
    """
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
) -> float:
    """The level natural hair reaches under a permanent shade: the mean of natural and applied level.

    Args:
        natural_level: natural level, a number or an array of any shape.
        applied_level: level of the shade, a number or an array of any shape.
        product: ``"permanent"``; every other product is refused with the reason.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.

    Returns:
        The resulting level, a float or an array. White hair takes the shade's own level instead.

    Raises:
        FoilworkError: another product, or a level outside 1 to 12.

    Source:
        A colour educator's teaching blog, 2022. A rule of thumb: a strand test decides.

    Examples:
        >>> from foilwork.colour import result_level
        >>> result_level(2, 6)
        4.0
    """
@overload
def result_level(
    natural_level: ArrayLike,
    applied_level: ArrayLike,
    *,
    product: str = "permanent",
    errors: Literal["raise", "nan"] = "raise",
) -> NDArray[float64]: ...
@overload
def lift_needed(from_level: float, target_level: float, *, errors: Literal["raise", "nan"] = "raise") -> float:
    """How far hair has to go, in levels: positive is lift, negative is deposit.

    Args:
        from_level: level now, a number or an array of any shape.
        target_level: level wanted, a number or an array of any shape.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.

    Returns:
        Signed levels, a float or an array.

    Raises:
        FoilworkError: a level outside 1 to 12.

    Examples:
        >>> from foilwork.colour import lift_needed
        >>> lift_needed(5, 9)
        4.0
    """
@overload
def lift_needed(
    from_level: ArrayLike, target_level: ArrayLike, *, errors: Literal["raise", "nan"] = "raise"
) -> NDArray[float64]: ...
@overload
def ciede2000(  # type: ignore[overload-overlap]
    lab_1: tuple[float, float, float], lab_2: tuple[float, float, float], *, errors: Literal["raise", "nan"] = "raise"
) -> float:
    r"""CIEDE2000 colour difference.

    Args:
        lab_1: L\*, a\*, b\*: three numbers or an array of shape (..., 3).
        lab_2: the same, with the same white; the shapes broadcast.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.

    Returns:
        A float, or an array of the broadcast shape without the last axis. NaN stays NaN.

    Raises:
        FoilworkError: L\* outside 0 to 100, a\* or b\* outside -200 to 200.

    Source:
        Sharma, Wu, Dalal, Color Res. Appl. 30(1):21-30, 2005; computed by the Rust crate palette.

    Examples:
        >>> from foilwork.colour import ciede2000
        >>> round(ciede2000((50, 2.6772, -79.7751), (50, 0, -82.7485)), 4)
        2.0425
    """
@overload
def ciede2000(lab_1: ArrayLike, lab_2: ArrayLike, *, errors: Literal["raise", "nan"] = "raise") -> NDArray[float64]: ...
@overload
def lab_to_xyz(  # type: ignore[overload-overlap]
    lab: tuple[float, float, float], *, observer_degrees: int = 2, errors: Literal["raise", "nan"] = "raise"
) -> tuple[float, float, float]:
    r"""CIELAB to tristimulus values X, Y, Z with Y = 1 for white.

    Args:
        lab: L\*, a\*, b\*: three numbers or an array of shape (..., 3).
        observer_degrees: 2 or 10; the white is D65.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.

    Returns:
        Three numbers or an array of the same shape.

    Raises:
        FoilworkError: a coordinate out of range.

    Source:
        CIE 1976; whites of ASTM E308, computed by the Rust crate palette.

    Examples:
        >>> from foilwork.colour import lab_to_xyz
        >>> lab_to_xyz((100, 0, 0), observer_degrees=10)
        (0.94811, 1.0, 1.07304)
    """
@overload
def lab_to_xyz(
    lab: ArrayLike, *, observer_degrees: int = 2, errors: Literal["raise", "nan"] = "raise"
) -> NDArray[float64]: ...
@overload
def xyz_to_lab(  # type: ignore[overload-overlap]
    xyz: tuple[float, float, float], *, observer_degrees: int = 2, errors: Literal["raise", "nan"] = "raise"
) -> tuple[float, float, float]:
    """Tristimulus values X, Y, Z (Y = 1 for white) to CIELAB.

    Args:
        xyz: X, Y, Z: three numbers or an array of shape (..., 3).
        observer_degrees: 2 or 10; the white is D65.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.

    Returns:
        Three numbers or an array of the same shape.

    Raises:
        FoilworkError: a value outside 0 to 2.

    Source:
        CIE 1976; whites of ASTM E308, computed by the Rust crate palette.

    Examples:
        >>> from foilwork.colour import xyz_to_lab
        >>> [round(value, 6) + 0.0 for value in xyz_to_lab((0.95047, 1.0, 1.08883))]
        [100.0, 0.0, 0.0]
    """
@overload
def xyz_to_lab(
    xyz: ArrayLike, *, observer_degrees: int = 2, errors: Literal["raise", "nan"] = "raise"
) -> NDArray[float64]: ...
@overload
def lab_to_lch(  # type: ignore[overload-overlap]
    lab: tuple[float, float, float], *, errors: Literal["raise", "nan"] = "raise"
) -> tuple[float, float, float]:
    r"""CIELAB to lightness, chroma and hue angle in degrees.

    Args:
        lab: L\*, a\*, b\*: three numbers or an array of shape (..., 3).
        errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.

    Returns:
        L\*, C\*, h: three numbers or an array of the same shape; h is from 0 to 360 degrees.

    Raises:
        FoilworkError: a coordinate out of range.

    Examples:
        >>> from foilwork.colour import lab_to_lch
        >>> lab_to_lch((50, 0, 20))
        (50.0, 20.0, 90.0)
    """
@overload
def lab_to_lch(lab: ArrayLike, *, errors: Literal["raise", "nan"] = "raise") -> NDArray[float64]: ...
@overload
def lch_to_lab(  # type: ignore[overload-overlap]
    lch: tuple[float, float, float], *, errors: Literal["raise", "nan"] = "raise"
) -> tuple[float, float, float]:
    r"""Lightness, chroma and hue angle to CIELAB.

    Args:
        lch: L\*, C\*, h in degrees: three numbers or an array of shape (..., 3).
        errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.

    Returns:
        L\*, a\*, b\*: three numbers or an array of the same shape.

    Raises:
        FoilworkError: L\* outside 0 to 100, C\* outside 0 to 200, h outside -360 to 360 degrees.

    Examples:
        >>> from foilwork.colour import lch_to_lab
        >>> [round(value, 9) for value in lch_to_lab((50, 20, 90))]
        [50.0, 0.0, 20.0]
    """
@overload
def lch_to_lab(lch: ArrayLike, *, errors: Literal["raise", "nan"] = "raise") -> NDArray[float64]: ...

# --- money ----------------------------------------------------------------------------------------------------------

# --- service --------------------------------------------------------------------------------------------------------

@final
class Plan:
    """A service plan: what to weigh, in which order, what was checked, what it costs.

    Made by :func:`plan`. ``str(plan)`` is the bench sheet; ``plan.data()`` is the whole plan as plain Python data.
    """

    @property
    def is_blocked(self) -> bool:
        """Whether any finding says stop; do not begin then."""
    def text(self) -> str:
        """The bench sheet as plain text, 80 columns wide."""
    def json(self) -> str:
        """The plan as JSON text."""
    def data(self) -> dict[str, Any]:
        """The plan as dicts, lists, strings and numbers; every key carries its unit, every estimate its bounds."""
    def cards(self) -> list[dict[str, Any]]:
        """The mixing cards, one for each fresh bowl, as dicts: who, what, lines, strength on the hair, times."""
    def _repr_html_(self) -> str: ...

def plan(text: str, format: Literal["toml", "json"] = "toml") -> Plan:
    """Plan a service from the text of a service file.

    Args:
        text: the file's text.
        format: ``"toml"`` or ``"json"``; both have the same shape.

    Returns:
        The plan. Findings that say stop are part of it; ask ``plan.is_blocked``.

    Raises:
        ServiceFileError: everything that is wrong with the file, each with its line; ``.problems`` lists it.

    Examples:
        >>> import foilwork
        >>> try:
        ...     foilwork.plan('format = 2')
        ... except foilwork.ServiceFileError as error:
        ...     print(error.problems[-1])
        (1, 'format', '2 is out of range: give 1')
    """
def service_schema() -> dict[str, Any]:
    """The JSON Schema of a service file (draft 2020-12), as plain Python data.

    Returns:
        The schema.

    Examples:
        >>> from foilwork import service_schema
        >>> service_schema()["title"]
        'ServiceFile'
    """
