from collections.abc import Sequence
from typing import final, overload

from numpy import bool_, float64
from numpy.typing import ArrayLike, NDArray

from foilwork._native import _Answer, _Errors, _Lab, _Lch, _Xyz

__all__ = [
    "Srgb",
    "ciede2000",
    "lab_to_lch",
    "lab_to_srgb",
    "lab_to_xyz",
    "lch_to_lab",
    "reflectance_to_lab",
    "srgb_to_lab",
    "xyz_to_lab",
]

@final
class Srgb(_Answer):
    """A colour for a screen; made by ``lab_to_srgb``."""

    __match_args__ = ("hex", "in_gamut")
    @property
    def hex(self) -> str:
        """Six hexadecimal digits after a ``#``."""
    @property
    def in_gamut(self) -> bool:
        """Whether it is the colour itself rather than the nearest one at the edge of what sRGB can show."""

@overload
def lab_to_srgb(  # type: ignore[overload-overlap]
    lab: _Lab, *, observer_degrees: int = 10, errors: _Errors = "raise"
) -> Srgb:
    """CIELAB to the nearest sRGB colour a screen can show.

    Args:
        lab: L*, a*, b*: three numbers or an array of shape (..., 3).
        observer_degrees: 2 or 10; the white is D65, adapted to that of sRGB.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a colour is refused and warn once.

    Returns:
        For numbers the colour, such as ``"#f2d16b"``, and whether it lies within the gamut of sRGB. For an array two: red,
        green and blue from 0 to 255 as float64 of the same shape, and booleans of the shape without the last axis, False
        where a colour is missing.

    Raises:
        FoilworkError: a coordinate out of range.

    Examples:
        >>> from foilwork.colour import lab_to_srgb
        >>> lab_to_srgb((100, 0, 0))
        Srgb(hex='#ffffff', in_gamut=True)
        >>> channels, in_gamut = lab_to_srgb([[100, 0, 0], [0, 0, 0]])
        >>> channels.tolist(), in_gamut.tolist()
        ([[255.0, 255.0, 255.0], [0.0, 0.0, 0.0]], [True, True])
    """
@overload
def lab_to_srgb(
    lab: ArrayLike, *, observer_degrees: int = 10, errors: _Errors = "raise"
) -> tuple[NDArray[float64], NDArray[bool_]]: ...

def srgb_to_lab(srgb: str) -> _Lab:
    """An sRGB colour to CIELAB for D65 and the 2 degree observer.

    Args:
        srgb: six hexadecimal digits after a ``#``.

    Returns:
        L*, a*, b*.

    Raises:
        FoilworkError: not such a text.

    Examples:
        >>> from foilwork.colour import srgb_to_lab
        >>> [round(value, 1) + 0.0 for value in srgb_to_lab("#ffffff")]
        [100.0, 0.0, 0.0]
    """

@overload
def ciede2000(  # type: ignore[overload-overlap]
    lab_1: _Lab, lab_2: _Lab, *, errors: _Errors = "raise", out: None = None, where: None = None
) -> float:
    """CIEDE2000 colour difference.

    Args:
        lab_1: L*, a*, b*: three numbers or an array of shape (..., 3).
        lab_2: the same, with the same white; the shapes broadcast.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
        out: an array of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans, one for each colour: those that are False are not worked on, and stay as they are in
            ``out``, or NaN.

    Returns:
        A float, or an array of the broadcast shape without the last axis. NaN stays NaN.

    Raises:
        FoilworkError: L* outside 0 to 100, a* or b* outside -200 to 200.

    Source:
        Sharma, Wu, Dalal, Color Res. Appl. 30(1):21-30, 2005.

    Examples:
        >>> from foilwork.colour import ciede2000
        >>> round(ciede2000((50, 2.6772, -79.7751), (50, 0, -82.7485)), 4)
        2.0425
    """
@overload
def ciede2000(lab_1: ArrayLike, lab_2: ArrayLike, *, errors: _Errors = "raise", out: NDArray[float64] | None = None, where: ArrayLike | None = None) -> NDArray[float64]: ...

@overload
def lab_to_xyz(  # type: ignore[overload-overlap]
    lab: _Lab, *, observer_degrees: int = 10, errors: _Errors = "raise", out: None = None, where: None = None
) -> _Xyz:
    """CIELAB to tristimulus values X, Y, Z with Y = 1 for white.

    Args:
        lab: L*, a*, b*: three numbers or an array of shape (..., 3).
        observer_degrees: 2 or 10; the white is D65.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
        out: an array of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans, one for each colour: those that are False are not worked on, and stay as they are in
            ``out``, or NaN.

    Returns:
        Three numbers or an array of the same shape.

    Raises:
        FoilworkError: a coordinate out of range.

    Source:
        CIE 1976; whites of ASTM E308, computed by the Rust crate palette.

    Examples:
        >>> from foilwork.colour import lab_to_xyz
        >>> lab_to_xyz((100, 0, 0), observer_degrees=10)
        (0.94811, 1.0, 1.07304)
    """
@overload
def lab_to_xyz(
    lab: ArrayLike, *, observer_degrees: int = 10, errors: _Errors = "raise", out: NDArray[float64] | None = None, where: ArrayLike | None = None
) -> NDArray[float64]: ...

@overload
def xyz_to_lab(  # type: ignore[overload-overlap]
    xyz: _Xyz, *, observer_degrees: int = 10, errors: _Errors = "raise", out: None = None, where: None = None
) -> _Lab:
    """Tristimulus values X, Y, Z (Y = 1 for white) to CIELAB.

    Args:
        xyz: X, Y, Z: three numbers or an array of shape (..., 3).
        observer_degrees: 2 or 10; the white is D65.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
        out: an array of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans, one for each colour: those that are False are not worked on, and stay as they are in
            ``out``, or NaN.

    Returns:
        Three numbers or an array of the same shape.

    Raises:
        FoilworkError: a value outside 0 to 2.

    Source:
        CIE 1976; whites of ASTM E308, computed by the Rust crate palette.

    Examples:
        >>> from foilwork.colour import xyz_to_lab
        >>> [round(value, 6) + 0.0 for value in xyz_to_lab((0.94811, 1.0, 1.07304))]
        [100.0, 0.0, 0.0]
    """
@overload
def xyz_to_lab(
    xyz: ArrayLike, *, observer_degrees: int = 10, errors: _Errors = "raise", out: NDArray[float64] | None = None, where: ArrayLike | None = None
) -> NDArray[float64]: ...

@overload
def lab_to_lch(  # type: ignore[overload-overlap]
    lab: _Lab, *, errors: _Errors = "raise", out: None = None, where: None = None
) -> _Lch:
    """CIELAB to lightness, chroma and hue angle in degrees.

    Args:
        lab: L*, a*, b*: three numbers or an array of shape (..., 3).
        errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
        out: an array of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans, one for each colour: those that are False are not worked on, and stay as they are in
            ``out``, or NaN.

    Returns:
        L*, C*, h: three numbers or an array of the same shape; h is from 0 to 360 degrees.

    Raises:
        FoilworkError: a coordinate out of range.

    Examples:
        >>> from foilwork.colour import lab_to_lch
        >>> lab_to_lch((50, 0, 20))
        (50.0, 20.0, 90.0)
    """
@overload
def lab_to_lch(lab: ArrayLike, *, errors: _Errors = "raise", out: NDArray[float64] | None = None, where: ArrayLike | None = None) -> NDArray[float64]: ...

@overload
def lch_to_lab(  # type: ignore[overload-overlap]
    lch: _Lch, *, errors: _Errors = "raise", out: None = None, where: None = None
) -> _Lab:
    """Lightness, chroma and hue angle to CIELAB.

    Args:
        lch: L*, C*, h in degrees: three numbers or an array of shape (..., 3).
        errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
        out: an array of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans, one for each colour: those that are False are not worked on, and stay as they are in
            ``out``, or NaN.

    Returns:
        L*, a*, b*: three numbers or an array of the same shape.

    Raises:
        FoilworkError: L* outside 0 to 100, C* outside 0 to 200, h outside -360 to 360 degrees.

    Examples:
        >>> from foilwork.colour import lch_to_lab
        >>> [round(value, 9) for value in lch_to_lab((50, 20, 90))]
        [50.0, 0.0, 20.0]
    """
@overload
def lch_to_lab(lch: ArrayLike, *, errors: _Errors = "raise", out: NDArray[float64] | None = None, where: ArrayLike | None = None) -> NDArray[float64]: ...

def reflectance_to_lab(
    reflectance: Sequence[float], *, observer_degrees: int = 10
) -> _Lab:
    """The reflectance of hair to CIELAB under daylight D65.

    Args:
        reflectance: 31 numbers from 0 to 1, at 400 to 700 nm in steps of 10 nm.
        observer_degrees: 2 or 10.

    Returns:
        L*, a*, b*.

    Raises:
        FoilworkError: another count of numbers, or one outside 0 to 1.

    Source:
        ISO/CIE 11664-1 and -2: matching functions of both observers, power of D65.

    Examples:
        >>> from foilwork.colour import reflectance_to_lab
        >>> [round(value, 6) + 0.0 for value in reflectance_to_lab([1.0] * 31)]
        [100.0, 0.0, 0.0]
    """
