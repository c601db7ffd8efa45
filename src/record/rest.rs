//! What is left of a day in its midst, from its log.

use super::{
    AfterLevel, Comfort, Instruction, SectionSoFar, SoFar,
    begun::{as_begun, taken_as_begun},
    compare::strange,
    instructions::{concerns_all, itching},
    too_long::{RETURNS_SLOWLY, instructed, over, time_on},
};
use crate::{
    day::{CannotArrange, Effort, OnHair, Timeline, Underway, go_on},
    finding::Verdict,
    lift::Next,
    quantity::{Duration, Quantity},
    service::Plan,
};
use schemars::JsonSchema;
use serde::Serialize;

/// What is left of a day, on the clock of its log.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct RestOfService {
    /// The latest minute noted.
    #[serde(rename = "now_min")]
    pub now: Duration,
    /// Sections that come off now, with the reason.
    pub at_once: Vec<String>,
    /// Sections that are on for longer than they may before the water can reach them.
    pub overdue: Vec<String>,
    /// What is left, in the best order; absent where all has to come off, or where there is none.
    pub timeline: Option<Timeline>,
    /// Why there is none.
    pub why_not: Option<String>,
    /// What follows from the log, the worst first.
    pub instructions: Vec<Instruction>,
    /// Lines that the plan does not know or that count for nothing, in words.
    pub left_out: Vec<String>,
    /// What the level known last of each section that is on says to do.
    pub levels: Vec<AfterLevel>,
}

/// Arranges what is left of a service from where its log stands. `levels` are what [`after_levels`](super::after_levels) says.
///
/// A section that has to be rinsed by what was seen, or by what the log says to do, comes off before anything else is begun. Nothing
/// more is begun while the scalp itches, after a foil that swelled, or where the plan says stop.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, record::{read_log, replay, rest_of_service}, service::{parse, plan}};
///
/// let plan = plan(&parse(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?)?;
/// let log = read_log(
///     "{\"format\":1,\"at_min\":3,\"what\":\"begun\",\"section\":\"nape\"}
/// {\"format\":1,\"at_min\":24,\"what\":\"applied\",\"section\":\"nape\"}",
/// );
/// let rest = rest_of_service(&plan, &replay(&log.entries), &[]);
/// assert_eq!(rest.timeline.ok_or("it goes on")?.pieces[0].from.min(), 24.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn rest_of_service(plan: &Plan, so_far: &SoFar, levels: &[AfterLevel]) -> RestOfService {
    let follows = instructed(plan, so_far);
    let everything = everything_off(plan, so_far, &follows);
    let of_all = |one: &SectionSoFar| {
        let why = everything.as_deref()?;
        Some(why.strip_prefix(&format!("{}: ", one.name)).unwrap_or(why).to_owned())
    };
    let off = |one: &SectionSoFar| of_all(one).or_else(|| off_now((plan, so_far), one, &follows, levels));
    // All that is on the hair, known to the plan or not.
    let on = so_far.sections.iter().filter(|one| one.is_on());
    let at_once = on.filter_map(|one| Some(format!("{}: {}", one.name, off(one)?))).collect();
    let mut rest = RestOfService {
        now: so_far.now,
        at_once,
        overdue: Vec::new(),
        timeline: None,
        why_not: None,
        instructions: Vec::new(),
        left_out: strange(plan, so_far),
        levels: levels.to_vec(),
    };
    if let Some(why) = everything {
        rest.instructions = follows;
        rest.why_not = Some(format!("everything comes off, and nothing more is begun: {why}"));
        return rest;
    }
    if let Some(stop) = plan.findings.iter().find(|one| one.verdict == Verdict::Stop) {
        rest.instructions = follows;
        rest.why_not = Some(format!("nothing more is begun: the plan says stop: {}", stop.text));
        return rest;
    }
    let Some(day) = &plan.day else {
        rest.instructions = follows;
        rest.why_not = Some("the plan arranges no day".to_owned());
        return rest;
    };
    let mut underway = Underway { now: so_far.now, on: Vec::new(), rinsed: Vec::new() };
    for (section, work) in day.work.iter().enumerate() {
        let Some(noted) = so_far.sections.iter().find(|one| one.name == work.name) else { continue };
        let one = &as_begun(plan, noted);
        rest.left_out.extend(taken_as_begun(plan, noted).map(|text| format!("{}: {text}", one.name)));
        match (one.begun, one.rinsed) {
            (_, Some(_)) => underway.rinsed.push(section),
            (Some(start), None) => {
                let (applied, at_once) = (one.applied, off(one).is_some());
                let left_on_until = levels.iter().rev().find(|level| level.section == one.name).and_then(left_on);
                let longest = time_on(plan, so_far, one).and_then(|time| time.longest);
                // Begun again without a rinse, it is on from the first of its begins.
                let on = one.on_now(so_far.now);
                let comes_off_by = on.zip(longest).map(|(on, most)| Duration::nearest(on.begun.min() + most.min()));
                underway.on.push(OnHair { section, start, applied, at_once, left_on_until, comes_off_by });
            }
            (None, None) if one.was_looked_at() => {
                let text = format!(
                    "{}: it was looked at, and its begin is not noted: it is planned from now on (note --begun)",
                    one.name
                );
                rest.left_out.push(text);
            }
            (None, None) => {}
        }
    }
    rest.instructions = follows;
    match go_on(&day.work, &day.before(), &day.floor, &underway, Effort::Quick) {
        Ok(found) => {
            let name = |section: &usize| day.work.get(*section).map(|work| work.name.clone());
            rest.overdue = found.overdue.iter().filter_map(name).collect();
            rest.timeline = Some(as_noted(found.timeline, so_far));
        }
        Err(error) => rest.why_not = Some(CannotArrange::to_string(&error)),
    }
    rest
}

/// Until when a look leaves it on: until the next.
fn left_on(level: &AfterLevel) -> Option<Duration> {
    level.look_again.filter(|_| level.next == Next::GoOn)
}

/// What is on was all on when the log says so, and not when it was planned to be.
fn as_noted(mut timeline: Timeline, so_far: &SoFar) -> Timeline {
    for section in &mut timeline.sections {
        let noted = so_far.sections.iter().find(|one| one.name == section.name);
        if let Some(applied) = noted.and_then(|one| one.applied) {
            section.applied = applied;
        }
    }
    timeline
}

/// Why all that is on comes off and nothing more goes on: what concerns the guest, or hair that may be everywhere alike.
fn everything_off(plan: &Plan, so_far: &SoFar, follows: &[Instruction]) -> Option<String> {
    let of_log = follows.iter().find(|one| one.verdict == Verdict::Stop && concerns_all(so_far, one));
    let of_plan = || {
        let of_a_mix = |place: usize| plan.mixes.iter().any(|mix| mix.findings.contains(&place));
        let mut stops = plan.findings.iter().enumerate().filter(|(_, one)| one.verdict == Verdict::Stop);
        let stop = stops.find(|(place, _)| !of_a_mix(*place));
        stop.map(|(_, one)| format!("the plan says stop: {}", one.text))
    };
    let itches = || match so_far.comfort {
        Some((at, Comfort::Itching)) => Some(itching(at)),
        _ => None,
    };
    of_log.map(Instruction::told).or_else(of_plan).or_else(itches)
}

/// What the plan says stop to in one mix.
fn stop_of_mix<'p>(plan: &'p Plan, name: &str) -> Option<&'p str> {
    let mix = plan.mixes.iter().find(|mix| mix.name == name)?;
    let findings = mix.findings.iter().filter_map(|place| plan.findings.get(*place));
    findings.into_iter().find(|one| one.verdict == Verdict::Stop).map(|one| one.text.as_str())
}

/// Why a section comes off now.
fn off_now(
    (plan, so_far): (&Plan, &SoFar),
    one: &SectionSoFar,
    follows: &[Instruction],
    levels: &[AfterLevel],
) -> Option<String> {
    let stop = follows.iter().find(|stop| stop.verdict == Verdict::Stop && stop.section.as_ref() == Some(&one.name));
    let last = levels.iter().rev().find(|level| level.section == one.name);
    // Toned gently it may be all the same.
    let weak = || one.is_weak_on(plan).then(|| RETURNS_SLOWLY.to_owned());
    let of_mix = || stop_of_mix(plan, &one.name).map(|text| format!("the plan says stop: {text}"));
    stop.map(|stop| stop.text.clone())
        .or_else(of_mix)
        .or_else(weak)
        .or_else(|| last.filter(|level| level.next.comes_off()).map(|level| level.why.clone()))
        // Also where the planned minute is the limit, which is no stop.
        .or_else(|| over(&time_on(plan, so_far, &as_begun(plan, one))?))
}
