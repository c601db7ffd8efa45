//! The sections seen together: depth at the root, the hairline, what lies beside what, warm pigment before going darker.

use super::super::{
    Hair,
    colours::Colours,
    doses::wants_pigment_first,
    findings::Findings,
    sections::{Sections, Work},
};
use crate::{
    colour::{Level, check_depth_at_root, check_hairline, pre_pigmentation, transition_between},
    finding::{
        Finding, Rule,
        Verdict::{Passed, Warning},
    },
    service::{request::WorkStage, shape::Zone},
    source::COMMON_PRACTICE,
};

pub(super) fn check(hair: &Hair, sections: &Sections<'_>, colours: &Colours, findings: &mut Findings) {
    for work in sections.iter() {
        depth(hair.natural_level.best(), work, findings);
        pigment_first(hair, work, colours, findings);
        hairline(work, sections, findings);
        for other in sections.places(&work.task.same_foil_as) {
            meeting(work, other, findings);
        }
    }
    for pair in colours.pairs(sections) {
        if let Some(finding) = pair.finding {
            let names = format!("{} and {}", pair.contrast.first, pair.contrast.second);
            findings.push(&pair.places, finding.about(&names));
        }
    }
}

fn depth(natural: Level, work: &Work<'_>, findings: &mut Findings) {
    let depth = match work.stage() {
        // A root shadow is as deep as the darkest of its shades.
        WorkStage::RootShadow => work.shades().map(|shade| shade.level).reduce(|a, b| if b < a { b } else { a }),
        WorkStage::Section if matches!(work.task.zone, Zone::Roots | Zone::Whole) && !work.lightens() => {
            work.task.target
        }
        _ => None,
    };
    let Some(depth) = depth else { return };
    let finding = check_depth_at_root(natural, depth).unwrap_or_else(|| {
        let text = format!("{depth} on the natural base {natural}");
        Finding::new(Rule::DepthAtRoot, Passed, text, COMMON_PRACTICE)
    });
    findings.push(&[work.place], finding.about(work.name()));
}

fn pigment_first(hair: &Hair, work: &Work<'_>, colours: &Colours, findings: &mut Findings) {
    let Some(colour) = colours.at(work.place) else { return };
    let on_lightened = wants_pigment_first(hair, work);
    let advice = pre_pigmentation(colour.from_level.best(), colour.target_level);
    if let (true, Some(advice)) = (on_lightened, advice) {
        findings.push(&[work.place], advice.finding.about(work.name()));
    }
}

/// Without named neighbours, every other section counts as one.
fn hairline(work: &Work<'_>, sections: &Sections<'_>, findings: &mut Findings) {
    let (true, Some(own)) = (work.task.hairline, work.task.target) else { return };
    let named: Vec<&Work> = sections.places(&work.task.beside).collect();
    let others = sections.iter().filter(|other| other.is_section() && other.place != work.place);
    let beside: Vec<&Work> = if named.is_empty() { others.collect() } else { named };
    let levels = beside.iter().filter_map(|other| Some((other.name(), other.task.target?)));
    let finding = check_hairline(own, levels).unwrap_or_else(|| {
        let text = format!("{own}, at least as light as what lies beside it");
        Finding::new(Rule::Hairline, Passed, text, COMMON_PRACTICE)
    });
    findings.push(&[work.place], finding.about(work.name()));
}

fn meeting(work: &Work<'_>, other: &Work<'_>, findings: &mut Findings) {
    let (Some(one), Some(two)) = (work.task.target, other.task.target) else { return };
    if let Some(between) = transition_between((one, &work.tone), (two, &other.tone)) {
        let names = format!("{} and {}", work.name(), other.name());
        // A line where two formulas meet is seen by the guest, so the plan asks for thought.
        let finding = Finding { verdict: Warning, ..between.finding };
        findings.push(&[work.place, other.place], finding.about(&names));
    }
}
