from decimal import Decimal
from typing import final

from foilwork import _words
from foilwork._native import _Answer
from foilwork._native.money._amount import Money

__all__ = [
    "CostLine",
    "CostTable",
    "Variance",
]

@final
class Variance(_Answer):
    """One kind of cost, planned against actual."""

    __match_args__ = ("kind", "planned", "actual", "difference")
    @property
    def kind(self) -> str:
        """The kind of cost."""
    @property
    def planned(self) -> Money:
        """From the plan."""
    @property
    def actual(self) -> Money:
        """From what was weighed and timed."""
    @property
    def difference(self) -> Money:
        """Actual less planned: above zero, it cost more than planned."""

@final
class CostLine(_Answer):
    """One line of a cost table."""

    __match_args__ = ("kind", "what", "section", "bowl", "amount", "share_percent")
    @property
    def kind(self) -> str:
        """The kind of cost."""
    @property
    def what(self) -> str:
        """What it is."""
    @property
    def section(self) -> str | None:
        """The section of the head it belongs to, where there is one."""
    @property
    def bowl(self) -> str | None:
        """The bowl it belongs to, where there is one."""
    @property
    def amount(self) -> Money:
        """The amount."""
    @property
    def share_percent(self) -> Decimal | None:
        """Its share of the total in percent, to one decimal."""

@final
class CostTable:
    """What a service costs, line by line; the total is the sum of the lines, however they are grouped.

    Args:
        currency: three-letter code of every line.

    Raises:
        FoilworkError: unknown currency.

    Examples:
        >>> from foilwork.money import CostTable, Money
        >>> table = CostTable("EUR")
        >>> table.add("product", "Pale Drift lightener", Money("2.11", "EUR"), section="crown", bowl="A")
        >>> table.add("labour", "hands-on time", Money("33.33", "EUR"))
        >>> table.total
        Money('35.44', 'EUR')
        >>> [str(line.share_percent) for line in table.lines]
        ['6.0', '94.0']
    """
    def __new__(cls, currency: str) -> CostTable: ...
    def add(self, kind: _words._CostKind, what: str, amount: Money, *, section: str | None = None, bowl: str | None = None) -> None:
        """Add a line.

        Args:
            kind: one of ``"product"``, ``"additive"``, ``"consumables"``, ``"laundry"``, ``"labour"``, ``"overhead"``,
                ``"card-fee"``, ``"other"``.
            what: what it is, in your words.
            amount: what it costs, nothing or more.
            section: the section of the head it belongs to, where there is one.
            bowl: the bowl it belongs to, where there is one.

        Raises:
            FoilworkError: an unknown kind, a negative amount, another currency.
        """
    @property
    def total(self) -> Money:
        """The sum of the lines."""
    @property
    def lines(self) -> list[CostLine]:
        """The lines. Their shares add up to exactly 100; they are ``None`` when the total is zero."""
    def compare(self, actual: CostTable) -> list[Variance]:
        """This table as planned against another as it really was, for each kind of cost that occurs in either.

        Args:
            actual: the other table.

        Raises:
            FoilworkError: two currencies.

        Examples:
            >>> from foilwork.money import CostTable, Money
            >>> planned, actual = CostTable("EUR"), CostTable("EUR")
            >>> planned.add("product", "toner", Money("4.90", "EUR"))
            >>> actual.add("product", "toner", Money("5.60", "EUR"))
            >>> planned.compare(actual)[0].difference
            Money('0.70', 'EUR')
        """
    def by_kind(self) -> list[tuple[str, Money]]:
        """The total of each kind of cost."""
    def by_section(self) -> list[tuple[str, Money]]:
        """The total of each section of the head, of the lines that belong to one."""
    def by_bowl(self) -> list[tuple[str, Money]]:
        """The total of each bowl, of the lines that belong to one."""
