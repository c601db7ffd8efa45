"""Hair-colour chemistry: facts about hair, products and money go in; a checked, explained, weighable plan comes out.

The rooms are submodules: :mod:`foilwork.peroxide`, :mod:`foilwork.mix`, :mod:`foilwork.limits`,
:mod:`foilwork.colour`, :mod:`foilwork.toner`, :mod:`foilwork.lift`, :mod:`foilwork.day`, :mod:`foilwork.money`,
:mod:`foilwork.business`, :mod:`foilwork.shop` and :mod:`foilwork.service`; :mod:`foilwork.source` tells
what their numbers rest on, :mod:`foilwork.finding` is what their checks find,
:mod:`foilwork.teach` makes worksheets, :mod:`foilwork.chart` draws. What a service file needs is here:

    >>> import foilwork
    >>> plan = foilwork.plan_file("examples/soft-gradient.toml")
    >>> [mix.name for mix in plan.mixes[:3]]
    ['nape', 'crown', 'hairline']
"""

from foilwork import _rooms as _rooms
from foilwork._native import ROOMS as _ROOMS
from foilwork._native import Bounds, FoilworkError, OutOfRangeWarning, __version__

# As of `typing`, which takes longer to import than foilwork.
TYPE_CHECKING = False
if TYPE_CHECKING:
    from foilwork import (
        business,
        chart,
        colour,
        day,
        finding,
        hair,
        head,
        history,
        lift,
        limits,
        mix,
        money,
        peroxide,
        record,
        service,
        shop,
        source,
        teach,
        toner,
        workbook,
    )
    from foilwork.service import Plan, ServiceFileError, plan, plan_file, service_schema

__all__ = [
    "Bounds",
    "FoilworkError",
    "OutOfRangeWarning",
    "Plan",
    "ServiceFileError",
    "__version__",
    "business",
    "chart",
    "colour",
    "day",
    "finding",
    "hair",
    "head",
    "history",
    "lift",
    "limits",
    "mix",
    "money",
    "peroxide",
    "plan",
    "plan_file",
    "record",
    "service",
    "service_schema",
    "shop",
    "source",
    "teach",
    "toner",
    "workbook",
]

_OF_SERVICE = {"Plan", "ServiceFileError", "plan", "plan_file", "service_schema"}


def __getattr__(name: str) -> object:
    """A room, or what a service file needs, on first use: to make all rooms takes longer than all else of an import."""
    from importlib import import_module

    if name in _ROOMS:
        return import_module(f"foilwork.{name}")
    if name in _OF_SERVICE:
        value: object = getattr(import_module("foilwork.service"), name)
        globals()[name] = value
        return value
    message = f"module 'foilwork' has no attribute {name!r}"
    raise AttributeError(message)


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__} - {"TYPE_CHECKING"})
