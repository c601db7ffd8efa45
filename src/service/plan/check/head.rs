//! The head reads as it is wanted, and what is said of its regrowth agrees.

use super::super::{
    HeadPlan, HeadReading, SectionLift, SectionPlan,
    findings::Findings,
    if_reached::{if_all_reached, likely_reached},
};
use crate::{
    finding::{Reason, Rule, Verdict},
    hair::{HairFacts, growth},
    head::{Lowlights, OutlineChange},
    service::request::Request,
    source::{COMMON_PRACTICE, Interval},
    text::{number, range, span},
};

/// Whether the head reads as asked, and whether bands and weeks say the same of its regrowth.
pub(super) fn check(head: &HeadPlan, (request, lift): (&Request, &[SectionLift]), findings: &mut Findings) {
    let (passes, when) = reached(lift);
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
            (_, Some(true)) if look.is_sure_of(wish) => {
                (passes, format!("{wish}: reads so by the model ({apart}){when}"))
            }
            (_, Some(true)) => {
                (Verdict::Note, format!("{wish}: reads so by the estimate, not by all of its bounds ({apart}){when}"))
            }
            (Some(change), _) => (Verdict::Warning, format!("{wish}: does not read so ({apart}): {}", change.advice())),
            (None, _) => {
                (Verdict::Warning, format!("{wish}: does not read so ({apart}): no section lies there, add one"))
            }
        };
        findings.add(Rule::HeadReads, verdict, text, Reason::stated("a model of the colour; areas of the template"));
    }
    if let Some(reading) = &head.look {
        outline(reading, lift, findings);
    }
    for section in &head.sections {
        technique(section, findings);
        depth(section, request.file.analysis.natural_level, findings);
    }
    used(request, findings);
    if let Some((natural, grown)) = head.natural.zip(head.regrowth).filter(|(natural, grown)| !grown.contains(*natural))
    {
        let further_down = if natural > grown.high() { "the colour began further down, or " } else { "" };
        let text = format!(
            "natural hair for the first {} cm by `existing`, {} cm grown in by `weeks_since_colour`: {further_down}correct \
             one of the two, or it grows unusually",
            number(natural.cm(), 1),
            range(&grown, 1)
        );
        let rate = growth(request.amounts.facts.group);
        let source = rate.citation.map_or_else(|| Reason::stated("growth of scalp hair"), Reason::from);
        findings.add(Rule::Regrowth, Verdict::Warning, text, source);
    }
}

/// What a look that is as wanted is worth, and on what it rests: it is that of the targets.
fn reached(lift: &[SectionLift]) -> (Verdict, String) {
    let verdict = if likely_reached(lift) { Verdict::Passed } else { Verdict::Note };
    (verdict, if_all_reached(lift).map(|when| format!(", {when}")).unwrap_or_default())
}

/// Whether the outline is as solid or as soft as it is wanted.
fn outline(reading: &HeadReading, lift: &[SectionLift], findings: &mut Findings) {
    let (passes, when) = reached(lift);
    let Some(wish) = reading.outline_wish else { return };
    let (verdict, text) = match &reading.outline {
        None => (Verdict::Warning, format!("{wish} outline: no section lies there, add one")),
        Some(look) => {
            let light = format!("{} % of its hair light", range(&look.light, 0));
            match (look.as_wanted, look.sure) {
                (Some(true), Some(true)) => (passes, format!("{wish} outline: reads so ({light}){when}")),
                (Some(true), _) => (
                    Verdict::Note,
                    format!("{wish} outline: reads so by the estimate, not by all of its bounds ({light}){when}"),
                ),
                _ => {
                    let changes: Vec<String> = look.changes.iter().map(OutlineChange::advice).collect();
                    (Verdict::Warning, format!("{wish} outline: does not read so ({light}): {}", changes.join("; ")))
                }
            }
        }
    };
    findings.add(Rule::HeadReads, verdict, text, Reason::assumed());
}

/// Whether what was used before fits the hair as it is stated.
fn used(request: &Request, findings: &mut Findings) {
    let facts = &request.amounts.facts;
    let Some(by_use) = facts.by_use else { return };
    let stated = HairFacts { by_use: None, ..*facts }.head().mass_per_length.value;
    if by_use.high() < stated.low() || stated.high() < by_use.low() {
        let text = format!(
            "what was used before speaks of {} g of hair for each cm of length, the hair as it is stated of {} g: check \
             `used_g`, and the length and share of the sections that have it",
            range(&by_use, 1),
            range(&stated, 1)
        );
        findings.add(Rule::Amount, Verdict::Warning, text, Reason::assumed());
    }
}

/// Whether lowlights leave any light hair between them.
fn depth(section: &SectionPlan, natural_level: f64, findings: &mut Findings) {
    let Some(lowlights) = section.lowlights.filter(Lowlights::leaves_no_light) else { return };
    // Darker than what grows in they may not be.
    let darker = if lowlights.level.number() > natural_level { " or darker lowlights" } else { "" };
    let text = format!(
        "{}: lowlights of {} over all of its hair: no light hair remains (give a lighter `reads_as_level`{darker})",
        section.section, lowlights.level
    );
    findings.add(Rule::HeadReads, Verdict::Warning, text, Reason::assumed());
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
        None if choice.technique == Some(taken) => {
            (Verdict::Passed, format!("{name}: {taken} gives the start and the upkeep wanted"))
        }
        None => (Verdict::NotJudged, format!("{name}: {taken} is for new growth only and is not held against `wants`")),
        Some(other) if other.does_it => {
            (Verdict::Note, format!("{name}: {taken} does what is wanted, and so does a plainer one: {advised}"))
        }
        Some(other) => {
            (Verdict::Warning, format!("{name}: {taken} does not do what is wanted, {}: {advised}", other.why))
        }
    };
    findings.add(Rule::Technique, verdict, text, COMMON_PRACTICE);
}
