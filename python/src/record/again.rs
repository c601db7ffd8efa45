//! Wrappers of `foilwork::record`: whether a section is put on a second time.

use super::{log::LogEntry, whole::so_far};
use crate::{answer::answer, bounds::Estimate, lift::Visit, sequence::Sequence, service::Plan};
use foilwork::{
    hair::Weeks,
    quantity::{Duration, Share},
    record,
};
use pyo3::prelude::*;

answer! {
    in "foilwork.record";
    /// What was not taken, and why.
    AgainRejected {
        /// What: one of the decisions of :class:`SecondApplication`.
        what: String,
        /// Why.
        why: String,
    }
}

answer! {
    in "foilwork.record";
    /// The decision on a second application of one section.
    SecondApplication {
        /// The section.
        section: String,
        /// The level seen last.
        level: f64,
        /// The level wanted.
        target_level: f64,
        /// ``"go-on"``, ``"look-now"``, ``"stop-and-tone"``, ``"fresh-mix"``, ``"test-first"``, ``"next-visit"`` or ``"treat-only"``.
        decision: String,
        /// When to look again, in min of the log, where it is left on or looked at now.
        look_again_min: Option<f64>,
        /// Why, the weightiest first.
        reasons: Vec<String>,
        /// What was not taken, with its reason.
        rejected: Vec<AgainRejected>,
        /// How often it was put on so far.
        applications: usize,
        /// How long the hair has carried mixture, all applications together.
        on_hair_min: f64,
        /// How long a fresh mix would take to the target; ``None`` where it is reached, or none reaches it.
        fresh_min: Option<Estimate<f64>>,
        /// The chance in percent that a fresh mix reaches the target within one application.
        fresh_chance_percent: Estimate<f64>,
        /// What the fibre has been through with such a fresh mix.
        strain_with_fresh: String,
        /// Weeks to leave before another visit, by what the fibre has been through so far.
        wait_weeks: Estimate<f64>,
        /// The first day of another visit, as ``YYYY-MM-DD``; ``None`` where hair and scalp are only treated.
        not_before: Option<String>,
        /// The visits that are left then, with the same mixture and time; empty where the target is reached, or where hair and scalp are only treated.
        visits: Vec<Visit>,
        /// What the decision rests on.
        basis: String,
    }
}

/// Decide on a second application, for every section whose level was seen.
///
/// What is left of the target, what hair and scalp say, how long and how often it was on, and what a fresh mix would bring,
/// in one. Comfort and condition come before the level; a condition that nobody noted is never taken as good.
///
/// Args:
///     plan: the plan made with ``levels_seen``.
///     entries: the entries of the log.
///
/// Returns:
///     The decisions with their reasons and what was not taken.
///
/// Raises:
///     FoilworkError: never for entries that were made.
///
/// Source:
///     Elasticity and comfort before level: common practice. How often in a visit, and the chance that is worth it: assumed.
///
/// Examples:
///     >>> from foilwork import plan_file
///     >>> from foilwork.record import LogEntry, second_applications
///     >>> entries = [LogEntry("begun", at_min=0, section="nape"), LogEntry("seen", at_min=48, section="nape", level=9)]
///     >>> nape = second_applications(plan_file("examples/soft-gradient.toml"), entries)[0]
///     >>> nape.decision, "fresh-mix" in [one.what for one in nape.rejected]
///     ('stop-and-tone', True)
#[pyfunction]
pub fn second_applications(plan: &Bound<'_, Plan>, entries: Sequence<LogEntry>) -> PyResult<Vec<SecondApplication>> {
    let rejected =
        |one: &record::AgainRejected| AgainRejected { what: one.what.code().to_owned(), why: one.why.clone() };
    let one = |one: &record::SecondApplication| SecondApplication {
        section: one.section.clone(),
        level: one.level.number(),
        target_level: one.target_level.number(),
        decision: one.decision.code().to_owned(),
        look_again_min: one.look_again.map(Duration::min),
        reasons: one.reasons.clone(),
        rejected: one.rejected.iter().map(rejected).collect(),
        applications: one.applications,
        on_hair_min: one.on_hair.min(),
        fresh_min: one.fresh.map(Into::into),
        fresh_chance_percent: Estimate::by(one.fresh_chance, Share::percent),
        strain_with_fresh: one.strain_with_fresh.code().to_owned(),
        wait_weeks: Estimate::by(one.wait, Weeks::weeks),
        not_before: one.not_before.map(|day| day.to_string()),
        visits: one.visits.iter().map(|visit| Visit::from(*visit)).collect(),
        basis: one.basis.code().to_owned(),
    };
    Ok(record::second_applications(plan.get().core(), &so_far(&entries.0)?).iter().map(one).collect())
}
