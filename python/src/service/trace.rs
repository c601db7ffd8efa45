//! Wrappers of `foilwork::service`: how a day and a consultation came about.

use super::Plan;
use crate::source::TracedResult;
use pyo3::prelude::*;

/// How the minutes of the day in its best order came about, with bounds where the minutes of putting on are estimates.
///
/// Args:
///     plan: the plan.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult` for each; none where no day is laid out.
///
/// Examples:
///     >>> from foilwork import plan_file
///     >>> from foilwork.service import trace_day
///     >>> trace_day(plan_file("examples/soft-gradient.toml"))[-1].what
///     'finish'
#[pyfunction]
pub fn trace_day(plan: &Bound<'_, Plan>) -> Vec<TracedResult> {
    plan.get().core().trail_of_day().into_iter().map(Into::into).collect()
}

/// How the decision of the consultation, and what the guest pays, came about.
///
/// Args:
///     plan: the plan.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult` for each.
///
/// Raises:
///     ServiceFileError: never for a plan that was made.
///
/// Examples:
///     >>> from foilwork import plan_file
///     >>> from foilwork.service import trace_consultation
///     >>> trace_consultation(plan_file("examples/soft-gradient.toml"))[0].value
///     'restrict'
#[pyfunction]
pub fn trace_consultation(py: Python<'_>, plan: &Bound<'_, Plan>) -> PyResult<Vec<TracedResult>> {
    Ok(plan.get().consultation(py)?.trail().into_iter().map(Into::into).collect())
}
