//! When a section was begun, where nobody noted its first strand: the one answer of every door.

use super::{SectionSoFar, SoFar};
use crate::{
    quantity::{Duration, Quantity},
    service::{Plan, Step},
    text::amount,
};

/// A section with the begin as planned before the end of its application where nobody noted one: later it cannot be taken, for the
/// longest time would end too late.
pub(super) fn as_begun(plan: &Plan, one: &SectionSoFar) -> SectionSoFar {
    let planned = |step: &Step| step.applied.min() - step.begin.min();
    let before = |applied: Duration| {
        let step = step_of(plan, &one.name)?;
        Some(Duration::nearest((applied.min() - planned(step)).max(0.0)))
    };
    let mut taken = one.clone();
    // Begun again later, it was on all the same since before the end of its first application.
    match taken.earlier.first_mut() {
        Some(first) if !first.begin_noted => first.begun = before(first.begun).unwrap_or(first.begun),
        Some(_) => {}
        None => taken.begun = one.begun.or_else(|| before(one.applied?)),
    }
    taken
}

/// The same of every section. Not for what asks when a toner went on: where nobody noted that, it is taken as on from the rinse.
pub(super) fn all_as_begun(plan: &Plan, so_far: &SoFar) -> SoFar {
    let sections = so_far.sections.iter().map(|one| as_begun(plan, one)).collect();
    SoFar { sections, ..so_far.clone() }
}

/// That the begin of what is on is taken as planned, in words; none where somebody noted it.
pub(super) fn taken_as_begun(plan: &Plan, noted: &SectionSoFar) -> Option<String> {
    let still_on = noted.rinsed.is_none() && !noted.earlier.iter().any(|earlier| earlier.rinse_noted);
    let begun = as_begun(plan, noted).first_strand().filter(|_| still_on && noted.first().0.is_none())?;
    Some(format!("its begin is not noted: taken as on from minute {}, as planned (note --begun)", amount(begun, 0)))
}

pub(super) fn step_of<'p>(plan: &'p Plan, section: &str) -> Option<&'p Step> {
    plan.order.iter().find(|step| step.name == section)
}
