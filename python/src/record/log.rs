//! Wrappers of `foilwork::record`: the log.

use crate::{answer::answer, colour::AnyLevel, error::raise};
use foilwork::{
    colour::Level,
    quantity::{Duration, Mass},
    record,
};
use pyo3::prelude::*;

answer! {
    in "foilwork.record";
    /// A line of the log.
    ///
    /// Args:
    ///     what: ``"begun"``, ``"applied"``, ``"rinsed"``, ``"seen"``, ``"comfort"``, ``"foil"``, ``"elasticity"``,
    ///         ``"weighed"``, ``"left-over"``, ``"result"`` or ``"incident"``.
    ///     at_min: when, from the first brush.
    ///     section: the section, where it is about one.
    ///     level: a level, for ``"seen"`` and ``"result"``.
    ///     tone: a tone in words.
    ///     comfort: ``"fine"``, ``"tingling"``, ``"itching"`` or ``"burning"``.
    ///     foil: ``"cool"``, ``"warm"``, ``"hot"`` or ``"swollen"``.
    ///     elasticity: ``"good"``, ``"reduced"`` or ``"poor"``.
    ///     mass_g: a mass of mix, for ``"weighed"`` and ``"left-over"``.
    ///     note: words, for ``"incident"``.
    ///
    /// Raises:
    ///     FoilworkError: a value out of range, another word, or a field that is missing.
    ///
    /// Examples:
    ///     >>> from foilwork.record import LogEntry
    ///     >>> LogEntry("seen", at_min=20, section="nape", level=7.5).level
    ///     7.5
    LogEntry {
        /// What is noted.
        what: String,
        /// When, in min from the first brush.
        at_min: f64,
        /// The section.
        section: Option<String>,
        /// A level.
        level: Option<f64>,
        /// A tone in words.
        tone: Option<String>,
        /// How the scalp feels.
        comfort: Option<String>,
        /// What a foil is like.
        foil: Option<String>,
        /// Stretch and return.
        elasticity: Option<String>,
        /// A mass of mix, in g.
        mass_g: Option<f64>,
        /// Words.
        note: Option<String>,
    }
    impl {
        #[new]
        #[pyo3(signature = (what, *, at_min, section = None, level = None, tone = None, comfort = None, foil = None, elasticity = None, mass_g = None, note = None))]
        fn new(
            what: String,
            at_min: f64,
            section: Option<String>,
            level: Option<AnyLevel>,
            tone: Option<String>,
            comfort: Option<String>,
            foil: Option<String>,
            elasticity: Option<String>,
            mass_g: Option<f64>,
            note: Option<String>,
        ) -> PyResult<Self> {
            let level = level.map(|level| level.0.number());
            let made = Self { what, at_min, section, level, tone, comfort, foil, elasticity, mass_g, note };
            made.core()?;
            Ok(made)
        }
    }
}

impl LogEntry {
    pub fn core(&self) -> PyResult<record::LogEntry> {
        let entry = record::LogEntry {
            at: Duration::from_min(self.at_min).map_err(raise)?,
            what: self.what.parse().map_err(raise)?,
            section: self.section.clone(),
            level: self.level.map(Level::new).transpose().map_err(raise)?,
            tone: self.tone.clone(),
            comfort: self.comfort.as_deref().map(str::parse).transpose().map_err(raise)?,
            foil: self.foil.as_deref().map(str::parse).transpose().map_err(raise)?,
            elasticity: self.elasticity.as_deref().map(str::parse).transpose().map_err(raise)?,
            mass: self.mass_g.map(Mass::from_g).transpose().map_err(raise)?,
            note: self.note.clone(),
        };
        entry.checked().map_err(raise)
    }
}

impl From<&record::LogEntry> for LogEntry {
    fn from(entry: &record::LogEntry) -> Self {
        Self {
            what: entry.what.code().to_owned(),
            at_min: entry.at.min(),
            section: entry.section.clone(),
            level: entry.level.map(Level::number),
            tone: entry.tone.clone(),
            comfort: entry.comfort.map(|word| word.code().to_owned()),
            foil: entry.foil.map(|word| word.code().to_owned()),
            elasticity: entry.elasticity.map(|word| word.code().to_owned()),
            mass_g: entry.mass.map(Mass::g),
            note: entry.note.clone(),
        }
    }
}

answer! {
    in "foilwork.record";
    /// A line of a log that cannot be read.
    LogProblem {
        /// The line, counted from one.
        line: u64,
        /// What is wrong, and the way out.
        message: String,
    }
}

answer! {
    in "foilwork.record";
    /// What a log holds, and what could not be read.
    ServiceLog {
        /// The entries, in the order of the lines.
        entries: Vec<LogEntry>,
        /// Lines that could not be read; all others count.
        problems: Vec<LogProblem>,
    }
}

/// The line of an entry, with its line break; append it to the log in one write.
///
/// Args:
///     entry: the entry.
///
/// Returns:
///     The line.
///
/// Raises:
///     FoilworkError: never for an entry that was made.
///
/// Examples:
///     >>> from foilwork.record import LogEntry, log_line
///     >>> log_line(LogEntry("begun", at_min=3, section="nape"))
///     '{"format":1,"at_min":3.0,"what":"begun","section":"nape"}\n'
#[pyfunction]
#[expect(clippy::needless_pass_by_value, reason = "extracted from Python")]
pub fn log_line(entry: LogEntry) -> PyResult<String> {
    Ok(record::log_line(&entry.core()?))
}

/// Read a log; a line that a crash has torn is reported, and the others count.
///
/// Args:
///     text: the lines, as ``log_line`` and ``foilwork note`` write them.
///
/// Returns:
///     The entries, and the lines that could not be read.
///
/// Examples:
///     >>> from foilwork.record import read_log
///     >>> log = read_log('{"format":1,"at_min":3,"what":"begun","section":"nape"}\n{"format":1,"at_mi')
///     >>> len(log.entries), log.problems[0].line
///     (1, 2)
#[pyfunction]
pub fn read_log(text: &str) -> ServiceLog {
    let log = record::read_log(text);
    let problem = |problem: record::LogProblem| LogProblem { line: problem.line, message: problem.message };
    ServiceLog {
        entries: log.entries.iter().map(Into::into).collect(),
        problems: log.problems.into_iter().map(problem).collect(),
    }
}
