from collections.abc import Sequence
from typing import Any, final

from foilwork._native.colour import Level, Shade, Swatch

__all__ = [
    "TonerAnswer",
    "toner",
]

@final
class TonerAnswer:
    """The answer of a toner search; made by ``toner``.

    A notebook shows target and prediction as swatches with their text, the mixes and the findings.
    """
    @property
    def reached(self) -> bool:
        """Whether the best mix is predicted as close to the target as two readings of one tress, and closer than the hair was."""
    @property
    def mix_g(self) -> list[tuple[str, float]]:
        """The best mix: codes with masses in g, largest first; a further shade counts only where it is worth 0.25 CIEDE2000."""
    @property
    def predicted(self) -> Swatch:
        """The toned hair as predicted, with bounds."""
    @property
    def target(self) -> Swatch:
        """The colour asked for."""
    @property
    def residual(self) -> float:
        """CIEDE2000 from the prediction to the target."""
    @property
    def before(self) -> float:
        """CIEDE2000 from the untoned hair to the target."""
    @property
    def alternatives(self) -> list[tuple[list[tuple[str, float]], float]]:
        """Other mixes as (codes with masses in g, CIEDE2000 to the target); the nearest of all is among them."""
    def findings(self) -> list[dict[str, str]]:
        """What the rules of the trade say: dicts with ``rule``, ``verdict``, ``text`` and ``sources``."""
    def data(self) -> dict[str, Any]:
        """The whole answer as dicts, lists, strings and numbers; every key carries its unit."""
    def _repr_html_(self) -> str: ...

def toner(
    shades: Sequence[Shade],
    *,
    lifted_level: float | str | Level,
    natural_level: float | str | Level | None = None,
    exposed_lab: tuple[float, float, float] | None = None,
    target_level: float | str | Level | None = None,
    target_tones: Sequence[str] | None = None,
    target_lab: tuple[float, float, float] | None = None,
    observer_degrees: int = 10,
    porous: bool = False,
    most_shades: int = 3,
    bowl_g: float = 30.0,
    division_g: float = 1.0,
) -> TonerAnswer:
    """Find the mix of shades that brings exposed pigment nearest to a target.

    Every choice of up to ``most_shades`` shades is tried, in masses the scale can weigh; dyes mix subtractively.

    Args:
        shades: the shades at hand, at most 48 (24 when mixes may have 4 shades).
        lifted_level: level the hair was lifted to.
        natural_level: natural level it was lifted from; not needed with ``exposed_lab``.
        exposed_lab: L*, a*, b* measured on the lifted hair, instead of the model.
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
        >>> from foilwork.toner import toner
        >>> shades = [Shade("10-0", 10), Shade("9-7", 9, ["violet"]), Shade("8-8", 8, ["blue-violet"])]
        >>> answer = toner(shades, lifted_level=9, natural_level=5, target_level=8, target_tones=["violet"])
        >>> sum(mass for _, mass in answer.mix_g)
        30.0
        >>> answer.residual < answer.before
        True
    """
