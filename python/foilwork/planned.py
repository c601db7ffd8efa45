"""What a plan is made of, written from its JSON Schema by ``make stubs``: ``plan.mixes[0].bowls``.

The objects are frozen, compare, hash, pickle, match and turn ``to_dict()``. Every name ends with the unit of its
numbers; what is estimated is ``foilwork.Bounds``.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from foilwork._native import Bounds
from foilwork._native.finding import Finding, Reason
from foilwork._native.money import Money
from foilwork._native.source import Citation
from foilwork._record import Record

if TYPE_CHECKING:
    from foilwork._words import (
        _Basis,
        _CostKind,
        _Country,
        _DensityByEye,
        _Elasticity,
        _ExposedBasis,
        _ExtraStep,
        _HistoryFlag,
        _Hue,
        _Instrument,
        _Jurisdiction,
        _LeftOutCost,
        _Naming,
        _Next,
        _OrderBasis,
        _PartKind,
        _Porosity,
        _ProductKind,
        _Rounding,
        _Scalp,
        _ServiceClass,
        _Softness,
        _Strain,
        _Technique,
        _TestResult,
        _Texture,
        _Unknown,
        _Visibility,
        _White,
        _Wish,
        _WorkStage,
        _Zone,
    )

__all__ = [
    "Bowl",
    "BowlCard",
    "CardClock",
    "CardMinutes",
    "Caution",
    "ChairTime",
    "Change",
    "ChosenStrength",
    "ClassDecision",
    "Contrast",
    "CostLineWithShare",
    "CostTable",
    "DefaultUsed",
    "Difference",
    "Existing",
    "ExpectedLook",
    "Factor",
    "Habits",
    "Hair",
    "HeadLook",
    "HeadPlan",
    "HeadReading",
    "InPlace",
    "Interval13",
    "LeftOut",
    "LevelRule",
    "Mix",
    "MoneyPlan",
    "NaturalShadeDose",
    "NeutralisingDose",
    "NotComputed",
    "PlanData",
    "PrePigmentMix",
    "PrePigmentation",
    "Region",
    "RegionLook",
    "Rejected",
    "RejectedStrength",
    "SectionColour",
    "SectionLift",
    "SectionLook",
    "SectionNeutralising",
    "SectionPlan",
    "SeenNow",
    "SetPrice",
    "Sourced",
    "StatedNotUsed",
    "Step",
    "Swatch",
    "TaxedPrice",
    "Template",
    "TestDone",
    "TimeTo",
    "TogetherPlan",
    "TogetherSection",
    "TonePart",
    "TonerPart",
    "UnderlyingPigment",
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
        "look_at": "When to look at the hair.",
        "look_at_last": "From when on the last strand is looked at too.",
        "mixed_at": "When it is mixed.",
        "rinse_by": "When to rinse at the latest.",
        "use_by": "When it must no longer be used.",
    }
    look_at: tuple[str, ...]
    look_at_last: str | None
    mixed_at: str
    rinse_by: str
    use_by: str


@dataclass(frozen=True)
class CardMinutes(Record):
    """The times of a card, counted from the first brush."""

    __slots__ = {
        "look_at_last_min": "From when on the last strand is looked at too.",
        "look_at_min": "When to look at the hair.",
        "mixed_at_min": "When it is mixed.",
        "rinse_by_min": "When to rinse at the latest.",
        "use_by_min": "When it must no longer be used.",
    }
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
        "minutes": (
            "Times in minutes from the first brush; for toners and root shadows the earliest, as if rinsing took no "
            "time."
        ),
        "name": "What the bowl is for.",
        "on_hair_ww_percent": "Strength on the hair.",
        "parts": "What goes in, in the order of weighing.",
        "stage": "Section, toner or root shadow.",
        "stops": "Every finding of the plan that says stop.",
        "strength_basis": "What that strength rests on.",
        "total_g": "What the scale shows in the end.",
        "worst_ratio_error_percent": "The worst error of a part's share that rounding to the scale causes.",
    }
    blocked: bool
    bowl: int
    bowls: int
    clock: CardClock | None
    findings: tuple[Finding, ...]
    guest: str | None
    minutes: CardMinutes
    name: str
    on_hair_ww_percent: Bounds[float]
    parts: tuple[WeighedPart, ...]
    stage: _WorkStage
    stops: tuple[Finding, ...]
    strength_basis: _Basis
    total_g: float
    worst_ratio_error_percent: float


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
class ChairTime(Record):
    """How long the chair is taken: to the last rinse, then the toners, then the other work."""

    __slots__ = {
        "after_rinse_min": "Toners and root shadow, from the end of that rinse.",
        "other_work_min": "Consultation, rinsing, drying, where that is stated.",
        "sections_min": "From the first brush to the last rinse of a section.",
        "total_min": "All of it.",
    }
    after_rinse_min: float
    other_work_min: float | None
    sections_min: float
    total_min: float


@dataclass(frozen=True)
class Change(Record):
    """The section to change so that the head reads as wanted."""

    __slots__ = {
        "enough": "Whether that is enough; if not, its light hair has to be another level too.",
        "lightened_percent": "How much of its hair is lightened now.",
        "section": "The section.",
        "wanted_percent": "How much it would have to be.",
    }
    enough: bool
    lightened_percent: float
    section: str
    wanted_percent: float


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
class Rejected(Record):
    """A class that was not chosen."""

    __slots__ = {
        "product": "Which.",
        "why": "Why not.",
    }
    product: _ProductKind
    why: str


@dataclass(frozen=True)
class ClassDecision(Record):
    """The class of product for a section, with its reasons."""

    __slots__ = {
        "basis": "What the rules rest on.",
        "before": "What has to be done before.",
        "citation": "Where they come from.",
        "product": "What to use.",
        "rejected": "What was considered and not taken.",
        "why": "Why.",
    }
    basis: _Basis
    before: tuple[_ExtraStep, ...]
    citation: Citation
    product: _ProductKind
    rejected: tuple[Rejected, ...]
    why: str


@dataclass(frozen=True)
class Contrast(Record):
    """Two sections side by side, by the colour model."""

    __slots__ = {
        "ciede2000": "Their colour difference.",
        "first": "One section.",
        "second": "The other.",
    }
    ciede2000: float
    first: str
    second: str


@dataclass(frozen=True)
class CostLineWithShare(Record):
    """A line, with its share of the total."""

    __slots__ = {
        "amount": "The amount, whole in minor units.",
        "basis": "Where the quantity comes from: planned (derived), weighed (measured), stated.",
        "bowl": "The bowl it belongs to, where there is one.",
        "kind": "The kind of cost.",
        "section": "The section of the head it belongs to, where there is one.",
        "share_percent": "Share of the total in percent, to one decimal; left out when the total is zero.",
        "what": "What it is, in the user's words.",
    }
    amount: Money
    basis: _Basis
    bowl: str | None
    kind: _CostKind
    section: str | None
    share_percent: str | None
    what: str


@dataclass(frozen=True)
class CostTable(Record):
    """What a service costs, line by line."""

    __slots__ = {
        "lines": "The lines.",
        "total": "The sum of the lines.",
    }
    lines: tuple[CostLineWithShare, ...]
    total: Money


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
class Difference(Record):
    """How far two colours are apart, as one number and as the directions a colourist names."""

    __slots__ = {
        "ciede2000": "CIEDE2000 colour difference (kL = kC = kH = 1).",
        "lighter": "L\\* of the second minus the first: positive is lighter.",
        "more_intense": "Chroma of the second minus the first: positive is more intense.",
        "redder": "a\\* of the second minus the first: positive is redder, negative greener.",
        "yellower": "b\\* of the second minus the first: positive is yellower (warmer), negative bluer (cooler).",
    }
    ciede2000: float
    lighter: float
    more_intense: float
    redder: float
    yellower: float


@dataclass(frozen=True)
class Existing(Record):
    """Colour that is already in a zone."""

    __slots__ = {
        "artificial": "Whether it is artificial colour.",
        "level": "Its level now.",
        "tone": "Its tone in the words of the file.",
        "zone": "Where along the strand.",
    }
    artificial: bool
    level: float
    tone: str | None
    zone: _Zone


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
class Habits(Record):
    """How this shop is used to reading sheets and cards. Nothing is converted by it: grams, % w/w and level numbers
    stay, and what is chosen here stands beside them.
    """

    __slots__ = {
        "country": (
            "Whose way of writing dates, times and amounts of money, as a two-letter code of ISO 3166-1; where it is "
            "not said, dates are written year-month-day and amounts with the code of the currency."
        ),
        "level_names": "Which list names the levels beside their numbers.",
        "ounces": "Whether ounces of mass (28.35 g) stand beside the grams.",
        "volume_labels": "Whether the trade's volume label (10 vol for 3 %) stands beside the percent of a developer.",
    }
    country: _Country | None
    level_names: _Naming | None
    ounces: bool
    volume_labels: bool


@dataclass(frozen=True)
class TestDone(Record):
    """A test: when, and what came of it."""

    __slots__ = {
        "applied": "When it was applied.",
        "result": "What came of it.",
    }
    applied: str
    result: _TestResult


@dataclass(frozen=True)
class Hair(Record):
    """The hair and the guest as stated."""

    __slots__ = {
        "density": "Hairs per area.",
        "elasticity": "Stretch and return of a damp strand.",
        "existing": "Colour already there, zone by zone.",
        "history": "What has been on this hair or has happened to this guest; an empty list says that nothing has.",
        "incompatibility_test": "Incompatibility test for metallic salts.",
        "length_cm": "Length of the lengths to be worked.",
        "natural_level": "Natural level, as far as the reading is stated to be off.",
        "natural_level_margin_levels": "How far the reading may be off either way, where that is stated.",
        "porosity": "How readily the hair takes up liquid.",
        "scalp": "State of the scalp.",
        "skin_test": "Skin test with the products of this service.",
        "strand_test": "Strand test with the mixes of this service.",
        "texture": "Diameter of a strand.",
        "white_percent": "Share of white hair.",
    }
    density: _DensityByEye | None
    elasticity: _Elasticity | None
    existing: tuple[Existing, ...]
    history: tuple[_HistoryFlag, ...] | None
    incompatibility_test: TestDone | None
    length_cm: float | None
    natural_level: Bounds[float]
    natural_level_margin_levels: float | None
    porosity: _Porosity | None
    scalp: _Scalp | None
    skin_test: TestDone | None
    strand_test: TestDone | None
    texture: _Texture | None
    white_percent: float


@dataclass(frozen=True)
class Swatch(Record):
    """What a swatch says as plain data."""

    __slots__ = {
        "basis": "basis",
        "hue": "The hue in the words of the wheel, where there is one.",
        "lab_a": "lab_a",
        "lab_b": "lab_b",
        "lab_l": "lab_l",
        "notice": "The words to show beside it.",
        "srgb": "The nearest colour a screen can show.",
        "uncertainty_ciede2000": "How far off the model may be, in CIEDE2000.",
        "white": "The white the coordinates are counted from.",
    }
    basis: _Basis
    hue: _Hue | None
    lab_a: Bounds[float]
    lab_b: Bounds[float]
    lab_l: Bounds[float]
    notice: str
    srgb: str
    uncertainty_ciede2000: float
    white: _White


@dataclass(frozen=True)
class RegionLook(Record):
    """How one region reads."""

    __slots__ = {
        "colour": "The colour itself.",
        "hair_percent": "Its share of all the hair.",
        "lab_l": "How light it reads from where strands merge.",
        "region": "Its name.",
    }
    colour: Swatch
    hair_percent: float
    lab_l: Bounds[float]
    region: str


@dataclass(frozen=True)
class HeadLook(Record):
    """How the head reads."""

    __slots__ = {
        "as_wanted": "Whether it reads as wanted.",
        "change": "What to change when it does not; the largest step first.",
        "front_over_behind": "The same of what is seen from the front over the rest.",
        "interior_lab_l": "L\\* of all that is inside the outline.",
        "outline_lab_l": "L\\* of hairline and nape line together; absent without an outline.",
        "outline_over_interior": (
            "L\\* that the outline is lighter than the interior, under every set of assumptions; negative when it is "
            "darker."
        ),
        "regions": "Region by region.",
    }
    as_wanted: bool
    change: Change | None
    front_over_behind: Bounds[float] | None
    interior_lab_l: Bounds[float] | None
    outline_lab_l: Bounds[float] | None
    outline_over_interior: Bounds[float] | None
    regions: tuple[RegionLook, ...]


@dataclass(frozen=True)
class InPlace(Record):
    """A section's place."""

    __slots__ = {
        "of_region_percent": "How much of the region it is.",
        "region": "The region.",
        "section": "The section.",
    }
    of_region_percent: float
    region: str
    section: str


@dataclass(frozen=True)
class Region(Record):
    """A region of the head."""

    __slots__ = {
        "area_percent": "Its share of the scalp that bears hair.",
        "density_percent": "Hairs on a square centimetre, against the mean of the head, in percent of it.",
        "front": "Whether it is seen from the front.",
        "inward_percent": "How far inside it lies: 0 % at the outline, 100 % at the crown.",
        "name": "What it is called.",
        "outline": "Whether it is part of the outline: hairline or nape line.",
        "place": "Where it is drawn: left edge, top edge, width, height on a map of 12 by 16, the face at the top.",
    }
    area_percent: float
    density_percent: Bounds[float]
    front: bool
    inward_percent: float
    name: str
    outline: bool
    place: tuple[float, ...]


@dataclass(frozen=True)
class Template(Record):
    """The regions of a head, which together are all of it."""

    __slots__ = {
        "basis": "What the shares rest on.",
        "regions": "regions",
    }
    basis: _Basis
    regions: tuple[Region, ...]


@dataclass(frozen=True)
class HeadReading(Record):
    """How the head will read, and whether that is what was asked for."""

    __slots__ = {
        "look": "How it reads; `as_wanted` is true where nothing is asked for.",
        "places": "Which section lies in which region.",
        "template": "The regions.",
        "wish": "What the file asks for.",
    }
    look: HeadLook
    places: tuple[InPlace, ...]
    template: Template
    wish: _Wish | None


@dataclass(frozen=True)
class Interval13(Record):
    """An estimate that is never shown without its bounds: `low <= best <= high`."""

    __slots__ = {
        "best": "Best estimate.",
        "high": "Upper bound.",
        "low": "Lower bound.",
    }
    best: int
    high: int
    low: int


@dataclass(frozen=True)
class SectionPlan(Record):
    """What one section takes."""

    __slots__ = {
        "first_foil": "Number of its first foil in the order of the work, counted over all sections.",
        "foils": "Foils stated, or counted on its panels.",
        "hair_g": "Its hair that carries mixture; absent where the length of the hair is not stated.",
        "last_foil": "Number of its last foil.",
        "line_shows_after_weeks": "When the regrowth shows.",
        "mix_per_foil_g": "Mixture for a foil.",
        "product_class": "The class of product that does it, with what was not taken and why.",
        "root_shadow_cm": (
            "How long a root shadow is there; absent where the section does not say in which `regions` it lies."
        ),
        "section": "The section.",
        "share_of_panel_percent": "Of the hair on its panels, what is picked.",
        "softness": "How the start looks.",
        "start_cm": "From the scalp to the first colour.",
        "takes_g": "The mixture that this hair takes, without spare.",
        "technique": "How its hair is taken.",
    }
    first_foil: int | None
    foils: Interval13 | None
    hair_g: Bounds[float] | None
    last_foil: int | None
    line_shows_after_weeks: Bounds[float]
    mix_per_foil_g: Bounds[float] | None
    product_class: ClassDecision
    root_shadow_cm: Bounds[float] | None
    section: str
    share_of_panel_percent: Bounds[float] | None
    softness: _Softness
    start_cm: Bounds[float]
    takes_g: Bounds[float] | None
    technique: _Technique


@dataclass(frozen=True)
class HeadPlan(Record):
    """The head: its hair, its sections, how it will read."""

    __slots__ = {
        "basis": "What hairs and masses rest on.",
        "hair_g": "Mass of all the hair; absent where its length is not stated.",
        "head_hairs": "All its hairs.",
        "look": "How the head will read; absent where no section says in which `regions` it lies.",
        "mass_per_length_g_per_cm": "Mass of all the hair by its length.",
        "sections": "Section by section, in the working order.",
        "service_class": "What to call the service when booking and pricing it.",
    }
    basis: _Basis
    hair_g: Bounds[float] | None
    head_hairs: Bounds[float]
    look: HeadReading | None
    mass_per_length_g_per_cm: Bounds[float]
    sections: tuple[SectionPlan, ...]
    service_class: _ServiceClass


@dataclass(frozen=True)
class LeftOut(Record):
    """Something that the cost leaves out."""

    __slots__ = {
        "of": "The product or section, where it is one of several.",
        "what": "What.",
    }
    of: str | None
    what: _LeftOutCost


@dataclass(frozen=True)
class LevelRule(Record):
    """Level rules of permanent colour: rules of thumb, a strand test decides."""

    __slots__ = {
        "no_shade_for_target": "Why there are none, otherwise.",
        "pigmented_hair_level": "Levels that pigmented hair takes.",
        "shade_for_target_level": "Shades that would bring pigmented hair to the target, where there are such shades.",
        "shade_level": "Level of the shades as mixed.",
        "sources": "What the rules rest on.",
        "white_hair_level": "Level that white hair takes.",
    }
    no_shade_for_target: str | None
    pigmented_hair_level: Bounds[float]
    shade_for_target_level: Bounds[float] | None
    shade_level: float
    sources: tuple[Reason, ...]
    white_hair_level: float


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
class SetPrice(Record):
    """A net price set from a cost, with both percentages, so that neither is taken for the other."""

    __slots__ = {
        "cost": "What the service costs.",
        "margin": "Profit as a part of the price.",
        "markup": "Profit as a part of the cost.",
        "price": "The net price.",
        "profit": "Price less cost.",
    }
    cost: Money
    margin: str
    markup: str
    price: Money
    profit: Money


@dataclass(frozen=True)
class TaxedPrice(Record):
    """A price with its tax: `net + tax = gross`, always."""

    __slots__ = {
        "gross": "With the tax: what the guest pays.",
        "net": "Without the tax.",
        "tax": "The tax.",
    }
    gross: Money
    net: Money
    tax: Money


@dataclass(frozen=True)
class MoneyPlan(Record):
    """What it costs and what to charge. Amounts are exact decimal text."""

    __slots__ = {
        "cost": "The cost, line by line.",
        "left_out": "What the cost leaves out because the file does not say.",
        "price": "The net price with margin and mark-up, where one of them is given.",
        "rounding": "How amounts are rounded.",
        "taxed": "The same price with its tax, where a rate is given.",
    }
    cost: CostTable
    left_out: tuple[LeftOut, ...]
    price: SetPrice | None
    rounding: _Rounding
    taxed: TaxedPrice | None


@dataclass(frozen=True)
class NaturalShadeDose(Record):
    """How much of a natural shade the trade adds for white hair."""

    __slots__ = {
        "basis": "The basis: common practice.",
        "mass_g": "The same in the shades of this mix.",
        "shade": (
            "The neutral shade of the shop nearest to the target; none where the shop has no neutral permanent shade."
        ),
        "share_percent": "Share of all shades in the bowl.",
    }
    basis: _Basis
    mass_g: Bounds[float]
    shade: str | None
    share_percent: Bounds[float]


@dataclass(frozen=True)
class NeutralisingDose(Record):
    """How much of a neutralising shade balances the exposed warmth, in a mix with a carrier shade."""

    __slots__ = {
        "basis": "The basis: assumed.",
        "finding": "What follows for the bowl.",
        "mass_g": "The same in a bowl of shades.",
        "share_percent": (
            "Share of the neutralising shade that brings the hair nearest to natural hair as light as it is then, with "
            "its bounds over the assumptions of the model. More than the best estimate over-tones by the model; more "
            "than the upper bound under all assumptions."
        ),
        "warmth_before_chroma": "Warmth before toning: CIELAB a\\* and b\\* away from natural hair as light as this.",
        "warmth_left_chroma": "Warmth that is left at this share; it cannot be taken away with these shades.",
        "warmth_without_chroma": "Warmth under the carrier alone.",
    }
    basis: _Basis
    finding: Finding
    mass_g: Bounds[float]
    share_percent: Bounds[float]
    warmth_before_chroma: Bounds[float]
    warmth_left_chroma: Bounds[float]
    warmth_without_chroma: Bounds[float]


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
class PrePigmentation(Record):
    """Warm pigment to put back before lightened hair is taken darker."""

    __slots__ = {
        "finding": "What to say about it.",
        "level": "The level to put it on at: one level lighter than the target.",
        "tone": (
            "The tone to put back first: the pigment that natural hair would show between the target and one level "
            "above it."
        ),
    }
    finding: Finding
    level: float
    tone: tuple[TonePart, ...]


@dataclass(frozen=True)
class TonerPart(Record):
    """One shade of a mix, weighable."""

    __slots__ = {
        "code": "The code on the tube.",
        "mass_g": "Mass to weigh.",
        "share_percent": "Share of the mix.",
    }
    code: str
    mass_g: float
    share_percent: float


@dataclass(frozen=True)
class PrePigmentMix(Record):
    """The shade of the user's own chart to put warmth back with, weighed."""

    __slots__ = {
        "part": "The shade whose colour on white hair is nearest to that, with the whole bowl.",
        "residual": "From the shade to what the rule asks for.",
        "wanted": "The level and tone that the rule asks for.",
    }
    part: TonerPart
    residual: Difference
    wanted: PrePigmentation


@dataclass(frozen=True)
class SectionLook(Record):
    """How a section with lightened strands among others reads from a distance."""

    __slots__ = {
        "basis": "The basis: assumed.",
        "caveat": "What the figures leave out.",
        "contrast": "From the strands left to the lightened ones.",
        "mixed": "The colour that the eye mixes: the light of both, by their shares.",
        "perceived_level": "The level that natural hair as light as this has, with its bounds.",
        "reads_as_one": "Whether two readings of one tress differ as much: then the strands do not show.",
    }
    basis: _Basis
    caveat: str
    contrast: Difference
    mixed: Swatch
    perceived_level: Bounds[float]
    reads_as_one: bool


@dataclass(frozen=True)
class SectionNeutralising(Record):
    """How much of a shade of the chart balances the warmth of a section, in a bowl with a neutral or clear shade."""

    __slots__ = {
        "carrier": "The shade that makes up the rest of the bowl.",
        "dose": "Grams and share, with bounds.",
        "neutraliser": (
            "The shade against the warmth: of the shop, the complement or beside it, nearest to the level of the hair."
        ),
    }
    carrier: str
    dose: NeutralisingDose
    neutraliser: str


@dataclass(frozen=True)
class UnderlyingPigment(Record):
    """The warm colour left when hair is lightened to a level, and the tone that counteracts it."""

    __slots__ = {
        "exposed": (
            "The exposed hue as a range, from the darker row to the lighter one; they coincide for a whole level."
        ),
        "level": "The level asked about.",
        "neutraliser": "The neutralising hue as a range in the same order, or nothing where none is visible.",
        "visibility": "How strongly it shows, from the darker row to the lighter one.",
        "words": "The words of the list, from the darker row to the lighter one (the same for a whole level).",
    }
    exposed: tuple[_Hue, _Hue]
    level: float
    neutraliser: tuple[_Hue, _Hue] | None
    visibility: tuple[_Visibility, _Visibility]
    words: tuple[str, str]


@dataclass(frozen=True)
class Sourced(Record):
    """A value with its basis."""

    __slots__ = {
        "basis": "What it rests on.",
        "citation": "The citation, where there is one.",
        "value": "The value.",
    }
    basis: _Basis
    citation: Citation | None
    value: UnderlyingPigment


@dataclass(frozen=True)
class SectionColour(Record):
    """The colour side of one section."""

    __slots__ = {
        "change_levels": "Levels to lift (positive) or to deposit (negative).",
        "exposed": (
            "Warm pigment that shows at the target level and the tone that neutralises it; absent where nothing is "
            "lifted."
        ),
        "exposed_swatch": "The hair when it is lightened and not toned; absent where nothing is lifted.",
        "from_level": "The levels that it has now; the estimate is the darkest stretch.",
        "level_rule": "What the level rules of permanent colour expect; absent for every other product.",
        "look": "How the area reads from a distance; absent where the file does not say how much of its hair is taken.",
        "measured_with": "What it was measured with, where it was.",
        "natural": "The hair as it is now, modelled from its level.",
        "natural_shade": "The natural shade for white hair; absent where no permanent colour goes on white hair.",
        "neutralising": (
            "How much of a shade balances the warmth; absent without a toner, or without a shade for it in the shop."
        ),
        "pre_pigment": "The pigment to put back before lightened hair goes darker; absent where none is needed.",
        "section": "The section; the mix of this name says what is put on it.",
        "start": "How the hair before toning is known: measured, as seen, or modelled.",
        "swatch": "The hair at the end: under its toner where one goes on it, else at its target.",
        "target_level": "Level wanted.",
        "target_tone": "Tone wanted, in the words of the file.",
        "toner": "The toner that goes on it.",
    }
    change_levels: Bounds[float]
    exposed: Sourced | None
    exposed_swatch: Swatch | None
    from_level: Bounds[float]
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
class SectionLift(Record):
    """Lift against time of one lightened section. Times count from its own first strand unless they say otherwise."""

    __slots__ = {
        "chance_percent": "The chance that the first strand reaches the target as planned.",
        "chance_with_a_fresh_mix_percent": "The same after a second, fresh application of the same time.",
        "first_strand_level": "Its first strand when it is rinsed as planned: median and 80 % interval.",
        "from_level": "The level it starts from: the darkest stretch.",
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
        "visits": "How many such visits reach it in 80 of 100 cases; absent where four do not.",
    }
    chance_percent: float
    chance_with_a_fresh_mix_percent: float
    first_strand_level: Bounds[float]
    from_level: float
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
    visits: int | None


@dataclass(frozen=True)
class StatedNotUsed(Record):
    """A stated fact that is not used."""

    __slots__ = {
        "field": "Its field in the file.",
        "why": "What it would be for.",
    }
    field: str
    why: str


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
        "rinse_by_min": "When it is to be rinsed at the latest: as planned, and never beyond a product's own limit.",
        "stage": "Which of these it is.",
    }
    applied_min: float
    begin_min: float
    look_at_last_min: float | None
    look_at_min: tuple[float, ...]
    mix_at_min: tuple[float, ...]
    name: str
    number: int
    rinse_by_min: float
    stage: _WorkStage


@dataclass(frozen=True)
class TogetherSection(Record):
    """One of them."""

    __slots__ = {
        "at_rinse_level": "Level of the middle strand at the common rinse: median and 80 % interval.",
        "begin_min": "When its application begins.",
        "reaches_min": "When its middle strand is expected at the target (median).",
        "section": "Its name.",
    }
    at_rinse_level: Bounds[float]
    begin_min: float
    reaches_min: float
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


@dataclass(frozen=True)
class PlanData(Record):
    """A service plan: what to weigh, in which order, what was checked, what it costs."""

    __slots__ = {
        "blocked": "Whether any finding says stop: then do not begin.",
        "cautions": "Cautions for what is in the bowls.",
        "chair": "How long the chair is taken.",
        "colour": "What each section needs of colour.",
        "colourist": "Who works.",
        "contrasts": "How far sections that lie beside each other are apart.",
        "defaults": "Defaults that were used because the file did not say.",
        "findings": "Checks, the worst first.",
        "foilwork": "Version of foilwork that made it.",
        "format": "Version of the form of this data.",
        "guest": "A code for the guest.",
        "habits": "How the shop writes; it changes sheets and cards, no number.",
        "hair": "The hair as stated.",
        "head": "Hair and foils, section by section, and how the head will read.",
        "jurisdiction": "Whose law the limits are from.",
        "lift": "How light each lightened section gets, how fast, how sure.",
        "mixes": "What to mix, in the running order.",
        "money": "What it costs and what to charge; absent without prices.",
        "not_computed": "What a reader might look for and will not find, with the reason.",
        "notes": "Notes of the file.",
        "order": "The running order.",
        "order_basis": "Whose order the running order is.",
        "start": "When it starts, as the file says.",
        "stated_not_used": "Facts of the file that no check or computation reads.",
        "strengths": "The strengths that the plan chose, where sections left theirs out.",
        "title": "What the service is called.",
        "together": "What makes those sections finish together, or why they do not.",
    }
    blocked: bool
    cautions: tuple[Caution, ...]
    chair: ChairTime
    colour: tuple[SectionColour, ...]
    colourist: str | None
    contrasts: tuple[Contrast, ...]
    defaults: tuple[DefaultUsed, ...]
    findings: tuple[Finding, ...]
    foilwork: str
    format: int
    guest: str | None
    habits: Habits
    hair: Hair
    head: HeadPlan
    jurisdiction: _Jurisdiction | None
    lift: tuple[SectionLift, ...]
    mixes: tuple[Mix, ...]
    money: MoneyPlan | None
    not_computed: tuple[NotComputed, ...]
    notes: str | None
    order: tuple[Step, ...]
    order_basis: _OrderBasis
    start: str
    stated_not_used: tuple[StatedNotUsed, ...]
    strengths: tuple[ChosenStrength, ...]
    title: str
    together: tuple[TogetherPlan, ...]


@dataclass(frozen=True)
class TonePart(Record):
    """One hue of a tone."""

    __slots__ = {
        "hue": "The hue.",
        "share_percent": "Its share of the tone, in percent.",
    }
    hue: _Hue
    share_percent: float
