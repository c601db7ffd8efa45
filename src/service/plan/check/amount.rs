//! Whether a mix whose mass is stated is enough for the hair of its section.

use super::super::{
    findings::Findings,
    sections::{Sections, Work},
};
use crate::{
    finding::{
        Finding, Reason, Rule,
        Verdict::{Note, Warning},
    },
    source::Basis,
    text::{amount, range},
};

/// A stated mix below this part of the best estimate is worth a look, though people differ by more. Assumed.
const FAR_BELOW: f64 = 0.5;

pub(super) fn check(sections: &Sections<'_>, findings: &mut Findings) {
    for work in sections.iter() {
        if let Some(finding) = enough(work) {
            findings.push(&[work.place], finding.about(work.name()));
        }
    }
}

fn enough(work: &Work<'_>) -> Option<Finding> {
    let needed = work.task.on_head?.demand?.mix;
    if work.task.amount.basis != Basis::Stated {
        return None;
    }
    let stated = work.task.amount.value.best();
    let (verdict, than) = if stated < needed.low() {
        (Warning, "less than the least that")
    } else if stated.g() < FAR_BELOW * needed.best().g() {
        (Note, "less than half of what")
    } else {
        return None;
    };
    let text = format!(
        "{} g stated is {than} this hair takes by the estimate, {} g: mix more, or enter `used_g`, what such a section \
         really took, and the estimate follows it",
        amount(stated, 1),
        range(&needed, 0)
    );
    Some(Finding::new(Rule::Amount, verdict, text, Reason::assumed()))
}
