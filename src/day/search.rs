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
    let mut tries = 0..tries(count);
    let bound = tables.bound();
    let mut improved = true;
    while improved {
        improved = false;
        for from in 0..count {
            for to in 0..count {
                let (order, found) = best.as_ref()?;
                if from == to || found.finish <= bound {
                    continue;
                }
                let Some(moved) = moved(order, from, to, &edges) else { continue };
                if tries.next().is_none() {
                    return best.map(|(_, found)| found);
                }
                improved |= take_better(tables, moved, &mut best);
            }
        }
    }
    best.map(|(_, found)| found)
}

/// How many orders are tried: fewer where each of them takes longer.
fn tries(units: usize) -> usize {
    (20_000 / (units * units).max(1)).clamp(8, 400)
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
    edges.iter().all(|(first, then)| at(*first) <= at(*then)).then_some(order)
}

#[cfg(test)]
mod tests {
    use super::{
        super::{
            naive::{Draw, drawn},
            step::Steps,
            tables::Tables,
        },
        by_habit, moved, search, tries,
    };

    /// The unit that comes next by a wish, of those whose rules are kept.
    fn ordered(tables: &Tables, wish: impl Fn(usize) -> (i64, usize)) -> Vec<usize> {
        let mut order = Vec::new();
        while order.len() < tables.units.len() {
            let ready = (0..tables.units.len()).filter(|unit| {
                let unit_of = &tables.units[*unit];
                let mut before = unit_of.applied_before.iter().chain(&unit_of.rinsed_before);
                !order.contains(unit) && before.all(|before| order.contains(before))
            });
            order.push(ready.min_by_key(|unit| wish(*unit)).unwrap());
        }
        order
    }

    fn keeps(tables: &Tables, order: &[usize]) -> bool {
        order.iter().enumerate().all(|(place, unit)| {
            let unit = &tables.units[*unit];
            unit.applied_before.iter().chain(&unit.rinsed_before).all(|before| order[..place].contains(before))
        })
    }

    /// The better of two orders, and every unit moved everywhere as long as that helps.
    fn climbed(tables: &Tables) -> Option<Steps> {
        let (slowest, listed) =
            (ordered(tables, |unit| (-tables.units[unit].low, unit)), ordered(tables, |unit| (0, unit)));
        let day = |order: &[usize]| by_habit(tables, order, false);
        let (mut order, mut best) = match (day(&slowest), day(&listed)) {
            (Some(slow), Some(list)) if list.finish < slow.finish => (listed, list),
            (Some(slow), _) => (slowest, slow),
            (None, list) => (listed, list?),
        };
        let count = order.len();
        loop {
            let before = best.finish;
            for (from, to) in (0..count).flat_map(|from| (0..count).map(move |to| (from, to))) {
                let mut other = order.clone();
                let unit = other.remove(from);
                other.insert(to, unit);
                let found = day(&other).filter(|found| found.finish < best.finish && keeps(tables, &other));
                if let Some(found) = found.filter(|_| best.finish > tables.bound()) {
                    (order, best) = (other, found);
                }
            }
            if best.finish == before {
                return Some(best);
            }
        }
    }

    #[test]
    fn units_are_moved_as_long_as_that_helps() {
        let mut draw = Draw::new(4);
        let mut moves_helped = 0;
        for count in [1, 2, 3, 4, 5, 6].repeat(40) {
            let people = usize::try_from(draw.between(1, 3)).unwrap();
            let tables = Tables { people, ..drawn(&mut draw, count) };
            let (found, want) = (search(&tables), climbed(&tables));
            assert_eq!(found, want, "{tables:?}");
            let listed = by_habit(&tables, &ordered(&tables, |unit| (0, unit)), false);
            moves_helped += usize::from(want.zip(listed).is_some_and(|(want, listed)| want.finish < listed.finish));
        }
        assert!(moves_helped > 20, "{moves_helped}");
    }

    /// By hand: 20 000 by the square of the units, 8 to 400.
    #[test]
    fn fewer_orders_are_tried_where_each_takes_longer() {
        assert_eq!([0, 1, 7, 8, 10, 20, 40, 60].map(tries), [400, 400, 400, 312, 200, 50, 12, 8]);
    }

    #[test]
    fn a_unit_is_moved_where_the_rules_allow_it() {
        assert_eq!(moved(&[2, 0, 1], 0, 2, &[]), Some(vec![0, 1, 2]));
        assert_eq!(moved(&[2, 0, 1], 2, 0, &[(1, 0), (1, 2)]), Some(vec![1, 2, 0]));
        assert_eq!(moved(&[2, 0, 1], 2, 0, &[(0, 1)]), None);
        assert_eq!(moved(&[2, 0, 1], 2, 0, &[(1, 2), (0, 2)]), None);
        assert_eq!(moved(&[2, 0, 1], 1, 1, &[(2, 0)]), Some(vec![2, 0, 1]));
    }
}
