from collections.abc import Sequence
from typing import final

from foilwork._native import _Answer
from foilwork._words import _ObservedStage, _TrainingUnit

__all__ = [
    "Checklist",
    "ChecklistPoint",
    "MappedElement",
    "checklist",
]

@final
class MappedElement(_Answer):
    """An element of a published unit."""

    __match_args__ = ("unit", "element")
    @property
    def unit(self) -> _TrainingUnit:
        """The unit, by its code."""
    @property
    def element(self) -> str:
        """Its element, criterion, note or list, as the unit numbers it."""

@final
class ChecklistPoint(_Answer):
    """One point of a checklist."""

    __match_args__ = ("number", "stage", "watch_for", "evidence", "answers")
    @property
    def number(self) -> int:
        """Its place, from one."""
    @property
    def stage(self) -> _ObservedStage:
        """When in the service."""
    @property
    def watch_for(self) -> str:
        """What is watched for."""
    @property
    def evidence(self) -> str:
        """What the observer writes down."""
    @property
    def answers(self) -> tuple[MappedElement, ...]:
        """The published elements that it answers."""

@final
class Checklist(_Answer):
    """A checklist for watching practical work, mapped to published units; made by :func:`checklist`."""

    __match_args__ = ("units", "points")
    @property
    def units(self) -> tuple[_TrainingUnit, ...]:
        """The units that it is mapped to."""
    @property
    def points(self) -> tuple[ChecklistPoint, ...]:
        """What is watched for."""
    def text(self) -> str:
        """The checklist as plain text in 80 columns, with room to write."""
    def html(self) -> str:
        """The checklist as a page without network, to tick off or to print."""
    def csv(self) -> str:
        """The checklist as CSV, a line for each point and element."""
    def json(self) -> str:
        """Points and elements as JSON text."""

def checklist(units: Sequence[_TrainingUnit] | None = None) -> Checklist:
    """Make a checklist for watching practical work, mapped to published units.

    The points are in foilwork's own words. They name the elements whose text was read: a unit may ask for more, and its
    version in force and its assessor decide.

    Args:
        units: the units it is for: ``"au-shbhcls002"``, ``"au-shbhcls004"``, ``"au-shbhcls006"``, ``"uk-skahdbr6"``,
            ``"uk-skahdbr7"``, ``"uk-d6001010"``, ``"uk-a6008630"``, ``"nz-12313"``, ``"nz-2889"``, ``"nz-19792"``,
            ``"nz-28835"``, ``"nz-28846"``, ``"ca-red-seal-f"``; all of them when left out.

    Returns:
        The checklist.

    Raises:
        FoilworkError: a unit that is not known.

    Source:
        The units, as far as they were read: ``foilwork.source.resolve("nz-12313")``.

    Examples:
        >>> from foilwork.teach import checklist
        >>> point = checklist(["nz-12313"]).points[0]
        >>> point.watch_for
        'Estimates white hair area by area, not as one glance'
        >>> [(one.unit, one.element) for one in point.answers]
        [('nz-12313', '1.2')]
        >>> "[ ]" in checklist(["nz-12313"]).text()
        True
    """
