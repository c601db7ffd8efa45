from foilwork import _words
from foilwork._native import Bounds, _Percent

__all__ = [
    "grown",
    "growth",
    "warm_band",
    "weeks_to_grow",
]

def grown(weeks: _Percent, rate_cm_per_month: _Percent | None = None) -> Bounds[float]:
    """The regrowth after some weeks, in cm.

    Args:
        weeks: how many weeks, or their bounds.
        rate_cm_per_month: how fast it grows; without it as people do.

    Returns:
        ``Bounds`` in cm.

    Raises:
        FoilworkError: a value out of range.

    Examples:
        >>> from foilwork.hair import grown
        >>> round(grown(8, 1.12).best, 2)
        2.06
    """
def growth(group: _words._Group | None = None) -> Bounds[float]:
    """How fast scalp hair grows, in cm a month of 30.44 days.

    Args:
        group: a group whose mean is published: ``"african"``, ``"asian"`` or ``"european"``; without it the bounds of all.

    Returns:
        ``Bounds``, which hold 80 of 100 people.

    Raises:
        FoilworkError: another word.

    Source:
        ``"growth-by-group"``, ``"growth-review"``.

    Examples:
        >>> from foilwork.hair import growth
        >>> round(growth("european").best, 2)
        1.12
    """
def warm_band() -> Bounds[float]:
    """How far from the scalp its warmth speeds up a mixture, in cm.

    Returns:
        ``Bounds``, assumed: training texts name the warm band and no length was found.

    Examples:
        >>> from foilwork.hair import warm_band
        >>> warm_band()
        Bounds(low=0.5, best=1.0, high=1.5)
    """
def weeks_to_grow(length_cm: _Percent, rate_cm_per_month: _Percent | None = None) -> Bounds[float]:
    """The weeks after which so much has grown.

    Args:
        length_cm: the regrowth, or its bounds.
        rate_cm_per_month: how fast it grows; without it as people do.

    Returns:
        ``Bounds`` in weeks.

    Raises:
        FoilworkError: a value out of range.

    Examples:
        >>> from foilwork.hair import weeks_to_grow
        >>> round(weeks_to_grow(2, 1.12).best, 1)
        7.8
    """
