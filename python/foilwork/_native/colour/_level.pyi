from typing import Literal, TypeAlias, final, overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

from foilwork import _words
from foilwork._native import Bounds, _Answer

__all__ = [
    "Level",
    "UnderlyingPigment",
    "complement",
    "formula_level",
    "lift_needed",
    "result_level",
    "shade_level",
    "underlying_pigment",
]

_Level: TypeAlias = float | str | Level
_LevelBounds: TypeAlias = _Level | Bounds[float] | tuple[float, float, float]

@final
class Level:
    """How light hair is, on the European naming: 1 black to 10 lightest blond, up to 12 on scales that run so.

    Args:
        level: a number, a text such as ``"6.5"`` or ``"6,5"``, or a level.

    Raises:
        FoilworkError: outside 1 to 12, or not a number.

    Examples:
        >>> from foilwork.colour import Level
        >>> level = Level("6,5")
        >>> level.number, level.name()
        (6.5, 'between dark blond and medium blond')
        >>> Level(5).name("us")
        'medium brown'
        >>> Level(6).underlying_pigment().neutraliser
        ('blue', 'blue')
    """
    def __new__(cls, level: _Level) -> Level: ...
    @property
    def number(self) -> float:
        """The number of the level."""
    def name(self, naming: _words._Naming = "european") -> str | None:
        """The name of the level, ``None`` above 10.

        Args:
            naming: ``"european"`` or ``"us"``; the two differ at levels 5 to 7.

        Raises:
            FoilworkError: another naming.
        """
    def underlying_pigment(self) -> UnderlyingPigment:
        """The pigment exposed when natural hair is lightened to this level, and the hue that neutralises it.

        Returns:
            An ``UnderlyingPigment``. How much shows is ``swatch(level, lightened_from=natural)``.
        """
    def __float__(self) -> float: ...
    def __hash__(self) -> int: ...
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __lt__(self, value: Level, /) -> bool: ...
    def __le__(self, value: Level, /) -> bool: ...
    def __gt__(self, value: Level, /) -> bool: ...
    def __ge__(self, value: Level, /) -> bool: ...

def complement(hue: _words._Hue) -> str:
    """The hue opposite on the colour wheel.

    Args:
        hue: one of the twelve hues, such as ``"yellow-orange"``.

    Raises:
        FoilworkError: not one of the twelve.

    Source:
        Pairs of primaries and secondaries as printed in a cosmetology study guide; the pairs between, common practice.

    Examples:
        >>> from foilwork.colour import complement
        >>> complement("yellow")
        'violet'
    """

@overload
def formula_level(
    natural_level: float,
    target_level: float,
    *,
    product: _words._ProductKind = "permanent",
    coloured: bool = False,
    top_level: int = 10,
    errors: Literal["raise", "nan"] = "raise", out: None = None, where: None = None
) -> float:
    """The level a permanent shade must have to bring natural hair to the target: ``2 * target - natural``.

    Args:
        natural_level: natural level, a number or an array of any shape.
        target_level: level wanted, a number or an array of any shape.
        product: ``"permanent"``; every other product is refused with the reason.
        coloured: whether the hair carries artificial colour, which colour does not lighten.
        top_level: top of the scale the shades are numbered on, 10 or 12.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
        out: an array of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        The level of the shade, a float or an array.

    Raises:
        FoilworkError: another product, coloured hair to be lifted, or a shade outside the scale.

    Source:
        CK-12 Foundation, Ratios: The Perfect Blond (worked example). A rule of thumb: a strand test decides.

    Examples:
        >>> from foilwork.colour import formula_level
        >>> formula_level(6, 8)
        10.0
    """
@overload
def formula_level(
    natural_level: ArrayLike,
    target_level: ArrayLike,
    *,
    product: _words._ProductKind = "permanent",
    coloured: bool = False,
    top_level: int = 10,
    errors: Literal["raise", "nan"] = "raise", out: NDArray[float64] | None = None, where: ArrayLike | None = None
) -> NDArray[float64]: ...

@overload
def result_level(
    natural_level: float, applied_level: float, *, product: _words._ProductKind = "permanent", errors: Literal["raise", "nan"] = "raise", out: None = None, where: None = None
) -> float:
    """The level natural hair reaches under a permanent shade: the mean of natural and applied level.

    Args:
        natural_level: natural level, a number or an array of any shape.
        applied_level: level of the shade, a number or an array of any shape.
        product: ``"permanent"``; every other product is refused with the reason.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
        out: an array of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        The resulting level, a float or an array. White hair takes the shade's own level instead.

    Raises:
        FoilworkError: another product, or a level outside 1 to 12.

    Source:
        A colour educator's teaching blog, 2022. A rule of thumb: a strand test decides.

    Examples:
        >>> from foilwork.colour import result_level
        >>> result_level(2, 6)
        4.0
    """
@overload
def result_level(
    natural_level: ArrayLike,
    applied_level: ArrayLike,
    *,
    product: _words._ProductKind = "permanent",
    errors: Literal["raise", "nan"] = "raise", out: NDArray[float64] | None = None, where: ArrayLike | None = None
) -> NDArray[float64]: ...

@overload
def lift_needed(from_level: float, target_level: float, *, errors: Literal["raise", "nan"] = "raise", out: None = None, where: None = None) -> float:
    """How far hair has to go, in levels: positive is lift, negative is deposit.

    Args:
        from_level: level now, a number or an array of any shape.
        target_level: level wanted, a number or an array of any shape.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
        out: an array of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        Signed levels, a float or an array.

    Raises:
        FoilworkError: a level outside 1 to 12.

    Examples:
        >>> from foilwork.colour import lift_needed
        >>> lift_needed(5, 9)
        4.0
    """
@overload
def lift_needed(
    from_level: ArrayLike, target_level: ArrayLike, *, errors: Literal["raise", "nan"] = "raise", out: NDArray[float64] | None = None, where: ArrayLike | None = None
) -> NDArray[float64]: ...

@final
class UnderlyingPigment(_Answer):
    """The warm colour left when hair is lightened to a level; made by ``Level.underlying_pigment``.

    Each pair runs from the darker row of the trade's list to the lighter one; for a whole level they are one.
    """

    __match_args__ = ("words", "exposed", "visibility", "neutraliser", "basis")
    @property
    def words(self) -> tuple[str, str]:
        """The words of the list."""
    @property
    def exposed(self) -> tuple[str, str]:
        """The exposed hue."""
    @property
    def visibility(self) -> tuple[str, str]:
        """How strongly it shows."""
    @property
    def neutraliser(self) -> tuple[str, str] | None:
        """The neutralising hue, ``None`` where nothing shows."""
    @property
    def basis(self) -> str:
        """What the row rests on."""

def shade_level(
    natural_level: _Level, target_level: _Level, *, product: _words._ProductKind = "permanent", coloured: bool = False
) -> float:
    """The level of the shade that brings hair to a target: the rule for lifting, the target itself for going darker.

    Args:
        natural_level: level of the hair.
        target_level: level wanted.
        product: ``"permanent"``, or another kind of product.
        coloured: whether the hair carries artificial colour, which colour does not lighten.

    Returns:
        The level of the shade.

    Raises:
        FoilworkError: a lift that this product or the scale does not give.

    Source:
        CK-12 Foundation, Ratios: The Perfect Blond, for lifting; common practice for deposit.

    Examples:
        >>> from foilwork.colour import shade_level
        >>> shade_level(6, 8), shade_level(9, 5)
        (10.0, 5.0)
    """

def underlying_pigment(level: _Level) -> UnderlyingPigment:
    """The pigment exposed when natural hair is lightened to a level, and the hue that neutralises it.

    Args:
        level: the level it is lightened to.

    Returns:
        An ``UnderlyingPigment``. How much shows is ``swatch(level, lightened_from=natural)``.

    Raises:
        FoilworkError: a level outside 1 to 12.

    Source:
        Common practice; the words are those of the trade's list.

    Examples:
        >>> from foilwork.colour import underlying_pigment
        >>> underlying_pigment(8).exposed, underlying_pigment(8).neutraliser
        (('yellow', 'yellow'), ('violet', 'violet'))
    """
