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

#[cfg(test)]
mod tests {
    use super::{Before, Floor, SectionWork, Started, Stretch, Tables, Unit, Until, job};
    use crate::{day::OrderRule, quantity::Duration};
    use Stretch::{Apply, Look, Mix};

    fn min(value: f64) -> Duration {
        Duration::from_min(value).unwrap()
    }

    fn section(apply: f64, develop: f64, longest: f64) -> SectionWork {
        SectionWork::new("", min(apply), min(develop), min(longest))
    }

    /// By hand, in seconds: a look of a minute after every five minutes of painting, none where the last strand is on, and the bowls
    /// shared evenly over the painting.
    #[test]
    fn a_section_is_done_in_stretches() {
        let does = |apply: f64, bowls: u32, look: f64, every: f64| {
            let floor = Floor { look: min(look), look_every: min(every), ..Floor::default() };
            let job = job(7, &SectionWork { bowls, ..section(apply, 20.0, 45.0) }, &floor);
            assert_eq!((job.section, job.develop, job.longest), (7, 1_200, 2_700));
            let seconds = |one: &Stretch| match one {
                Mix(seconds) | Apply(seconds) | Look(seconds) => *seconds,
            };
            let all: i64 = job.does.iter().map(seconds).sum();
            assert_eq!(job.takes, all);
            job.does
        };
        let (mix, five, look) = (Mix(180), Apply(300), Look(60));
        assert_eq!(does(18.0, 1, 1.0, 5.0), [mix, five, look, five, look, five, look, Apply(180)]);
        assert_eq!(does(15.0, 1, 1.0, 5.0), [mix, five, look, five, look, five]);
        assert_eq!(does(5.0, 1, 1.0, 5.0), [mix, five]);
        assert_eq!(does(4.0, 0, 1.0, 5.0), [mix, Apply(240)]);
        let two = [mix, five, look, Apply(240), mix, Apply(60), look, five, look, Apply(180)];
        assert_eq!(does(18.0, 2, 1.0, 5.0), two);
        assert_eq!(does(10.0, 2, 1.0, 5.0), [mix, five, look, mix, five]);
        assert_eq!(does(10.0, 3, 0.0, 5.0), [mix, Apply(200), mix, Apply(200), mix, Apply(200)]);
        assert_eq!(does(18.0, 1, 0.0, 5.0), [mix, Apply(1_080)]);
        assert_eq!(does(18.0, 1, 1.0, 0.0), [mix, Apply(1_080)]);
        assert_eq!(does(0.0, 1, 1.0, 5.0), [mix]);
    }

    /// By hand, in minutes. One foil: mix 3, section 0 on to 13, mix, section 1 on to 21. Section 0 has developed at 33 and must go by
    /// 43; section 1 has developed at 41 and must go by 56, and its rinse begins 3 later, so that the foil is rinsed from 38 to 43.
    #[test]
    fn a_foil_is_painted_and_rinsed_in_one_go() {
        let floor = Floor { look: Duration::ZERO, ..Floor::default() };
        let unit = |one: [f64; 3], other: [f64; 3]| {
            let work = [one, other].map(|[apply, develop, longest]| section(apply, develop, longest));
            let tables = Tables::of(&work, &[], &floor, &[vec![0, 1]]);
            let unit = &tables.units[0];
            [unit.block, unit.low, unit.high, unit.rinse].map(|seconds| seconds / 60)
        };
        assert_eq!(unit([10.0, 20.0, 40.0], [5.0, 20.0, 40.0]), [21, 38, 43, 6]);
        // Section 0 develops longest: 13 + 40.
        assert_eq!(unit([10.0, 40.0, 60.0], [5.0, 20.0, 60.0]), [21, 53, 63, 6]);
        // Section 1 must go first: 16 + 18, less the rinse of section 0.
        assert_eq!(unit([10.0, 5.0, 40.0], [5.0, 4.0, 18.0]), [21, 22, 31, 6]);
        // What has developed before all is on is rinsed when all is on.
        assert_eq!(unit([10.0, 5.0, 40.0], [5.0, 1.0, 40.0]), [21, 21, 43, 6]);
    }

    /// Sections 0 and 1 are one unit, sections 2 and 3 the next two.
    #[test]
    fn rules_between_sections_are_rules_between_their_units() {
        let rule = |first, then, until| Before { first, then, until, rule: OrderRule::Stated };
        let rules = [
            rule(0, 2, Until::Applied),
            rule(1, 2, Until::Applied),
            rule(3, 2, Until::Rinsed),
            rule(0, 1, Until::Applied),
            rule(3, 0, Until::Applied),
        ];
        let work = [section(5.0, 5.0, 60.0), section(5.0, 5.0, 60.0), section(5.0, 5.0, 60.0), section(5.0, 5.0, 60.0)];
        let floor = Floor { people: 0, mix: min(2.0), walk: min(1.0), rinse: min(4.0), ..Floor::default() };
        let tables = Tables::of(&work, &rules, &floor, &[vec![0, 1], vec![2], vec![3]]);
        let before =
            |unit: usize| (tables.units[unit].applied_before.clone(), tables.units[unit].rinsed_before.clone());
        assert_eq!([before(0), before(1), before(2)], [(vec![2], vec![]), (vec![0], vec![2]), (vec![], vec![])]);
        assert_eq!(tables.edges(), [(2, 0), (0, 1), (2, 1)]);
        assert_eq!((tables.people, tables.mix, tables.walk, tables.rinse), (1, 120, 60, 240));
    }

    fn tables(units: &[[i64; 3]], people: usize, started: Started) -> Tables {
        let unit = |[block, low, rinse]: &[i64; 3]| Unit {
            jobs: Vec::new(),
            block: *block,
            low: *low,
            high: 1_000,
            rinse: *rinse,
            applied_before: Vec::new(),
            rinsed_before: Vec::new(),
        };
        Tables { units: units.iter().map(unit).collect(), mix: 0, rinse: 1, walk: 2, people, started }
    }

    /// By hand, with a walk of 2; each unit is its block, its development from its begin, its rinse.
    #[test]
    fn no_day_ends_before_its_bound() {
        let bound = |units: &[[i64; 3]], people: usize| tables(units, people, Started::default()).bound();
        // 13 of work, 6 of rinses and a walk; shared by two, 7 each, which is 15; the slowest alone takes 14.
        let three = [[5, 9, 3], [4, 12, 2], [4, 4, 1]];
        assert_eq!((bound(&three, 1), bound(&three, 2), bound(&three, 3)), (21, 15, 14));
        // 20 of work, and the first to develop after it takes 31 more.
        assert_eq!(bound(&[[10, 40, 1], [10, 45, 1]], 1), 51);
        // One that has developed before the guest is at the basin: 10 + 2 + 2.
        assert_eq!(bound(&[[10, 10, 2], [1, 1, 1]], 2), 14);
        assert_eq!(bound(&[[1, 50, 1], [1, 2, 1]], 1), 51);
        // In its midst: what is on, what is left from now on, and neither.
        let midst = |at: i64, on: &[(usize, i64)], rinsed: &[usize]| {
            let started = Started { at, on: on.to_vec(), rinsed: rinsed.to_vec() };
            tables(&[[4, 10, 3], [4, 8, 2]], 1, started).bound()
        };
        assert_eq!(midst(12, &[(0, 5)], &[]), 12 + 8 + 2);
        assert_eq!(midst(12, &[(0, 11)], &[]), 11 + 10 + 3);
        assert_eq!(midst(12, &[(0, 5)], &[1]), 5 + 10 + 3);
        assert_eq!(midst(12, &[], &[0]), 12 + 8 + 2);
        assert_eq!(midst(12, &[], &[1]), 12 + 10 + 3);
        assert_eq!(midst(12, &[], &[0, 1]), 12);
        let started = Started { at: 0, on: vec![(3, 0)], rinsed: vec![1] };
        assert_eq!([0, 1, 2, 3].map(|unit| started.has(unit)), [false, true, false, true]);
    }
}
