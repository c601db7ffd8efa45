//! What is left of a day in its midst, from its log.

use super::{AfterLevel, Instruction, SectionSoFar, SoFar, instructions};
use crate::{
    day::{CannotArrange, Effort, OnHair, Timeline, Underway, go_on},
    finding::Verdict,
    lift::Next,
    quantity::Duration,
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
}

/// Arranges what is left of a service from where its log stands. `levels` are what [`after_levels`](super::after_levels) says.
///
/// A section that has to be rinsed by what was seen, or by what the log says to do, comes off before anything else is begun.
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
    let follows = instructions(so_far);
    let mut rest = RestOfService {
        now: so_far.now,
        at_once: Vec::new(),
        overdue: Vec::new(),
        timeline: None,
        why_not: None,
        instructions: follows,
    };
    if rest.instructions.iter().any(|one| one.verdict == Verdict::Stop && one.section.is_none()) {
        rest.why_not = Some("the log says to rinse everything: nothing more is begun".to_owned());
        return rest;
    }
    let Some(day) = &plan.day else {
        rest.why_not = Some("the plan arranges no day".to_owned());
        return rest;
    };
    let mut underway = Underway { now: so_far.now, on: Vec::new(), rinsed: Vec::new() };
    for (section, work) in day.work.iter().enumerate() {
        let Some(one) = so_far.sections.iter().find(|one| one.name == work.name) else { continue };
        match (one.begun, one.rinsed) {
            (_, Some(_)) => underway.rinsed.push(section),
            (Some(start), None) => {
                let why = off_now(one, &rest.instructions, levels);
                underway.on.push(OnHair { section, start, applied: one.applied, at_once: why.is_some() });
                rest.at_once.extend(why.map(|why| format!("{}: {why}", one.name)));
            }
            (None, None) => {}
        }
    }
    match go_on(&day.work, &day.before(), &day.floor, &underway, Effort::Quick) {
        Ok(found) => {
            let name = |section: &usize| day.work.get(*section).map(|work| work.name.clone());
            rest.overdue = found.overdue.iter().filter_map(name).collect();
            rest.timeline = Some(found.timeline);
        }
        Err(error) => rest.why_not = Some(CannotArrange::to_string(&error)),
    }
    rest
}

/// Why a section comes off now.
fn off_now(one: &SectionSoFar, follows: &[Instruction], levels: &[AfterLevel]) -> Option<String> {
    let stop = follows.iter().find(|stop| stop.verdict == Verdict::Stop && stop.section.as_ref() == Some(&one.name));
    let latest = levels.iter().rev().find(|level| level.section == one.name && level.next != Next::GoOn);
    let last = levels.iter().rev().find(|level| level.section == one.name);
    stop.map(|stop| stop.text.clone())
        .or_else(|| latest.filter(|level| Some(*level) == last).map(|level| level.why.clone()))
}
