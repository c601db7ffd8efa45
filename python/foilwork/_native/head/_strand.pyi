from typing import final

from foilwork import _words
from foilwork._native import Bounds, _Answer, _Percent

__all__ = [
    "Profile",
    "line_shows_after",
    "profile",
]

@final
class Profile(_Answer):
    """How much of a strand is covered, at every centimetre: nothing up to the start, then rising evenly over the
    transition. Back-combing leaves the rest at the scalp, as it was.

    Args:
        covered_percent: of the hair taken, what is covered behind the transition.
        start_cm: from the scalp to the first colour.
        transition_cm: from the first colour to where the share is covered in full.

    Raises:
        FoilworkError: a value out of range.

    Examples:
        >>> from foilwork.head import Profile
        >>> combed = Profile(60, start_cm=5, transition_cm=4)
        >>> combed.covered_at(7).best, combed.softness
        (30.0, 'diffuse')
    """

    __match_args__ = ("covered_percent", "start_cm", "transition_cm")
    def __new__(
        cls, covered_percent: _Percent, start_cm: _Percent, transition_cm: _Percent
    ) -> Profile: ...
    @property
    def covered_percent(self) -> Bounds[float]:
        """Of the hair taken, what is covered behind the transition, in percent."""
    @property
    def start_cm(self) -> Bounds[float]:
        """From the scalp to the first colour, in cm."""
    @property
    def transition_cm(self) -> Bounds[float]:
        """From the first colour to where the share is covered in full, in cm."""
    def covered_at(self, at_cm: float) -> Bounds[float]:
        """The share that is covered at a place, in percent.

        Args:
            at_cm: from the scalp.
        """
    def painted_cm(self, length_cm: _Percent) -> Bounds[float]:
        """The length that would hold as much product if it were covered in full, in cm.

        Args:
            length_cm: of the hair, or its bounds.
        """
    @property
    def softness(self) -> _words._Softness:
        """How the start looks: ``"line"``, ``"soft"`` or ``"diffuse"``."""

def line_shows_after(profile: Profile, rate_cm_per_month: _Percent | None = None) -> Bounds[float]:
    """The weeks until the regrowth shows: soon above a line, late above a start that nobody sees.

    Args:
        profile: how the strand is covered.
        rate_cm_per_month: how fast the hair grows; without it as people do.

    Returns:
        ``Bounds`` in weeks, assumed with wide bounds.

    Raises:
        FoilworkError: a rate out of range.

    Examples:
        >>> from foilwork.head import line_shows_after, profile
        >>> line_shows_after(profile("slice", 30)).best < line_shows_after(profile("back-comb", 30)).best
        True
    """
def profile(technique: _words._Technique, length_cm: float) -> Profile:
    """How a technique covers a strand when nothing else is stated; assumed from common practice.

    Args:
        technique: ``"weave"``, ``"slice"``, ``"back-comb"``, ``"block"``, ``"freehand"``, ``"freehand-in-foil"`` or
            ``"regrowth"``.
        length_cm: of the hair; on hair shorter than 20 cm start and transition shrink with it.

    Returns:
        A ``Profile``.

    Raises:
        FoilworkError: another word, or a length out of range.

    Examples:
        >>> from foilwork.head import profile
        >>> profile("back-comb", 30).start_cm.best > profile("weave", 30).start_cm.high
        True
    """
