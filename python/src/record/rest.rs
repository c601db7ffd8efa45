//! Wrappers of `foilwork::record`: what is left of a service in its midst.

use super::{
    log::LogEntry,
    looked::AfterLevel,
    whole::{Instruction, so_far},
};
use crate::{answer::answer, day::Timeline, sequence::Sequence, service::Plan};
use foilwork::record;
use pyo3::prelude::*;

answer! {
    in "foilwork.record";
    /// What is left of a service, on the clock of its log.
    RestOfService {
        /// The latest minute noted.
        now_min: f64,
        /// Sections that come off now, with the reason.
        at_once: Vec<String>,
        /// Sections that are on for longer than they may before the water can reach them.
        overdue: Vec<String>,
        /// What is left, in the best order; ``None`` where all has to come off, or where there is none.
        timeline: Option<Timeline>,
        /// Why there is none.
        why_not: Option<String>,
        /// What follows from the log, the worst first.
        instructions: Vec<Instruction>,
        /// Lines that the plan does not know or that count for nothing, in words.
        left_out: Vec<String>,
        /// What the level known last of each section that is on says to do.
        levels: Vec<AfterLevel>,
    }
}

/// Arrange what is left of a service from where its log stands.
///
/// A section that has to be rinsed by what was seen, or by what the log says to do, comes off before anything else is begun. Nothing
/// more is begun while the scalp itches, after a foil that swelled, or where the plan says stop.
///
/// Args:
///     plan: the plan, made with ``levels_seen``.
///     entries: the entries of the log.
///
/// Returns:
///     What is left, what comes off now, what is overdue.
///
/// Raises:
///     FoilworkError: never for entries that were made.
///
/// Examples:
///     >>> from foilwork import plan_file
///     >>> from foilwork.record import LogEntry, rest_of_service
///     >>> entries = [LogEntry("begun", at_min=3, section="nape"), LogEntry("applied", at_min=24, section="nape")]
///     >>> rest = rest_of_service(plan_file("examples/soft-gradient.toml"), entries)
///     >>> rest.timeline.pieces[0].kind, rest.timeline.pieces[0].from_min
///     ('mix', 24.0)
#[pyfunction]
pub fn rest_of_service(plan: &Bound<'_, Plan>, entries: Sequence<LogEntry>) -> PyResult<RestOfService> {
    let (plan, so_far) = (plan.get().core(), so_far(&entries.0)?);
    let found = record::rest_of_service(plan, &so_far, &record::after_levels(plan, &so_far));
    Ok(RestOfService {
        now_min: found.now.min(),
        at_once: found.at_once.clone(),
        overdue: found.overdue.clone(),
        timeline: found.timeline.as_ref().map(Into::into),
        why_not: found.why_not.clone(),
        instructions: found.instructions.iter().map(Into::into).collect(),
        left_out: found.left_out.clone(),
        levels: found.levels.iter().map(Into::into).collect(),
    })
}
