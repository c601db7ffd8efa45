from collections.abc import Sequence
from typing import final

from foilwork import _words
from foilwork._native import Bounds, _Answer, _Percent
from foilwork._native.colour._level import _Level
from foilwork._native.source._trail import TracedResult

__all__ = [
    "ClassDecision",
    "Rejected",
    "RejectedTechnique",
    "StepNeeds",
    "TechniqueDecision",
    "choose_technique",
    "product_class",
    "service_class",
    "step_needs",
    "trace_product_class",
    "trace_service_class",
    "trace_technique",
]

@final
class Rejected(_Answer):
    """A class of product that was not chosen."""

    __match_args__ = ("product", "why")
    @property
    def product(self) -> str:
        """Which."""
    @property
    def why(self) -> str:
        """Why not."""

@final
class ClassDecision(_Answer):
    """The class of product for a section, with its reasons; made by ``product_class``."""

    __match_args__ = ("product", "why", "rejected", "before", "basis")
    @property
    def product(self) -> str:
        """What to use."""
    @property
    def why(self) -> str:
        """Why."""
    @property
    def rejected(self) -> list[Rejected]:
        """What was considered and not taken."""
    @property
    def before(self) -> list[_words._ExtraStep]:
        """What has to be done before: ``"pre-soften"``, ``"pre-pigment"``, ``"clean-first"``."""
    @property
    def basis(self) -> str:
        """What the rules rest on."""

@final
class StepNeeds(_Answer):
    """What a step before the colour takes; made by ``step_needs``."""

    __match_args__ = ("step", "what", "take_up_g_per_g", "strongest_developer_ww_percent", "develop_min", "then", "mind", "basis")

    @property
    def step(self) -> _words._ExtraStep:
        """Which."""
    @property
    def what(self) -> str:
        """What goes on."""
    @property
    def take_up_g_per_g(self) -> Bounds[float]:
        """On a gram of hair, in g."""
    @property
    def strongest_developer_ww_percent(self) -> float | None:
        """No developer in it is stronger, in % w/w; ``None`` where there is none in it."""
    @property
    def develop_min(self) -> Bounds[float]:
        """How long it stays on, in min."""
    @property
    def then(self) -> _words._StepEnd:
        """How it ends: ``"blot"`` or ``"rinse"``."""
    @property
    def mind(self) -> list[str]:
        """What to mind."""
    @property
    def basis(self) -> str:
        """What the figures rest on."""

@final
class RejectedTechnique(_Answer):
    """A technique that was not chosen."""

    __match_args__ = ("technique", "why", "does_it")

    @property
    def technique(self) -> _words._Technique:
        """Which."""
    @property
    def why(self) -> str:
        """Why not."""
    @property
    def does_it(self) -> bool:
        """Whether it would do what is wanted, with more work."""

@final
class TechniqueDecision(_Answer):
    """The technique for what is wanted, with its reasons; made by ``choose_technique``."""

    __match_args__ = ("technique", "practice", "line_shows_after_weeks", "rejected", "basis")

    @property
    def technique(self) -> _words._Technique | None:
        """What to do; ``None`` where nothing does it."""
    @property
    def practice(self) -> _words._Practice | None:
        """How hard it is: ``"plain"``, ``"practised"`` or ``"demanding"``."""
    @property
    def line_shows_after_weeks(self) -> Bounds[float] | None:
        """When its regrowth shows, in weeks."""
    @property
    def rejected(self) -> list[RejectedTechnique]:
        """What was considered and not taken."""
    @property
    def basis(self) -> str:
        """What the rules rest on."""

def step_needs(step: _words._ExtraStep) -> StepNeeds:
    """What goes on the hair in a step before the colour, how much of it, for how long, and what to mind.

    Args:
        step: ``"pre-soften"``, ``"pre-pigment"`` or ``"clean-first"``; ``product_class`` names it in ``before``.

    Returns:
        A ``StepNeeds``.

    Raises:
        FoilworkError: another step.

    Source:
        Common practice; the bounds are assumed.

    Examples:
        >>> from foilwork.head import product_class, step_needs
        >>> for step in product_class(7, 5, white_percent=70).before:
        ...     needs = step_needs(step)
        ...     print(needs.step, needs.develop_min.best, needs.then)
        pre-soften 10.0 blot
    """
def choose_technique(
    start: _words._Softness,
    upkeep_weeks: float,
    *,
    length_cm: float,
    taken_percent: float | None = None,
    rate_cm_per_month: _Percent | None = None,
) -> TechniqueDecision:
    """Which technique gives the start, the upkeep and the share that are wanted; of those that do, the plainest.

    Args:
        start: how the start may look at the sharpest: ``"line"``, ``"soft"`` or ``"diffuse"``.
        upkeep_weeks: how long the regrowth must not show.
        length_cm: of the hair.
        taken_percent: the share of the hair that is to be lighter, where that is known.
        rate_cm_per_month: how fast the hair grows; without it as people do.

    Returns:
        A ``TechniqueDecision``.

    Raises:
        FoilworkError: another word, or a value out of range.

    Source:
        Common practice; start and upkeep as ``profile`` and ``line_shows_after`` assume them.

    Examples:
        >>> from foilwork.head import choose_technique
        >>> found = choose_technique("diffuse", 12, length_cm=40, taken_percent=50)
        >>> found.technique, found.practice, len(found.rejected)
        ('back-comb', 'practised', 5)
        >>> choose_technique("diffuse", 50, length_cm=40).technique is None
        True
    """
def product_class(
    from_level: _Level,
    to_level: _Level,
    *,
    artificial: bool = False,
    lightened: bool = False,
    white_percent: float = 0.0,
    planned: _words._ProductKind | None = None,
) -> ClassDecision:
    """Which class of product takes hair from one level to another, and which do not, each with its reason.

    Args:
        from_level: the level now.
        to_level: the level wanted.
        artificial: whether the hair there carries artificial colour.
        lightened: whether it has been lightened.
        white_percent: how much of it is white.
        planned: the class of the colour that is planned, where one is: what it cannot lift comes before it.

    Returns:
        A ``ClassDecision``.

    Raises:
        FoilworkError: a value out of range.

    Source:
        Common practice.

    Examples:
        >>> from foilwork.head import product_class
        >>> found = product_class(5, 9)
        >>> found.product, len(found.rejected), found.rejected[0].product
        ('lightener', 4, 'semi-permanent')
        >>> product_class(5, 7, artificial=True).before
        ['clean-first']
        >>> product_class(5, 8, planned="semi-permanent").before
        ['pre-lighten']
    """
def service_class(treated: Sequence[tuple[_words._Technique, float]]) -> _words._ServiceClass:
    """What to call a service when booking and pricing it: ``"regrowth"``, ``"partial"``, ``"half"`` or ``"full"``.

    Args:
        treated: for each part its technique, and the share of all the hair that lies in the area worked on, in percent.

    Returns:
        The class. Its bounds, 40 and 75 %, are assumed.

    Raises:
        FoilworkError: another technique, or a share outside 0 to 100 %.

    Examples:
        >>> from foilwork.head import service_class
        >>> service_class([("weave", 55)])
        'half'
    """

def trace_technique(
    start: _words._Softness,
    upkeep_weeks: float,
    *,
    length_cm: float,
    taken_percent: float | None = None,
    rate_cm_per_month: _Percent | None = None,
) -> TracedResult:
    """How the technique of a section is decided on.

    Args:
        start: as of :func:`choose_technique`.
        upkeep_weeks: how long the regrowth must not show.
        length_cm: of the hair.
        taken_percent: the share of the hair that is to be lighter, where that is known.
        rate_cm_per_month: how fast the hair grows; without it as people do.

    Returns:
        A :class:`foilwork.source.TracedResult`.

    Raises:
        FoilworkError: as :func:`choose_technique`.

    Examples:
        >>> from foilwork.head import trace_technique
        >>> trace_technique("diffuse", 12, length_cm=40, taken_percent=50).value
        'back-comb'
    """

def trace_product_class(
    from_level: _Level,
    to_level: _Level,
    *,
    artificial: bool = False,
    lightened: bool = False,
    white_percent: float = 0.0,
    planned: _words._ProductKind | None = None,
) -> TracedResult:
    """How the class of product of a section is decided on.

    Args:
        from_level: the level now.
        to_level: the level wanted.
        artificial: whether the hair there carries artificial colour.
        lightened: whether it has been lightened.
        white_percent: how much of it is white.
        planned: the class of the colour that is planned, where one is.

    Returns:
        A :class:`foilwork.source.TracedResult`.

    Raises:
        FoilworkError: a value out of range.

    Examples:
        >>> from foilwork.head import trace_product_class
        >>> trace_product_class(5, 9).value
        'lightener'
    """

def trace_service_class(treated: Sequence[tuple[_words._Technique, float]]) -> TracedResult:
    """How the class of a service is decided on.

    Args:
        treated: as of :func:`service_class`.

    Returns:
        A :class:`foilwork.source.TracedResult`.

    Raises:
        FoilworkError: another technique, or a share outside 0 to 100 %.

    Examples:
        >>> from foilwork.head import trace_service_class
        >>> trace_service_class([("weave", 55)]).value
        'half'
    """
