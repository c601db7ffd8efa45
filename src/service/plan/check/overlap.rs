//! What a mix meets that was done to the hair before: artificial colour, and hair that is lightened already.

use super::super::{
    Hair,
    findings::Findings,
    sections::{Sections, Work},
};
use crate::{
    finding::{Finding, Rule, Verdict::Warning},
    quantity::Length,
    service::{request::WorkStage, shape::HistoryFlag},
    source::{COMMON_PRACTICE, citations::trade},
    text::number,
};

pub(super) fn check(hair: &Hair, sections: &Sections<'_>, findings: &mut Findings) {
    for met in [artificial, lightened] {
        let mut said: Vec<Said<'_>> = Vec::new();
        for work in sections.iter().filter(|work| work.lightens() && work.stage() == WorkStage::Section) {
            let Some(finding) = met(hair, work) else { continue };
            match said.iter_mut().find(|known| known.finding == finding) {
                Some(known) => {
                    known.places.push(work.place);
                    known.names.push(work.name());
                }
                None => said.push(Said { finding, places: vec![work.place], names: vec![work.name()] }),
            }
        }
        for Said { finding, places, names } in said {
            findings.push(&places, finding.about(&names.join(", ")));
        }
    }
    unplaced(hair, sections, findings);
}

/// What is the same for several sections, said once.
struct Said<'w> {
    finding: Finding,
    places: Vec<usize>,
    names: Vec<&'w str>,
}

/// Lightener takes artificial colour away unevenly.
fn artificial(hair: &Hair, work: &Work<'_>) -> Option<Finding> {
    let level = work.artificial?;
    let met = hair.met_by(work.stretch).filter(|(existing, _)| existing.artificial);
    let zones: Vec<String> = met.map(|(existing, cm)| format!("{existing}{}", of_it(cm))).collect();
    let text = format!(
        "lightener over artificial colour ({}, {level}): it lifts unevenly and may stop at an orange; test a strand, or \
         clean the colour first",
        zones.join(", ")
    );
    Some(Finding::new(Rule::EarlierService, Warning, text, COMMON_PRACTICE))
}

/// Fresh mix on hair that is lightened already takes more than pigment.
fn lightened(hair: &Hair, work: &Work<'_>) -> Option<Finding> {
    let (level, natural) = (work.lightened?, hair.natural_level);
    let met: Vec<String> = match work.task.starting_level {
        Some(_) => vec![format!("all of it, {level}")],
        None => {
            let lighter = hair.met_by(work.stretch).filter(|(existing, _)| existing.level > natural.high());
            lighter.map(|(existing, cm)| format!("{existing}{}, {}", of_it(cm), existing.level)).collect()
        }
    };
    let text = format!(
        "fresh mix on hair that is lighter than the natural {} already ({}): keep it off, or make it a section of its \
         own, and test its elasticity",
        natural.best(),
        met.join("; ")
    );
    Some(Finding::new(Rule::Overlap, Warning, text, trade::CONSULTATION))
}

/// How many cm of it the mix lies on.
fn of_it(cm: Option<Length>) -> String {
    cm.map(|cm| format!(", {} cm of it", number(cm.cm(), 1))).unwrap_or_default()
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
