from typing import TypeAlias

from foilwork._native import Bounds
from foilwork._native.source._trail import TracedResult

__all__ = [
    "permanganate_strength",
    "permanganate_titre",
    "trace_titration",
    "trace_titre",
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

def trace_titration(
    titre_ml: _Reading,
    aliquot_ml: _Reading,
    titrant_mol_per_l: _Reading,
    *,
    taken_ml: _Reading | None = None,
    made_up_to_ml: _Reading | None = None,
) -> TracedResult:
    """How the strength of a bottle comes about from a titration.

    Args:
        titre_ml: permanganate used, in mL, as of ``permanganate_strength``.
        aliquot_ml: sample in the flask, in mL.
        titrant_mol_per_l: concentration of the permanganate in mol/L.
        taken_ml: taken from the bottle for a dilution, in mL, if there was one.
        made_up_to_ml: the mark of that dilution, in mL.

    Returns:
        A :class:`foilwork.source.TracedResult`.

    Raises:
        FoilworkError: as ``permanganate_strength``.

    Examples:
        >>> from foilwork.peroxide import trace_titration
        >>> trace_titration((12, 0.03), (10, 0.02), 0.02).worked
        '2.5 x 0.02 x 12 / 10'
    """

def trace_titre(
    strength_mol_per_l: _Reading,
    aliquot_ml: _Reading,
    titrant_mol_per_l: _Reading,
    *,
    taken_ml: _Reading | None = None,
    made_up_to_ml: _Reading | None = None,
) -> TracedResult:
    """How the titre to expect from a bottle comes about.

    Args:
        strength_mol_per_l: strength of the bottle in mol/L, as of ``permanganate_titre``.
        aliquot_ml: sample in the flask, in mL.
        titrant_mol_per_l: concentration of the permanganate in mol/L.
        taken_ml: taken from the bottle for a dilution, in mL, if there is one.
        made_up_to_ml: the mark of that dilution, in mL.

    Returns:
        A :class:`foilwork.source.TracedResult`.

    Raises:
        FoilworkError: as ``permanganate_titre``.

    Examples:
        >>> from foilwork.peroxide import trace_titre
        >>> trace_titre(0.06, 10, 0.02).worked
        '0.06 x 10 / (2.5 x 0.02)'
    """
