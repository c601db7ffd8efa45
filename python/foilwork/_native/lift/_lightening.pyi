from collections.abc import Iterable
from typing import TypeAlias, final, overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

from foilwork._native import Bounds, _Answer, _Errors
from foilwork._native.colour._level import _Level, _LevelBounds
from foilwork._native.lift._belief import Belief
from foilwork._native.lift._situation import Situation
from foilwork._native.source._trail import TracedResult

__all__ = [
    "Lightening",
    "TimeTo",
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
        start_level: the level now, or its bounds as far as its reading may be off: then every answer reaches as far as those
            from either bound.
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
        >>> Lightening(Situation(4), (3.5, 4, 4.5)).level_after(0)
        Bounds(low=3.5, best=4.0, high=4.5)
    """
    def __new__(cls, situation: Situation, start_level: _LevelBounds, belief: Belief | None = None) -> Lightening: ...
    @property
    def start_level(self) -> Bounds[float]:
        """The level it starts from, as far as its reading may be off."""
    def after(self, time_min: float) -> Lightening:
        """The same hair after an application of the same mixture: what a fresh one adds comes on top.

        Args:
            time_min: how long that application lay on the hair.
        """
    def trail(self, time_min: float) -> TracedResult:
        """How the level after a time comes about: start, mixture, time, and every lever with its bounds.

        Args:
            time_min: min from the first strand.

        Returns:
            A :class:`foilwork.source.TracedResult`.

        Examples:
            >>> from foilwork.lift import Lightening, Situation
            >>> Lightening(Situation(4), 4).trail(40).inputs[0].value
            '4'
        """
    @overload
    def level_after(self, time_min: float, *, errors: _Errors = "raise", out: None = None, where: None = None) -> Bounds[float]:
        """The level after this time: median and 80 % interval.

        Args:
            time_min: min from the first strand, a number or an array of any shape.
            errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
            out: a tuple of three arrays of float64 to put the results into, of their shape; without it new ones are made.
            where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
                are in ``out``, or NaN.

        Returns:
            ``Bounds`` for a number; for an array three arrays of its shape: low, best, high.
        """
    @overload
    def level_after(self, time_min: ArrayLike, *, errors: _Errors = "raise", out: _Columns | None = None, where: ArrayLike | None = None) -> _Columns: ...
    def time_to(self, target_level: _Level) -> TimeTo:
        """The time at which the target is reached: median and 80 % interval.

        Args:
            target_level: the level wanted.

        Returns:
            The times; ``None`` where the mixture is spent before.
        """
    @overload
    def minutes_to(self, target_level: float, *, errors: _Errors = "raise", out: None = None, where: None = None) -> Bounds[float]:
        """The min to levels, for arrays: ``inf`` where the mixture is spent before.

        Args:
            target_level: the levels wanted, a number or an array of any shape.
            errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
            out: a tuple of three arrays of float64 to put the results into, of their shape; without it new ones are made.
            where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
                are in ``out``, or NaN.

        Returns:
            ``Bounds`` for a number; for an array three arrays of its shape: earliest, median, latest of the 80 % interval.
        """
    @overload
    def minutes_to(self, target_level: ArrayLike, *, errors: _Errors = "raise", out: _Columns | None = None, where: ArrayLike | None = None) -> _Columns: ...
    @overload
    def chance_by(self, target_level: float, time_min: float, *, errors: _Errors = "raise", out: None = None, where: None = None) -> float:
        """The chance in percent that the level is reached after this time. The arguments broadcast.

        Args:
            target_level: the level wanted, a number or an array of any shape.
            time_min: min from the first strand, a number or an array of any shape.
            errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
            out: an array of float64 to put the results into, of their shape; without it new ones are made.
            where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
                are in ``out``, or NaN.

        Returns:
            A number for numbers, an array otherwise.
        """
    @overload
    def chance_by(
        self, target_level: ArrayLike, time_min: ArrayLike, *, errors: _Errors = "raise", out: NDArray[float64] | None = None, where: ArrayLike | None = None
    ) -> NDArray[float64]: ...
    def chance_between(self, target_level: _Level, time_min: float) -> Bounds[float]:
        """The chance in percent that the level is reached after this time, with what it is from either bound of the start.

        Args:
            target_level: the level wanted.
            time_min: min from the first strand.
        """
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
