from collections.abc import Sequence
from typing import final

from foilwork._native import Bounds, _Answer
from foilwork._native.colour import Difference, Level, Shade, Swatch

__all__ = []

@final
class Finding(_Answer):
    """."""

    __match_args__ = ("rule", "verdict", "text", "sources")
    @property
    def rule(self) -> str:
        """."""
    @property
    def verdict(self) -> str:
        """."""
    @property
    def text(self) -> str:
        """."""
    @property
    def sources(self) -> list[str]:
        """."""

@final
class MixPart(_Answer):
    """."""

    __match_args__ = ("code", "mass_g", "share_percent")
    @property
    def code(self) -> str:
        """."""
    @property
    def mass_g(self) -> float:
        """."""
    @property
    def share_percent(self) -> float:
        """."""

@final
class TonerMix(_Answer):
    """."""

    __match_args__ = ("parts", "level", "tone", "predicted", "residual")
    @property
    def parts(self) -> list[MixPart]:
        """."""
    @property
    def level(self) -> float:
        """."""
    @property
    def tone(self) -> str:
        """."""
    @property
    def predicted(self) -> Swatch:
        """."""
    @property
    def residual(self) -> Difference:
        """."""

@final
class TonerAnswer(_Answer):
    """."""

    __match_args__ = ("outcome", "summary", "against", "target", "before", "best", "alternatives", "findings", "html")
    @property
    def outcome(self) -> str:
        """."""
    @property
    def summary(self) -> str:
        """."""
    @property
    def against(self) -> str | None:
        """."""
    @property
    def target(self) -> Swatch:
        """."""
    @property
    def before(self) -> Difference:
        """."""
    @property
    def best(self) -> TonerMix:
        """."""
    @property
    def alternatives(self) -> list[TonerMix]:
        """."""
    @property
    def findings(self) -> list[Finding]:
        """."""
    @property
    def html(self) -> str:
        """."""
    def _repr_html_(self) -> str: ...

@final
class NeutralisingDose(_Answer):
    """."""

    __match_args__ = ("share_percent", "mass_g", "warmth_before", "warmth_left", "finding")
    @property
    def share_percent(self) -> Bounds[float]:
        """."""
    @property
    def mass_g(self) -> Bounds[float]:
        """."""
    @property
    def warmth_before(self) -> Bounds[float]:
        """."""
    @property
    def warmth_left(self) -> Bounds[float]:
        """."""
    @property
    def finding(self) -> Finding:
        """."""

def find_toner(
    shades: Sequence[Shade],
    *,
    lifted_level: float | str | Level | None,
    natural_level: float | str | Level | None = None,
    seen: str | None = None,
    exposed_lab: tuple[float, float, float] | None = None,
    target_level: float | str | Level | None = None,
    target_tones: Sequence[str] | None = None,
    target_lab: tuple[float, float, float] | None = None,
    observer_degrees: int = 10,
    porous: bool = False,
    most_shades: int = 3,
    bowl_g: float = 30.0,
    division_g: float = 1.0,
) -> TonerAnswer:
    """."""

def neutralising_dose(
    neutraliser: Shade,
    carrier: Shade,
    *,
    lifted_level: float | str | Level | None,
    natural_level: float | str | Level | None = None,
    seen: str | None = None,
    exposed_lab: tuple[float, float, float] | None = None,
    bowl_g: float = 30.0,
) -> NeutralisingDose:
    """."""
