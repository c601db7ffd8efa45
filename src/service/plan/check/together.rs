//! The sections seen together: depth at the root, the hairline, what lies beside what, warm pigment before going darker.

use super::super::{
    Hair,
    colours::Colours,
    doses::going_darker,
    findings::Findings,
    sections::{Sections, Work},
};
use crate::{
    colour::{Level, check_depth_at_root, check_hairline, pre_pigmentation, transition_between},
    finding::{
        Finding, Rule,
        Verdict::{NotJudged, Passed, Warning},
    },
    service::{request::WorkStage, shape::Zone},
    source::{COMMON_PRACTICE, Interval},
};

pub(super) fn check(hair: &Hair, sections: &Sections<'_>, colours: &Colours, findings: &mut Findings) {
    for work in sections.iter() {
        depth(hair.natural_level, work, findings);
        pigment_first(hair, work, findings);
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

/// Levels that depth put at the root may be lighter than the base and still join it (assumed).
const SOFTER_LEVELS: f64 = 1.0;

fn depth(natural: Interval<Level>, work: &Work<'_>, findings: &mut Findings) {
    let shadow = work.stage() == WorkStage::RootShadow;
    let depth = match work.stage() {
        // A root shadow is as deep as the darkest of its shades.
        WorkStage::RootShadow => work.shades().map(|part| part.shade.level()).reduce(|a, b| if b < a { b } else { a }),
        WorkStage::Section if matches!(work.task.zone, Zone::Roots | Zone::Whole) && !work.lightens() => {
            work.task.target
        }
        _ => None,
    };
    let Some(depth) = depth else { return };
    let base = natural.best();
    let finding = if let Some(darker) = check_depth_at_root(base, depth) {
        darker
    } else if shadow && (depth - base).levels() > SOFTER_LEVELS {
        let text = format!(
            "the shadow's {depth} is {} than the natural base, {base}: it does not lighten the base, and beside it leaves \
             hair that is lighter than the root (use about {base})",
            depth - base
        );
        Finding::new(Rule::DepthAtRoot, Warning, text, COMMON_PRACTICE)
    } else if depth < natural.high() {
        let text = format!(
            "{depth} on the natural base {base}, which may be {} by the margin stated: then new growth shows lighter",
            natural.high()
        );
        Finding::new(Rule::DepthAtRoot, NotJudged, text, COMMON_PRACTICE)
    } else {
        let text = format!("{depth} on the natural base {base}");
        Finding::new(Rule::DepthAtRoot, Passed, text, COMMON_PRACTICE)
    };
    findings.push(&[work.place], finding.about(work.name()));
}

/// Hair that is lighter than it grows has lost its warm pigment, whatever the history says.
fn pigment_first(hair: &Hair, work: &Work<'_>, findings: &mut Findings) {
    let going = going_darker(hair, work);
    if let Some(advice) = going.and_then(|(lightest, target)| pre_pigmentation(lightest, target)) {
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
