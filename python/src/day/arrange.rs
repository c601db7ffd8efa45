//! Wrappers of `foilwork::day`: the best order, and a given one.

use super::{
    timeline::Timeline,
    work::{Before, Floor, SectionWork, floor_of},
};
use crate::{error::raise, sequence::Sequence};
use foilwork::day;
use pyo3::prelude::*;

pub(super) type Work = (Vec<day::SectionWork>, Vec<day::Before>, day::Floor);

pub(super) fn core(work: &[SectionWork], before: Option<Sequence<Before>>, floor: Option<Floor>) -> PyResult<Work> {
    let before = before.map(|before| before.0).unwrap_or_default();
    Ok((
        work.iter().map(SectionWork::core).collect::<PyResult<_>>()?,
        before.iter().map(Before::core).collect::<PyResult<_>>()?,
        floor_of(floor)?,
    ))
}

/// Find the order of the work with the earliest finish.
///
/// With one pair of hands the finish is proven where that takes no longer than ``effort`` allows: a handful of sections
/// quickly, about twelve thoroughly. Otherwise it is the best that a search finds, with a bound beside it that nothing can
/// beat; ``proven`` says which. Hands never put off what they could begin, except to rinse first.
///
/// Args:
///     work: the sections.
///     before: what comes before what.
///     floor: hands, basins and the small work; one pair of hands where it is not said.
///     effort: ``"quick"`` for a few thousandths of a second, ``"thorough"`` for up to about one.
///
/// Returns:
///     The day: times of each section, every piece of work, finish and idle time.
///
/// Raises:
///     FoilworkError: no section, or rules that clash; the smallest set of them is named.
///
/// Examples:
///     >>> from foilwork.day import Before, SectionWork, arrange
///     >>> hairline = SectionWork("hairline", apply_min=10, develop_min=20, longest_min=50)
///     >>> nape = SectionWork("nape", apply_min=15, develop_min=35, longest_min=60)
///     >>> day = arrange([hairline, nape])
///     >>> [section.name for section in day.sections], day.proven
///     (['nape', 'hairline'], True)
///     >>> arrange([hairline, nape], [Before(0, 1), Before(1, 0)])
///     Traceback (most recent call last):
///     foilwork.FoilworkError: these cannot hold together: nape after hairline (as the service says); hairline after nape (as the service says) (leave one of them out)
#[pyfunction]
#[pyo3(signature = (work, before = None, floor = None, *, effort = "thorough"))]
pub fn arrange(
    py: Python<'_>,
    work: Sequence<SectionWork>,
    before: Option<Sequence<Before>>,
    floor: Option<Floor>,
    effort: &str,
) -> PyResult<Timeline> {
    let effort = effort.parse().map_err(raise)?;
    let (work, before, floor) = core(&work.0, before, floor)?;
    let found = py.detach(|| day::arrange(&work, &before, &floor, effort)).map_err(raise)?;
    Ok(Timeline::from(&found))
}

/// Lay the work out in the order given, with the rinses where they end earliest.
///
/// Args:
///     work: the sections.
///     order: the places of the sections, from 0, in the order in which they are put on.
///     before: what comes before what.
///     floor: hands, basins and the small work; one pair of hands where it is not said.
///
/// Returns:
///     The day in this order.
///
/// Raises:
///     FoilworkError: an order that breaks a rule or a limit, or does not name each section once.
///
/// Examples:
///     >>> from foilwork.day import SectionWork, in_this_order
///     >>> hairline = SectionWork("hairline", apply_min=10, develop_min=20, longest_min=50)
///     >>> nape = SectionWork("nape", apply_min=15, develop_min=35, longest_min=60)
///     >>> [section.name for section in in_this_order([hairline, nape], [0, 1]).sections]
///     ['hairline', 'nape']
#[pyfunction]
#[pyo3(signature = (work, order, before = None, floor = None))]
pub fn in_this_order(
    work: Sequence<SectionWork>,
    order: Sequence<usize>,
    before: Option<Sequence<Before>>,
    floor: Option<Floor>,
) -> PyResult<Timeline> {
    let (work, before, floor) = core(&work.0, before, floor)?;
    Ok(Timeline::from(&day::in_this_order(&work, &before, &floor, &order.0).map_err(raise)?))
}
