import os
from collections.abc import Mapping, Sequence
from typing import Any, Literal, final

from foilwork._native.shop import Shop
from foilwork._plan_data import PlanData

__all__ = [
    "Plan",
    "plan",
    "plan_file",
    "service_schema",
]

@final
class Plan:
    """A service plan: what to weigh, in which order, what was checked, what it costs.

    Made by :func:`plan`. ``str(plan)`` is the bench sheet; ``plan.data()`` is the whole plan as plain Python data. Two plans
    of one file are equal; a plan pickles as its file and what was known beside it.
    """

    @property
    def is_blocked(self) -> bool:
        """Whether any finding says stop; do not begin then."""
    def text(self) -> str:
        """The bench sheet as plain text, 80 columns wide."""
    def json(self) -> str:
        """The plan as JSON text."""
    def data(self) -> PlanData:
        """The plan as dicts, lists, strings and numbers; every key carries its unit, every estimate its bounds."""
    def cards(self) -> list[dict[str, object]]:
        """The mixing cards, one for each fresh bowl, as dicts: who, what, lines, strength on the hair, times."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...
    def __hash__(self) -> int: ...
    def _repr_html_(self) -> str: ...

def plan(
    file: str | Mapping[str, Any],
    format: Literal["toml", "json"] = "toml",
    shop: Shop | None = None,
    strand_book: str | None = None,
    seen: Sequence[str] | None = None,
) -> Plan:
    """Plan a service from the text of a service file, or from the same as a mapping.

    Args:
        file: the file's text, or a mapping of its shape; there dates may be ``datetime`` objects.
        format: ``"toml"`` or ``"json"`` for a text; both have the same shape.
        shop: what the salon has, where the file only names it in ``shop_file``: a :class:`foilwork.shop.Shop`.
        strand_book: the text of the strand book that the file names in ``strand_book``.
        seen: levels seen in mid-service, each as section, level and minute from the first brush: ``"nape=7.5@40"``.

    Returns:
        The plan. Findings that say stop are part of it; ask ``plan.is_blocked``.

    Raises:
        ServiceFileError: everything that is wrong with the file, each with its line; ``.problems`` lists it.

    Examples:
        >>> import foilwork
        >>> try:
        ...     foilwork.plan('format = 2')
        ... except foilwork.ServiceFileError as error:
        ...     print([problem for problem in error.problems if problem[1] == "format"])
        [(1, 'format', '2 is out of range: give 1')]
        >>> try:
        ...     foilwork.plan({"format": 2})
        ... except foilwork.ServiceFileError as error:
        ...     print(error.problems[0])
        (None, 'format', '2 is out of range: give 1')
    """

def plan_file(path: str | os.PathLike[str], seen: Sequence[str] | None = None) -> Plan:
    """Plan a service from a file; ``.json`` is read as JSON, everything else as TOML. A shop that the file names in
    ``shop_file`` and a strand book that it names in ``strand_book`` are read too, from the folder of the file.

    Args:
        path: the service file, UTF-8.
        seen: levels seen in mid-service, each as section, level and minute from the first brush: ``"nape=7.5@40"``.

    Returns:
        The plan; ``print(plan)`` shows the bench sheet.

    Raises:
        ServiceFileError: everything that is wrong with the file or its shop, each with its line.
        OSError: a file cannot be read.

    Examples:
        >>> from foilwork import plan_file
        >>> plan_file("examples/soft-gradient.toml").is_blocked
        False
        >>> plan = plan_file("examples/finish-together.toml", seen=["nape=7@35"])
        >>> plan.data()["lift"][0]["seen"][0]["next"]
        'go-on'
    """
def service_schema() -> dict[str, Any]:
    """The JSON Schema of a service file (draft 2020-12), as plain Python data.

    Returns:
        The schema.

    Examples:
        >>> from foilwork import service_schema
        >>> service_schema()["title"]
        'ServiceFile'
    """
