//! The cautions for what is in the bowls. They are always printed; no finding replaces them.

use super::{first_steps::FirstSteps, sections::Sections};
use crate::{
    finding::Reason,
    head::ExtraStep,
    mix::{Hazard, handling_advice},
    service::request::Request,
    shop::ShadeClass,
    source::{COMMON_PRACTICE, Citation, citations::trade},
};
use schemars::JsonSchema;
use serde::Serialize;

/// A caution and where it comes from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Caution {
    /// What to do or not to do.
    pub text: &'static str,
    /// The same in a few words, for what has to be in mind while working.
    pub reminder: Option<&'static str>,
    /// What it rests on.
    pub sources: Vec<Reason>,
}

/// What stands above every list of cautions.
const ALWAYS: [(&str, Citation); 2] = [
    (
        "the product's own instructions and local law come first; this sheet replaces neither, nor a licence or training",
        COMMON_PRACTICE,
    ),
    ("test a strand with the very mix before the head", trade::CONSULTATION),
];

/// The general cautions, then those for what is used, in the order of the work.
pub(super) fn cautions(request: &Request, sections: &Sections<'_>, first: &FirstSteps) -> Vec<Caution> {
    let general = ALWAYS.iter().map(|(text, source)| Caution { text, reminder: None, sources: vec![source.into()] });
    let handling = handling_advice(&hazards(request, sections, first)).into_iter().map(|advice| {
        let sources: Vec<Reason> = advice.citations().map(Reason::from).collect();
        let sources = if sources.is_empty() { vec![COMMON_PRACTICE.into()] } else { sources };
        Caution { text: advice.text, reminder: advice.reminder, sources }
    });
    general.chain(handling).collect()
}

/// What the mixes bring, read from the kinds of product, whatever their makers declare.
///
/// Colour may hold ammonia and resorcinol; that it does is taken for granted, since nobody said that it does not.
fn hazards(request: &Request, sections: &Sections<'_>, first: &FirstSteps) -> Vec<Hazard> {
    let mut hazards = Vec::new();
    for work in sections.iter() {
        if work.has_peroxide() {
            hazards.push(Hazard::Peroxide);
        }
        if work.lightens() {
            hazards.push(Hazard::Persulfate);
        }
        for shade in work.shades() {
            match shade.class {
                ShadeClass::Semi => hazards.push(Hazard::Unknown),
                _ => hazards.extend([Hazard::OxidativeDye, Hazard::Ammonia, Hazard::Resorcinol]),
            }
        }
    }
    for step in first.planned() {
        hazards.extend(match step.step {
            ExtraStep::PreSoften => vec![Hazard::Peroxide],
            // What a remover holds is its maker's to say: what its own part of the hazards is, is not known.
            ExtraStep::CleanFirst => match step.brings(request) {
                (true, true) => vec![Hazard::Peroxide, Hazard::Persulfate],
                (true, false) => vec![Hazard::Persulfate, Hazard::Unknown],
                (false, true) => vec![Hazard::Peroxide, Hazard::Unknown],
                (false, false) => vec![Hazard::Unknown],
            },
            ExtraStep::PreLighten => vec![Hazard::Peroxide, Hazard::Persulfate],
            ExtraStep::PrePigment => vec![Hazard::OxidativeDye, Hazard::Ammonia, Hazard::Resorcinol, Hazard::Unknown],
        });
    }
    hazards
}
