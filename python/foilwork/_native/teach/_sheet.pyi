from collections.abc import Sequence
from typing import Literal, final

from foilwork._native.teach._exercise import Exercise
from foilwork._words import _Topic

__all__ = [
    "Worksheet",
    "worksheet",
]

@final
class Worksheet:
    """A sheet of problems with its key; made by :func:`worksheet`. A notebook shows its problems, without the key."""

    @property
    def seed(self) -> int:
        """The seed."""
    @property
    def title(self) -> str:
        """What it practises."""
    @property
    def format(self) -> int:
        """Version of the problems: within one, a seed keeps its sheet."""
    @property
    def exercises(self) -> list[Exercise]:
        """The problems."""
    def text(self, half: Literal["both", "problems", "key"] = "both", choices: bool = False) -> str:
        """The sheet as plain text in 80 columns.

        Args:
            half: ``"both"``, ``"problems"`` or ``"key"``.
            choices: whether each problem shows its answers to choose from.

        Returns:
            The text.
        """
    def html(self, half: Literal["both", "problems", "key"] = "both", choices: bool = False) -> str:
        """The sheet as a page without network; the key prints on a sheet of its own.

        Args:
            half: ``"both"``, ``"problems"`` or ``"key"``.
            choices: whether each problem shows its answers to choose from.

        Returns:
            The HTML.
        """
    def csv(self) -> str:
        """The sheet as CSV, a line for each problem."""
    def json(self) -> str:
        """Problems, answers, steps and mistakes as JSON text."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...
    def __hash__(self) -> int: ...
    def _repr_html_(self) -> str: ...

def worksheet(
    seed: int = 1,
    topics: Sequence[_Topic] | None = None,
    difficulty: Literal["gentle", "steady", "stretch"] | None = None,
    count: int = 10,
    currency: str = "EUR",
) -> Worksheet:
    """Make a sheet of problems. The same arguments give the same sheet, on every machine.

    Args:
        seed: another number, another sheet.
        topics: what to practise: ``"peroxide-units"``, ``"dilution"``, ``"ratio"``, ``"weighing"``, ``"limits"``,
            ``"level"``, ``"pigment"``, ``"hair"``, ``"timing"``, ``"costing"``, ``"price"``, ``"tax"``, ``"break-even"``;
            all of them when left out.
        difficulty: ``"gentle"``, ``"steady"`` or ``"stretch"``; mixed when left out.
        count: how many problems, up to 200.
        currency: the ISO 4217 code of the prices.

    Returns:
        The sheet.

    Raises:
        FoilworkError: a topic, a difficulty or a currency that is not known, or a number of problems that no sheet has.

    Examples:
        >>> from foilwork.teach import worksheet
        >>> sheet = worksheet(seed=4, topics=["dilution"], difficulty="gentle", count=1)
        >>> exercise = sheet.exercises[0]
        >>> right = [option.answer for option in exercise.options if option.mistake is None]
        >>> right == [exercise.answer]
        True
        >>> sheet == worksheet(seed=4, topics=["dilution"], difficulty="gentle", count=1)
        True
        >>> picture = worksheet(seed=5, topics=["pigment"], difficulty="gentle", count=1).exercises[0].picture
        >>> picture.svg[:4], picture.says[:22]
        ('<svg', 'twelve hues in a ring,')
    """
