//! What touches the scalp may, and with no stronger developer than is allowed there.

use super::{
    super::{
        FirstStep, Mix,
        findings::{Findings, Of},
        scalp,
        sections::{Sections, Work},
    },
    instructions::OWN_INSTRUCTIONS,
};
use crate::{
    finding::{
        Finding, Reason, Rule,
        Verdict::{NotJudged, Passed, Stop, Warning},
    },
    quantity::MassFraction,
    service::request::{Item, ItemKind, Request},
    source::{COMMON_PRACTICE, Interval},
    text::number,
};

pub(super) fn check(
    (sections, mixes): (&Sections<'_>, &[Mix]),
    (request, first): (&Request, &[FirstStep]),
    findings: &mut Findings,
) {
    for (work, mix) in sections.iter().zip(mixes) {
        for (item, _) in &work.products {
            touching(work, item, findings);
        }
        if work.has_peroxide() {
            let items: Vec<&Item> = work.products.iter().map(|(item, _)| *item).collect();
            let places = [work.place];
            let put_on = (work.name(), items.as_slice(), work.task.on_scalp);
            strength(put_on, (mix.developer, mix.decimals()), request, || Of::Mix(&places), findings);
        }
    }
    for (place, step) in first.iter().enumerate().filter(|(_, step)| step.planned) {
        let Some(developer) = step.bowl.as_ref().and_then(|bowl| bowl.developer) else { continue };
        let touches = sections.iter().find(|work| work.name() == step.section).and_then(|work| work.task.on_scalp);
        let items: Vec<&Item> = step.items(request).collect();
        strength((&step.name(), &items, touches), (developer, 2), request, || Of::Step(place), findings);
    }
}

/// Whether a lightener that its entry keeps off the scalp stays off it.
fn touching(work: &Work<'_>, item: &Item, findings: &mut Findings) {
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

/// No stronger developer than the house and the products state; of a lightener that states none, as the trade has it.
fn strength<'p>(
    (name, items, on_scalp): (&str, &[&Item], Option<bool>),
    (strength, decimals): (Interval<MassFraction>, usize),
    request: &Request,
    of: impl Fn() -> Of<'p>,
    findings: &mut Findings,
) {
    let (Some(touches), strongest) = (where_it_is(on_scalp), strength.high()) else { return };
    // What may not go there at all was told before.
    if items.iter().any(|item| matches!(item.kind, ItemKind::Lightener { on_scalp: false, .. })) {
        return;
    }
    let mut add = |verdict, text, reason| of().push(findings, Finding::new(Rule::OnScalp, verdict, text, reason));
    let strongest = number(strongest.ww_percent(), decimals);
    if let Some(most) = scalp::stated(items.iter().copied(), request) {
        let reason = Reason::stated(format!("{}, as entered", most.whose));
        if most.allows(&strength) {
            add(Passed, format!("{name} {strongest} of {} on the scalp by {}", most.most, most.whose), reason);
        } else {
            let verdict = if on_scalp.is_some() { Stop } else { NotJudged };
            let text = format!(
                "{name}: developer {strongest} % {touches}, where {} allows {} at most: use a weaker one",
                most.whose, most.most
            );
            add(verdict, text, reason);
            return;
        }
    }
    for item in items.iter().filter(|item| on_scalp.is_some() && scalp::is_unsaid(item)) {
        let (usual, best) = (scalp::usual(), number(strength.best().ww_percent(), decimals));
        let enter = format!("enter `strongest_on_scalp_ww_percent` of \"{}\" by its own instructions", item.name);
        if usual.allows(&strength) {
            let text = format!("{name}: how strong a developer it takes on the scalp is not on the shelf: {enter}");
            add(NotJudged, text, Reason::stated(OWN_INSTRUCTIONS));
        } else {
            let text = format!(
                "{name}: developer {best} % touches the scalp, where the trade keeps lightener to {}: use a weaker one, or \
                 {enter}",
                usual.most
            );
            add(Warning, text, COMMON_PRACTICE.into());
        }
    }
}

/// In words; none where it does not touch the scalp.
fn where_it_is(on_scalp: Option<bool>) -> Option<&'static str> {
    match on_scalp {
        Some(true) => Some("touches the scalp"),
        None => Some("touches the scalp if no gap is left"),
        Some(false) => None,
    }
}
