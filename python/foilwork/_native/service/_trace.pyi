from foilwork._native.service._plan import Plan
from foilwork._native.source._trail import TracedResult

__all__ = [
    "trace_consultation",
    "trace_day",
]

def trace_day(plan: Plan) -> list[TracedResult]:
    """How the minutes of the day in its best order came about, with bounds where the minutes of putting on are estimates.

    Args:
        plan: the plan.

    Returns:
        A :class:`foilwork.source.TracedResult` for each; none where no day is laid out.

    Examples:
        >>> from foilwork import plan_file
        >>> from foilwork.service import trace_day
        >>> trace_day(plan_file("examples/soft-gradient.toml"))[-1].what
        'finish'
    """

def trace_consultation(plan: Plan) -> list[TracedResult]:
    """How the decision of the consultation, and what the guest pays, came about.

    Args:
        plan: the plan.

    Returns:
        A :class:`foilwork.source.TracedResult` for each.

    Raises:
        ServiceFileError: never for a plan that was made.

    Examples:
        >>> from foilwork import plan_file
        >>> from foilwork.service import trace_consultation
        >>> trace_consultation(plan_file("examples/soft-gradient.toml"))[0].value
        'restrict'
    """
