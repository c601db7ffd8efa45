//! What it takes to do it again.

use super::{SectionSoFar, toned::CameTo};
use crate::{
    colour::Level,
    quantity::{Duration, Mass},
    service::{Mix, Plan},
    text::{list, number, span},
};

/// Mix as weighed, strength, minutes and result: what another colourist needs to do the same.
pub(super) fn to_repeat(plan: &Plan, one: &SectionSoFar, came_to: CameTo) -> Option<String> {
    // Nothing weighed is nothing to repeat.
    let mix = mix_of(plan, one).filter(|_| one.weighed.is_none_or(|weighed| weighed.g() > 0.0))?;
    let (planned, weighed) = (mix.made().g(), one.weighed.map_or(mix.made().g(), Mass::g));
    let factor = if planned > 0.0 { weighed / planned } else { 1.0 };
    let grams = mix.masses_g().into_iter().map(|(product, g)| format!("{} g {product}", number(g * factor, 1)));
    let parts: Vec<String> = grams.collect();
    let basis = if one.weighed.is_some() { "" } else { " as planned, nobody noted what was weighed" };
    let mut said = vec![format!(
        "{} g{basis}: {}; {} % w/w on the hair",
        number(weighed, 1),
        list(&parts, "and"),
        span(&mix.on_hair, |strength| number(strength.ww_percent(), 2))
    )];
    // More than was mixed is a slip of the pen.
    if let Some(left) = one.left_over.filter(|left| left.g() <= weighed + 0.005) {
        said.push(format!("{} g of it left over", number(left.g(), 1)));
    }
    if let Some(carried) = one.carried() {
        let times = one.applications();
        let twice = if times > 1 { format!(", in {times} applications") } else { String::new() };
        said.push(format!("{} min from the first strand{twice}", number(carried.min(), 0)));
    }
    if let Some(lift) = plan.lift.iter().find(|lift| lift.section == one.name) {
        said.push(format!("from level {}", span(&lift.from_level, |level| number(level.number(), 1))));
    }
    // The tone is that of the last reading.
    let tone = one.tone.as_ref().map(|tone| format!(" {tone}")).unwrap_or_default();
    let how = came_to.how();
    let level = |(_, level): (Duration, Level)| number(level.number(), 1);
    said.push(match (came_to.lifted.map(level), came_to.toned.map(level)) {
        (Some(lifted), None) => format!("to level {lifted}{tone}"),
        (None, Some(toned)) => format!("to level {toned}{tone}, {how}"),
        (Some(lifted), Some(toned)) => format!("to level {lifted}; level {toned}{tone}, {how}"),
        (None, None) => "result unknown".to_owned(),
    });
    Some(format!("{}: {}", one.name, said.join("; ")))
}

pub(super) fn mix_of<'p>(plan: &'p Plan, one: &SectionSoFar) -> Option<&'p Mix> {
    plan.mixes.iter().find(|mix| mix.name == one.name)
}
