//! Each mix against its products' own instructions, and against the scale.

use super::super::{
    FirstStep, Mix, WeighedPart,
    findings::{Findings, Of},
    sections::{Sections, Work},
};
use crate::{
    finding::{
        Finding, Reason, Rule,
        Verdict::{NotJudged, Passed, Stop, Warning},
    },
    mix::check_lightener,
    quantity::{Mass, MassFraction},
    service::request::Request,
    shop::OwnLimits,
    source::{COMMON_PRACTICE, Interval},
    text::number,
};

pub(super) const OWN_INSTRUCTIONS: &str = "the product's own instructions, as entered on the shelf";

/// A share that the scale moves by more than this many percent is worth a finer scale. Assumed.
const COARSE_PERCENT: f64 = 10.0;

pub(super) fn check(
    (sections, mixes): (&Sections<'_>, &[Mix]),
    (request, first): (&Request, &[FirstStep]),
    findings: &mut Findings,
) {
    for (work, mix) in sections.iter().zip(mixes) {
        for (item, _) in &work.products {
            if let Some(limits) = item.own_limits().filter(|_| work.has_peroxide()) {
                developer(
                    work.name(),
                    (mix.developer, mix.decimals()),
                    (&item.name, limits),
                    Of::Mix(&[work.place]),
                    findings,
                );
            }
        }
        ratio(work, mix, findings);
        scale(work.place, mix, findings);
    }
    for (place, step) in first.iter().enumerate().filter(|(_, step)| step.planned) {
        let Some(strength) = step.bowl.as_ref().and_then(|bowl| bowl.developer) else { continue };
        for (item, limits) in step.items(request).filter_map(|item| Some((item, item.own_limits()?))) {
            let name = step.name();
            developer(&name, (strength, 2), (&item.name, limits), Of::Step(place), findings);
        }
    }
}

/// What is put on the hair is never more than its developer.
fn ratio(work: &Work<'_>, mix: &Mix, findings: &mut Findings) {
    let weighed = |parts: &mut dyn Iterator<Item = &WeighedPart>| parts.map(|part| part.weigh).sum::<Mass>();
    let (product, developer) = (weighed(&mut mix.products()), weighed(&mut mix.oxidant()));
    if !work.has_peroxide() {
        return;
    }
    let finding = if work.lightens() {
        check_lightener(product, developer)
    } else {
        (product > developer).then(|| {
            let text = format!(
                "more colour than developer: {product} colour to {developer} developer; the ratio is written colour first, \
                 1:2 is one part of colour to two of developer"
            );
            Finding::new(Rule::Ratio, Warning, text, COMMON_PRACTICE)
        })
    };
    if let Some(finding) = finding {
        findings.push(&[work.place], finding.about(work.name()));
    }
}

fn developer(
    name: &str,
    (strength, decimals): (Interval<MassFraction>, usize),
    (product, limits): (&str, OwnLimits),
    of: Of<'_>,
    findings: &mut Findings,
) {
    let strongest = strength.high();
    let (verdict, text) = match limits.strongest {
        Some(most) if strongest > most => {
            let text = format!(
                "{name}: developer {strongest:.2} with \"{product}\", which takes {most} at most: use a weaker one"
            );
            (Stop, text)
        }
        Some(most) => {
            let strongest = number(strongest.ww_percent(), decimals);
            (Passed, format!("{name} {strongest} of {most} for \"{product}\""))
        }
        None => (NotJudged, format!("{name}: the strongest developer for \"{product}\" is not on the shelf")),
    };
    of.push(findings, Finding::new(Rule::Developer, verdict, text, Reason::stated(OWN_INSTRUCTIONS)));
}

/// Whether the scale is fine enough for the smallest part.
fn scale(place: usize, mix: &Mix, findings: &mut Findings) {
    for bowl in mix.bowls.iter().filter(|bowl| bowl.worst_ratio_error_percent > COARSE_PERCENT) {
        let text = format!(
            "{}: rounding to the scale moves a part by {:.0} %: mix more at once, or use a finer scale",
            mix.name, bowl.worst_ratio_error_percent
        );
        let source = Reason::stated("assumed: 10 % of a part is the most that rounding should move");
        findings.of(place, Rule::Scale, Warning, text, source);
    }
}
