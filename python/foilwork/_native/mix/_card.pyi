from collections.abc import Sequence
from typing import final

from foilwork._native import Bounds, _Answer, _Percent
from foilwork._native.mix._recipe import Recipe

__all__ = [
    "Card",
    "CardLine",
    "mixing_card",
]

@final
class CardLine(_Answer):
    """One product on a :class:`Card`."""

    __match_args__ = ("product", "mass_g", "ratio_error_percent")
    @property
    def product(self) -> str:
        """The product."""
    @property
    def mass_g(self) -> float:
        """Mass to weigh, in g."""
    @property
    def ratio_error_percent(self) -> float:
        """How far its share is from the recipe, in percent of the share."""

@final
class Card(_Answer):
    """The card to lay beside a bowl; made by :func:`mixing_card`."""

    __match_args__ = ("who", "what", "recipe", "lines", "total_g", "strength_as_applied_ww_percent", "strength_unknown_in", "strength_shift_percentage_points", "mixed_at", "use_by", "remarks", "text")
    @property
    def who(self) -> str:
        """Guest or column."""
    @property
    def what(self) -> str:
        """What the bowl is for."""
    @property
    def recipe(self) -> str:
        """The recipe as written."""
    @property
    def lines(self) -> list[CardLine]:
        """What to weigh."""
    @property
    def total_g(self) -> float:
        """The total on the scale in g."""
    @property
    def strength_as_applied_ww_percent(self) -> Bounds[float] | None:
        """Peroxide on the hair in % w/w; None when a part's strength is not known."""
    @property
    def strength_unknown_in(self) -> list[str]:
        """The parts whose strength is not known."""
    @property
    def strength_shift_percentage_points(self) -> float | None:
        """What rounding does to the strength, in percentage points w/w."""
    @property
    def mixed_at(self) -> str:
        """When it was mixed, on the salon clock."""
    @property
    def use_by(self) -> str:
        """When it must no longer be used."""
    @property
    def remarks(self) -> list[str]:
        """Lines added."""
    @property
    def text(self) -> str:
        """The card to print."""

def mixing_card(who: str, what: str, recipe: Recipe, strengths_ww_percent: Sequence[_Percent | None], division_g: float, mixed_at: str, working_life_min: float, *, remarks: Sequence[str] = ()) -> Card:
    """The card to lay beside a bowl: who, what, grams, strength as applied, time mixed, use-by.

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
        The card; ``str()`` of it is the card to print.

    Raises:
        FoilworkError: when the recipe is not in g, cannot be weighed on the scale, or has no working life.

    Examples:
        >>> from foilwork.mix import Recipe, mixing_card
        >>> card = mixing_card("chair 2", "roots", Recipe("30 g J7-mist + 45 g 6%"), [0, 6], 1, "2026-11-25T10:05", 40)
        >>> card.use_by, card.strength_as_applied_ww_percent.best
        ('2026-11-25 10:45', 3.6)
    """
