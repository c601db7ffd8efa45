from collections.abc import Sequence
from typing import final

from foilwork._native import Bounds, _Answer
from foilwork._native.colour._level import Level

__all__ = [
    "Swatch",
    "swatch",
]

@final
class Swatch:
    """A modelled or measured colour of hair, with bounds; made by ``swatch``.

    A notebook shows it as a patch of colour with the same facts in words beside it.
    """
    @property
    def lab(self) -> tuple[float, float, float]:
        """L*, a*, b* of the best estimate (D65, 2 degrees unless measured otherwise)."""
    @property
    def lightness(self) -> Bounds[float]:
        """."""
    @property
    def redness(self) -> Bounds[float]:
        """."""
    @property
    def yellowness(self) -> Bounds[float]:
        """."""
    @property
    def chroma(self) -> Bounds[float]:
        """."""
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
        """From this colour to another: ``ciede2000``, ``lighter``, ``redder``, ``yellower``, ``more_intense``.

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
    level: float | str | Level | None = None,
    *,
    lightened_from: float | str | Level | None = None,
    tones: Sequence[str] | None = None,
    white_percent: float = 0.0,
    lab: tuple[float, float, float] | None = None,
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
        Melanin absorptions of pbrt version 3 (hair.cpp, 2016); how much melanin a level has is assumed. The misfits of
        the model are listed in the documentation of the Rust module ``colour``.

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
    """."""

    __match_args__ = ("ciede2000", "lighter", "redder", "yellower", "more_intense")
    @property
    def ciede2000(self) -> float:
        """."""
    @property
    def lighter(self) -> float:
        """."""
    @property
    def redder(self) -> float:
        """."""
    @property
    def yellower(self) -> float:
        """."""
    @property
    def more_intense(self) -> float:
        """."""

@final
class SectionLook(_Answer):
    """."""

    __match_args__ = ("mixed", "perceived_level", "contrast", "reads_as_one", "caveat")
    @property
    def mixed(self) -> Swatch:
        """."""
    @property
    def perceived_level(self) -> Bounds[float]:
        """."""
    @property
    def contrast(self) -> Difference:
        """."""
    @property
    def reads_as_one(self) -> bool:
        """."""
    @property
    def caveat(self) -> str:
        """."""

def section_look(rest: Swatch, lightened: Swatch, share_percent: float) -> SectionLook:
    """."""
