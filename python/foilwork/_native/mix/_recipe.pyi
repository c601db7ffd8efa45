from collections.abc import Sequence
from decimal import Decimal
from typing import Any, final

from foilwork._native import _Percent
from foilwork._native.mix._bowl import Ratio

__all__ = [
    "Additive",
    "Recipe",
    "convert_amount",
    "mixing_card",
    "natural_share",
]

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
    strengths_ww_percent: Sequence[_Percent | None],
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
        strengths_ww_percent: hydrogen peroxide in each part in % w/w, as a number or (low, best, high); None where not known.
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
        >>> card["use_by"], card["strength_as_applied_ww_percent"]["best"]
        ('2026-11-25 10:45', 3.6)
    """
