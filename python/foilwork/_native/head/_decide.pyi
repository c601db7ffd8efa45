from collections.abc import Sequence
from typing import final

from foilwork import _words
from foilwork._native import _Answer
from foilwork._native.colour._level import _Level

__all__ = [
    "ClassDecision",
    "Rejected",
    "product_class",
    "service_class",
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
    def before(self) -> list[str]:
        """What has to be done before: ``"pre-soften"``, ``"pre-pigment"``, ``"clean-first"``."""
    @property
    def basis(self) -> str:
        """What the rules rest on."""

def product_class(
    from_level: _Level,
    to_level: _Level,
    *,
    artificial: bool = False,
    lightened: bool = False,
    white_percent: float = 0.0,
) -> ClassDecision:
    """Which class of product takes hair from one level to another, and which do not, each with its reason.

    Args:
        from_level: the level now.
        to_level: the level wanted.
        artificial: whether the hair there carries artificial colour.
        lightened: whether it has been lightened.
        white_percent: how much of it is white.

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
