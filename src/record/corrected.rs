//! What a line of the log does to what was noted before.

use super::{LogEntry, SectionSoFar, SoFar};
use crate::text::amount;

/// That a begin, an end of application or a rinse takes the place of one noted before, or counts for nothing, or else that a later
/// minute is noted; empty where none of it is so.
pub(crate) fn corrected(before: &SoFar, after: &SoFar, entry: &LogEntry) -> String {
    if after.left_out.contains(entry) {
        return format!(" (left out: {})", entry.what.why_left_out());
    }
    let of = |so_far: &SoFar| {
        let one = so_far.sections.iter().find(|one| Some(&one.name) == entry.section.as_ref());
        one.map(SectionSoFar::times).unwrap_or_default()
    };
    let (was, is) = (of(before), of(after));
    // Another application takes the place of nothing.
    let pairs = was.iter().zip(&is).filter(|_| was.len() == is.len());
    let moved = pairs.filter_map(|(was, is)| was.zip(*is)).find(|(was, is)| was != is);
    if let Some((was, _)) = moved {
        return format!(" (corrects minute {})", amount(was, 1));
    }
    if entry.at < after.now {
        let now = amount(after.now, 0);
        return format!(
            " (late: minute {now} is noted and taken as now; take its line out of the log where it is wrong)"
        );
    }
    String::new()
}
