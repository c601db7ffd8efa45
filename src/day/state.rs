//! Where a day stands, and every step that can be made from there.

use super::{
    step::{Does, Step},
    tables::Tables,
};

/// Where the day stands.
#[derive(Debug, Clone, Default)]
pub(super) struct State {
    pub(super) at: i64,
    /// Units put on, and units rinsed, a bit for each.
    pub(super) applied: u64,
    pub(super) rinsed: u64,
    /// What is on, the most urgent first: the unit, and when it was begun.
    pub(super) on: Vec<(usize, i64)>,
    /// Whether the guest is at the basin.
    pub(super) at_basin: bool,
}

/// The work of one pair of hands as the steps read it.
pub(super) struct Work<'t> {
    pub(super) tables: &'t Tables,
    /// Where the order is given.
    order: Option<&'t [usize]>,
    applied_before: Vec<u64>,
    pub(super) rinsed_before: Vec<u64>,
    /// For a unit the one in front of it that is like it in everything: which of the two comes first is all one.
    alike: Vec<Option<usize>>,
    /// Units for whose rinse others wait.
    pub(super) waited_for: u64,
    pub(super) all: u64,
}

impl<'t> Work<'t> {
    pub(super) fn of(tables: &'t Tables, order: Option<&'t [usize]>) -> Self {
        let bits = |places: &[usize]| places.iter().fold(0u64, |bits, place| bits | 1 << place);
        let units = &tables.units;
        let rinsed_before: Vec<u64> = units.iter().map(|unit| bits(&unit.rinsed_before)).collect();
        let applied_before: Vec<u64> = units.iter().map(|unit| bits(&unit.applied_before)).collect();
        let named = rinsed_before.iter().chain(&applied_before).fold(0, |all, one| all | one);
        let alike = |i: usize| {
            let one = units.get(i).filter(|_| order.is_none() && named >> i & 1 == 0)?;
            (0..i).rev().find(|j| {
                units.get(*j).is_some_and(|other| {
                    named >> j & 1 == 0
                        && (other.block, other.low, other.high, other.rinse)
                            == (one.block, one.low, one.high, one.rinse)
                        && (&other.applied_before, &other.rinsed_before) == (&one.applied_before, &one.rinsed_before)
                })
            })
        };
        Self {
            tables,
            order,
            alike: (0..units.len()).map(alike).collect(),
            waited_for: rinsed_before.iter().fold(0, |all, one| all | one),
            applied_before,
            rinsed_before,
            all: (1u64 << units.len()) - 1,
        }
    }

    /// The state that the day begins in.
    pub(super) fn start(&self) -> State {
        let started = &self.tables.started;
        let mut on = started.on.clone();
        on.sort_by_key(|(unit, begun)| self.window(*unit, *begun).map_or(0, |one| one.due()));
        let rinsed = started.rinsed.iter().fold(0u64, |bits, unit| bits | 1 << unit);
        let applied = on.iter().fold(rinsed, |bits, (unit, _)| bits | 1 << unit);
        State { at: started.at, applied, rinsed, on, at_basin: false }
    }

    /// What is on, with its times.
    pub(super) fn windows<'s>(&'s self, state: &'s State) -> impl Iterator<Item = Window> + 's {
        state.on.iter().filter_map(|(unit, begun)| self.window(*unit, *begun))
    }

    fn window(&self, unit: usize, begun: i64) -> Option<Window> {
        let one = self.tables.unit(unit)?;
        Some(Window { unit, low: begun + one.low, high: begun + one.high, rinse: one.rinse })
    }

    /// Every step that can be made, and where it leads.
    pub(super) fn steps(&self, state: &State) -> Vec<(Step, State)> {
        let rinses = (0..state.on.len()).filter_map(|place| self.rinse(state, place));
        let units = 0..self.tables.units.len();
        rinses.chain(units.filter_map(|unit| self.put_on(state, unit))).collect()
    }

    fn rinse(&self, state: &State, place: usize) -> Option<(Step, State)> {
        let (unit, begun) = *state.on.get(place)?;
        let window = self.window(unit, begun)?;
        let walk = if state.at_basin { 0 } else { self.tables.walk };
        let begin = (state.at + walk).max(window.low);
        if begin > window.high || self.another_goes_first(state, &window, place) {
            return None;
        }
        let mut on = state.on.clone();
        on.remove(place);
        let (at, rinsed) = (begin + window.rinse, state.rinsed | 1 << unit);
        let after = State { at, applied: state.applied, rinsed, on, at_basin: true };
        let step = Step { does: Does::Rinse, unit, person: 0, begin };
        self.in_time(&after).then_some((step, after))
    }

    fn put_on(&self, state: &State, unit: usize) -> Option<(Step, State)> {
        let (applied, rinsed) = (*self.applied_before.get(unit)?, *self.rinsed_before.get(unit)?);
        let alike = self.alike.get(unit)?.map_or(0, |alike| 1 << alike);
        if state.applied >> unit & 1 == 1 || (applied | alike) & !state.applied != 0 || rinsed & !state.rinsed != 0 {
            return None;
        }
        if self.order.is_some_and(|order| order.get(state.applied.count_ones() as usize) != Some(&unit)) {
            return None;
        }
        let begin = state.at;
        let mine = self.window(unit, begin)?;
        let place = self.windows(state).take_while(|other| other.due() <= mine.due()).count();
        let mut on = Vec::with_capacity(state.on.len() + 1);
        on.extend(state.on.iter().take(place));
        on.push((unit, begin));
        on.extend(state.on.iter().skip(place));
        let (at, applied) = (begin + self.tables.unit(unit)?.block, state.applied | 1 << unit);
        let after = State { at, applied, rinsed: state.rinsed, on, at_basin: false };
        let step = Step { does: Does::PutOn, unit, person: 0, begin };
        self.in_time(&after).then_some((step, after))
    }

    /// Whether all that is on can still be rinsed in time: the order of the latest ends keeps the limits if any order does.
    fn in_time(&self, state: &State) -> bool {
        let mut at = state.at + if state.at_basin { 0 } else { self.tables.walk };
        self.windows(state).all(|one| {
            let in_time = at <= one.high;
            at += one.rinse;
            in_time
        })
    }

    /// Whether another unit on the hair is ready as well, must go no later and takes as long: then it is rinsed first, for
    /// the two could change places.
    fn another_goes_first(&self, state: &State, one: &Window, place: usize) -> bool {
        // What others wait for may be wanted out first.
        let waited_for = |unit: usize| self.waited_for >> unit & 1 == 1;
        if waited_for(one.unit) {
            return false;
        }
        self.windows(state).enumerate().any(|(i, other)| {
            let sooner = other.high < one.high || (other.high == one.high && i < place);
            sooner && other.low <= state.at && other.rinse == one.rinse && !waited_for(other.unit)
        })
    }
}

/// When a unit that is on may be rinsed, and how long that takes.
#[derive(Debug, Clone, Copy)]
pub(super) struct Window {
    pub(super) unit: usize,
    pub(super) low: i64,
    pub(super) high: i64,
    pub(super) rinse: i64,
}

impl Window {
    /// When it is rinsed at the latest.
    const fn due(&self) -> i64 {
        self.high + self.rinse
    }
}
