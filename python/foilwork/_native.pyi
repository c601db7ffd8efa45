"""Types of the compiled half. Docstrings here are copied from the compiled functions by ``make stubs``."""

from collections.abc import Sequence
from decimal import Decimal
from typing import Any, Literal, TypeAlias, final, overload

from _typeshed import SupportsKeysAndGetItem
from numpy import float64, int64
from numpy.typing import ArrayLike, NDArray

__all__ = [
    "Additive",
    "Bowl",
    "BowlPlan",
    "Composition",
    "CostTable",
    "DeclaredProduct",
    "DiscountBreakEven",
    "DiscountedPrice",
    "FoilworkError",
    "HandlingFact",
    "Ingredient",
    "LabelReadings",
    "Level",
    "LimitReport",
    "LimitTable",
    "MarginOfSafety",
    "SalesMixLine",
    "SalesMixPlan",
    "Money",
    "OutOfRangeWarning",
    "Pay",
    "Plan",
    "PriceListEntry",
    "PriceRule",
    "PricedServices",
    "Quote",
    "QuoteDriver",
    "RankedService",
    "Ratio",
    "Recipe",
    "RentOrWageAnswer",
    "Reorder",
    "SalesNeeded",
    "ServiceCosts",
    "ServiceFileError",
    "ServicePrice",
    "SetPrice",
    "Shade",
    "ShelfBlend",
    "Stock",
    "Swatch",
    "TaxedPrice",
    "TonerAnswer",
    "Weighing",
    "add_tax",
    "allocate",
    "apply_discount",
    "as_applied",
    "blend_shelf",
    "blend_two",
    "bowls",
    "break_even",
    "check_limits",
    "check_peroxide",
    "ciede2000",
    "commission_pay",
    "complement",
    "convert",
    "convert_amount",
    "convert_bounds",
    "cost_columns",
    "density",
    "density_bounds",
    "dilute",
    "dilute_volume",
    "dilution_table",
    "discount_break_even",
    "end_price",
    "formula_level",
    "half_life_days",
    "handling",
    "handling_facts",
    "jurisdictions",
    "lab_to_lch",
    "lab_to_srgb",
    "lab_to_xyz",
    "labour_cost",
    "labour_per_minute",
    "lch_to_lab",
    "lift_needed",
    "loss_rate",
    "loss_rate_from_half_life",
    "made_up",
    "main",
    "make_up",
    "margin_and_markup",
    "margin_of_safety",
    "margin_to_markup",
    "markup_to_margin",
    "minimum_bowl",
    "minimum_mass",
    "mix_strengths",
    "sales_mix_target",
    "mix_volumes",
    "mixing_card",
    "molar_volumes",
    "natural_share",
    "overhead_cost",
    "overhead_per_chair_hour",
    "packs_needed",
    "permanganate_strength",
    "permanganate_titre",
    "plan",
    "pre_pigmentation",
    "price_before_discount",
    "price_from_margin",
    "price_from_markup",
    "price_list",
    "price_services",
    "price_services_csv",
    "price_services_json",
    "product_cost",
    "productivity",
    "profit_before_tax",
    "quote_range",
    "rank_by_chair_hour",
    "read_label",
    "read_shades",
    "rent_or_wage",
    "reorder",
    "result_level",
    "round_to_scale",
    "salt_factor",
    "service_schema",
    "share_tips",
    "srgb_to_lab",
    "strength_after",
    "strength_units",
    "strength_ww",
    "supply_cost",
    "swatch",
    "take_tax_out",
    "time_until",
    "toner",
    "unit_price",
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
    def given_part(self, part: int, mass_g: float) -> list[float]:
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

def minimum_mass(division_g: float, tolerance_percent: float) -> float:
    """The least a scale can weigh of one thing so that rounding is off by no more than a tolerance.

    Args:
        division_g: division of the scale in g.
        tolerance_percent: largest error in percent of the mass.

    Returns:
        The mass in g: half a division over the tolerance.

    Raises:
        FoilworkError: for a tolerance below 0.01 %, or a division of 0 g.

    Examples:
        >>> from foilwork.mix import minimum_mass
        >>> minimum_mass(1, 5)
        10.0
    """
def weigh(masses_g: Sequence[float], division_g: float) -> Weighing:
    """Round parts to a scale: they add up to the rounded total, and the worst error of ratio is the least possible.

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
        """Whether everything in the bowl was judged and nothing found exceeded; no table is complete."""
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
            ``exposed``, ``hues``, ``strength``, ``neutralised_by`` (a pair each, darker row first; ``None`` where nothing
            shows) and ``basis``. How much shows is ``swatch(level, lightened_from=natural)``.
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
        """L*, a*, b* of the best estimate (D65, 2 degrees unless measured otherwise)."""
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
        """Whether the best mix is predicted as close to the target as two readings of one tress, and closer than the hair was."""
    @property
    def mix_g(self) -> list[tuple[str, float]]:
        """The best mix: codes with masses in g, largest first; a further shade counts only where it is worth 0.25 CIEDE2000."""
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
        """Other mixes as (codes with masses in g, CIEDE2000 to the target); the nearest of all is among them."""
    def findings(self) -> list[dict[str, str]]:
        """What the rules of the trade say: dicts with ``rule``, ``weight``, ``text`` and ``basis``."""
    def data(self) -> dict[str, Any]:
        """The whole answer as dicts, lists, strings and numbers; every key carries its unit."""
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

def pre_pigmentation(lightened_level: float | str | Level, target_level: float | str | Level) -> dict[str, Any] | None:
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
    """The colour of hair: a model with bounds, or a measurement.

    Args:
        level: level of the hair, a number, a text or a ``Level``; ``None`` for white hair or with ``lab``.
        lightened_from: natural level it was lightened from; ``None`` for natural hair (or with ``tones``).
        tones: hue words of a colour of this level, shown as on white hair.
        white_percent: share of white hair mixed in, from 0 to 100 %.
        lab: L*, a*, b* measured on the hair, instead of a level.
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
    """Find the mix of shades that brings exposed pigment nearest to a target.

    Every choice of up to ``most_shades`` shades is tried, in masses the scale can weigh; dyes mix subtractively.

    Args:
        shades: the shades at hand, at most 48 (24 when mixes may have 4 shades).
        lifted_level: level the hair was lifted to.
        natural_level: natural level it was lifted from; not needed with ``exposed_lab``.
        exposed_lab: L*, a*, b* measured on the lifted hair, instead of the model.
        target_level: level wanted, with ``target_tones``.
        target_tones: hue words wanted, the main one first; empty is neutral.
        target_lab: L*, a*, b* wanted, instead of level and tones.
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
    """CIELAB to the nearest sRGB colour a screen can show.

    Args:
        lab: L*, a*, b* as three numbers.
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
    """An sRGB colour to CIELAB for D65 and the 2 degree observer.

    Args:
        srgb: six hexadecimal digits after a ``#``.

    Returns:
        L*, a*, b*.

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
    """CIEDE2000 colour difference.

    Args:
        lab_1: L*, a*, b*: three numbers or an array of shape (..., 3).
        lab_2: the same, with the same white; the shapes broadcast.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.

    Returns:
        A float, or an array of the broadcast shape without the last axis. NaN stays NaN.

    Raises:
        FoilworkError: L* outside 0 to 100, a* or b* outside -200 to 200.

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
    """CIELAB to tristimulus values X, Y, Z with Y = 1 for white.

    Args:
        lab: L*, a*, b*: three numbers or an array of shape (..., 3).
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
    """CIELAB to lightness, chroma and hue angle in degrees.

    Args:
        lab: L*, a*, b*: three numbers or an array of shape (..., 3).
        errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.

    Returns:
        L*, C*, h: three numbers or an array of the same shape; h is from 0 to 360 degrees.

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
    """Lightness, chroma and hue angle to CIELAB.

    Args:
        lch: L*, C*, h in degrees: three numbers or an array of shape (..., 3).
        errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.

    Returns:
        L*, a*, b*: three numbers or an array of the same shape.

    Raises:
        FoilworkError: L* outside 0 to 100, C* outside 0 to 200, h outside -360 to 360 degrees.

    Examples:
        >>> from foilwork.colour import lch_to_lab
        >>> [round(value, 9) for value in lch_to_lab((50, 20, 90))]
        [50.0, 0.0, 20.0]
    """

@overload
def lch_to_lab(lch: ArrayLike, *, errors: Literal["raise", "nan"] = "raise") -> NDArray[float64]: ...

# --- money ----------------------------------------------------------------------------------------------------------

_Exact: TypeAlias = Decimal | int | str
_Number: TypeAlias = Decimal | float | str
_Mapping: TypeAlias = SupportsKeysAndGetItem[str, Any]

@final
class Money:
    """An amount of money: a whole number of minor units (cents, pence, yen, fils) and an ISO 4217 currency.

    Sums are exact or refused: two currencies never meet, nothing overflows silently, and there is no division
    (:func:`allocate` shares an amount out without losing a minor unit). Immutable and hashable.

    Args:
        amount: units of the currency as ``decimal.Decimal``, ``int`` or ``str``. A float is refused.
        currency: three-letter code in capitals.
        rounding: how an amount between two minor units is rounded; without it, such an amount is refused. One of
            ``"midpoint-away-from-zero"`` (half up), ``"midpoint-nearest-even"``, ``"midpoint-toward-zero"``,
            ``"to-zero"``, ``"away-from-zero"``, ``"to-negative-infinity"``, ``"to-positive-infinity"``.

    Raises:
        FoilworkError: unknown currency, no decimal number, too many decimals, or beyond 64 bits of minor units.

    Examples:
        >>> from foilwork.money import Money
        >>> Money("12.50", "EUR") + Money("0.75", "EUR")
        Money('13.25', 'EUR')
        >>> Money("4.165", "EUR", "midpoint-nearest-even").minor
        416
        >>> Money("12.50", "EUR").amount
        Decimal('12.50')
    """
    def __new__(cls, amount: _Exact, currency: str, rounding: str | None = None) -> Money: ...
    @classmethod
    def from_minor(cls, minor: int, currency: str) -> Money:
        """Take a whole number of minor units."""
    @property
    def amount(self) -> Decimal:
        """The amount in units of the currency, with all its decimals."""
    @property
    def minor(self) -> int:
        """The whole number of minor units."""
    @property
    def currency(self) -> str:
        """The three-letter code."""
    def __add__(self, value: Money, /) -> Money: ...
    def __radd__(self, value: Money, /) -> Money: ...
    def __sub__(self, value: Money, /) -> Money: ...
    def __rsub__(self, value: Money, /) -> Money: ...
    def __mul__(self, value: int, /) -> Money: ...
    def __rmul__(self, value: int, /) -> Money: ...
    def __neg__(self) -> Money: ...
    def __bool__(self) -> bool: ...
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __lt__(self, value: Money, /) -> bool: ...
    def __le__(self, value: Money, /) -> bool: ...
    def __gt__(self, value: Money, /) -> bool: ...
    def __ge__(self, value: Money, /) -> bool: ...
    def __hash__(self) -> int: ...
    def __format__(self, spec: str) -> str: ...
    def __reduce__(self) -> tuple[type[Money], tuple[str, str]]: ...

@final
class TaxedPrice:
    """A price with its tax: ``net + tax == gross``, always."""
    @property
    def net(self) -> Money:
        """Without the tax."""
    @property
    def tax(self) -> Money:
        """The tax."""
    @property
    def gross(self) -> Money:
        """With the tax."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class SetPrice:
    """A net price over a cost, with both percentages, so that neither is taken for the other."""
    @property
    def cost(self) -> Money:
        """What the service costs."""
    @property
    def price(self) -> Money:
        """The net price."""
    @property
    def profit(self) -> Money:
        """Price less cost."""
    @property
    def margin_percent(self) -> Decimal:
        """Profit in percent of the price."""
    @property
    def markup_percent(self) -> Decimal:
        """Profit in percent of the cost."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class DiscountedPrice:
    """A price with a discount: ``before - off == after``, always."""
    @property
    def before(self) -> Money:
        """The full price."""
    @property
    def off(self) -> Money:
        """What is taken off."""
    @property
    def after(self) -> Money:
        """What is left to pay."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class DiscountBreakEven:
    """What an offer must bring in to leave as much as before."""
    @property
    def contribution_before(self) -> Money:
        """What one service leaves at the full price."""
    @property
    def contribution_after(self) -> Money:
        """What it leaves at the reduced price."""
    @property
    def count_needed(self) -> int:
        """How many services the offer must sell, rounded up."""
    @property
    def extra_percent(self) -> Decimal:
        """By how much that is more, in percent, unrounded."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class ServicePrice:
    """A price, its tax, and what it really leaves after rounding, price ending and card fee."""
    @property
    def taxed(self) -> TaxedPrice:
        """Net, tax and gross."""
    @property
    def card_fee(self) -> Money:
        """What the card terminal keeps."""
    @property
    def set_price(self) -> SetPrice:
        """Net price over full cost, card fee included."""
    @property
    def target_net(self) -> Money:
        """Net price at which the target is met exactly."""
    @property
    def per_chair_hour(self) -> Decimal | None:
        """What the price leaves for an hour of the chair, unrounded; ``None`` without a time."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class QuoteDriver:
    """How much one part of a quote moves the net price, alone."""
    @property
    def what(self) -> str:
        """The part."""
    @property
    def low(self) -> Money:
        """Net price with this part at its least."""
    @property
    def high(self) -> Money:
        """Net price with this part at its most."""
    @property
    def swing(self) -> Money:
        """The difference."""
    @property
    def share_percent(self) -> Decimal | None:
        """The swing in percent of all swings; together they are exactly 100, ``None`` when nothing moves."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class Quote:
    """A price from-to, with what drives it."""
    @property
    def low(self) -> ServicePrice:
        """Every part at its least."""
    @property
    def best(self) -> ServicePrice:
        """Every part as expected."""
    @property
    def high(self) -> ServicePrice:
        """Every part at its most."""
    @property
    def drivers(self) -> list[QuoteDriver]:
        """What moves the price, the most important first."""
    @property
    def deposit(self) -> Money:
        """What is paid in advance; never more than the low end."""
    @property
    def balance(self) -> Money:
        """What is left to pay at the expected price."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class PriceListEntry:
    """One entry of a price list, gross."""
    @property
    def service(self) -> str:
        """The service."""
    @property
    def client_class(self) -> str:
        """The class of client."""
    @property
    def low(self) -> Money:
        """When all goes well."""
    @property
    def usual(self) -> Money:
        """As expected."""
    @property
    def high(self) -> Money:
        """When all goes badly."""
    @property
    def driver(self) -> QuoteDriver | None:
        """What moves the price most; ``None`` when nothing does."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class SalesNeeded:
    """How much must be sold to reach a goal."""
    @property
    def count_exact(self) -> Decimal:
        """How many sales, unrounded."""
    @property
    def count(self) -> int:
        """How many whole sales, rounded up."""
    @property
    def sales(self) -> Money:
        """The net takings of the whole sales."""
    @property
    def sales_exact(self) -> Money:
        """The net takings at which the goal is met exactly."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class MarginOfSafety:
    """How far sales can fall before there is a loss."""
    @property
    def amount(self) -> Money:
        """Sales less break-even sales."""
    @property
    def percent_of_sales(self) -> Decimal:
        """The same in percent of the sales."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class SalesMixLine:
    """One service of a mix that reaches a goal."""
    @property
    def what(self) -> str:
        """The service."""
    @property
    def count(self) -> int:
        """How many."""
    @property
    def sales(self) -> Money:
        """Their net takings."""
    @property
    def contribution(self) -> Money:
        """What they leave."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class SalesMixPlan:
    """How many of each service reach a goal."""
    @property
    def average_contribution(self) -> Decimal:
        """What the average service leaves, unrounded."""
    @property
    def count_exact(self) -> Decimal:
        """How many services in all, unrounded."""
    @property
    def count(self) -> int:
        """How many whole services in all, so that the goal is met."""
    @property
    def services(self) -> list[SalesMixLine]:
        """Each service."""
    @property
    def sales(self) -> Money:
        """Net takings of all of them."""
    @property
    def left_over(self) -> Money:
        """What they leave beyond the goal."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class RankedService:
    """A service with what it earns for an hour of the chair."""
    @property
    def what(self) -> str:
        """The service."""
    @property
    def contribution(self) -> Money:
        """Net price less variable cost."""
    @property
    def per_chair_hour(self) -> Decimal:
        """The contribution for one hour of the chair, unrounded."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class Pay:
    """What someone is paid for a period."""
    @property
    def base(self) -> Money:
        """The wage or retainer."""
    @property
    def commission(self) -> Money:
        """The commission."""
    @property
    def total(self) -> Money:
        """Both."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class RentOrWageAnswer:
    """Chair rent against wage."""
    @property
    def break_even_takings(self) -> Money:
        """Net takings above which renting leaves more."""
    @property
    def renting(self) -> Money:
        """What is left when renting, at the takings given."""
    @property
    def employed(self) -> Money:
        """What is earned when employed, at the takings given."""
    @property
    def difference(self) -> Money:
        """Renting less employed."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class Reorder:
    """When to order, and how much."""
    @property
    def reorder_point(self) -> Decimal:
        """Order at this stock or below, in the unit of the stock."""
    @property
    def due(self) -> bool:
        """Whether that is the case now."""
    @property
    def packs(self) -> int:
        """How many whole packs to order; 0 while nothing is due."""
    @property
    def stock_days(self) -> Decimal | None:
        """How many days the stock on hand lasts; ``None`` when nothing is used."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...

@final
class ServiceCosts:
    """The costs of a long list of services, and their sums."""
    @property
    def product_minor(self) -> NDArray[int64]:
        """Product, waste included: whole minor units."""
    @property
    def labour_minor(self) -> NDArray[int64]:
        """Labour: whole minor units."""
    @property
    def overhead_minor(self) -> NDArray[int64]:
        """Overhead: whole minor units."""
    @property
    def cost_minor(self) -> NDArray[int64]:
        """The three and the consumables together: whole minor units."""
    @property
    def product(self) -> Money:
        """Sum of the product costs."""
    @property
    def consumables(self) -> Money:
        """Sum of the consumables."""
    @property
    def labour(self) -> Money:
        """Sum of the labour costs."""
    @property
    def overhead(self) -> Money:
        """Sum of the overheads."""
    @property
    def cost(self) -> Money:
        """Sum of all costs."""

@final
class CostTable:
    """What a service costs, line by line; the total is the sum of the lines, however they are grouped.

    Args:
        currency: three-letter code of every line.

    Raises:
        FoilworkError: unknown currency.

    Examples:
        >>> from foilwork.money import CostTable, Money
        >>> table = CostTable("EUR")
        >>> table.add("product", "Pale Drift lightener", Money("2.11", "EUR"), section="crown", bowl="A")
        >>> table.add("labour", "hands-on time", Money("33.33", "EUR"))
        >>> table.total
        Money('35.44', 'EUR')
        >>> [str(line["share_percent"]) for line in table.lines()]
        ['6.0', '94.0']
    """
    def __new__(cls, currency: str) -> CostTable: ...
    def add(self, kind: str, what: str, amount: Money, *, section: str | None = None, bowl: str | None = None) -> None:
        """Add a line.

        Args:
            kind: one of ``"product"``, ``"additive"``, ``"consumables"``, ``"laundry"``, ``"labour"``, ``"overhead"``,
                ``"card-fee"``, ``"other"``.
            what: what it is, in your words.
            amount: what it costs, nothing or more.
            section: the section of the head it belongs to, where there is one.
            bowl: the bowl it belongs to, where there is one.

        Raises:
            FoilworkError: an unknown kind, a negative amount, another currency.
        """
    @property
    def total(self) -> Money:
        """The sum of the lines."""
    def lines(self) -> list[dict[str, Any]]:
        """The lines as dicts: kind, what, section, bowl, amount, share_percent. The shares add up to exactly 100."""
    def by_kind(self) -> list[tuple[str, Money]]:
        """The total of each kind of cost."""
    def by_section(self) -> list[tuple[str, Money]]:
        """The total of each section of the head, of the lines that belong to one."""
    def by_bowl(self) -> list[tuple[str, Money]]:
        """The total of each bowl, of the lines that belong to one."""

@final
class PriceRule:
    """How prices are set in a salon: one target, tax, card fee, price ending; apply it to the cost of each service.

    Args:
        margin_percent: profit in percent of the net price. Give one of the three targets.
        markup_percent: profit in percent of the cost, card fee included.
        per_chair_hour: amount over the cost for an hour of the chair; the cost is the variable cost then.
        tax_percent: tax in percent of the net price.
        card_percent: what the card terminal keeps, in percent of the gross price.
        card_fixed: what it keeps of each payment.
        price_step: how far apart allowed gross prices are.
        price_ending: where they start, below the step.
        price_toward: ``"up"``, ``"down"`` or ``"nearest"``.
        rounding: how price, tax and fee become whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: no target or several, a value out of its range.

    Examples:
        >>> from foilwork.money import Money, PriceRule
        >>> rule = PriceRule(margin_percent=30, tax_percent=19, price_step=Money("1.00", "EUR"))
        >>> price = rule.price(Money("61.20", "EUR"))
        >>> price.taxed.gross, round(price.set_price.margin_percent, 2)
        (Money('105.00', 'EUR'), Decimal('30.64'))
    """
    def __new__(
        cls,
        *,
        margin_percent: _Number | None = None,
        markup_percent: _Number | None = None,
        per_chair_hour: Money | None = None,
        tax_percent: _Number = 0,
        card_percent: _Number = 0,
        card_fixed: Money | None = None,
        price_step: Money | None = None,
        price_ending: Money | None = None,
        price_toward: str = "up",
        rounding: str = "midpoint-away-from-zero",
    ) -> PriceRule: ...
    def price(self, cost: Money, chair_min: float | None = None) -> ServicePrice:
        """The price for a cost; ``chair_min`` is needed for a target by the hour."""
    def check(self, cost: Money, gross: Money, chair_min: float | None = None) -> ServicePrice:
        """What a gross price that is already on the list leaves, by the same tax and card fee."""

@final
class PricedServices:
    """A list of services, costed and priced, with totals that add up to the minor unit.

    Made by :func:`price_services`, :func:`price_services_csv` and :func:`price_services_json`.
    """
    def lines(self) -> list[dict[str, Any]]:
        """One dict for each service: its costs part by part, net, tax, gross, profit, margin, mark-up."""
    def totals(self) -> dict[str, Any]:
        """The sums over all services, each amount times the number sold."""
    def reconcile(self) -> bool:
        """Whether the totals agree across: parts make the cost, net and tax the gross, net less cost the profit."""
    def to_csv(self) -> str:
        """The table as comma-separated text with a header row and a last line ``total``."""
    def __len__(self) -> int: ...

def product_cost(
    pack_price: Money, pack_g: float, used_g: float, *, rounding: str = "midpoint-away-from-zero"
) -> Money:
    """Cost of the product that was used, waste included, at its unrounded pack price.

    Args:
        pack_price: what a pack costs.
        pack_g: what it holds, in g.
        used_g: what was used and thrown away, in g.
        rounding: how the cost becomes whole minor units, once; see :class:`Money`.

    Raises:
        FoilworkError: an empty pack, a price below nothing, a mass out of range.

    Source:
        Unit price from the price of a pack: OpenStax, Prealgebra 2e, module m81303.

    Examples:
        >>> from foilwork.money import Money, product_cost
        >>> product_cost(Money("18.90", "EUR"), pack_g=1000, used_g=42)
        Money('0.79', 'EUR')
    """

def supply_cost(
    pack_price: Money, pack: float, used: float, *, unit: str, rounding: str = "midpoint-away-from-zero"
) -> Money:
    """:func:`product_cost` for anything bought in packs: by mass, by volume or as a count.

    Args:
        pack_price: what a pack costs.
        pack: what it holds, in ``unit``.
        used: what was used and thrown away, in ``unit``.
        unit: ``"g"``, ``"mL"`` or ``"piece"``.
        rounding: how the cost becomes whole minor units, once; see :class:`Money`.

    Raises:
        FoilworkError: an empty pack, a price below nothing, a value out of range, an unknown unit.

    Examples:
        >>> from foilwork.money import Money, supply_cost
        >>> supply_cost(Money("24.00", "EUR"), 500, 42, unit="piece")
        Money('2.02', 'EUR')
    """

def unit_price(pack_price: Money, pack: float, *, unit: str) -> Decimal:
    """Price of one gram, millilitre or piece, unrounded to 28 significant digits.

    Args:
        pack_price: what a pack costs.
        pack: what it holds, in ``unit``.
        unit: ``"g"``, ``"mL"`` or ``"piece"``.

    Raises:
        FoilworkError: as :func:`supply_cost`.

    Source:
        OpenStax, Prealgebra 2e, module m81303.

    Examples:
        >>> from foilwork.money import Money, unit_price
        >>> unit_price(Money("3.99", "USD"), 24, unit="piece")
        Decimal('0.16625')
    """

def packs_needed(need: float, pack: float, *, unit: str) -> int:
    """How many whole packs cover the need: always rounded up.

    Args:
        need: what is needed, in ``unit``.
        pack: what a pack holds, in ``unit``.
        unit: ``"g"``, ``"mL"`` or ``"piece"``.

    Raises:
        FoilworkError: an empty pack, a value out of range, an unknown unit.

    Examples:
        >>> from foilwork.money import packs_needed
        >>> packs_needed(17_500, 12, unit="g")
        1459
    """

def labour_per_minute(wage_per_h: Money, on_costs_percent: _Number, paid_h: float, productive_h: float) -> Decimal:
    """Cost of labour for one productive minute, on-costs and idle hours included, unrounded.

    Args:
        wage_per_h: wage for one paid hour.
        on_costs_percent: what the employer pays on top, in percent of the wage.
        paid_h: paid hours of a period.
        productive_h: hours of the same period with hands on a client.

    Raises:
        FoilworkError: a negative wage, on-costs out of range, productive hours above paid ones.

    Examples:
        >>> from foilwork.money import Money, labour_per_minute
        >>> labour_per_minute(Money("15.00", "EUR"), 20, paid_h=40, productive_h=30)
        Decimal('0.4')
    """

def labour_cost(
    hands_on_min: float,
    wage_per_h: Money,
    on_costs_percent: _Number,
    paid_h: float,
    productive_h: float,
    *,
    rounding: str = "midpoint-away-from-zero",
) -> Money:
    """Cost of so much hands-on time, rounded once from the exact value.

    Args:
        hands_on_min: hands-on time, in min.
        wage_per_h: wage for one paid hour.
        on_costs_percent: what the employer pays on top, in percent of the wage.
        paid_h: paid hours of a period.
        productive_h: hours of the same period with hands on a client.
        rounding: how the cost becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: as :func:`labour_per_minute`.

    Examples:
        >>> from foilwork.money import Money, labour_cost
        >>> labour_cost(75, Money("16.00", "EUR"), 25, paid_h=38, productive_h=28.5)
        Money('33.33', 'EUR')
    """

def overhead_per_chair_hour(overhead: Money, chairs: int, productive_h_per_chair: float) -> Decimal:
    """Overhead for one productive hour of one chair, unrounded.

    Args:
        overhead: overhead of a period.
        chairs: how many chairs carry it.
        productive_h_per_chair: hours of one chair in that period with a client in it. Opening hours understate it.

    Raises:
        FoilworkError: a negative overhead, no chair, no productive hours.

    Source:
        Overhead rate per hour of activity: OpenStax, Principles of Accounting, Volume 2, module m68135.

    Examples:
        >>> from foilwork.money import Money, overhead_per_chair_hour
        >>> overhead_per_chair_hour(Money("60000", "EUR"), chairs=4, productive_h_per_chair=1500)
        Decimal('10')
    """

def overhead_cost(
    chair_min: float,
    overhead: Money,
    chairs: int,
    productive_h_per_chair: float,
    *,
    rounding: str = "midpoint-away-from-zero",
) -> Money:
    """Overhead of so much time in the chair, rounded once from the exact value.

    Args:
        chair_min: time in the chair, in min.
        overhead: overhead of a period.
        chairs: how many chairs carry it.
        productive_h_per_chair: hours of one chair in that period with a client in it.
        rounding: how the cost becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: as :func:`overhead_per_chair_hour`.

    Examples:
        >>> from foilwork.money import Money, overhead_cost
        >>> overhead_cost(100, Money("60000", "EUR"), chairs=4, productive_h_per_chair=1500)
        Money('16.67', 'EUR')
    """

def allocate(amount: Money, weights: Sequence[_Number]) -> list[Money]:
    """Share an amount out in proportion to weights; the shares always add up to the amount.

    Args:
        amount: what is shared out.
        weights: one for each share, nothing or more.

    Raises:
        FoilworkError: no weights, a negative one, or all of them nothing.

    Examples:
        >>> from foilwork.money import Money, allocate
        >>> allocate(Money("10.00", "EUR"), [1, 1, 1])
        [Money('3.34', 'EUR'), Money('3.33', 'EUR'), Money('3.33', 'EUR')]
    """

def price_from_margin(cost: Money, margin_percent: _Number, *, rounding: str = "midpoint-away-from-zero") -> SetPrice:
    """Net price at which profit is the stated part of the price: ``cost / (1 - margin)``.

    Args:
        cost: what the service costs.
        margin_percent: profit in percent of the net price, below 100.
        rounding: how the price becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: a margin of 100 or more, a cost of nothing.

    Examples:
        >>> from foilwork.money import Money, price_from_margin
        >>> set_price = price_from_margin(Money("75.00", "EUR"), 25)
        >>> set_price.price, round(set_price.markup_percent, 2)
        (Money('100.00', 'EUR'), Decimal('33.33'))
    """

def price_from_markup(cost: Money, markup_percent: _Number, *, rounding: str = "midpoint-away-from-zero") -> SetPrice:
    """Net price with the stated part of the cost on top: ``cost * (1 + mark-up)``.

    Args:
        cost: what the service costs.
        markup_percent: profit in percent of the cost, above -100.
        rounding: how the price becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: a mark-up of -100 or less, a cost of nothing.

    Source:
        OpenStax, Contemporary Mathematics, module m00058.

    Examples:
        >>> from foilwork.money import Money, price_from_markup
        >>> price_from_markup(Money("750.00", "USD"), 45).price
        Money('1087.50', 'USD')
    """

def margin_and_markup(cost: Money, price: Money) -> SetPrice:
    """Margin and mark-up of a net price that is already there.

    Args:
        cost: what the service costs.
        price: its net price.

    Raises:
        FoilworkError: a cost or a price of nothing, two currencies.

    Examples:
        >>> from foilwork.money import Money, margin_and_markup
        >>> both = margin_and_markup(Money("60.00", "EUR"), Money("80.00", "EUR"))
        >>> both.margin_percent, round(both.markup_percent, 2)
        (Decimal('25'), Decimal('33.33'))
    """

def margin_to_markup(margin_percent: _Number) -> Decimal:
    """The mark-up that sets the same price as a margin: ``m / (100 - m)``, in percent.

    Args:
        margin_percent: profit in percent of the price, below 100.

    Raises:
        FoilworkError: a margin of 100 or more.

    Examples:
        >>> from foilwork.money import margin_to_markup
        >>> margin_to_markup(20)
        Decimal('25')
    """

def markup_to_margin(markup_percent: _Number) -> Decimal:
    """The margin that sets the same price as a mark-up: ``k / (100 + k)``, in percent.

    Args:
        markup_percent: profit in percent of the cost, above -100.

    Raises:
        FoilworkError: a mark-up of -100 or less.

    Examples:
        >>> from foilwork.money import markup_to_margin
        >>> markup_to_margin(25)
        Decimal('20')
    """

def add_tax(net: Money, tax_percent: _Number, *, rounding: str = "midpoint-away-from-zero") -> TaxedPrice:
    """Put tax on a net price. The tax is rounded; the gross price is the sum.

    Args:
        net: the price without tax.
        tax_percent: tax in percent of the net price.
        rounding: how the tax becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: a tax rate outside 0 to 1000.

    Source:
        OpenStax, Contemporary Mathematics, module m00058; HM Revenue & Customs, Calculating VAT.

    Examples:
        >>> from foilwork.money import Money, add_tax
        >>> add_tax(Money("34.88", "USD"), "8.25")
        TaxedPrice(net=Money('34.88', 'USD'), tax=Money('2.88', 'USD'), gross=Money('37.76', 'USD'))
    """

def take_tax_out(gross: Money, tax_percent: _Number, *, rounding: str = "midpoint-away-from-zero") -> TaxedPrice:
    """Take the tax out of a gross price; net is what is left.

    Undoes :func:`add_tax` to the minor unit when both round to the nearest.

    Args:
        gross: the price with tax.
        tax_percent: tax in percent of the net price.
        rounding: how the tax becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: a tax rate outside 0 to 1000.

    Source:
        HM Revenue & Customs, Calculating VAT.

    Examples:
        >>> from foilwork.money import Money, take_tax_out
        >>> take_tax_out(Money("120.00", "GBP"), 20).tax
        Money('20.00', 'GBP')
    """

def end_price(price: Money, step: Money, ending: Money, toward: str = "up") -> Money:
    """Move a price to one that the price list allows: every ``step``, starting from ``ending``.

    Args:
        price: the price.
        step: how far apart allowed prices are.
        ending: where they start, below ``step``.
        toward: ``"up"``, ``"down"`` or ``"nearest"``.

    Raises:
        FoilworkError: an ending outside the step, an unknown direction, two currencies.

    Examples:
        >>> from foilwork.money import Money, end_price
        >>> end_price(Money("48.13", "EUR"), Money("1.00", "EUR"), Money("0.90", "EUR"))
        Money('48.90', 'EUR')
    """

def apply_discount(
    price: Money, discount_percent: _Number, *, rounding: str = "midpoint-away-from-zero"
) -> DiscountedPrice:
    """Take a discount off a price.

    Args:
        price: the full price.
        discount_percent: what is taken off, in percent of the full price, below 100.
        rounding: how the discount becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: a discount outside 0 to below 100.

    Examples:
        >>> from foilwork.money import Money, apply_discount
        >>> apply_discount(Money("80.00", "USD"), 30).after
        Money('56.00', 'USD')
    """

def price_before_discount(
    after: Money, discount_percent: _Number, *, rounding: str = "midpoint-away-from-zero"
) -> DiscountedPrice:
    """The full price under a discounted one.

    Args:
        after: the price after the discount.
        discount_percent: what was taken off, in percent of the full price, below 100.
        rounding: how the full price becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: a discount outside 0 to below 100.

    Examples:
        >>> from foilwork.money import Money, price_before_discount
        >>> price_before_discount(Money("450.00", "USD"), 10).before
        Money('500.00', 'USD')
    """

def discount_break_even(before: Money, after: Money, variable: Money, count: int) -> DiscountBreakEven:
    """How many services must be sold at a reduced net price to leave what ``count`` leave at the full one.

    Args:
        before: the full net price.
        after: the reduced net price.
        variable: what one more service costs.
        count: how many are sold at the full price.

    Raises:
        FoilworkError: a reduced price that leaves nothing, or one above the full price.

    Examples:
        >>> from foilwork.money import Money, discount_break_even
        >>> discount_break_even(Money("100", "EUR"), Money("80", "EUR"), Money("50", "EUR"), 30).count_needed
        50
    """

def quote_range(
    parts: Sequence[tuple[str, Money, Money, Money]],
    rule: PriceRule,
    *,
    chair_min: tuple[float, float, float] | None = None,
    deposit_percent: _Number | None = None,
    deposit: Money | None = None,
) -> Quote:
    """A quotation: least, expected and most, each by the same price rule, and what drives the difference.

    Args:
        parts: ``(what, least, expected, most)`` for each part of the cost.
        rule: how prices are set.
        chair_min: time in the chair as ``(least, expected, most)``; needed for a target by the hour.
        deposit_percent: what is paid in advance, in percent of the expected gross price.
        deposit: what is paid in advance, as an amount; give one of the two or neither.

    Raises:
        FoilworkError: no parts, bounds that do not enclose the expected cost, a deposit out of range, no price.

    Examples:
        >>> from foilwork.money import Money, PriceRule, quote_range
        >>> euros = lambda text: Money(text, "EUR")
        >>> parts = [
        ...     ("lightener", euros("4.00"), euros("6.00"), euros("10.00")),
        ...     ("hands-on time", euros("30.00"), euros("34.00"), euros("44.00")),
        ... ]
        >>> quote = quote_range(parts, PriceRule(markup_percent=100), deposit_percent=25)
        >>> quote.low.taxed.gross, quote.high.taxed.gross, quote.deposit
        (Money('68.00', 'EUR'), Money('108.00', 'EUR'), Money('20.00', 'EUR'))
        >>> quote.drivers[0].what
        'hands-on time'
    """

def price_list(
    classes: Sequence[
        tuple[str, str, Sequence[tuple[str, Money, Money, Money]]]
        | tuple[str, str, Sequence[tuple[str, Money, Money, Money]], tuple[float, float, float]]
    ],
    rule: PriceRule,
) -> list[PriceListEntry]:
    """A price list by class of service: low, usual and high, gross, by one price rule.

    Args:
        classes: ``(service, class, parts)`` or ``(service, class, parts, chair_min)`` for each entry, parts and
            time as in :func:`quote_range`.
        rule: how prices are set.

    Raises:
        FoilworkError: as :func:`quote_range`.

    Examples:
        >>> from foilwork.money import Money, PriceRule, price_list
        >>> euros = lambda text: Money(text, "EUR")
        >>> cost = ("product and time", euros("40.00"), euros("46.00"), euros("55.00"))
        >>> rule = PriceRule(margin_percent=40, tax_percent=20, price_step=euros("5.00"))
        >>> entry = price_list([("half head of foils", "long", [cost])], rule)[0]
        >>> entry.low, entry.usual, entry.high
        (Money('80.00', 'EUR'), Money('95.00', 'EUR'), Money('110.00', 'EUR'))
    """

def break_even(
    fixed: Money,
    price: Money,
    variable: Money,
    *,
    profit: Money | None = None,
    rounding: str = "midpoint-away-from-zero",
) -> SalesNeeded:
    """How many sales cover the fixed costs and leave a profit before tax: ``(fixed + profit) / (price - variable)``.

    Args:
        fixed: fixed costs of a period. Wages by the hour belong here, not among the variable costs.
        price: net price of one sale.
        variable: what one more sale costs.
        profit: profit wanted before tax; nothing when left out.
        rounding: how ``sales_exact`` becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: a sale that leaves nothing, a negative amount, two currencies.

    Source:
        OpenStax, Principles of Accounting, Volume 2, module m68116.

    Examples:
        >>> from foilwork.money import Money, break_even
        >>> usd = lambda text: Money(text, "USD")
        >>> break_even(usd("3000"), usd("35"), usd("20")).count
        200
    """

def profit_before_tax(after_tax: Money, tax_percent: _Number, *, rounding: str = "midpoint-away-from-zero") -> Money:
    """The profit before tax that leaves a profit after it.

    Args:
        after_tax: profit wanted after tax.
        tax_percent: tax on the profit, in percent of the profit, below 100.
        rounding: how the profit becomes whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: a tax outside 0 to below 100.

    Examples:
        >>> from foilwork.money import Money, profit_before_tax
        >>> profit_before_tax(Money("24000", "USD"), 40)
        Money('40000.00', 'USD')
    """

def margin_of_safety(sales: Money, break_even_sales: Money) -> MarginOfSafety:
    """How far sales can fall before there is a loss.

    Args:
        sales: net takings.
        break_even_sales: net takings at which there is neither profit nor loss.

    Raises:
        FoilworkError: no sales, two currencies.

    Examples:
        >>> from foilwork.money import Money, margin_of_safety
        >>> margin_of_safety(Money("225000", "USD"), Money("153000", "USD")).percent_of_sales
        Decimal('32')
    """

def sales_mix_target(fixed: Money, profit: Money, items: Sequence[tuple[str, Money, Money, _Number]]) -> SalesMixPlan:
    """How many services, sold in a given mix, cover the fixed costs and leave a profit before tax.

    Args:
        fixed: fixed costs of a period.
        profit: profit wanted before tax.
        items: ``(what, price, variable, weight)`` for each service; weights are proportions.

    Raises:
        FoilworkError: no services, a mix that leaves nothing, a negative weight, two currencies.

    Examples:
        >>> from foilwork.money import Money, sales_mix_target
        >>> eur = lambda text: Money(text, "EUR")
        >>> mix = [("foils", eur("120"), eur("30"), 1), ("gloss", eur("45"), eur("10"), 3)]
        >>> plan = sales_mix_target(eur("4000"), eur("0"), mix)
        >>> plan.count, [line.count for line in plan.services]
        (83, [21, 62])
    """

def rank_by_chair_hour(services: Sequence[tuple[str, Money, Money, float]]) -> list[RankedService]:
    """Rank services by what they leave for an hour of the chair, the best first.

    Args:
        services: ``(what, price, variable, chair_min)`` for each: net price, cost of one more, chair time in min.

    Raises:
        FoilworkError: no time, two currencies.

    Examples:
        >>> from foilwork.money import Money, rank_by_chair_hour
        >>> eur = lambda text: Money(text, "EUR")
        >>> foils, toner = ("foils", eur("140"), eur("20"), 180), ("toner", eur("35"), eur("5"), 40)
        >>> [(service.what, str(service.per_chair_hour)) for service in rank_by_chair_hour([foils, toner])]
        [('toner', '45'), ('foils', '40')]
    """

def commission_pay(
    takings: Money,
    *,
    percent: _Number | None = None,
    threshold: Money | None = None,
    tiers: Sequence[tuple[Money | None, _Number]] | None = None,
    base: Money | None = None,
    rounding: str = "midpoint-away-from-zero",
) -> Pay:
    """Commission on the net takings of one period, with the base pay beside it.

    Args:
        takings: net takings of the period.
        percent: one rate on everything, or on what exceeds ``threshold``.
        threshold: nothing is paid up to here.
        tiers: ``(up_to, percent)`` for each slice, rising; the last has ``None`` and no end. Instead of ``percent``.
        base: wage or retainer; nothing when left out.
        rounding: how the commission becomes whole minor units, once; see :class:`Money`.

    Raises:
        FoilworkError: no rule or two, a rate outside 0 to 100, tiers that do not rise, negative takings.

    Source:
        Yale-New Haven Teachers Institute, unit 80.07.07, 1980, examples 1-3.

    Examples:
        >>> from foilwork.money import Money, commission_pay
        >>> commission_pay(Money("1300", "USD"), tiers=[(Money("800", "USD"), 8), (None, 14)]).commission
        Money('134.00', 'USD')
        >>> week, base = Money("1540", "USD"), Money("120", "USD")
        >>> commission_pay(week, percent=5, threshold=Money("500", "USD"), base=base).total
        Money('172.00', 'USD')
    """

def share_tips(tips: Money, worked_h: Sequence[float]) -> list[Money]:
    """Share pooled tips by time worked, and lose no minor unit.

    Args:
        tips: all tips.
        worked_h: hours of each person.

    Raises:
        FoilworkError: nobody, or nobody worked; tips below nothing.

    Examples:
        >>> from foilwork.money import Money, share_tips
        >>> [str(share) for share in share_tips(Money("50.00", "EUR"), [8, 8, 5])]
        ['19.05 EUR', '19.05 EUR', '11.90 EUR']
    """

def rent_or_wage(
    takings: Money,
    *,
    rent: Money,
    own_costs: Money,
    variable_percent: _Number,
    wage: Money,
    commission_percent: _Number,
    rounding: str = "midpoint-away-from-zero",
) -> RentOrWageAnswer:
    """Chair rent against wage for the same chair and period, seen by the one who works at it.

    Args:
        takings: net takings of the period.
        rent: rent of the chair.
        own_costs: what else a self-employed stylist pays for.
        variable_percent: what the work itself costs, in percent of the takings.
        wage: the wage when employed.
        commission_percent: commission when employed, in percent of the takings.
        rounding: how amounts become whole minor units; see :class:`Money`.

    Raises:
        FoilworkError: shares that take all of the takings, a value out of range, two currencies.

    Examples:
        >>> from foilwork.money import Money, rent_or_wage
        >>> eur = lambda text: Money(text, "EUR")
        >>> renting = {"rent": eur("200"), "own_costs": eur("50"), "variable_percent": 12}
        >>> choice = rent_or_wage(eur("1500"), **renting, wage=eur("480"), commission_percent=15)
        >>> choice.break_even_takings, choice.difference
        (Money('1000.00', 'EUR'), Money('365.00', 'EUR'))
    """

def productivity(productive_h: float, of_h: float, *, denominator: str) -> tuple[Decimal, str]:
    """Productive time in percent of a stated other time.

    Args:
        productive_h: hours with a client in the chair.
        of_h: the hours to compare with.
        denominator: what these are: ``"recorded-time"``, ``"paid-time"``, ``"rostered-time"``, ``"opening-time"`` or
            ``"standard-time"``. The same week reads 75 or 125, so it must be said.

    Returns:
        The percentage, unrounded, and the denominator again.

    Raises:
        FoilworkError: no hours to compare with, an unknown denominator.

    Examples:
        >>> from foilwork.money import productivity
        >>> productivity(30, 40, denominator="recorded-time")
        (Decimal('75'), 'recorded-time')
    """

def reorder(
    on_hand: float,
    daily_use: float,
    pack: float,
    *,
    unit: str,
    lead_days: int,
    cover_days: int,
    reserve: float = 0.0,
    on_order: float = 0.0,
) -> Reorder:
    """When to order a product, how many packs, and how long the stock lasts.

    Args:
        on_hand: on the shelf now, in ``unit``.
        daily_use: used on an average day.
        pack: what a pack holds.
        unit: ``"g"``, ``"mL"`` or ``"piece"`` for all of them.
        lead_days: days from order to delivery.
        cover_days: days the delivery should last.
        reserve: kept for bad days.
        on_order: ordered and not yet delivered.

    Raises:
        FoilworkError: a value out of range, an empty pack, an unknown unit.

    Examples:
        >>> from foilwork.money import reorder
        >>> reorder(900, 120, 500, unit="g", lead_days=5, cover_days=14, reserve=300)
        Reorder(reorder_point=Decimal('900'), due=True, packs=4, stock_days=Decimal('7.5'))
    """

def price_services(services: Sequence[_Mapping] | _Mapping, terms: _Mapping) -> PricedServices:
    """Cost and price a list of services.

    Args:
        services: a sequence of mappings (one for each service), or a mapping of columns (lists, NumPy arrays, a pandas
            ``DataFrame``). Keys: ``service``, ``class``, ``product_pack_price``, ``product_pack_g``, ``product_g``,
            ``product_waste_g``, the same four for ``developer_``, ``consumables``, ``laundry``, ``hands_on_min``,
            ``chair_min``, ``price`` (gross; left out to have one set), ``sold``, ``note``. Amounts as ``Decimal`` or
            ``str``; ``None``, an empty text and NaN mean left out.
        terms: the salon's terms as a mapping: ``currency``, ``wage_per_h``, ``on_costs_percent``, ``paid_h``,
            ``productive_h``, ``overhead``, ``chairs``, ``productive_h_per_chair``; one of ``margin_percent``,
            ``markup_percent``, ``per_chair_hour``; and ``tax_percent``, ``card_percent``, ``card_fixed``,
            ``price_step``, ``price_ending``, ``price_toward``, ``rounding`` where they differ from nothing.

    Raises:
        FoilworkError: everything that is wrong, one problem to a line of its text, each with its place.

    Examples:
        >>> from foilwork.money import price_services
        >>> terms = {
        ...     "currency": "EUR", "wage_per_h": "18.00", "paid_h": 38, "productive_h": 19, "overhead": "48000",
        ...     "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
        ... }
        >>> foils = {
        ...     "service": "half head of foils", "product_pack_price": "26.40", "product_pack_g": 500, "product_g": 40,
        ...     "hands_on_min": 70, "chair_min": 120, "sold": 3,
        ... }
        >>> table = price_services([foils], terms)
        >>> table.lines()[0]["cost"], table.totals()["profit"]
        (Money('64.11', 'EUR'), Money('64.11', 'EUR'))
    """

def price_services_csv(text: str, terms: _Mapping) -> PricedServices:
    r""":func:`price_services` from comma-separated text with a header row.

    Args:
        text: the text; semicolons or tabs are recognised by the header.
        terms: as in :func:`price_services`.

    Raises:
        FoilworkError: everything that is wrong, one problem to a line of its text, each with its line and column.

    Examples:
        >>> from foilwork.money import price_services_csv
        >>> terms = {
        ...     "currency": "EUR", "wage_per_h": "18.00", "paid_h": 38, "productive_h": 19, "overhead": "48000",
        ...     "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
        ... }
        >>> price_services_csv("service,hands_on_min,chair_min\ntoner,15,40\n", terms)
        <foilwork.money.PricedServices of 1 services, profit 5.22 EUR>
    """

def price_services_json(text: str, terms: _Mapping) -> PricedServices:
    """:func:`price_services` from JSON text: an array of objects.

    Args:
        text: the text.
        terms: as in :func:`price_services`.

    Raises:
        FoilworkError: everything that is wrong, one problem to a line of its text, each with its item and key.

    Examples:
        >>> from foilwork import FoilworkError
        >>> from foilwork.money import price_services_json
        >>> terms = {
        ...     "currency": "EUR", "wage_per_h": "18.00", "paid_h": 38, "productive_h": 19, "overhead": "48000",
        ...     "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
        ... }
        >>> try:
        ...     price_services_json('[{"service": "toner", "hands_on_min": 15}]', terms)
        ... except FoilworkError as error:
        ...     print(error)
        item 1, chair_min: is missing: give a value
    """

def cost_columns(
    pack_price_minor: ArrayLike,
    pack_g: ArrayLike,
    used_g: ArrayLike,
    wasted_g: ArrayLike,
    consumables_minor: ArrayLike,
    hands_on_min: ArrayLike,
    chair_min: ArrayLike,
    terms: _Mapping,
    *,
    rounding: str = "midpoint-away-from-zero",
) -> ServiceCosts:
    """Cost a long list of services, column by column; needs NumPy.

    Each row is exactly what :func:`product_cost`, :func:`labour_cost` and :func:`overhead_cost` give.

    Args:
        pack_price_minor: price of each pack, whole minor units (integers).
        pack_g: what each pack holds, in g.
        used_g: product on the head, in g.
        wasted_g: product thrown away, in g.
        consumables_minor: foils, gloves and the like, whole minor units (integers).
        hands_on_min: hands-on time, in min.
        chair_min: time in the chair, in min.
        terms: the salon's terms, as in :func:`price_services`.
        rounding: how each cost becomes whole minor units, once; see :class:`Money`.

    Raises:
        FoilworkError: columns of different lengths; rows that cannot be costed (the first one is named, all are
            counted); terms that are wrong; NumPy is missing.
        TypeError: amounts that are no integers.

    Examples:
        >>> from foilwork.money import cost_columns
        >>> terms = {
        ...     "currency": "EUR", "wage_per_h": "15.00", "on_costs_percent": 20, "paid_h": 40, "productive_h": 30,
        ...     "overhead": "60000", "chairs": 4, "productive_h_per_chair": 1500, "margin_percent": 25,
        ... }
        >>> costs = cost_columns([2640, 980], [500, 60], [40, 30], [5, 0], [210, 35], [70, 15], [120, 40], terms)
        >>> costs.cost_minor.tolist(), costs.cost
        ([5248, 1792], Money('70.40', 'EUR'))
    """

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
        ...     print([problem for problem in error.problems if problem[1] == "format"])
        [(1, 'format', '2 is out of range: give 1')]
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
