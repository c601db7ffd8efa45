//! What no way on from a state can beat, by sets that are tried one by one: what the bounds of the searches are held against.

use super::{
    floor::many,
    least::Least,
    naive::{Draw, drawn, earliest, is_in, reached},
    state::{State, Work},
    tables::Tables,
    visits::Visits,
};

/// The places of a set, a bit for each.
fn places(set: u64) -> Vec<usize> {
    (0..64).filter(|place| is_in(set, *place)).collect()
}

/// Every part of a set but the empty one.
fn parts(set: u64) -> impl Iterator<Item = u64> {
    (1..=set).filter(move |part| places(*part).iter().all(|place| is_in(set, *place)))
}

/// Whether these can be put on one after the other in some order and rinsed in one visit, none of them too late. `time` is from the end
/// of what is put on last of them until the water.
fn in_one_visit(tables: &Tables, set: &[usize], time: i64) -> bool {
    set.is_empty()
        || set.iter().any(|last| {
            let rest: Vec<usize> = set.iter().copied().filter(|place| place != last).collect();
            let on = time + tables.units[*last].block;
            on <= tables.units[*last].high && in_one_visit(tables, &rest, on)
        })
}

fn together(tables: &Tables, set: u64) -> bool {
    let waits = |place: &usize| tables.units[*place].rinsed_before.iter().any(|before| is_in(set, *before));
    let set = places(set);
    !set.iter().any(waits) && in_one_visit(tables, &set, tables.walk)
}

/// The fewest visits in which a set is rinsed.
fn fewest(tables: &Tables, set: u64) -> i64 {
    if set == 0 {
        return 0;
    }
    let visits = parts(set).filter(|part| together(tables, *part)).map(|part| 1 + fewest(tables, set - part));
    visits.min().unwrap()
}

fn sum(tables: &Tables, set: u64, of: impl Fn(&super::tables::Unit) -> i64) -> i64 {
    places(set).into_iter().map(|place| of(&tables.units[place])).sum()
}

/// How long the unit that is put on last takes until it is rinsed, at least: the shortest of a set.
fn last(tables: &Tables, set: u64) -> i64 {
    let units = places(set).into_iter().map(|place| &tables.units[place]);
    units.map(|unit| (unit.low - unit.block).max(tables.walk) + unit.rinse).min().unwrap()
}

/// What is on: when it has developed, when it must go, and how long its rinse takes.
fn on(tables: &Tables, state: &State) -> Vec<(i64, i64, i64)> {
    let of = |(place, begun): &(usize, i64)| {
        let unit = &tables.units[*place];
        (begun + unit.low, begun + unit.high, unit.rinse)
    };
    state.on.iter().map(of).collect()
}

/// The earliest finish by which of the units left are on when the last of them is: the others, and what is on and cannot wait, are
/// rinsed by then.
fn by_sets(tables: &Tables, state: &State, left: u64) -> i64 {
    let (blocks, walk) = (sum(tables, left, |unit| unit.block), tables.walk);
    let is_on = on(tables, state);
    let all = sum(tables, left, |unit| unit.rinse) + is_on.iter().map(|(.., rinse)| rinse).sum::<i64>();
    let ending = |stays: u64| {
        let before = left - stays;
        let visits = fewest(tables, before);
        let rinses = sum(tables, before, |unit| unit.rinse);
        let (mut walks, mut gone) = (visits * walk, 0);
        for _ in 0..2 {
            let all_on = state.at + blocks + walks + rinses + gone;
            let goes: Vec<i64> = is_on.iter().filter(|one| all_on + walk > one.1).map(|one| one.2).collect();
            gone = goes.iter().sum();
            // A visit of its own, where there is none for others and the guest is not there already.
            if !goes.is_empty() && visits == 0 && !state.at_basin {
                walks = walk;
            }
        }
        let all_rinsed = state.at + blocks + walks + walk + all;
        all_rinsed.max(state.at + blocks + walks + rinses + gone + last(tables, stays))
    };
    parts(left).filter(|stays| together(tables, *stays)).map(ending).min().unwrap()
}

/// The most of these that fit into a time, one at least.
fn fitting(tables: &Tables, set: u64, room: i64) -> i64 {
    let fit = parts(set).filter(|part| sum(tables, *part, |unit| unit.block) <= room);
    fit.map(|part| many(places(part).len())).max().unwrap_or(1)
}

/// The earliest finish by how many of the units are on when the last of them is.
fn by_counts(tables: &Tables, state: &State, left: u64, all: u64) -> i64 {
    let walk = tables.walk;
    let kept = |set: u64| places(set).into_iter().map(|place| tables.units[place].high).max().unwrap() - walk;
    let (at_once, fit) = (fitting(tables, all, kept(all)), fitting(tables, left, kept(left)));
    let is_on = on(tables, state);
    let all_on = state.at + sum(tables, left, |unit| unit.block);
    let rinses = sum(tables, left, |unit| unit.rinse) + is_on.iter().map(|(.., rinse)| rinse).sum::<i64>();
    let shortest = tables.units.iter().map(|unit| unit.rinse).min().unwrap();
    let stay = is_on.iter().filter(|(_, high, _)| all_on + walk <= *high).count();
    let count = many(places(left).len() + is_on.len());
    let with = |stays: i64| {
        let before = count - stays;
        let mut visits = (before + at_once - 1) / at_once;
        if state.at_basin && before > 0 {
            visits -= 1;
        }
        visits * walk + (before * shortest + last(tables, left)).max(walk + rinses)
    };
    let least = (1..=count.min(fit + many(stay))).map(with).min().unwrap();
    let of_on = is_on.iter().map(|(low, _, rinse)| low + rinse);
    let of_left = places(left).into_iter().map(|place| state.at + tables.units[place].low + tables.units[place].rinse);
    of_on.chain(of_left).max().unwrap().max(all_on + least)
}

/// The earliest end of these rinses in any order, without their longest times.
fn all_rinsed(at: i64, ready: &[(i64, i64, i64)]) -> i64 {
    let after = (0..ready.len()).map(|place| {
        let mut rest = ready.to_vec();
        let (low, _, rinse) = rest.remove(place);
        all_rinsed(at.max(low) + rinse, &rest)
    });
    after.min().unwrap_or(at)
}

#[test]
fn no_way_on_beats_what_a_state_cannot_beat_and_sets_tried_one_by_one_say_the_same() {
    let mut draw = Draw::new(3);
    let mut states = 0;
    for count in [1, 2, 3, 4, 5].repeat(14) {
        let tables = drawn(&mut draw, count);
        let work = Work::of(&tables, None);
        let (mut plain, mut with_sets) = (Least::of(&work, count - 1), Least::of(&work, count));
        let mut visits = Visits::of(&work);
        for state in reached(&work).into_iter().step_by(if count == 5 { 7 } else { 1 }) {
            let (without, with) = (plain.finish(&work, &state), with_sets.finish(&work, &state));
            if state.applied == work.all {
                let at = state.at + if state.at_basin { 0 } else { tables.walk };
                assert_eq!((without, with), (all_rinsed(at, &on(&tables, &state)), without));
            } else {
                let left = work.all - state.applied;
                let want = by_counts(&tables, &state, left, work.all);
                let want_of_sets = by_sets(&tables, &state, left);
                let [blocks, rinses] = [sum(&tables, left, |one| one.block), sum(&tables, left, |one| one.rinse)];
                assert_eq!(without, want, "{tables:?} at {state:?}");
                assert_eq!(visits.finish(&work, &state, blocks, rinses), want_of_sets, "{tables:?} at {state:?}");
                assert_eq!(with, want.max(want_of_sets));
            }
            if count < 5
                && let Some(best) = earliest(&tables, &state, None)
            {
                assert!(with <= best, "{with} of {best}: {tables:?} at {state:?}");
            }
            states += 1;
        }
    }
    assert!(states > 500, "{states}");
}
