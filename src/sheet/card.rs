use super::writing::Writing;
use crate::{
    finding::Finding,
    quantity::Duration,
    service::{BowlCard, Start, WorkStage, strength_decimals},
    shop::Habits,
    text::{Sheet, number, range, whole_minutes},
};
use jiff::civil::DateTime;

/// The cards as plain text, to cut apart and lay beside the bowls. What says stop leads every card.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::{mixing_cards, plan_text}, sheet::card_sheet};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let text = card_sheet(&mixing_cards(&plan), &plan.habits);
/// assert!(text.starts_with("J-014: nape\n"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn card_sheet(cards: &[BowlCard], habits: &Habits) -> String {
    let mut sheet = Sheet::default();
    for card in cards {
        one(&mut sheet, card, Writing::of(*habits));
        sheet.blank();
    }
    sheet.finish()
}

fn one(sheet: &mut Sheet, card: &BowlCard, writing: Writing) {
    if card.blocked {
        sheet.paragraph("*** STOP: DO NOT MIX THIS BOWL. ***", 4);
        for stop in &card.stops {
            sheet.paragraph(&format!("  [{}] {}: {}", stop.verdict, stop.rule, stop.text), 9);
        }
    }
    let which = if card.bowls > 1 { format!(", bowl {} of {}", card.bowl, card.bowls) } else { String::new() };
    sheet.paragraph(&format!("{}: {}{which}", card.guest.as_deref().unwrap_or("guest"), card.name), 2);
    let grams = |mass| writing.grams(mass);
    if card.parts.is_empty() {
        sheet.paragraph("NOTHING TO WEIGH: settle this step before the colour is begun.", 2);
        return card.findings.iter().for_each(|finding| asked(sheet, finding));
    }
    let mut rows: Vec<_> =
        card.parts.iter().map(|part| vec![String::new(), part.product.clone(), grams(part.weigh)]).collect();
    rows.push(vec![String::new(), "total".to_owned(), grams(card.total)]);
    sheet.table(&["", "", ""], &[2], rows);
    let strength = card.on_hair.map_or_else(
        || ": not known (by its maker)".to_owned(),
        |on_hair| format!(" {} % w/w", range(&on_hair, strength_decimals(card.strength_basis))),
    );
    sheet.paragraph(&format!("peroxide on the hair{strength}"), 2);
    if card.worst_ratio_error_percent >= 0.05 {
        let error = number(card.worst_ratio_error_percent, 1);
        sheet.paragraph(&format!("rounding to the scale moves a part by up to {error} %"), 2);
    }
    times(sheet, card, writing);
    if !card.mind.is_empty() {
        sheet.paragraph(&format!("mind: {}", card.mind.join("; ")), 2);
    }
    card.findings.iter().for_each(|finding| asked(sheet, finding));
}

fn asked(sheet: &mut Sheet, finding: &Finding) {
    sheet.paragraph(&format!("! [{}] {}: {}", finding.verdict, finding.rule, finding.text), 2);
}

fn times(sheet: &mut Sheet, card: &BowlCard, writing: Writing) {
    let ends = card.then.map_or_else(|| "rinse".to_owned(), |then| then.to_string());
    // What is looked at all the while ends by the hair: its time is an estimate.
    let by = if card.minutes.ends.is_some() { "at about" } else { "planned for" };
    let earliest = if card.stage == WorkStage::Section { "" } else { " (earliest; after rinsing)" };
    let looks = |at: &str, looks: Vec<String>| match looks.as_slice() {
        [] => "all the while".to_owned(),
        looks => format!("{at}{}", looks.join(", ")),
    };
    match &card.clock {
        Some(clock) => {
            let day = writing.start(Start::At(clock.mixed_at));
            let hour = |at: &DateTime| writing.time(*at);
            sheet.paragraph(&format!("mixed {day}, use by {}{earliest}", hour(&clock.use_by)), 2);
            let within = clock.ends_earliest.zip(clock.ends_latest);
            let within = within.map(|(from, to)| format!(" ({} to {})", hour(&from), hour(&to))).unwrap_or_default();
            let looks = looks("", clock.look_at.iter().map(hour).collect());
            let last = clock.look_at_last.map(|at| format!(", the last strand from {}", hour(&at))).unwrap_or_default();
            sheet.paragraph(
                &format!("look at the hair {looks}{last}; {ends} {by} {}{within}", hour(&clock.rinse_by)),
                2,
            );
        }
        None => {
            let minute = |at: &Duration| whole_minutes(*at);
            let minutes = &card.minutes;
            let (mixed, use_by) = (minute(&minutes.mixed_at), minute(&minutes.use_by));
            sheet.paragraph(&format!("mixed at minute {mixed}, use by minute {use_by}{earliest}"), 2);
            let within = minutes.ends.map(|ends| format!(" ({} to {})", minute(&ends.low()), minute(&ends.high())));
            let within = within.unwrap_or_default();
            let looks = looks("at minute ", minutes.look_at.iter().map(minute).collect());
            let last = minutes.look_at_last.map(|at| format!(", the last strand from minute {}", minute(&at)));
            let (last, rinse_by) = (last.unwrap_or_default(), minute(&minutes.rinse_by));
            sheet.paragraph(&format!("look at the hair {looks}{last}; {ends} {by} minute {rinse_by}{within}"), 2);
        }
    }
}
