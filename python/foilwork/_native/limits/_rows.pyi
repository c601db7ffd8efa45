from typing import final

from foilwork._native import _Answer

__all__ = [
    "Limit",
    "ListedLimit",
]

@final
class Limit(_Answer):
    """One row of a table: what a law or an authority says about one substance or group in one use."""

    __match_args__ = ("id", "issued_by", "rule", "substance", "cas", "groups", "applies_to", "use_as_worded", "users", "concentration_ww_percent", "figure", "unit_reading", "measured", "basis_as_worded", "expressed_as", "conditions", "legal_reference", "list_date", "sources", "obtained")
    @property
    def id(self) -> str:
        """Key, unique in its table."""
    @property
    def issued_by(self) -> str:
        """Who issued it, for example ``"Canada (Ontario)"``."""
    @property
    def rule(self) -> str:
        """What it says, for example ``"maximum"`` or ``"prohibited"``."""
    @property
    def substance(self) -> str:
        """The substances as the entry names them."""
    @property
    def cas(self) -> list[str]:
        """Their CAS numbers; none for a group."""
    @property
    def groups(self) -> list[str]:
        """Group names by which an ingredient can be stated to belong to an entry without CAS numbers."""
    @property
    def applies_to(self) -> list[str]:
        """What it applies to."""
    @property
    def use_as_worded(self) -> str:
        """The same in the words of the source."""
    @property
    def users(self) -> str:
        """Whose use it covers: ``"all"``, ``"professional"`` or ``"general"``."""
    @property
    def concentration_ww_percent(self) -> float | None:
        """The concentration, when the figure is one, read as % w/w."""
    @property
    def figure(self) -> str:
        """The figure as printed, with its unit; empty without a figure."""
    @property
    def unit_reading(self) -> str:
        """How the unit was read."""
    @property
    def measured(self) -> str:
        """In what the concentration is meant, for example ``"as-applied"``."""
    @property
    def basis_as_worded(self) -> str:
        """The same in the words of the source."""
    @property
    def expressed_as(self) -> str | None:
        """The form the figure is expressed in; None when it is the substance as stated."""
    @property
    def conditions(self) -> str:
        """Conditions, warnings and label duties, in short."""
    @property
    def legal_reference(self) -> str:
        """Act and entry."""
    @property
    def list_date(self) -> str:
        """Date or edition of the list consulted."""
    @property
    def sources(self) -> list[str]:
        """Ids of the sources in the register."""
    @property
    def obtained(self) -> str:
        """How it was obtained: what is ``"from-memory"`` is unverified."""
    def to_dict(self) -> dict[str, object]:
        """The fields as a dict: results in it become dicts too, bounds a dict of ``low``, ``best`` and ``high``."""

@final
class ListedLimit(_Answer):
    """One row as the listing shows it, with what a check does with it."""

    __match_args__ = ("id", "substance", "used_in", "user", "figure", "treatment", "remark", "legal_reference", "list_date", "how")
    @property
    def id(self) -> str:
        """Key of the row."""
    @property
    def substance(self) -> str:
        """The substances."""
    @property
    def used_in(self) -> str:
        """What the row applies to, in the words of its source."""
    @property
    def user(self) -> str:
        """Whose use."""
    @property
    def figure(self) -> str:
        """The figure with its unit, or the rule when there is none."""
    @property
    def treatment(self) -> str:
        """What a check does with it: ``"checked"``, ``"checked-never-green"``, ``"noted"`` or ``"not-checked"``."""
    @property
    def remark(self) -> str:
        """What the check needs, or why there is none; empty when there is no more to say."""
    @property
    def legal_reference(self) -> str:
        """Act and entry."""
    @property
    def list_date(self) -> str:
        """Date or edition of the list."""
    @property
    def how(self) -> str:
        """How the figure was obtained."""
    def to_dict(self) -> dict[str, object]:
        """The fields as a dict: results in it become dicts too, bounds a dict of ``low``, ``best`` and ``high``."""
