//! Wrappers of `foilwork::record`: what follows from the log, and plan against what happened.

use super::log::LogEntry;
use crate::{answer::answer, sequence::Sequence, service::Plan, source::TracedResult};
use foilwork::record;
use pyo3::prelude::*;

answer! {
    in "foilwork.record";
    /// What follows from the log.
    Instruction {
        /// How urgent it is: ``"stop"``, ``"warning"`` and so on.
        verdict: String,
        /// The section, where it is about one.
        section: Option<String>,
        /// What to do, and why.
        text: String,
        /// What it rests on.
        basis: String,
    }
}

impl From<&record::Instruction> for Instruction {
    fn from(one: &record::Instruction) -> Self {
        Self {
            verdict: one.verdict.code().to_owned(),
            section: one.section.clone(),
            text: one.text.clone(),
            basis: one.basis.code().to_owned(),
        }
    }
}

answer! {
    in "foilwork.record";
    /// One thing of one section, as planned and as it was.
    PlannedActual {
        /// The section.
        section: String,
        /// What of it: ``"mass-g"``, ``"applying-min"``, ``"on-hair-min"`` or ``"level"``.
        what: String,
        /// As planned, in the unit of ``what``.
        planned: f64,
        /// As it was.
        actual: f64,
        /// The difference in words.
        words: String,
    }
}

answer! {
    in "foilwork.record";
    /// How even the sections are, each against its own target.
    Evenness {
        /// From the section furthest below its target to the one furthest above, in levels.
        spread_levels: f64,
        /// The section furthest below its target.
        worst: String,
        /// By how many levels it is below.
        short_levels: f64,
        /// What to do.
        text: String,
        /// What the bounds of that advice rest on.
        basis: String,
    }
}

answer! {
    in "foilwork.record";
    /// What happened, beside what was planned.
    Record {
        /// The service.
        title: String,
        /// The guest's code.
        guest: Option<String>,
        /// Who works.
        colourist: Option<String>,
        /// Planned beside actual, section by section.
        pairs: Vec<PlannedActual>,
        /// How even the levels are, where at least two are known.
        evenness: Option<Evenness>,
        /// Levels that came out, less the median of the forecast for the minutes that the first strand carried the mix: the
        /// mean over the sections.
        model_error_levels: Option<f64>,
        /// How many of them lie inside the interval that holds 80 of 100.
        inside_interval: usize,
        /// How many there are.
        forecasts: usize,
        /// Sections among them whose begin or rinse is not noted: held against the forecast for the time planned.
        for_planned_time: Vec<String>,
        /// Sections that came to a level and whose forecast is not judged, with the reason.
        not_judged: Vec<String>,
        /// Lines that the plan does not know, in words.
        left_out: Vec<String>,
        /// What it takes to repeat the result, a line for each section; what was on and is not repeated where a stop is among the
        /// instructions.
        to_repeat: Vec<String>,
        /// What follows from the log and from what its plan allows.
        instructions: Vec<Instruction>,
    }
}

pub(super) fn so_far(entries: &[LogEntry]) -> PyResult<record::SoFar> {
    Ok(record::replay(&entries.iter().map(LogEntry::core).collect::<PyResult<Vec<_>>>()?))
}

/// What follows from the log, the worst first. Where there is none, it does not say that anything is safe.
///
/// Args:
///     entries: the entries of the log.
///
/// Returns:
///     What to do, and why.
///
/// Raises:
///     FoilworkError: never for entries that were made.
///
/// Examples:
///     >>> from foilwork.record import LogEntry, instructions
///     >>> instructions([LogEntry("comfort", at_min=20, comfort="burning")])[0].verdict
///     'stop'
#[pyfunction]
pub fn instructions(entries: Sequence<LogEntry>) -> PyResult<Vec<Instruction>> {
    Ok(record::instructions(&so_far(&entries.0)?).iter().map(Into::into).collect())
}

/// Hold what happened against the plan.
///
/// Args:
///     plan: the plan as made before the service; levels seen since then move a forecast.
///     entries: the entries of the log.
///
/// Returns:
///     Planned beside actual, evenness, the error of the forecast, and what it takes to repeat the result.
///
/// Raises:
///     FoilworkError: never for entries that were made.
///
/// Examples:
///     >>> from foilwork import plan_file
///     >>> from foilwork.record import LogEntry, record
///     >>> entries = [LogEntry("weighed", at_min=0, section="nape", mass_g=52.2)]
///     >>> entries += [LogEntry("result", at_min=60, section=name, level=8) for name in ("nape", "crown")]
///     >>> found = record(plan_file("examples/soft-gradient.toml"), entries)
///     >>> found.pairs[0].words, found.evenness.worst
///     ('5.8 more than planned', 'nape')
#[pyfunction]
#[pyo3(name = "record")]
pub fn record_of(plan: &Bound<'_, Plan>, entries: Sequence<LogEntry>) -> PyResult<Record> {
    let found = record::record(plan.get().core(), &so_far(&entries.0)?);
    let pair = |pair: &record::PlannedActual| PlannedActual {
        section: pair.section.clone(),
        what: pair.what.code().to_owned(),
        planned: pair.planned,
        actual: pair.actual,
        words: pair.words.clone(),
    };
    let even = |even: &record::Evenness| Evenness {
        spread_levels: even.spread_levels,
        worst: even.worst.clone(),
        short_levels: even.short_levels,
        text: even.text.clone(),
        basis: even.basis.code().to_owned(),
    };
    Ok(Record {
        title: found.title.clone(),
        guest: found.guest.clone(),
        colourist: found.colourist.clone(),
        pairs: found.pairs.iter().map(pair).collect(),
        evenness: found.evenness.as_ref().map(even),
        model_error_levels: found.model_error_levels,
        inside_interval: found.inside_interval,
        forecasts: found.forecasts,
        for_planned_time: found.for_planned_time.clone(),
        not_judged: found.not_judged.clone(),
        left_out: found.left_out.clone(),
        to_repeat: found.to_repeat.clone(),
        instructions: found.instructions.iter().map(Into::into).collect(),
    })
}

/// How the differences from the plan, the spread of the levels and the error of the forecast come about.
///
/// Args:
///     plan: the plan as made before the service.
///     entries: the entries of the log.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult` for each.
///
/// Raises:
///     FoilworkError: never for entries that were made.
///
/// Examples:
///     >>> from foilwork import plan_file
///     >>> from foilwork.record import LogEntry, trace_record
///     >>> plan = plan_file("examples/soft-gradient.toml")
///     >>> trace_record(plan, [LogEntry("weighed", at_min=0, section="nape", mass_g=52.2)])[0].what
///     'nape: mix, more than planned'
#[pyfunction]
pub fn trace_record(plan: &Bound<'_, Plan>, entries: Sequence<LogEntry>) -> PyResult<Vec<TracedResult>> {
    let found = record::trace_record(plan.get().core(), &so_far(&entries.0)?);
    Ok(found.into_iter().map(Into::into).collect())
}
