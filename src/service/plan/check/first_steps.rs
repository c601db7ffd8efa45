//! Steps before the colour: what is asked for and not planned, what nothing asks for, what the shop has nothing for.

use super::{
    super::{FirstStep, Hair, Mix, findings::Findings, sections::Sections},
    lift,
};
use crate::{
    finding::{
        Finding, Rule,
        Verdict::{Note, Stop, Warning},
    },
    head::ExtraStep,
    service::{request::Request, shape::HistoryFlag},
    source::COMMON_PRACTICE,
    text::range,
};

pub(super) fn check(
    (hair, request): (&Hair, &Request),
    (sections, mixes): (&Sections<'_>, &[Mix]),
    steps: &[FirstStep],
    findings: &mut Findings,
) {
    // What the colour of a section cannot lift asks for lightening or cleaning before it, whatever else is asked for.
    let too_much = |name: &str| {
        let mut works = sections.iter().zip(mixes).filter(|(work, _)| work.is_section() && work.name() == name);
        works.any(|(work, mix)| lift::asks_too_much(work, mix))
    };
    for (place, one) in steps.iter().enumerate() {
        let (section, step) = (&one.section, one.step);
        let mut say = |verdict, text: String| {
            let text = format!("{section}: {text}");
            findings.of_step(place, Finding::new(Rule::FirstStep, verdict, text, COMMON_PRACTICE));
        };
        if one.planned && one.brings(request).1 && hair.has(HistoryFlag::MetallicSalts) {
            say(Stop, format!("{step} brings peroxide to metallic salts, and they react: not at all"));
        }
        match (one.planned, one.asked_for, &one.why_not) {
            (true, _, Some(why_not)) => say(Warning, format!("{step} is planned, and {why_not}")),
            (true, false, None) if step.lightens() && too_much(section) => {}
            (true, false, None) => say(Note, format!("{step} is planned, and nothing stated asks for it")),
            // What is put back before hair goes darker has a rule of its own.
            (false, ..) if step != ExtraStep::PrePigment => {
                let (grams, minutes) = (range(&one.mix, 0), range(&one.develop, 0));
                say(
                    Note,
                    format!(
                        "{step}: {grams} g for {minutes} min would come before the colour; plan it in `first`, or do without"
                    ),
                );
            }
            _ => {}
        }
    }
}
