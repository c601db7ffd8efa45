//! How even the sections are, and what to do where they are not.

use super::{Comfort, Instruction, SectionSoFar, SoFar, toned::level_without_toner};
use crate::{
    finding::Verdict,
    service::{Plan, shape::Elasticity},
    source::{Basis, Sourced},
    text::number,
};
use schemars::JsonSchema;
use serde::Serialize;

/// Sections that lie less apart than so many levels are left as they are.
const EVEN_WITHIN: Sourced<f64> = Sourced::assumed(0.5);
/// A section that is short by more than so many levels is behind.
const BEHIND_FROM: Sourced<f64> = Sourced::assumed(0.25);

/// How even the sections are.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Evenness {
    /// From the section furthest below its target to the one furthest above, in levels.
    pub spread_levels: f64,
    /// The section furthest below its target.
    pub worst: String,
    /// By how much it is below its target; less than none where it is above.
    pub short_levels: f64,
    /// What to do.
    pub text: String,
    /// What the bounds of that advice rest on.
    pub basis: Basis,
}

/// By how much the latest level of each section without its toner is below its target, the furthest below first.
pub(super) fn shortfalls(plan: &Plan, so_far: &SoFar) -> Vec<(String, f64)> {
    let of = |one: &'_ SectionSoFar| {
        let (_, level) = level_without_toner(plan, so_far, one)?;
        let lift = plan.lift.iter().find(|lift| lift.section == one.name)?;
        Some((one.name.clone(), lift.target_level.number() - level.number()))
    };
    let mut short: Vec<(String, f64)> = so_far.sections.iter().filter_map(of).collect();
    short.sort_by(|a, b| b.1.total_cmp(&a.1));
    short
}

/// The latest level of each section against its target: sections that are meant to differ are not uneven.
pub(super) fn evenness(plan: &Plan, so_far: &SoFar, follows: &[Instruction]) -> Option<Evenness> {
    let short = shortfalls(plan, so_far);
    let [(worst, most), .., (_, least)] = short.as_slice() else { return None };
    let (spread, behind) = (most - least, BEHIND_FROM.value);
    let text = if spread < EVEN_WITHIN.value {
        let level = number(EVEN_WITHIN.value, 2);
        let all = if *least > behind { ", but all are short of their targets" } else { "" };
        format!("less than {level} levels from one to the other{all}")
    } else if *most > behind {
        let stays = so_far.sections.iter().any(|one| one.name == *worst && may_stay(one, so_far, follows));
        let leave = if stays { "leave it on within its limit, or tone" } else { "tone" };
        format!("{worst} is behind: {leave} the others down to it; no fresh mix on what is there")
    } else {
        let behind = number(behind, 2);
        format!("none is more than {behind} levels short, some are beyond: tone the lightest down")
    };
    let basis = EVEN_WITHIN.basis.weaker(BEHIND_FROM.basis);
    Some(Evenness { spread_levels: spread, worst: worst.clone(), short_levels: *most, text, basis })
}

/// Whether more time on the hair is there to give: it is on, its strands are sound, the scalp does not itch, and no stop says to
/// rinse it.
fn may_stay(one: &SectionSoFar, so_far: &SoFar, follows: &[Instruction]) -> bool {
    if matches!(so_far.comfort, Some((_, Comfort::Itching))) {
        return false;
    }
    let on = one.begun.is_some() && one.rinsed.is_none() && one.result.is_none();
    let sound = one.elasticity.is_none_or(|strand| strand == Elasticity::Good);
    let about = |stop: &Instruction| stop.section.as_ref().is_none_or(|section| *section == one.name);
    on && sound && !follows.iter().any(|stop| stop.verdict == Verdict::Stop && about(stop))
}
