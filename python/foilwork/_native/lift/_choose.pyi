from collections.abc import Iterable
from typing import final

from foilwork._native import Bounds, _Answer, _Percent
from foilwork._native.colour._level import _Level, _LevelBounds
from foilwork._native.lift._belief import Belief
from foilwork._native.lift._lightening import Lightening
from foilwork._native.lift._situation import Situation

__all__ = [
    "StrengthChance",
    "Visit",
    "chances",
    "gentlest",
    "series",
]

@final
class StrengthChance(_Answer):
    """How sure a strength is to reach the target within its time."""

    __match_args__ = ("on_hair_ww_percent", "chance_percent", "level")
    @property
    def on_hair_ww_percent(self) -> Bounds[float]:
        """The strength on the hair, in % w/w."""
    @property
    def chance_percent(self) -> Bounds[float]:
        """The chance in percent that the target is reached within the limit, with what it is from either bound of the start."""
    @property
    def level(self) -> Bounds[float]:
        """Level at the limit: median and 80 % interval."""

def chances(
    belief: Belief,
    situation: Situation,
    on_hair_ww_percent: Iterable[_Percent],
    *,
    start_level: _LevelBounds,
    target_level: _Level,
    limit_min: float,
) -> list[StrengthChance]:
    """The chance that each strength reaches the target within the limit, weakest first.

    Args:
        belief: what is known of this hair.
        situation: the mixture and the hair; its strength is replaced by each of those given.
        on_hair_ww_percent: strengths on the hair, in % w/w, each a number or its bounds.
        start_level: the level now, or its bounds as far as its reading may be off.
        target_level: the level wanted.
        limit_min: the longest that a strand may carry the mixture.

    Returns:
        A row for each strength.

    Raises:
        FoilworkError: a value out of range.

    Examples:
        >>> from foilwork.lift import Belief, Situation, chances, gentlest
        >>> rows = chances(Belief(), Situation(4), [2, 4, 6], start_level=5, target_level=7, limit_min=45)
        >>> rows[0].chance_percent.best < rows[2].chance_percent.best
        True
        >>> gentlest(rows, 99.9) is None
        True
    """

def gentlest(rows: Iterable[StrengthChance], wanted_percent: float) -> StrengthChance | None:
    """The gentlest strength that reaches the target within the limit with at least this chance, from the best estimate of the start.

    Args:
        rows: what ``chances`` gave.
        wanted_percent: the chance wanted, in percent.

    Returns:
        The row, or ``None`` when even the strongest does not.

    Raises:
        FoilworkError: the chance is not 0 to 100 %.

    Examples:
        >>> from foilwork.lift import Belief, Situation, chances, gentlest
        >>> rows = chances(Belief(), Situation(4), [2, 4, 6], start_level=5, target_level=6, limit_min=45)
        >>> gentlest(rows, 80).on_hair_ww_percent.best
        2.0
    """

@final
class Visit(_Answer):
    """What one of several equal applications brings."""

    __match_args__ = ("after_weeks", "after_basis", "regrowth_cm", "level", "chance_percent", "strain", "strain_index", "basis")
    @property
    def after_weeks(self) -> Bounds[float] | None:
        """Weeks since the visit before, by what the hair has been through by then; ``None`` for the first."""
    @property
    def after_basis(self) -> str | None:
        """What those weeks rest on: ``"common-practice"`` where the strain is slight or usual, ``"assumed"`` beyond it."""
    @property
    def basis(self) -> str:
        """What level, chance and strain rest on: ``"assumed"``, for the levers of the law are."""
    @property
    def regrowth_cm(self) -> Bounds[float] | None:
        """What has grown since the first visit, in cm; ``None`` for the first."""
    @property
    def strain(self) -> str:
        """What all visits so far do to the fibre: ``"slight"``, ``"usual"``, ``"high"`` or ``"severe"``."""
    @property
    def strain_index(self) -> Bounds[float]:
        """The same as an index: 1 for 40 min at 4 % on the hair."""
    @property
    def level(self) -> Bounds[float]:
        """Level after it: median and 80 % interval."""
    @property
    def chance_percent(self) -> Bounds[float]:
        """The chance in percent that the target is reached with it, with what it is from either bound of the start."""

def series(
    start: Lightening, target_level: _Level, *, each_min: float, wanted_percent: float = 80.0, most: int = 3
) -> list[Visit]:
    """A series of visits with the same mixture and time, until the target is reached with the wanted chance.

    Args:
        start: the hair and the mixture.
        target_level: the level wanted.
        each_min: how long each application lies on the hair.
        wanted_percent: the chance wanted, in percent.
        most: the most visits.

    Returns:
        The visits, with the weeks between them by the strain so far: common practice after a usual application, assumed
        beyond it. Waiting does not undo oxidation: test elasticity before each.

    Raises:
        FoilworkError: a value out of range.

    Examples:
        >>> from foilwork.lift import Lightening, Situation, series
        >>> visits = series(Lightening(Situation(3), 3), 9, each_min=40)
        >>> visits[1].level.best > visits[0].level.best
        True
        >>> visits[1].after_weeks, visits[1].strain
        (Bounds(low=2.0, best=4.0, high=6.0), 'high')
    """
