"""What a plan is made of, written from its JSON Schema by ``make stubs``: ``plan.mixes[0].bowls``.

The objects are frozen, compare, hash, pickle, match and turn ``to_dict()``. Every name ends with the unit of its
numbers; what is estimated is ``foilwork.Bounds``.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from foilwork._native.finding import Finding
from foilwork._record import Record
from foilwork.planned.bowls import (
    Bowl,
    BowlCard,
    CardClock,
    CardMinutes,
    ChairTime,
    FirstPart,
    FirstStep,
    Mix,
    Step,
    WeighedPart,
)
from foilwork.planned.colour import (
    Contrast,
    Difference,
    LevelRule,
    NaturalShadeDose,
    NeutralisingDose,
    PrePigmentation,
    PrePigmentMix,
    SectionColour,
    SectionLook,
    SectionNeutralising,
    Sourced,
    Swatch,
    TonePart,
    TonerPart,
    UnderlyingPigment,
)
from foilwork.planned.consultation import (
    Agreed,
    AgreedPrice,
    Agreement,
    Alternative,
    Consent,
    ConsultationPlan,
    DatedVisit,
    Decision,
    HistoryGap,
    Lapsed,
    LapsedAgreement,
    PastService,
    SaidBefore,
    TestEffect,
    WishHeld,
    WishSection,
)
from foilwork.planned.day import DayPlan, Floor, FoilGroup, OrderedBy, Piece, SectionTimes, SectionWork, Timeline
from foilwork.planned.hair import Band, BandedStrand, Existing, Habits, Hair, TestDone
from foilwork.planned.head import (
    Change,
    HeadLook,
    HeadPlan,
    HeadReading,
    InPlace,
    Meeting,
    MeetingShade,
    OutlineChange,
    OutlineLook,
    PartReading,
    Region,
    RegionFoils,
    RegionLook,
    RootShadowPlan,
    ShadowLength,
    ShadowStep,
    Template,
    ZoneLook,
)
from foilwork.planned.history import (
    CareAdvice,
    DemandLesson,
    FoilLesson,
    HomeCare,
    KeptMixture,
    KeptPart,
    KeptRecord,
    KeptSection,
    Learned,
    Lessons,
    Rebooking,
    Summary,
    Takings,
    WasteTrend,
)
from foilwork.planned.lift import (
    ChosenStrength,
    ExpectedLook,
    Factor,
    RejectedStrength,
    SectionLift,
    SeenNow,
    TimeTo,
    TogetherPlan,
    TogetherSection,
    Visit,
)
from foilwork.planned.money import (
    Booking,
    CostLineWithShare,
    CostRange,
    CostTable,
    LeftOut,
    MoneyPlan,
    PriceAt,
    PricedBy,
    PriceRange,
    SetPrice,
    TaxedPrice,
)
from foilwork.planned.notes import Caution, DefaultUsed, NotComputed, StatedNotUsed
from foilwork.planned.sections import (
    Applying,
    ClassDecision,
    CountedPanels,
    EndsPlan,
    LevelsAlong,
    LevelStretch,
    LowlightPlace,
    Lowlights,
    Rejected,
    RejectedTechnique,
    SectionPlan,
    TechniqueDecision,
    ZoneHair,
)
from foilwork.planned.stock import ConsumableLine, StockLine, StockPlan, Substitute

if TYPE_CHECKING:
    from foilwork._words import _Jurisdiction, _OrderBasis

__all__ = [
    "Agreed",
    "AgreedPrice",
    "Agreement",
    "Alternative",
    "Applying",
    "Band",
    "BandedStrand",
    "Booking",
    "Bowl",
    "BowlCard",
    "CardClock",
    "CardMinutes",
    "CareAdvice",
    "Caution",
    "ChairTime",
    "Change",
    "ChosenStrength",
    "ClassDecision",
    "Consent",
    "ConsultationPlan",
    "ConsumableLine",
    "Contrast",
    "CostLineWithShare",
    "CostRange",
    "CostTable",
    "CountedPanels",
    "DatedVisit",
    "DayPlan",
    "Decision",
    "DefaultUsed",
    "DemandLesson",
    "Difference",
    "EndsPlan",
    "Existing",
    "ExpectedLook",
    "Factor",
    "FirstPart",
    "FirstStep",
    "Floor",
    "FoilGroup",
    "FoilLesson",
    "Habits",
    "Hair",
    "HeadLook",
    "HeadPlan",
    "HeadReading",
    "HistoryGap",
    "HomeCare",
    "InPlace",
    "KeptMixture",
    "KeptPart",
    "KeptRecord",
    "KeptSection",
    "Lapsed",
    "LapsedAgreement",
    "Learned",
    "LeftOut",
    "Lessons",
    "LevelRule",
    "LevelStretch",
    "LevelsAlong",
    "LowlightPlace",
    "Lowlights",
    "Meeting",
    "MeetingShade",
    "Mix",
    "MoneyPlan",
    "NaturalShadeDose",
    "NeutralisingDose",
    "NotComputed",
    "OrderedBy",
    "OutlineChange",
    "OutlineLook",
    "PartReading",
    "PastService",
    "Piece",
    "PlanData",
    "PrePigmentMix",
    "PrePigmentation",
    "PriceAt",
    "PriceRange",
    "PricedBy",
    "Rebooking",
    "Region",
    "RegionFoils",
    "RegionLook",
    "Rejected",
    "RejectedStrength",
    "RejectedTechnique",
    "RootShadowPlan",
    "SaidBefore",
    "SectionColour",
    "SectionLift",
    "SectionLook",
    "SectionNeutralising",
    "SectionPlan",
    "SectionTimes",
    "SectionWork",
    "SeenNow",
    "SetPrice",
    "ShadowLength",
    "ShadowStep",
    "Sourced",
    "StatedNotUsed",
    "Step",
    "StockLine",
    "StockPlan",
    "Substitute",
    "Summary",
    "Swatch",
    "Takings",
    "TaxedPrice",
    "TechniqueDecision",
    "Template",
    "TestDone",
    "TestEffect",
    "TimeTo",
    "Timeline",
    "TogetherPlan",
    "TogetherSection",
    "TonePart",
    "TonerPart",
    "UnderlyingPigment",
    "Visit",
    "WasteTrend",
    "WeighedPart",
    "WishHeld",
    "WishSection",
    "ZoneHair",
    "ZoneLook",
]


@dataclass(frozen=True)
class PlanData(Record):
    """A service plan: what to weigh, in which order, what was checked, what it costs."""

    __slots__ = {
        "blocked": "Whether any finding says stop: then do not begin.",
        "booking": "What to book it as, and what the price list says for it.",
        "cautions": "Cautions for what is in the bowls.",
        "chair": "How long the chair is taken.",
        "colour": "What each section needs of colour.",
        "colourist": "Who works.",
        "consulted": (
            "What was said before the service, held against the plan; absent where the file has no consultation."
        ),
        "contrasts": "How far sections that lie beside each other are apart.",
        "day": "Who does what when, in the order of the sheet and in the best order; absent for more than 40 sections.",
        "defaults": "Defaults that were used because the file did not say.",
        "findings": "Checks, the worst first.",
        "first_steps": "Steps before the colour, planned or asked for; the planned ones come before the running order.",
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
        "stock": "What is taken from the shelf, against what is in hand.",
        "strengths": "The strengths that the plan chose, where sections left theirs out.",
        "title": "What the service is called.",
        "together": "What makes those sections finish together, or why they do not.",
    }
    blocked: bool
    booking: Booking
    cautions: tuple[Caution, ...]
    chair: ChairTime
    colour: tuple[SectionColour, ...]
    colourist: str | None
    consulted: SaidBefore | None
    contrasts: tuple[Contrast, ...]
    day: DayPlan | None
    defaults: tuple[DefaultUsed, ...]
    findings: tuple[Finding, ...]
    first_steps: tuple[FirstStep, ...]
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
    stock: StockPlan
    strengths: tuple[ChosenStrength, ...]
    title: str
    together: tuple[TogetherPlan, ...]
