from decimal import Decimal
from typing import final

from foilwork._native import _Number

__all__ = [
    "Ratio",
]

@final
class Ratio:
    """A mixing ratio by mass, kept as the exact decimals that were written.

    Args:
        text: parts joined by ``:`` or ``+``, for example ``"1:1.5"``, ``"1+2"`` or ``"3:1:6"``.

    Raises:
        FoilworkError: with the position of the character that cannot be read.

    Examples:
        >>> from foilwork.mix import Ratio
        >>> Ratio("1:1.5").split_total(75)
        [30.0, 45.0]
        >>> str(Ratio("1+2")), Ratio("1:1.5").lowest_terms()
        ('1+2', [2, 3])
    """
    def __new__(cls, text: str) -> Ratio: ...
    @property
    def parts(self) -> list[Decimal]:
        """The parts as written, exact."""
    def lowest_terms(self) -> list[int]:
        """The same ratio in the smallest whole numbers."""
    def same_mix(self, other: Ratio) -> bool:
        """Whether both ratios weigh out alike, as ``1:1.5`` and ``2:3`` do."""
    def split_total(self, total_g: float) -> list[float]:
        """The masses in g that make up ``total_g``; nothing is rounded."""
    def split_decimal(self, total: _Number) -> list[Decimal]:
        """The shares of a total as decimals of 28 digits, in the unit of the total."""
    def given_part(self, part: int, mass_g: float) -> list[float]:
        """All masses in g when part ``part`` (counted from 0) weighs ``mass_g``."""
    def __hash__(self) -> int: ...
    def __reduce__(self) -> tuple[type[Ratio], tuple[str]]: ...
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...

