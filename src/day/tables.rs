//! The work in whole seconds: units that are painted in one go, and what comes before what.

use super::{
    Before, Floor, SectionWork, Until,
    floor::{many, seconds},
};

/// A section in seconds.
#[derive(Debug, Clone)]
pub(super) struct Job {
    /// Its place in the caller's list.
    pub(super) section: usize,
    /// What the hands do from the begin of its first bowl until it is on.
    pub(super) does: Vec<Stretch>,
    /// All of that.
    pub(super) takes: i64,
    pub(super) develop: i64,
    pub(super) longest: i64,
}

/// What hands do in one go.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Stretch {
    Mix(i64),
    Apply(i64),
    Look(i64),
}

/// Sections in one foil, in the order in which they are painted; mostly a section alone.
#[derive(Debug, Clone)]
pub(super) struct Unit {
    pub(super) jobs: Vec<Job>,
    /// From the begin of its first bowl until all of it is on.
    pub(super) block: i64,
    /// When it may be rinsed, from that begin: not before everything has developed, nor after anything has been on too long.
    pub(super) low: i64,
    pub(super) high: i64,
    /// Rinsing it.
    pub(super) rinse: i64,
    /// Units that are on before it, and units that are rinsed before it.
    pub(super) applied_before: Vec<usize>,
    pub(super) rinsed_before: Vec<usize>,
}

/// Where the day stands when the search begins: at its begin, or in its midst.
#[derive(Debug, Clone, Default)]
pub(super) struct Started {
    /// Since when hands are free.
    pub(super) at: i64,
    /// Units on the hair, and when they were begun.
    pub(super) on: Vec<(usize, i64)>,
    pub(super) rinsed: Vec<usize>,
}

impl Started {
    /// Whether a unit is on the hair or was.
    pub(super) fn has(&self, unit: usize) -> bool {
        self.rinsed.contains(&unit) || self.on.iter().any(|(on, _)| *on == unit)
    }
}

/// Everything that the searches read.
#[derive(Debug, Clone)]
pub(super) struct Tables {
    pub(super) units: Vec<Unit>,
    pub(super) mix: i64,
    pub(super) rinse: i64,
    /// Going to the basin.
    pub(super) walk: i64,
    pub(super) people: usize,
    pub(super) started: Started,
}

impl Tables {
    /// `together` are the sections of each unit in painting order.
    pub(super) fn of(work: &[SectionWork], before: &[Before], floor: &Floor, together: &[Vec<usize>]) -> Self {
        let (mix, rinse) = (seconds(floor.mix), seconds(floor.rinse));
        let unit_of = |section: usize| together.iter().position(|unit| unit.contains(&section));
        let earlier = |unit: usize, until: Until| {
            let those = before.iter().filter(|one| one.until == until && unit_of(one.then) == Some(unit));
            let mut firsts: Vec<usize> =
                those.filter_map(|one| unit_of(one.first)).filter(|first| *first != unit).collect();
            firsts.sort_unstable();
            firsts.dedup();
            firsts
        };
        let units = together.iter().enumerate().map(|(place, sections)| {
            let jobs: Vec<Job> =
                sections.iter().filter_map(|section| Some(job(*section, work.get(*section)?, floor))).collect();
            let (mut at, mut low, mut high) = (0, 0, i64::MAX);
            for (i, job) in jobs.iter().enumerate() {
                let rinsed = many(i) * rinse;
                high = high.min(at + mix + job.longest - rinsed);
                at += job.takes;
                low = low.max(at + job.develop - rinsed);
            }
            Unit {
                rinse: many(jobs.len()) * rinse,
                jobs,
                block: at,
                low: low.max(at),
                high,
                applied_before: earlier(place, Until::Applied),
                rinsed_before: earlier(place, Until::Rinsed),
            }
        });
        let (walk, people) = (seconds(floor.walk), floor.people.max(1) as usize);
        Self { units: units.collect(), mix, rinse, walk, people, started: Started::default() }
    }

    pub(super) fn unit(&self, place: usize) -> Option<&Unit> {
        self.units.get(place)
    }

    /// Whatever comes first, as pairs of units.
    pub(super) fn edges(&self) -> Vec<(usize, usize)> {
        let of = |(then, unit): (usize, &Unit)| {
            let earlier = unit.applied_before.iter().chain(&unit.rinsed_before);
            earlier.map(move |first| (*first, then)).collect::<Vec<_>>()
        };
        self.units.iter().enumerate().flat_map(of).collect()
    }

    /// A bound that no order beats: all the work shared evenly with every rinse, or with the shortest development that can
    /// come last; and no unit takes less than its own.
    pub(super) fn bound(&self) -> i64 {
        let started = &self.started;
        if !started.on.is_empty() || !started.rinsed.is_empty() {
            // Of a day in its midst: what is on develops, and what is not on yet has to.
            let on =
                started.on.iter().filter_map(|(unit, begun)| self.unit(*unit).map(|one| begun + one.low + one.rinse));
            let left = self.units.iter().enumerate().filter(|(unit, _)| !started.has(*unit));
            return on.chain(left.map(|(_, one)| started.at + one.low + one.rinse)).max().unwrap_or(started.at);
        }
        let work: i64 = self.units.iter().map(|unit| unit.block).sum();
        let rinses: i64 = self.units.iter().map(|unit| unit.rinse).sum();
        let people = many(self.people);
        let shared = (work + people - 1) / people;
        let last = self.units.iter().map(|unit| (unit.low - unit.block).max(self.walk) + unit.rinse).min().unwrap_or(0);
        let alone = self.units.iter().map(|unit| unit.low.max(unit.block + self.walk) + unit.rinse).max().unwrap_or(0);
        alone.max(shared + rinses + self.walk).max(shared + last)
    }
}

/// The stretches of a section: a bowl, then painting with a look every so often, then the next bowl.
fn job(section: usize, work: &SectionWork, floor: &Floor) -> Job {
    let (mix, look, every) = (seconds(floor.mix), seconds(floor.look), seconds(floor.look_every));
    let (apply, bowls) = (seconds(work.apply), i64::from(work.bowls.max(1)));
    let looks = look > 0 && every > 0;
    let mut does = Vec::new();
    let mut painted = 0;
    for bowl in 1..=bowls {
        does.push(Stretch::Mix(mix));
        let until = apply * bowl / bowls;
        while painted < until {
            let next = if looks { (painted / every + 1) * every } else { until };
            let on = next.min(until);
            does.push(Stretch::Apply(on - painted));
            painted = on;
            // No look at the very end: the next work or the idle hands have it.
            if looks && painted % every == 0 && painted < apply {
                does.push(Stretch::Look(look));
            }
        }
    }
    let takes = does.iter().map(|stretch| stretch.length()).sum();
    Job { section, does, takes, develop: seconds(work.develop), longest: seconds(work.longest) }
}

impl Stretch {
    pub(super) const fn length(self) -> i64 {
        match self {
            Self::Mix(length) | Self::Apply(length) | Self::Look(length) => length,
        }
    }
}
