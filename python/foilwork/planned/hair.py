"""The hair and the country's habits in a plan, written from the JSON Schema of a plan by ``make stubs``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from foilwork._native import Bounds
from foilwork._record import Record

if TYPE_CHECKING:
    from foilwork._words import (
        _Country,
        _Curl,
        _DensityByEye,
        _Elasticity,
        _HistoryFlag,
        _Naming,
        _Porosity,
        _Scalp,
        _TestResult,
        _Texture,
        _Zone,
    )

__all__ = ["Band", "BandedStrand", "Existing", "Habits", "Hair", "TestDone"]


@dataclass(frozen=True)
class Band(Record):
    """One colour on a stretch of the strand."""

    __slots__ = {
        "artificial": "Whether it was lightened or coloured.",
        "from_cm": "Where it begins, from the scalp.",
        "level": "Its level.",
        "to_cm": "Where it ends, from the scalp.",
        "tone": "Its tone in words.",
    }
    artificial: bool
    from_cm: float
    level: float
    to_cm: float
    tone: str | None


@dataclass(frozen=True)
class BandedStrand(Record):
    """What lies along a strand, from the scalp to the ends, without a gap."""

    __slots__ = {
        "bands": "bands",
        "length_cm": "length_cm",
    }
    bands: tuple[Band, ...]
    length_cm: float


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
class Existing(Record):
    """Colour that is already there."""

    __slots__ = {
        "artificial": "Whether it is artificial colour.",
        "from_cm": "Where it begins, where it is stated in cm.",
        "level": "Its level now.",
        "to_cm": "Where it ends, where it is stated in cm.",
        "tone": "Its tone in the words of the file.",
        "zone": "Where along the strand, where it is stated as a zone.",
    }
    artificial: bool
    from_cm: float | None
    level: float
    to_cm: float | None
    tone: str | None
    zone: _Zone | None


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
        "curl": "How it falls by itself.",
        "density": "Hairs per area.",
        "elasticity": "Stretch and return of a damp strand.",
        "existing": "Colour already there, as stated.",
        "history": "What has been on this hair or has happened to this guest; an empty list says that nothing has.",
        "history_told": "What the earlier services of the consultation add to it.",
        "incompatibility_test": "Incompatibility test for metallic salts.",
        "length_cm": "Length of the lengths to be worked.",
        "natural_level": "Natural level, as far as the reading is stated to be off.",
        "natural_level_margin_levels": "How far the reading may be off either way, where that is stated.",
        "porosity": "How readily the hair takes up liquid.",
        "scalp": "State of the scalp.",
        "skin_test": "Skin test with the products of this service.",
        "strand": "The same along the strand without a gap, where it is stated in cm.",
        "strand_test": "Strand test with the mixes of this service.",
        "texture": "Diameter of a strand.",
        "white_counted_in": "The regions that were counted, where any were.",
        "white_counted_percent": (
            "How much of the hair lies in the regions that were counted for it; absent where it is stated."
        ),
        "white_percent": (
            "Share of white hair, by area; exact where it is stated, with its bounds where it was counted."
        ),
    }
    curl: _Curl | None
    density: _DensityByEye | None
    elasticity: _Elasticity | None
    existing: tuple[Existing, ...]
    history: tuple[_HistoryFlag, ...] | None
    history_told: tuple[_HistoryFlag, ...]
    incompatibility_test: TestDone | None
    length_cm: float | None
    natural_level: Bounds[float]
    natural_level_margin_levels: float | None
    porosity: _Porosity | None
    scalp: _Scalp | None
    skin_test: TestDone | None
    strand: BandedStrand | None
    strand_test: TestDone | None
    texture: _Texture | None
    white_counted_in: tuple[str, ...]
    white_counted_percent: float | None
    white_percent: Bounds[float]
