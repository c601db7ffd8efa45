//! What a mix meets that was done to the hair before: artificial colour, and hair that is lightened already.

use super::super::{
    Hair,
    findings::Findings,
    sections::{Sections, Work},
};
use crate::{
    finding::{Rule, Verdict::Warning},
    service::{request::WorkStage, shape::HistoryFlag},
    source::{COMMON_PRACTICE, citations::trade},
};

pub(super) fn check(hair: &Hair, sections: &Sections<'_>, findings: &mut Findings) {
    for work in sections.iter().filter(|work| work.lightens() && work.stage() == WorkStage::Section) {
        artificial(hair, work, findings);
        lightened(hair, work, findings);
    }
    unplaced(hair, sections, findings);
}

/// Lightener takes artificial colour away unevenly.
fn artificial(hair: &Hair, work: &Work<'_>, findings: &mut Findings) {
    let Some(level) = work.artificial else { return };
    let met = hair.met_by(work.task.zone).filter(|existing| existing.artificial);
    let zones: Vec<String> = met.map(|existing| existing.zone.to_string()).collect();
    let text = format!(
        "{}: lightener over artificial colour ({}, {level}): it lifts unevenly and may stop at an orange; test a strand, \
         or clean the colour first",
        work.name(),
        zones.join(", ")
    );
    findings.of(work.place, Rule::EarlierService, Warning, text, COMMON_PRACTICE);
}

/// Fresh mix on hair that is lightened already takes more than pigment.
fn lightened(hair: &Hair, work: &Work<'_>, findings: &mut Findings) {
    let Some(level) = work.lightened else { return };
    let natural = hair.natural_level;
    let met: Vec<String> = match work.task.starting_level {
        Some(_) => vec![format!("all of it, {level}")],
        None => {
            let lighter = hair.met_by(work.task.zone).filter(|existing| existing.level > natural.high());
            lighter.map(|existing| format!("{}, {}", existing.zone, existing.level)).collect()
        }
    };
    let text = format!(
        "{}: fresh mix on hair that is lighter than the natural {} already ({}): keep it off, or make it a section of \
         its own, and test its elasticity",
        work.name(),
        natural.best(),
        met.join("; ")
    );
    findings.of(work.place, Rule::Overlap, Warning, text, trade::CONSULTATION);
}

/// What the history says was done, where the file does not say to which hair.
fn unplaced(hair: &Hair, sections: &Sections<'_>, findings: &mut Findings) {
    if !sections.lighten() {
        return;
    }
    if hair.has(HistoryFlag::PermanentColour) && !hair.existing.iter().any(|existing| existing.artificial) {
        let text = "lightener over permanent colour: it lifts unevenly and may stop at an orange; test a strand, or clean \
                    the colour first; say in `analysis.existing` where it is";
        findings.add(Rule::EarlierService, Warning, text, COMMON_PRACTICE);
    }
    let placed = hair.existing.iter().any(|existing| existing.level > hair.natural_level.high());
    if hair.has(HistoryFlag::Lightened) && !placed {
        let text = "lightened before: keep fresh mix off the lightened lengths and test their elasticity; say in \
                    `analysis.existing` where they are";
        findings.add(Rule::Overlap, Warning, text, trade::CONSULTATION);
    }
}
