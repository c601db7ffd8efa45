//! Delivering what a command came to: on the terminal, or into a file.

use super::{
    Answer, Outcome, Refusal,
    args::{OutputArgs, ReportArgs, TrailArgs},
    replace::replace,
};
use crate::{
    money::Rounding,
    source::TracedResult,
    text::{inert, is_active, trail_text},
};
use rust_decimal::Decimal;
use serde::Serialize;
use std::{fmt::Write as _, path::Path};

pub(super) use super::input::{read, read_grown};

/// Prints the text, or writes it to the file asked for; the status stays what it is.
pub(super) fn deliver(text: String, status: u8, output: &OutputArgs) -> Outcome {
    let text = inert(&text).into_owned();
    let Some(path) = &output.output else { return Ok(Answer { text, status }) };
    write(path, &text)?;
    Ok(Answer { text: String::new(), status })
}

/// Writes the text into a file.
pub(super) fn write(path: &Path, text: &str) -> Result<(), Refusal> {
    replace(path, text.as_bytes()).map_err(|why| Refusal(format!("cannot write {}: {why}", path.display())))
}

/// Prints or writes the data as JSON, or else the text made of it.
pub(super) fn report(args: &ReportArgs, data: &impl Serialize, text: impl FnOnce() -> String) -> Outcome {
    let text = if args.json { json(data)? } else { text() };
    deliver(text, 0, &args.output)
}

/// How results came about instead, where that was asked for.
pub(super) fn traced<E: Into<Refusal>>(
    (asked, report): (&TrailArgs, &ReportArgs),
    status: u8,
    results: impl FnOnce() -> Result<Vec<TracedResult>, E>,
) -> Option<Outcome> {
    let told = || {
        let results = results().map_err(Into::into)?;
        if results.is_empty() {
            let text = "--trail: there is no result to follow (leave it out to see why)";
            return Err(Refusal(text.to_owned()));
        }
        deliver(trail(&results, report.json)?, status, &report.output)
    };
    asked.trail.then(told)
}

/// How results came about, as data or as text.
pub(super) fn trail(results: &[TracedResult], as_json: bool) -> Result<String, Refusal> {
    if as_json { json(&results) } else { Ok(trail_text(results)) }
}

/// The data as JSON; what a terminal would obey is escaped, so that it is the same data for a program.
pub(super) fn json(data: &impl Serialize) -> Result<String, Refusal> {
    let mut out = String::new();
    for character in serde_json::to_string_pretty(data)?.chars() {
        if is_active(character) {
            let mut units = [0; 2];
            for unit in character.encode_utf16(&mut units) {
                write!(out, "\\u{unit:04x}")?;
            }
        } else {
            out.push(character);
        }
    }
    out.push('\n');
    Ok(out)
}

/// A decimal in at most so many decimals, half up.
pub(super) fn shown(value: Decimal, decimals: u32) -> Decimal {
    value.round_dp_with_strategy(decimals, Rounding::MidpointAwayFromZero.strategy()).normalize()
}
