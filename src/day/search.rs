//! The best order found by habit and by moving units as long as that helps.

use super::{
    clash::sorted,
    greedy::{Habit, greedy},
    step::Steps,
    tables::Tables,
};

/// The best day found.
pub(super) fn search(tables: &Tables) -> Option<Steps> {
    let count = tables.units.len();
    let edges = tables.edges();
    // Slowest first as far as the rules allow, and the order of the list.
    let mut by_need: Vec<usize> = (0..count).collect();
    by_need.sort_by_key(|place| std::cmp::Reverse(tables.unit(*place).map_or(0, |unit| unit.low)));
    let rank = |place: usize| by_need.iter().position(|other| *other == place).unwrap_or(place);
    let ranked: Vec<(usize, usize)> = edges.iter().map(|(first, then)| (rank(*first), rank(*then))).collect();
    let slowest: Vec<usize> = sorted(count, &ranked)?.iter().filter_map(|i| by_need.get(*i).copied()).collect();
    let mut best: Option<(Vec<usize>, Steps)> = None;
    for order in [slowest, sorted(count, &edges)?] {
        take_better(tables, order, &mut best);
    }
    // Fewer tries where each of them takes longer.
    let mut tries = (20_000 / (count * count).max(1)).clamp(8, 400);
    let bound = tables.bound();
    let mut improved = true;
    while improved && tries > 0 {
        improved = false;
        'moves: for from in 0..count {
            for to in 0..count {
                let (order, found) = best.as_ref()?;
                if from == to || found.finish <= bound {
                    continue;
                }
                let Some(moved) = moved(order, from, to, &edges) else { continue };
                improved |= take_better(tables, moved, &mut best);
                tries -= 1;
                if tries == 0 {
                    break 'moves;
                }
            }
        }
    }
    best.map(|(_, found)| found)
}

/// The better of both habits.
pub(super) fn by_habit(tables: &Tables, order: &[usize], strict: bool) -> Option<Steps> {
    let days = [Habit::Late, Habit::Soon].map(|habit| greedy(tables, order, habit, strict));
    days.into_iter().flatten().min_by_key(|day| day.finish)
}

fn take_better(tables: &Tables, order: Vec<usize>, best: &mut Option<(Vec<usize>, Steps)>) -> bool {
    let Some(found) = by_habit(tables, &order, false) else { return false };
    if best.as_ref().is_none_or(|(_, known)| found.finish < known.finish) {
        *best = Some((order, found));
        return true;
    }
    false
}

/// One unit taken out and put in elsewhere, where the rules allow it.
fn moved(order: &[usize], from: usize, to: usize, edges: &[(usize, usize)]) -> Option<Vec<usize>> {
    let mut order = order.to_vec();
    let unit = order.remove(from);
    order.insert(to, unit);
    let at = |unit: usize| order.iter().position(|other| *other == unit);
    edges.iter().all(|(first, then)| at(*first) < at(*then)).then_some(order)
}
