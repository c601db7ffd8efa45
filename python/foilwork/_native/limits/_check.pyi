from typing import Any, final

from foilwork._native import _Percent
from foilwork._native.mix import Composition

__all__ = [
    "LimitReport",
    "LimitTable",
    "check_limits",
    "check_peroxide",
    "jurisdictions",
    "salt_factor",
]

def jurisdictions() -> list[tuple[str, str]]:
    """The jurisdictions with a built-in table, as (code, name). A table is never complete.

    Examples:
        >>> from foilwork.limits import jurisdictions
        >>> jurisdictions()[0]
        ('EU', 'European Union')
    """

@final
class LimitTable:
    """A table of limits: a built-in one, or the user's own in the same shape.

    Args:
        jurisdiction: code or name, for example ``"EU"``; see :func:`jurisdictions`.

    Raises:
        FoilworkError: when there is no table for it.

    Examples:
        >>> from foilwork.limits import LimitTable
        >>> japan = LimitTable("JP")
        >>> japan.title, len(japan), japan.unverified
        ('Japan', 1, 1)
    """
    def __new__(cls, jurisdiction: str) -> LimitTable: ...
    @staticmethod
    def from_csv(title: str, text: str) -> LimitTable:
        """staticmethod(function) -> method

        Convert a function to be a static method.

        A static method does not receive an implicit first argument.
        To declare a static method, use this idiom:

             class C:
                 @staticmethod
                 def f(arg1, arg2, argN):
                     ...

        It can be called either on the class (e.g. C.f()) or on an instance
        (e.g. C().f()). Both the class and the instance are ignored, and
        neither is passed implicitly as the first argument to the method.

        Static methods in Python are similar to those found in Java or C++.
        For a more advanced concept, see the classmethod builtin.
        """
    def overlaid(self, other: LimitTable) -> LimitTable:
        """This table with the rows of another: a row with a known id replaces the old one, the others are added."""
    @property
    def title(self) -> str:
        """The name of the jurisdiction, or what the user calls the table."""
    @property
    def unverified(self) -> int:
        """How many rows are from memory, and so never the ground for "within"."""
    def listing(self) -> list[dict[str, Any]]:
        """Every row with what a check does with it and what it does not, as dicts."""
    def text(self) -> str:
        """The listing as text: what is checked, what is noted, what is not checked."""
    def __len__(self) -> int: ...

@final
class LimitReport:
    """What a table has to say about a mixture; made by :func:`check_limits` and :func:`check_peroxide`."""
    @property
    def exceeded(self) -> bool:
        """Whether any limit or ratio sum is exceeded."""
    @property
    def within_everything_checked(self) -> bool:
        """Whether everything in the bowl was judged and nothing found exceeded; no table is complete."""
    def judgements(self) -> list[dict[str, Any]]:
        """What was judged, as dicts: substance, level, where it stands, and the row of the table."""
    def data(self) -> dict[str, Any]:
        """The whole report as a dict, with ratio sums, notices and products that are not declared in full."""

def check_limits(
    table: LimitTable, bowl: Composition, purpose: str = "oxidative-colour", audience: str = "professional"
) -> LimitReport:
    """Hold a mixed bowl, and the products in it, against a table.

    Args:
        table: the table.
        bowl: the bowl.
        purpose: ``"oxidative-colour"``, ``"non-oxidative-colour"``, ``"lightening"`` or ``"lash-colour"``.
        audience: ``"professional"`` or ``"general"``.

    Returns:
        What was judged: each level exceeded, within or not to be judged, with its source.

    Raises:
        FoilworkError: for an unknown purpose or audience.

    Examples:
        >>> from foilwork.limits import LimitTable, check_limits
        >>> from foilwork.mix import Composition, DeclaredProduct, Ingredient
        >>> developer = DeclaredProduct("developer", [Ingredient("hydrogen peroxide", 9, cas="7722-84-1")])
        >>> bowl = Composition([(60, developer), (30, DeclaredProduct("lightener", []))])
        >>> report = check_limits(LimitTable("EU"), bowl, "lightening")
        >>> [(j["standing"], j["limit"]["figure"]) for j in report.judgements()]
        [('within', '12 %')]

    Source:
        Each finding carries its own: act and entry, date of the list, how it was obtained.
    """

def check_peroxide(
    jurisdiction: str, strength_ww: _Percent, purpose: str = "lightening", audience: str = "professional"
) -> LimitReport:
    """Hold the hydrogen peroxide strength of a mixed bowl against a built-in table.

    Args:
        jurisdiction: code or name, for example ``"EU"``.
        strength_ww: strength as applied in % w/w, as a number or (low, best, high).
        purpose: as for :func:`check_limits`.
        audience: as for :func:`check_limits`.

    Raises:
        FoilworkError: when there is no such table, purpose or audience, or the strength is out of range.

    Examples:
        >>> from foilwork.limits import check_peroxide
        >>> check_peroxide("EU", 13).exceeded
        True
    """

def salt_factor(cas: str, counted_as: str) -> float | None:
    """Grams of the form the law counts in one gram of a substance: salt to base, releaser to hydrogen peroxide.

    Args:
        cas: CAS number of the substance.
        counted_as: the form, for example ``"free-base"``, ``"h2o2-released"`` or ``"so2"``.

    Returns:
        The factor, or None where it is not known or not fixed.

    Raises:
        FoilworkError: for a mistyped CAS number or an unknown form.

    Examples:
        >>> from foilwork.limits import salt_factor
        >>> round(salt_factor("124-43-6", "h2o2-released"), 4)
        0.3616

    Source:
        Formulas from chemicals 1.5.2, atomic weights from periodictable 2.1.0.
    """
