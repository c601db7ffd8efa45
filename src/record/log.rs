//! The log as text: a JSON object in each line, so that a line can be appended and a torn one is seen.

use super::{Comfort, FoilHeat, LogEntry, Noted};
use crate::{
    colour::Level,
    quantity::{Duration, Mass},
    service::shape::Elasticity,
};
use serde::{Deserialize, Serialize};

/// The version of the lines.
const FORMAT: u32 = 1;
const TORN: &str = "torn: the line has no end (the program was stopped while it was written; enter it again)";

/// What a log holds, and what could not be read.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ServiceLog {
    /// The entries, in the order of the lines.
    pub entries: Vec<LogEntry>,
    /// Lines that could not be read; all others count.
    pub problems: Vec<LogProblem>,
}

/// A line that cannot be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("line {line}: {message}")]
pub struct LogProblem {
    /// The line, counted from one.
    pub line: u64,
    /// What is wrong, and the way out.
    pub message: String,
}

/// A line as it is written.
#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Line {
    format: u32,
    at_min: f64,
    what: Noted,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    section: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    level: Option<f64>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    tone: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    comfort: Option<Comfort>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    foil: Option<FoilHeat>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    elasticity: Option<Elasticity>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    mass_g: Option<f64>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    note: Option<String>,
}

/// The line of an entry, with its line break; append it to the log in one write.
///
/// # Example
///
/// ```
/// use foilwork::{quantity::Duration, record::{Comfort, LogEntry, Noted, log_line}};
///
/// let asked = LogEntry { comfort: Some(Comfort::Fine), ..LogEntry::new(Duration::from_min(10.0)?, Noted::Comfort) };
/// assert_eq!(log_line(&asked), "{\"format\":1,\"at_min\":10.0,\"what\":\"comfort\",\"comfort\":\"fine\"}\n");
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
#[must_use]
pub fn log_line(entry: &LogEntry) -> String {
    let line = Line {
        format: FORMAT,
        at_min: entry.at.min(),
        what: entry.what,
        section: entry.section.clone(),
        level: entry.level.map(Level::number),
        tone: entry.tone.clone(),
        comfort: entry.comfort,
        foil: entry.foil,
        elasticity: entry.elasticity,
        mass_g: entry.mass.map(Mass::g),
        note: entry.note.clone(),
    };
    // Plain fields always turn into JSON, whose texts hold no line break.
    format!("{}\n", serde_json::to_string(&line).unwrap_or_default())
}

/// Reads a log: a line that cannot be read is reported, and the others count.
///
/// # Example
///
/// ```
/// use foilwork::record::read_log;
///
/// let log = read_log("{\"format\":1,\"at_min\":3,\"what\":\"begun\",\"section\":\"nape\"}\n{\"format\":1,\"at_mi");
/// assert_eq!(log.entries.len(), 1);
/// assert!(log.problems[0].to_string().starts_with("line 2: torn"));
/// ```
#[must_use]
pub fn read_log(text: &str) -> ServiceLog {
    let mut log = ServiceLog::default();
    let lines = text.strip_prefix('\u{feff}').unwrap_or(text).lines();
    for (line, text) in (1..).zip(lines).filter(|(_, text)| !text.trim().is_empty()) {
        match entry(text) {
            Ok(entry) => log.entries.push(entry),
            Err(message) => log.problems.push(LogProblem { line, message }),
        }
    }
    log
}

fn entry(text: &str) -> Result<LogEntry, String> {
    let line: Line = serde_json::from_str(text)
        .map_err(|error| if error.is_eof() { TORN.to_owned() } else { format!("not a line of a log: {error}") })?;
    if line.format != FORMAT {
        return Err(format!("format {}: this release reads {FORMAT}", line.format));
    }
    let entry = LogEntry {
        at: Duration::from_min(line.at_min).map_err(|error| format!("at_min: {error}"))?,
        what: line.what,
        section: line.section,
        level: line.level.map(Level::new).transpose().map_err(|error| format!("level: {error}"))?,
        tone: line.tone,
        comfort: line.comfort,
        foil: line.foil,
        elasticity: line.elasticity,
        mass: line.mass_g.map(Mass::from_g).transpose().map_err(|error| format!("mass_g: {error}"))?,
        note: line.note,
    };
    entry.checked().map_err(|error| error.to_string())
}
