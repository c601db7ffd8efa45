"""The words of choices, in a plan and of functions, by ``make stubs``; for type checkers alone."""

from typing import Literal, TypeAlias

_AlternativeKind: TypeAlias = Literal["leave", "visits", "product-class", "developer", "technique"]
_AppliedBy: TypeAlias = Literal["apply-min", "section", "records", "salon", "assumed"]
_Audience: TypeAlias = Literal["professional", "general"]
_Basis: TypeAlias = Literal["published", "derived", "measured", "stated", "common-practice", "assumed"]
_Booster: TypeAlias = Literal["persulfate", "mild", "none"]
_ChairClock: TypeAlias = Literal["day", "sheet"]
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
_Cover: TypeAlias = Literal["foil", "open-air"]
_Curl: TypeAlias = Literal["straight", "wavy", "curly", "coily"]
_Denominator: TypeAlias = Literal["recorded-time", "paid-time", "rostered-time", "opening-time", "standard-time"]
_DensityByEye: TypeAlias = Literal["low", "medium", "high"]
_DiameterMethod: TypeAlias = Literal["caliper", "scalp-camera"]
_Elasticity: TypeAlias = Literal["good", "reduced", "poor"]
_ExposedBasis: TypeAlias = Literal["measured", "seen", "modelled", "white"]
_ExtraStep: TypeAlias = Literal["pre-soften", "pre-pigment", "clean-first", "pre-lighten"]
_Form: TypeAlias = Literal[
    "free-base",
    "sulfate",
    "hydrochloride",
    "dihydrochloride",
    "tetrahydrochloride",
    "h2o2",
    "h2o2-released",
    "nh3",
    "so2",
    "strontium",
    "persulfate",
]
_Go: TypeAlias = Literal["stop", "restrict", "proceed"]
_Group: TypeAlias = Literal["african", "asian", "european"]
_Hazard: TypeAlias = Literal["peroxide", "persulfate", "ammonia", "oxidative-dye", "resorcinol", "unknown"]
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
    "skin-disease",
    "medicine",
    "pregnancy",
    "hair-loss",
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
_MolarVolume: TypeAlias = Literal["ideal-1atm", "real-1atm", "ideal-1bar", "real-1bar", "textbook"]
_Naming: TypeAlias = Literal["european", "us"]
_Next: TypeAlias = Literal["rinse", "go-on", "look-now", "fresh-mix", "next-visit"]
_Objective: TypeAlias = Literal["least-cost", "fewest-bottles", "least-leftover"]
_ObservedStage: TypeAlias = Literal[
    "consultation",
    "formula",
    "preparation",
    "application",
    "development",
    "afterwards",
    "money",
]
_OrderBasis: TypeAlias = Literal["file", "plan"]
_OrderRule: TypeAlias = Literal[
    "stated",
    "darkest-first",
    "slowest-first",
    "mid-lengths-first",
    "outline-first",
    "one-foil",
    "longest",
]
_PartKind: TypeAlias = Literal["lightener", "colour", "developer", "diluent", "remover", "additive"]
_PartLine: TypeAlias = Literal["none", "centre", "left", "right"]
_Party: TypeAlias = Literal["guest", "guardian", "doctor"]
_PastPlace: TypeAlias = Literal["here", "elsewhere", "home"]
_PastWork: TypeAlias = Literal[
    "lightener",
    "permanent-colour",
    "toner",
    "semi-permanent",
    "henna",
    "metallic-colour",
    "straightened",
    "permed",
    "colour-remover",
    "unknown",
]
_PieceKind: TypeAlias = Literal["mix", "apply", "look", "walk", "rinse"]
_Porosity: TypeAlias = Literal["low", "normal", "high", "uneven"]
_Practice: TypeAlias = Literal["plain", "practised", "demanding"]
_ProductKind: TypeAlias = Literal["permanent", "high-lift", "quasi-permanent", "semi-permanent", "lightener"]
_Purpose: TypeAlias = Literal["oxidative-colour", "non-oxidative-colour", "lightening", "lash-colour"]
_Reader: TypeAlias = Literal["eye", "instrument"]
_Rest: TypeAlias = Literal["natural", "refused"]
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
    "health",
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
    "wish",
    "overlap",
    "lift",
    "alkalinity",
    "finish-together",
    "level-seen",
    "strand-book",
    "white-hair",
    "ratio",
    "amount",
    "stock",
    "list-price",
    "scale",
    "pace",
    "depth-at-root",
    "hairline",
    "transition",
    "contrast",
    "head-reads",
    "technique",
    "regrowth",
    "first-step",
    "pre-pigmentation",
    "toner-found",
    "toner-level",
    "over-neutralising",
    "porosity",
    "cool-dose",
]
_Scale: TypeAlias = Literal["european-10", "us-10", "twelve", "japanese-20"]
_Scalp: TypeAlias = Literal["intact", "irritated", "broken"]
_ServiceClass: TypeAlias = Literal["regrowth", "partial", "half", "full"]
_Softness: TypeAlias = Literal["line", "soft", "diffuse"]
_Solidity: TypeAlias = Literal["solid", "soft"]
_SolutionKind: TypeAlias = Literal["aqueous", "emulsion"]
_StepEnd: TypeAlias = Literal["blot", "rinse"]
_StockCover: TypeAlias = Literal["covered", "may-run-short", "short", "not-counted"]
_Strain: TypeAlias = Literal["slight", "usual", "high", "severe"]
_StrengthUnit: TypeAlias = Literal["% w/w", "% w/v", "g/L", "mol/L", "mol/kg", "N", "% active oxygen", "volumes"]
_Technique: TypeAlias = Literal["weave", "slice", "back-comb", "block", "freehand", "freehand-in-foil", "regrowth"]
_TestKind: TypeAlias = Literal["skin", "strand", "incompatibility", "elasticity", "porosity"]
_TestResult: TypeAlias = Literal["clear", "reaction", "pending"]
_Texture: TypeAlias = Literal["fine", "medium", "coarse"]
_Topic: TypeAlias = Literal[
    "peroxide-units",
    "dilution",
    "ratio",
    "weighing",
    "limits",
    "level",
    "pigment",
    "hair",
    "timing",
    "costing",
    "price",
    "tax",
    "break-even",
]
_Toward: TypeAlias = Literal["up", "down", "nearest"]
_TrainingUnit: TypeAlias = Literal[
    "au-shbhcls002",
    "au-shbhcls004",
    "au-shbhcls006",
    "uk-skahdbr6",
    "uk-skahdbr7",
    "uk-d6001010",
    "uk-a6008630",
    "nz-12313",
    "nz-2889",
    "nz-19792",
    "nz-28835",
    "nz-28846",
    "ca-red-seal-f",
]
_Unit: TypeAlias = Literal["g", "ml", "us-fl-oz", "uk-fl-oz", "mL", "US fl oz", "UK fl oz"]
_Unknown: TypeAlias = Literal[
    "lift-against-time",
    "finish-together",
    "hair-mass",
    "curl",
    "foil-layout",
    "dark-foils",
    "compositions",
    "ph",
    "money",
    "toner",
]
_Uptake: TypeAlias = Literal["low", "normal", "high"]
_Verdict: TypeAlias = Literal["stop", "warning", "not-judged", "note", "passed"]
_Visibility: TypeAlias = Literal["hidden", "dark", "strong", "weak", "pale", "very-pale"]
_White: TypeAlias = Literal["d65-10-degrees", "d65-2-degrees"]
_Wish: TypeAlias = Literal["bright-outline", "bright-front", "even"]
_WorkStage: TypeAlias = Literal["section", "toner", "root-shadow"]
_Zone: TypeAlias = Literal["roots", "mid-lengths", "ends", "lengths", "whole"]
