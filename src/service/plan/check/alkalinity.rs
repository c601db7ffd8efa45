//! The pH of the mixes, where their makers state it. It is never worked out or assumed.

use super::super::{
    FirstStep,
    findings::{Findings, Of},
    sections::Sections,
};
use crate::{
    finding::{
        Finding, Rule,
        Verdict::{Passed, Warning},
    },
    service::request::{Item, Request},
    source::citations::lift as cited,
};

/// The most alkaline mix that was found in print.
const PRINTED_MOST: f64 = 10.3;

pub(super) fn check(sections: &Sections<'_>, request: &Request, first: &[FirstStep], findings: &mut Findings) {
    for work in sections.iter().filter(|work| work.has_peroxide()) {
        for (item, _) in &work.products {
            judge(work.name(), item, Of::Mix(&[work.place]), findings);
        }
    }
    // A step before the colour goes on the same hair and skin; a shade without developer does not mix to its pH.
    for (place, step) in first.iter().enumerate().filter(|(_, step)| step.planned && step.has_developer()) {
        let name = step.name();
        step.items(request).for_each(|item| judge(&name, item, Of::Step(place), findings));
    }
}

fn judge(name: &str, item: &Item, of: Of<'_>, findings: &mut Findings) {
    let Some(ph) = item.mixed_ph().map(crate::lift::Ph::value) else { return };
    let (verdict, text) = if ph > PRINTED_MOST {
        let text = format!(
            "{name}: \"{}\" mixes to pH {ph}, above the {PRINTED_MOST} of mixes in print: it swells the hair and irritates \
             the skin more; keep it off the scalp, look earlier, rinse and acidify well",
            item.name
        );
        (Warning, text)
    } else {
        (Passed, format!("{name}: pH {ph} of \"{}\" as its maker states it", item.name))
    };
    let finding = Finding::new(Rule::Alkalinity, verdict, text, cited::MIXED_PH);
    of.push(findings, finding.and_source(cited::SWELLING_AGAINST_PH));
}
