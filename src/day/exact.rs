//! The earliest finish of one pair of hands, proven: dynamic programming over the subsets that are on.
//!
//! A state is which units have been put on, and for each of those still on how long until it has developed and how long until
//! it must go. States are taken up in the order of time. Of two ways into one subset the later is dropped where the earlier
//! leaves at least as much freedom, for only the time left counts, not the hour. A state that cannot beat the best day known,
//! by a bound from the work left, is not followed.

use super::{
    floor::many,
    step::{Does, Step, Steps},
    tables::Tables,
};
use std::{
    cmp::Reverse,
    collections::{BinaryHeap, HashMap},
};

/// The best day.
#[derive(Debug, Clone)]
pub(super) struct Exact {
    pub(super) best: Option<Steps>,
    /// Whether every state was followed or shown to be no better.
    pub(super) proven: bool,
}

/// Searches from a day that is known, with at most so many states. With a given order, units are put on in that order.
pub(super) fn exact(tables: &Tables, known: Option<Steps>, order: Option<&[usize]>, states: usize) -> Exact {
    let bits = |places: &[usize]| places.iter().fold(0u64, |bits, place| bits | 1 << place);
    let rinsed_before: Vec<u64> = tables.units.iter().map(|unit| bits(&unit.rinsed_before)).collect();
    let search = Search {
        tables,
        order,
        applied_before: tables.units.iter().map(|unit| bits(&unit.applied_before)).collect(),
        waited_for: rinsed_before.iter().fold(0, |all, one| all | one),
        rinsed_before,
        all: (1u64 << tables.units.len()) - 1,
    };
    search.run(known, states)
}

/// Where the day stands.
#[derive(Debug, Clone, Default)]
struct State {
    at: i64,
    applied: u64,
    rinsed: u64,
    /// What is on: the unit, and when it was begun; in the order of the units.
    on: Vec<(usize, i64)>,
    /// Whether the guest is at the basin.
    at_basin: bool,
}

/// A state, and how it was reached.
struct Reached {
    state: State,
    by: Option<(usize, Step)>,
}

/// How long until a unit has developed, until it must be rinsed, how long that takes, and which unit it is where others wait
/// for its rinse: no other stands in for that one.
type Window = (i64, i64, i64, Option<usize>);
/// What a state leaves: the units put on, those rinsed that others wait for, and whether the guest is at the basin.
type Key = (u64, u64, bool);

struct Search<'t> {
    tables: &'t Tables,
    order: Option<&'t [usize]>,
    applied_before: Vec<u64>,
    rinsed_before: Vec<u64>,
    /// Units for whose rinse others wait.
    waited_for: u64,
    all: u64,
}

impl Search<'_> {
    fn run(&self, mut best: Option<Steps>, states: usize) -> Exact {
        let mut reached = vec![Reached { state: State::default(), by: None }];
        let bound = self.least(&State::default());
        let mut queue = BinaryHeap::from([Reverse((0i64, 0usize))]);
        let mut ways: HashMap<Key, Vec<(i64, Vec<Window>)>> = HashMap::new();
        while let Some(Reverse((_, place))) = queue.pop() {
            let finish = best.as_ref().map_or(i64::MAX, |best| best.finish);
            if finish <= bound {
                break;
            }
            let Some(from) = reached.get(place).map(|one| one.state.clone()) else { break };
            if self.least(&from) >= finish || self.is_beaten(&from, &mut ways) {
                continue;
            }
            if reached.len() >= states {
                return Exact { best, proven: false };
            }
            for (step, after) in self.steps_from(&from) {
                if after.rinsed == self.all {
                    if best.as_ref().is_none_or(|best| after.at < best.finish) {
                        best = Some(Steps { finish: after.at, steps: steps(&reached, place, step) });
                    }
                } else if self.least(&after) < best.as_ref().map_or(i64::MAX, |best| best.finish) {
                    queue.push(Reverse((after.at, reached.len())));
                    reached.push(Reached { state: after, by: Some((place, step)) });
                }
            }
        }
        Exact { best, proven: true }
    }

    /// Every step that can be made, and where it leads.
    fn steps_from(&self, state: &State) -> Vec<(Step, State)> {
        let mut found = Vec::new();
        for (i, (unit, begun)) in state.on.iter().enumerate() {
            let Some(one) = self.tables.unit(*unit) else { continue };
            if self.another_goes_first(state, i) {
                continue;
            }
            let walk = if state.at_basin { 0 } else { self.tables.walk };
            let begin = (state.at + walk).max(begun + one.low);
            let mut on = state.on.clone();
            on.remove(i);
            let rinsed = state.rinsed | 1 << unit;
            let after = State { at: begin + one.rinse, applied: state.applied, rinsed, on, at_basin: true };
            if begin <= begun + one.high && self.in_time(&after) {
                found.push((Step { does: Does::Rinse, unit: *unit, person: 0, begin }, after));
            }
        }
        for unit in 0..self.tables.units.len() {
            let before = self.applied_before.get(unit).copied().unwrap_or(0);
            let rinsed = self.rinsed_before.get(unit).copied().unwrap_or(0);
            let there = state.applied >> unit & 1 == 1;
            if there || before & !state.applied != 0 || rinsed & !state.rinsed != 0 {
                continue;
            }
            if self.order.is_some_and(|order| order.get(state.applied.count_ones() as usize) != Some(&unit)) {
                continue;
            }
            let Some(one) = self.tables.unit(unit) else { continue };
            let mut on = state.on.clone();
            let place = on.partition_point(|(other, _)| *other < unit);
            on.insert(place, (unit, state.at));
            let applied = state.applied | 1 << unit;
            let after = State { at: state.at + one.block, applied, rinsed: state.rinsed, on, at_basin: false };
            if self.in_time(&after) {
                found.push((Step { does: Does::PutOn, unit, person: 0, begin: state.at }, after));
            }
        }
        found
    }

    /// Whether all that is on can still be rinsed in time, one after the other by their limits.
    fn in_time(&self, state: &State) -> bool {
        let walk = if state.at_basin { 0 } else { self.tables.walk };
        let mut highs: Vec<(i64, i64)> = state
            .on
            .iter()
            .filter_map(|(unit, begun)| self.tables.unit(*unit).map(|one| (begun + one.high, one.rinse)))
            .collect();
        // The order of the latest ends keeps the limits if any order does.
        highs.sort_unstable_by_key(|(high, rinse)| high + rinse);
        let mut at = state.at + walk;
        highs.iter().all(|(high, rinse)| {
            let in_time = at <= *high;
            at += rinse;
            in_time
        })
    }

    /// The earliest finish that this state could lead to.
    fn least(&self, state: &State) -> i64 {
        let unit = |place: usize| self.tables.unit(place);
        let (mut blocks, mut rinses, mut last, mut most) = (0, 0, i64::MAX, state.at);
        let (mut kept, mut lengths): (i64, Vec<i64>) = (0, Vec::new());
        let mut left = self.all & !state.applied;
        let anything = left > 0;
        while left > 0 {
            let place = left.trailing_zeros() as usize;
            left &= left - 1;
            let Some(one) = unit(place) else { continue };
            blocks += one.block;
            rinses += one.rinse;
            last = last.min((one.low - one.block).max(self.tables.walk) + one.rinse);
            most = most.max(state.at + one.low + one.rinse);
            kept = kept.max(one.high);
            lengths.push(one.block);
        }
        for (place, begun) in &state.on {
            let Some(one) = unit(*place) else { continue };
            rinses += one.rinse;
            most = most.max(begun + one.low + one.rinse);
        }
        let walk = if state.at_basin && !anything { 0 } else { self.tables.walk };
        let work = state.at + blocks + if rinses > 0 { rinses + walk } else { 0 };
        if !anything {
            return most.max(work);
        }
        // When the last unit is on, no more can be on than fit into the longest time: the others are rinsed by then.
        lengths.sort_unstable();
        let mut on = 0;
        let fit = lengths.iter().take_while(|length| {
            on += **length;
            on <= kept
        });
        let fit = fit.count() + state.on.len();
        let rinse = self.tables.units.iter().map(|one| one.rinse).max().unwrap_or(0);
        let before = (rinses - many(fit) * rinse).max(0);
        let walk = if before > 0 { self.tables.walk } else { 0 };
        most.max(work).max(state.at + blocks + before + walk + last)
    }

    /// Whether another unit on the hair is ready as well, must go no later and takes as long: then it is rinsed first, for
    /// the two could change places.
    fn another_goes_first(&self, state: &State, place: usize) -> bool {
        let window = |(unit, begun): &(usize, i64)| {
            let one = self.tables.unit(*unit)?;
            Some((begun + one.low, begun + one.high, one.rinse))
        };
        let Some((_, high, rinse)) = state.on.get(place).and_then(window) else { return false };
        state.on.iter().enumerate().any(|(i, other)| {
            let ready = window(other).filter(|(low, ..)| *low <= state.at);
            // What others wait for may be wanted out first.
            let free = self.waited_for >> other.0 & 1 == 0
                && state.on.get(place).is_some_and(|one| self.waited_for >> one.0 & 1 == 0);
            ready.is_some_and(|(_, its, takes)| free && takes == rinse && (its < high || (its == high && i < place)))
        })
    }

    /// Whether a way into the same subset leaves at least as much freedom; the way is noted where none does.
    fn is_beaten(&self, state: &State, ways: &mut HashMap<Key, Vec<(i64, Vec<Window>)>>) -> bool {
        let window = |(unit, begun): &(usize, i64)| {
            let one = self.tables.unit(*unit)?;
            let named = (self.waited_for >> unit & 1 == 1).then_some(*unit);
            Some(((begun + one.low - state.at).max(0), begun + one.high - state.at, one.rinse, named))
        };
        let mut mine: Vec<Window> = state.on.iter().filter_map(window).collect();
        mine.sort_unstable_by_key(|(low, high, rinse, named)| (*high, *low, *rinse, *named));
        let frees = |one: &[Window], other: &[Window]| {
            one.is_empty()
                || (one.len() == other.len()
                    && one.iter().zip(other).all(|(a, b)| a.0 <= b.0 && a.1 >= b.1 && a.2 <= b.2 && a.3 == b.3))
        };
        let known = ways.entry((state.applied, state.rinsed & self.waited_for, state.at_basin)).or_default();
        if known.iter().any(|(at, way)| *at <= state.at && frees(way, &mine)) {
            return true;
        }
        known.push((state.at, mine));
        false
    }
}

/// The steps that lead to a state, and one more.
fn steps(reached: &[Reached], mut place: usize, last: Step) -> Vec<Step> {
    let mut steps = vec![last];
    while let Some((from, step)) = reached.get(place).and_then(|one| one.by) {
        steps.push(step);
        place = from;
    }
    steps.reverse();
    steps
}
