from collections.abc import Iterable

from foilwork import planned
from foilwork._native.record._log import LogEntry
from foilwork._native.service._plan import Plan
from foilwork._native.source._trail import TracedResult

__all__ = [
    "home_care",
    "rebooking",
    "trace_rebooking",
]

def home_care(plan: Plan, entries: Iterable[LogEntry]) -> planned.HomeCare:
    """What to mind at home, by what the hair went through; no product is named, and none of it says that anything is safe.

    Args:
        plan: the plan.
        entries: the entries of its log.

    Returns:
        A :class:`foilwork.planned.HomeCare`.

    Raises:
        FoilworkError: never for entries that were made.

    Examples:
        >>> from foilwork import plan_file
        >>> from foilwork.history import home_care
        >>> from foilwork.record import LogEntry
        >>> poor = LogEntry("elasticity", at_min=50, section="nape", elasticity="poor")
        >>> home_care(plan_file("examples/soft-gradient.toml"), [poor]).elasticity
        'poor'
    """
def rebooking(plan: Plan) -> planned.Rebooking | None:
    """When regrowth will show, from the start line of each section and the growth of this hair.

    Args:
        plan: the plan.

    Returns:
        A :class:`foilwork.planned.Rebooking`, or ``None`` for a plan without a section.

    Raises:
        FoilworkError: never for a plan that was made.

    Examples:
        >>> from foilwork import plan_file
        >>> from foilwork.history import rebooking
        >>> back = rebooking(plan_file("examples/soft-gradient.toml"))
        >>> back.section, back.usual
        ('crown', '2026-12-23')
    """

def trace_rebooking(plan: Plan) -> TracedResult | None:
    """How the weeks until the regrowth shows come about.

    Args:
        plan: the plan.

    Returns:
        A :class:`foilwork.source.TracedResult`, or ``None`` for a plan without a section.

    Raises:
        FoilworkError: never for a plan that was made.

    Examples:
        >>> from foilwork import plan_file
        >>> from foilwork.history import trace_rebooking
        >>> trace_rebooking(plan_file("examples/soft-gradient.toml")).unit
        'weeks'
    """
