"""What is kept of services, and what it teaches, written from the JSON Schema of a plan by ``make stubs``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from foilwork._native import Bounds
from foilwork._native.money import Money
from foilwork._record import Record

if TYPE_CHECKING:
    from foilwork._words import (
        _Basis,
        _Booster,
        _Cover,
        _Elasticity,
        _ServiceClass,
        _Strain,
        _Technique,
        _Texture,
        _Uptake,
    )

__all__ = [
    "CareAdvice",
    "DemandLesson",
    "FoilLesson",
    "HomeCare",
    "KeptMixture",
    "KeptPart",
    "KeptRecord",
    "KeptSection",
    "Learned",
    "Lessons",
    "Rebooking",
    "Summary",
    "Takings",
    "WasteTrend",
]


@dataclass(frozen=True)
class CareAdvice(Record):
    """A piece of advice."""

    __slots__ = {
        "basis": "What it rests on.",
        "text": "What to do.",
        "why": "Why.",
    }
    basis: _Basis
    text: str
    why: str


@dataclass(frozen=True)
class Learned(Record):
    """What figures of many services say, each with its 80 % interval."""

    __slots__ = {
        "count": "How many figures there are.",
        "mean": "Their mean: the geometric one of factors and rates, the arithmetic one of differences.",
        "mean_high": "The same, at most.",
        "mean_low": (
            "Where the true mean lies in 80 of 100 cases, at least; absent for a single figure, which says nothing of "
            "the spread."
        ),
        "next_high": "The same, at most.",
        "next_low": "Where the next figure will lie in 80 of 100 cases, at least.",
    }
    count: int
    mean: float
    mean_high: float | None
    mean_low: float | None
    next_high: float | None
    next_low: float | None


@dataclass(frozen=True)
class DemandLesson(Record):
    """Grams used against grams expected."""

    __slots__ = {
        "factor": "Used over expected: 1.2 says that the hair took a fifth more than the plan thought.",
        "technique": "The technique; absent for all together.",
    }
    factor: Learned
    technique: _Technique | None


@dataclass(frozen=True)
class FoilLesson(Record):
    """Minutes for a foil."""

    __slots__ = {
        "colourist": "Who worked; absent where nobody is named.",
        "min_per_foil": "Minutes for a foil, by the sections whose foils and minutes are noted.",
    }
    colourist: str | None
    min_per_foil: Learned


@dataclass(frozen=True)
class HomeCare(Record):
    """What to mind at home, by what the hair went through."""

    __slots__ = {
        "advice": "What to do, the most urgent first.",
        "condition": "The condition in words: what was tested after the service, and how the strain compares.",
        "elasticity": "The worst that a strand showed; absent where none was tested.",
        "strain": (
            "The strain by the model of what was noted, all applications together, of the section that had most; as "
            "planned where its times are not noted, and absent where nothing was lightened. Sections that were not "
            "begun have none."
        ),
    }
    advice: tuple[CareAdvice, ...]
    condition: str
    elasticity: _Elasticity | None
    strain: _Strain | None


@dataclass(frozen=True)
class KeptMixture(Record):
    """A mixture that lightened, and the hair under it."""

    __slots__ = {
        "booster": "What oxidises beside the peroxide.",
        "cover": "What lay over it.",
        "on_hair_high_ww_percent": "Strength on the hair, at most.",
        "on_hair_low_ww_percent": "Strength on the hair, at least.",
        "on_hair_ww_percent": "Strength on the hair, at best.",
        "ph": "pH of the mixed bowl, where its maker states it.",
        "temperature_c": "Its temperature.",
        "texture": "How thick the fibre is.",
        "uptake": "How readily the hair takes up liquid.",
    }
    booster: _Booster
    cover: _Cover
    on_hair_high_ww_percent: float
    on_hair_low_ww_percent: float
    on_hair_ww_percent: float
    ph: float | None
    temperature_c: float
    texture: _Texture
    uptake: _Uptake


@dataclass(frozen=True)
class KeptPart(Record):
    """A product and its grams."""

    __slots__ = {
        "mass_g": "How much of it.",
        "product": "The product, by its name in the shop.",
    }
    mass_g: float
    product: str


@dataclass(frozen=True)
class KeptSection(Record):
    """What is kept of a section, toner or root shadow."""

    __slots__ = {
        "applications": (
            "How often it was put on, begun again without a noted rinse counted too; absent where nobody noted it."
        ),
        "apply_min": "How long it took.",
        "elasticity": "Stretch and return of a damp strand afterwards.",
        "expected_g": "What the plan expected its hair to take.",
        "foils": "How many foils.",
        "from_level": "The level it started from.",
        "left_over_g": "What of it was left over.",
        "mixture": "The mix on the hair, where it lightened: what a strand book needs.",
        "name": "Its name.",
        "on_hair_min": "How long its first strand carried the mix, all applications together.",
        "part": "Products in it, as weighed; as planned where nobody noted what was weighed.",
        "planned_apply_min": "How long putting it on was planned to take.",
        "planned_g": "What the plan made of it.",
        "result_level": "The level it came to, before any toner.",
        "target_level": "The level wanted.",
        "technique": "How its hair was taken; absent for what follows the rinse.",
        "tone": "The tone it came to, in words.",
        "toned_level": (
            "The level it was read at with a toner on it, or after the rinse while nobody noted since when one is on: "
            "toner darkens, so nothing of lifting is learned from it."
        ),
        "weighed_g": "What was really weighed.",
    }
    applications: int | None
    apply_min: float | None
    elasticity: _Elasticity | None
    expected_g: float | None
    foils: int | None
    from_level: float | None
    left_over_g: float | None
    mixture: KeptMixture | None
    name: str
    on_hair_min: float | None
    part: tuple[KeptPart, ...]
    planned_apply_min: float | None
    planned_g: float | None
    result_level: float | None
    target_level: float | None
    technique: _Technique | None
    tone: str | None
    toned_level: float | None
    weighed_g: float | None


@dataclass(frozen=True)
class KeptRecord(Record):
    """What is kept of a service: no name, a code for the guest; planned and actual; all that repeats the result."""

    __slots__ = {
        "chair_min": "How long the chair was planned to be taken.",
        "colourist": "Who worked.",
        "cost": (
            "What the service cost, products as weighed where that was noted, and the card fee of the price with it."
        ),
        "currency": "The currency of the amounts, as ISO 4217 has it.",
        "format": "Version of this form; this release writes and reads 1.",
        "guest": "A code for the guest, not a name.",
        "incident": "Reactions, accidents and all else that the log said stop to, in words.",
        "left_over_cost": "Of that, what the products cost that were left over, where somebody weighed them.",
        "on": "The day of the service.",
        "price": "The net price: that of the price list, or by the costs where the list does not have the class.",
        "section": "What was weighed, section by section.",
        "service_class": "What to call it when booking and pricing it.",
        "title": "What the service is called.",
    }
    chair_min: float | None
    colourist: str | None
    cost: str | None
    currency: str | None
    format: int
    guest: str | None
    incident: tuple[str, ...]
    left_over_cost: str | None
    on: str
    price: str | None
    section: tuple[KeptSection, ...]
    service_class: _ServiceClass | None
    title: str


@dataclass(frozen=True)
class WasteTrend(Record):
    """What is thrown away over time."""

    __slots__ = {
        "change_high_percent_points": "The same, at most.",
        "change_low_percent_points": "The same in 80 of 100 cases, at least.",
        "change_percent_points": (
            "By how much that share changes in thirty days, by the line of least squares; absent for fewer than three "
            "services, or where all are of one day."
        ),
        "services": "How many services say what was weighed and what was left over.",
        "text": "In words.",
        "waste_percent": "What was left over of all that was weighed.",
    }
    change_high_percent_points: float | None
    change_low_percent_points: float | None
    change_percent_points: float | None
    services: int
    text: str
    waste_percent: float


@dataclass(frozen=True)
class Lessons(Record):
    """What the records teach."""

    __slots__ = {
        "demand": "Grams used over grams expected, for each technique and for all.",
        "foils": "Minutes for a foil, for each colourist.",
        "kept_twice": (
            "Lines of services that were kept already: each service counts once, of one guest, day and title the line "
            "that was read last."
        ),
        "level_off": (
            "Levels that came out less levels wanted, over all sections whose result is noted; absent where none is."
        ),
        "put_on_again": (
            "Sections that were put on more than once: left out of grams and levels, for the plan expects one "
            "application."
        ),
        "read_toned": (
            "Lightened sections whose level was read with a toner on it: left out of levels and of readings for a "
            "strand book, for toner darkens."
        ),
        "records": "How many records there are.",
        "waste": "What is thrown away over time; absent where no record says what was left over.",
        "weeks_between_visits": "Weeks from one visit of a guest to the next; absent without a guest who came twice.",
    }
    demand: tuple[DemandLesson, ...]
    foils: tuple[FoilLesson, ...]
    kept_twice: int
    level_off: Learned | None
    put_on_again: int
    read_toned: int
    records: int
    waste: WasteTrend | None
    weeks_between_visits: Learned | None


@dataclass(frozen=True)
class Rebooking(Record):
    """When to come back, by the section whose regrowth shows first."""

    __slots__ = {
        "after_weeks": "Weeks until its regrowth shows.",
        "basis": "What the estimate rests on.",
        "earliest": "The first day on which it may show.",
        "latest": "The last day.",
        "section": "The section.",
        "usual": "The day on which it is expected to show.",
        "why": "Why, in words.",
    }
    after_weeks: Bounds[float]
    basis: _Basis
    earliest: str
    latest: str
    section: str
    usual: str
    why: str


@dataclass(frozen=True)
class Takings(Record):
    """Cost and price of several services in one currency."""

    __slots__ = {
        "cost": "What they cost.",
        "left_over": "Of that, what was left over, in the services that say it; absent where none does.",
        "left_over_services": "How many services say it.",
        "margin_percent": "Profit in percent of the price, to two decimals; absent for a price of zero.",
        "price": "Their net prices.",
        "profit": "Price less cost.",
        "services": "How many services state both.",
    }
    cost: Money
    left_over: Money | None
    left_over_services: int
    margin_percent: str | None
    price: Money
    profit: Money
    services: int


@dataclass(frozen=True)
class Summary(Record):
    """Many services of one kind, summed up."""

    __slots__ = {
        "applying_min": "Putting on, added up over the sections where it was noted; absent where it was nowhere.",
        "as_planned": "Sections whose grams are those of the plan, because nobody noted what was weighed.",
        "chair_min": "The chair, added up over the services that state it; absent where none does.",
        "guests": "Different guests among those that have a code.",
        "incidents": "Reactions and accidents.",
        "kept_twice": "Lines of services that were kept already: each counts once.",
        "left_over_g": "What was left over, likewise.",
        "money": "Cost and price in each currency, over the services that state both.",
        "of": "Which: a title, a colourist or a month; `all` for all, empty where a record does not say.",
        "services": "How many services.",
        "used": "Grams of each product, the most used first: as weighed, and as planned where nobody weighed.",
        "waste_percent": (
            "Left over in percent of what was weighed, over the sections that say both; absent where none does."
        ),
        "weighed_g": "What was weighed, added up over the sections where it was noted; absent where it was nowhere.",
        "without_guest": "Services whose record has no code of a guest.",
    }
    applying_min: float | None
    as_planned: int
    chair_min: float | None
    guests: int
    incidents: int
    kept_twice: int
    left_over_g: float | None
    money: tuple[Takings, ...]
    of: str
    services: int
    used: tuple[KeptPart, ...]
    waste_percent: float | None
    weighed_g: float | None
    without_guest: int
