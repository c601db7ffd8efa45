//! What is on for longer than it may be.

use super::{
    Comfort, Instruction, SectionSoFar, SoFar,
    begun::{all_as_begun, as_begun, step_of},
    carried::Stretch,
    instructions::{concerns_all, instructions, of_signs},
    toned::{goes_on_after, level_without_toner},
};
use crate::{
    finding::Verdict,
    lift::{Due, TimeOn, is_there},
    quantity::{Duration, Quantity},
    service::{Plan, shape::Elasticity},
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
/// say, or where none does. Once it is on for as long as one of them says, that is its longest, whatever the others leave open. None
/// where it is not on, or the plan does not know it.
pub(super) fn time_on(plan: &Plan, so_far: &SoFar, one: &SectionSoFar) -> Option<TimeOn> {
    let (step, on) = (step_of(plan, &one.name)?, one.on_now(so_far.now)?);
    let read = level_without_toner(plan, so_far, one).filter(|(at, _)| *at >= on.begun);
    let reached = || step.longest_stated(on.begun, on.applied).filter(|stated| on.min() >= stated.min());
    Some(TimeOn {
        on: Duration::nearest(on.min()),
        planned: Duration::nearest(step.rinse_by.min() - step.begin.min()),
        longest: step.longest_known(on.begun, on.applied).or_else(reached),
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

/// That what was rinsed had been on for longer than the products allow, in words; put on again it stays so.
pub(super) fn stayed_on(plan: &Plan, one: &SectionSoFar, now: Duration) -> Option<String> {
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
    let still = || {
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
    found.extend(instructions(&all_as_begun(plan, so_far)));
    found.sort_by_key(|one| one.verdict);
    found
}

/// What follows from how long each section is or was on, and from a strand of what is on.
fn of_time(plan: &Plan, so_far: &SoFar) -> Vec<Instruction> {
    let signs = instructions(so_far);
    let each = |noted: &SectionSoFar| {
        let one = as_begun(plan, noted);
        let about = OfTime { plan, so_far, time: time_on(plan, so_far, &one), one, signs: &signs };
        [about.off(), about.weak(), about.look(), about.was()]
    };
    so_far.sections.iter().flat_map(each).flatten().collect()
}

/// A section, its begin noted or taken as planned, beside what the log says apart from its time.
struct OfTime<'a> {
    plan: &'a Plan,
    so_far: &'a SoFar,
    one: SectionSoFar,
    time: Option<TimeOn>,
    signs: &'a [Instruction],
}

impl OfTime<'_> {
    fn said(&self, verdict: Verdict, text: String, basis: Basis) -> Instruction {
        Instruction { verdict, section: Some(self.one.name.clone()), text, basis }
    }

    /// Its time is up.
    fn off(&self) -> Option<Instruction> {
        let time = self.time.as_ref()?;
        let by_products = time.longest.is_some();
        let (verdict, basis) =
            if by_products { (Verdict::Stop, Basis::Stated) } else { (Verdict::Warning, Basis::Assumed) };
        Some(self.said(verdict, over(time)?, basis))
    }

    /// Whether signs of the guest, of it or of a foil say already that it comes off.
    fn comes_off(&self) -> bool {
        let here = |sign: &Instruction| {
            sign.section.as_ref().is_none_or(|name| *name == self.one.name) || concerns_all(self.so_far, sign)
        };
        matches!(self.so_far.comfort, Some((_, Comfort::Itching)))
            || self.signs.iter().any(|sign| sign.verdict == Verdict::Stop && here(sign))
    }

    /// A strand returns slowly: it comes off at any minute, but for a toner, which may stay all the same.
    fn weak(&self) -> Option<Instruction> {
        let up = self.time.as_ref().is_some_and(|time| time.due() == Due::Rinse);
        let told = self.one.is_weak_on(self.plan) && !up && !self.comes_off();
        told.then(|| self.said(Verdict::Warning, RETURNS_SLOWLY.to_owned(), Basis::CommonPractice))
    }

    /// What is left on beyond the planned time is looked at; colour is not, it is rinsed as planned.
    fn look(&self) -> Option<Instruction> {
        let lift = self.plan.lift.iter().find(|lift| lift.section == self.one.name)?;
        let time = self.time.as_ref().filter(|time| time.due() == Due::LookNow)?;
        if self.comes_off() || self.one.is_weak_on(self.plan) {
            return None;
        }
        let on = self.one.on_now(self.so_far.now)?;
        let there = level_without_toner(self.plan, self.so_far, &self.one)
            .is_some_and(|(at, level)| at >= on.begun && is_there(level, lift.target_level));
        let text = if there { "rinse now: the level is there".to_owned() } else { time.told(on.begun)? };
        Some(self.said(Verdict::Warning, text, Basis::Assumed))
    }

    /// It was on for too long.
    fn was(&self) -> Option<Instruction> {
        Some(self.said(Verdict::Stop, stayed_on(self.plan, &self.one, self.so_far.now)?, Basis::Stated))
    }
}

/// What a strand that returns slowly says of what is on, where that is no toner.
pub(super) const RETURNS_SLOWLY: &str = "rinse now: a strand returns slowly";

impl SectionSoFar {
    /// Whether it is on, no toner, and has a strand that returns slowly.
    pub(super) fn is_weak_on(&self, plan: &Plan) -> bool {
        let on = self.is_on() && !goes_on_after(plan, &self.name);
        on && self.elasticity == Some(Elasticity::Reduced)
    }
}
