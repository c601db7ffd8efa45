"""The shape of a plan as plain data, written from its JSON Schema by ``make stubs``; for type checkers alone.

Every name ends with the unit of its numbers. A field that may be missing is ``NotRequired``.
"""

from typing import Any, Literal, NotRequired, TypedDict

# fmt: off
Amount = Literal["low", "medium", "high"]
Basis = Literal["published", "derived", "measured", "stated", "common-practice", "assumed"]
Consulted = Literal["retrieved", "library", "computed", "from-memory", "common-practice"]
CostKind = Literal["product", "additive", "consumables", "laundry", "labour", "overhead", "card-fee", "other"]
Currency = str
Elasticity = Literal["good", "reduced", "poor"]
HistoryFlag = Literal[
    "metallic-salts", "henna", "black-henna-tattoo", "reaction-to-hair-colour", "lightened", "straightened-or-permed",
    "under-sixteen", "permanent-colour",
]
Hue = Literal[
    "red", "red-orange", "orange", "yellow-orange", "yellow", "yellow-green", "green", "blue-green", "blue",
    "blue-violet", "violet", "red-violet",
]
Jurisdiction = Literal["EU", "GB", "US", "CA", "AU", "NZ", "CN", "JP", "ASEAN", "PL"]
LeftOutCost = Literal["pack-price", "foils", "labour", "on-costs", "paid-hours", "other-work", "overhead"]
Margin = str
Markup = str
PartKind = Literal["lightener", "colour", "developer", "diluent", "additive"]
Porosity = Literal["low", "normal", "high", "uneven"]
Rounding = Literal[
    "midpoint-away-from-zero", "midpoint-nearest-even", "midpoint-toward-zero", "to-zero", "away-from-zero",
    "to-negative-infinity", "to-positive-infinity",
]
Rule = Literal[
    "history", "earlier-reaction", "age", "black-henna", "metal-salts", "scalp", "elasticity", "skin-test",
    "skin-test-age", "strand-test", "law", "developer", "time", "on-scalp", "overlap", "lift", "white-hair", "scale",
    "pace", "depth-at-root", "hairline", "transition", "contrast", "pre-pigmentation", "toner-found", "toner-level",
    "over-neutralising", "porosity", "cool-dose",
]
Scalp = Literal["intact", "irritated", "broken"]
Start = str
TestResult = Literal["clear", "reaction", "pending"]
Texture = Literal["fine", "medium", "coarse"]
Unknown = Literal[
    "lift-against-time", "finish-together", "hair-mass", "foil-layout", "compositions", "ph", "money", "toner",
]
Verdict = Literal["stop", "warning", "not-judged", "note", "passed"]
Visibility = Literal["hidden", "dark", "strong", "weak", "pale", "very-pale"]
White = Literal["d65-10-degrees", "d65-2-degrees"]
WorkStage = Literal["section", "toner", "root-shadow"]
Zone = Literal["roots", "mid-lengths", "ends", "lengths", "whole"]
DefaultValue = dict[str, Any]


class Estimate(TypedDict):
    low: float
    best: float
    high: float


class Contrast(TypedDict):
    ciede2000: "float"
    first: "str"
    second: "str"


class Interval(TypedDict):
    best: "float"
    high: "float"
    low: "float"


class Interval2(TypedDict):
    best: "float"
    high: "float"
    low: "float"


class Interval3(TypedDict):
    best: "float"
    high: "float"
    low: "float"


class Interval4(TypedDict):
    best: "float"
    high: "float"
    low: "float"


class Interval5(TypedDict):
    best: "float"
    high: "float"
    low: "float"


class Interval6(TypedDict):
    best: "float"
    high: "float"
    low: "float"


class Interval7(TypedDict):
    best: "float"
    high: "float"
    low: "float"


class Reason(TypedDict):
    from_memory: "bool"
    id: NotRequired["str | None"]
    text: "str"


class Bowl(TypedDict):
    count: "int"
    mixed_after_min: "list[float]"
    on_hair_ww_percent: "Interval7"
    parts: "list[WeighedPart]"
    total_g: "float"
    use_within_min: "float"
    worst_ratio_error_percent: "float"


class Caution(TypedDict):
    sources: "list[Reason]"
    text: "str"


class Citation(TypedDict):
    consulted: "Consulted"
    id: "str"
    text: "str"


class CostLineWithShare(TypedDict):
    amount: "Money"
    basis: "Basis"
    bowl: "str | None"
    kind: "CostKind"
    section: "str | None"
    share_percent: "str | None"
    what: "str"


class CostTable(TypedDict):
    lines: "list[CostLineWithShare]"
    total: "Money"


class DefaultUsed(TypedDict):
    basis: "Basis"
    field: "str"
    sources: "list[Reason]"
    value: "DefaultValue"


class Existing(TypedDict):
    artificial: "bool"
    level: "float"
    tone: "str | None"
    zone: "Zone"


class Finding(TypedDict):
    rule: "Rule"
    sources: "list[Reason]"
    text: "str"
    verdict: "Verdict"


class Hair(TypedDict):
    density: "Amount | None"
    elasticity: "Elasticity | None"
    existing: "list[Existing]"
    history: "list[HistoryFlag] | None"
    incompatibility_test: "TestDone | None"
    length_cm: "float | None"
    natural_level: "Interval"
    natural_level_margin_levels: "float | None"
    porosity: "Porosity | None"
    scalp: "Scalp | None"
    skin_test: "TestDone | None"
    strand_test: "TestDone | None"
    texture: "Texture | None"
    white_percent: "float"


class LeftOut(TypedDict):
    of: "str | None"
    what: "LeftOutCost"


class LevelRule(TypedDict):
    no_shade_for_target: "str | None"
    pigmented_hair_level: "float"
    shade_for_target_level: "float | None"
    shade_level: "float"
    sources: "list[Reason]"
    white_hair_level: "float"


class Mix(TypedDict):
    bowls: "list[Bowl]"
    developer_ww_percent: "Interval7"
    findings: "list[int]"
    leftover_g: "float"
    name: "str"
    needed_basis: "Basis"
    needed_g: "Interval6"
    on_hair_ww_percent: "Interval7"
    ratio: "str | None"
    stage: "WorkStage"
    strength_basis: "Basis"


class Money(TypedDict):
    amount: "str"
    currency: "Currency"


class MoneyPlan(TypedDict):
    cost: "CostTable"
    left_out: "list[LeftOut]"
    price: "SetPrice | None"
    rounding: "Rounding"
    taxed: "TaxedPrice | None"


class NotComputed(TypedDict):
    what: "Unknown"
    why: "str"


class PlanData(TypedDict):
    blocked: "bool"
    cautions: "list[Caution]"
    colour: "list[SectionColour]"
    colourist: "str | None"
    contrasts: "list[Contrast]"
    defaults: "list[DefaultUsed]"
    findings: "list[Finding]"
    foilwork: "str"
    format: "int"
    guest: "str | None"
    hair: "Hair"
    jurisdiction: "Jurisdiction | None"
    mixes: "list[Mix]"
    money: "MoneyPlan | None"
    not_computed: "list[NotComputed]"
    notes: "str | None"
    order: "list[Step]"
    start: "Start"
    title: "str"


class SectionColour(TypedDict):
    change_levels: "Interval2"
    exposed: "Sourced | None"
    from_level: "Interval"
    level_rule: "LevelRule | None"
    section: "str"
    swatch: "Swatch"
    target_level: "float"
    target_tone: "str | None"


class SetPrice(TypedDict):
    cost: "Money"
    margin: "Margin"
    markup: "Markup"
    price: "Money"
    profit: "Money"


class Sourced(TypedDict):
    basis: "Basis"
    citation: "Citation | None"
    value: "UnderlyingPigment"


class Step(TypedDict):
    applied_min: "float"
    begin_min: "float"
    look_at_min: "list[float]"
    mix_at_min: "list[float]"
    name: "str"
    number: "int"
    rinse_by_min: "float"
    stage: "WorkStage"


class Swatch(TypedDict):
    basis: "Basis"
    hue: "Hue | None"
    lab_a: "Interval4"
    lab_b: "Interval5"
    lab_l: "Interval3"
    notice: "str"
    srgb: "str"
    uncertainty_ciede2000: "float"
    white: "White"


class TaxedPrice(TypedDict):
    gross: "Money"
    net: "Money"
    tax: "Money"


class TestDone(TypedDict):
    applied: "Start"
    result: "TestResult"


class UnderlyingPigment(TypedDict):
    exposed: "list[Any]"
    level: "float"
    neutraliser: "list[Any] | None"
    visibility: "list[Any]"
    words: "list[Any]"


class WeighedPart(TypedDict):
    exact_g: "float"
    kind: "PartKind"
    peroxide_ww_percent: "Interval7"
    product: "str"
    scale_shows_g: "float"
    weigh_g: "float"
