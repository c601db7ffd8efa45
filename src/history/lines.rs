//! Kept records as text: a JSON object in each line, so that a line can be appended and a torn one is seen.

use super::{KeptRecord, Migration, migrate};
use crate::reader::from_value;

/// The form of the lines.
pub(super) const FORMAT: u32 = 1;
/// Steps from older forms; none was released before the first.
const STEPS: &[Migration] = &[];
const TORN: &str = "torn: the line has no end (the program was stopped while it was written; keep the record again)";

/// What a file of records holds, and what could not be read.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct KeptRecords {
    /// The records, in the order of the lines.
    pub records: Vec<KeptRecord>,
    /// Lines that could not be read; all others count.
    pub problems: Vec<RecordProblem>,
}

/// A line that cannot be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("line {line}: {message}")]
pub struct RecordProblem {
    /// The line, counted from one.
    pub line: u64,
    /// What is wrong, and the way out.
    pub message: String,
}

/// The line of a record, with its line break; append it to the file in one write.
///
/// # Example
///
/// ```
/// use foilwork::{history::{keep, read_records, record_line}, reader::Format, record::replay, service::plan_text};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let record = keep(&plan, &replay(&[]));
/// assert_eq!(read_records(&record_line(&record)).records, [record]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn record_line(record: &KeptRecord) -> String {
    // Plain fields always turn into JSON, whose texts hold no line break.
    let mut value = serde_json::to_value(record).unwrap_or_default();
    without_nulls(&mut value);
    format!("{value}\n")
}

fn without_nulls(value: &mut serde_json::Value) {
    match value {
        serde_json::Value::Object(fields) => {
            fields.retain(|_, field| !field.is_null() && field.as_array().is_none_or(|list| !list.is_empty()));
            fields.values_mut().for_each(without_nulls);
        }
        serde_json::Value::Array(items) => items.iter_mut().for_each(without_nulls),
        _ => {}
    }
}

/// Reads a file of records: a line that cannot be read is reported, and the others count.
///
/// # Example
///
/// ```
/// use foilwork::history::read_records;
///
/// let found = read_records("{\"format\":1,\"on\":\"2026-11-25\",\"title\":\"gloss\"}\n{\"format\":1,\"on");
/// assert_eq!((found.records.len(), found.problems[0].line), (1, 2));
/// ```
#[must_use]
pub fn read_records(text: &str) -> KeptRecords {
    let mut found = KeptRecords::default();
    let lines = text.strip_prefix('\u{feff}').unwrap_or(text).lines();
    for (line, text) in (1..).zip(lines).filter(|(_, text)| !text.trim().is_empty()) {
        match of_line(text) {
            Ok(record) => found.records.push(record),
            Err(message) => found.problems.push(RecordProblem { line, message }),
        }
    }
    found
}

fn of_line(text: &str) -> Result<KeptRecord, String> {
    let value: serde_json::Value = serde_json::from_str(text)
        .map_err(|error| if error.is_eof() { TORN.to_owned() } else { format!("not a record: {error}") })?;
    of_value(value)
}

/// A record from its plain data, of this form or an older one.
pub(super) fn of_value(value: serde_json::Value) -> Result<KeptRecord, String> {
    let value = migrate(value, STEPS, FORMAT).map_err(|error| error.to_string())?;
    from_value(&value).map_err(|problems| problems.lines().collect::<Vec<_>>().join("; "))
}
