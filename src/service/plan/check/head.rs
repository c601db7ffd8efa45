//! The head reads as it is wanted, and what is said of its regrowth agrees.

use super::super::{HeadPlan, SectionPlan, findings::Findings};
use crate::{
    finding::{Reason, Rule, Verdict},
    hair::growth,
    service::request::Request,
    source::{COMMON_PRACTICE, Interval},
    text::{number, range, span},
};

/// Whether the head reads as asked, and whether bands and weeks say the same of its regrowth.
pub(super) fn check(head: &HeadPlan, request: &Request, findings: &mut Findings) {
    if let Some((reading, wish)) = head.look.as_ref().and_then(|look| Some((look, look.wish?))) {
        let over = |what: &str, over: &Option<Interval<f64>>| {
            over.as_ref().map(|over| format!("{what} by {} L*", span(over, |l| number(l, 1))))
        };
        let look = &reading.look;
        let apart = [
            over("outline over interior", &look.outline_over_interior),
            over("front over back", &look.front_over_behind),
        ];
        let apart = apart.into_iter().flatten().collect::<Vec<_>>().join(", ");
        let (verdict, text) = match (&look.change, look.as_wanted) {
            (_, true) => (Verdict::Passed, format!("{wish}: reads so by the model ({apart})")),
            (Some(change), _) => (Verdict::Warning, format!("{wish}: does not read so ({apart}): {}", change.advice())),
            (None, _) => {
                (Verdict::Warning, format!("{wish}: does not read so ({apart}): no section lies there, add one"))
            }
        };
        findings.add(Rule::HeadReads, verdict, text, Reason::stated("a model of the colour; areas of the template"));
    }
    for section in &head.sections {
        technique(section, findings);
    }
    let (bands, weeks) = (request.amounts.regrowth, request.amounts.by_weeks);
    if let Some((bands, weeks)) = bands.zip(weeks).filter(|(bands, weeks)| !weeks.contains(bands.best())) {
        let text = format!(
            "regrowth: {} cm by `existing`, {} cm in the weeks of `weeks_since_colour`: correct one of the two, or it \
             grows unusually",
            range(&bands, 1),
            range(&weeks, 1)
        );
        let rate = growth(request.amounts.facts.group);
        let source = rate.citation.map_or_else(|| Reason::stated("growth of scalp hair"), Reason::from);
        findings.add(Rule::Regrowth, Verdict::Warning, text, source);
    }
}

/// Whether the technique of a section gives the start and the upkeep that are wanted.
fn technique(section: &SectionPlan, findings: &mut Findings) {
    let Some(choice) = &section.technique_choice else { return };
    let (name, taken) = (&section.section, section.technique);
    let advised = match (choice.technique, choice.practice) {
        (Some(other), Some(practice)) => format!("{other} does it ({practice})"),
        _ => "none does it: allow a sharper start or fewer weeks".to_owned(),
    };
    let (verdict, text) = match choice.rejected.iter().find(|other| other.technique == taken) {
        None => (Verdict::Passed, format!("{name}: {taken} gives the start and the upkeep wanted")),
        Some(other) if other.does_it => {
            (Verdict::Note, format!("{name}: {taken} does what is wanted, and so does a plainer one: {advised}"))
        }
        Some(other) => {
            (Verdict::Warning, format!("{name}: {taken} does not do what is wanted, {}: {advised}", other.why))
        }
    };
    findings.add(Rule::Technique, verdict, text, COMMON_PRACTICE);
}
