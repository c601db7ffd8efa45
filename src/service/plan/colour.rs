//! What each section needs of colour: levels to move, the pigment that will show, the tone that neutralises it.

use super::{
    Finding, SectionColour,
    Verdict::{NotJudged, Passed, Warning},
    finding::Findings,
};
use crate::{
    colour::{Level, lift_needed, underlying_pigment},
    service::request::{ItemKind, Request, Stage, Task},
    source::{Basis, COMMON_PRACTICE},
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
    // Only lifting exposes pigment; depositing covers what is there.
    let pigment = change.is_lift().then(|| underlying_pigment(target));
    SectionColour {
        section: task.name.clone(),
        product,
        from_level: task.from.number(),
        target_level: target.number(),
        change_levels: change.levels(),
        target_tone: task.target_tone.clone(),
        exposed: pigment.as_ref().map(|p| p.value.exposed_words()),
        neutralised_by: pigment.as_ref().and_then(|p| p.value.neutraliser_words()),
        basis: pigment.map_or(Basis::Derived, |p| p.basis),
    }
}
