//! Ways that are no better than one that is known.

use super::{
    floor::many,
    state::{State, Work},
    tables::Unit,
};
use std::collections::HashMap;

/// What a state leaves: the units put on, those rinsed that others wait for, and how many are on.
type Key = (u64, u64, usize);

/// The ways to each subset.
pub(super) struct Ways {
    /// One after the other, as [`Ways::note`] writes them: small numbers are better.
    known: HashMap<Key, Vec<i32>>,
    /// Units that stand in for each other have the same number: they are rinsed as fast, and nobody waits for them.
    kinds: Vec<i32>,
    /// Whether there is more than one such number.
    mixed: bool,
    mine: Vec<i32>,
}

impl Ways {
    pub(super) fn of(work: &Work<'_>) -> Self {
        let units = &work.tables.units;
        let kind = |(place, unit): (usize, &Unit)| {
            let waited_for = |place: usize| work.waited_for >> place & 1 == 1;
            let same = |(other, one): (usize, &Unit)| one.rinse == unit.rinse && !waited_for(other);
            let first = units.iter().enumerate().position(same).filter(|_| !waited_for(place));
            number(many(first.unwrap_or(place)))
        };
        let kinds: Vec<i32> = units.iter().enumerate().map(kind).collect();
        let mixed = kinds.iter().any(|kind| Some(kind) != kinds.first());
        Self { known: HashMap::new(), kinds, mixed, mine: Vec::new() }
    }

    /// Whether a way into the same subset, no later, leaves at least as much freedom; the way is noted where none does.
    ///
    /// Only the time left counts, not the hour: how long until a unit has developed, and how long until it must be rinsed.
    pub(super) fn beat(&mut self, work: &Work<'_>, state: &State) -> bool {
        self.note(work, state);
        let key = (state.applied, state.rinsed & work.waited_for, state.on.len());
        let known = self.known.entry(key).or_default();
        let beats = |way: &[i32]| way.iter().zip(&self.mine).all(|(a, b)| a <= b);
        if known.chunks_exact(self.mine.len()).any(beats) {
            return true;
        }
        known.extend_from_slice(&self.mine);
        false
    }

    fn note(&mut self, work: &Work<'_>, state: &State) {
        self.mine.clear();
        self.mine.extend([number(state.at), i32::from(!state.at_basin)]);
        for one in work.windows(state) {
            self.mine.extend([number((one.low - state.at).max(0)), number(state.at - one.high)]);
            if self.mixed {
                // Both no greater: the same.
                let kind = self.kinds.get(one.unit).copied().unwrap_or(0);
                self.mine.extend([kind, -kind]);
            }
        }
    }
}

/// Seconds of a few weeks; a longest time beyond that is none.
fn number(value: i64) -> i32 {
    i32::try_from(value).unwrap_or(if value < 0 { i32::MIN } else { i32::MAX })
}
