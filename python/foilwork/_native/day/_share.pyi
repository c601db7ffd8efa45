from collections.abc import Iterable
from typing import final

from foilwork._native import _Answer
from foilwork._native.day._timeline import Piece, Timeline
from foilwork._native.day._work import Floor
from foilwork.planned.day import Timeline as PlannedTimeline

__all__ = [
    "GuestOnFloor",
    "SharedFloor",
    "share_floor",
]

@final
class GuestOnFloor(_Answer):
    """A guest's place on the floor."""

    __match_args__ = ("guest", "start_min", "finish_min", "pieces")
    @property
    def guest(self) -> int:
        """The guest's place in the list, from 0."""
    @property
    def start_min(self) -> float:
        """When the work on this guest begins, in min."""
    @property
    def finish_min(self) -> float:
        """When the last section is rinsed, in min."""
    @property
    def pieces(self) -> list[Piece]:
        """The pieces of work on the common clock, with the people of the floor."""

@final
class SharedFloor(_Answer):
    """Guests who share people and basins."""

    __match_args__ = ("guests", "finish_min", "bound_min", "in_turn_min")
    @property
    def guests(self) -> list[GuestOnFloor]:
        """In the order of the list."""
    @property
    def finish_min(self) -> float:
        """When the last of them is rinsed, in min."""
    @property
    def bound_min(self) -> float:
        """A finish that nothing beats, in min."""
    @property
    def in_turn_min(self) -> float:
        """What the same guests would take one after the other, in min."""

def share_floor(days: Iterable[Timeline | PlannedTimeline], floor: Floor | None = None) -> SharedFloor:
    """Begin several guests so that people and basins suffice; their days stay as they were arranged.

    Of up to six guests every order is tried, of more the order of the list. Starts are whole minutes.

    Args:
        days: the day of each guest: what ``arrange`` gives, or ``day.proposed`` of a plan.
        floor: people and basins.

    Returns:
        When each guest is begun, and who does what.

    Raises:
        FoilworkError: a day that needs more people than there are, or no basin.

    Examples:
        >>> from foilwork.day import Floor, SectionWork, arrange, share_floor
        >>> day = arrange([SectionWork("nape", apply_min=15, develop_min=35, longest_min=60, foils=12)])
        >>> floor = share_floor([day, day], Floor(people=2))
        >>> floor.finish_min < floor.in_turn_min
        True
    """
