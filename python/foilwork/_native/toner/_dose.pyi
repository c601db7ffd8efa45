from collections.abc import Sequence
from typing import final

from foilwork import _words
from foilwork._native import Bounds, _Answer, _Lab
from foilwork._native.colour import Difference, PrePigmentation, Shade
from foilwork._native.colour._level import _Level
from foilwork._native.finding import Finding
from foilwork._native.toner._find import TonerPart

__all__ = [
    "NeutralisingDose",
    "PrePigmentMix",
    "check_toner",
    "neutralising_dose",
    "pre_pigment",
]

@final
class NeutralisingDose(_Answer):
    """How much of a neutralising shade balances the exposed warmth; made by ``neutralising_dose``."""

    __match_args__ = ("share_percent", "mass_g", "warmth_before", "warmth_left", "finding")
    @property
    def share_percent(self) -> Bounds[float]:
        """Share of the neutralising shade, in percent of the bowl."""
    @property
    def mass_g(self) -> Bounds[float]:
        """The same, in g."""
    @property
    def warmth_before(self) -> Bounds[float]:
        """Warmth before toning: CIELAB units away from natural hair as light as this."""
    @property
    def warmth_left(self) -> Bounds[float]:
        """Warmth that is left at this share."""
    @property
    def finding(self) -> Finding:
        """What follows for the bowl."""

@final
class PrePigmentMix(_Answer):
    """The shade to put warmth back with, weighed; made by ``pre_pigment``."""

    __match_args__ = ("wanted", "part", "residual")
    @property
    def wanted(self) -> PrePigmentation:
        """The level and tone that the rule asks for."""
    @property
    def part(self) -> TonerPart:
        """The shade nearest to that, with the whole bowl."""
    @property
    def residual(self) -> Difference:
        """From the shade to what the rule asks for."""

def neutralising_dose(neutraliser: Shade, carrier: Shade, *, lifted_level: _Level | None, natural_level: _Level | None = None, seen: str | None = None, exposed_lab: _Lab | None = None, porous: bool = False, bowl_g: float = 30.0) -> NeutralisingDose:
    """The dose of a neutralising shade that takes exposed warmth down to that of natural hair.

    Args:
        neutraliser: the neutralising shade.
        carrier: the neutral or clear shade that makes up the rest of the bowl.
        lifted_level: level the hair was lifted to; ``None`` for white hair.
        natural_level: natural level it was lifted from; its look is modelled.
        seen: the exposed pigment as you see it, such as ``"orange"``; counts before the model.
        exposed_lab: L*, a*, b* (D65, 10 degrees) measured on the lifted hair; counts before both.
        porous: whether the hair is porous: it takes up more, so that less is enough.
        bowl_g: mass of both shades together, in g.

    Returns:
        A ``NeutralisingDose``; more than its best estimate over-tones by the model.

    Raises:
        FoilworkError: a value out of range, or nothing that says how the hair looks.

    Source:
        The model of ``swatch``, assumed.

    Examples:
        >>> from foilwork.colour import Shade
        >>> from foilwork.toner import neutralising_dose
        >>> violet, plain = Shade("J9-mist", 9, ["violet"]), Shade("J9-plain", 9)
        >>> dose = neutralising_dose(violet, plain, lifted_level=9, natural_level=5)
        >>> dose.warmth_left.best < dose.warmth_before.best
        True
    """

def check_toner(shade: Shade, *, lifted_level: _Level | None, natural_level: _Level | None = None, seen: str | None = None, exposed_lab: _Lab | None = None, target_level: _Level | None = None, product: _words._ProductKind = "quasi-permanent") -> list[Finding]:
    """What the trade says of one shade as a toner on this hair.

    Its level is held against the hair's, its tone against the exposed warmth, and the target against what the product
    can do.

    Args:
        shade: the shade.
        lifted_level: level the hair was lifted to; ``None`` for white hair.
        natural_level: natural level it was lifted from; its look is modelled.
        seen: the exposed pigment as you see it, such as ``"orange"``; counts before the model.
        exposed_lab: L*, a*, b* (D65, 10 degrees) measured on the lifted hair; counts before both.
        target_level: level wanted.
        product: kind of the product, for example ``"quasi-permanent"``.

    Returns:
        The findings; without anything to say, one that it was looked at.

    Raises:
        FoilworkError: a value out of range, or nothing that says how the hair looks.

    Source:
        Common practice.

    Examples:
        >>> from foilwork.colour import Shade
        >>> from foilwork.toner import check_toner
        >>> [finding.verdict for finding in check_toner(Shade("J5-plain", 5), lifted_level=9, natural_level=5)]
        ['warning']
    """

def pre_pigment(lightened_level: _Level, target_level: _Level, shades: Sequence[Shade], bowl_g: float = 30.0) -> PrePigmentMix | None:
    """The shade and grams for pre-pigmentation before lightened hair is taken darker.

    Args:
        lightened_level: level of the lightened hair.
        target_level: darker level wanted.
        shades: the shades at hand.
        bowl_g: mass of the bowl, without developer, in g.

    Returns:
        A ``PrePigmentMix``; ``None`` for less than two levels, or when there is no shade.

    Raises:
        FoilworkError: a value out of range.

    Source:
        Common practice for what is put back; the nearest shade by CIEDE2000 in the model of ``swatch``.

    Examples:
        >>> from foilwork.colour import Shade
        >>> from foilwork.toner import pre_pigment
        >>> shades = [Shade("J7-moss", 7, ["green"]), Shade("J7-amber", 7, ["yellow-orange"])]
        >>> mix = pre_pigment(9, 6, shades, 40)
        >>> mix.part.code, mix.part.mass_g
        ('J7-amber', 40.0)
    """
