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
