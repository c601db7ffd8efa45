from typing import final

from foilwork._native import _Answer

__all__ = [
    "Finding",
]

@final
class Finding(_Answer):
    """Something that a rule has to say; made by the checks of ``foilwork.mix``, ``foilwork.colour`` and ``foilwork.toner``.

    Examples:
        >>> from foilwork.mix import check_lightener
        >>> finding = check_lightener(powder_g=12, developer_g=6)
        >>> finding.rule, finding.verdict, finding.sources
        ('ratio', 'warning', ['common practice of the trade; no published source'])
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
    def sources(self) -> list[str]:
        """What the rule rests on."""
