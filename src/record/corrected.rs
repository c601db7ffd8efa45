//! What a line of the log does to what was noted before.

use super::{LogEntry, Noted, SectionSoFar, SoFar};
use crate::text::amount;

/// That a begin, an end of application or a rinse takes the place of one noted before, or counts for nothing; empty where neither.
pub(crate) fn corrected(before: &SoFar, after: &SoFar, entry: &LogEntry) -> String {
    if !entry.what.is_a_time() {
        return String::new();
    }
    if after.left_out.contains(entry) {
        let why = if entry.what == Noted::Begun { "it was on then" } else { "it was not on then" };
        return format!(" (left out: {why}; correct the minute)");
    }
    let of = |so_far: &SoFar| {
        let one = so_far.sections.iter().find(|one| Some(&one.name) == entry.section.as_ref());
        one.map(SectionSoFar::times).unwrap_or_default()
    };
    let (was, is) = (of(before), of(after));
    // Another application takes the place of nothing.
    let pairs = was.iter().zip(&is).filter(|_| was.len() == is.len());
    let moved = pairs.filter_map(|(was, is)| was.zip(*is)).find(|(was, is)| was != is);
    moved.map(|(was, _)| format!(" (corrects minute {})", amount(was, 1))).unwrap_or_default()
}
