from collections.abc import Sequence
from typing import final

from foilwork import _words
from foilwork._native import Bounds, _Answer
from foilwork._native.finding import Finding

__all__ = [
    "HandlingAdvice",
    "NaturalShare",
    "check_lightener",
    "handling_advice",
    "natural_share",
]

@final
class NaturalShare(_Answer):
    """The share of natural shade that covers white hair; made by :func:`natural_share`."""

    __match_args__ = ("share_percent", "basis", "printed_point")
    @property
    def share_percent(self) -> Bounds[float]:
        """Least, usual and most share among the shades of the formula, in percent."""
    @property
    def basis(self) -> str:
        """What it rests on."""
    @property
    def printed_point(self) -> str:
        """Id of the source that prints the point at half white."""

@final
class HandlingAdvice(_Answer):
    """One point of the handling checklist; made by :func:`handling_advice`."""

    __match_args__ = ("stage", "text", "about", "sources")
    @property
    def stage(self) -> str:
        """When: ``"before"``, ``"mixing"``, ``"applying"`` or ``"after"``."""
    @property
    def text(self) -> str:
        """What to do."""
    @property
    def about(self) -> list[str]:
        """The hazards it is about; none: every bowl."""
    @property
    def sources(self) -> list[str]:
        """Ids of its sources; none: common practice."""

def natural_share(white_percent: float) -> NaturalShare:
    """How much natural shade the trade adds to cover a share of white hair: a convention, with its range.

    Args:
        white_percent: share of white hair in percent.

    Returns:
        The share of natural shade among the shades of the formula.

    Examples:
        >>> from foilwork.mix import natural_share
        >>> low, usual, high = natural_share(50).share_percent
        >>> low, usual, high
        (33.0, 50.0, 67.0)

    Source:
        Common practice; half at half is printed in a trade article.
    """

def check_lightener(powder_g: float, developer_g: float) -> Finding | None:
    """Warn of a powder lightener that holds more powder than developer: a ratio written the wrong way round.

    Args:
        powder_g: mass of the powder in g.
        developer_g: mass of the developer in g.

    Returns:
        A warning, or None.

    Raises:
        FoilworkError: a mass out of range.

    Examples:
        >>> from foilwork.mix import check_lightener
        >>> check_lightener(12, 6).verdict, check_lightener(6, 12)
        ('warning', None)

    Source:
        Common practice.
    """

def handling_advice(hazards: Sequence[_words._Hazard]) -> list[HandlingAdvice]:
    """The handling checklist for what is in a bowl, in the order of the work. It informs; it decides nothing.

    Args:
        hazards: any of ``"peroxide"``, ``"persulfate"``, ``"ammonia"``, ``"oxidative-dye"``, ``"resorcinol"``,
            ``"unknown"``.

    Returns:
        The points.

    Raises:
        FoilworkError: for an unknown code.

    Examples:
        >>> from foilwork.mix import handling_advice
        >>> handling_advice(["persulfate"])[0].stage
        'before'
    """
