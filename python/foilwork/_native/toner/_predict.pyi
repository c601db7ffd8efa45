from collections.abc import Sequence

from foilwork._native import _Lab
from foilwork._native.colour import Shade, Swatch
from foilwork._native.colour._level import _Level

__all__ = [
    "toned",
]

def toned(
    mix: Sequence[tuple[Shade, float]],
    *,
    lifted_level: _Level | None,
    natural_level: _Level | None = None,
    seen: str | None = None,
    exposed_lab: _Lab | None = None,
    porous: bool = False,
) -> Swatch:
    """The hair after a mix of shades.

    Args:
        mix: the shades, each with its share of all of them in percent.
        lifted_level: level the hair was lifted to; ``None`` for white hair.
        natural_level: natural level it was lifted from; its look is modelled.
        seen: the exposed pigment as you see it, such as ``"orange"``; counts before the model.
        exposed_lab: L*, a*, b* (D65, 10 degrees) measured on the lifted hair; counts before both.
        porous: whether the hair is porous: it takes up more.

    Returns:
        A ``Swatch``: the model with its bounds. Developer is not counted: it dilutes all shades alike.

    Raises:
        FoilworkError: a value out of range, shares above 100 % together, or nothing that says how the hair looks.

    Source:
        The model of ``swatch``; absorptions add up, and how much is taken up is assumed.

    Examples:
        >>> from foilwork.colour import Shade, swatch
        >>> from foilwork.toner import toned
        >>> violet, plain = Shade("J9-mist", 9, ["violet"]), Shade("J9-plain", 9)
        >>> before = swatch(9, lightened_from=5)
        >>> after = toned([(violet, 40), (plain, 60)], lifted_level=9, natural_level=5)
        >>> after.yellowness.best < before.yellowness.best
        True
    """
