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
    search.promising(width(tries.promising, tables.units.len()));
    let bound = search.all(tries.states);
    Exact { bound: search.best.as_ref().map_or(bound, |best| bound.min(best.finish)), best: search.best }
}

/// How many states are followed after each step: there is a step for each unit and its rinse, and half of the units to choose from.
fn width(promising: usize, units: usize) -> usize {
    (promising / (units * units).max(1)).max(1)
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

#[cfg(test)]
mod tests {
    use super::{
        super::{
            greedy::{Habit, greedy},
            naive::{Draw, drawn, earliest, walked},
            state::Work,
            tables::Tables,
        },
        Least, Tries, exact, width,
    };

    const ALL: Tries = Tries { promising: 1, states: 1_000_000, sets_of: 8 };

    fn days() -> impl Iterator<Item = Tables> {
        let mut draw = Draw::new(2);
        [1, 2, 3, 4].repeat(25).into_iter().map(move |count| drawn(&mut draw, count))
    }

    /// By hand: so many by the square of the units, one at least.
    #[test]
    fn fewer_states_are_followed_where_there_are_more_units() {
        let widths =
            [(6_000, 5), (6_000, 0), (6_000, 1), (45_000, 12), (1_500, 40)].map(|(all, units)| width(all, units));
        assert_eq!(widths, [240, 6_000, 6_000, 312, 1]);
    }

    /// Whatever it begins with: no day, a day that is not the best, or the best.
    #[test]
    fn the_best_day_is_that_of_all_rows_of_steps() {
        let mut found_none = 0;
        for tables in days() {
            let work = Work::of(&tables, None);
            let want = earliest(&tables, &work.start(), None);
            for sets_of in [0, 8] {
                let found = exact(&tables, None, None, Tries { sets_of, ..ALL });
                assert_eq!(found.best.as_ref().map(|best| best.finish), want, "{tables:?}");
                let Some(best) = found.best else { continue };
                assert_eq!((Some(found.bound), walked(&tables, work.start(), &best.steps)), (want, want), "{tables:?}");
                // The day that is known stays where none is better.
                let again = exact(&tables, Some(best.clone()), None, Tries { sets_of, ..ALL });
                assert_eq!((again.best, Some(again.bound)), (Some(best), want));
            }
            let order: Vec<usize> = (0..tables.units.len()).collect();
            if let Some(known) = greedy(&tables, &order, Habit::Soon, false) {
                let found = exact(&tables, Some(known), None, ALL);
                assert_eq!((found.best.map(|best| best.finish), Some(found.bound)), (want, want), "{tables:?}");
            }
            found_none += usize::from(want.is_none());
        }
        assert!(found_none < 50, "{found_none}");
    }

    /// Followed wide enough, the promising states are all of them; what is then not proven is bounded by what the first state cannot
    /// beat, and no bound is beaten by the best.
    #[test]
    fn what_is_cut_off_is_bounded() {
        for tables in days() {
            let work = Work::of(&tables, None);
            let want = earliest(&tables, &work.start(), None);
            let wide = exact(&tables, None, None, Tries { promising: 100_000, states: 1, sets_of: 8 });
            assert_eq!(wide.best.map(|best| best.finish), want, "{tables:?}");
            let Some(want) = want else { continue };
            let first = Least::of(&work, 8).finish(&work, &work.start());
            assert_eq!(wide.bound, first.min(want));
            for states in [2, 5, 12] {
                let cut = exact(&tables, None, None, Tries { promising: 1, states, sets_of: 8 });
                assert!(cut.bound <= want && cut.best.is_none_or(|best| best.finish >= want), "{tables:?}");
            }
        }
    }

    /// In the order of the list, and in the other.
    #[test]
    fn in_a_given_order_the_rinses_end_earliest() {
        for tables in days() {
            let order: Vec<usize> = (0..tables.units.len()).collect();
            let back: Vec<usize> = order.iter().rev().copied().collect();
            // In its midst the day has an order already.
            for order in [order, back].iter().filter(|_| tables.started.on.is_empty()) {
                let work = Work::of(&tables, Some(order));
                let found = exact(&tables, None, Some(order), ALL);
                let want = earliest(&tables, &work.start(), Some(order));
                assert_eq!(found.best.as_ref().map(|best| best.finish), want, "{tables:?}");
                assert_eq!(found.best.and_then(|best| walked(&tables, work.start(), &best.steps)), want);
            }
        }
    }
}
