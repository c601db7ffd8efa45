from collections.abc import Iterable
from typing import TypeAlias, final, overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

from foilwork._native import Bounds, _Answer, _Errors, _Percent
from foilwork._native.colour._level import _Level
from foilwork._native.lift._belief import Belief
from foilwork._native.lift._situation import Situation

__all__ = [
    "Lightening",
    "StrengthChance",
    "TimeTo",
    "Visit",
    "chances",
    "gentlest",
    "series",
]

# Lower bounds, best estimates, upper bounds: an array each.
_Columns: TypeAlias = tuple[NDArray[float64], NDArray[float64], NDArray[float64]]

@final
class TimeTo(_Answer):
    """When a level is reached, in min; ``None`` where the mixture is spent before."""

    __match_args__ = ("early_min", "median_min", "late_min")
    @property
    def early_min(self) -> float | None:
        """The earliest of the 80 % interval."""
    @property
    def median_min(self) -> float | None:
        """As likely before as after."""
    @property
    def late_min(self) -> float | None:
        """The latest of the 80 % interval."""

@final
class Lightening:
    """A belief about one hair, made ready for one mixture: what all forecasts and inverse questions start from.

    In a notebook it shows level against time, with its band, for 45 min.

    Args:
        situation: the mixture and the hair.
        start_level: the level now.
        belief: what is known of this hair; without it, that nobody has tested it.

    Raises:
        FoilworkError: a level off the scale.

    Source:
        The law with its two rates and two pigments is foilwork's, fitted near ``"lightening-series"``; a model, a strand
        decides.

    Examples:
        >>> from foilwork.lift import Lightening, Situation
        >>> lightening = Lightening(Situation(4), 4)
        >>> low, best, high = lightening.level_after(40)
        >>> best - low >= 2, round(best, 1)
        (True, 7.7)
        >>> lightening.level_after([0, 20, 40])[1].round(1).tolist()
        [4.0, 6.7, 7.7]
    """
    def __new__(cls, situation: Situation, start_level: _Level, belief: Belief | None = None) -> Lightening: ...
    @property
    def start_level(self) -> float:
        """The level it starts from."""
    def after(self, time_min: float) -> Lightening:
        """The same hair after an application of the same mixture: what a fresh one adds comes on top.

        Args:
            time_min: how long that application lay on the hair.
        """
    @overload
    def level_after(self, time_min: float, *, errors: _Errors = "raise") -> Bounds[float]:
        """The level after this time: median and 80 % interval.

        Args:
            time_min: min from the first strand, a number or an array of any shape.
            errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.

        Returns:
            ``Bounds`` for a number; for an array three arrays of its shape: low, best, high.
        """
    @overload
    def level_after(self, time_min: ArrayLike, *, errors: _Errors = "raise") -> _Columns: ...
    def time_to(self, target_level: _Level) -> TimeTo:
        """The time at which the target is reached: median and 80 % interval.

        Args:
            target_level: the level wanted.

        Returns:
            The times; ``None`` where the mixture is spent before.
        """
    @overload
    def minutes_to(self, target_level: float, *, errors: _Errors = "raise") -> Bounds[float]:
        """The min to levels, for arrays: ``inf`` where the mixture is spent before.

        Args:
            target_level: the levels wanted, a number or an array of any shape.
            errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.

        Returns:
            ``Bounds`` for a number; for an array three arrays of its shape: earliest, median, latest of the 80 % interval.
        """
    @overload
    def minutes_to(self, target_level: ArrayLike, *, errors: _Errors = "raise") -> _Columns: ...
    @overload
    def chance_by(self, target_level: float, time_min: float, *, errors: _Errors = "raise") -> float:
        """The chance in percent that the level is reached after this time. The arguments broadcast.

        Args:
            target_level: the level wanted, a number or an array of any shape.
            time_min: min from the first strand, a number or an array of any shape.
            errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.

        Returns:
            A number for numbers, an array otherwise.
        """
    @overload
    def chance_by(
        self, target_level: ArrayLike, time_min: ArrayLike, *, errors: _Errors = "raise"
    ) -> NDArray[float64]: ...
    def svg(
        self,
        limit_min: float = 45.0,
        *,
        target_level: _Level | None = None,
        readings: Iterable[tuple[float, float]] = (),
        title: str = "Level against time",
    ) -> str:
        """Level against time as SVG: the median, the band of 80 of 100 cases, target, limit and readings, with the same in words.

        Args:
            limit_min: the longest that a strand may carry the mixture.
            target_level: the level wanted.
            readings: levels that were read, each after how many min.
            title: what stands above it.

        Returns:
            The text of the picture.
        """
    def _repr_svg_(self) -> str: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __hash__(self) -> int: ...

@final
class StrengthChance(_Answer):
    """How sure a strength is to reach the target within its time."""

    __match_args__ = ("on_hair_ww_percent", "chance_percent", "level")
    @property
    def on_hair_ww_percent(self) -> Bounds[float]:
        """The strength on the hair, in % w/w."""
    @property
    def chance_percent(self) -> float:
        """The chance in percent that the target is reached within the limit."""
    @property
    def level(self) -> Bounds[float]:
        """Level at the limit: median and 80 % interval."""

def chances(
    belief: Belief,
    situation: Situation,
    on_hair_ww_percent: Iterable[_Percent],
    *,
    start_level: _Level,
    target_level: _Level,
    limit_min: float,
) -> list[StrengthChance]:
    """The chance that each strength reaches the target within the limit, weakest first.

    Args:
        belief: what is known of this hair.
        situation: the mixture and the hair; its strength is replaced by each of those given.
        on_hair_ww_percent: strengths on the hair, in % w/w, each a number or its bounds.
        start_level: the level now.
        target_level: the level wanted.
        limit_min: the longest that a strand may carry the mixture.

    Returns:
        A row for each strength.

    Raises:
        FoilworkError: a value out of range.

    Examples:
        >>> from foilwork.lift import Belief, Situation, chances, gentlest
        >>> rows = chances(Belief(), Situation(4), [2, 4, 6], start_level=5, target_level=7, limit_min=45)
        >>> rows[0].chance_percent < rows[2].chance_percent
        True
        >>> gentlest(rows, 99.9) is None
        True
    """

def gentlest(rows: Iterable[StrengthChance], wanted_percent: float) -> StrengthChance | None:
    """The gentlest strength that reaches the target within the limit with at least this chance.

    Args:
        rows: what ``chances`` gave.
        wanted_percent: the chance wanted, in percent.

    Returns:
        The row, or ``None`` when even the strongest does not.

    Examples:
        >>> from foilwork.lift import Belief, Situation, chances, gentlest
        >>> rows = chances(Belief(), Situation(4), [2, 4, 6], start_level=5, target_level=6, limit_min=45)
        >>> gentlest(rows, 80).on_hair_ww_percent.best
        2.0
    """

@final
class Visit(_Answer):
    """What one of several equal applications brings."""

    __match_args__ = ("level", "chance_percent")
    @property
    def level(self) -> Bounds[float]:
        """Level after it: median and 80 % interval."""
    @property
    def chance_percent(self) -> float:
        """The chance in percent that the target is reached with it."""

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
        The visits. How far apart they must lie is a matter of the hair's condition, not of this law.

    Raises:
        FoilworkError: a value out of range.

    Examples:
        >>> from foilwork.lift import Lightening, Situation, series
        >>> visits = series(Lightening(Situation(3), 3), 9, each_min=40)
        >>> visits[1].level.best > visits[0].level.best
        True
    """
