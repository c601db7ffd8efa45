from typing import TypeAlias, overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

from foilwork import _words
from foilwork._native import Bounds, _Errors

__all__ = [
    "half_life_days",
    "loss_rate",
    "loss_rate_from_half_life",
    "permanganate_strength",
    "permanganate_titre",
    "strength_after",
    "time_until",
]

_Reading: TypeAlias = float | tuple[float, float] | Bounds[float] | tuple[float, float, float]

def permanganate_strength(
    titre_ml: _Reading,
    aliquot_ml: _Reading,
    titrant_mol_per_l: _Reading,
    *,
    taken_ml: _Reading | None = None,
    made_up_to_ml: _Reading | None = None,
) -> Bounds[float]:
    """The strength of a bottle from a titration with permanganate in acid.

    Every reading is a number, ``(value, tolerance)`` with the tolerance printed on the glass, or ``Bounds``. The bounds are what
    follows when all readings are off at once in the worst way; an end point overrun or an old titrant is not in them.

    Args:
        titre_ml: permanganate used, in mL.
        aliquot_ml: sample in the flask, in mL.
        titrant_mol_per_l: concentration of the permanganate in mol/L (0.1 N is 0.02 mol/L).
        taken_ml: taken from the bottle for a dilution, in mL, if there was one.
        made_up_to_ml: the mark of that dilution, in mL.

    Returns:
        The strength of the bottle in mol/L with its bounds; ``convert`` puts them into other units.

    Raises:
        FoilworkError: a volume that may be zero, or a dilution that is none.

    Source:
        2 MnO4- + 5 H2O2 + 6 H+ -> 2 Mn2+ + 5 O2 + 8 H2O; British Pharmacopoeia, 1 mL of 0.02 mol/L is 1.701 mg.

    Examples:
        >>> from foilwork.peroxide import permanganate_strength
        >>> found = permanganate_strength((12, 0.03), (10, 0.02), 0.02, taken_ml=(10, 0.02), made_up_to_ml=(100, 0.1))
        >>> [round(x, 3) for x in found]
        [0.596, 0.6, 0.605]
    """

def permanganate_titre(
    strength_mol_per_l: _Reading,
    aliquot_ml: _Reading,
    titrant_mol_per_l: _Reading,
    *,
    taken_ml: _Reading | None = None,
    made_up_to_ml: _Reading | None = None,
) -> Bounds[float]:
    """The titre to expect when a bottle is titrated with permanganate in acid.

    Every reading is a number, ``(value, tolerance)``, or ``Bounds``.

    Args:
        strength_mol_per_l: strength of the bottle in mol/L.
        aliquot_ml: sample in the flask, in mL.
        titrant_mol_per_l: concentration of the permanganate in mol/L (0.1 N is 0.02 mol/L).
        taken_ml: taken from the bottle for a dilution, in mL, if there is one.
        made_up_to_ml: the mark of that dilution, in mL.

    Returns:
        The titre in mL with its bounds.

    Raises:
        FoilworkError: a volume that may be zero, or a dilution that is none.

    Source:
        As for ``permanganate_strength``.

    Examples:
        >>> from foilwork.peroxide import permanganate_titre
        >>> [round(x, 2) for x in permanganate_titre(0.6, 10, 0.02, taken_ml=10, made_up_to_ml=100)]
        [12.0, 12.0, 12.0]
    """

@overload
def strength_after(fresh: float, unit: _words._StrengthUnit, rate_per_day: float, days: float, *, errors: _Errors = "raise") -> float:
    """The strength after storage, by first-order loss at a rate that you measured.

    There is no default rate: it depends on the stabiliser, the bottle, light and warmth, and holds only for the storage it
    was measured in. ``loss_rate`` gets it from two assays.

    Args:
        fresh: strength at the start in ``unit``, a number or an array.
        unit: one of ``strength_units()``. By mass, the oxygen that leaves the bottle is allowed for; by volume, the volume
            is taken as unchanged.
        rate_per_day: loss rate per day, a number or an array.
        days: time in days, a number or an array.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.

    Returns:
        Strength in ``unit``: a float for numbers, else a float64 array.

    Raises:
        FoilworkError: a value out of range.

    Source:
        First-order decay; 2 H2O2 -> 2 H2O + O2.

    Examples:
        >>> from foilwork.peroxide import loss_rate_from_half_life, strength_after
        >>> round(strength_after(1.0, "mol/L", loss_rate_from_half_life(0.25), 0.75), 3)
        0.125
    """
@overload
def strength_after(
    fresh: ArrayLike, unit: _words._StrengthUnit, rate_per_day: ArrayLike, days: ArrayLike, *, errors: _Errors = "raise"
) -> NDArray[float64]: ...

@overload
def loss_rate(first: float, later: float, unit: _words._StrengthUnit, days: float, *, errors: _Errors = "raise") -> float:
    """The rate of loss between two assays of one bottle.

    Args:
        first: first strength in ``unit``, a number or an array.
        later: later strength in the same unit, a number or an array.
        unit: one of ``strength_units()``.
        days: time between them in days, a number or an array.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.

    Returns:
        Loss rate per day: a float for numbers, else a float64 array.

    Raises:
        FoilworkError: a strength that rose, a zero, or a value out of range.

    Source:
        First-order decay.

    Examples:
        >>> from foilwork.peroxide import loss_rate
        >>> round(loss_rate(6.0, 5.7, "% w/w", 90), 6)
        0.000586
    """
@overload
def loss_rate(
    first: ArrayLike, later: ArrayLike, unit: _words._StrengthUnit, days: ArrayLike, *, errors: _Errors = "raise"
) -> NDArray[float64]: ...

@overload
def time_until(fresh: float, wanted: float, unit: _words._StrengthUnit, rate_per_day: float, *, errors: _Errors = "raise") -> float:
    """How long until a bottle has fallen to a strength, in days.

    Args:
        fresh: strength now in ``unit``, a number or an array.
        wanted: strength to wait for in the same unit, a number or an array.
        unit: one of ``strength_units()``.
        rate_per_day: loss rate per day, a number or an array.
        errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.

    Returns:
        Days: a float for numbers, else a float64 array.

    Raises:
        FoilworkError: a bottle that is below already, a zero rate, or a value out of range.

    Source:
        First-order decay.

    Examples:
        >>> from foilwork.peroxide import time_until
        >>> round(time_until(1.0, 0.2, "mol/L", 0.1), 2)
        16.09
    """
@overload
def time_until(
    fresh: ArrayLike, wanted: ArrayLike, unit: _words._StrengthUnit, rate_per_day: ArrayLike, *, errors: _Errors = "raise"
) -> NDArray[float64]: ...

def loss_rate_from_half_life(half_life_days: float) -> float:
    """The loss rate of a half-life.

    Args:
        half_life_days: time in which half is lost, in days, above 0.

    Returns:
        Loss rate per day.

    Raises:
        FoilworkError: a half-life out of range.

    Examples:
        >>> from foilwork.peroxide import loss_rate_from_half_life
        >>> round(loss_rate_from_half_life(0.25) / 86_400, 7)
        3.21e-05
    """

def half_life_days(rate_per_day: float) -> float:
    """The half-life of a loss rate.

    Args:
        rate_per_day: loss rate per day, above 0.

    Returns:
        Time in which half is lost, in days.

    Raises:
        FoilworkError: a rate out of range.

    Examples:
        >>> from foilwork.peroxide import half_life_days
        >>> round(half_life_days(0.1), 2)
        6.93
    """
