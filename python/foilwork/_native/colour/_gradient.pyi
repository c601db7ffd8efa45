from collections.abc import Sequence
from typing import final

from foilwork import _words
from foilwork._native import Bounds, _Answer
from foilwork._native.colour._level import _Level
from foilwork._native.colour._swatches import Difference, Swatch
from foilwork._native.finding import Finding

__all__ = [
    "Contrast",
    "PrePigmentation",
    "SectionLook",
    "Transition",
    "check_depth_at_root",
    "check_hairline",
    "contrast_between",
    "pre_pigmentation",
    "section_look",
    "strip",
    "transition_between",
]

@final
class SectionLook(_Answer):
    """How a section with lightened strands reads from a distance; made by ``section_look``."""

    __match_args__ = ("mixed", "perceived_level", "contrast", "reads_as_one", "caveat")
    @property
    def mixed(self) -> Swatch:
        """The colour that the eye mixes."""
    @property
    def perceived_level(self) -> Bounds[float]:
        """The level that natural hair as light as this has."""
    @property
    def contrast(self) -> Difference:
        """From the strands left to the lightened ones."""
    @property
    def reads_as_one(self) -> bool:
        """Whether the strands do not show: two readings of one tress differ as much."""
    @property
    def caveat(self) -> str:
        """What the figures leave out."""

@final
class PrePigmentation(_Answer):
    """What to put back before lightened hair is taken darker; made by ``pre_pigmentation``."""

    __match_args__ = ("tone", "level", "finding")
    @property
    def tone(self) -> list[tuple[str, float]]:
        """The hues of the tone with their shares in percent, largest first."""
    @property
    def level(self) -> float:
        """The level to put it on at."""
    @property
    def finding(self) -> Finding:
        """What to say about it."""

@final
class Transition(_Answer):
    """A tone to paint where two formulas meet in one foil; made by ``transition_between``."""

    __match_args__ = ("level", "tone", "finding")
    @property
    def level(self) -> float:
        """Half way between the two levels."""
    @property
    def tone(self) -> list[tuple[str, float]]:
        """Both tones in equal parts: hues with their shares in percent, largest first."""
    @property
    def finding(self) -> Finding:
        """What to say about it."""

@final
class Contrast(_Answer):
    """How far two sections are apart; made by ``contrast_between``."""

    __match_args__ = ("difference", "finding")
    @property
    def difference(self) -> Difference:
        """From the first to the second."""
    @property
    def finding(self) -> Finding | None:
        """A note when the two read as one colour."""

def section_look(rest: Swatch, lightened: Swatch, share_percent: float) -> SectionLook:
    """The look of a section: a share of its hair lightened (and toned), the rest left.

    Args:
        rest: the hair that is left.
        lightened: the lightened or toned hair.
        share_percent: share of the lightened hair, from 0 to 100 %.

    Returns:
        A ``SectionLook``.

    Raises:
        FoilworkError: a share outside 0 to 100 %.

    Examples:
        >>> from foilwork.colour import section_look, swatch
        >>> look = section_look(swatch(6), swatch(9, lightened_from=6), 50)
        >>> look.perceived_level.best > 6.5, look.reads_as_one
        (True, False)
    """

def strip(swatches: Sequence[Swatch]) -> str:
    """Swatches side by side, for a notebook or a page: for a section its natural, exposed and toned hair.

    Args:
        swatches: the swatches, each with its own label.

    Returns:
        A piece of HTML, each colour with its facts in words.

    Examples:
        >>> from foilwork.colour import strip, swatch
        >>> strip([swatch(5), swatch(9, lightened_from=5)]).count("model, not a photograph")
        2
    """

def pre_pigmentation(lightened_level: _Level, target_level: _Level) -> PrePigmentation | None:
    """What to put back before lightened hair is taken darker; ``None`` for less than two levels.

    Args:
        lightened_level: level of the lightened hair.
        target_level: darker level wanted.

    Returns:
        A ``PrePigmentation``, or ``None``. Which shade and how much of it is ``foilwork.toner.pre_pigment``.

    Raises:
        FoilworkError: a level outside 1 to 12.

    Source:
        Common practice.

    Examples:
        >>> from foilwork.colour import pre_pigmentation
        >>> advice = pre_pigmentation(9, 6)
        >>> advice.level, advice.finding.rule
        (7.0, 'pre-pigmentation')
    """

def check_depth_at_root(natural_level: _Level, depth_level: _Level) -> Finding | None:
    """Warn of depth at the root that is darker than the natural base: new growth would show lighter than it.

    Args:
        natural_level: natural level.
        depth_level: level put at the root.

    Returns:
        A warning, or None.

    Raises:
        FoilworkError: a level outside 1 to 12.

    Source:
        Common practice.

    Examples:
        >>> from foilwork.colour import check_depth_at_root
        >>> check_depth_at_root(6, 5).verdict, check_depth_at_root(6, 6.5)
        ('warning', None)
    """

def check_hairline(hairline_level: _Level, neighbours: Sequence[tuple[str, _Level]]) -> Finding | None:
    """Warn of a hairline that is darker than what lies beside it.

    Args:
        hairline_level: level of the hairline.
        neighbours: (name, level) of each section beside it.

    Returns:
        A warning that names the lightest neighbour, or None.

    Raises:
        FoilworkError: a level outside 1 to 12.

    Source:
        Common practice.

    Examples:
        >>> from foilwork.colour import check_hairline
        >>> "crown" in check_hairline(8, [("crown", 9)]).text
        True
    """

def transition_between(first_level: _Level, second_level: _Level, *, first_tones: Sequence[_words._Hue] = (), second_tones: Sequence[_words._Hue] = ()) -> Transition | None:
    """Whether two formulas that meet in one foil need a tone between them.

    They do when their levels differ by more than two, or when one leans warm and the other cool.

    Args:
        first_level: level of the first formula.
        second_level: level of the second formula.
        first_tones: its hue words, the main one first; empty is neutral.
        second_tones: the same for the second.

    Returns:
        A ``Transition``, or None.

    Raises:
        FoilworkError: a level outside 1 to 12, or a word that is not one of the twelve hues.

    Source:
        Two levels are assumed.

    Examples:
        >>> from foilwork.colour import transition_between
        >>> transition_between(6, 9).level
        7.5
    """

def contrast_between(first: Swatch, second: Swatch) -> Contrast:
    """How far two sections are apart, and a note when repeated readings could not tell them.

    Args:
        first: the first section.
        second: the second.

    Returns:
        The difference and the note.

    Source:
        The spread of repeated readings of one tress is assumed.

    Examples:
        >>> from foilwork.colour import contrast_between, swatch
        >>> found = contrast_between(swatch(7), swatch(5))
        >>> found.difference.lighter < 0, found.finding
        (True, None)
    """
