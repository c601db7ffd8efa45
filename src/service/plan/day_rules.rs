//! What comes before what: as the service says, and by the rules of the house.

use super::sections::Work;
use crate::{
    day::{Before, Clash, OrderRule, Until},
    service::{
        request::Request,
        shape::{HistoryFlag, HouseRule, WaitFor, Zone},
    },
};

/// Every rule between two sections, by their places among the sections; what the service says first.
pub(super) fn rules(request: &Request, works: &[&Work<'_>]) -> Vec<Before> {
    let mut found = Vec::new();
    let mut add = |first: usize, then: usize, until: Until, rule: OrderRule| {
        let before = Before { first, then, until, rule };
        let known = |other: &Before| {
            let Before { first: a, then: b, until: c, .. } = *other;
            (a, b) == (first, then) && (c == until || c == Until::Rinsed)
        };
        if first != then && !found.iter().any(known) {
            found.push(before);
        }
    };
    let place = |in_request: usize| works.iter().position(|work| work.in_request == in_request);
    for (then, work) in works.iter().enumerate() {
        for (first, wait) in &work.task.after {
            let until = match wait {
                WaitFor::Application | WaitFor::FoilClosing => Until::Applied,
                WaitFor::Development | WaitFor::Rinse => Until::Rinsed,
            };
            if let Some(first) = place(*first) {
                add(first, then, until, OrderRule::Stated);
            }
        }
    }
    let has = |rule: HouseRule| request.floor.rules.contains(&rule);
    let virgin = virgin(request);
    for (one, first) in works.iter().enumerate() {
        for (other, then) in works.iter().enumerate().filter(|(other, _)| *other != one) {
            let one_foil = first.task.same_foil_as.contains(&then.in_request)
                || then.task.same_foil_as.contains(&first.in_request);
            if has(HouseRule::DarkestFirst) && one_foil && first.task.target < then.task.target {
                add(one, other, Until::Applied, OrderRule::DarkestFirst);
            }
            let both_lighten = first.lightens() && then.lightens();
            let roots = |zone: Zone| zone == Zone::Roots;
            if has(HouseRule::MidLengthsFirst)
                && virgin
                && both_lighten
                && roots(then.task.zone)
                && !first.task.zone.overlaps(Zone::Roots)
            {
                add(one, other, Until::Applied, OrderRule::MidLengthsFirst);
            }
            if has(HouseRule::OutlineFirst) && first.task.hairline && !then.task.hairline {
                add(one, other, Until::Applied, OrderRule::OutlineFirst);
            }
            let need = |work: &Work<'_>| work.task.apply.min() + work.task.develop.min();
            if has(HouseRule::SlowestFirst) && both_lighten && need(first) > need(then) {
                add(one, other, Until::Applied, OrderRule::SlowestFirst);
            }
        }
    }
    found
}

/// Hair of which it is stated that nothing has lightened or coloured it; a history that is not stated says nothing.
fn virgin(request: &Request) -> bool {
    let treated = [
        HistoryFlag::Lightened,
        HistoryFlag::PermanentColour,
        HistoryFlag::Henna,
        HistoryFlag::MetallicSalts,
        HistoryFlag::StraightenedOrPermed,
    ];
    let analysis = &request.file.analysis;
    analysis.existing.is_empty()
        && analysis.history.as_ref().is_some_and(|flags| !flags.iter().any(|flag| treated.contains(flag)))
}

/// Leaves one rule of the house out of those that clash, and tells which; none where the service contradicts itself.
pub(super) fn dropped(clash: &Clash, kept: &mut Vec<Before>) -> Option<String> {
    let house = |rule: OrderRule| !matches!(rule, OrderRule::Stated | OrderRule::OneFoil | OrderRule::Longest);
    let one = clash.0.iter().find(|one| house(one.rule) && one.before.is_some())?;
    kept.retain(|rule| Some(*rule) != one.before);
    Some(format!("{} ({}), for it clashes: {clash}", one.asks, one.rule))
}
