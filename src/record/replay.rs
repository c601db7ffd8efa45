use super::{Comfort, EarlierApplication, LogEntry, Noted, SectionSoFar, SoFar};
use crate::{
    colour::Level,
    quantity::{Duration, Mass},
    service::shape::Elasticity,
};
use std::collections::HashMap;

/// Between two looks; nothing is put on for less, and what is noted anew within it corrects what was noted.
pub(super) const LEAST_MIN: f64 = 5.0;

/// Goes through the entries in their order; the same entries give the same state.
///
/// # Example
///
/// ```
/// use foilwork::record::{read_log, replay};
///
/// let log = read_log("{\"format\":1,\"at_min\":3,\"what\":\"begun\",\"section\":\"nape\"}\n");
/// assert_eq!(replay(&log.entries).sections[0].name, "nape");
/// ```
#[must_use]
pub fn replay(entries: &[LogEntry]) -> SoFar {
    let mut so_far = SoFar {
        now: Duration::ZERO,
        sections: Vec::new(),
        comfort: None,
        comfort_worst: None,
        incidents: Vec::new(),
        left_out: Vec::new(),
    };
    let mut begins = HashMap::new();
    for entry in entries {
        match (entry.what, &entry.section) {
            (Noted::Comfort, _) => {
                let told = entry.comfort.map(|comfort| (entry.at, comfort));
                // An answer that is noted late is no answer to how it feels now.
                so_far.comfort =
                    told.filter(|_| is_latest(so_far.comfort.map(|(at, _)| at), entry.at)).or(so_far.comfort);
                let worse =
                    |(_, comfort): &(Duration, Comfort)| so_far.comfort_worst.is_none_or(|(_, worst)| *comfort > worst);
                so_far.comfort_worst = told.filter(worse).or(so_far.comfort_worst);
            }
            (Noted::Incident, _) => so_far.incidents.extend(entry.note.clone().map(|note| (entry.at, note))),
            (_, Some(name)) => {
                if !so_far.sections.iter().any(|one| one.name == *name) {
                    so_far.sections.push(SectionSoFar { name: name.clone(), ..SectionSoFar::default() });
                }
                let named = so_far.sections.iter_mut().filter(|one| one.name == *name);
                named.for_each(|one| note_of(one, entry, begins.entry(name.as_str()).or_default()));
                let counts = |one: &SectionSoFar| one.name != *name || one.times().contains(&Some(entry.at));
                if entry.what.is_a_time() && !so_far.sections.iter().all(counts) {
                    so_far.left_out.push(entry.clone());
                }
            }
            (_, None) => {}
        }
    }
    // A time that was corrected, or that counts for nothing, is no word on what time it is.
    let counts = |entry: &&LogEntry| {
        let of =
            |one: &SectionSoFar| Some(&one.name) == entry.section.as_ref() && one.times().contains(&Some(entry.at));
        !entry.what.is_a_time() || so_far.sections.iter().any(of)
    };
    let latest =
        entries.iter().filter(counts).map(|entry| entry.at).fold(Duration::ZERO, |a, b| if b > a { b } else { a });
    // What was left out, and counts since something else was corrected, is not left out.
    let left_out = so_far.left_out.iter().filter(|line| !counts(line)).cloned().collect();
    (so_far.now, so_far.left_out) = (latest, left_out);
    so_far
}

/// Whether what is noted of a minute is later than what is known, or takes its place.
fn is_latest(known: Option<Duration>, at: Duration) -> bool {
    known.is_none_or(|known| known <= at)
}

/// The begins of what is on, however often they are noted.
#[derive(Clone, Copy, Default)]
struct Begins {
    /// The earliest of them.
    earliest: Option<Duration>,
    /// Whether the line noted last of the section is one of them.
    in_a_row: bool,
}

/// A begin corrects those noted just before: nothing is put on, and put on anew, within so short a time. But it is held against the
/// earliest of them, for begins noted foil by foil would else move the first strand later without end.
fn note_of(one: &mut SectionSoFar, entry: &LogEntry, begins: &mut Begins) {
    if entry.what != Noted::Begun {
        begins.in_a_row = false;
        return note(one, entry);
    }
    let at = entry.at;
    let near = |begun: Duration| at.min() - begun.min() <= LEAST_MIN;
    let earlier = |known: Duration| if known < at { known } else { at };
    match begins.earliest {
        Some(first) if begins.in_a_row && near(first) => {
            begins.earliest = Some(earlier(first));
            return correct_begin(one, at);
        }
        // What is noted too late to correct the first does not correct one that corrected it: that one is no begin either.
        Some(first)
            if !near(first)
                && (begins.in_a_row || one.begun.is_some_and(near))
                && one.rinsed.is_none_or(|rinsed| at < rinsed) =>
        {
            correct_begin(one, first);
        }
        _ => {}
    }
    let applications = one.earlier.len();
    note(one, entry);
    let counts = one.begun == Some(at);
    begins.earliest = match begins.earliest {
        Some(first) if !counts => Some(first),
        Some(first) if one.earlier.len() == applications => Some(earlier(first)),
        _ => Some(at),
    };
    begins.in_a_row = counts;
}

fn correct_begin(one: &mut SectionSoFar, at: Duration) {
    one.begun = Some(at);
    // What was on before ended then, as far as anybody knows.
    if let Some(earlier) = one.earlier.last_mut().filter(|earlier| !earlier.rinse_noted) {
        earlier.rinsed = if at < earlier.begun { earlier.begun } else { at };
    }
}

fn note(one: &mut SectionSoFar, entry: &LogEntry) {
    let of_before = !one.earlier.is_empty() && one.begun.is_some_and(|begun| entry.at < begun);
    match entry.what {
        // Nothing is begun while it is on: between its begin and its rinse it is a slip of the pen, but for a correction of the begin.
        Noted::Begun if begin_of_first(one, entry.at) => {}
        Noted::Begun if one.earlier.last().is_some_and(|last| last.rinse_noted && entry.at < last.rinsed) => {}
        Noted::Begun
            if one.begun.is_some_and(|begun| entry.at.min() - begun.min() > LEAST_MIN)
                && one.rinsed.is_some_and(|rinsed| entry.at < rinsed) => {}
        Noted::Begun => {
            // Where no rinse is noted, what was on stayed on until now as far as anybody knows.
            let rinsed = one.rinsed.unwrap_or(entry.at);
            // All on long before, it had been begun, though nobody noted when.
            let all_on = one.applied.filter(|applied| entry.at.min() - applied.min() > LEAST_MIN);
            if let Some(begun) = one.begun.or(all_on)
                && rinsed <= entry.at
                && (one.rinsed.is_some() || begun < rinsed)
            {
                let (begin_noted, rinse_noted) = (one.begun.is_some(), one.rinsed.is_some());
                let applied = one.applied;
                one.earlier.push(EarlierApplication { begun, begin_noted, applied, rinsed, rinse_noted });
                (one.applied, one.rinsed) = (None, None);
                forget_before(one);
            }
            // What was rinsed before the first begin that is noted was something else.
            if one.begun.is_none() && rinsed < entry.at {
                (one.applied, one.rinsed) = (None, None);
                forget_before(one);
            }
            one.begun = Some(entry.at);
            one.applied = one.applied.filter(|applied| *applied >= entry.at);
        }
        // Nothing is all on before it is begun: what ended before the last begin is of an application before that, if of any.
        Noted::Applied if one.begun.is_some_and(|begun| entry.at < begun) => {
            if let Some((earlier, _)) = earlier_on(one, entry.at) {
                earlier.applied = Some(entry.at);
            }
        }
        Noted::Applied if one.rinsed.is_some_and(|rinsed| rinsed < entry.at) => {}
        Noted::Applied => one.applied = Some(entry.at),
        Noted::Rinsed => match one.begun {
            // A rinse that is noted late is of what was on then: what was begun after it is on all the same.
            Some(begun) if entry.at < begun || entry.at == begun && !one.earlier.is_empty() => {
                if let Some((earlier, _)) = earlier_on(one, entry.at) {
                    (earlier.rinsed, earlier.rinse_noted) = (entry.at, true);
                }
            }
            _ => one.rinsed = Some(entry.at),
        },
        Noted::Seen => see(one, entry.at, entry.level),
        Noted::Foil => {
            if !of_before && is_latest(one.foil_at, entry.at) {
                (one.foil, one.foil_at) = (entry.foil, Some(entry.at));
            }
            one.foil_worst = one.foil_worst.max(entry.foil);
        }
        Noted::Elasticity if of_before && entry.elasticity == Some(Elasticity::Good) => {}
        Noted::Elasticity => {
            if entry.elasticity > one.elasticity {
                (one.elasticity, one.elasticity_at) = (entry.elasticity, Some(entry.at));
            } else if entry.elasticity == one.elasticity && is_latest(one.elasticity_at, entry.at) {
                one.elasticity_at = Some(entry.at);
            }
        }
        Noted::Weighed => one.weighed = sum(one.weighed, entry.mass),
        Noted::LeftOver => one.left_over = sum(one.left_over, entry.mass),
        // What came of an application before the last is a level that was seen.
        Noted::Result if of_before => see(one, entry.at, entry.level),
        Noted::Result if !is_latest(one.result_at, entry.at) => {
            insert(&mut one.earlier_results, entry.at, entry.level);
        }
        Noted::Result => {
            // What was read before stays; what is noted anew of the same minute corrects it.
            let before = one.result_at.filter(|before| *before < entry.at);
            if let Some(before) = before {
                insert(&mut one.earlier_results, before, one.result);
            }
            (one.result, one.result_at, one.tone) = (entry.level, Some(entry.at), entry.tone.clone());
        }
        Noted::Comfort | Noted::Incident => {}
    }
}

/// A look takes its place by its minute, also where it is noted late; of one minute the last line counts last.
fn see(one: &mut SectionSoFar, at: Duration, level: Option<Level>) {
    insert(&mut one.seen, at, level);
}

fn insert(levels: &mut Vec<(Duration, Level)>, at: Duration, level: Option<Level>) {
    let place = levels.partition_point(|(earlier, _)| *earlier <= at);
    levels.splice(place..place, level.map(|level| (at, level)));
}

/// Whether a begin is that of the first application, of which nobody had noted any; then it is noted.
fn begin_of_first(one: &mut SectionSoFar, at: Duration) -> bool {
    let first = one.earlier.first_mut().filter(|first| !first.begin_noted && at <= first.begun);
    first.map(|first| (first.begun, first.begin_noted) = (at, true)).is_some()
}

/// The application before the last that was on at a minute, beside the begin of the last.
fn earlier_on(one: &mut SectionSoFar, at: Duration) -> Option<(&mut EarlierApplication, Duration)> {
    let last = one.begun.filter(|last| at <= *last)?;
    one.earlier.iter_mut().rev().find(|earlier| earlier.begun < at).map(|earlier| (earlier, last))
}

/// What was found before more lightener went on: the level is one that was seen, a good strand has to be tested anew.
fn forget_before(one: &mut SectionSoFar) {
    for (at, level) in std::mem::take(&mut one.earlier_results) {
        see(one, at, Some(level));
    }
    let last = one.latest_level().filter(|last| one.seen.last() != Some(last));
    if let Some((at, level)) = last {
        see(one, at, Some(level));
    }
    (one.result, one.result_at, one.tone) = (None, None, None);
    (one.foil, one.foil_at) = (None, None);
    one.elasticity = one.elasticity.filter(|strand| *strand != Elasticity::Good);
    one.elasticity_at = one.elasticity_at.filter(|_| one.elasticity.is_some());
}

fn sum(so_far: Option<Mass>, more: Option<Mass>) -> Option<Mass> {
    match (so_far, more) {
        (Some(a), Some(b)) => Some(a + b),
        (one, other) => one.or(other),
    }
}
