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
        Self { known: HashMap::new(), kinds, mine: Vec::new() }
    }

    /// Whether a way into the same subset leaves at least as much freedom; the way is noted where none does.
    ///
    /// It does where all that can follow here can follow there as well, at one and the same time earlier or at the same hour:
    /// hands are free by then, what is on has developed by then, and nothing has to be rinsed sooner.
    pub(super) fn beat(&mut self, work: &Work<'_>, state: &State) -> bool {
        self.note(work, state);
        let key = (state.applied, state.rinsed & work.waited_for, state.on.len());
        let known = self.known.entry(key).or_default();
        let walk = number(work.tables.walk);
        if known.chunks_exact(self.mine.len()).any(|way| beats(way, &self.mine, walk)) {
            return true;
        }
        known.extend_from_slice(&self.mine);
        false
    }

    fn note(&mut self, work: &Work<'_>, state: &State) {
        self.mine.clear();
        self.mine.extend([number(state.at), i32::from(!state.at_basin)]);
        for one in work.windows(state) {
            let kind = self.kinds.get(one.unit).copied().unwrap_or(0);
            self.mine.extend([number(one.low), number(one.high), kind]);
        }
    }
}

/// Whether all that can follow on one way can follow on another: each is when hands are free and whether the basin is a walk away,
/// then for each unit on the hair from when to when it may be rinsed and its kind.
fn beats(one: &[i32], other: &[i32], walk: i32) -> bool {
    let ([at, away, one @ ..], [then, then_away, other @ ..]) = (one, other) else { return false };
    let extra = if away > then_away { walk } else { 0 };
    // By how much earlier all of it may be.
    let (mut least, mut most) = (0, then.saturating_sub(*at).saturating_sub(extra));
    least <= most
        && one.chunks_exact(3).zip(other.chunks_exact(3)).all(|pair| {
            let ([low, high, kind], [then_low, then_high, then_kind]) = pair else { return false };
            least = least.max(then_high.saturating_sub(*high));
            most = most.min((*then_low).max(*then).saturating_sub(*low));
            kind == then_kind && least <= most
        })
}

/// Seconds of a few weeks; a longest time beyond that is none.
fn number(value: i64) -> i32 {
    i32::try_from(value).unwrap_or(if value < 0 { i32::MIN } else { i32::MAX })
}
