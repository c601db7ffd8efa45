//! Wrappers of `foilwork::record`: levels of the log as a plan takes them, and what the plan says of them.

use super::{log::LogEntry, whole::so_far};
use crate::{answer::answer, sequence::Sequence, service::Plan};
use foilwork::{quantity::Duration, record};
use pyo3::prelude::*;

answer! {
    in "foilwork.record";
    /// Levels of a log, as a plan takes them.
    LevelsSeen {
        /// Each as the argument ``seen`` of ``plan`` and ``plan_file`` takes it, on the clock of the sheet: as long after
        /// the planned begin as it was seen after the real one.
        levels: Vec<String>,
        /// Levels that no forecast can take, with the reason.
        left_out: Vec<String>,
    }
}

answer! {
    in "foilwork.record";
    /// A level that was seen, and what follows from it. Times are those of the log.
    AfterLevel {
        /// The section.
        section: String,
        /// When it was seen, in min.
        at_min: f64,
        /// What was seen.
        level: f64,
        /// What to do.
        next: String,
        /// Why.
        why: String,
        /// When to look again, in min.
        look_again_min: Option<f64>,
    }
}

impl From<&record::AfterLevel> for AfterLevel {
    fn from(one: &record::AfterLevel) -> Self {
        Self {
            section: one.section.clone(),
            at_min: one.at.min(),
            level: one.level.number(),
            next: one.next.code().to_owned(),
            why: one.why.clone(),
            look_again_min: one.look_again.map(Duration::min),
        }
    }
}

/// The levels of a log for the plan that it belongs to. Where a begin is not noted, it is taken as planned.
///
/// Args:
///     plan: the plan as made before the service.
///     entries: the entries of the log.
///
/// Returns:
///     The levels, and those left out.
///
/// Raises:
///     FoilworkError: never for entries that were made.
///
/// Examples:
///     >>> from foilwork import plan_file
///     >>> from foilwork.record import LogEntry, levels_seen
///     >>> entries = [LogEntry("begun", at_min=4, section="nape")]
///     >>> entries += [LogEntry("seen", at_min=29, section="nape", level=7.5)]
///     >>> levels_seen(plan_file("examples/soft-gradient.toml"), entries).levels
///     ['nape=7.5@25']
#[pyfunction]
pub fn levels_seen(plan: &Bound<'_, Plan>, entries: Sequence<LogEntry>) -> PyResult<LevelsSeen> {
    let found = record::levels_seen(plan.get().core(), &so_far(&entries.0)?);
    Ok(LevelsSeen {
        levels: found.levels.iter().map(ToString::to_string).collect(),
        left_out: found.left_out.iter().map(ToString::to_string).collect(),
    })
}

/// What the levels of a log say to do, on its own clock.
///
/// Args:
///     plan: the plan made with ``levels_seen``.
///     entries: the entries of the log.
///
/// Returns:
///     What follows from each level.
///
/// Raises:
///     FoilworkError: never for entries that were made.
///
/// Examples:
///     >>> from foilwork import plan_file
///     >>> from foilwork.record import LogEntry, after_levels, levels_seen
///     >>> file = "examples/soft-gradient.toml"
///     >>> entries = [LogEntry("begun", at_min=4, section="nape")]
///     >>> entries += [LogEntry("seen", at_min=29, section="nape", level=7.5)]
///     >>> moved = plan_file(file, seen=levels_seen(plan_file(file), entries).levels)
///     >>> after_levels(moved, entries)[0].at_min
///     29.0
#[pyfunction]
pub fn after_levels(plan: &Bound<'_, Plan>, entries: Sequence<LogEntry>) -> PyResult<Vec<AfterLevel>> {
    Ok(record::after_levels(plan.get().core(), &so_far(&entries.0)?).iter().map(Into::into).collect())
}
