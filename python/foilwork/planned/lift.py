"""Lift and strengths in a plan, written from the JSON Schema of a plan by ``make stubs``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from foilwork._native import Bounds
from foilwork._native.source import Citation
from foilwork._record import Record

if TYPE_CHECKING:
    from foilwork._words import _Basis, _Cover, _Next, _Strain

__all__ = [
    "ChosenStrength",
    "ExpectedLook",
    "Factor",
    "RejectedStrength",
    "SectionLift",
    "SeenNow",
    "TimeTo",
    "TogetherPlan",
    "TogetherSection",
    "Visit",
]


@dataclass(frozen=True)
class RejectedStrength(Record):
    """A strength that was not taken."""

    __slots__ = {
        "developer_ww_percent": "The developer before mixing.",
        "why": "Why not.",
    }
    developer_ww_percent: float
    why: str


@dataclass(frozen=True)
class ChosenStrength(Record):
    """The strength that the plan chose for a section which left it out."""

    __slots__ = {
        "developer_ww_percent": "The developer before mixing.",
        "on_hair_ww_percent": "On the hair after mixing.",
        "rejected": "What else the shelf has, weakest first, and why it was not taken.",
        "section": "The section.",
        "why": "Why this one.",
    }
    developer_ww_percent: Bounds[float]
    on_hair_ww_percent: Bounds[float]
    rejected: tuple[RejectedStrength, ...]
    section: str
    why: str


@dataclass(frozen=True)
class TimeTo(Record):
    """When a level is reached: none where the mixture is spent before."""

    __slots__ = {
        "early_min": "The earliest of the 80 % interval.",
        "late_min": "The latest of the 80 % interval.",
        "median_min": "As likely before as after.",
    }
    early_min: float | None
    late_min: float | None
    median_min: float | None


@dataclass(frozen=True)
class ExpectedLook(Record):
    """What to expect at a look."""

    __slots__ = {
        "at_min": "On the clock of the sheet.",
        "level": "Its level: median and 80 % interval.",
        "on_hair_min": "How long the first strand has carried the mix.",
    }
    at_min: float
    level: Bounds[float]
    on_hair_min: float


@dataclass(frozen=True)
class Factor(Record):
    """One lever: by what it multiplies a rate, and what that rests on."""

    __slots__ = {
        "basis": "What it rests on.",
        "citation": "Where it is printed, when it is.",
        "lever": "The lever, in words.",
        "times": "The multiplier: median and 80 % interval.",
    }
    basis: _Basis
    citation: Citation | None
    lever: str
    times: Bounds[float]


@dataclass(frozen=True)
class SeenNow(Record):
    """A level seen in mid-service and what follows from it."""

    __slots__ = {
        "at_min": "When, on the clock of the sheet.",
        "level": "What was seen.",
        "look_again_min": "When to look again, on the clock of the sheet.",
        "next": "What to do.",
        "why": "Why.",
    }
    at_min: float
    level: float
    look_again_min: float | None
    next: _Next
    why: str


@dataclass(frozen=True)
class Visit(Record):
    """What one of several equal applications brings, one visit after another."""

    __slots__ = {
        "after_basis": "What those weeks rest on: common practice after a usual application, assumed beyond it.",
        "after_weeks": "Weeks since the visit before; absent for the first.",
        "basis": (
            "What level, chance and strain rest on: the levers of the law and the weights of the strain are assumed, "
            "whatever strands were read."
        ),
        "chance_percent": (
            "The chance that the target is reached with it, with what it is from either bound of the start."
        ),
        "level": "Level after it: median and 80 % interval.",
        "regrowth_cm": "What has grown since the first visit, which this one does not lighten.",
        "strain": "What all visits so far do to the fibre, in words.",
        "strain_index": "The same as an index: 1 for 40 min at 4 % on the hair.",
    }
    after_basis: _Basis | None
    after_weeks: Bounds[float] | None
    basis: _Basis
    chance_percent: Bounds[float]
    level: Bounds[float]
    regrowth_cm: Bounds[float] | None
    strain: _Strain
    strain_index: Bounds[float]


@dataclass(frozen=True)
class SectionLift(Record):
    """Lift against time of one lightened section. Times count from its own first strand unless they say otherwise."""

    __slots__ = {
        "chance_percent": (
            "The chance that the first strand reaches the target as planned, with what it is from either bound of the "
            "start."
        ),
        "chance_with_a_fresh_mix_percent": "The same after a second, fresh application of the same time.",
        "cover": "What lies over the mix.",
        "first_strand_level": "Its first strand when it is rinsed as planned: median and 80 % interval.",
        "from_level": "The level it starts from: the darkest stretch, as far as its reading may be off.",
        "known": "What the readings have and have not pinned down.",
        "last_strand_level": "Its last strand then.",
        "levers": "The levers that move the rates off those of the reference mix.",
        "limit_min": "How long its first strand carries the mix when it is rinsed as planned.",
        "looks": "What to expect at each look at the first strand.",
        "mixed_ph": "pH of the mixed bowl, where its maker states it.",
        "next_strand_test_min": "When to read the next test strand to learn most.",
        "on_hair_ww_percent": "Strength on the hair, as weighed.",
        "reached": "When the first strand reaches the target.",
        "reached_on_clock": "The same on the clock of the sheet.",
        "readings": (
            "Readings of this guest, or of this product where none is of this guest, that the forecast rests on. "
            "Without any it spans two levels either way."
        ),
        "rule_level": "What the trade's rule for the developer gives, two levels either way.",
        "section": "The section.",
        "seen": "What was seen in mid-service, and what follows.",
        "strain": "What it does to the fibre, in words: a comparison with a usual application.",
        "strain_index": "The same as an index: 1 for 40 min at 4 % on the hair.",
        "strain_sources": "What the strain rests on.",
        "target_level": "The level wanted.",
        "temperature_c": "Temperature of the mix: the room's, or what is assumed at the scalp.",
        "visits": "Such visits one after another, up to the first that reaches it in 80 of 100 cases or the fourth.",
    }
    chance_percent: Bounds[float]
    chance_with_a_fresh_mix_percent: Bounds[float]
    cover: _Cover
    first_strand_level: Bounds[float]
    from_level: Bounds[float]
    known: str
    last_strand_level: Bounds[float]
    levers: tuple[Factor, ...]
    limit_min: float
    looks: tuple[ExpectedLook, ...]
    mixed_ph: float | None
    next_strand_test_min: float
    on_hair_ww_percent: Bounds[float]
    reached: TimeTo
    reached_on_clock: TimeTo
    readings: int
    rule_level: Bounds[float]
    section: str
    seen: tuple[SeenNow, ...]
    strain: _Strain
    strain_index: Bounds[float]
    strain_sources: tuple[Citation, ...]
    target_level: float
    temperature_c: float
    visits: tuple[Visit, ...]


@dataclass(frozen=True)
class TogetherSection(Record):
    """One of them."""

    __slots__ = {
        "at_rinse_level": "Level of the middle strand at the common rinse: median and 80 % interval.",
        "begin_min": "When its application begins.",
        "reaches_min": (
            "When its middle strand is expected at the target (median); absent where the sections fall short."
        ),
        "section": "Its name.",
    }
    at_rinse_level: Bounds[float]
    begin_min: float
    reaches_min: float | None
    section: str


@dataclass(frozen=True)
class TogetherPlan(Record):
    """Sections that are to be rinsed together. Times count from the first brush on the first of them."""

    __slots__ = {
        "rinse_min": "When all are rinsed.",
        "sections": "In the order of the work; empty where no order of starts was found.",
        "short_levels": "By how much the section furthest behind falls short.",
        "why_not": "Why they do not finish together as asked, and what to do; absent where they do.",
        "window_asked_min": "How far apart they may reach their targets.",
        "window_needed_min": "How far apart they do; absent where a target is not reached at all.",
    }
    rinse_min: float | None
    sections: tuple[TogetherSection, ...]
    short_levels: float
    why_not: str | None
    window_asked_min: float
    window_needed_min: float | None
