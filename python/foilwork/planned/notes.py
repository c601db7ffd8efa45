"""What a plan says beside its numbers, written from the JSON Schema of a plan by ``make stubs``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from foilwork._native.finding import Reason
from foilwork._record import Record

if TYPE_CHECKING:
    from foilwork._words import _Basis, _Unknown

__all__ = ["Caution", "DefaultUsed", "NotComputed", "StatedNotUsed"]


@dataclass(frozen=True)
class Caution(Record):
    """A caution and where it comes from."""

    __slots__ = {
        "reminder": "The same in a few words, for what has to be in mind while working.",
        "sources": "What it rests on.",
        "text": "What to do or not to do.",
    }
    reminder: str | None
    sources: tuple[Reason, ...]
    text: str


@dataclass(frozen=True)
class DefaultUsed(Record):
    """A default that was used because the file did not say."""

    __slots__ = {
        "basis": "What kind of basis it has.",
        "field": "The field that would replace it.",
        "sources": "Why it was chosen, and where it comes from.",
        "value": "The value, and its bounds if it is an estimate.",
    }
    basis: _Basis
    field: str
    sources: tuple[Reason, ...]
    value: dict[str, object]


@dataclass(frozen=True)
class NotComputed(Record):
    """Something that is not computed, and why not."""

    __slots__ = {
        "what": "What.",
        "why": "Why not, and what to do instead.",
    }
    what: _Unknown
    why: str


@dataclass(frozen=True)
class StatedNotUsed(Record):
    """A stated fact that is not used."""

    __slots__ = {
        "field": "Its field in the file.",
        "why": "What it would be for.",
    }
    field: str
    why: str
