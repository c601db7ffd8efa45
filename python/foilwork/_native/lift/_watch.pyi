from collections.abc import Iterable
from typing import final

from foilwork import _words
from foilwork._native import Bounds, _Answer
from foilwork._native.colour._level import _Level
from foilwork._native.lift._belief import Belief
from foilwork._native.lift._lightening import TimeTo
from foilwork._native.lift._situation import Situation

__all__ = [
    "AfterLook",
    "Condition",
    "after_look",
    "condition",
    "looks",
]

def looks(limit_min: float, texture: str = "medium") -> list[float]:
    """When to look at a section, in min from its first strand; the last is the limit itself.

    Args:
        limit_min: the longest that a strand may carry the mixture.
        texture: ``"fine"``, ``"medium"`` or ``"coarse"``.

    Returns:
        The minutes.

    Raises:
        FoilworkError: a time out of range, or another texture.

    Source:
        First after 15 to 20 min, then every 5 to 10 (``"check-interval"``); 10 min on fine hair is common practice.

    Examples:
        >>> from foilwork.lift import looks
        >>> looks(28)
        [15.0, 20.0, 25.0, 28.0]
    """

@final
class AfterLook(_Answer):
    """What a level seen in mid-service says."""

    __match_args__ = ("next", "why", "belief", "reached", "chance_by_limit_percent", "look_again_min")
    @property
    def next(self) -> str:
        """What to do: ``"rinse"``, ``"go-on"``, ``"fresh-mix"`` or ``"next-visit"``."""
    @property
    def why(self) -> str:
        """Why, in words."""
    @property
    def belief(self) -> Belief:
        """What is believed of this hair now."""
    @property
    def reached(self) -> TimeTo:
        """When the target is reached, from the first strand."""
    @property
    def chance_by_limit_percent(self) -> float:
        """The chance in percent that it is reached by the limit."""
    @property
    def look_again_min(self) -> float | None:
        """When to look again, in min."""

def after_look(
    belief: Belief,
    situation: Situation,
    *,
    start_level: _Level,
    target_level: _Level,
    at_min: float,
    seen_level: _Level,
    limit_min: float,
    longest_min: float | None = None,
    reader: _words._Reader = "eye",
) -> AfterLook:
    """Revise what is believed by what is seen, and say what follows: rinse, go on, a fresh mix, or another visit.

    It knows level and time only. Comfort, heat, swelling and elasticity come first, and any of them means rinse.

    Args:
        belief: what was known before.
        situation: the mixture and the hair.
        start_level: the level at the start.
        target_level: the level wanted.
        at_min: min since the first strand.
        seen_level: the level seen now.
        limit_min: how long it is planned to be on; the longest that a strand may carry the mixture, unless ``longest_min`` is given.
        longest_min: the longest that its products allow: from ``limit_min`` until then it is left on as long as looks show that the
            level is not there.
        reader: how it was read: ``"eye"`` or ``"instrument"``.

    Returns:
        What to do, why, and the forecast as it is now.

    Raises:
        FoilworkError: a value out of range, or another reader.

    Examples:
        >>> from foilwork.lift import Belief, Situation, after_look
        >>> seen = after_look(Belief(), Situation(4), start_level=5, target_level=8, at_min=20, seen_level=8, limit_min=45)
        >>> seen.next
        'rinse'
    """

@final
class Condition(_Answer):
    """The strain of a series of applications on the fibre; none of its words says that the hair stands it."""

    __match_args__ = ("index", "strain", "sources")
    @property
    def index(self) -> Bounds[float]:
        """Relative oxidation of the fibre: 1 for 40 min at 4 % on the hair at 25 C."""
    @property
    def strain(self) -> str:
        """In words, at the upper bound: ``"slight"``, ``"usual"``, ``"high"`` or ``"severe"``."""
    @property
    def sources(self) -> list[str]:
        """The ids of the citations that the shape rests on."""

def condition(applications: Iterable[tuple[Situation, float]]) -> Condition:
    """How far applications one after another take the fibre: a scale of its own, never read off the level.

    Args:
        applications: each mixture, and how many min it lies on the hair.

    Returns:
        An index with bounds and its word.

    Raises:
        FoilworkError: a time out of range.

    Source:
        Cysteic acid grows with the square root of time (``"cysteic-acid-square-root"``); the weights are assumed.

    Examples:
        >>> from foilwork.lift import Situation, condition
        >>> condition([(Situation(4), 40)]).strain, condition([(Situation(4), 40)] * 3).strain
        ('usual', 'high')
    """
