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

from foilwork import (
    business,
    chart,
    colour,
    day,
    finding,
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
)
from foilwork._native import Bounds, FoilworkError, OutOfRangeWarning, __version__
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
]
