"""Bowls, their cards, and their order in a plan, written from the JSON Schema of a plan by ``make stubs``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from foilwork._native import Bounds
from foilwork._native.finding import Finding
from foilwork._record import Record

if TYPE_CHECKING:
    from foilwork._words import _Basis, _ChairClock, _ExtraStep, _PartKind, _StepEnd, _WorkStage

__all__ = [
    "Bowl",
    "BowlCard",
    "CardClock",
    "CardMinutes",
    "ChairTime",
    "FirstPart",
    "FirstStep",
    "Mix",
    "Step",
    "WeighedPart",
]


@dataclass(frozen=True)
class WeighedPart(Record):
    """One thing to weigh."""

    __slots__ = {
        "exact_g": "The exact mass.",
        "kind": "What it is in the bowl.",
        "peroxide_ww_percent": "The peroxide it brings; zero for everything but developers.",
        "product": "Product by its name on the shelf.",
        "scale_shows_g": "What the scale shows once it is in, the bowl tared.",
        "weigh_g": "The mass to the scale's division.",
    }
    exact_g: float
    kind: _PartKind
    peroxide_ww_percent: Bounds[float]
    product: str
    scale_shows_g: float
    weigh_g: float


@dataclass(frozen=True)
class Bowl(Record):
    """One fresh bowl, or several alike."""

    __slots__ = {
        "count": "How many of these.",
        "mixed_after_min": "When each is mixed, counted from the beginning of this application.",
        "on_hair_ww_percent": "Strength on the hair of this bowl, as weighed.",
        "parts": "What goes in, in the order of weighing.",
        "total_g": "What the scale shows in the end.",
        "use_within_min": "How long each is used after mixing.",
        "worst_ratio_error_percent": "The worst error of a part's share that rounding to the scale causes.",
    }
    count: int
    mixed_after_min: tuple[float, ...]
    on_hair_ww_percent: Bounds[float]
    parts: tuple[WeighedPart, ...]
    total_g: float
    use_within_min: float
    worst_ratio_error_percent: float


@dataclass(frozen=True)
class CardClock(Record):
    """The times of a card on the salon clock."""

    __slots__ = {
        "ends_earliest": (
            "The earliest that a step before the colour ends by the estimate; absent for a bowl of the colour."
        ),
        "ends_latest": "The latest.",
        "look_at": "When to look at the hair.",
        "look_at_last": "From when on the last strand is looked at too.",
        "mixed_at": "When it is mixed.",
        "rinse_by": "When it is planned to be rinsed, never beyond a product's own limit.",
        "use_by": "When it must no longer be used.",
    }
    ends_earliest: str | None
    ends_latest: str | None
    look_at: tuple[str, ...]
    look_at_last: str | None
    mixed_at: str
    rinse_by: str
    use_by: str


@dataclass(frozen=True)
class CardMinutes(Record):
    """The times of a card, counted from the first brush."""

    __slots__ = {
        "ends_min": "Within what a step before the colour ends, by the hair; absent for a bowl of the colour.",
        "look_at_last_min": "From when on the last strand is looked at too.",
        "look_at_min": "When to look at the hair.",
        "mixed_at_min": "When it is mixed.",
        "rinse_by_min": (
            "When it is planned to be rinsed, never beyond a product's own limit; a step before the colour ends about "
            "then by `then`."
        ),
        "use_by_min": "When it must no longer be used.",
    }
    ends_min: Bounds[float] | None
    look_at_last_min: float | None
    look_at_min: tuple[float, ...]
    mixed_at_min: float
    rinse_by_min: float
    use_by_min: float


@dataclass(frozen=True)
class BowlCard(Record):
    """What lies beside one fresh bowl: whether to begin at all, what to weigh, strength on the hair, times, what to
    mind.
    """

    __slots__ = {
        "blocked": "Whether the plan says stop: then do not mix this bowl.",
        "bowl": "Which of the bowls of this mix, from one.",
        "bowls": "How many there are.",
        "clock": "The same on the salon clock, where the time of day of the start is stated.",
        "findings": "The findings about this mix that ask for thought, worst first.",
        "guest": "A code for the guest.",
        "mind": "What to mind in such a step; empty for every other bowl.",
        "minutes": (
            "Times in minutes from the first brush; for toners and root shadows the earliest, as if rinsing took no "
            "time."
        ),
        "name": "What the bowl is for.",
        "on_hair_ww_percent": (
            "Strength on the hair; absent for a remover that may hold peroxide, of which only its maker knows how much."
        ),
        "parts": "What goes in, in the order of weighing.",
        "stage": "Section, toner or root shadow.",
        "stops": "Every finding of the plan that says stop.",
        "strength_basis": "What that strength rests on.",
        "then": "How it ends, where it is a step before the colour; absent for every other bowl, which is rinsed.",
        "total_g": "What the scale shows in the end.",
        "worst_ratio_error_percent": "The worst error of a part's share that rounding to the scale causes.",
    }
    blocked: bool
    bowl: int
    bowls: int
    clock: CardClock | None
    findings: tuple[Finding, ...]
    guest: str | None
    mind: tuple[str, ...]
    minutes: CardMinutes
    name: str
    on_hair_ww_percent: Bounds[float] | None
    parts: tuple[WeighedPart, ...]
    stage: _WorkStage
    stops: tuple[Finding, ...]
    strength_basis: _Basis
    then: _StepEnd | None
    total_g: float
    worst_ratio_error_percent: float


@dataclass(frozen=True)
class ChairTime(Record):
    """How long the chair is taken: to the last rinse, then the toners, then the other work. Cost, price and booking all
    rest on it.
    """

    __slots__ = {
        "after_rinse_min": "Toners and root shadow, from the end of that rinse.",
        "basis": (
            "What both rest on: assumed where bowls, looks, walks or rinses are counted at minutes that the file does "
            "not state, with a step before the colour, and where the minutes of applying follow from assumed ones for "
            "a foil."
        ),
        "clock": "By which clock all of this is told.",
        "first_steps_min": "Of that, steps before the colour, by the day with the bowl of the first; 0 without any.",
        "hands_on_min": (
            "How long hands are at work on the guest, those of everybody together: what is paid as labour. While the "
            "mix alone works, the chair is taken and no hand is."
        ),
        "other_work_min": "Consultation, drying, where that is stated.",
        "sections_min": "From the first work on the guest to the last rinse of a section.",
        "total_min": "All of it.",
    }
    after_rinse_min: float
    basis: _Basis
    clock: _ChairClock
    first_steps_min: float
    hands_on_min: float
    other_work_min: float | None
    sections_min: float
    total_min: float


@dataclass(frozen=True)
class FirstPart(Record):
    """What is weighed for a step."""

    __slots__ = {
        "kind": "What it is.",
        "mass_g": "How much of it the step takes.",
        "product": "The product.",
        "weigh_g": "What to weigh, on the scale stated.",
    }
    kind: _PartKind
    mass_g: Bounds[float]
    product: str
    weigh_g: float


@dataclass(frozen=True)
class FirstStep(Record):
    """A step before the colour of a section."""

    __slots__ = {
        "applied_min": "When it is all on.",
        "apply_min": "How long it takes to put on.",
        "asked_for": "Whether what is there and what is wanted ask for it.",
        "basis": "What the amount rests on.",
        "begin_min": "When it begins, from the first brush; absent where it is not planned.",
        "develop_min": "How long it stays on.",
        "due_min": "When its end is due, by the estimate: what comes after is its rinse, where it is rinsed.",
        "hands_min": (
            "How long hands are at work on it: its bowl, its brush, a look every few minutes and one at its end, and "
            "its rinse."
        ),
        "mind": "What to mind.",
        "mix_g": "How much of it.",
        "on_hair_ww_percent": "Strength on the hair; absent where no developer is in it.",
        "over_min": "When it is over, rinse and all.",
        "parts": "What of the shop it is weighed of; empty where the shop has nothing for it.",
        "planned": (
            "Whether the file plans it in `first`: then it is in the running order, on the shelf and in the cost."
        ),
        "section": "The section.",
        "step": "Which step.",
        "then": "How it ends.",
        "what": "What goes on.",
        "why_not": "Why the shop has nothing for it.",
    }
    applied_min: Bounds[float] | None
    apply_min: Bounds[float]
    asked_for: bool
    basis: _Basis
    begin_min: Bounds[float] | None
    develop_min: Bounds[float]
    due_min: Bounds[float] | None
    hands_min: Bounds[float]
    mind: tuple[str, ...]
    mix_g: Bounds[float]
    on_hair_ww_percent: Bounds[float] | None
    over_min: Bounds[float] | None
    parts: tuple[FirstPart, ...]
    planned: bool
    section: str
    step: _ExtraStep
    then: _StepEnd
    what: str
    why_not: str | None


@dataclass(frozen=True)
class Mix(Record):
    """What to mix for one section, toner or root shadow."""

    __slots__ = {
        "bowls": "The bowls, in the order in which they are mixed.",
        "developer_ww_percent": "Strength of the developer before mixing.",
        "findings": "Places in the plan's list of findings, of those that concern this mix.",
        "leftover_g": "Mixed but not expected to be used.",
        "name": "What it is for.",
        "needed_basis": "What that amount rests on.",
        "needed_g": "How much is needed.",
        "on_hair_as_labelled_ww_percent": (
            "The same as far as a bottle that nobody measured may be off its label; what is held against the law."
        ),
        "on_hair_ww_percent": "Strength on the hair after mixing, as weighed.",
        "ratio": "Parts product to parts developer, additives apart; absent where no developer is used.",
        "stage": "Section, toner or root shadow.",
        "strength_basis": "What both strengths rest on.",
        "undeclared": (
            "Products in it whose contents nobody declares in full: what they may hold or release is unknown."
        ),
    }
    bowls: tuple[Bowl, ...]
    developer_ww_percent: Bounds[float]
    findings: tuple[int, ...]
    leftover_g: float
    name: str
    needed_basis: _Basis
    needed_g: Bounds[float]
    on_hair_as_labelled_ww_percent: Bounds[float]
    on_hair_ww_percent: Bounds[float]
    ratio: str | None
    stage: _WorkStage
    strength_basis: _Basis
    undeclared: tuple[str, ...]


@dataclass(frozen=True)
class Step(Record):
    """One line of the running order. Times count from the first brush; those of toners and root shadows from the end of
    the last rinse before them.
    """

    __slots__ = {
        "applied_min": "When its application ends.",
        "begin_min": "When its application begins.",
        "look_at_last_min": (
            "The look from which on the last strand is looked at too; none where it is looked at only when it is "
            "rinsed."
        ),
        "look_at_min": "When to look at it: its first strands, and from `look_at_last` on its last ones too.",
        "mix_at_min": "When its bowls are mixed.",
        "name": "The section, toner or root shadow.",
        "number": "Place in the order, from one.",
        "off_by_min": (
            "When it comes off at the latest: by the longest of its products where all of them state theirs, else as "
            "planned."
        ),
        "rinse_by_min": "When it is planned to be rinsed, never beyond a product's own limit.",
        "stage": "Which of these it is.",
    }
    applied_min: float
    begin_min: float
    look_at_last_min: float | None
    look_at_min: tuple[float, ...]
    mix_at_min: tuple[float, ...]
    name: str
    number: int
    off_by_min: float
    rinse_by_min: float
    stage: _WorkStage
