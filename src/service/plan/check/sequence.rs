//! What comes before what: the hairline, the dark beside the light, what is rinsed beside what stays on, the toner after.

use super::super::{
    Step,
    findings::Findings,
    sections::{Sections, Work},
    timeline::Timeline,
};
use crate::{
    finding::{Rule, Verdict::Warning},
    service::{request::WorkStage, shape::WaitFor},
    source::COMMON_PRACTICE,
    text::amount,
};

pub(super) fn check(sections: &Sections<'_>, timeline: &Timeline, findings: &mut Findings) {
    for work in sections.iter() {
        hairline(work, sections, findings);
        untoned(work, sections, findings);
        rinsed_alone(work, sections, timeline, findings);
        for other in sections.places(&work.task.same_foil_as) {
            let (first, then) = if work.place < other.place { (work, other) } else { (other, work) };
            dark_after_light(first, then, findings);
        }
    }
}

/// The finest hair lightens fastest, so that it is on last.
fn hairline(work: &Work<'_>, sections: &Sections<'_>, findings: &mut Findings) {
    if !(work.task.hairline && work.lightens()) {
        return;
    }
    let later = sections.iter().filter(|other| other.place > work.place && other.lightens() && !other.task.hairline);
    let later: Vec<&str> = later.map(Work::name).collect();
    if !later.is_empty() {
        let text = format!(
            "{}: the hairline, finest and fastest, is on before {}: put it on last, or look at it sooner",
            work.name(),
            later.join(", ")
        );
        findings.of(work.place, Rule::Sequence, Warning, text, COMMON_PRACTICE);
    }
}

/// The darkest formula of a foil is painted first, so that no lightener runs into the hair that it is for.
fn dark_after_light(first: &Work<'_>, then: &Work<'_>, findings: &mut Findings) {
    let (Some(lighter), Some(darker)) = (first.task.target, then.task.target) else { return };
    if darker < lighter {
        let text = format!(
            "{}: {darker} is painted after the {lighter} of {} in one foil: the darkest first",
            then.name(),
            first.name()
        );
        findings.of(then.place, Rule::Sequence, Warning, text, COMMON_PRACTICE);
    }
}

/// Lightener leaves warmth; the tone that is wanted comes from a toner, or from colour after the rinse.
fn untoned(work: &Work<'_>, sections: &Sections<'_>, findings: &mut Findings) {
    let (true, Some(tone)) = (work.lightens(), &work.task.target_tone) else { return };
    let coloured = |other: &Work<'_>| {
        let over = !other.lightens() && other.waits_for(work).any(|what| what == WaitFor::Rinse);
        over || (other.stage() == WorkStage::Toner && other.goes_on(work))
    };
    if !sections.iter().any(coloured) {
        let text = format!(
            "{}: \"{tone}\" is wanted and no toner goes on it: what lightener leaves is the underlying pigment",
            work.name()
        );
        findings.of(work.place, Rule::Untoned, Warning, text, COMMON_PRACTICE);
    }
}

/// Water at the basin does not stop at the section that is due.
fn rinsed_alone(work: &Work<'_>, sections: &Sections<'_>, timeline: &Timeline, findings: &mut Findings) {
    let Some(step) = timeline.at(work) else { return };
    let stays = |other: &Step| other.begin < step.rinse_by && other.rinse_by > step.rinse_by;
    let others = sections.iter().filter(|other| other.place != work.place && other.is_section() == work.is_section());
    let on: Vec<&Step> = others.filter_map(|other| timeline.at(other)).filter(|other| stays(other)).collect();
    if on.is_empty() {
        return;
    }
    let names: Vec<String> =
        on.iter().map(|other| format!("{} (to {})", other.name, amount(other.rinse_by, 0))).collect();
    let way_out = if work.is_section() {
        "rinse it apart and keep the other foils dry"
    } else {
        "what is rinsed runs through it; let them end together"
    };
    let text = format!(
        "{}: due at the basin at minute {} while on the hair stay {}: {way_out}",
        work.name(),
        amount(step.rinse_by, 0),
        names.join(", ")
    );
    findings.of(work.place, Rule::Rinse, Warning, text, COMMON_PRACTICE);
}
