//! A finish that a state cannot beat.

use super::{
    floor::many,
    state::{State, Work},
    visits::Visits,
};
use std::collections::HashMap;

/// What the units come to that are not on yet.
#[derive(Debug, Clone, Copy, Default)]
struct Rest {
    blocks: i64,
    rinses: i64,
    count: usize,
    /// From the end of the last of them until it is rinsed, at least.
    last: i64,
    /// From now until the slowest of them is rinsed, at least.
    slowest: i64,
    /// How many of them can be on when the last of them is.
    fit: usize,
}

/// The bounds of the states of one search.
pub(super) struct Least {
    /// By the units that are on or rinsed.
    rests: HashMap<u64, Rest>,
    /// How many can be on at once, and so be rinsed in one visit to the basin.
    at_once: usize,
    shortest_rinse: i64,
    /// The better bound, by all sets of units.
    visits: Option<Visits>,
}

impl Least {
    pub(super) fn of(work: &Work<'_>, sets_of: usize) -> Self {
        let units = &work.tables.units;
        let blocks = units.iter().map(|unit| unit.block).collect();
        let kept = units.iter().map(|unit| unit.high).max().unwrap_or(0);
        Self {
            rests: HashMap::new(),
            at_once: fitting(blocks, kept - work.tables.walk),
            shortest_rinse: units.iter().map(|unit| unit.rinse).min().unwrap_or(0),
            visits: (units.len() <= sets_of).then(|| Visits::of(work)),
        }
    }

    /// The earliest finish that this state could lead to.
    ///
    /// When the last unit is on, no more can be on than fit into the longest times up to the walk that follows: all others are
    /// rinsed by then, with a walk for each visit. After it either its development or all the rinses left decide.
    pub(super) fn finish(&mut self, work: &Work<'_>, state: &State) -> i64 {
        let walk = work.tables.walk;
        if state.applied == work.all {
            let mut ready: Vec<(i64, i64)> = work.windows(state).map(|one| (one.low, one.rinse)).collect();
            ready.sort_unstable();
            let at = state.at + if state.at_basin { 0 } else { walk };
            return ready.iter().fold(at, |at, (low, rinse)| at.max(*low) + rinse);
        }
        let rest = *self.rests.entry(state.applied).or_insert_with(|| Rest::of(work, state.applied));
        let all_on = state.at + rest.blocks;
        let (mut rinses, mut most, mut stay) = (rest.rinses, state.at + rest.slowest, 0);
        for one in work.windows(state) {
            rinses += one.rinse;
            most = most.max(one.low + one.rinse);
            stay += usize::from(one.high >= all_on + walk);
        }
        let count = rest.count + state.on.len();
        let with = |on_at_last: usize| {
            let before = count - on_at_last;
            let visits = many(before.div_ceil(self.at_once)) - i64::from(state.at_basin && before > 0);
            let earlier = many(before) * self.shortest_rinse;
            visits * walk + (earlier + rest.last).max(walk + rinses)
        };
        let least = (1..=(rest.fit + stay).min(count)).map(with).min().unwrap_or(0);
        let by_sets = self.visits.as_mut().map_or(0, |visits| visits.finish(work, state, rest.blocks, rest.rinses));
        most.max(all_on + least).max(by_sets)
    }
}

impl Rest {
    fn of(work: &Work<'_>, applied: u64) -> Self {
        let left =
            || work.tables.units.iter().enumerate().filter(|(place, _)| applied >> place & 1 == 0).map(|(_, one)| one);
        let walk = work.tables.walk;
        let kept = left().map(|one| one.high).max().unwrap_or(0);
        Self {
            blocks: left().map(|one| one.block).sum(),
            rinses: left().map(|one| one.rinse).sum(),
            count: left().count(),
            last: left().map(|one| (one.low - one.block).max(walk) + one.rinse).min().unwrap_or(0),
            slowest: left().map(|one| one.low + one.rinse).max().unwrap_or(0),
            fit: fitting(left().map(|one| one.block).collect(), kept - walk),
        }
    }
}

/// How many of the shortest fit into a time; one at least.
fn fitting(mut lengths: Vec<i64>, room: i64) -> usize {
    lengths.sort_unstable();
    let mut sum = 0;
    let fit = lengths.iter().take_while(|length| {
        sum += **length;
        sum <= room
    });
    fit.count().max(1)
}
