//! What a log says of a service and of its sections, as it stands.

use super::{Comfort, FoilHeat, LogEntry};
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
    /// Its first strand; the end of its application where nobody noted the first.
    pub begun: Duration,
    /// Whether somebody noted the first strand.
    pub begin_noted: bool,
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

    /// When it was first begun, put on and rinsed, as noted: what a plan knows of. The third may be no noted rinse, but the minute when it
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
            (Some(first.begun).filter(|_| first.begin_noted), first.applied, Some(first.rinsed))
        })
    }

    /// The first strand of the first application, or the end of that application where nobody noted it and it was begun again.
    pub(super) fn first_strand(&self) -> Option<Duration> {
        self.earlier.first().map(|first| first.begun).or(self.begun)
    }

    /// How long its first strand carried mixture, all applications together; none before the last is rinsed, or where the begin of
    /// one is not noted.
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
        self.first().0.map(|_| Duration::nearest((earlier + last).max(0.0)))
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
