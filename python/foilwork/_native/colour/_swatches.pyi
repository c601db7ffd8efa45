from collections.abc import Sequence
from typing import final

from foilwork import _words
from foilwork._native import Bounds, _Answer, _Lab
from foilwork._native.colour._level import _Level

__all__ = [
    "Difference",
    "Swatch",
    "swatch",
]

@final
class Swatch:
    """A modelled or measured colour of hair, with bounds; made by ``swatch``.

    A notebook shows it as a patch of colour with the same facts in words beside it.
    """
    @property
    def lab(self) -> _Lab:
        """L*, a*, b* of the best estimate (D65, 10 degrees unless measured otherwise)."""
    @property
    def lightness(self) -> Bounds[float]:
        """L* with its bounds over the assumptions of the model."""
    @property
    def redness(self) -> Bounds[float]:
        """a* with its bounds."""
    @property
    def yellowness(self) -> Bounds[float]:
        """b* with its bounds."""
    @property
    def chroma(self) -> Bounds[float]:
        """Chroma with its bounds."""
    @property
    def uncertainty(self) -> float:
        """Largest CIEDE2000 from the best estimate to any set of assumptions."""
    @property
    def srgb(self) -> str:
        """The nearest colour a screen can show, such as ``"#9d8b6c"``."""
    @property
    def hue(self) -> str | None:
        """The hue in the words of the wheel, ``None`` for a colour too grey to tell."""
    @property
    def basis(self) -> str:
        """What the colour rests on: ``"assumed"`` or ``"measured by you"``."""
    @property
    def notice(self) -> str:
        """The words to show beside the colour."""
    def difference_to(self, other: Swatch) -> Difference:
        """From this colour to another.

        Args:
            other: the other swatch.
        """
    def difference_bounds(self, other: Swatch) -> Bounds[float]:
        """CIEDE2000 to another colour, with its bounds over the assumptions of the model.

        Args:
            other: the other swatch.
        """
    def beside(self, other: Swatch, share_percent: float) -> Swatch:
        """Strands of this and another colour side by side, as a section with highlights looks.

        Args:
            other: the other swatch.
            share_percent: share of the other, from 0 to 100 %.

        Raises:
            FoilworkError: a share outside 0 to 100 %.
        """
    def _repr_html_(self) -> str: ...
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __hash__(self) -> int: ...

def swatch(
    level: _Level | None = None,
    *,
    lightened_from: _Level | None = None,
    tones: Sequence[_words._Hue] | None = None,
    white_percent: float = 0.0,
    lab: _Lab | None = None,
    observer_degrees: int = 10,
) -> Swatch:
    """The colour of hair: a model with bounds, or a measurement.

    Args:
        level: level of the hair, a number, a text or a ``Level``; ``None`` for white hair or with ``lab``.
        lightened_from: natural level it was lightened from; ``None`` for natural hair (or with ``tones``).
        tones: hue words of a colour of this level, shown as on white hair.
        white_percent: share of white hair mixed in, from 0 to 100 %.
        lab: L*, a*, b* measured on the hair, instead of a level.
        observer_degrees: observer of ``lab``, 2 or 10.

    Returns:
        A ``Swatch``; everything but a measurement is a model, not a photograph.

    Raises:
        FoilworkError: a value out of range, or ``lab`` together with ``level``.

    Source:
        Absorption of melanin over the wavelength as published for melanosomes; the rest is fitted to published tresses and
        to the trade's list of exposed pigment. The misfits of the model are listed in the documentation of the Rust module
        ``colour``.

    Examples:
        >>> from foilwork.colour import swatch
        >>> hair = swatch(8, lightened_from=4)
        >>> hair.notice
        'model, not a photograph'
        >>> hair.lab[0] > swatch(4).lab[0]
        True
    """

@final
class Difference(_Answer):
    """How far two colours are apart, as one number and as the directions a colourist names; made by ``difference_to``."""

    __match_args__ = ("ciede2000", "lighter", "redder", "yellower", "more_intense")
    @property
    def ciede2000(self) -> float:
        """CIEDE2000 colour difference."""
    @property
    def lighter(self) -> float:
        """L* of the second minus the first: above 0 is lighter."""
    @property
    def redder(self) -> float:
        """a* of the second minus the first: above 0 is redder, below greener."""
    @property
    def yellower(self) -> float:
        """b* of the second minus the first: above 0 is yellower, below bluer."""
    @property
    def more_intense(self) -> float:
        """Chroma of the second minus the first."""


