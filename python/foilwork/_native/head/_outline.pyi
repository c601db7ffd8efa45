from collections.abc import Sequence
from typing import final

from foilwork import _words
from foilwork._native import Bounds, _Answer
from foilwork._native.head._strand import Profile

__all__ = [
    "OutlineChange",
    "OutlineLook",
    "OutlinePart",
    "read_outline",
]

@final
class OutlinePart(_Answer):
    """."""

    __match_args__ = ("section", "hair_percent", "taken_percent", "profile")
    def __new__(cls, section: str, *, hair_percent: float, taken_percent: float, profile: Profile) -> OutlinePart: ...
    @property
    def section(self) -> str:
        """."""
    @property
    def hair_percent(self) -> float:
        """."""
    @property
    def taken_percent(self) -> float:
        """."""
    @property
    def profile(self) -> Profile:
        """."""

@final
class OutlineChange(_Answer):
    """."""

    __match_args__ = ("section", "light_percent", "wanted_percent", "blend_start", "advice")
    @property
    def section(self) -> str:
        """."""
    @property
    def light_percent(self) -> float:
        """."""
    @property
    def wanted_percent(self) -> float:
        """."""
    @property
    def blend_start(self) -> bool:
        """."""
    @property
    def advice(self) -> str:
        """."""

@final
class OutlineLook(_Answer):
    """."""

    __match_args__ = ("light_percent", "reads", "as_wanted", "sure", "changes")
    @property
    def light_percent(self) -> Bounds[float]:
        """."""
    @property
    def reads(self) -> _words._Solidity | None:
        """."""
    @property
    def as_wanted(self) -> bool | None:
        """."""
    @property
    def sure(self) -> bool | None:
        """."""
    @property
    def changes(self) -> list[OutlineChange]:
        """."""

def read_outline(parts: Sequence[OutlinePart], wish: _words._Solidity | None = None) -> OutlineLook | None:
    """."""
