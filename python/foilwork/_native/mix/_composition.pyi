from collections.abc import Sequence
from typing import Any, final

from foilwork._native import _Percent

__all__ = [
    "Composition",
    "Ingredient",
    "Product",
    "handling_advice",
]

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
        stated_as: str | None = None,
        groups: Sequence[str] = (),
    ) -> Ingredient: ...

@final
class Product:
    """A product as supplied, with what is known to be in it.

    Args:
        name: what the user calls it.
        ingredients: what is known to be in it.
        fully_declared: whether the list names everything the law may limit; otherwise the rest is unknown, not absent.

    Examples:
        >>> from foilwork.mix import Product
        >>> Product("shade 7.1", [], fully_declared=False)
        Product('shade 7.1', 0 ingredients, not declared in full)
    """
    def __new__(
        cls, name: str, ingredients: Sequence[Ingredient], *, fully_declared: bool = True
    ) -> Product: ...

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
        >>> bowl = Composition([(60, developer), (60, Product("7.1", [], fully_declared=False))])
        >>> [(c["level_ww_percent"]["best"], c["undeclared_in"]) for c in bowl.constituents()]
        [(3.0, ['7.1'])]
    """
    def __new__(cls, parts: Sequence[tuple[float, Product]]) -> Composition: ...
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
        """What in this bowl calls for care, as codes for :func:`handling_advice`."""

def handling_advice(hazards: Sequence[str]) -> list[dict[str, Any]]:
    """The handling checklist for what is in a bowl, in the order of the work. It informs; it decides nothing.

    Args:
        hazards: any of ``"peroxide"``, ``"persulfate"``, ``"ammonia"``, ``"oxidative-dye"``, ``"resorcinol"``,
            ``"unknown"``.

    Returns:
        Points as dicts: stage, text, what they are about, keys of their sources (none: common practice).

    Raises:
        FoilworkError: for an unknown code.

    Examples:
        >>> from foilwork.mix import handling_advice
        >>> handling_advice(["persulfate"])[0]["stage"]
        'before'
    """
