from typing import final

from foilwork import _words
from foilwork._native.limits._rows import Limit, ListedLimit
from foilwork._native.source._trail import TracedResult

__all__ = [
    "Table",
    "jurisdictions",
]

@final
class Table:
    """A table of limits: a built-in one, or the user's own in the same shape.

    Args:
        jurisdiction: code or name, for example ``"EU"``; see :func:`jurisdictions`.

    Raises:
        FoilworkError: when there is no table for it.

    Examples:
        >>> from foilwork.limits import Table
        >>> japan = Table("JP")
        >>> japan.title, len(japan), japan.unverified
        ('Japan', 1, 1)
        >>> japan.rows()[0].obtained, japan.listing()[0].treatment
        ('from-memory', 'checked-never-green')
    """
    def __new__(cls, jurisdiction: _words._Jurisdiction) -> Table: ...
    @staticmethod
    def from_csv(title: str, text: str) -> Table:
        """Read a table of one's own: comma-separated text with one header line.

        Needed columns: ``id, rule, substance, applies_to, user, figure, unit, measured``. Without ``how`` a row counts as
        stated by the user.
        """
    def overlaid(self, other: Table) -> Table:
        """This table with the rows of another: a row with a known id replaces the old one, the others are added."""
    def concerning(
        self, substance: str | None = None, purpose: _words._Purpose | None = None, audience: _words._Audience | None = None
    ) -> Table:
        """The rows that concern a substance, a kind of product, a kind of user, or all of these together."""
    @property
    def title(self) -> str:
        """The name of the jurisdiction, or what the user calls the table."""
    @property
    def unverified(self) -> int:
        """How many rows are from memory, and so never the basis of "within"."""
    def rows(self) -> list[Limit]:
        """Every row."""
    def trail(self) -> list[TracedResult]:
        """Where each concentration comes from: act and entry, the figure as printed, the date of the list.

        Returns:
            A :class:`foilwork.source.TracedResult` for each row with a concentration.

        Examples:
            >>> from foilwork.limits import Table
            >>> {one.formula for one in Table("EU").trail()}
            {"the act's own figure, for its substance and use"}
        """
    def listing(self) -> list[ListedLimit]:
        """Every row with what a check does with it and what it does not."""
    def text(self) -> str:
        """The listing as text: what is checked, what is noted, what is not checked."""
    def __len__(self) -> int: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...
    def __hash__(self) -> int: ...

def jurisdictions() -> list[tuple[_words._Jurisdiction, str]]:
    """The jurisdictions with a built-in table, as (code, name). A table is never complete.

    Returns:
        Code and name of each.

    Examples:
        >>> from foilwork.limits import jurisdictions
        >>> jurisdictions()[0]
        ('EU', 'European Union')
    """
