//! What a line of the log does to what was noted before.

use super::{LogEntry, Noted, SectionSoFar, SoFar};
use crate::{quantity::Duration, text::amount};

/// That a begin, an end of application or a rinse takes the place of one noted before, or counts for nothing; empty where neither.
pub(crate) fn corrected(before: &SoFar, after: &SoFar, entry: &LogEntry) -> String {
    if !matches!(entry.what, Noted::Begun | Noted::Applied | Noted::Rinsed) {
        return String::new();
    }
    let of = |so_far: &SoFar| {
        let one = so_far.sections.iter().find(|one| Some(&one.name) == entry.section.as_ref());
        one.map(times).unwrap_or_default()
    };
    let (was, is) = (of(before), of(after));
    if !is.contains(&Some(entry.at)) {
        return " (left out: it was not on then; correct the minute)".to_owned();
    }
    // Another application takes the place of nothing.
    let pairs = was.iter().zip(&is).filter(|_| was.len() == is.len());
    let moved = pairs.filter_map(|(was, is)| was.zip(*is)).find(|(was, is)| was != is);
    moved.map(|(was, _)| format!(" (corrects minute {})", amount(was, 1))).unwrap_or_default()
}

/// What is noted of the times of a section, one application after the other.
fn times(one: &SectionSoFar) -> Vec<Option<Duration>> {
    let earlier = one.earlier.iter().flat_map(|earlier| {
        [Some(earlier.begun), earlier.applied, Some(earlier.rinsed).filter(|_| earlier.rinse_noted)]
    });
    earlier.chain([one.begun, one.applied, one.rinsed]).collect()
}
