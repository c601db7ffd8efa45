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
    "Ingredient",
    "LimitReport",
    "LimitTable",
    "OutOfRangeWarning",
    "Plan",
    "Ratio",
    "Recipe",
    "ServiceFileError",
    "Weighing",
    "as_applied",
    "bowls",
    "check_limits",
    "check_peroxide",
    "convert",
    "convert_amount",
    "dilute",
    "handling",
    "jurisdictions",
    "main",
    "minimum_bowl",
    "mixing_card",
    "natural_share",
    "plan",
    "salt_factor",
    "service_schema",
    "weigh",
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

@overload
def convert(
    value: float,
    from_unit: str,
    to_unit: str,
    *,
    temperature_c: float = 20.0,
    molar_volume: str = "ideal-1atm",
    density_g_per_ml: float | None = None,
    errors: Literal["raise", "nan"] = "raise",
) -> float:
    """Convert a strength of hydrogen peroxide from one unit to another.

    Units: ``"% w/w"``, ``"% w/v"``, ``"g/L"``, ``"mol/L"``, ``"mol/kg"`` (of water), ``"N"`` (2 equivalents per mole),
    ``"% active oxygen"``, ``"volumes"`` (oxygen volumes, not the trade label).
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
    errors: Literal["raise", "nan"] = "raise",
) -> NDArray[float64]: ...
@overload
def dilute(
    stock_ww: float, target_ww: float, total_g: float, *, errors: Literal["raise", "nan"] = "raise"
) -> tuple[float, float]:
    """Split a total into stock and diluent."""
@overload
def dilute(
    stock_ww: ArrayLike, target_ww: ArrayLike, total_g: ArrayLike, *, errors: Literal["raise", "nan"] = "raise"
) -> tuple[NDArray[float64], NDArray[float64]]: ...



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

        ``strengths_ww`` gives the strength of each part in % w/w, as a number or (low, best, high); missing ones are 0.
        """
    def tare_order(self, last: int | None = None) -> list[tuple[int, float, float]]:
        """The order on the scale: smallest first, ``last`` (the developer) last; each as (part, mass to add, reading) in g."""

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
        """For each product the mass put into bowls and the mass of it that is thrown away, as (product, used, wasted) in g."""

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
    """Turn an amount into another unit: ``g``, ``mL``, ``US fl oz``, ``UK fl oz``. Between mass and volume a density is needed.

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
        """Whether everything in the bowl was judged and nothing found exceeded. No statement of safety: no table is complete."""
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
