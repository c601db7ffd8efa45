"""The words of a plan's choices, from its JSON Schema by ``make stubs``; for type checkers alone."""

from typing import Literal, TypeAlias

_Basis: TypeAlias = Literal["published", "derived", "measured", "stated", "common-practice", "assumed"]
_Consulted: TypeAlias = Literal["retrieved", "library", "computed", "from-memory", "common-practice"]
_CostKind: TypeAlias = Literal[
    "product",
    "additive",
    "consumables",
    "laundry",
    "labour",
    "overhead",
    "card-fee",
    "other",
]
_Country: TypeAlias = Literal[
    "AT",
    "AU",
    "BE",
    "CA",
    "CH",
    "CN",
    "CZ",
    "DE",
    "DK",
    "ES",
    "FI",
    "FR",
    "GB",
    "IE",
    "IT",
    "JP",
    "NL",
    "NO",
    "NZ",
    "PL",
    "PT",
    "SE",
    "US",
]
_CountsFrom: TypeAlias = Literal["first-strand", "end-of-application"]
_DensityByEye: TypeAlias = Literal["low", "medium", "high"]
_Elasticity: TypeAlias = Literal["good", "reduced", "poor"]
_ExposedBasis: TypeAlias = Literal["measured", "seen", "modelled", "white"]
_ExtraStep: TypeAlias = Literal["pre-soften", "pre-pigment", "clean-first"]
_HistoryFlag: TypeAlias = Literal[
    "metallic-salts",
    "henna",
    "black-henna-tattoo",
    "reaction-to-hair-colour",
    "reaction-to-lightener",
    "asthma",
    "lightened",
    "straightened-or-permed",
    "under-sixteen",
    "permanent-colour",
]
_Hue: TypeAlias = Literal[
    "red",
    "red-orange",
    "orange",
    "yellow-orange",
    "yellow",
    "yellow-green",
    "green",
    "blue-green",
    "blue",
    "blue-violet",
    "violet",
    "red-violet",
]
_Instrument: TypeAlias = Literal["spectrophotometer", "calibrated-photograph", "photograph"]
_Jurisdiction: TypeAlias = Literal["EU", "GB", "US", "CA", "AU", "NZ", "CN", "JP", "ASEAN", "PL"]
_LeftOutCost: TypeAlias = Literal["pack-price", "foils", "labour", "on-costs", "paid-hours", "other-work", "overhead"]
_Naming: TypeAlias = Literal["european", "us"]
_Next: TypeAlias = Literal["rinse", "go-on", "fresh-mix", "next-visit"]
_OrderBasis: TypeAlias = Literal["file", "plan"]
_PartKind: TypeAlias = Literal["lightener", "colour", "developer", "diluent", "additive"]
_Porosity: TypeAlias = Literal["low", "normal", "high", "uneven"]
_ProductKind: TypeAlias = Literal["permanent", "high-lift", "quasi-permanent", "semi-permanent", "lightener"]
_Rounding: TypeAlias = Literal[
    "midpoint-away-from-zero",
    "midpoint-nearest-even",
    "midpoint-toward-zero",
    "to-zero",
    "away-from-zero",
    "to-negative-infinity",
    "to-positive-infinity",
]
_Rule: TypeAlias = Literal[
    "history",
    "earlier-reaction",
    "airways",
    "age",
    "black-henna",
    "metal-salts",
    "scalp",
    "elasticity",
    "skin-test",
    "skin-test-age",
    "strand-test",
    "law",
    "developer",
    "time",
    "look",
    "sequence",
    "rinse",
    "untoned",
    "on-scalp",
    "earlier-service",
    "overlap",
    "lift",
    "alkalinity",
    "finish-together",
    "level-seen",
    "strand-book",
    "white-hair",
    "ratio",
    "scale",
    "pace",
    "depth-at-root",
    "hairline",
    "transition",
    "contrast",
    "pre-pigmentation",
    "toner-found",
    "toner-level",
    "over-neutralising",
    "porosity",
    "cool-dose",
]
_Scalp: TypeAlias = Literal["intact", "irritated", "broken"]
_ServiceClass: TypeAlias = Literal["regrowth", "partial", "half", "full"]
_Softness: TypeAlias = Literal["line", "soft", "diffuse"]
_Strain: TypeAlias = Literal["slight", "usual", "high", "severe"]
_Technique: TypeAlias = Literal["weave", "slice", "back-comb", "block", "freehand", "freehand-in-foil", "regrowth"]
_TestResult: TypeAlias = Literal["clear", "reaction", "pending"]
_Texture: TypeAlias = Literal["fine", "medium", "coarse"]
_Unknown: TypeAlias = Literal[
    "lift-against-time",
    "finish-together",
    "hair-mass",
    "foil-layout",
    "compositions",
    "ph",
    "money",
    "toner",
]
_Verdict: TypeAlias = Literal["stop", "warning", "not-judged", "note", "passed"]
_Visibility: TypeAlias = Literal["hidden", "dark", "strong", "weak", "pale", "very-pale"]
_White: TypeAlias = Literal["d65-10-degrees", "d65-2-degrees"]
_Wish: TypeAlias = Literal["bright-outline", "bright-front", "even"]
_WorkStage: TypeAlias = Literal["section", "toner", "root-shadow"]
_Zone: TypeAlias = Literal["roots", "mid-lengths", "ends", "lengths", "whole"]
