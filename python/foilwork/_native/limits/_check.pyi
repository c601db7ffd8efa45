from typing import final

from foilwork import _words
from foilwork._native import Bounds, _Answer, _Percent
from foilwork._native.limits._rows import Limit
from foilwork._native.limits._table import Table
from foilwork._native.mix._composition import Composition

__all__ = [
    "Judgement",
    "Notice",
    "Report",
    "SumJudgement",
    "check",
    "check_peroxide",
    "salt_factor",
]

@final
class Judgement(_Answer):
    """One level held against one row of a table, or against no row at all."""

    __match_args__ = ("substance", "product", "level_ww_percent", "undeclared_at_most_ww_percent", "limit", "standing", "certain", "why", "margin_percentage_points", "text")
    @property
    def substance(self) -> str:
        """The substance, or the entry when it covers several substances of the bowl."""
    @property
    def product(self) -> str | None:
        """The product whose level was judged as supplied; None when the mixed bowl was."""
    @property
    def level_ww_percent(self) -> Bounds[float]:
        """The level in the form the row counts, in % w/w."""
    @property
    def undeclared_at_most_ww_percent(self) -> float:
        """The most that is not declared or not known could add to it, in % w/w."""
    @property
    def limit(self) -> Limit | None:
        """The row, when the table has one."""
    @property
    def standing(self) -> str:
        """``"exceeded"``, ``"professionals-only"``, ``"within"`` or ``"cannot-be-judged"``."""
    @property
    def certain(self) -> bool | None:
        """For what is exceeded: whether the lower bound is above the limit too."""
    @property
    def why(self) -> str | None:
        """For what cannot be judged: why, for example ``"not-in-table"``."""
    @property
    def margin_percentage_points(self) -> float | None:
        """Limit minus upper bound and minus what is not declared, in percentage points; negative above the limit."""
    @property
    def text(self) -> str:
        """The judgement in words, with its source."""
    def to_dict(self) -> dict[str, object]:
        """The fields as a dict: results in it become dicts too, bounds a dict of ``low``, ``best`` and ``high``."""

@final
class SumJudgement(_Answer):
    """The ratio sum of rows that may only be used together within one whole: the sum of level over own maximum."""

    __match_args__ = ("rule", "limits", "sum", "standing", "certain", "why", "text")
    @property
    def rule(self) -> str:
        """The rule, by the name of its group in the table."""
    @property
    def limits(self) -> list[Limit]:
        """The rows that take part."""
    @property
    def sum(self) -> Bounds[float]:
        """The sum; 1 is the most the law allows."""
    @property
    def standing(self) -> str:
        """As in a :class:`Judgement`."""
    @property
    def certain(self) -> bool | None:
        """As in a :class:`Judgement`."""
    @property
    def why(self) -> str | None:
        """As in a :class:`Judgement`."""
    @property
    def text(self) -> str:
        """The judgement in words."""
    def to_dict(self) -> dict[str, object]:
        """The fields as a dict: results in it become dicts too, bounds a dict of ``low``, ``best`` and ``high``."""

@final
class Notice(_Answer):
    """A row that is no ceiling but bears on what is in the bowl: a warning duty, a schedule, a conclusion."""

    __match_args__ = ("substance", "product", "level_ww_percent", "limit", "applies", "text")
    @property
    def substance(self) -> str:
        """The substance."""
    @property
    def product(self) -> str | None:
        """The product whose level was compared as supplied; None when the mixed bowl was."""
    @property
    def level_ww_percent(self) -> Bounds[float]:
        """The level in the form the row counts, in % w/w."""
    @property
    def limit(self) -> Limit:
        """The row."""
    @property
    def applies(self) -> bool | None:
        """Whether the level meets the row's condition; None when the bounds do not tell or the row has no figure."""
    @property
    def text(self) -> str:
        """The notice in words."""
    def to_dict(self) -> dict[str, object]:
        """The fields as a dict: results in it become dicts too, bounds a dict of ``low``, ``best`` and ``high``."""

@final
class Report(_Answer):
    """What a table has to say about a mixture; made by :func:`check` and :func:`check_peroxide`."""

    __match_args__ = ("table", "purpose", "audience", "judgements", "sums", "notices", "undeclared", "is_exceeded", "is_within_everything_checked", "text")
    @property
    def table(self) -> str:
        """The name of the table."""
    @property
    def purpose(self) -> str:
        """What the mixture is for."""
    @property
    def audience(self) -> str:
        """Who uses it."""
    @property
    def judgements(self) -> list[Judgement]:
        """Levels against ceilings, and levels without a ceiling."""
    @property
    def sums(self) -> list[SumJudgement]:
        """Ratio sums."""
    @property
    def notices(self) -> list[Notice]:
        """Rows that are no ceilings."""
    @property
    def undeclared(self) -> list[str]:
        """Products of which not everything is known."""
    @property
    def is_exceeded(self) -> bool:
        """Whether any limit or ratio sum is exceeded, or the use is not open to the user."""
    @property
    def is_within_everything_checked(self) -> bool:
        """Whether everything in the bowl was judged and no limit was found exceeded; no table is complete."""
    @property
    def text(self) -> str:
        """The report on one page."""
    def to_dict(self) -> dict[str, object]:
        """The fields as a dict: results in it become dicts too, bounds a dict of ``low``, ``best`` and ``high``."""

def check(
    table: Table, bowl: Composition, purpose: _words._Purpose = "oxidative-colour", audience: _words._Audience = "professional"
) -> Report:
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
        >>> from foilwork.limits import Table, check
        >>> from foilwork.mix import Composition, Ingredient, Product
        >>> def bowl(*ingredients):
        ...     return Composition([(90, Product("bowl", list(ingredients)))])
        >>> report = check(Table("EU"), bowl(Ingredient("hydrogen peroxide", 6)), "lightening")
        >>> [(judged.standing, judged.margin_percentage_points) for judged in report.judgements]
        [('within', 6.0)]
        >>> diamines = bowl(Ingredient("PTD", 1.4), Ingredient("diamine", 1.8, groups=["n-substituted-p-phenylenediamines"]))
        >>> check(Table("EU"), diamines).sums[0].rule
        'EU-III-8/9/9a'
        >>> check(Table("AU"), bowl(Ingredient("hydrogen peroxide", 9))).notices[1].applies
        True

    Source:
        Each judgement carries its own: act and entry, date of the list, how it was obtained.
    """

def check_peroxide(
    jurisdiction: _words._Jurisdiction, strength_ww_percent: _Percent, purpose: _words._Purpose = "lightening", audience: _words._Audience = "professional"
) -> Report:
    """Hold the hydrogen peroxide strength of a mixed bowl against a built-in table.

    Args:
        jurisdiction: code or name, for example ``"EU"``.
        strength_ww_percent: strength as applied in % w/w, as a number or (low, best, high).
        purpose: as for :func:`check`.
        audience: as for :func:`check`.

    Returns:
        The report.

    Raises:
        FoilworkError: when there is no such table, purpose or audience, or the strength is out of range.

    Examples:
        >>> from foilwork.limits import check_peroxide
        >>> check_peroxide("EU", 13).is_exceeded
        True
    """

def salt_factor(cas: str, counted_as: _words._Form) -> float | None:
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
