"""Colours in a plan, written from the JSON Schema of a plan by ``make stubs``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from foilwork._native import Bounds
from foilwork._native.finding import Finding, Reason
from foilwork._native.source import Citation
from foilwork._record import Record

if TYPE_CHECKING:
    from foilwork._words import _Basis, _ExposedBasis, _Hue, _Instrument, _Visibility, _White

__all__ = [
    "Contrast",
    "Difference",
    "LevelRule",
    "NaturalShadeDose",
    "NeutralisingDose",
    "PrePigmentMix",
    "PrePigmentation",
    "SectionColour",
    "SectionLook",
    "SectionNeutralising",
    "Sourced",
    "Swatch",
    "TonePart",
    "TonerPart",
    "UnderlyingPigment",
]


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
        "level_rule": (
            "What the level rules of permanent colour expect, after a planned lightening first on the target level; "
            "absent after a planned cleaning, for what it leaves decides, and for every other product."
        ),
        "look": (
            "How the area reads from a distance; absent where neither `taken_percent` nor a `panel` says how much of "
            "its hair is taken."
        ),
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
class TonePart(Record):
    """One hue of a tone."""

    __slots__ = {
        "hue": "The hue.",
        "share_percent": "Its share of the tone, in percent.",
    }
    hue: _Hue
    share_percent: float
