use super::{Comfort, FoilHeat, LogEntry, Noted};
use crate::{
    colour::Level,
    quantity::{Duration, Mass, Quantity},
    service::shape::Elasticity,
};
use std::collections::HashMap;

/// Between two looks; nothing is put on for less, and what is noted anew within it corrects what was noted.
pub(super) const LEAST_MIN: f64 = 5.0;

/// What the log says of the service so far.
#[derive(Debug, Clone, PartialEq)]
pub struct SoFar {
    /// The latest minute noted.
    pub now: Duration,
    /// The sections, in the order in which they were first noted.
    pub sections: Vec<SectionSoFar>,
    /// When the guest was asked last, and the answer.
    pub comfort: Option<(Duration, Comfort)>,
    /// The worst answer of the day, and when it was first given; a better one later does not take it back.
    pub comfort_worst: Option<(Duration, Comfort)>,
    /// Reactions and accidents.
    pub incidents: Vec<(Duration, String)>,
    /// Begins, ends of an application and rinses that count for nothing: the section was not on then, or was on already.
    pub left_out: Vec<LogEntry>,
}

/// What the log says of a section.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SectionSoFar {
    /// Its name.
    pub name: String,
    /// Its first strand.
    pub begun: Option<Duration>,
    /// All of it is on.
    pub applied: Option<Duration>,
    /// It is rinsed.
    pub rinsed: Option<Duration>,
    /// Applications before it was begun anew; the three times above are those of the last.
    pub earlier: Vec<EarlierApplication>,
    /// Levels seen.
    pub seen: Vec<(Duration, Level)>,
    /// The foil looked at last, of the last application.
    pub foil: Option<FoilHeat>,
    /// When that was.
    pub foil_at: Option<Duration>,
    /// The worst foil of the day; a cooler one later does not take it back.
    pub foil_worst: Option<FoilHeat>,
    /// The worst strand of the day: a good one beside it does not take it back, and a good one of before the last application
    /// counts no more.
    pub elasticity: Option<Elasticity>,
    /// When that strand was tested, the last of those alike.
    pub elasticity_at: Option<Duration>,
    /// All that was weighed.
    pub weighed: Option<Mass>,
    /// What was left over.
    pub left_over: Option<Mass>,
    /// The level that it came to after the last application.
    pub result: Option<Level>,
    /// When that was read.
    pub result_at: Option<Duration>,
    /// Results of the last application that were read before that, in the order of their minutes.
    pub earlier_results: Vec<(Duration, Level)>,
    /// The tone that it came to.
    pub tone: Option<String>,
}

/// An application from its first strand to its rinse.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EarlierApplication {
    /// Its first strand.
    pub begun: Duration,
    /// All of it is on; none where nobody noted it.
    pub applied: Option<Duration>,
    /// It is rinsed, or begun anew where nobody noted a rinse.
    pub rinsed: Duration,
    /// Whether somebody noted the rinse.
    pub rinse_noted: bool,
}

impl SectionSoFar {
    /// The level known last: a result counts before a look of the same minute, and not before a later one.
    pub(crate) fn latest_level(&self) -> Option<(Duration, Level)> {
        let seen = self.seen.last().copied();
        read_last(self.result_at.zip(self.result), seen)
    }

    /// Every result that was read after the last application, in the order of their minutes.
    pub(super) fn results(&self) -> impl Iterator<Item = (Duration, Level)> {
        self.earlier_results.iter().copied().chain(self.result_at.zip(self.result))
    }

    /// What is noted of its times, one application after the other.
    pub(super) fn times(&self) -> Vec<Option<Duration>> {
        let earlier = self.earlier.iter().flat_map(|earlier| {
            [Some(earlier.begun), earlier.applied, Some(earlier.rinsed).filter(|_| earlier.rinse_noted)]
        });
        earlier.chain([self.begun, self.applied, self.rinsed]).collect()
    }

    /// Whether mixture is on it: begun or all on, and not rinsed.
    pub(super) fn is_on(&self) -> bool {
        self.begun.or(self.applied).is_some() && self.rinsed.is_none()
    }

    /// How often it was put on: begun again without a noted rinse, nobody knows that it was more than once.
    pub(super) fn applications(&self) -> usize {
        self.earlier.iter().filter(|earlier| earlier.rinse_noted).count() + 1
    }

    /// When it was first begun, put on and rinsed: what a plan knows of. The third may be no noted rinse, but the minute when it
    /// was begun again (see [`EarlierApplication::rinse_noted`]).
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::record::{read_log, replay};
    ///
    /// let line = |at: u32, what: &str| format!("{{\"format\":1,\"at_min\":{at},\"what\":\"{what}\",\"section\":\"nape\"}}\n");
    /// let log = read_log(&[line(3, "begun"), line(40, "rinsed"), line(50, "begun"), line(70, "rinsed")].concat());
    /// let nape = &replay(&log.entries).sections[0];
    /// assert_eq!((nape.first().0.map(|at| at.min()), nape.begun.map(|at| at.min())), (Some(3.0), Some(50.0)));
    /// assert_eq!(nape.carried().map(|carried| carried.min()), Some(57.0)); // 37 and 20
    /// ```
    #[must_use]
    pub fn first(&self) -> (Option<Duration>, Option<Duration>, Option<Duration>) {
        self.earlier.first().map_or((self.begun, self.applied, self.rinsed), |first| {
            (Some(first.begun), first.applied, Some(first.rinsed))
        })
    }

    /// How long its first strand carried mixture, all applications together; none before the last is rinsed.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::record::SectionSoFar;
    ///
    /// assert_eq!(SectionSoFar::default().carried(), None);
    /// ```
    #[must_use]
    pub fn carried(&self) -> Option<Duration> {
        let earlier: f64 = self.earlier.iter().map(|one| one.rinsed.min() - one.begun.min()).sum();
        let last = self.rinsed?.min() - self.begun?.min();
        Some(Duration::nearest((earlier + last).max(0.0)))
    }
}

/// Of a result and a look the later; of one minute the result.
pub(super) fn read_last(
    result: Option<(Duration, Level)>,
    seen: Option<(Duration, Level)>,
) -> Option<(Duration, Level)> {
    match (result, seen) {
        (Some(result), Some(seen)) if seen.0 > result.0 => Some(seen),
        (result, seen) => result.or(seen),
    }
}

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
        Noted::Begun if one.earlier.last().is_some_and(|last| last.rinse_noted && entry.at < last.rinsed) => {}
        Noted::Begun
            if one.begun.is_some_and(|begun| entry.at.min() - begun.min() > LEAST_MIN)
                && one.rinsed.is_some_and(|rinsed| entry.at < rinsed) => {}
        Noted::Begun => {
            // Where no rinse is noted, what was on stayed on until now as far as anybody knows.
            let rinsed = one.rinsed.unwrap_or(entry.at);
            if let Some(begun) = one.begun
                && rinsed <= entry.at
                && (one.rinsed.is_some() || begun < rinsed)
            {
                let rinse_noted = one.rinsed.is_some();
                one.earlier.push(EarlierApplication { begun, applied: one.applied, rinsed, rinse_noted });
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
