from typing import final

from foilwork._native import _Answer

__all__ = [
    "Before",
    "Floor",
    "SectionWork",
]

@final
class SectionWork(_Answer):
    """A section as work on the clock.

    Args:
        name: your name for it.
        apply_min: how long one pair of hands puts it on, without mixing.
        develop_min: how long its last strand develops at least.
        longest_min: the longest that its first strand may carry the mix.
        bowls: fresh bowls that it takes.
        foils: how many foils it has, where it is worked in foils.
        same_foil: sections with the same number share their foils.

    Raises:
        FoilworkError: a time out of range.

    Examples:
        >>> from foilwork.day import SectionWork
        >>> SectionWork("nape", apply_min=18, develop_min=30, longest_min=50).bowls
        1
    """

    __match_args__ = ("name", "apply_min", "develop_min", "longest_min", "bowls", "foils", "same_foil")
    def __new__(cls, name: str, *, apply_min: float, develop_min: float, longest_min: float, bowls: int = 1, foils: int | None = None, same_foil: int | None = None) -> SectionWork: ...
    @property
    def name(self) -> str:
        """Your name for it."""
    @property
    def apply_min(self) -> float:
        """How long one pair of hands puts it on, without mixing, in min."""
    @property
    def develop_min(self) -> float:
        """How long its last strand develops at least, in min."""
    @property
    def longest_min(self) -> float:
        """The longest that its first strand may carry the mix, in min."""
    @property
    def bowls(self) -> int:
        """Fresh bowls that it takes."""
    @property
    def foils(self) -> int | None:
        """How many foils it has."""
    @property
    def same_foil(self) -> int | None:
        """Sections with the same number share their foils."""

@final
class Before(_Answer):
    """One section comes before another.

    Args:
        first: the place of the section that comes first, from 0.
        then: the place of the one that waits, from 0.
        until: what of the first must be over: ``"applied"`` or ``"rinsed"``.
        rule: why: ``"stated"``, ``"darkest-first"``, ``"slowest-first"``, ``"mid-lengths-first"`` or ``"outline-first"``.

    Raises:
        FoilworkError: a word that is none of these.

    Examples:
        >>> from foilwork.day import Before
        >>> Before(0, 1).until
        'applied'
    """

    __match_args__ = ("first", "then", "until", "rule")
    def __new__(cls, first: int, then: int, *, until: str = "applied", rule: str = "stated") -> Before: ...
    @property
    def first(self) -> int:
        """The place of the section that comes first, from 0."""
    @property
    def then(self) -> int:
        """The place of the one that waits, from 0."""
    @property
    def until(self) -> str:
        """What of the first must be over."""
    @property
    def rule(self) -> str:
        """Why."""

@final
class Floor(_Answer):
    """What the salon has for this guest: hands, basins, and how long the small work takes.

    Args:
        people: pairs of hands.
        basins: basins.
        mix_min: weighing and mixing a bowl; assumed.
        look_min: a look over all that is on; zero where nothing has to be looked at; assumed.
        first_look_min: the first look that counts for a section, from its first strand.
        look_every_min: how long hands work or rest between two looks.
        rinse_min: rinsing a section; assumed.
        walk_min: bringing the guest to the basin; assumed.

    Raises:
        FoilworkError: a time out of range.

    Source:
        First look after 15 to 20 min, then every 5 to 10 (``"check-interval"``).

    Examples:
        >>> from foilwork.day import Floor
        >>> Floor(people=2).rinse_min
        3.0
    """

    __match_args__ = ("people", "basins", "mix_min", "look_min", "first_look_min", "look_every_min", "rinse_min", "walk_min")
    def __new__(cls, *, people: int = 1, basins: int = 1, mix_min: float = 3.0, look_min: float = 1.0, first_look_min: float = 15.0, look_every_min: float = 5.0, rinse_min: float = 3.0, walk_min: float = 2.0) -> Floor: ...
    @property
    def people(self) -> int:
        """Pairs of hands."""
    @property
    def basins(self) -> int:
        """Basins."""
    @property
    def mix_min(self) -> float:
        """Weighing and mixing a bowl, in min."""
    @property
    def look_min(self) -> float:
        """A look over all that is on, in min."""
    @property
    def first_look_min(self) -> float:
        """The first look, in min from the first strand."""
    @property
    def look_every_min(self) -> float:
        """How long hands work or rest between two looks, in min."""
    @property
    def rinse_min(self) -> float:
        """Rinsing a section, in min."""
    @property
    def walk_min(self) -> float:
        """Bringing the guest to the basin, in min."""

