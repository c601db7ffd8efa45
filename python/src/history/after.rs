//! Wrappers of `foilwork::history`: care at home, and when to come back.

use crate::{plain::objects, record::LogEntry, sequence::Sequence, service::Plan, source::TracedResult};
use foilwork::{history, record};
use pyo3::prelude::*;

/// When regrowth will show, from the start line of each section and the growth of this hair.
///
/// Args:
///     plan: the plan.
///
/// Returns:
///     A :class:`foilwork.planned.Rebooking`, or ``None`` for a plan without a section.
///
/// Raises:
///     FoilworkError: never for a plan that was made.
///
/// Examples:
///     >>> from foilwork import plan_file
///     >>> from foilwork.history import rebooking
///     >>> back = rebooking(plan_file("examples/soft-gradient.toml"))
///     >>> back.section, back.usual
///     ('crown', '2026-12-23')
#[pyfunction]
pub fn rebooking<'py>(py: Python<'py>, plan: &Bound<'py, Plan>) -> PyResult<Option<Bound<'py, PyAny>>> {
    history::rebooking(plan.get().core()).map(|back| objects(py, "Rebooking", &back)).transpose()
}

/// What to mind at home, by what the hair went through; no product is named, and none of it says that anything is safe.
///
/// Args:
///     plan: the plan.
///     entries: the entries of its log.
///
/// Returns:
///     A :class:`foilwork.planned.HomeCare`.
///
/// Raises:
///     FoilworkError: never for entries that were made.
///
/// Examples:
///     >>> from foilwork import plan_file
///     >>> from foilwork.history import home_care
///     >>> from foilwork.record import LogEntry
///     >>> poor = LogEntry("elasticity", at_min=50, section="nape", elasticity="poor")
///     >>> home_care(plan_file("examples/soft-gradient.toml"), [poor]).elasticity
///     'poor'
#[pyfunction]
pub fn home_care<'py>(
    py: Python<'py>,
    plan: &Bound<'py, Plan>,
    entries: Sequence<LogEntry>,
) -> PyResult<Bound<'py, PyAny>> {
    let entries = entries.0.iter().map(LogEntry::core).collect::<PyResult<Vec<_>>>()?;
    objects(py, "HomeCare", &history::home_care(plan.get().core(), &record::replay(&entries)))
}

/// How the weeks until the regrowth shows come about.
///
/// Args:
///     plan: the plan.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult`, or ``None`` for a plan without a section.
///
/// Raises:
///     FoilworkError: never for a plan that was made.
///
/// Examples:
///     >>> from foilwork import plan_file
///     >>> from foilwork.history import trace_rebooking
///     >>> trace_rebooking(plan_file("examples/soft-gradient.toml")).unit
///     'weeks'
#[pyfunction]
pub fn trace_rebooking(plan: &Bound<'_, Plan>) -> Option<TracedResult> {
    let plan = plan.get().core();
    history::rebooking(plan).map(|back| back.trail(plan).into())
}
