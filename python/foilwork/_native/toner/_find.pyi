from collections.abc import Sequence
from typing import final

from foilwork import _words
from foilwork._native import Bounds, _Answer, _Lab
from foilwork._native.colour import Difference, Shade, Swatch
from foilwork._native.colour._level import _Level
from foilwork._native.finding import Finding
from foilwork._native.source._trail import TracedResult

__all__ = [
    "PorousToning",
    "TonerAnswer",
    "TonerMix",
    "TonerPart",
    "find_toner",
]


@final
class TonerPart(_Answer):
    """One shade of a mix, weighable."""

    __match_args__ = ("code", "mass_g", "share_percent")
    @property
    def code(self) -> str:
        """The code on the tube."""
    @property
    def mass_g(self) -> float:
        """Mass to weigh, in g."""
    @property
    def share_percent(self) -> float:
        """Share of the mix, in percent."""

@final
class TonerMix(_Answer):
    """A mix of shades and what it is predicted to give."""

    __match_args__ = ("parts", "level", "tone", "predicted", "residual")
    @property
    def parts(self) -> list[TonerPart]:
        """The shades, largest mass first."""
    @property
    def level(self) -> float:
        """Mean level of the mix."""
    @property
    def tone(self) -> str:
        """Tone of the mix in words."""
    @property
    def predicted(self) -> Swatch:
        """The toned hair, with bounds."""
    @property
    def residual(self) -> Difference:
        """From the prediction to the target: what is left undone."""

@final
class PorousToning(_Answer):
    """A toner for porous hair, beside one for hair that is not: either its time or its dye is less, never both.

    A range to test strands in, not a promise.

    Examples:
        >>> from foilwork.colour import Shade
        >>> from foilwork.toner import find_toner
        >>> mist = [Shade("J9-mist", 9, ["violet"])]
        >>> porous = find_toner(mist, lifted_level=9, natural_level=5, target_level=9, porous=True).porous
        >>> round(porous.clear_g.best, 1), porous.basis
        (10.0, 'assumed')
    """

    __match_args__ = ("time_percent", "dyed_percent", "clear_g", "basis")
    @property
    def time_percent(self) -> Bounds[float]:
        """Of the usual time, at the usual strength, in percent."""
    @property
    def dyed_percent(self) -> Bounds[float]:
        """Of the shades, at the usual time, in percent; the rest of the bowl is clear."""
    @property
    def clear_g(self) -> Bounds[float]:
        """Clear shade of the same kind in this bowl, in g."""
    @property
    def basis(self) -> str:
        """What the bounds rest on."""

@final
class TonerAnswer(_Answer):
    """The answer of a toner search; made by ``find_toner``.

    A notebook shows target and prediction as swatches with their text, the mixes and the findings.
    """

    __match_args__ = ("outcome", "summary", "against", "target", "before", "best", "alternatives", "findings", "traced", "porous", "html")
    @property
    def outcome(self) -> str:
        """``"reached"``, ``"nearest-only"``, ``"already-nearer"`` or ``"too-close-to-tell"``."""
    @property
    def summary(self) -> str:
        """The answer in one sentence."""
    @property
    def against(self) -> str | None:
        """The warmth that the mix is chosen against, in the words of the trade's list."""
    @property
    def target(self) -> Swatch:
        """The colour asked for."""
    @property
    def before(self) -> Difference:
        """From the untoned hair to the target."""
    @property
    def best(self) -> TonerMix:
        """The mix that is taken; a further shade counts only where it is worth 0.25 CIEDE2000, and against warmth its complement
        decides between mixes that the model cannot tell apart.
        """
    @property
    def alternatives(self) -> list[TonerMix]:
        """Other mixes that differ in something that matters."""
    @property
    def porous(self) -> PorousToning | None:
        """On porous hair, what a mix that is meant for other hair would want instead; this one counts on the best estimate
        already.
        """
    @property
    def findings(self) -> list[Finding]:
        """What the rules of the trade say."""
    @property
    def traced(self) -> list[TracedResult]:
        """How the best mix came about, a :class:`foilwork.source.TracedResult` for each shade and for what is left."""
    @property
    def html(self) -> str:
        """The same as a piece of HTML."""
    def _repr_html_(self) -> str: ...


def find_toner(
    shades: Sequence[Shade],
    *,
    lifted_level: _Level | None,
    natural_level: _Level | None = None,
    seen: str | None = None,
    exposed_lab: _Lab | None = None,
    target_level: _Level | None = None,
    target_tones: Sequence[_words._Hue] | None = None,
    target_lab: _Lab | None = None,
    observer_degrees: int = 10,
    porous: bool = False,
    most_shades: int = 3,
    bowl_g: float = 30.0,
    division_g: float = 1.0,
) -> TonerAnswer:
    """Find the mix of shades that brings exposed pigment nearest to a target.

    Every choice of up to ``most_shades`` shades is tried, in masses the scale can weigh; dyes mix subtractively. Shades
    lighter than the hair are left out. Where the hair was not measured, the complement that the trade names wins over a
    mix that the model prefers by less than its own error.

    Args:
        shades: the shades at hand, at most 48 (24 when mixes may have 4 shades).
        lifted_level: level the hair was lifted to; ``None`` for white hair.
        natural_level: natural level it was lifted from; its look is modelled.
        seen: the exposed pigment as you see it, such as ``"orange"`` or ``"pale yellow"``; counts before the model.
        exposed_lab: L*, a*, b* measured on the lifted hair; counts before both.
        target_level: level wanted, with ``target_tones``.
        target_tones: hue words wanted, the main one first; empty is neutral.
        target_lab: L*, a*, b* wanted, instead of level and tones.
        observer_degrees: observer of the measured colours, 2 or 10.
        porous: whether the hair is porous.
        most_shades: most shades in a mix, from 1 to 4.
        bowl_g: mass of all shades together, without developer, in g.
        division_g: division of the scale, in g.

    Returns:
        A ``TonerAnswer`` with the mix, alternatives, what is left undone and findings.

    Raises:
        FoilworkError: no shades, a value out of range, a bowl the scale cannot weigh, or no single target.

    Source:
        The model of ``swatch``; how much of a shade hair takes up is assumed (half, from a quarter to all). A strand
        test decides.

    Examples:
        >>> from foilwork.colour import Shade
        >>> from foilwork.toner import find_toner
        >>> shades = [Shade("J9-plain", 9), Shade("J9-mist", 9, ["violet"]), Shade("J8-ink", 8, ["blue-violet"])]
        >>> answer = find_toner(shades, lifted_level=9, natural_level=5, target_level=8.5)
        >>> sum(part.mass_g for part in answer.best.parts)
        30.0
        >>> answer.summary.startswith("violet against pale yellow: ")
        True
    """

