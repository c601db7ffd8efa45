use super::{Comfort, FoilHeat, LogEntry, Noted};
use crate::{
    colour::Level,
    quantity::{Duration, Mass, Quantity},
    service::shape::Elasticity,
};

/// What the log says of the service so far.
#[derive(Debug, Clone, PartialEq)]
pub struct SoFar {
    /// The latest minute noted.
    pub now: Duration,
    /// The sections, in the order in which they were first noted.
    pub sections: Vec<SectionSoFar>,
    /// When the guest was asked last, and the answer.
    pub comfort: Option<(Duration, Comfort)>,
    /// Reactions and accidents.
    pub incidents: Vec<(Duration, String)>,
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
    /// Applications that were rinsed before it was begun anew; the three times above are those of the last.
    pub earlier: Vec<EarlierApplication>,
    /// Levels seen.
    pub seen: Vec<(Duration, Level)>,
    /// The foil looked at last.
    pub foil: Option<FoilHeat>,
    /// The last test of a strand.
    pub elasticity: Option<Elasticity>,
    /// All that was weighed.
    pub weighed: Option<Mass>,
    /// What was left over.
    pub left_over: Option<Mass>,
    /// The level that it came to.
    pub result: Option<Level>,
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
    /// It is rinsed.
    pub rinsed: Duration,
}

impl SectionSoFar {
    /// When it was first begun, put on and rinsed: what a plan knows of.
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
    let mut so_far = SoFar { now: Duration::ZERO, sections: Vec::new(), comfort: None, incidents: Vec::new() };
    for entry in entries {
        if entry.at > so_far.now {
            so_far.now = entry.at;
        }
        match (entry.what, &entry.section) {
            (Noted::Comfort, _) => so_far.comfort = entry.comfort.map(|comfort| (entry.at, comfort)),
            (Noted::Incident, _) => so_far.incidents.extend(entry.note.clone().map(|note| (entry.at, note))),
            (_, Some(name)) => {
                if !so_far.sections.iter().any(|one| one.name == *name) {
                    so_far.sections.push(SectionSoFar { name: name.clone(), ..SectionSoFar::default() });
                }
                so_far.sections.iter_mut().filter(|one| one.name == *name).for_each(|one| note(one, entry));
            }
            (_, None) => {}
        }
    }
    so_far
}

fn note(one: &mut SectionSoFar, entry: &LogEntry) {
    match entry.what {
        Noted::Begun => {
            if let (Some(begun), Some(rinsed)) = (one.begun, one.rinsed)
                && rinsed <= entry.at
            {
                one.earlier.push(EarlierApplication { begun, applied: one.applied, rinsed });
                (one.applied, one.rinsed) = (None, None);
            }
            one.begun = Some(entry.at);
        }
        Noted::Applied => one.applied = Some(entry.at),
        Noted::Rinsed => one.rinsed = Some(entry.at),
        Noted::Seen => one.seen.extend(entry.level.map(|level| (entry.at, level))),
        Noted::Foil => one.foil = entry.foil,
        Noted::Elasticity => one.elasticity = entry.elasticity,
        Noted::Weighed => one.weighed = sum(one.weighed, entry.mass),
        Noted::LeftOver => one.left_over = sum(one.left_over, entry.mass),
        Noted::Result => (one.result, one.tone) = (entry.level, entry.tone.clone()),
        Noted::Comfort | Noted::Incident => {}
    }
}

fn sum(so_far: Option<Mass>, more: Option<Mass>) -> Option<Mass> {
    match (so_far, more) {
        (Some(a), Some(b)) => Some(a + b),
        (one, other) => one.or(other),
    }
}
