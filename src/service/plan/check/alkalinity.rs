//! The pH of the mixes, where their makers state it. It is never worked out or assumed.

use super::super::{findings::Findings, sections::Sections};
use crate::{
    finding::{
        Finding, Rule,
        Verdict::{Passed, Warning},
    },
    source::citations::lift as cited,
};

/// The most alkaline mix that was found in print.
const PRINTED_MOST: f64 = 10.3;

pub(super) fn check(sections: &Sections<'_>, findings: &mut Findings) {
    for work in sections.iter().filter(|work| work.has_peroxide()) {
        for (item, _) in &work.products {
            let Some(ph) = item.mixed_ph().map(crate::lift::Ph::value) else { continue };
            let (verdict, text) = if ph > PRINTED_MOST {
                let text = format!(
                    "{}: \"{}\" mixes to pH {ph}, above the {PRINTED_MOST} of mixes in print: it swells the hair and irritates \
                     the skin more; keep it off the scalp, look earlier, rinse and acidify well",
                    work.name(),
                    item.name
                );
                (Warning, text)
            } else {
                (Passed, format!("{}: pH {ph} of \"{}\" as its maker states it", work.name(), item.name))
            };
            let finding = Finding::new(Rule::Alkalinity, verdict, text, cited::MIXED_PH);
            findings.push(&[work.place], finding.and_source(cited::SWELLING_AGAINST_PH));
        }
    }
}
