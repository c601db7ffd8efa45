"""The shape of a plan as plain data, written from its JSON Schema by ``make stubs``; for type checkers alone.

Every name ends with the unit of its numbers. A field that may be missing is ``NotRequired``.
"""

from typing import Literal, NotRequired, TypeAlias, TypedDict, type_check_only

_Basis: TypeAlias = Literal["published", "derived", "measured", "stated", "common-practice", "assumed"]
_Consulted: TypeAlias = Literal["retrieved", "library", "computed", "from-memory", "common-practice"]
_CostKind: TypeAlias = Literal[
    "product", "additive", "consumables", "laundry", "labour", "overhead", "card-fee", "other",
]
_Country: TypeAlias = Literal[
    "AT", "AU", "BE", "CA", "CH", "CN", "CZ", "DE", "DK", "ES", "FI", "FR", "GB", "IE", "IT", "JP", "NL", "NO", "NZ",
    "PL", "PT", "SE", "US",
]
_CountsFrom: TypeAlias = Literal["first-strand", "end-of-application"]
_Currency: TypeAlias = str
_DensityByEye: TypeAlias = Literal["low", "medium", "high"]
_Elasticity: TypeAlias = Literal["good", "reduced", "poor"]
_ExposedBasis: TypeAlias = Literal["measured", "seen", "modelled", "white"]
_ExtraStep: TypeAlias = Literal["pre-soften", "pre-pigment", "clean-first"]
_HistoryFlag: TypeAlias = Literal[
    "metallic-salts", "henna", "black-henna-tattoo", "reaction-to-hair-colour", "reaction-to-lightener", "asthma",
    "lightened", "straightened-or-permed", "under-sixteen", "permanent-colour",
]
_Hue: TypeAlias = Literal[
    "red", "red-orange", "orange", "yellow-orange", "yellow", "yellow-green", "green", "blue-green", "blue",
    "blue-violet", "violet", "red-violet",
]
_Instrument: TypeAlias = Literal["spectrophotometer", "calibrated-photograph", "photograph"]
_Jurisdiction: TypeAlias = Literal["EU", "GB", "US", "CA", "AU", "NZ", "CN", "JP", "ASEAN", "PL"]
_LeftOutCost: TypeAlias = Literal["pack-price", "foils", "labour", "on-costs", "paid-hours", "other-work", "overhead"]
_Margin: TypeAlias = str
_Markup: TypeAlias = str
_Naming: TypeAlias = Literal["european", "us"]
_Next: TypeAlias = Literal["rinse", "go-on", "fresh-mix", "next-visit"]
_OrderBasis: TypeAlias = Literal["file", "plan"]
_PartKind: TypeAlias = Literal["lightener", "colour", "developer", "diluent", "additive"]
_Porosity: TypeAlias = Literal["low", "normal", "high", "uneven"]
_ProductKind: TypeAlias = Literal["permanent", "high-lift", "quasi-permanent", "semi-permanent", "lightener"]
_Rounding: TypeAlias = Literal[
    "midpoint-away-from-zero", "midpoint-nearest-even", "midpoint-toward-zero", "to-zero", "away-from-zero",
    "to-negative-infinity", "to-positive-infinity",
]
_Rule: TypeAlias = Literal[
    "history", "earlier-reaction", "airways", "age", "black-henna", "metal-salts", "scalp", "elasticity", "skin-test",
    "skin-test-age", "strand-test", "law", "developer", "time", "look", "sequence", "rinse", "untoned", "on-scalp",
    "earlier-service", "overlap", "lift", "alkalinity", "finish-together", "level-seen", "strand-book", "white-hair",
    "ratio", "scale", "pace", "depth-at-root", "hairline", "transition", "contrast", "pre-pigmentation", "toner-found",
    "toner-level", "over-neutralising", "porosity", "cool-dose",
]
_Scalp: TypeAlias = Literal["intact", "irritated", "broken"]
_ServiceClass: TypeAlias = Literal["regrowth", "partial", "half", "full"]
_Softness: TypeAlias = Literal["line", "soft", "diffuse"]
_Start: TypeAlias = str
_Strain: TypeAlias = Literal["slight", "usual", "high", "severe"]
_Technique: TypeAlias = Literal["weave", "slice", "back-comb", "block", "freehand", "freehand-in-foil", "regrowth"]
_TestResult: TypeAlias = Literal["clear", "reaction", "pending"]
_Texture: TypeAlias = Literal["fine", "medium", "coarse"]
_Unknown: TypeAlias = Literal[
    "lift-against-time", "finish-together", "hair-mass", "foil-layout", "compositions", "ph", "money", "toner",
]
_Verdict: TypeAlias = Literal["stop", "warning", "not-judged", "note", "passed"]
_Visibility: TypeAlias = Literal["hidden", "dark", "strong", "weak", "pale", "very-pale"]
_White: TypeAlias = Literal["d65-10-degrees", "d65-2-degrees"]
_Wish: TypeAlias = Literal["bright-outline", "bright-front", "even"]
_WorkStage: TypeAlias = Literal["section", "toner", "root-shadow"]
_Zone: TypeAlias = Literal["roots", "mid-lengths", "ends", "lengths", "whole"]
_DefaultValue: TypeAlias = dict[str, object]
_Tone: TypeAlias = list[TonePart]

@type_check_only
class Estimate(TypedDict):
    low: float
    best: float
    high: float

@type_check_only
class ChairTime(TypedDict):
    after_rinse_min: float
    other_work_min: float | None
    sections_min: float
    total_min: float

@type_check_only
class Change(TypedDict):
    enough: bool
    lightened_percent: float
    section: str
    wanted_percent: float

@type_check_only
class Contrast(TypedDict):
    ciede2000: float
    first: str
    second: str

@type_check_only
class Difference(TypedDict):
    ciede2000: float
    lighter: float
    more_intense: float
    redder: float
    yellower: float

@type_check_only
class InPlace(TypedDict):
    of_region_percent: float
    region: str
    section: str

@type_check_only
class Interval13(TypedDict):
    best: int
    high: int
    low: int

@type_check_only
class Reason(TypedDict):
    from_memory: bool
    id: NotRequired[str | None]
    text: str

@type_check_only
class RejectedStrength(TypedDict):
    developer_ww_percent: float
    why: str

@type_check_only
class StatedNotUsed(TypedDict):
    field: str
    why: str

@type_check_only
class TimeTo(TypedDict):
    early_min: float | None
    late_min: float | None
    median_min: float | None

@type_check_only
class TonerPart(TypedDict):
    code: str
    mass_g: float
    share_percent: float

@type_check_only
class Bowl(TypedDict):
    count: int
    mixed_after_min: list[float]
    on_hair_ww_percent: Estimate
    parts: list[WeighedPart]
    total_g: float
    use_within_min: float
    worst_ratio_error_percent: float

@type_check_only
class Caution(TypedDict):
    reminder: str | None
    sources: list[Reason]
    text: str

@type_check_only
class ChosenStrength(TypedDict):
    developer_ww_percent: Estimate
    on_hair_ww_percent: Estimate
    rejected: list[RejectedStrength]
    section: str
    why: str

@type_check_only
class Citation(TypedDict):
    consulted: _Consulted
    id: str
    text: str

@type_check_only
class ClassDecision(TypedDict):
    basis: _Basis
    before: list[_ExtraStep]
    citation: Citation
    product: _ProductKind
    rejected: list[Rejected]
    why: str

@type_check_only
class CostLineWithShare(TypedDict):
    amount: Money
    basis: _Basis
    bowl: str | None
    kind: _CostKind
    section: str | None
    share_percent: str | None
    what: str

@type_check_only
class CostTable(TypedDict):
    lines: list[CostLineWithShare]
    total: Money

@type_check_only
class DefaultUsed(TypedDict):
    basis: _Basis
    field: str
    sources: list[Reason]
    value: _DefaultValue

@type_check_only
class Existing(TypedDict):
    artificial: bool
    level: float
    tone: str | None
    zone: _Zone

@type_check_only
class ExpectedLook(TypedDict):
    at_min: float
    level: Estimate
    on_hair_min: float

@type_check_only
class Factor(TypedDict):
    basis: _Basis
    citation: Citation | None
    lever: str
    times: Estimate

@type_check_only
class Finding(TypedDict):
    rule: _Rule
    sources: list[Reason]
    text: str
    verdict: _Verdict

@type_check_only
class Habits(TypedDict):
    country: _Country | None
    level_names: _Naming | None
    ounces: bool
    volume_labels: bool

@type_check_only
class Hair(TypedDict):
    density: _DensityByEye | None
    elasticity: _Elasticity | None
    existing: list[Existing]
    history: list[_HistoryFlag] | None
    incompatibility_test: TestDone | None
    length_cm: float | None
    natural_level: Estimate
    natural_level_margin_levels: float | None
    porosity: _Porosity | None
    scalp: _Scalp | None
    skin_test: TestDone | None
    strand_test: TestDone | None
    texture: _Texture | None
    white_percent: float

@type_check_only
class HeadLook(TypedDict):
    as_wanted: bool
    change: Change | None
    front_over_behind: Estimate | None
    interior_lab_l: Estimate | None
    outline_lab_l: Estimate | None
    outline_over_interior: Estimate | None
    regions: list[RegionLook]

@type_check_only
class HeadPlan(TypedDict):
    basis: _Basis
    hair_g: Estimate | None
    head_hairs: Estimate
    look: HeadReading | None
    mass_per_length_g_per_cm: Estimate
    sections: list[SectionPlan]
    service_class: _ServiceClass

@type_check_only
class HeadReading(TypedDict):
    look: HeadLook
    places: list[InPlace]
    template: Template
    wish: _Wish | None

@type_check_only
class LeftOut(TypedDict):
    of: str | None
    what: _LeftOutCost

@type_check_only
class LevelRule(TypedDict):
    no_shade_for_target: str | None
    pigmented_hair_level: Estimate
    shade_for_target_level: Estimate | None
    shade_level: float
    sources: list[Reason]
    white_hair_level: float

@type_check_only
class Mix(TypedDict):
    bowls: list[Bowl]
    developer_ww_percent: Estimate
    findings: list[int]
    leftover_g: float
    name: str
    needed_basis: _Basis
    needed_g: Estimate
    on_hair_as_labelled_ww_percent: Estimate
    on_hair_ww_percent: Estimate
    ratio: str | None
    stage: _WorkStage
    strength_basis: _Basis
    undeclared: list[str]

@type_check_only
class Money(TypedDict):
    amount: str
    currency: _Currency

@type_check_only
class MoneyPlan(TypedDict):
    cost: CostTable
    left_out: list[LeftOut]
    price: SetPrice | None
    rounding: _Rounding
    taxed: TaxedPrice | None

@type_check_only
class NaturalShadeDose(TypedDict):
    basis: _Basis
    mass_g: Estimate
    shade: str | None
    share_percent: Estimate

@type_check_only
class NeutralisingDose(TypedDict):
    basis: _Basis
    finding: Finding
    mass_g: Estimate
    share_percent: Estimate
    warmth_before_chroma: Estimate
    warmth_left_chroma: Estimate
    warmth_without_chroma: Estimate

@type_check_only
class NotComputed(TypedDict):
    what: _Unknown
    why: str

@type_check_only
class PlanData(TypedDict):
    blocked: bool
    cautions: list[Caution]
    chair: ChairTime
    colour: list[SectionColour]
    colourist: str | None
    contrasts: list[Contrast]
    defaults: list[DefaultUsed]
    findings: list[Finding]
    foilwork: str
    format: int
    guest: str | None
    habits: Habits
    hair: Hair
    head: HeadPlan
    jurisdiction: _Jurisdiction | None
    lift: list[SectionLift]
    mixes: list[Mix]
    money: MoneyPlan | None
    not_computed: list[NotComputed]
    notes: str | None
    order: list[Step]
    order_basis: _OrderBasis
    start: _Start
    stated_not_used: list[StatedNotUsed]
    strengths: list[ChosenStrength]
    title: str
    together: list[TogetherPlan]

@type_check_only
class PrePigmentMix(TypedDict):
    part: TonerPart
    residual: Difference
    wanted: PrePigmentation

@type_check_only
class PrePigmentation(TypedDict):
    finding: Finding
    level: float
    tone: _Tone

@type_check_only
class Region(TypedDict):
    area_percent: float
    density_percent: Estimate
    front: bool
    inward_percent: float
    name: str
    outline: bool
    place: list[float]

@type_check_only
class RegionLook(TypedDict):
    colour: Swatch
    hair_percent: float
    lab_l: Estimate
    region: str

@type_check_only
class Rejected(TypedDict):
    product: _ProductKind
    why: str

@type_check_only
class SectionColour(TypedDict):
    change_levels: Estimate
    exposed: Sourced | None
    exposed_swatch: Swatch | None
    from_level: Estimate
    level_rule: LevelRule | None
    look: SectionLook | None
    measured_with: _Instrument | None
    natural: Swatch
    natural_shade: NaturalShadeDose | None
    neutralising: SectionNeutralising | None
    pre_pigment: PrePigmentMix | None
    section: str
    start: _ExposedBasis
    swatch: Swatch
    target_level: float
    target_tone: str | None
    toner: str | None

@type_check_only
class SectionLift(TypedDict):
    chance_percent: float
    chance_with_a_fresh_mix_percent: float
    first_strand_level: Estimate
    from_level: float
    known: str
    last_strand_level: Estimate
    levers: list[Factor]
    limit_min: float
    looks: list[ExpectedLook]
    mixed_ph: float | None
    next_strand_test_min: float
    on_hair_ww_percent: Estimate
    reached: TimeTo
    reached_on_clock: TimeTo
    readings: int
    rule_level: Estimate
    section: str
    seen: list[SeenNow]
    strain: _Strain
    strain_index: Estimate
    strain_sources: list[Citation]
    target_level: float
    temperature_c: float
    visits: int | None

@type_check_only
class SectionLook(TypedDict):
    basis: _Basis
    caveat: str
    contrast: Difference
    mixed: Swatch
    perceived_level: Estimate
    reads_as_one: bool

@type_check_only
class SectionNeutralising(TypedDict):
    carrier: str
    dose: NeutralisingDose
    neutraliser: str

@type_check_only
class SectionPlan(TypedDict):
    first_foil: int | None
    foils: Interval13 | None
    hair_g: Estimate | None
    last_foil: int | None
    line_shows_after_weeks: Estimate
    mix_per_foil_g: Estimate | None
    product_class: ClassDecision
    root_shadow_cm: Estimate | None
    section: str
    share_of_panel_percent: Estimate | None
    softness: _Softness
    start_cm: Estimate
    takes_g: Estimate | None
    technique: _Technique

@type_check_only
class SeenNow(TypedDict):
    at_min: float
    level: float
    look_again_min: float | None
    next: _Next
    why: str

@type_check_only
class SetPrice(TypedDict):
    cost: Money
    margin: _Margin
    markup: _Markup
    price: Money
    profit: Money

@type_check_only
class Sourced(TypedDict):
    basis: _Basis
    citation: Citation | None
    value: UnderlyingPigment

@type_check_only
class Step(TypedDict):
    applied_min: float
    begin_min: float
    look_at_last_min: float | None
    look_at_min: list[float]
    mix_at_min: list[float]
    name: str
    number: int
    rinse_by_min: float
    stage: _WorkStage

@type_check_only
class Swatch(TypedDict):
    basis: _Basis
    hue: _Hue | None
    lab_a: Estimate
    lab_b: Estimate
    lab_l: Estimate
    notice: str
    srgb: str
    uncertainty_ciede2000: float
    white: _White

@type_check_only
class TaxedPrice(TypedDict):
    gross: Money
    net: Money
    tax: Money

@type_check_only
class Template(TypedDict):
    basis: _Basis
    regions: list[Region]

@type_check_only
class TestDone(TypedDict):
    applied: _Start
    result: _TestResult

@type_check_only
class TogetherPlan(TypedDict):
    rinse_min: float | None
    sections: list[TogetherSection]
    short_levels: float
    why_not: str | None
    window_asked_min: float
    window_needed_min: float | None

@type_check_only
class TogetherSection(TypedDict):
    at_rinse_level: Estimate
    begin_min: float
    reaches_min: float
    section: str

@type_check_only
class TonePart(TypedDict):
    hue: _Hue
    share_percent: float

@type_check_only
class UnderlyingPigment(TypedDict):
    exposed: list[_Hue]
    level: float
    neutraliser: list[_Hue] | None
    visibility: list[_Visibility]
    words: list[str]

@type_check_only
class WeighedPart(TypedDict):
    exact_g: float
    kind: _PartKind
    peroxide_ww_percent: Estimate
    product: str
    scale_shows_g: float
    weigh_g: float
