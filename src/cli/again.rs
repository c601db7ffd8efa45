//! The decision on a second application, told.

use crate::{
    finding::Verdict,
    lift::OFTEN,
    record::{Again, SecondApplication},
    service::Plan,
    source::Interval,
    text::{Sheet, amount, in_hundred, number, range},
};

/// What the plan says stop to, a line for each.
pub(super) fn plan_stops(plan: &Plan) -> impl Iterator<Item = String> {
    let stops = plan.findings.iter().filter(|one| one.verdict == Verdict::Stop);
    stops.map(|one| format!("[{}] the plan says stop: {}", one.verdict, one.text))
}

/// A paragraph for the decision on each section, with its reasons and what was not taken.
pub(super) fn told(sheet: &mut Sheet, all: &[SecondApplication]) {
    for one in all {
        // It is rejected to be left on where, and only where, it comes off now: that is said before what follows.
        let off = one.rejected.iter().any(|other| other.what == Again::GoOn);
        let first = if off { "rinse now; then " } else { "" };
        sheet.paragraph(&format!("{}: {first}{}{} [{}]", one.section, one.decision, when(one), one.basis), 2);
        sheet.paragraph(&format!("  why: {}", one.reasons.join("; ")), 7);
        for other in &one.rejected {
            sheet.paragraph(&format!("  not {}: {}", other.what, other.why), 6);
        }
    }
}

/// How long, or from when.
fn when(one: &SecondApplication) -> String {
    match one.decision {
        Again::FreshMix | Again::TestFirst => {
            let minutes = |minutes: &Interval<_>| format!(", {} min of a fresh mix", range(minutes, 0));
            let so_far = format!("; on the hair for {} min so far", amount(one.on_hair, 0));
            one.fresh.as_ref().map(minutes).unwrap_or_default() + &so_far
        }
        Again::NextVisit => {
            let from = one.not_before.map(|day| format!(", not before {day} ({} weeks)", range(&one.wait, 0)));
            from.unwrap_or_default() + &visits(one)
        }
        // No day where a doctor or a test has the next word.
        _ => String::new(),
    }
}

/// How many visits it takes then, where they reach it.
fn visits(one: &SecondApplication) -> String {
    let count = number(one.visits.len() as f64, 0);
    match one.visits.as_slice() {
        [] => String::new(),
        [.., last] if last.chance.best() < OFTEN => {
            let [low, best, high] = last.chance.to_array().map(in_hundred);
            let visits = if one.visits.len() == 1 { "visit reaches" } else { "visits reach" };
            format!("; even {count} {visits} it in {best} ({low} to {high}) of 100 only")
        }
        [_] => "; one visit should do then".to_owned(),
        _ => format!("; it may take {count} visits"),
    }
}
