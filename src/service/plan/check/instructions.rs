//! Each mix against its products' own instructions, and against the scale.

use super::super::{
    FirstStep, Mix, WeighedPart,
    findings::{Findings, Of},
    scalp,
    sections::{Sections, Work},
};
use crate::{
    finding::{
        Finding, Reason, Rule,
        Verdict::{NotJudged, Passed, Stop, Warning},
    },
    mix::check_lightener,
    quantity::{Mass, MassFraction},
    service::request::{Item, ItemKind, Request},
    shop::OwnLimits,
    source::{COMMON_PRACTICE, Interval, Sourced},
    text::number,
};

/// Lightener on the scalp is mixed with no stronger developer, 20 volumes.
const USUAL_ON_SCALP: Sourced<f64> = Sourced::common_practice(6.0);

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
            on_scalp(work, item, findings);
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
        if work.has_peroxide() {
            let items: Vec<&Item> = work.products.iter().map(|(item, _)| *item).collect();
            let put_on = (work.name(), items.as_slice(), work.task.on_scalp);
            ceiling(put_on, (mix.developer, mix.decimals()), request, Of::Mix(&[work.place]), findings);
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
        let on_scalp = sections.iter().find(|work| work.name() == step.section).and_then(|work| work.task.on_scalp);
        ceiling(
            (&step.name(), &step.items(request).collect::<Vec<_>>(), on_scalp),
            (strength, 2),
            request,
            Of::Step(place),
            findings,
        );
    }
}

fn on_scalp(work: &Work<'_>, item: &Item, findings: &mut Findings) {
    if !matches!(item.kind, ItemKind::Lightener { on_scalp: false, .. }) {
        return;
    }
    let (name, product) = (work.name(), &item.name);
    let (verdict, text) = match work.task.on_scalp {
        Some(true) => (Stop, format!("{name}: \"{product}\" touches the scalp, which its entry does not allow")),
        None => {
            let text = format!(
                "{name}: foil at the roots keeps \"{product}\" off the scalp only where a gap is left, and its entry does \
                 not allow it there: leave one and say so, `on_scalp = false`"
            );
            (NotJudged, text)
        }
        Some(false) => return,
    };
    findings.of(work.place, Rule::OnScalp, verdict, text, Reason::stated(OWN_INSTRUCTIONS));
}

/// No stronger developer at the scalp than the house and the product allow there; where neither says, what the trade does.
fn ceiling(
    (name, items, on_scalp): (&str, &[&Item], Option<bool>),
    (strength, decimals): (Interval<MassFraction>, usize),
    request: &Request,
    of: Of<'_>,
    findings: &mut Findings,
) {
    let (Some(touches), strongest) = (touching(on_scalp), strength.high()) else { return };
    let reason = Reason::stated("the house's rule and the product's own instructions, as entered");
    let strength = number(strongest.ww_percent(), decimals);
    let (verdict, text, reason) = match scalp::ceiling(items.iter().copied(), request) {
        Some((whose, most)) if strongest > most => {
            let text = format!(
                "{name}: developer {strength} % {touches}, where {whose} allows {most} at most: use a weaker one"
            );
            (if on_scalp.is_some() { Stop } else { NotJudged }, text, reason)
        }
        Some((whose, most)) => (Passed, format!("{name} {strength} of {most} on the scalp by {whose}"), reason),
        // One that is not allowed there at all was told before.
        None if on_scalp.is_none() || !items.iter().any(|item| allowed_on_scalp(item)) => return,
        None if strongest.ww_percent() > USUAL_ON_SCALP.value => {
            let text = format!(
                "{name}: developer {strength} % {touches}, where the trade keeps lightener to {} %: use a weaker one, or enter \
                 what its own instructions allow there, `strongest_on_scalp_ww_percent`",
                USUAL_ON_SCALP.value
            );
            (Warning, text, COMMON_PRACTICE.into())
        }
        None => {
            let text = format!(
                "{name}: how strong a developer its lightener takes on the scalp is not on the shelf: enter \
                 `strongest_on_scalp_ww_percent`"
            );
            (NotJudged, text, Reason::stated(OWN_INSTRUCTIONS))
        }
    };
    of.push(findings, Finding::new(Rule::OnScalp, verdict, text, reason));
}

fn allowed_on_scalp(item: &Item) -> bool {
    matches!(item.kind, ItemKind::Lightener { on_scalp: true, .. })
}

/// In words; none where it does not touch the scalp.
fn touching(on_scalp: Option<bool>) -> Option<&'static str> {
    match on_scalp {
        Some(true) => Some("touches the scalp"),
        None => Some("touches the scalp if no gap is left"),
        Some(false) => None,
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
