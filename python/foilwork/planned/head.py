"""The head in a plan, written from the JSON Schema of a plan by ``make stubs``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from foilwork._native import Bounds
from foilwork._record import Record
from foilwork.planned.colour import Swatch, TonePart
from foilwork.planned.sections import SectionPlan, ZoneHair

if TYPE_CHECKING:
    from foilwork._words import _Basis, _PartLine, _ServiceClass, _Solidity, _Wish

__all__ = [
    "Change",
    "HeadLook",
    "HeadPlan",
    "HeadReading",
    "InPlace",
    "Meeting",
    "MeetingShade",
    "OutlineChange",
    "OutlineLook",
    "PartReading",
    "Region",
    "RegionFoils",
    "RegionLook",
    "RootShadowPlan",
    "ShadowLength",
    "ShadowStep",
    "Template",
    "ZoneLook",
]


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
class RegionLook(Record):
    """How one region reads."""

    __slots__ = {
        "colour": "The colour itself.",
        "hair_percent": "Its share of all the hair.",
        "lab_l": "How light it reads from where strands merge.",
        "region": "Its name.",
    }
    colour: Swatch
    hair_percent: Bounds[float]
    lab_l: Bounds[float]
    region: str


@dataclass(frozen=True)
class HeadLook(Record):
    """How the head reads."""

    __slots__ = {
        "as_wanted": "Whether it reads as wanted, by the best estimates; absent where nothing is asked for.",
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
    as_wanted: bool | None
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
        "first_foil": "Number of its first foil there, in the order of the work.",
        "last_foil": "Number of its last foil there.",
        "of_region_percent": "How much of the region it is.",
        "region": "The region.",
        "section": "The section.",
    }
    first_foil: int | None
    last_foil: int | None
    of_region_percent: float
    region: str
    section: str


@dataclass(frozen=True)
class OutlineChange(Record):
    """What to change so that the outline reads as wanted: the share of a section, or how it starts."""

    __slots__ = {
        "blend_start": "Whether its start has to be blended: it is a line, and not at the scalp.",
        "light_percent": "Of its hair, what is light behind its start.",
        "section": "The section.",
        "wanted_percent": "What would have to be; the same where only its start is to change.",
    }
    blend_start: bool
    light_percent: float
    section: str
    wanted_percent: float


@dataclass(frozen=True)
class OutlineLook(Record):
    """How solid the outline reads."""

    __slots__ = {
        "as_wanted": "Whether it reads as wanted; absent where nothing is asked for.",
        "basis": "What the bounds of the two looks rest on.",
        "changes": (
            "What to change when it does not: sections in the order of how much their change does. All of them "
            "together are enough."
        ),
        "light_percent": "Of the hair of the outline, what is light behind its start.",
        "reads": "How it reads by the best estimate; absent where it is neither.",
        "sure": "Whether the bounds say the same, and not only the best estimate; absent where nothing is asked for.",
    }
    as_wanted: bool | None
    basis: _Basis
    changes: tuple[OutlineChange, ...]
    light_percent: Bounds[float]
    reads: _Solidity | None
    sure: bool | None


@dataclass(frozen=True)
class PartReading(Record):
    """Where the hair is parted."""

    __slots__ = {
        "line_shows_after_weeks": (
            "When regrowth shows in the first of its sections; absent where no section lies there."
        ),
        "part": "On which side.",
        "regions": "The regions that it runs through; none where the template does not say where its regions lie.",
    }
    line_shows_after_weeks: Bounds[float] | None
    part: _PartLine
    regions: tuple[str, ...]


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
        "place": (
            "Where it lies: left edge, top edge, width, height on a map of 12 by 16, the face at the top; absent where "
            "that is not stated."
        ),
    }
    area_percent: float
    density_percent: Bounds[float]
    front: bool
    inward_percent: float
    name: str
    outline: bool
    place: tuple[float, ...] | None


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
class ZoneLook(Record):
    """How light a region reads along the strand."""

    __slots__ = {
        "ends_lab_l": "L* of the ends.",
        "mid_lengths_lab_l": "L* of the mid-lengths.",
        "region": "The region.",
        "roots_lab_l": "L* of the roots.",
    }
    ends_lab_l: Bounds[float]
    mid_lengths_lab_l: Bounds[float]
    region: str
    roots_lab_l: Bounds[float]


@dataclass(frozen=True)
class HeadReading(Record):
    """How the head will read, and whether that is what was asked for."""

    __slots__ = {
        "look": "How it reads.",
        "outline": "Whether the outline reads solid or soft; absent where no section lies there.",
        "outline_wish": "What the file asks of its outline.",
        "part": "Where the hair is parted, and when regrowth shows there; absent where the file does not say.",
        "places": "Which section lies in which region, and which of its foils.",
        "template": "The regions.",
        "wish": "What the file asks for.",
        "zones": "The same by zone of the strand; empty where the length of the hair is not stated.",
    }
    look: HeadLook
    outline: OutlineLook | None
    outline_wish: _Solidity | None
    part: PartReading | None
    places: tuple[InPlace, ...]
    template: Template
    wish: _Wish | None
    zones: tuple[ZoneLook, ...]


@dataclass(frozen=True)
class MeetingShade(Record):
    """A shade of the shop for where two formulas meet."""

    __slots__ = {
        "apart_ciede2000": "How far it is from the look between the two, on white hair by the model.",
        "code": "Its code.",
    }
    apart_ciede2000: Bounds[float]
    code: str


@dataclass(frozen=True)
class Meeting(Record):
    """Two formulas that meet in a foil so far apart that a shade between them is seen."""

    __slots__ = {
        "first": "The darker section, which goes on first.",
        "level": "The level where they meet: half way between them.",
        "shade": "The shade of the shop that is nearest to it, to blend over a stretch; absent where none is near.",
        "swatch": "How it looks.",
        "then": "The lighter one.",
        "tone": "The tone there: both in equal parts.",
    }
    first: str
    level: float
    shade: MeetingShade | None
    swatch: Swatch
    then: str
    tone: tuple[TonePart, ...]


@dataclass(frozen=True)
class RegionFoils(Record):
    """What a gradient asks for in a region."""

    __slots__ = {
        "foils": "Foils; absent where nobody said how many there are.",
        "of_head_percent": "Of all the hair, how much is taken there.",
        "order": (
            "Its place in the work, from one: the back from below upward, then the front inward to outward, for the "
            "finest hair is done soonest and goes on last (common practice). What lies alike, or where it lies is not "
            "stated, as it is listed."
        ),
        "region": "The region.",
        "start_cm": "Where the colour begins.",
        "taken_percent": "Of the hair there, how much is taken.",
    }
    foils: int | None
    of_head_percent: float
    order: int
    region: str
    start_cm: float
    taken_percent: float


@dataclass(frozen=True)
class ShadowLength(Record):
    """How long a root shadow is somewhere."""

    __slots__ = {
        "length_cm": "From the scalp.",
        "region": "The region.",
    }
    length_cm: Bounds[float]
    region: str


@dataclass(frozen=True)
class ShadowStep(Record):
    """A stretch of a root shadow."""

    __slots__ = {
        "from_cm": "Where it begins, from the scalp.",
        "level": "How deep it is there.",
        "to_cm": "Where it ends.",
    }
    from_cm: float
    level: float
    to_cm: float


@dataclass(frozen=True)
class RootShadowPlan(Record):
    """The root shadow of a service."""

    __slots__ = {
        "blend": "How it is blended along the strand, at its longest.",
        "found": "Whether they were found for the look that the file wants; else the file names them.",
        "into_level": "The level of the lightest section, into which it is blended; absent where nothing is lighter.",
        "lengths": (
            "How long it is, region by region: as stated, else short at the hairline and longer inside. Only regions "
            "with a section where sections say where they lie."
        ),
        "level": "How deep it is: the darkest of its shades.",
        "shades": "The shades that it is mixed of.",
        "tone": "Its tone as mixed.",
    }
    blend: tuple[ShadowStep, ...]
    found: bool
    into_level: float | None
    lengths: tuple[ShadowLength, ...]
    level: float
    shades: tuple[str, ...]
    tone: tuple[TonePart, ...]


@dataclass(frozen=True)
class HeadPlan(Record):
    """The head: its hair, its sections, how it will read."""

    __slots__ = {
        "basis": "What hairs and masses rest on.",
        "gradient": "What the gradient asks of each region; empty without one.",
        "growth_cm_per_month": "How fast it grows.",
        "hair_g": "Mass of all the hair; absent where its length is not stated.",
        "head_hairs": "All its hairs.",
        "look": "How the head will read; absent where no section says in which `regions` it lies.",
        "mass_per_length_by_use_g_per_cm": (
            "The same as earlier uses alone say, by `used_g`; absent where none is stated, or the length of the hair "
            "is not."
        ),
        "mass_per_length_g_per_cm": "Mass of all the hair by its length.",
        "meetings": "Where two formulas meet in a foil and a shade between them is seen.",
        "natural_cm": (
            "Natural hair from the scalp to the first colour; absent where what is there is not stated in cm."
        ),
        "regrowth_cm": "What has grown in since the last colour; absent where the weeks since then are not stated.",
        "root_shadow": "The root shadow, region by region; absent where there is none.",
        "sections": "Section by section, in the working order.",
        "service_class": "What to call the service when booking and pricing it.",
        "warm_band_cm": "How far from the scalp its warmth speeds a mixture up.",
        "zones": "All the hair by zone of the strand; empty where its length is not stated.",
    }
    basis: _Basis
    gradient: tuple[RegionFoils, ...]
    growth_cm_per_month: Bounds[float]
    hair_g: Bounds[float] | None
    head_hairs: Bounds[float]
    look: HeadReading | None
    mass_per_length_by_use_g_per_cm: Bounds[float] | None
    mass_per_length_g_per_cm: Bounds[float]
    meetings: tuple[Meeting, ...]
    natural_cm: float | None
    regrowth_cm: Bounds[float] | None
    root_shadow: RootShadowPlan | None
    sections: tuple[SectionPlan, ...]
    service_class: _ServiceClass
    warm_band_cm: Bounds[float]
    zones: tuple[ZoneHair, ...]
