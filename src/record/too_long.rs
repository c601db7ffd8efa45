//! What is on for longer than it may be.

use super::{
    Comfort, Instruction, SectionSoFar, SoFar,
    carried::Stretch,
    instructions::{concerns_all, instructions, of_signs},
    toned::{is_there, level_without_toner},
};
use crate::{
    finding::Verdict,
    lift::{Due, TimeOn},
    quantity::{Duration, Quantity},
    service::{Plan, Step, shape::Elasticity},
    source::{Basis, Sourced},
    text::number,
};

/// Times that lie less apart are the same: the minutes of a log are read off a clock to the whole minute, so that each is off by
/// as much as half of one.
const SAME_WITHIN_MIN: Sourced<f64> = Sourced::assumed(0.5);

/// Whether minutes on the hair are more than those that are allowed.
pub(super) fn is_more(min: f64, allowed_min: f64) -> bool {
    min - allowed_min >= SAME_WITHIN_MIN.value
}

/// Minutes beyond, in words: whole ones, and with a decimal where they are less than one, for none would be a mistake.
fn more(min: f64) -> String {
    number(min, usize::from(min < 1.0))
}

/// How long a section is on, and how long it may be: by the products, and by the plan where it ends earlier and one of them does not
/// say, or where none does. None where it is not on, or the plan does not know it.
pub(super) fn time_on(plan: &Plan, so_far: &SoFar, one: &SectionSoFar) -> Option<TimeOn> {
    let (step, on) = (step_of(plan, &one.name)?, one.on_now(so_far.now)?);
    let read = level_without_toner(plan, so_far, one).filter(|(at, _)| *at >= on.begun);
    Some(TimeOn {
        on: Duration::nearest(on.min()),
        planned: Duration::nearest(step.rinse_by.min() - step.begin.min()),
        longest: step.longest_known(on.begun, on.applied),
        looked: read.map(|(at, _)| Duration::nearest(at.min() - on.begun.min())),
    })
}

/// That it comes off now, where its time is up.
pub(super) fn over(time: &TimeOn) -> Option<String> {
    let (which, aside) = if time.longest.is_some() {
        ("longest that the product allows", "")
    } else {
        ("planned time", ", and the product's longest is not on the shelf")
    };
    let (on, end) = (time.on.min(), time.end().min());
    (time.due() == Due::Rinse).then(|| {
        if is_more(on, end) {
            format!("rinse now: {} min beyond the {which}{aside}", more(on - end))
        } else {
            format!("rinse now: the {which} is up{aside}")
        }
    })
}

/// A section with the begin as planned before the end of its application where nobody noted one: later it cannot be taken, for the
/// longest time would end too late.
pub(super) fn as_begun(plan: &Plan, one: &SectionSoFar) -> SectionSoFar {
    let planned = |step: &Step| step.applied.min() - step.begin.min();
    let before = |applied: Duration| {
        let step = step_of(plan, &one.name)?;
        Some(Duration::nearest((applied.min() - planned(step)).max(0.0)))
    };
    SectionSoFar { begun: one.begun.or_else(|| before(one.applied?)), ..one.clone() }
}

pub(super) fn step_of<'p>(plan: &'p Plan, section: &str) -> Option<&'p Step> {
    plan.order.iter().find(|step| step.name == section)
}

/// That what was rinsed had been on for longer than the products allow, in words; put on again it stays so.
pub(super) fn stayed_on(plan: &Plan, one: &SectionSoFar, now: Duration) -> Option<String> {
    let one = &as_begun(plan, one);
    let mut ended = one.stretches(now);
    if one.rinsed.is_none() {
        ended.pop();
    }
    let beyond = beyond(plan, one, ended)?;
    Some(format!(
        "it was on for {} min beyond the longest that the product allows: do not repeat these minutes; test a strand, and put no \
         more on today",
        more(beyond)
    ))
}

/// That it has been on for longer than the products allow, rinsed or not.
pub(super) fn too_long_on(plan: &Plan, so_far: &SoFar, one: &SectionSoFar) -> Option<String> {
    let now = so_far.now;
    let begun = as_begun(plan, one);
    let still = || {
        let one = &begun;
        let on = one.on_now(now)?;
        beyond(plan, one, vec![on])?;
        over(&time_on(plan, so_far, one)?)
    };
    still().or_else(|| stayed_on(plan, one, now))
}

/// Minutes beyond the longest that the products allow, of the time that it was on longest beyond it.
fn beyond(plan: &Plan, one: &SectionSoFar, times: Vec<Stretch>) -> Option<f64> {
    let step = step_of(plan, &one.name)?;
    let each = times.into_iter().filter_map(|on| Some((on.min(), step.longest_stated(on.begun, on.applied)?.min())));
    each.filter(|(on, most)| is_more(*on, *most)).map(|(on, most)| on - most).max_by(f64::total_cmp)
}

/// What must not be forgotten of a service, in words: reactions and accidents as they were noted, and all else that was stopped for.
pub(crate) fn stopped_for(plan: &Plan, so_far: &SoFar) -> Vec<String> {
    let noted = so_far.incidents.iter().map(|(_, note)| note.clone());
    let found = of_time(plan, so_far).into_iter().chain(of_signs(so_far));
    noted.chain(found.filter(|one| one.verdict == Verdict::Stop).map(|one| one.told())).collect()
}

/// What follows from the log beside its plan, the worst first: also that a section comes off because its time is up.
pub(crate) fn instructed(plan: &Plan, so_far: &SoFar) -> Vec<Instruction> {
    let mut found = of_time(plan, so_far);
    found.extend(instructions(so_far));
    found.sort_by_key(|one| one.verdict);
    found
}

/// What follows from how long each section is or was on.
fn of_time(plan: &Plan, so_far: &SoFar) -> Vec<Instruction> {
    let signs = instructions(so_far);
    let off = |one: &SectionSoFar| {
        let time = time_on(plan, so_far, &as_begun(plan, one))?;
        let by_products = time.longest.is_some();
        Some(Instruction {
            verdict: if by_products { Verdict::Stop } else { Verdict::Warning },
            section: Some(one.name.clone()),
            text: over(&time)?,
            basis: if by_products { Basis::Stated } else { Basis::Assumed },
        })
    };
    // What is left on beyond the planned time is looked at; colour is not, it is rinsed as planned.
    let look = |one: &SectionSoFar| {
        let lift = plan.lift.iter().find(|lift| lift.section == one.name)?;
        let begun = as_begun(plan, one);
        let time = time_on(plan, so_far, &begun).filter(|time| time.due() == Due::LookNow)?;
        let here = |sign: &Instruction| {
            sign.section.as_ref().is_none_or(|name| *name == one.name) || concerns_all(so_far, sign)
        };
        let on = begun.on_now(so_far.now)?;
        let text = if matches!(so_far.comfort, Some((_, Comfort::Itching)))
            || signs.iter().any(|sign| sign.verdict == Verdict::Stop && here(sign))
        {
            // It comes off, as those say.
            return None;
        } else if one.elasticity == Some(Elasticity::Reduced) {
            "rinse now: a strand returns slowly".to_owned()
        } else if level_without_toner(plan, so_far, &begun)
            .is_some_and(|(at, level)| at >= on.begun && is_there(level, lift.target_level))
        {
            "rinse now: the level is there".to_owned()
        } else {
            time.told(on.begun)?
        };
        Some(Instruction { verdict: Verdict::Warning, section: Some(one.name.clone()), text, basis: Basis::Assumed })
    };
    let was = |one: &SectionSoFar| {
        let (verdict, basis) = (Verdict::Stop, Basis::Stated);
        Some(Instruction { verdict, section: Some(one.name.clone()), text: stayed_on(plan, one, so_far.now)?, basis })
    };
    let each = |one: &SectionSoFar| [off(one), look(one), was(one)];
    so_far.sections.iter().flat_map(each).flatten().collect()
}
