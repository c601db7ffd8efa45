//! What a mix meets that was done to the hair before: artificial colour, and hair that is lightened already.

use super::super::{
    FirstStep, Hair,
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

pub(super) fn check(hair: &Hair, sections: &Sections<'_>, first: &[FirstStep], findings: &mut Findings) {
    for met in [over_artificial, lightened] {
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
    // Cleaning or lightening first brings lightener to a section of colour; of a section of lightener the same is said already.
    let cleaning = || first.iter().enumerate().filter(|(_, step)| step.may_lighten());
    for (place, step) in cleaning() {
        let met = sections.iter().find(|work| work.is_section() && work.name() == step.section && !work.lightens());
        let found = met.into_iter().flat_map(|work| [artificial(hair, work, step.into()), lightened(hair, work)]);
        found.flatten().for_each(|finding| findings.of_step(place, finding.about(&step.name())));
    }
    if sections.lighten() {
        unplaced(hair, Over::Lightener(OVER_IT), findings);
    } else if let Some((_, step)) = cleaning().next() {
        // Lightener is the worse of two.
        let step = cleaning().find(|(_, step)| step.remover().is_none()).map_or(step, |(_, lightener)| lightener);
        unplaced(hair, step.into(), findings);
    }
}

/// What to do about artificial colour under lightener that is to lift, and under that which is to take it away.
const OVER_IT: &str = "test a strand, or clean the colour first";
const CLEANING: &str = "test a strand";

/// What goes over artificial colour: lightener, and what to do about it, or a remover that may lighten.
#[derive(Clone, Copy)]
enum Over<'w> {
    Lightener(&'static str),
    Remover { name: &'w str, persulfate: bool, peroxide: bool },
}

impl<'w> From<&'w FirstStep> for Over<'w> {
    fn from(step: &'w FirstStep) -> Self {
        let (persulfate, peroxide) = step.brought;
        step.remover().map_or(Self::Lightener(CLEANING), |name| Self::Remover { name, persulfate, peroxide })
    }
}

impl Over<'_> {
    /// A warning about it over that colour.
    fn told(self, colour: &str) -> String {
        match self {
            Self::Lightener(to_do) => {
                format!("lightener over {colour}: it lifts unevenly and may stop at an orange; {to_do}")
            }
            Self::Remover { name, persulfate, peroxide } => {
                let holds = match (persulfate, peroxide) {
                    (true, true) => "persulfate and peroxide",
                    (true, false) => "persulfate",
                    (false, _) => "peroxide",
                };
                format!(
                    "{name}, a remover, over {colour}: it is taken as holding {holds}, for it is declared or nothing says \
                     the contrary, and may then lift the hair too, unevenly; {CLEANING}"
                )
            }
        }
    }
}

/// What is the same for several sections, said once.
struct Said<'w> {
    finding: Finding,
    places: Vec<usize>,
    names: Vec<&'w str>,
}

/// Lightener takes artificial colour away unevenly.
fn over_artificial(hair: &Hair, work: &Work<'_>) -> Option<Finding> {
    artificial(hair, work, Over::Lightener(OVER_IT))
}

fn artificial(hair: &Hair, work: &Work<'_>, over: Over<'_>) -> Option<Finding> {
    let level = work.artificial?;
    let met = hair.met_by(work.stretch).filter(|(existing, _)| existing.artificial);
    let zones: Vec<String> = met.map(|(existing, cm)| format!("{existing}{}", of_it(cm))).collect();
    let text = over.told(&format!("artificial colour ({}, {level})", zones.join(", ")));
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
fn unplaced(hair: &Hair, over: Over<'_>, findings: &mut Findings) {
    if hair.has(HistoryFlag::PermanentColour) && !hair.existing.iter().any(|existing| existing.artificial) {
        let text = format!("{}; say in `analysis.existing` where it is", over.told("permanent colour"));
        findings.add(Rule::EarlierService, Warning, text, COMMON_PRACTICE);
    }
    let placed = hair.existing.iter().any(|existing| existing.level > hair.natural_level.high());
    if hair.has(HistoryFlag::Lightened) && !placed {
        let text = "lightened before: keep fresh mix off the lightened lengths and test their elasticity; say in \
                    `analysis.existing` where they are";
        findings.add(Rule::Overlap, Warning, text, trade::CONSULTATION);
    }
}
