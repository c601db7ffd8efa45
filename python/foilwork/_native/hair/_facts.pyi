from typing import final, overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

from foilwork import _words
from foilwork._native import Bounds, _Answer, _Errors, _Percent
from foilwork._native.source._trail import TracedResult

__all__ = [
    "HairFacts",
    "HeadOfHair",
    "Tress",
    "by_caliper",
    "calibrated",
    "fibre_density",
    "hair_cut",
]

@final
class Tress(_Answer):
    """A part of the hair, of any length; made by ``HairFacts.part`` and ``HairFacts.on``."""

    __match_args__ = ("hairs", "mass_per_length_g_per_cm", "circumference_mm")
    @property
    def hairs(self) -> Bounds[float]:
        """How many hairs."""
    @property
    def mass_per_length_g_per_cm(self) -> Bounds[float]:
        """Mass of them all by their length, in g/cm."""
    @property
    def circumference_mm(self) -> Bounds[float]:
        """Circumference of one hair, in mm."""
    def mass_g(self, length_cm: _Percent) -> Bounds[float]:
        """Mass of a length of it, in g.

        Args:
            length_cm: the mean length of the hair, not the longest, or its bounds.
        """
    def surface_cm2(self, length_cm: _Percent) -> Bounds[float]:
        """Surface of a length of it, in cm2.

        Args:
            length_cm: the mean length of the hair, not the longest, or its bounds.
        """

@final
class HeadOfHair(_Answer):
    """All the hair of a head, from what is known of it; made by ``HairFacts.head``."""

    __match_args__ = ("scalp_cm2", "hairs_per_cm2", "cross_section_um2", "mass_per_length_g_per_cm", "basis")
    @property
    def scalp_cm2(self) -> Bounds[float]:
        """Scalp that bears hair, in cm2."""
    @property
    def hairs_per_cm2(self) -> Bounds[float]:
        """Hairs on a square centimetre, the mean over the head."""
    @property
    def cross_section_um2(self) -> Bounds[float]:
        """Cross-section of a hair, in um2."""
    @property
    def mass_per_length_g_per_cm(self) -> Bounds[float]:
        """Mass of all the hair by its length, in g/cm."""
    @property
    def basis(self) -> str:
        """The weakest of what it rests on: ``"published"``, ``"measured"``, ``"assumed"`` and so on."""

@final
class HairFacts(_Answer):
    """What is known of the hair; everything may be unknown, and then it spans the published spread between people.

    Args:
        group: a group whose means are published: ``"african"``, ``"asian"`` or ``"european"``.
        age_years: age; the density falls with it.
        density: by eye, ``"low"``, ``"medium"`` or ``"high"``.
        hairs_per_cm2: counted, instead of ``density``.
        texture: by eye and touch, ``"fine"``, ``"medium"`` or ``"coarse"``.
        diameter_um: measured, instead of ``texture``.
        diameter_method: ``"caliper"``, or ``"scalp-camera"``, which reads 1.41 times as much.
        scalp_cm2: hair-bearing scalp, measured.
        ponytail_girth_cm: girth of a tight ponytail, which says more than all the rest.
        gathered_percent: how much of the hair is in it.
        by_use_g_per_cm: mass of all the hair by its length as earlier uses say, from ``foilwork.head.hair_by_use``.

    Raises:
        FoilworkError: a word that is none of these, two facts for one, or a figure that no head has.

    Source:
        ``"density-of-people"``, ``"section-of-people"`` and the figures by group; bounds hold 80 of 100 people.

    Examples:
        >>> from foilwork.hair import HairFacts
        >>> shoulder = HairFacts(texture="fine").part(30)
        >>> low, best, high = shoulder.mass_g(25)
        >>> low < best < high, round(best)
        (True, 24)
        >>> HairFacts().head().basis
        'assumed'
        >>> measured = HairFacts(scalp_cm2=500, hairs_per_cm2=200, diameter_um=70)
        >>> measured.on(48).hairs
        Bounds(low=9600.0, best=9600.0, high=9600.0)
    """

    __match_args__ = ("group", "age_years", "density", "hairs_per_cm2", "texture", "diameter_um", "diameter_method", "scalp_cm2", "ponytail_girth_cm", "gathered_percent", "by_use_g_per_cm")
    def __new__(
        cls,
        *,
        group: _words._Group | None = None,
        age_years: float | None = None,
        density: _words._DensityByEye | None = None,
        hairs_per_cm2: _Percent | None = None,
        texture: _words._Texture | None = None,
        diameter_um: _Percent | None = None,
        diameter_method: _words._DiameterMethod = "caliper",
        scalp_cm2: _Percent | None = None,
        ponytail_girth_cm: _Percent | None = None,
        gathered_percent: float = 100.0,
        by_use_g_per_cm: _Percent | None = None,
    ) -> HairFacts: ...
    @property
    def group(self) -> str | None:
        """A group whose means are published."""
    @property
    def age_years(self) -> float | None:
        """Age in years."""
    @property
    def density(self) -> str | None:
        """Density by eye."""
    @property
    def hairs_per_cm2(self) -> Bounds[float] | None:
        """Hairs counted on a square centimetre."""
    @property
    def texture(self) -> str | None:
        """Thickness by eye and touch."""
    @property
    def diameter_um(self) -> Bounds[float] | None:
        """Diameter measured, in um."""
    @property
    def diameter_method(self) -> str:
        """How it was measured."""
    @property
    def scalp_cm2(self) -> Bounds[float] | None:
        """Hair-bearing scalp, in cm2."""
    @property
    def ponytail_girth_cm(self) -> Bounds[float] | None:
        """Girth of a tight ponytail, in cm."""
    @property
    def gathered_percent(self) -> float:
        """How much of the hair is in it, in percent."""
    @property
    def by_use_g_per_cm(self) -> Bounds[float] | None:
        """Mass of all the hair by its length as earlier uses say, in g/cm."""
    def head(self) -> HeadOfHair:
        """All of it."""
    def trail(self, share_percent: float, length_cm: float) -> list[TracedResult]:
        """How hairs, grams and surface of a part of it come about.

        Args:
            share_percent: the part, in percent of all the hair.
            length_cm: its length.

        Returns:
            A :class:`foilwork.source.TracedResult` for each.

        Examples:
            >>> from foilwork.hair import HairFacts
            >>> [one.unit for one in HairFacts().trail(50, 20)]
            ['hairs', 'g', 'cm2']
        """
    def part(self, share_percent: _Percent = 100) -> Tress:
        """A part of it, by its share of all the hair.

        Args:
            share_percent: the share in percent, or its bounds.
        """
    def on(self, area_cm2: _Percent) -> Tress:
        """The hair of a measured area of the scalp.

        Args:
            area_cm2: the area in cm2, or its bounds.
        """

@overload
def by_caliper(read_um: float, method: _words._DiameterMethod, *, errors: _Errors = "raise", out: None = None, where: None = None) -> float:
    """The diameter that a caliper would read.

    Args:
        read_um: what was read, in um, a number or an array.
        method: ``"caliper"`` or ``"scalp-camera"``.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
        out: an array of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        um by caliper: a float for a number, else a float64 array.

    Raises:
        FoilworkError: a diameter out of range, or another method.

    Source:
        ``"caliper-and-camera"``: 108.78 um by camera is 76.9 um by caliper.

    Examples:
        >>> from foilwork.hair import by_caliper
        >>> round(by_caliper(108.78, "scalp-camera"), 1)
        77.1
    """
@overload
def by_caliper(
    read_um: ArrayLike, method: _words._DiameterMethod, *, errors: _Errors = "raise", out: NDArray[float64] | None = None, where: ArrayLike | None = None
) -> NDArray[float64]: ...
def calibrated(predicted_g: _Percent, used_g: float) -> Bounds[float]:
    """An amount as predicted, and as it was really used on this guest: both together, the narrower weighing more.

    Args:
        predicted_g: what was predicted, with its bounds.
        used_g: what was put on the hair, not what was mixed.

    Returns:
        ``Bounds`` in g.

    Raises:
        FoilworkError: a mass out of range.

    Examples:
        >>> from foilwork.hair import calibrated
        >>> low, best, high = calibrated((60, 100, 170), 70)
        >>> 70 < best < 76, high / low < 1.5
        (True, True)
    """
def fibre_density() -> Bounds[float]:
    """Density of air-dry keratin, in g/mL.

    Returns:
        ``Bounds``, from memory of textbooks.

    Examples:
        >>> from foilwork.hair import fibre_density
        >>> fibre_density().best
        1.32
    """
@overload
def hair_cut(minor_um: float, major_um: float, *, errors: _Errors = "raise", out: None = None, where: None = None) -> tuple[float, float]:
    """A cut through a hair, an ellipse by its two axes: its area in um2 and its circumference in mm.

    Args:
        minor_um: the short axis, a number or an array.
        major_um: the long axis, a number or an array that broadcasts with it.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
        out: a tuple of two arrays of float64 to put the results into, of their shape; without it new ones are made.
        where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
            are in ``out``, or NaN.

    Returns:
        Area in um2 and circumference in mm: floats for numbers, else float64 arrays.

    Raises:
        FoilworkError: an axis out of range.

    Source:
        Plane geometry; the circumference is Ramanujan's second approximation.

    Examples:
        >>> from foilwork.hair import hair_cut
        >>> area_um2, circumference_mm = hair_cut(60.7, 85.6)
        >>> round(area_um2), round(circumference_mm, 4)
        (4081, 0.2315)
    """
@overload
def hair_cut(
    minor_um: ArrayLike, major_um: ArrayLike, *, errors: _Errors = "raise", out: tuple[NDArray[float64], NDArray[float64]] | None = None, where: ArrayLike | None = None
) -> tuple[NDArray[float64], NDArray[float64]]: ...
