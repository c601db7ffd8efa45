from typing import final

from foilwork._native import _Answer

__all__ = [
    "Finding",
    "Reason",
]

@final
class Reason(_Answer):
    """Why a finding says what it says: a citation, a clause of a law, or the user's own words."""

    __match_args__ = ("id", "text", "from_memory")
    @property
    def id(self) -> str | None:
        """The id of the citation; None for what the user states."""
    @property
    def text(self) -> str:
        """The source in words."""
    @property
    def from_memory(self) -> bool:
        """Whether it is from memory: never looked up, so a user should before relying on it."""

@final
class Finding(_Answer):
    """Something that a rule has to say; made by a plan and by the checks of the rooms.

    Examples:
        >>> from foilwork.mix import check_lightener
        >>> finding = check_lightener(powder_g=12, developer_g=6)
        >>> finding.rule, finding.verdict, finding.sources[0].id
        ('ratio', 'warning', 'common-practice')
    """

    __match_args__ = ("rule", "verdict", "text", "sources")
    @property
    def rule(self) -> str:
        """The rule."""
    @property
    def verdict(self) -> str:
        """What follows: ``"stop"``, ``"warning"``, ``"not-judged"``, ``"note"`` or ``"passed"``."""
    @property
    def text(self) -> str:
        """What was found, and the way out."""
    @property
    def sources(self) -> list[Reason]:
        """What the rule rests on."""
