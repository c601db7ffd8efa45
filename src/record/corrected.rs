//! What a line of the log does to what was noted before.

use super::{LogEntry, Noted, SectionSoFar, SoFar};
use crate::{quantity::Duration, text::amount};

/// That a begin, an end of application or a rinse takes the place of one noted before, or counts for nothing; empty where neither.
pub(crate) fn corrected(before: &SoFar, after: &SoFar, entry: &LogEntry) -> String {
    if !entry.what.is_a_time() {
        let later = latest(after, entry).filter(|later| *later > entry.at);
        let told = |later| {
            format!(
                " (minute {}, noted before, is later and counts; take its line out of the log where that minute is wrong)",
                amount(later, 0)
            )
        };
        return later.map(told).unwrap_or_default();
    }
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
    moved.map(|(was, _)| format!(" (corrects minute {})", amount(was, 1))).unwrap_or_default()
}

/// The minute of what counts of such a note.
fn latest(so_far: &SoFar, entry: &LogEntry) -> Option<Duration> {
    let one = so_far.sections.iter().find(|one| Some(&one.name) == entry.section.as_ref());
    match entry.what {
        Noted::Comfort => so_far.comfort.map(|(at, _)| at),
        Noted::Result => one?.result_at,
        Noted::Foil => one?.foil_at,
        _ => None,
    }
}
