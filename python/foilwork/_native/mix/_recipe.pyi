from collections.abc import Sequence
from decimal import Decimal
from typing import final

from foilwork import _words
from foilwork._native import _Answer, _Number
from foilwork._native.mix._ratio import Ratio
from foilwork._native.source._trail import TracedResult

__all__ = [
    "Addition",
    "Part",
    "Recipe",
    "convert_amount",
]

@final
class Addition(_Answer):
    """An additive and its dose; take it from the additive's own leaflet. It holds no peroxide and dilutes the bowl.

    Made by :meth:`per_bowl`, :meth:`of_bowl` or :meth:`of_product`.

    Examples:
        >>> from foilwork.mix import Addition, Recipe
        >>> doses = [Addition.per_bowl("bond builder", 2), Addition.of_product("thickener", "lightener", 10)]
        >>> str(Recipe("20 g lightener + 40 g 9%").with_additives(doses))
        '20 g lightener + 40 g 9% + 2 g bond builder + 2 g thickener'
    """

    __match_args__ = ("product", "mass_g", "share_percent", "other")
    @property
    def product(self) -> str:
        """What is added."""
    @property
    def mass_g(self) -> float | None:
        """Its mass in every bowl, in g; None for a share."""
    @property
    def share_percent(self) -> float | None:
        """Its share of the rest of the bowl, or of ``other``, in percent; None for a fixed mass."""
    @property
    def other(self) -> str | None:
        """The product that the share counts of; None for the rest of the bowl."""
    @staticmethod
    def per_bowl(product: str, mass_g: float) -> Addition:
        """So many g in every bowl, whatever its size.

        Args:
            product: what is added.
            mass_g: its mass in every bowl, in g.

        Returns:
            The additive.

        Raises:
            FoilworkError: a mass out of range.
        """
    @staticmethod
    def of_bowl(product: str, share_percent: float) -> Addition:
        """A share of the rest of the bowl: 2 % is 2 g for every 100 g of it.

        Args:
            product: what is added.
            share_percent: its share, from 0 to 100 %.

        Returns:
            The additive.

        Raises:
            FoilworkError: a share out of range.
        """
    @staticmethod
    def of_product(product: str, other: str, share_percent: float) -> Addition:
        """A share of one product in the bowl: 2 % is 2 g for every 100 g of ``other``.

        Args:
            product: what is added.
            other: the product that the share counts of.
            share_percent: its share, from 0 to 100 %.

        Returns:
            The additive.

        Raises:
            FoilworkError: a share out of range.
        """

@final
class Part(_Answer):
    """One part of a recipe."""

    __match_args__ = ("value", "unit", "product")
    @property
    def value(self) -> Decimal:
        """How much of it, as written."""
    @property
    def unit(self) -> str:
        """The unit of that."""
    @property
    def product(self) -> str:
        """The product."""

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
        >>> recipe = Recipe("30 g J7-mist + 15 g J8-oat + 67.5 g 6%")
        >>> str(recipe.to_total(Decimal("56.25")))
        '15 g J7-mist + 7.5 g J8-oat + 33.75 g 6%'
        >>> recipe.parts[1]
        Part(value=Decimal('15'), unit='g', product='J8-oat')
    """
    def __new__(cls, text: str) -> Recipe: ...
    @property
    def parts(self) -> list[Part]:
        """The parts."""
    def masses_g(self) -> list[float]:
        """The masses in g; every part must be in g."""
    def total(self) -> Decimal:
        """The sum of all parts, in their one unit."""
    def ratio(self) -> Ratio:
        """The parts as a ratio."""
    def trail_to(self, scaled: Recipe) -> list[TracedResult]:
        """How the parts of this recipe, scaled to another size, come about.

        Args:
            scaled: the same recipe at its other size.

        Returns:
            A :class:`foilwork.source.TracedResult` for each part.

        Examples:
            >>> from foilwork.mix import Recipe
            >>> recipe = Recipe("30 g mist + 45 g 6%")
            >>> [one.value for one in recipe.trail_to(recipe.times(2))]
            ['60', '90']
        """
    def times(self, factor: _Number) -> Recipe:
        """Every amount times a factor."""
    def to_total(self, total: _Number, unit: _words._Unit = "g") -> Recipe:
        """The recipe with another total."""
    def to_part(self, product: str, value: _Number, unit: _words._Unit = "g") -> Recipe:
        """The recipe in which one product has a given amount."""
    def to_packs(self, product: str, pack: _Number, packs: int, unit: _words._Unit = "g") -> Recipe:
        """The recipe that uses up whole packs of one product."""
    def packs_needed(self, product: str, pack: _Number, unit: _words._Unit = "g") -> int:
        """Whole packs of one product that this recipe needs: always rounded up."""
    def combined(self, other: Recipe) -> Recipe:
        """Both recipes in one bowl; a product of both is named once."""
    def split(self, bowls: Ratio) -> list[Recipe]:
        """The recipe divided over bowls in a ratio."""
    def in_grams(self, densities_g_per_ml: dict[str, float]) -> Recipe:
        """The recipe with every volume turned into g by the density of its product in g/mL."""
    def with_additives(self, additives: Sequence[Addition]) -> Recipe:
        """The recipe with additives on top of it."""
    def __hash__(self) -> int: ...
    def __reduce__(self) -> tuple[type[Recipe], tuple[str]]: ...
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...

def convert_amount(
    value: _Number, from_unit: _words._Unit, to_unit: _words._Unit, *, density_g_per_ml: float | None = None
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

