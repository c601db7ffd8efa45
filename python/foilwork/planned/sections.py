"""What the sections of the head take in a plan, written from the JSON Schema of a plan by ``make stubs``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from foilwork._native import Bounds
from foilwork._native.source import Citation
from foilwork._record import Record

if TYPE_CHECKING:
    from foilwork._words import _AppliedBy, _Basis, _ExtraStep, _Practice, _ProductKind, _Softness, _Technique, _Zone

__all__ = [
    "Applying",
    "ClassDecision",
    "CountedPanels",
    "EndsPlan",
    "LevelStretch",
    "LevelsAlong",
    "LowlightPlace",
    "Lowlights",
    "Rejected",
    "RejectedTechnique",
    "SectionPlan",
    "TechniqueDecision",
    "ZoneHair",
]


@dataclass(frozen=True)
class Applying(Record):
    """How long a section takes to put on, and what that rests on."""

    __slots__ = {
        "apply_min": "How long; the plan takes the best estimate.",
        "basis": "What it rests on.",
        "by": "What it is from.",
        "by_foils_min": "The foils times these minutes.",
        "foil_basis": "What those minutes for a foil rest on.",
        "foil_min": "Minutes for a foil, whether they are taken or not; absent without foils.",
    }
    apply_min: Bounds[float]
    basis: _Basis
    by: _AppliedBy
    by_foils_min: Bounds[float] | None
    foil_basis: _Basis | None
    foil_min: Bounds[float] | None


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
class CountedPanels(Record):
    """Panels that are worked foil by foil."""

    __slots__ = {
        "across": "Foils beside each other in a row.",
        "count": "How many.",
        "height_cm": "Across the partings, from the first to the last.",
        "left_between_cm": "What is left out between two foils.",
        "subsection_cm": "Thickness of a subsection.",
    }
    across: int
    count: int
    height_cm: float
    left_between_cm: Bounds[float]
    subsection_cm: Bounds[float]


@dataclass(frozen=True)
class EndsPlan(Record):
    """Extra ends that are painted between foils."""

    __slots__ = {
        "from_cm": "Where they begin, from the scalp.",
        "hair_g": "The hair that carries mixture.",
        "share_percent": "Of all the hair, what is painted there.",
        "takes_g": "The mixture on it.",
    }
    from_cm: float
    hair_g: Bounds[float]
    share_percent: float
    takes_g: Bounds[float]


@dataclass(frozen=True)
class LevelStretch(Record):
    """Centimetres that read as one level."""

    __slots__ = {
        "from_cm": "Where they begin, from the scalp.",
        "level": "How light they read, their mean.",
        "to_cm": "Where they end.",
    }
    from_cm: float
    level: Bounds[float]
    to_cm: float


@dataclass(frozen=True)
class LevelsAlong(Record):
    """How light a section reads from the scalp to the ends, before any root shadow."""

    __slots__ = {
        "basis": "What the levels rest on: how the technique lies along the strand, and the colour model.",
        "stretches": "Centimetres beside each other that read as one level, to half a level.",
        "taken_percent": (
            "Of the hair of its area, what is taken: the rest between it counts in. Absent where that is not known: "
            "then it is the taken hair alone."
        ),
    }
    basis: _Basis
    stretches: tuple[LevelStretch, ...]
    taken_percent: float | None


@dataclass(frozen=True)
class LowlightPlace(Record):
    """Where lowlights go."""

    __slots__ = {
        "behind_foils": (
            "Numbers of the light foils behind each of which one goes; a number that is there twice has two behind it."
        ),
        "foils": "Foils of them there.",
        "region": "The region; absent where the section does not say where it lies.",
    }
    behind_foils: tuple[int, ...]
    foils: int
    region: str | None


@dataclass(frozen=True)
class Lowlights(Record):
    """Darker strands for depth."""

    __slots__ = {
        "foils": "Foils of them; absent where the hair of a foil is not known.",
        "level": "Their level.",
        "light_foils_between": (
            "Light foils between two of them, so that they lie evenly; absent where there are none that are counted."
        ),
        "share_percent": (
            "The share of the section's hair that is made darker, by what the section may read as without them."
        ),
    }
    foils: Bounds[int] | None
    level: float
    light_foils_between: int | None
    share_percent: Bounds[float]


@dataclass(frozen=True)
class RejectedTechnique(Record):
    """A technique that was not chosen."""

    __slots__ = {
        "does_it": "Whether it would do all the same, with more practice.",
        "technique": "Which.",
        "why": "Why not.",
    }
    does_it: bool
    technique: _Technique
    why: str


@dataclass(frozen=True)
class TechniqueDecision(Record):
    """The technique for a section, with its reasons."""

    __slots__ = {
        "basis": "What the rules rest on.",
        "citation": "Where they come from.",
        "line_shows_after_weeks": "When its regrowth shows.",
        "practice": "How much practice it asks for.",
        "rejected": "What was considered and not taken.",
        "technique": "The plainest that does it; absent where none does.",
    }
    basis: _Basis
    citation: Citation
    line_shows_after_weeks: Bounds[float] | None
    practice: _Practice | None
    rejected: tuple[RejectedTechnique, ...]
    technique: _Technique | None


@dataclass(frozen=True)
class ZoneHair(Record):
    """Hair in a zone of the strand, of the head or of a section."""

    __slots__ = {
        "hair_g": "Its mass.",
        "surface_cm2": "Its surface.",
        "zone": "The zone.",
    }
    hair_g: Bounds[float]
    surface_cm2: Bounds[float]
    zone: _Zone


@dataclass(frozen=True)
class SectionPlan(Record):
    """What one section takes."""

    __slots__ = {
        "along": "How light it reads from the scalp to the ends; absent where the length of the hair is not stated.",
        "applying": "How long it takes to put on, and what that rests on.",
        "ends_between": (
            "Extra ends between the foils, which are in `hair_g` and `takes_g`; absent where none are painted."
        ),
        "film_g": "Of that, the film on the scalp; absent where the mixture does not touch it.",
        "first_foil": "Number of its first foil in the order of the work, counted over all sections.",
        "foils": "Foils stated, or counted on its panels.",
        "hair_g": "Its hair that carries mixture; absent where the length of the hair is not stated.",
        "hairs": "How many hairs that is.",
        "last_foil": "Number of its last foil.",
        "line_shows_after_weeks": "When the regrowth shows.",
        "lowlight_places": (
            "Where they go; empty where there are none, or where the light foils beside them are not counted."
        ),
        "lowlights": "Darker strands for the depth that is wanted; absent where none is.",
        "mix_per_foil_g": "Mixture for a foil.",
        "panels": "The panels that they were counted on; absent where no `panel` is stated.",
        "planned_class": (
            "The class that is planned instead or as well; absent where its mix holds neither lightener nor shades."
        ),
        "product_class": "The class of product that does it, with what was not taken and why.",
        "root_shadow_cm": (
            "How long the root shadow is there; absent where the file has none or states its length, and where the "
            "section does not say in which `regions` it lies."
        ),
        "section": "The section.",
        "share_of_panel_percent": "Of the hair on its panels, what is picked.",
        "share_percent": "Of all the hair, what it takes: stated, or from the gradient.",
        "softness": "How the start looks.",
        "start_cm": "From the scalp to the first colour.",
        "surface_cm2": (
            "The surface of the hair that carries mixture; absent where the length of the hair is not stated."
        ),
        "takes_g": "The mixture that this hair takes, without spare.",
        "technique": "How its hair is taken.",
        "technique_choice": "The technique for the start and the upkeep wanted; absent where the file wants none.",
        "used_g": "What the same section took before, by `used_g`.",
        "zones": (
            "Its hair that carries mixture, by zone of the strand; empty where the length of the hair is not stated."
        ),
    }
    along: LevelsAlong | None
    applying: Applying
    ends_between: EndsPlan | None
    film_g: Bounds[float] | None
    first_foil: int | None
    foils: Bounds[int] | None
    hair_g: Bounds[float] | None
    hairs: Bounds[float]
    last_foil: int | None
    line_shows_after_weeks: Bounds[float]
    lowlight_places: tuple[LowlightPlace, ...]
    lowlights: Lowlights | None
    mix_per_foil_g: Bounds[float] | None
    panels: CountedPanels | None
    planned_class: _ProductKind | None
    product_class: ClassDecision
    root_shadow_cm: Bounds[float] | None
    section: str
    share_of_panel_percent: Bounds[float] | None
    share_percent: float
    softness: _Softness
    start_cm: Bounds[float]
    surface_cm2: Bounds[float] | None
    takes_g: Bounds[float] | None
    technique: _Technique
    technique_choice: TechniqueDecision | None
    used_g: float | None
    zones: tuple[ZoneHair, ...]
