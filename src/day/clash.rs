//! Why there is no order at all: the smallest set of rules that contradict each other.

use super::{Before, OrderRule, SectionWork, Until};
use std::collections::VecDeque;

/// A rule that clashes with others.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Clashing {
    /// Which rule.
    pub rule: OrderRule,
    /// The one of the list, where it is one.
    pub before: Option<Before>,
    /// What it asks for, in words.
    pub asks: String,
}

/// Rules that cannot hold together; leave any one of them out, and the others do not clash among each other.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Clash(pub Vec<Clashing>);

impl std::fmt::Display for Clash {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let told: Vec<String> = self.0.iter().map(|one| format!("{} ({})", one.asks, one.rule)).collect();
        f.write_str(&told.join("; "))
    }
}

/// A step from a section to one that comes later, and the rule that asks for it.
#[derive(Clone, Copy)]
enum Step {
    /// One of the list of [`Before`].
    Rule(usize),
    /// What shares a foil is one: what comes after one of them comes after the other.
    OneFoil,
}

/// The sections of each unit: what shares a foil is one, in painting order; in the order of the first of each.
pub(super) fn units(work: &[SectionWork], before: &[Before]) -> Result<Vec<Vec<usize>>, Clash> {
    let mut units: Vec<Vec<usize>> = Vec::new();
    for (place, one) in work.iter().enumerate() {
        let same = |unit: &&mut Vec<usize>| {
            let first = unit.first().and_then(|first| work.get(*first));
            one.same_foil.is_some() && first.is_some_and(|first| first.same_foil == one.same_foil)
        };
        match units.iter_mut().find(same) {
            Some(unit) => unit.push(place),
            None => units.push(vec![place]),
        }
    }
    let mut unit_of = vec![0usize; work.len()];
    for (number, unit) in units.iter().enumerate() {
        for place in unit {
            if let Some(slot) = unit_of.get_mut(*place) {
                *slot = number;
            }
        }
    }
    let of = |place: usize| unit_of.get(place).copied();
    let inner = |one: &Before| of(one.first) == of(one.then);
    let together: Vec<(usize, usize)> =
        before.iter().filter(|one| !inner(one)).filter_map(|one| Some((of(one.first)?, of(one.then)?))).collect();
    let rinsed_inside = before.iter().any(|one| inner(one) && one.until == Until::Rinsed);
    let painted: Option<Vec<Vec<usize>>> = units
        .iter()
        .map(|unit| {
            let place = |section: usize| unit.iter().position(|other| *other == section);
            let edges = before.iter().filter_map(|one| Some((place(one.first)?, place(one.then)?)));
            let order = sorted(unit.len(), &edges.collect::<Vec<_>>())?;
            Some(order.iter().filter_map(|i| unit.get(*i).copied()).collect())
        })
        .collect();
    match painted {
        Some(painted) if !rinsed_inside && sorted(units.len(), &together).is_some() => Ok(painted),
        _ => Err(smallest(work, before, &of)),
    }
}

/// An order in which every edge leads onward, the smaller place first; none where there is a circle.
pub(super) fn sorted(count: usize, edges: &[(usize, usize)]) -> Option<Vec<usize>> {
    let mut waits = vec![0usize; count];
    for (_, then) in edges {
        *waits.get_mut(*then)? += 1;
    }
    let mut order = Vec::with_capacity(count);
    let mut ready: std::collections::BTreeSet<usize> =
        waits.iter().enumerate().filter(|(_, waits)| **waits == 0).map(|(i, _)| i).collect();
    while let Some(next) = ready.pop_first() {
        order.push(next);
        for (_, then) in edges.iter().filter(|(first, _)| *first == next) {
            let left = waits.get_mut(*then)?;
            *left -= 1;
            if *left == 0 {
                ready.insert(*then);
            }
        }
    }
    (order.len() == count).then_some(order)
}

/// The shortest circle of rules, where what shares a foil counts as one at the price of a rule.
fn smallest(work: &[SectionWork], before: &[Before], unit_of: &impl Fn(usize) -> Option<usize>) -> Clash {
    let mut best: Option<Vec<(usize, usize, Step)>> = None;
    for (number, one) in before.iter().enumerate() {
        let within = unit_of(one.first) == unit_of(one.then);
        // Inside a foil only a wait for its own rinse contradicts the foil; its painting order may go either way.
        let links = !within || one.until == Until::Rinsed;
        let limit = best.as_ref().map_or(usize::MAX, Vec::len);
        if let Some(mut path) = back(work.len(), before, unit_of, (one.then, one.first), links)
            && path.len() + 1 < limit
        {
            path.insert(0, (one.first, one.then, Step::Rule(number)));
            best = Some(path);
        }
    }
    let name = |place: usize| work.get(place).map_or_else(String::new, |one| one.name.clone());
    let told = |(from, to, step): (usize, usize, Step)| match step {
        Step::Rule(number) => {
            let rule = before.get(number).copied();
            let until = match rule.map(|rule| rule.until) {
                Some(Until::Rinsed) => " is rinsed",
                _ => "",
            };
            let asks = format!("{} after {}{until}", name(to), name(from));
            Clashing { rule: rule.map_or(OrderRule::Stated, |rule| rule.rule), before: rule, asks }
        }
        Step::OneFoil => {
            Clashing { rule: OrderRule::OneFoil, before: None, asks: format!("{} with {}", name(from), name(to)) }
        }
    };
    Clash(best.unwrap_or_default().into_iter().map(told).collect())
}

/// The shortest way from one section to another by rules, and by shared foils where they count.
fn back(
    count: usize,
    before: &[Before],
    unit_of: &impl Fn(usize) -> Option<usize>,
    (from, to): (usize, usize),
    links: bool,
) -> Option<Vec<(usize, usize, Step)>> {
    let mut came: Vec<Option<(usize, Step)>> = vec![None; count];
    let mut queue = VecDeque::from([from]);
    let mut seen = vec![false; count];
    *seen.get_mut(from)? = true;
    while let Some(at) = queue.pop_front() {
        if at == to {
            break;
        }
        let by_rule =
            before.iter().enumerate().filter(|(_, one)| one.first == at).map(|(i, one)| (one.then, Step::Rule(i)));
        let linked = (0..count).filter(|other| links && *other != at && unit_of(*other) == unit_of(at));
        for (next, step) in by_rule.chain(linked.map(|other| (other, Step::OneFoil))) {
            if !std::mem::replace(seen.get_mut(next)?, true) {
                *came.get_mut(next)? = Some((at, step));
                queue.push_back(next);
            }
        }
    }
    let (mut path, mut at) = (Vec::new(), to);
    while at != from {
        let (earlier, step) = (*came.get(at)?)?;
        path.insert(0, (earlier, at, step));
        at = earlier;
    }
    Some(path)
}

#[cfg(test)]
mod tests {
    use super::{super::naive::Draw, Clash, Clashing, sorted, units};
    use crate::{
        day::{Before, OrderRule, SectionWork, Until},
        quantity::Duration,
    };

    /// What is ready goes in the order of its place; worked out by hand.
    #[test]
    fn what_waits_for_nothing_more_comes_next() {
        assert_eq!(sorted(0, &[]), Some(vec![]));
        assert_eq!(sorted(3, &[]), Some(vec![0, 1, 2]));
        assert_eq!(sorted(4, &[(2, 0), (3, 0), (3, 1)]), Some(vec![2, 3, 0, 1]));
        // A rule that is given twice is kept once and for all.
        assert_eq!(sorted(3, &[(2, 1), (2, 1), (1, 0)]), Some(vec![2, 1, 0]));
        assert_eq!(sorted(3, &[(0, 1), (1, 2), (2, 1)]), None);
        assert_eq!(sorted(2, &[(1, 1)]), None);
    }

    fn section(same_foil: Option<u32>) -> SectionWork {
        SectionWork { same_foil, ..SectionWork::new("", Duration::ZERO, Duration::ZERO, Duration::ZERO) }
    }

    /// Every order of so many.
    fn orders(left: &[usize]) -> Vec<Vec<usize>> {
        if left.is_empty() {
            return vec![Vec::new()];
        }
        let first = |one: &usize| {
            let rest: Vec<usize> = left.iter().copied().filter(|other| other != one).collect();
            orders(&rest).into_iter().map(|order| [vec![*one], order].concat()).collect::<Vec<_>>()
        };
        left.iter().flat_map(first).collect()
    }

    /// Whether an order of painting keeps the rules: what shares a foil follows each other, and none of it waits for its own rinse or for
    /// what is not on before all of the foil.
    fn holds(work: &[SectionWork], before: &[&Before], order: &[usize]) -> bool {
        let foil = |section: usize| work[section].same_foil;
        let one_foil = |one: usize, other: usize| foil(one).is_some() && foil(one) == foil(other);
        let at = |section: usize| order.iter().position(|other| *other == section);
        let apart = order.iter().enumerate().any(|(place, one)| {
            let mut behind = order[place + 1..].iter().skip_while(|other| one_foil(*one, **other));
            behind.any(|other| one_foil(*one, *other))
        });
        let kept = |rule: &&Before| {
            at(rule.first) < at(rule.then) && !(rule.until == Until::Rinsed && one_foil(rule.first, rule.then))
        };
        !apart && before.iter().all(kept)
    }

    fn can_hold(work: &[SectionWork], before: &[&Before]) -> bool {
        let places: Vec<usize> = (0..work.len()).collect();
        orders(&places).iter().any(|order| holds(work, before, order))
    }

    /// Over rules drawn at random, in half of the cases with foils: units where some order keeps the rules, and else rules and foils of
    /// which any may be left out; without foils no fewer clash.
    #[test]
    fn rules_clash_where_no_order_keeps_them_and_no_fewer_do() {
        let mut draw = Draw::new(5);
        let mut place = |most: usize| usize::try_from(draw.between(0, i64::try_from(most).unwrap())).unwrap();
        let (mut clashed, mut held) = (0, 0);
        for _ in 0..600 {
            let (count, foils) = (2 + place(2), place(1) == 1);
            let foil = |of: usize| Some(of as u32).filter(|of| foils && *of < 2);
            let work: Vec<SectionWork> =
                (0..count).map(|name| SectionWork { name: name.to_string(), ..section(foil(place(3))) }).collect();
            let mut rules: Vec<Before> = Vec::new();
            for _ in 0..place(5) {
                let (first, then) = (place(count - 1), place(count - 1));
                let until = [Until::Applied, Until::Rinsed][place(1)];
                rules.extend((first != then).then_some(Before { first, then, until, rule: OrderRule::Stated }));
            }
            let told = format!("{rules:?} of {:?}", work.iter().map(|one| one.same_foil).collect::<Vec<_>>());
            match units(&work, &rules) {
                Ok(units) => {
                    held += 1;
                    are_units(&units, &work, &rules, &told);
                }
                Err(Clash(found)) => {
                    clashed += 1;
                    is_smallest(&found, &work, &rules, &format!("{found:?}: {told}"));
                }
            }
        }
        assert!(clashed > 50 && held > 50, "{clashed} and {held}");
    }

    fn are_units(units: &[Vec<usize>], work: &[SectionWork], rules: &[Before], told: &str) {
        let all: Vec<&Before> = rules.iter().collect();
        assert!(can_hold(work, &all), "{told}");
        let mut sections = units.concat();
        sections.sort_unstable();
        assert!(sections.into_iter().eq(0..work.len()), "each section once: {told}");
        assert!(units.iter().map(|unit| unit.iter().min()).is_sorted(), "in the order of the first of each: {told}");
        for unit in units {
            let foil = work[unit[0]].same_foil;
            let of_foil = work.iter().filter(|one| one.same_foil == foil).count();
            assert_eq!(unit.len(), if foil.is_some() { of_foil } else { 1 }, "{told}");
            assert!(unit.iter().all(|one| work[*one].same_foil == foil), "{told}");
            let at = |section: usize| unit.iter().position(|other| *other == section);
            let mut inside = all.iter().filter_map(|rule| Some((at(rule.first)?, at(rule.then)?)));
            assert!(inside.all(|(first, then)| first < then), "{told}");
        }
    }

    fn is_smallest(found: &[Clashing], work: &[SectionWork], rules: &[Before], told: &str) {
        let named: Vec<&Before> = found.iter().filter_map(|one| one.before.as_ref()).collect();
        assert!(named.iter().all(|rule| rules.contains(rule)), "{told}");
        // The foils that are named; what no clash names may be as it is.
        let foils: Vec<Option<u32>> = found
            .iter()
            .filter(|one| one.rule == OrderRule::OneFoil)
            .map(|one| work.iter().find(|section| one.asks.starts_with(&section.name)).unwrap().same_foil)
            .collect();
        let with = |foils: &[Option<u32>]| -> Vec<SectionWork> {
            work.iter().map(|one| section(one.same_foil.filter(|_| foils.contains(&one.same_foil)))).collect()
        };
        assert!(!can_hold(&with(&foils), &named), "{told}");
        for left_out in 0..named.len() {
            let mut fewer = named.clone();
            fewer.remove(left_out);
            assert!(can_hold(&with(&foils), &fewer), "{told}");
        }
        for left_out in 0..foils.len() {
            let mut fewer = foils.clone();
            fewer.remove(left_out);
            assert!(can_hold(&with(&fewer), &named), "{told}");
        }
        if work.iter().all(|one| one.same_foil.is_none()) {
            let sets = (0..1_usize << rules.len()).map(|set| -> Vec<&Before> {
                let chosen = |place: &usize| set / 2_usize.pow(*place as u32) % 2 == 1;
                (0..rules.len()).filter(chosen).map(|place| &rules[place]).collect()
            });
            let fewest = sets.filter(|set| !can_hold(work, set)).map(|set| set.len()).min();
            assert_eq!(Some(named.len()), fewest, "{told}");
        }
    }
}
