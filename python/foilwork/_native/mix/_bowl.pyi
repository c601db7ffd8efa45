from collections.abc import Sequence
from typing import final

from foilwork._native import _Answer
from foilwork._native.mix._recipe import Addition, Recipe

__all__ = [
    "BowlPlan",
    "FreshBowl",
    "Leftover",
    "bowls",
]

@final
class FreshBowl(_Answer):
    """One fresh bowl of a :class:`BowlPlan`. Times count in min from the start of the first mixing."""

    __match_args__ = ("mixed_g", "applied_g", "mix_at_min", "ready_at_min", "empty_at_min", "use_by_min")
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
class Leftover(_Answer):
    """What becomes of a product in fresh bowls; made by :meth:`BowlPlan.leftovers`."""

    __match_args__ = ("product", "used_g", "wasted_g")
    @property
    def product(self) -> str:
        """The product."""
    @property
    def used_g(self) -> float:
        """What is put into bowls, in g."""
    @property
    def wasted_g(self) -> float:
        """What of that is thrown away, in g."""

@final
class BowlPlan(_Answer):
    """Fresh bowls in the order of mixing; made by :func:`bowls`."""

    __match_args__ = ("bowls", "mixed_g", "applied_g", "leftover_g")
    @property
    def bowls(self) -> list[FreshBowl]:
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
    def recipes(self, base: Recipe, additives: Sequence[Addition] = ()) -> list[Recipe]:
        """The recipe of each bowl: ``base`` scaled so that base and additives together fill it.

        Args:
            base: the recipe, in g.
            additives: what is added to it.

        Returns:
            One recipe for each bowl.

        Raises:
            FoilworkError: a recipe that is not in g, or an additive of a product that is not in it.
        """
    def leftovers(self, base: Recipe, additives: Sequence[Addition] = ()) -> list[Leftover]:
        """What each product loses.

        Args:
            base: the recipe, in g.
            additives: what is added to it.

        Returns:
            The products, with what is put into bowls and what of that is thrown away.

        Raises:
            FoilworkError: as for :meth:`recipes`.
        """

def bowls(total_g: float, capacity_g: float, working_life_min: float, pace_g_per_min: float, *, mixing_min: float = 0.0, residue_g: float = 0.0) -> BowlPlan:
    """Number, size and mixing times of fresh bowls.

    Args:
        total_g: product that must reach the hair, in g.
        capacity_g: the most one bowl holds, in g.
        working_life_min: how long a mixed bowl may be used, in min, from the product's directions.
        pace_g_per_min: how fast product goes onto the hair, in g/min.
        mixing_min: time application stands still for each mixing, in min.
        residue_g: what stays behind in bowl and brush, in g.

    Returns:
        The bowls, with what they come to.

    Raises:
        FoilworkError: when a bowl could put nothing on the hair, or hundreds would be needed.

    Examples:
        >>> from foilwork.mix import bowls
        >>> plan = bowls(200, 120, 40, 2)
        >>> len(plan.bowls), round(plan.mixed_g)
        (3, 200)
        >>> from foilwork.mix import Addition, Recipe
        >>> lost = plan.leftovers(Recipe("1 g lightener + 2 g 9%"), [Addition.per_bowl("bond builder", 2)])
        >>> [(each.product, round(each.used_g)) for each in lost]
        [('lightener', 65), ('9%', 129), ('bond builder', 6)]
    """
