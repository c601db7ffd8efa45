//! Planned steps before the colour: what to weigh for each, at any size of its bowl.

use super::{
    WorkbookError,
    cells::{at, down, fixed},
    page::{Allowed, Page},
    weighed::{decimals, vanishes},
};
use crate::service::{BowlCard, FirstStep, Plan, mixing_cards};

const GRAMS: usize = 2;
const PERCENT: usize = 2;

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
    let whole: f64 = card.parts.iter().map(|part| part.exact.g()).sum();
    let shown = decimals(division_g);
    page.text(0, "in this bowl, g")?;
    page.input(1, whole, GRAMS, Allowed::GRAMS)?;
    let size = fixed(page.row, 1);
    page.row += 1;
    page.heading(&[
        "for this step alone",
        "share, %",
        "exact, g",
        "WEIGH, g",
        "scale shows, g",
        "peroxide as stated, at least, % w/w",
        "as stated, at most, % w/w",
    ])?;
    let (first, last) = (page.row, page.row + (card.parts.len() as u32).saturating_sub(1));
    for part in &card.parts {
        page.text(0, &part.product)?;
        page.number(1, if whole > 0.0 { 100.0 * part.exact.g() / whole } else { 0.0 }, 4)?;
        page.formula(2, &format!("{size}*{}/100", at(page.row, 1)), part.exact.g(), GRAMS)?;
        let weigh = format!("ROUND({}/division_g,0)*division_g", at(page.row, 2));
        page.formula(3, &weigh, part.weigh.g(), shown)?;
        page.formula(4, &format!("SUM({})", down(3, first, page.row)), part.scale_shows.g(), shown)?;
        page.number(5, part.peroxide.low().ww_percent(), PERCENT)?;
        page.number(6, part.peroxide.high().ww_percent(), PERCENT)?;
        page.row += 1;
    }
    let (exact, weighed) = (down(2, first, last), down(3, first, last));
    page.text(0, "bowl; ON THE HAIR as stated, % w/w")?;
    page.formula(2, &format!("SUM({exact})"), whole, GRAMS)?;
    page.formula(3, &format!("SUM({weighed})"), card.total.g(), shown)?;
    for (column, high) in [(5, false), (6, true)] {
        let strength = |part: &crate::service::WeighedPart| {
            if high { part.peroxide.high() } else { part.peroxide.low() }.ww_percent()
        };
        let peroxide: f64 = card.parts.iter().map(|part| part.weigh.g() * strength(part)).sum();
        let came = if card.total.g() > 0.0 { peroxide / card.total.g() } else { 0.0 };
        let mixed = format!("SUMPRODUCT({weighed},{})", down(column, first, last));
        page.formula(column, &format!("IF(SUM({weighed})=0,0,{mixed}/SUM({weighed}))"), came, PERCENT)?;
    }
    page.row += 1;
    let lost = card.parts.iter().any(|part| part.exact.g() > 0.0 && part.weigh.g() == 0.0);
    vanishes(page, &exact, &weighed, (whole > 0.0).then_some(lost))?;
    if step.on_hair.is_some() {
        page.paragraph(
            "The strength of this step was held against the law as it was planned, not as it is changed here.",
        )?;
    }
    Ok(())
}
