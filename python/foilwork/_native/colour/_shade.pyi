from collections.abc import Sequence
from typing import final

from foilwork import _words
from foilwork._native.colour._level import _Level

__all__ = [
    "Shade",
    "read_shades",
]

@final
class Shade:
    """One shade of your own chart.

    Args:
        code: the code printed on the tube.
        level: level it gives on white hair, a number, a text or a ``Level``.
        tones: hue words, the main one first; each following one counts half as much. Empty is neutral.
        strength_percent: how much it deposits of what its level says; 0 is a clear diluter.

    Raises:
        FoilworkError: no code, a level off the scale, a word that is not one of the twelve hues.

    Examples:
        >>> from foilwork.colour import Shade
        >>> Shade("J9-mist", 9, ["violet"])
        <Shade J9-mist (level 9, violet)>
    """
    def __new__(
        cls, code: str, level: _Level, tones: Sequence[_words._Hue] = (), strength_percent: float = 100.0
    ) -> Shade: ...
    @property
    def code(self) -> str:
        """The code printed on the tube."""
    @property
    def level(self) -> float:
        """The level it gives on white hair."""
    @property
    def tones(self) -> list[tuple[str, float]]:
        """The hues of its tone with their shares in percent, largest first."""
    @property
    def strength_percent(self) -> float:
        """How much it deposits of what its level says, in percent."""
    def __hash__(self) -> int: ...
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...

def read_shades(text: str) -> list[Shade]:
    """Read the shades of a shop file.

    Args:
        text: the text of a TOML shop file; see ``examples/juniper_and_tide.toml``.

    Returns:
        The shades in the order of the file.

    Raises:
        FoilworkError: everything that is wrong with the file, each with its line and the way out.

    Examples:
        >>> from foilwork.colour import read_shades
        >>> read_shades('''
        ... name = "Juniper & Tide"
        ... [[shade]]
        ... code = "J9-mist"
        ... level = 9
        ... tones = ["violet"]
        ... class = "demi"
        ... ratio = "1:2"
        ... ''')
        [<Shade J9-mist (level 9, violet)>]
    """
