from collections.abc import Iterable

from foilwork._native.day._timeline import Timeline
from foilwork._native.day._work import Before, Floor, SectionWork

__all__ = [
    "arrange",
    "in_this_order",
]

def arrange(
    work: Iterable[SectionWork],
    before: Iterable[Before] | None = None,
    floor: Floor | None = None,
    *,
    effort: str = "thorough",
) -> Timeline:
    """Find the order of the work with the earliest finish.

    With one pair of hands the finish is proven where that takes no longer than ``effort`` allows: a handful of sections
    quickly, about twelve thoroughly. Otherwise it is the best that a search finds, with a bound beside it that nothing can
    beat; ``proven`` says which. Hands never put off what they could begin, except to rinse first.

    Args:
        work: the sections.
        before: what comes before what.
        floor: hands, basins and the small work; one pair of hands where it is not said.
        effort: ``"quick"`` for a few thousandths of a second, ``"thorough"`` for up to about one.

    Returns:
        The day: times of each section, every piece of work, finish and idle time.

    Raises:
        FoilworkError: no section, or rules that clash; the smallest set of them is named.

    Examples:
        >>> from foilwork.day import Before, SectionWork, arrange
        >>> hairline = SectionWork("hairline", apply_min=10, develop_min=20, longest_min=50)
        >>> nape = SectionWork("nape", apply_min=15, develop_min=35, longest_min=60)
        >>> day = arrange([hairline, nape])
        >>> [section.name for section in day.sections], day.proven
        (['nape', 'hairline'], True)
        >>> arrange([hairline, nape], [Before(0, 1), Before(1, 0)])
        Traceback (most recent call last):
        foilwork.FoilworkError: these cannot hold together: nape after hairline (as the service says); hairline after nape (as the service says) (leave one of them out)
    """
def in_this_order(
    work: Iterable[SectionWork],
    order: Iterable[int],
    before: Iterable[Before] | None = None,
    floor: Floor | None = None,
) -> Timeline:
    """Lay the work out in the order given, with the rinses where they end earliest.

    Args:
        work: the sections.
        order: the places of the sections, from 0, in the order in which they are put on.
        before: what comes before what.
        floor: hands, basins and the small work; one pair of hands where it is not said.

    Returns:
        The day in this order.

    Raises:
        FoilworkError: an order that breaks a rule or a limit, or does not name each section once.

    Examples:
        >>> from foilwork.day import SectionWork, in_this_order
        >>> hairline = SectionWork("hairline", apply_min=10, develop_min=20, longest_min=50)
        >>> nape = SectionWork("nape", apply_min=15, develop_min=35, longest_min=60)
        >>> [section.name for section in in_this_order([hairline, nape], [0, 1]).sections]
        ['hairline', 'nape']
    """
