from decimal import Decimal
from typing import final

from foilwork import _words
from foilwork._native import _Exact

__all__ = [
    "Money",
]

@final
class Money:
    """An amount of money: a whole number of minor units (cents, pence, yen, fils) and an ISO 4217 currency.

    Sums are exact or refused: two currencies never meet, nothing overflows silently, and there is no division
    (:func:`allocate` shares an amount out without losing a minor unit). Immutable and hashable.

    Args:
        amount: units of the currency as ``decimal.Decimal``, ``int`` or ``str``. A float is refused.
        currency: three-letter code in capitals.
        rounding: how an amount between two minor units is rounded; without it, such an amount is refused. One of
            ``"midpoint-away-from-zero"`` (half up), ``"midpoint-nearest-even"``, ``"midpoint-toward-zero"``,
            ``"to-zero"``, ``"away-from-zero"``, ``"to-negative-infinity"``, ``"to-positive-infinity"``.

    Raises:
        FoilworkError: unknown currency, no decimal number, too many decimals, or beyond 64 bits of minor units.

    Examples:
        >>> from foilwork.money import Money
        >>> Money("12.50", "EUR") + Money("0.75", "EUR")
        Money('13.25', 'EUR')
        >>> Money("4.165", "EUR", "midpoint-nearest-even").minor
        416
        >>> Money("1.200", "EUR")
        Traceback (most recent call last):
        foilwork.FoilworkError: amount "1.200" has more decimals than EUR: write 1200 if the point groups thousands, else 1.20
        >>> Money("12.50", "EUR").amount
        Decimal('12.50')
    """
    def __new__(cls, amount: _Exact, currency: str, rounding: _words._Rounding | None = None) -> Money: ...
    @classmethod
    def from_minor(cls, minor: int, currency: str) -> Money:
        """Take a whole number of minor units."""
    @property
    def amount(self) -> Decimal:
        """The amount in units of the currency, with all its decimals."""
    @property
    def minor(self) -> int:
        """The whole number of minor units."""
    @property
    def currency(self) -> str:
        """The three-letter code."""
    def __add__(self, value: Money, /) -> Money: ...
    def __radd__(self, start: int, /) -> Money: ...
    def __sub__(self, value: Money, /) -> Money: ...
    def __rsub__(self, value: Money, /) -> Money: ...
    def __mul__(self, value: int, /) -> Money: ...
    def __rmul__(self, value: int, /) -> Money: ...
    def __neg__(self) -> Money: ...
    def __bool__(self) -> bool: ...
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __lt__(self, value: Money, /) -> bool: ...
    def __le__(self, value: Money, /) -> bool: ...
    def __gt__(self, value: Money, /) -> bool: ...
    def __ge__(self, value: Money, /) -> bool: ...
    def __hash__(self) -> int: ...
    def __format__(self, spec: str) -> str: ...
    def __reduce__(self) -> tuple[type[Money], tuple[str, str]]: ...
