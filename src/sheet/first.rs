//! Steps before the colour, wherever the sheet says what to do and what to weigh.

use super::{clock::Clock, writing::Writing};
use crate::{
    quantity::{Duration, Mass},
    service::{FirstPart, FirstStep, Plan, WorkStage},
    source::Interval,
    text::{Sheet, amount, range},
};

/// In the running order: what comes before the colour, and when; what of it to weigh and to mind stands with the bowls. What is
/// asked for and not planned comes last.
pub(super) fn order(sheet: &mut Sheet, plan: &Plan) {
    let (planned, asked_for): (Vec<_>, Vec<_>) = plan.first_steps.iter().partition(|step| step.planned);
    for step in planned.into_iter().chain(asked_for) {
        let minutes = format!("{} min on the hair, then {}", range(&step.develop, 0), step.then);
        let text = match step.begin.zip(step.over) {
            Some((begin, over)) => {
                format!("First on {}: {} to {}; {minutes}.", step.name(), range(&begin, 0), range(&over, 0))
            }
            None => format!("Not planned, {}: {minutes}.", step.name()),
        };
        sheet.paragraph(&text, 2);
    }
}

/// At the chair: the planned ones, before the first bowl.
pub(super) fn chair(sheet: &mut Sheet, plan: &Plan, clock: Clock) {
    for step in plan.first_steps.iter().filter(|step| step.planned) {
        sheet.blank();
        let begin = step.begin.map(|begin| clock.at(begin.best(), WorkStage::Section)).unwrap_or_default();
        let indent = begin.len().max(5) + 2;
        sheet.paragraph(&format!("{begin:<indent$}{}: {}", step.name(), step.what), indent);
        sheet.indented(&format!("{}{}", to_weigh(step, clock.writing()), strength(step)), indent);
        sheet.indented(&times(step, clock), indent);
        sheet.indented(&format!("mind: {}", step.mind.join("; ")), indent);
    }
}

/// Under what to weigh: the planned ones, before the bowls.
pub(super) fn weigh(sheet: &mut Sheet, plan: &Plan) {
    for step in plan.first_steps.iter().filter(|step| step.planned) {
        let head = format!("First. {}: {} g needed [{}]", step.name(), range(&step.mix, 1), step.basis);
        sheet.paragraph(&head, 3);
        if let Some(why_not) = &step.why_not {
            sheet.paragraph(&format!("   {why_not}"), 3);
        } else {
            let rows = rows(step, Writing::of(plan.habits));
            let rows = rows.into_iter().map(|row| [String::new()].into_iter().chain(row).collect()).collect();
            sheet.table(&["  ", "into the tared bowl", "weigh", "scale shows", "takes"], &[2, 3, 4], rows);
            sheet.line(&format!("   mix just before the first brush{}", strength(step)));
        }
        sheet.blank();
    }
}

/// Product, grams, what the scale then shows, and how much the step takes.
pub(super) fn rows(step: &FirstStep, writing: Writing) -> Vec<[String; 4]> {
    let mut shows = Mass::ZERO;
    let of = |part: &FirstPart| {
        shows = shows + part.weigh;
        [part.product.clone(), writing.grams(part.weigh), grams(shows), format!("{} g", range(&part.mass, 1))]
    };
    step.parts.iter().map(of).collect()
}

/// What to weigh, in one line.
fn to_weigh(step: &FirstStep, writing: Writing) -> String {
    if let Some(why_not) = &step.why_not {
        return format!("{} g are needed, and {why_not}", range(&step.mix, 1));
    }
    let parts = rows(step, writing).into_iter().enumerate().map(|(place, [product, weigh, shows, _])| {
        if place == 0 { format!("{weigh} {product}") } else { format!("{weigh} {product} ({shows})") }
    });
    format!("weigh {}", parts.collect::<Vec<_>>().join(", "))
}

/// The peroxide on the hair, where something that holds any is known to go on.
pub(super) fn strength(step: &FirstStep) -> String {
    step.on_hair.as_ref().map(|on_hair| format!("; {} % w/w on the hair", range(on_hair, 1))).unwrap_or_default()
}

/// When it is on, how long it stays, how it ends, when it is over.
pub(super) fn times(step: &FirstStep, clock: Clock) -> String {
    let at = |when: Interval<Duration>| within(clock, when);
    let on = step.applied.map(|applied| format!("all on by {}; ", at(applied))).unwrap_or_default();
    let over = step.over.map(|over| format!("; over by {}", at(over))).unwrap_or_default();
    let develop = step.develop;
    format!("{on}{} min on the hair, looked at all the while, then {}{over}", range(&develop, 0), step.then)
}

/// A time by the estimate, and within what.
pub(super) fn within(clock: Clock, when: Interval<Duration>) -> String {
    let [low, best, high] = when.to_array().map(|when| clock.at(when, WorkStage::Section));
    if low == high { best } else { format!("{best} ({low} to {high})") }
}

fn grams(mass: Mass) -> String {
    format!("{} g", amount(mass, 2))
}
