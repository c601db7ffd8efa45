//! The earliest finish of one pair of hands, proven: dynamic programming over the subsets that are on.
//!
//! A state is which units have been put on, and for each of those still on how long until it has developed and how long until
//! it must go. First only the most promising few states are followed, step by step, which mostly finds a better day than the
//! one that is known. Then states are taken up by the finish that they cannot beat, the least first, and none that is beaten by
//! another way into the same subset. What a state cannot beat is worked out from how few visits to the basin its units need, for all
//! sets of them where they are few enough. When the next one cannot beat the best day known, that is the best there is; and when
//! the search is cut off, what the next one cannot beat, no day can.

use super::{
    least::Least,
    state::{State, Work},
    step::{Step, Steps},
    tables::Tables,
    ways::Ways,
};
use std::{cmp::Reverse, collections::BinaryHeap};

/// The best day.
#[derive(Debug, Clone)]
pub(super) struct Exact {
    pub(super) best: Option<Steps>,
    /// A finish that no day beats; that of the best one where it is proven.
    pub(super) bound: i64,
}

/// How much is tried.
#[derive(Debug, Clone, Copy)]
pub(super) struct Tries {
    /// States that are followed at first, over all.
    pub(super) promising: usize,
    /// States of the proof.
    pub(super) states: usize,
    /// The most units whose sets are all tabled: the bound is better by it, and the tables take longer with each unit.
    pub(super) sets_of: usize,
}

/// Searches from a day that is known. With a given order, units are put on in that order.
pub(super) fn exact(tables: &Tables, known: Option<Steps>, order: Option<&[usize]>, tries: Tries) -> Exact {
    let work = Work::of(tables, order);
    let least = Least::of(&work, tries.sets_of);
    let mut search = Search { work, least, reached: Vec::new(), best: known };
    // A step for each unit and its rinse, and half of the units to choose from.
    let count = tables.units.len().max(1);
    search.promising((tries.promising / (count * count)).max(1));
    let bound = search.all(tries.states);
    Exact { bound: search.best.as_ref().map_or(bound, |best| bound.min(best.finish)), best: search.best }
}

/// A state, and how it was reached.
struct Reached {
    state: State,
    by: Option<(usize, Step)>,
}

struct Search<'t> {
    work: Work<'t>,
    least: Least,
    reached: Vec<Reached>,
    best: Option<Steps>,
}

impl Search<'_> {
    /// Follows so many states after each step.
    fn promising(&mut self, width: usize) {
        self.reached = vec![Reached { state: self.work.start(), by: None }];
        let mut level = vec![0];
        while !level.is_empty() {
            let mut next: Vec<(i64, usize)> = Vec::new();
            for place in level {
                for (least, step, after) in self.onward(place) {
                    next.push((least, self.reached.len()));
                    self.reached.push(Reached { state: after, by: Some((place, step)) });
                }
            }
            next.sort_unstable();
            let mut ways = Ways::of(&self.work);
            let better = |place: &usize| self.reached.get(*place).is_some_and(|one| !ways.beat(&self.work, &one.state));
            level = next.into_iter().map(|(_, place)| place).filter(better).take(width).collect();
        }
    }

    /// Follows all states, those first that could lead to the earliest finish, and gives the finish that none beats.
    fn all(&mut self, states: usize) -> i64 {
        let start = self.work.start();
        let mut bound = self.least.finish(&self.work, &start);
        self.reached = vec![Reached { state: start, by: None }];
        let mut queue = BinaryHeap::from([Reverse((bound, 0i64, 0usize))]);
        let mut ways = Ways::of(&self.work);
        while let Some(Reverse((least, _, place))) = queue.pop() {
            bound = bound.max(least);
            if self.reached.len() >= states || self.finish() <= bound {
                return bound;
            }
            for (after_least, step, after) in self.onward(place) {
                if ways.beat(&self.work, &after) {
                    continue;
                }
                // Of equals the one that is nearer to the end.
                let left = -i64::from(after.applied.count_ones() + after.rinsed.count_ones());
                queue.push(Reverse((after_least.max(least), left, self.reached.len())));
                self.reached.push(Reached { state: after, by: Some((place, step)) });
            }
        }
        self.finish()
    }

    fn finish(&self) -> i64 {
        self.best.as_ref().map_or(i64::MAX, |best| best.finish)
    }

    /// The states after one that could still lead to a better day; a whole day that is better is kept.
    fn onward(&mut self, place: usize) -> Vec<(i64, Step, State)> {
        // It is not asked for again: only how it was reached is.
        let Some(from) = self.reached.get_mut(place).map(|one| std::mem::take(&mut one.state)) else {
            return Vec::new();
        };
        let mut found = Vec::new();
        for (step, after) in self.work.steps(&from) {
            let finish = self.finish();
            if after.rinsed == self.work.all {
                if after.at < finish {
                    self.best = Some(Steps { finish: after.at, steps: self.steps(place, step) });
                }
                continue;
            }
            let least = self.least.finish(&self.work, &after);
            if least < finish {
                found.push((least, step, after));
            }
        }
        found
    }

    /// The steps that lead to a state, and one more.
    fn steps(&self, mut place: usize, last: Step) -> Vec<Step> {
        let mut steps = vec![last];
        while let Some((from, step)) = self.reached.get(place).and_then(|one| one.by) {
            steps.push(step);
            place = from;
        }
        steps.reverse();
        steps
    }
}
