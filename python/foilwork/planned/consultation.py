"""A consultation, come to its decision, written from the JSON Schema of a plan by ``make stubs``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from foilwork._native import Bounds
from foilwork._native.finding import Finding
from foilwork._native.money import Money
from foilwork._record import Record
from foilwork.planned.hair import Habits
from foilwork.planned.lift import TimeTo
from foilwork.planned.money import LeftOut

if TYPE_CHECKING:
    from foilwork._words import _AlternativeKind, _Basis, _Go, _Party, _PastPlace, _PastWork, _Rule, _TestKind, _Zone

__all__ = [
    "Agreed",
    "AgreedPrice",
    "Agreement",
    "Alternative",
    "Consent",
    "ConsultationPlan",
    "DatedVisit",
    "Decision",
    "HistoryGap",
    "Lapsed",
    "LapsedAgreement",
    "PastService",
    "SaidBefore",
    "TestEffect",
    "WishHeld",
    "WishSection",
]


@dataclass(frozen=True)
class Lapsed(Record):
    """A rule whose findings an agreement no longer settles."""

    __slots__ = {
        "rule": "The rule.",
        "why": "Why: what came after it, or how old it is.",
    }
    rule: _Rule
    why: str


@dataclass(frozen=True)
class Agreed(Record):
    """Somebody's agreement."""

    __slots__ = {
        "lapsed": "Of these rules, those that it no longer settles.",
        "on": "The day.",
        "rules": "To the findings of which rules; where none is named it settles nothing.",
        "to": "To what, in words.",
        "who": "Who.",
    }
    lapsed: tuple[Lapsed, ...]
    on: str
    rules: tuple[_Rule, ...]
    to: str | None
    who: _Party


@dataclass(frozen=True)
class AgreedPrice(Record):
    """What the guest is told to pay: by the price list where it has the service, else from-to by the costs."""

    __slots__ = {
        "all_visits_high": (
            "So many visits, if each is like this one and costs the most; later ones are not priced, and more may be "
            "needed."
        ),
        "high": "For this visit, where the hair takes as much as it may.",
        "left_out": "What the cost behind it leaves out; while there is any, the price is not whole.",
        "low": "For this visit, where the hair takes as little as it may; a bowl that is begun is paid for.",
        "planned": "For this visit as planned.",
        "tax_included": "Whether tax is in it.",
        "visits": "How many visits that counts.",
    }
    all_visits_high: Money
    high: Money
    left_out: tuple[LeftOut, ...]
    low: Money
    planned: Money
    tax_included: bool
    visits: int


@dataclass(frozen=True)
class LapsedAgreement(Record):
    """An agreement that no longer counts."""

    __slots__ = {
        "on": "When it was given.",
        "rule": "To the findings of which rule.",
        "why": "Why it no longer counts.",
    }
    on: str
    rule: _Rule
    why: str


@dataclass(frozen=True)
class Consent(Record):
    """An agreement that is needed, of one party: what one agreement covers, or what nobody has agreed to yet."""

    __slots__ = {
        "agreed_on": "When it was given to these rules by name; absent where it is still to be asked for.",
        "lapsed": (
            "Agreements of the same party to these rules that no longer count, with the reason: they are asked for "
            "anew."
        ),
        "noted": (
            "Agreements of the same party that name no rule asked of it: somebody has to look whether they cover this."
        ),
        "stop_stands": "Whether one of them says stop, which no agreement lifts: what it rests on has to change.",
        "to": "To what findings of which rules.",
        "who": "Who.",
        "words": "In which words it was given.",
    }
    agreed_on: str | None
    lapsed: tuple[LapsedAgreement, ...]
    noted: tuple[Agreed, ...]
    stop_stands: bool
    to: tuple[_Rule, ...]
    who: _Party
    words: str | None


@dataclass(frozen=True)
class Agreement(Record):
    """What is agreed with the guest, in words that need no trade: sentences to read, and who signs."""

    __slots__ = {
        "before": (
            "What has to be settled first; while there is any, nothing is signed. The guest's own agreement is the "
            "page."
        ),
        "may_be_signed": "Whether it may be signed: no check says stop, and nothing has to be settled first.",
        "not_promised": "What may not come out as wished.",
        "open": "Rules that nobody can judge yet.",
        "planned": "What is planned, zone by zone or section by section.",
        "price": "What it costs, from-to; absent without prices.",
        "risks": "What may go wrong.",
        "visits": "How many visits, and when at the earliest.",
        "warned": "Rules of which a check says stop or warns: what the guest is told of each stands on the page.",
        "who": "Whose agreement is needed; the guest's always.",
    }
    before: tuple[str, ...]
    may_be_signed: bool
    not_promised: tuple[str, ...]
    open: tuple[_Rule, ...]
    planned: tuple[str, ...]
    price: AgreedPrice | None
    risks: tuple[str, ...]
    visits: tuple[str, ...]
    warned: tuple[_Rule, ...]
    who: tuple[Consent, ...]


@dataclass(frozen=True)
class Alternative(Record):
    """Something else that could be done, and why it is not taken, or is."""

    __slots__ = {
        "about": "What it is about.",
        "basis": "What the reason rests on.",
        "option": "The alternative.",
        "section": "The section; absent where it is about the service.",
        "taken": "Whether the plan takes it.",
        "why": "Why, or why not.",
    }
    about: _AlternativeKind
    basis: _Basis
    option: str
    section: str | None
    taken: bool
    why: str


@dataclass(frozen=True)
class DatedVisit(Record):
    """A visit of a staged series on the calendar."""

    __slots__ = {
        "after_basis": "What those weeks, and so the days, rest on.",
        "after_weeks": "Weeks to leave since the visit before; absent for the first.",
        "earliest": "The first day on which it may be, each gap before it as short as it may be.",
        "latest": "The day with the longest of the usual gaps.",
        "number": "Which visit, from one.",
        "reached": "Those of them that reach their target with it in 80 of 100 cases.",
        "sections": "The sections that are still to be lightened on it.",
        "usual": "The day with the usual gaps.",
    }
    after_basis: _Basis | None
    after_weeks: Bounds[float] | None
    earliest: str
    latest: str
    number: int
    reached: tuple[str, ...]
    sections: tuple[str, ...]
    usual: str


@dataclass(frozen=True)
class Decision(Record):
    """Whether to go on, with the reasons: a fold over what the checks of the plan found, and no rule of its own."""

    __slots__ = {
        "consents": "Who has to agree.",
        "for_the_bench": "How many warnings concern the work at the bench alone; they stand on its sheet.",
        "go": "Whether to go on.",
        "open": "What nobody knows yet; it never counts as fine.",
        "restrictions": "What restricts the service.",
        "stops": "What says stop.",
        "text": "In a sentence.",
    }
    consents: tuple[Consent, ...]
    for_the_bench: int
    go: _Go
    open: tuple[Finding, ...]
    restrictions: tuple[Finding, ...]
    stops: tuple[Finding, ...]
    text: str


@dataclass(frozen=True)
class HistoryGap(Record):
    """A stretch of time of which nobody knows what was done to the hair."""

    __slots__ = {
        "since": "From when; absent where that is not known either.",
        "text": "What is not known, and what to ask.",
        "until": "Until when; absent where that is not known.",
    }
    since: str | None
    text: str
    until: str | None


@dataclass(frozen=True)
class PastService(Record):
    """An earlier service."""

    __slots__ = {
        "ago_weeks": "Weeks from that day to the start of this service.",
        "formula": "The formula in words; absent where nobody knows it.",
        "grown_out_cm": "What has grown in since: what was put on at the root then begins here now.",
        "on": "The day; absent where nobody knows it.",
        "place": "Where it was done.",
        "what": "What was done.",
        "zone": "Where along the strand.",
    }
    ago_weeks: float | None
    formula: str | None
    grown_out_cm: Bounds[float] | None
    on: str | None
    place: _PastPlace | None
    what: _PastWork
    zone: _Zone | None


@dataclass(frozen=True)
class WishSection(Record):
    """A section that works in the zone of a wish."""

    __slots__ = {
        "forecast_level": (
            "The level of its last strand by the forecast, where it is lightened: it is on the hair for the shortest "
            "time."
        ),
        "section": "Its name.",
        "target_level": "The level that it aims at.",
    }
    forecast_level: Bounds[float] | None
    section: str
    target_level: float


@dataclass(frozen=True)
class WishHeld(Record):
    """A wish of the guest, and how the plan holds to it."""

    __slots__ = {
        "dislikes": "What the guest dislikes there now.",
        "is_sure": (
            "Whether the low end of every forecast holds to it, too; where nobody works, both bounds of what is there."
        ),
        "level": "The level wanted.",
        "now_level": "What is there now: the darkest of it, with its bounds.",
        "sections": "The sections that work there.",
        "tolerance_levels": "How far from it the guest is still content, either way.",
        "tone": "The tone wanted, in words.",
        "why_not": "Why the plan does not hold to it; absent where it does.",
        "zone": "The zone.",
    }
    dislikes: str | None
    is_sure: bool
    level: float
    now_level: Bounds[float]
    sections: tuple[WishSection, ...]
    tolerance_levels: float
    tone: str | None
    why_not: str | None
    zone: _Zone


@dataclass(frozen=True)
class SaidBefore(Record):
    """What was said before the service, and how the plan holds to it."""

    __slots__ = {
        "agreed": "Who has agreed, and when.",
        "gaps": "Stretches of that time of which nobody knows what was done.",
        "oldest_weeks": (
            "How old the ends of the hair are: all of it has grown since; absent where its length is not stated."
        ),
        "past": "Earlier services, the latest first; those without a day last.",
        "wishes": "What the guest wants, zone by zone.",
    }
    agreed: tuple[Agreed, ...]
    gaps: tuple[HistoryGap, ...]
    oldest_weeks: Bounds[float] | None
    past: tuple[PastService, ...]
    wishes: tuple[WishHeld, ...]


@dataclass(frozen=True)
class TestEffect(Record):
    """What one result of a test changes: the service planned anew with it, held against the plan as it stands."""

    __slots__ = {
        "adds": "What says stop, warns or is open then, and not now.",
        "go": "Whether to go on then.",
        "lifts": "What says stop, warns or is open now, and not then.",
        "result": "The result; absent where the test is not done or not stated.",
        "slowest": (
            "When the slowest section, by the median, reaches its target then, counted from its own first strand; "
            "absent where nothing is lightened or a target is not reached at all."
        ),
        "stated": "Whether this is what the file states.",
        "test": "The test.",
        "time_factor": "Its median over what it is as stated: the factor of this result.",
    }
    adds: tuple[Finding, ...]
    go: _Go
    lifts: tuple[Finding, ...]
    result: str | None
    slowest: TimeTo | None
    stated: bool
    test: _TestKind
    time_factor: float | None


@dataclass(frozen=True)
class ConsultationPlan(Record):
    """A consultation come to its decision: what was said, whether to go on, what each test changes, what else there
    was.
    """

    __slots__ = {
        "agreement": "What is agreed with the guest.",
        "alternatives": "What was considered, taken or not, each with its reason.",
        "colourist": "Who works.",
        "decision": "Whether to go on, and who has to agree.",
        "format": "Version of the form of this data.",
        "guest": "A code for the guest.",
        "habits": "How the shop writes; it changes sheets, no number.",
        "not_tried": "Developers that were not tried, because the plans for them would be too many.",
        "said": "What was said; absent where the file has no consultation.",
        "start": "When the service starts.",
        "tests": "What every result of every test changes.",
        "title": "What the service is called.",
        "visits": "The visits on the calendar; empty where nothing is lightened.",
    }
    agreement: Agreement
    alternatives: tuple[Alternative, ...]
    colourist: str | None
    decision: Decision
    format: int
    guest: str | None
    habits: Habits
    not_tried: int
    said: SaidBefore | None
    start: str
    tests: tuple[TestEffect, ...]
    title: str
    visits: tuple[DatedVisit, ...]
