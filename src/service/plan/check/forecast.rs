//! What the law of lift says of the plan: strengths that were left open, levels seen, the strand book.

use super::super::{Evidence, SectionLift, findings::Findings, sections::Sections, strengths::Strengths};
use crate::{
    finding::{
        Finding, Rule,
        Verdict::{NotJudged, Note, Passed, Warning},
    },
    service::shape::ServiceFile,
    source::{COMMON_PRACTICE, citations::lift as cited},
    text::{amount, whole_minutes},
};

pub(super) fn check(
    file: &ServiceFile,
    evidence: &Evidence,
    (sections, strengths): (&Sections<'_>, &Strengths),
    lift: &[SectionLift],
    findings: &mut Findings,
) {
    let place =
        |name: &str| sections.iter().find(|work| work.is_section() && work.name() == name).map(|work| work.place);
    for together in &strengths.together {
        let places: Vec<usize> = together.sections.iter().filter_map(|section| place(&section.section)).collect();
        let (verdict, text) = match (&together.why_not, together.rinse) {
            (Some(why), _) => (Warning, why.clone()),
            (None, Some(rinse)) => {
                let names: Vec<&str> = together.sections.iter().map(|section| section.section.as_str()).collect();
                let (within, rinse) = (together.window_asked, amount(rinse, 0));
                (
                    Passed,
                    format!(
                        "{}: by the medians of the forecast within {within}, rinsed {rinse} min after the first brush; strands decide",
                        names.join(", ")
                    ),
                )
            }
            (None, None) => continue,
        };
        findings.push(&places, Finding::new(Rule::FinishTogether, verdict, text, cited::LIGHTENING_SERIES));
    }
    for section in lift {
        for seen in &section.seen {
            let verdict = if seen.next.comes_off() { Warning } else { Note };
            let again =
                seen.look_again.map(|at| format!("; look again at minute {}", whole_minutes(at))).unwrap_or_default();
            let text =
                format!("{}, minute {}: {}: {}{again}", section.section, amount(seen.at, 0), seen.next, seen.why);
            let places: Vec<usize> = place(&section.section).into_iter().collect();
            findings.push(&places, Finding::new(Rule::LevelSeen, verdict, text, cited::LIGHTENING_SERIES));
        }
    }
    match (&file.strand_book, &evidence.book) {
        (Some(path), None) => {
            let text = format!("the strand book {path} was not read: the forecast does without it");
            findings.add(Rule::StrandBook, NotJudged, text, COMMON_PRACTICE);
        }
        (_, Some(book)) => {
            for problem in &book.problems {
                findings.add(
                    Rule::StrandBook,
                    NotJudged,
                    format!("not read from the book: {problem}"),
                    COMMON_PRACTICE,
                );
            }
        }
        (None, None) => {}
    }
}
