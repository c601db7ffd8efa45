//! Planned steps before the colour: what to weigh for each, at any size of its bowl.

use super::{
    WorkbookError,
    page::Page,
    sized::{Rounded, SizedBowl},
    weighed::vanishes,
};
use crate::service::{BowlCard, FirstStep, Plan, WeighedPart, mixing_cards};

/// All of them, above the bowls.
pub(super) fn first_steps(page: &mut Page, plan: &Plan) -> Result<(), WorkbookError> {
    let cards = mixing_cards(plan);
    for (step, card) in plan.first_steps.iter().filter(|step| step.planned).zip(&cards) {
        page.row += 1;
        let head = format!("FIRST: {}: {}", step.name(), step.what);
        match &step.why_not {
            Some(why_not) => {
                page.stop(&format!("{head}; {} g are needed, and {why_not}", crate::text::range(&step.mix, 1)))?;
            }
            None => {
                page.stop(&head)?;
                bowl(page, step, card, plan.scale_division.g())?;
            }
        }
    }
    Ok(())
}

/// Its size may be changed, and every part follows; each is rounded by itself, as the plan does.
fn bowl(page: &mut Page, step: &FirstStep, card: &BowlCard, division_g: f64) -> Result<(), WorkbookError> {
    let on_hair = [false, true].map(|high| {
        let strength = |part: &WeighedPart| if high { part.peroxide.high() } else { part.peroxide.low() }.ww_percent();
        let peroxide: f64 = card.parts.iter().map(|part| part.weigh.g() * strength(part)).sum();
        if card.total.g() > 0.0 { peroxide / card.total.g() } else { 0.0 }
    });
    let (parts, total, heading) = (&card.parts, card.total, "for this step alone");
    let bowl = SizedBowl { heading, parts, total, on_hair, rounded: Rounded::Each, division_g };
    let (exact, weighed) = bowl.write(page)?;
    let weighs = card.parts.iter().any(|part| part.exact.g() > 0.0);
    let lost = card.parts.iter().any(|part| part.exact.g() > 0.0 && part.weigh.g() == 0.0);
    vanishes(page, &exact, &weighed, weighs.then_some(lost))?;
    if step.on_hair.is_some() {
        page.paragraph(
            "The strength of this step was held against the law as it was planned, not as it is changed here.",
        )?;
    }
    Ok(())
}
