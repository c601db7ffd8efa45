"""Hands, looks and basin in a plan, written from the JSON Schema of a plan by ``make stubs``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from foilwork._record import Record

if TYPE_CHECKING:
    from foilwork._words import _OrderRule, _PieceKind

__all__ = ["DayPlan", "Floor", "FoilGroup", "OrderedBy", "Piece", "SectionTimes", "SectionWork", "Timeline"]


@dataclass(frozen=True)
class Floor(Record):
    """What the salon has for this guest: hands, basins, and how long the small work takes."""

    __slots__ = {
        "basins": "Basins.",
        "first_look_min": "The first look that counts for a section, from its first strand.",
        "look_every_min": "How long hands work or rest between two looks.",
        "look_min": "A look over all that is on; zero where nothing has to be looked at.",
        "mix_min": "Weighing and mixing a bowl.",
        "people": "Pairs of hands.",
        "rinse_min": "Rinsing a section at the basin.",
        "walk_min": "Bringing the guest to the basin.",
    }
    basins: int
    first_look_min: float
    look_every_min: float
    look_min: float
    mix_min: float
    people: int
    rinse_min: float
    walk_min: float


@dataclass(frozen=True)
class OrderedBy(Record):
    """One section before another."""

    __slots__ = {
        "first": "What comes first.",
        "rinsed": "Whether the first must be rinsed; else it must be on.",
        "rule": "Why.",
        "then": "What waits.",
    }
    first: str
    rinsed: bool
    rule: _OrderRule
    then: str


@dataclass(frozen=True)
class SectionWork(Record):
    """A section as work on the clock."""

    __slots__ = {
        "apply_min": "How long one pair of hands puts it on, without mixing.",
        "bowls": "Fresh bowls that it takes; the first is mixed before it begins, the others on the way.",
        "develop_min": "How long its last strand develops at least.",
        "foils": "How many foils it has, where it is worked in foils.",
        "longest_min": "The longest that its first strand may carry the mix.",
        "name": "Your name for it.",
        "same_foil": (
            "Sections with the same number share their foils: they are painted one after the other and rinsed together."
        ),
    }
    apply_min: float
    bowls: int
    develop_min: float
    foils: int | None
    longest_min: float
    name: str
    same_foil: int | None


@dataclass(frozen=True)
class FoilGroup(Record):
    """Foils that are closed in one go, numbered within their section."""

    __slots__ = {
        "first": "The first of them, from 1.",
        "last": "The last.",
    }
    first: int
    last: int


@dataclass(frozen=True)
class Piece(Record):
    """A piece of work of one person, without a break."""

    __slots__ = {
        "foils": "The foils that are closed in it.",
        "from_min": "When it begins, from the first work on the guest.",
        "kind": "What is done.",
        "person": "Who does it, from 0.",
        "section": "The place of the section, from 0; none for a look, which is at all that is on, and for a walk.",
        "to_min": "When it ends.",
    }
    foils: FoilGroup | None
    from_min: float
    kind: _PieceKind
    person: int
    section: int | None
    to_min: float


@dataclass(frozen=True)
class SectionTimes(Record):
    """The times of one section."""

    __slots__ = {
        "applied_min": "Its last strand is on, its last foil closed.",
        "look_at_min": "When it is looked at: from the first look on that is due for its own first strand.",
        "mix_at_min": "When each of its bowls is begun.",
        "name": "Its name.",
        "on_hair_min": "How long its first strand carries the mix.",
        "person": "Who puts it on, from 0.",
        "rinse_min": "When it is rinsed.",
        "rinsed_min": "When it is rinsed out.",
        "section": "Its place in the list of the work, from 0.",
        "spare_min": "How much longer it might.",
        "start_min": "Its first strand.",
        "visit": "At which visit to the basin it is rinsed, from 1.",
    }
    applied_min: float
    look_at_min: tuple[float, ...]
    mix_at_min: tuple[float, ...]
    name: str
    on_hair_min: float
    person: int
    rinse_min: float
    rinsed_min: float
    section: int
    spare_min: float
    start_min: float
    visit: int


@dataclass(frozen=True)
class Timeline(Record):
    """When everything is done, in minutes from the first work on the guest: mixing the first bowl."""

    __slots__ = {
        "bound_min": "A finish that no order of these people can beat.",
        "finish_min": "When the last section is rinsed.",
        "hands_min": "How long each person works on the guest.",
        "idle_min": "How long nobody works on the guest: only the mix does.",
        "pieces": "Every piece of work, in the order of its begin.",
        "proven": "Whether this finish is proven to be the earliest.",
        "sections": "The sections in the order in which they are put on.",
        "visits": "How often the guest goes to the basin.",
    }
    bound_min: float
    finish_min: float
    hands_min: tuple[float, ...]
    idle_min: float
    pieces: tuple[Piece, ...]
    proven: bool
    sections: tuple[SectionTimes, ...]
    visits: int


@dataclass(frozen=True)
class DayPlan(Record):
    """The service on the clock of hands and basin. Minutes count from the first work on the guest, those after the
    rinse from its end.
    """

    __slots__ = {
        "after_rinse": "Toners and root shadow after the rinse; absent where there are none.",
        "after_rinse_why_not": "Why those that there are cannot be laid out.",
        "as_planned": (
            "The sections in the order of this sheet, by what the service says and without the rules of the house, as "
            "hands, looks and basin allow; absent where that cannot be."
        ),
        "as_planned_why_not": "Why the order of this sheet cannot be kept.",
        "finish_min": "From the first work to the last rinse, toners included, in the proposed order.",
        "floor": "Hands, basins and the small work.",
        "helper_saves_min": "How much earlier it would be with one more pair of hands.",
        "house_rules_cost_min": (
            "How much later instead, where the best order keeps rules of the house that the order of this sheet breaks."
        ),
        "left_out": "Rules of the house that were left out, for they clash with what the service says.",
        "order_saves_min": "How much earlier than in the order of this sheet everything is rinsed in the best one.",
        "proposed": "The sections in the best order.",
        "proposed_why_not": "Why there is no best order.",
        "rules": "What the order keeps to.",
        "work": "The sections as work on the clock, in the order of this sheet.",
    }
    after_rinse: Timeline | None
    after_rinse_why_not: str | None
    as_planned: Timeline | None
    as_planned_why_not: str | None
    finish_min: float | None
    floor: Floor
    helper_saves_min: float | None
    house_rules_cost_min: float | None
    left_out: tuple[str, ...]
    order_saves_min: float | None
    proposed: Timeline | None
    proposed_why_not: str | None
    rules: tuple[OrderedBy, ...]
    work: tuple[SectionWork, ...]
