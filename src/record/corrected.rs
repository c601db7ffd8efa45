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

#[cfg(test)]
mod tests {
    use super::{LogEntry, corrected};
    use crate::{
        colour::Level,
        quantity::Duration,
        record::{Noted, replay},
    };

    fn line(section: Option<&str>, at: f64, what: Noted) -> LogEntry {
        let level = Some(Level::clamped(7.0));
        LogEntry { section: section.map(str::to_owned), level, ..LogEntry::new(Duration::from_min(at).unwrap(), what) }
    }

    /// By hand: what the last of these lines does to those before it.
    #[test]
    fn a_line_says_what_it_does_to_those_before_it() {
        let (begun, applied, rinsed, seen) = (Noted::Begun, Noted::Applied, Noted::Rinsed, Noted::Seen);
        let told = |log: &[(&str, f64, Noted)]| {
            let log: Vec<LogEntry> = log.iter().map(|(name, at, what)| line(Some(name), *at, *what)).collect();
            let (last, before) = log.split_last().unwrap();
            corrected(&replay(before), &replay(&log), last)
        };
        assert_eq!(told(&[("nape", 0.0, begun)]), "");
        assert_eq!(told(&[("nape", 0.0, begun), ("nape", 3.5, begun)]), " (corrects minute 0)");
        assert_eq!(
            told(&[("nape", 0.0, begun), ("nape", 20.5, applied), ("nape", 18.0, applied)]),
            " (corrects minute 20.5)"
        );
        assert_eq!(
            told(&[("nape", 0.0, begun), ("nape", 40.0, rinsed), ("nape", 45.0, rinsed)]),
            " (corrects minute 40)"
        );
        // Another application corrects none of the first.
        assert_eq!(told(&[("nape", 0.0, begun), ("nape", 40.0, rinsed), ("nape", 50.0, begun)]), "");
        let on_then =
            " (left out: it was on then; correct the minute, or the begin or rinse noted before where that is wrong)";
        assert_eq!(told(&[("nape", 0.0, begun), ("nape", 60.0, rinsed), ("nape", 20.0, begun)]), on_then);
        let not_on = " (left out: it was not on then; correct the minute)";
        assert_eq!(told(&[("nape", 10.0, begun), ("nape", 5.0, applied)]), not_on);
        // Another section is not corrected, and minute 5 is later than 3.
        let late = " (late: minute 5 is noted and taken as now; take its line out of the log where it is wrong)";
        assert_eq!(told(&[("nape", 0.0, begun), ("crown", 5.0, begun), ("nape", 3.0, applied)]), late);
        assert_eq!(told(&[("nape", 0.0, begun), ("nape", 5.0, seen), ("crown", 4.0, seen)]), late);
        assert_eq!(told(&[("nape", 0.0, begun), ("nape", 5.0, seen), ("nape", 5.0, seen)]), "");
    }
}
