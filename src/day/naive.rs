//! Small days drawn at random, and what they come to by trying every row of steps: what the searches are held against.

use super::{
    state::{State, Work},
    step::{Does, Step},
    tables::{Started, Tables, Unit},
};
use std::collections::HashSet;

/// Numbers that look random and are the same in every run: Knuth's generator for MMIX.
pub(super) struct Draw(u64);

impl Draw {
    pub(super) const fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// A number between these two, both among them.
    pub(super) fn between(&mut self, least: i64, most: i64) -> i64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        least + i64::try_from(self.0 >> 33).unwrap() % (most - least + 1)
    }
}

/// A day of so many units, some of them alike, with a few rules that form no circle; one of three is in its midst.
pub(super) fn drawn(draw: &mut Draw, count: usize) -> Tables {
    let walk = draw.between(0, 3);
    let mut units: Vec<Unit> = Vec::new();
    for _ in 0..count {
        if let Some(last) = units.last().filter(|_| draw.between(0, 3) == 0) {
            units.push(last.clone());
            continue;
        }
        let block = draw.between(1, 6);
        let low = block + draw.between(0, 9);
        let high = low.max(block + walk) + draw.between(0, 12);
        let rinse = draw.between(1, 3);
        units.push(Unit {
            jobs: Vec::new(),
            block,
            low,
            high,
            rinse,
            applied_before: Vec::new(),
            rinsed_before: Vec::new(),
        });
    }
    let backward = draw.between(0, 1) == 1;
    for one in 0..count {
        for other in one + 1..count {
            let (first, then) = if backward { (other, one) } else { (one, other) };
            match draw.between(0, 9) {
                0 => units[then].applied_before.push(first),
                1 => units[then].rinsed_before.push(first),
                _ => {}
            }
        }
    }
    let mut started = Started::default();
    let free = units.iter().position(|unit| unit.applied_before.is_empty() && unit.rinsed_before.is_empty());
    if let (0, Some(free)) = (draw.between(0, 2), free) {
        started = Started { at: units[free].block, on: vec![(free, 0)], rinsed: Vec::new() };
    }
    Tables { units, mix: 0, rinse: 1, walk, people: 1, started }
}

pub(super) const fn is_in(set: u64, place: usize) -> bool {
    (set / 2u64.pow(place as u32)) % 2 == 1
}

/// Whether what comes before a unit is over.
fn may_begin(tables: &Tables, state: &State, place: usize, order: Option<&[usize]>) -> bool {
    let unit = &tables.units[place];
    let count = state.applied.count_ones() as usize;
    !is_in(state.applied, place)
        && order.is_none_or(|order| order.get(count) == Some(&place))
        && unit.applied_before.iter().all(|before| is_in(state.applied, *before))
        && unit.rinsed_before.iter().all(|before| is_in(state.rinsed, *before))
}

/// The state after a unit is put on.
fn put_on(tables: &Tables, state: &State, place: usize) -> State {
    let due = |(on, begun): &(usize, i64)| begun + tables.units[*on].high + tables.units[*on].rinse;
    let mut on = state.on.clone();
    on.push((place, state.at));
    on.sort_by_key(due);
    let (at, applied) = (state.at + tables.units[place].block, state.applied + 2u64.pow(place as u32));
    State { at, applied, rinsed: state.rinsed, on, at_basin: false }
}

/// The state after a unit is rinsed; none where that comes too late for it.
fn rinsed(tables: &Tables, state: &State, place: usize) -> Option<State> {
    let (_, begun) = *state.on.iter().find(|(on, _)| *on == place)?;
    let unit = &tables.units[place];
    let walk = if state.at_basin { 0 } else { tables.walk };
    let begin = (state.at + walk).max(begun + unit.low);
    let on = state.on.iter().copied().filter(|(on, _)| *on != place).collect();
    let (at, rinsed) = (begin + unit.rinse, state.rinsed + 2u64.pow(place as u32));
    (begin <= begun + unit.high).then_some(State { at, applied: state.applied, rinsed, on, at_basin: true })
}

/// The earliest finish over every row of steps from a state; none where no row keeps the longest times.
pub(super) fn earliest(tables: &Tables, state: &State, order: Option<&[usize]>) -> Option<i64> {
    let places = 0..tables.units.len();
    if places.clone().all(|place| is_in(state.rinsed, place)) {
        return Some(state.at);
    }
    let on = places.clone().filter(|place| may_begin(tables, state, *place, order));
    let next =
        on.map(|place| put_on(tables, state, place)).chain(places.filter_map(|place| rinsed(tables, state, place)));
    next.filter_map(|after| earliest(tables, &after, order)).min()
}

/// Every state that the steps of a search reach, once.
pub(super) fn reached(work: &Work<'_>) -> Vec<State> {
    let mut all = vec![work.start()];
    let mut known = HashSet::new();
    let mut place = 0;
    while place < all.len() {
        let more = work.steps(&all[place]).into_iter().map(|(_, after)| after);
        all.extend(more.filter(|after| known.insert(told(after))).collect::<Vec<_>>());
        place += 1;
    }
    all
}

/// When a row of steps ends that keeps every rule and every time; none where it does not, or leaves something out.
pub(super) fn walked(tables: &Tables, start: State, steps: &[Step]) -> Option<i64> {
    let mut state = start;
    for step in steps {
        let (begin, after) = match step.does {
            Does::PutOn if may_begin(tables, &state, step.unit, None) => (state.at, put_on(tables, &state, step.unit)),
            Does::PutOn => return None,
            Does::Rinse => {
                let after = rinsed(tables, &state, step.unit)?;
                (after.at - tables.units[step.unit].rinse, after)
            }
        };
        if (step.begin, step.person) != (begin, 0) {
            return None;
        }
        state = after;
    }
    (0..tables.units.len()).all(|place| is_in(state.rinsed, place)).then_some(state.at)
}

/// Whether all that is on can be rinsed in time in some order, developed or not.
fn in_time(tables: &Tables, at: i64, on: &[(usize, i64)]) -> bool {
    on.is_empty()
        || on.iter().any(|(place, begun)| {
            let rest: Vec<(usize, i64)> = on.iter().copied().filter(|(other, _)| other != place).collect();
            let unit = &tables.units[*place];
            at <= begun + unit.high && in_time(tables, at + unit.rinse, &rest)
        })
}

/// The steps of a state by their rules, each tried: which unit, whether it is put on, and where that leads.
fn steps(tables: &Tables, state: &State) -> Vec<(bool, usize, State)> {
    let units = &tables.units;
    let waited_for = |place: usize| units.iter().any(|unit| unit.rinsed_before.contains(&place));
    let named = |place: usize| waited_for(place) || units.iter().any(|unit| unit.applied_before.contains(&place));
    let like = |place: usize| {
        let unit = &units[place];
        let before = (unit.applied_before.clone(), unit.rinsed_before.clone());
        (unit.block, unit.low, unit.high, unit.rinse, before)
    };
    let mut found = Vec::new();
    for place in 0..units.len() {
        // Of two that are alike in everything the one in front goes first.
        let in_front =
            |other: usize| !is_in(state.applied, other) && !named(other) && !named(place) && like(other) == like(place);
        if may_begin(tables, state, place, None) && !(0..place).any(in_front) {
            found.push((true, place, put_on(tables, state, place)));
        }
        // Of two that are as quickly rinsed and for which nobody waits, the one that must go sooner, where it has developed.
        let due = |wanted: usize| {
            let at = state.on.iter().position(|(on, _)| *on == wanted);
            at.map(|at| (state.on[at].1 + units[wanted].high, at))
        };
        let goes_first = |(other, begun): &(usize, i64)| {
            due(*other) < due(place)
                && begun + units[*other].low <= state.at
                && units[*other].rinse == units[place].rinse
                && !waited_for(*other)
                && !waited_for(place)
        };
        if let Some(after) = rinsed(tables, state, place).filter(|_| !state.on.iter().any(goes_first)) {
            found.push((false, place, after));
        }
    }
    found.retain(|(on, _, after)| in_time(tables, after.at + if *on { tables.walk } else { 0 }, &after.on));
    found
}

fn told(state: &State) -> (i64, u64, u64, Vec<(usize, i64)>, bool) {
    (state.at, state.applied, state.rinsed, state.on.clone(), state.at_basin)
}

#[test]
fn the_steps_of_every_state_are_those_that_keep_the_rules() {
    let mut draw = Draw::new(1);
    let mut states = 0;
    for count in [1, 2, 3, 4].repeat(20) {
        let tables = drawn(&mut draw, count);
        let work = Work::of(&tables, None);
        for state in reached(&work) {
            let mut got: Vec<_> = work
                .steps(&state)
                .into_iter()
                .map(|(step, after)| {
                    let begin =
                        if step.does == Does::PutOn { state.at } else { after.at - tables.units[step.unit].rinse };
                    assert_eq!((step.begin, step.person), (begin, 0));
                    (step.does == Does::Rinse, step.unit, told(&after))
                })
                .collect();
            let mut want: Vec<_> =
                steps(&tables, &state).into_iter().map(|(on, place, after)| (!on, place, told(&after))).collect();
            got.sort();
            want.sort();
            assert_eq!(got, want, "{tables:?} at {state:?}");
            states += 1;
        }
    }
    assert!(states > 500, "{states}");
}

/// By hand: unit 2 is rinsed, unit 0 on since 4 and unit 1 since 1; unit 0 is due at 4 + 20 + 3, unit 1 at 1 + 20 + 2.
#[test]
fn a_day_in_its_midst_begins_where_it_stands() {
    let unit = |rinse| Unit {
        jobs: Vec::new(),
        block: 3,
        low: 9,
        high: 20,
        rinse,
        applied_before: Vec::new(),
        rinsed_before: Vec::new(),
    };
    let started = Started { at: 7, on: vec![(0, 4), (1, 1)], rinsed: vec![2] };
    let units = vec![unit(3), unit(2), unit(1), unit(1)];
    let tables = Tables { units, mix: 0, rinse: 1, walk: 2, people: 1, started };
    let work = Work::of(&tables, None);
    assert_eq!(told(&work.start()), (7, 0b0111, 0b0100, vec![(1, 1), (0, 4)], false));
    assert_eq!(work.all, 0b1111);
    let windows: Vec<_> = work.windows(&work.start()).map(|one| (one.unit, one.low, one.high, one.rinse)).collect();
    assert_eq!(windows, [(1, 10, 21, 2), (0, 13, 24, 3)]);
}
