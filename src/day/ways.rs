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
    value.clamp(i64::from(i32::MIN), i64::from(i32::MAX)) as i32
}

#[cfg(test)]
mod tests {
    use super::{
        super::{
            state::{State, Work},
            tables::{Started, Tables, Unit},
        },
        Ways, beats, number,
    };

    fn unit(rinse: i64, rinsed_before: &[usize]) -> Unit {
        let rinsed_before = rinsed_before.to_vec();
        Unit { jobs: Vec::new(), block: 5, low: 10, high: 30, rinse, applied_before: Vec::new(), rinsed_before }
    }

    fn day(units: Vec<Unit>) -> Tables {
        Tables { units, mix: 0, rinse: 1, walk: 3, people: 1, started: Started::default() }
    }

    /// By hand. A way: when hands are free, whether the basin is a walk away, and of each unit from when to when it may be rinsed, and
    /// its kind. The walk is 3.
    #[test]
    fn a_way_beats_another_where_all_that_follows_there_follows_here() {
        let cases: [(&[i32], &[i32], bool); 18] = [
            (&[10, 0, 20, 40, 0], &[10, 0, 20, 40, 0], true),
            (&[10, 1, 20, 40, 0], &[10, 1, 20, 40, 0], true),
            // Two earlier in everything: what follows is two earlier as well.
            (&[10, 0, 20, 40, 0], &[12, 0, 22, 42, 0], true),
            (&[12, 0, 22, 42, 0], &[10, 0, 20, 40, 0], false),
            // Hands free one second later, all else alike.
            (&[11, 0, 20, 40, 0], &[10, 0, 20, 40, 0], false),
            // The basin is a walk away, which the other has behind it: made up for by three seconds, not by two.
            (&[10, 1, 20, 40, 0], &[10, 0, 20, 40, 0], false),
            (&[10, 1, 20, 40, 0], &[12, 0, 20, 40, 0], false),
            (&[10, 1, 20, 40, 0], &[13, 0, 20, 40, 0], true),
            (&[10, 0, 20, 40, 0], &[10, 1, 20, 40, 0], true),
            // It has to go two seconds sooner: all of it must be two seconds earlier, and may be.
            (&[10, 0, 20, 38, 0], &[10, 0, 20, 40, 0], false),
            (&[10, 0, 20, 38, 0], &[12, 0, 22, 40, 0], true),
            (&[10, 0, 20, 37, 0], &[12, 0, 22, 40, 0], false),
            // It develops for longer; where the hands of the other are not free before that, it is all one.
            (&[10, 0, 25, 40, 0], &[10, 0, 20, 40, 0], false),
            (&[10, 0, 25, 40, 0], &[25, 0, 20, 40, 0], true),
            (&[10, 0, 25, 40, 0], &[24, 0, 20, 40, 0], false),
            // Another kind, be it of the first or of the second.
            (&[10, 0, 20, 40, 0], &[10, 0, 20, 40, 1], false),
            (&[10, 0, 20, 40, 0, 20, 41, 1], &[10, 0, 20, 40, 0, 20, 41, 2], false),
            // Nothing is on.
            (&[10, 0], &[10, 0], true),
        ];
        for (one, other, want) in cases {
            assert_eq!(beats(one, other, 3), want, "{one:?} and {other:?}");
        }
        // One unit asks for two seconds earlier, the other lets it be one only.
        assert!(!beats(&[10, 0, 20, 38, 0, 21, 50, 0], &[12, 0, 22, 40, 0, 22, 50, 0], 3));
        assert!(beats(&[10, 0, 20, 38, 0, 20, 50, 0], &[12, 0, 22, 40, 0, 22, 50, 0], 3));
    }

    #[test]
    fn a_longest_time_of_more_than_weeks_is_none() {
        let numbers = [0, 7, -7, i64::from(i32::MAX), i64::from(i32::MAX) + 1, i64::MAX, i64::MIN].map(number);
        assert_eq!(numbers, [0, 7, -7, i32::MAX, i32::MAX, i32::MAX, i32::MIN]);
    }

    /// Units 0, 2 and 4 take as long and nobody waits for them; for 1 unit 3 waits, and 3 takes longer.
    #[test]
    fn units_that_stand_in_for_each_other_are_of_a_kind() {
        let tables = day(vec![unit(2, &[]), unit(2, &[]), unit(2, &[]), unit(4, &[1]), unit(2, &[])]);
        assert_eq!(Ways::of(&Work::of(&tables, None)).kinds, [0, 1, 0, 3, 0]);
        let tables = day(vec![unit(2, &[]), unit(2, &[0]), unit(2, &[])]);
        assert_eq!(Ways::of(&Work::of(&tables, None)).kinds, [0, 1, 1]);
    }

    #[test]
    fn a_way_is_noted_where_no_other_leaves_as_much() {
        let tables = day(vec![unit(2, &[]), unit(2, &[]), unit(2, &[])]);
        let work = Work::of(&tables, None);
        let state = |at: i64, rinsed: u64, on: &[(usize, i64)], at_basin: bool| State {
            at,
            applied: 0b011,
            rinsed,
            on: on.to_vec(),
            at_basin,
        };
        let mut ways = Ways::of(&work);
        let away = state(20, 0b01, &[(1, 0)], false);
        assert!(!ways.beat(&work, &away), "the first");
        assert!(ways.beat(&work, &away), "the same again");
        // Unit 0 is left instead, which stands in for unit 1.
        assert!(ways.beat(&work, &state(20, 0b10, &[(0, 0)], false)));
        assert!(ways.beat(&work, &state(22, 0b10, &[(0, 2)], false)));
        assert!(!ways.beat(&work, &state(20, 0b01, &[(1, 0)], true)), "at the basin it need not walk");
        assert!(ways.beat(&work, &state(21, 0b01, &[(1, 0)], true)), "a second later it is beaten by that");
        // Another number of units is on, or others were put on.
        assert!(!ways.beat(&work, &state(30, 0b00, &[(0, 5), (1, 5)], false)));
        assert!(!ways.beat(&work, &State { applied: 0b101, ..state(40, 0b001, &[(2, 0)], false) }));
        assert!(!ways.beat(&work, &state(19, 0b01, &[(1, 0)], true)), "earlier than all of them");
    }

    /// Unit 2 waits for the rinse of unit 0: with unit 0 on, it is another state than with unit 1 on.
    #[test]
    fn whose_rinse_is_waited_for_counts() {
        let tables = day(vec![unit(2, &[]), unit(2, &[]), unit(2, &[0])]);
        let work = Work::of(&tables, None);
        assert_eq!(work.waited_for, 0b001);
        let mut ways = Ways::of(&work);
        let state =
            |rinsed: u64, on: usize| State { at: 20, applied: 0b011, rinsed, on: vec![(on, 0)], at_basin: false };
        assert!(!ways.beat(&work, &state(0b10, 0)));
        assert!(!ways.beat(&work, &state(0b01, 1)));
        assert!(ways.beat(&work, &state(0b01, 1)));
        assert!(ways.beat(&work, &state(0b10, 0)));
    }
}
