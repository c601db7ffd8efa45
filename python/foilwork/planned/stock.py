"""What a plan takes from the shelf, written from the JSON Schema of a plan by ``make stubs``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from foilwork._native import Bounds
from foilwork._native.money import Money
from foilwork._record import Record

if TYPE_CHECKING:
    from foilwork._words import _PartKind, _StockCover

__all__ = ["ConsumableLine", "StockLine", "StockPlan", "Substitute"]


@dataclass(frozen=True)
class ConsumableLine(Record):
    """Something that is counted."""

    __slots__ = {
        "cost": "What they cost by the estimate.",
        "cost_high": "What they cost at most.",
        "cost_low": (
            "What they cost at least, rounded as the table of costs is; absent where nobody knows how many there are."
        ),
        "cover": "How far they go.",
        "in_hand_pieces": "How many are in hand, where the shop says so.",
        "name": "Its name in the shop.",
        "wanted_pieces": "How many are used up; absent where a section in foil does not say how many foils it has.",
    }
    cost: Money | None
    cost_high: Money | None
    cost_low: Money | None
    cover: _StockCover
    in_hand_pieces: int | None
    name: str
    wanted_pieces: Bounds[int] | None


@dataclass(frozen=True)
class Substitute(Record):
    """What could be taken instead, and what changes with it."""

    __slots__ = {
        "apart_ciede2000": (
            "How far its colour is from the one that is missing, on white hair by the model; absent for what is no "
            "shade."
        ),
        "product": "Its name in the shop; of a blend all names.",
        "why": "What it is, and what to mind.",
    }
    apart_ciede2000: Bounds[float] | None
    product: str
    why: str


@dataclass(frozen=True)
class StockLine(Record):
    """A product of the shelf."""

    __slots__ = {
        "cover": "How far it goes.",
        "in_hand_g": "What is in hand, where the shop says so.",
        "instead": "What could be taken from the shelf instead, nearest first; empty where it is covered.",
        "kind": "What it is in the bowls.",
        "missing_g": "What is missing at each bound; absent where nobody counted.",
        "product": "Its name in the shop.",
        "wanted_g": "What all bowls take: the estimate as weighed, the bounds as far as the mixes may be more or less.",
    }
    cover: _StockCover
    in_hand_g: float | None
    instead: tuple[Substitute, ...]
    kind: _PartKind
    missing_g: Bounds[float] | None
    product: str
    wanted_g: Bounds[float]


@dataclass(frozen=True)
class StockPlan(Record):
    """What the plan takes from the shelf: everything that is weighed, and everything that is counted."""

    __slots__ = {
        "consumables": "Foils, gloves, film and the like.",
        "products": "What is weighed, in the order of mixing.",
    }
    consumables: tuple[ConsumableLine, ...]
    products: tuple[StockLine, ...]
