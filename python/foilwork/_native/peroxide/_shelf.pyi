from collections.abc import Sequence
from typing import Literal, final

from foilwork._native import Bounds, _Answer, _Percent
from foilwork._native.peroxide._dilution import RoundedBlend

__all__ = [
    "Portion",
    "ShelfBlend",
    "Stock",
    "blend_shelf",
]

@final
class Stock:
    """x"""

    def __new__(
        cls,
        name: str,
        strength_ww_percent: _Percent,
        in_hand_g: float | None = None,
        price_per_kg: float | None = None,
    ) -> Stock: ...
    @property
    def name(self) -> str:
        """x"""
    @property
    def strength_ww_percent(self) -> Bounds[float]:
        """x"""
    @property
    def in_hand_g(self) -> float | None:
        """x"""
    @property
    def price_per_kg(self) -> float | None:
        """x"""
    def to_dict(self) -> dict[str, object]:
        """x"""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...
    def __hash__(self) -> int: ...

@final
class Portion(_Answer):
    """x"""

    __match_args__ = ("stock", "mass_g")
    @property
    def stock(self) -> Stock:
        """x"""
    @property
    def mass_g(self) -> float:
        """x"""

@final
class ShelfBlend(_Answer):
    """x"""

    __match_args__ = ("portions", "total_g", "strength_ww_percent", "cost", "leftover_g")
    @property
    def portions(self) -> list[Portion]:
        """x"""
    @property
    def total_g(self) -> float:
        """x"""
    @property
    def strength_ww_percent(self) -> Bounds[float]:
        """x"""
    @property
    def cost(self) -> float:
        """x"""
    @property
    def leftover_g(self) -> float:
        """x"""
    def round_to_scale(self, division_g: float) -> RoundedBlend:
        """x"""

def blend_shelf(
    stocks: Sequence[Stock],
    target_ww_percent: float,
    total_g: float,
    *,
    objective: Literal["least-cost", "fewest-bottles", "least-leftover"] = "least-cost",
) -> ShelfBlend:
    """x"""
