from collections.abc import Sequence
from typing import final

from foilwork import _words
from foilwork._native import Bounds, _Answer, _Percent

__all__ = [
    "Composition",
    "Constituent",
    "Ingredient",
    "Product",
]

@final
class Constituent(_Answer):
    """One substance in a bowl; an item of :attr:`Composition.constituents`."""

    __match_args__ = ("name", "cas", "stated_as", "groups", "level_ww_percent", "undeclared_in", "undeclared_at_most_ww_percent")
    @property
    def name(self) -> str:
        """Its name."""
    @property
    def cas(self) -> str | None:
        """CAS number, where it is known."""
    @property
    def stated_as(self) -> str | None:
        """The form the level is stated in, when not the substance itself."""
    @property
    def groups(self) -> list[str]:
        """Groups of the law it belongs to."""
    @property
    def level_ww_percent(self) -> Bounds[float]:
        """The level that is declared, in % w/w."""
    @property
    def undeclared_in(self) -> list[str]:
        """Products that may hold more of it, for their contents are not declared in full."""
    @property
    def undeclared_at_most_ww_percent(self) -> float:
        """The most that these could add, in % w/w."""

@final
class Ingredient:
    """One ingredient of a product as its maker or its user states it.

    Args:
        name: the name on the label.
        level_ww_percent: mass fraction in % w/w, as a number or (low, best, high); exactly 0 says the product is free of it.
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
        level_ww_percent: _Percent,
        *,
        cas: str | None = None,
        stated_as: _words._Form | None = None,
        groups: Sequence[str] = (),
    ) -> Ingredient: ...
    @property
    def name(self) -> str:
        """The name on the label."""
    @property
    def level_ww_percent(self) -> Bounds[float]:
        """Mass fraction in % w/w, with its bounds."""
    @property
    def cas(self) -> str | None:
        """CAS number, where it was given."""
    @property
    def stated_as(self) -> str | None:
        """The form the level is stated in, when not the substance itself."""
    @property
    def groups(self) -> list[str]:
        """Groups of the law it belongs to."""
    def __getnewargs_ex__(self) -> tuple[tuple[str, Bounds[float]], dict[str, object]]: ...
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __hash__(self) -> int: ...

@final
class Product:
    """A product as supplied, with what is known to be in it.

    Args:
        name: what the user calls it.
        ingredients: what is known to be in it.
        fully_declared: whether the list names everything the law may limit; otherwise the rest is unknown, not absent.

    Examples:
        >>> from foilwork.mix import Product
        >>> Product("shade J7-mist", [], fully_declared=False)
        Product('shade J7-mist', 0 ingredients, not declared in full)
    """
    def __new__(
        cls, name: str, ingredients: Sequence[Ingredient], *, fully_declared: bool = True
    ) -> Product: ...
    @property
    def name(self) -> str:
        """What the user calls it."""
    @property
    def ingredients(self) -> list[Ingredient]:
        """What is known to be in it."""
    @property
    def fully_declared(self) -> bool:
        """Whether the list names everything the law may limit."""
    def __getnewargs_ex__(self) -> tuple[tuple[str, list[Ingredient]], dict[str, object]]: ...
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __hash__(self) -> int: ...

@final
class Composition:
    """What is in the mixed bowl, and so on the hair: every declared substance with its bounds, and what is not known.

    Args:
        parts: (mass in g, product) for each part.

    Raises:
        FoilworkError: when the bowl is empty.

    Examples:
        >>> from foilwork.mix import Composition, Product, Ingredient
        >>> developer = Product("developer", [Ingredient("hydrogen peroxide", 6, cas="7722-84-1")])
        >>> bowl = Composition([(60, developer), (60, Product("J7-mist", [], fully_declared=False))])
        >>> [(found.level_ww_percent.best, found.undeclared_in) for found in bowl.constituents]
        [(3.0, ['J7-mist'])]
    """
    def __new__(cls, parts: Sequence[tuple[float, Product]]) -> Composition: ...
    @property
    def total_g(self) -> float:
        """The mass of the bowl in g."""
    @property
    def constituents(self) -> list[Constituent]:
        """Every declared substance, with its level and what undeclared products could add."""
    @property
    def undeclared(self) -> list[str]:
        """Products in the bowl whose contents are not declared in full."""
    @property
    def hazards(self) -> list[str]:
        """What in this bowl calls for care, as codes for :func:`handling_advice`."""
    def __reduce__(self) -> tuple[type[Composition], tuple[list[tuple[float, Product]]]]: ...
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __hash__(self) -> int: ...
