//! What each section needs of colour: levels to move, the pigment that will show, the tone that neutralises it.

use super::{SectionColour, gradient, level_rule};
use crate::{
    colour::{Level, lift_needed, underlying_pigment},
    service::request::{Oxidant, Request, Stage, Task},
    source::Basis,
};

/// The colour side of every section.
pub(super) fn sections(request: &Request) -> Vec<SectionColour> {
    let sections = request.tasks.iter().filter(|task| task.stage == Stage::Section);
    sections.filter_map(|task| Some(section(request, task, task.target?))).collect()
}

fn section(request: &Request, task: &Task, target: Level) -> SectionColour {
    let change = lift_needed(task.from, target);
    let names = task.products.iter().filter_map(|(i, _)| request.items.get(*i)).map(|item| item.name.as_str());
    let product = names.collect::<Vec<_>>().join(" + ");
    // Only lifting exposes pigment, and nothing lifts without peroxide; depositing covers what is there.
    let lifts = change.is_lift() && task.oxidant != Oxidant::Nothing;
    let pigment = lifts.then(|| underlying_pigment(target));
    SectionColour {
        section: task.name.clone(),
        product,
        developer: match task.oxidant {
            Oxidant::Bottle(i) => request.bottles.get(i).map(|bottle| bottle.name.clone()),
            Oxidant::Strength(strength) => Some(format!("{strength} blended")),
            Oxidant::Nothing => None,
        },
        from_level: task.from.number(),
        target_level: target.number(),
        change_levels: change.levels(),
        target_tone: task.target_tone.clone(),
        exposed: pigment.as_ref().map(|p| range(p.value.words)),
        neutralised_by: pigment.as_ref().and_then(|p| p.value.neutraliser).map(|(a, b)| range((a.words(), b.words()))),
        basis: pigment.map_or(Basis::Derived, |p| p.basis),
        level_rule: level_rule::of(request, task, target),
        swatch: gradient::swatch(request, task),
    }
}

/// `orange` for a whole level, `orange to yellow-orange` between two.
fn range((darker, lighter): (&str, &str)) -> String {
    if darker == lighter { darker.to_owned() } else { format!("{darker} to {lighter}") }
}
