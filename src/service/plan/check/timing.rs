//! The finished timeline against the products' own limits.

use super::{
    super::{findings::Findings, sections::Sections, timeline::Timeline},
    instructions::OWN_INSTRUCTIONS,
};
use crate::{
    finding::{Reason, Rule, Verdict::Warning},
    source::COMMON_PRACTICE,
};

/// The strand that is put on first must not overrun its product's time while the last is still put on.
pub(super) fn check(sections: &Sections<'_>, timeline: &Timeline, findings: &mut Findings) {
    let mut applying = 0.0;
    for work in sections.iter().filter(|work| work.is_section() && work.lightens()) {
        let Some(step) = timeline.at(work) else { continue };
        let first_strand = step.rinse_by.min() - step.begin.min();
        applying += step.applied.min() - step.begin.min();
        let limits = work.products.iter().filter_map(|(item, _)| item.own_limits()?.longest);
        for most in limits.filter(|most| first_strand > most.min()) {
            let text = format!(
                "{}: its first strand waits {first_strand:.0} min ({} to apply, {} to develop), its entry allows \
                 {most}; rinse strand by strand, or split the section",
                work.name(),
                work.task.apply,
                work.task.develop
            );
            findings.of(work.place, Rule::Time, Warning, text, Reason::stated(OWN_INSTRUCTIONS));
        }
    }
    if applying > 60.0 {
        let text = format!("{applying:.0} min of applying lightener: the first foils are done before the last are on");
        findings.add(Rule::Pace, Warning, text, COMMON_PRACTICE);
    }
}
