//! Lift against time, strengths that the plan chose, and what to look for.

use super::visits::{self, BETWEEN_VISITS};
use crate::{
    colour::Level,
    lift::{Factor, LOOK_FOR, OFTEN, TimeTo},
    quantity::{Duration, Share},
    service::{ChosenStrength, Plan, SectionLift, TogetherPlan},
    source::Interval,
    text::{Sheet, amount, count, in_hundred, number, span, whole_minutes},
};

/// The strengths that sections left to the plan, and level against time, section by section.
pub(super) fn lift(sheet: &mut Sheet, plan: &Plan) {
    strengths(sheet, plan);
    forecast(sheet, plan);
}

fn strengths(sheet: &mut Sheet, plan: &Plan) {
    if plan.strengths.is_empty() {
        return;
    }
    sheet.heading("Strengths chosen by the plan");
    for together in &plan.together {
        finish(sheet, together);
    }
    for chosen in &plan.strengths {
        strength(sheet, chosen);
    }
    sheet.paragraph(
        "The weakest that half of such hair needs: the chances say how sure. A strand test narrows them most.",
        0,
    );
}

fn finish(sheet: &mut Sheet, together: &TogetherPlan) {
    if let Some(why) = &together.why_not {
        sheet.paragraph(&format!("Not together: {why}."), 2);
    }
    let row = |section: &crate::service::TogetherSection| {
        let reaches = section.reaches.map_or_else(|| "-".to_owned(), |at| amount(at, 0));
        vec![section.section.clone(), amount(section.begin, 0), reaches, levels(section.at_rinse)]
    };
    let rows: Vec<Vec<String>> = together.sections.iter().map(row).collect();
    if !rows.is_empty() {
        sheet.table(&["section", "starts", "there at", "at the rinse"], &[1, 2], rows);
        let rinse = together.rinse.map_or_else(|| "-".to_owned(), |rinse| amount(rinse, 0));
        let text = format!(
            "Minutes from the first brush on {}; rinse all at {rinse}.",
            together.sections.first().map_or("the first section", |section| section.section.as_str())
        );
        sheet.paragraph(&text, 0);
        sheet.blank();
    }
}

fn strength(sheet: &mut Sheet, chosen: &ChosenStrength) {
    let percent = |strength: Interval<crate::quantity::MassFraction>| span(&strength, |s| number(s.ww_percent(), 2));
    let text = format!(
        "{}: {} % w/w, {} % on the hair: {}.",
        chosen.section,
        percent(chosen.developer),
        percent(chosen.on_hair),
        chosen.why
    );
    sheet.paragraph(&text, 2);
    for rejected in &chosen.rejected {
        sheet.paragraph(&format!("  not {} %: {}", number(rejected.developer.ww_percent(), 2), rejected.why), 4);
    }
}

fn forecast(sheet: &mut Sheet, plan: &Plan) {
    if plan.lift.is_empty() {
        return;
    }
    sheet.heading("Lift against time: a model, the strand decides");
    let rows = plan.lift.iter().map(row).collect();
    sheet.table(
        &["section", "wanted", "first strand", "last strand", "trade's rule", "there at", "in 100"],
        &[1, 6],
        rows,
    );
    sheet.blank();
    let text = "Levels at the planned rinse with bounds for 80 of 100 cases from every level that the start may have by \
                the margin stated. \"there at\" is the first strand on the clock of the order; \"in 100\" is how many \
                such cases reach the target as planned.";
    sheet.paragraph(text, 0);
    for section in &plan.lift {
        seen(sheet, section);
    }
    looks(sheet, plan);
    for section in &plan.lift {
        sheet.blank();
        details(sheet, section);
    }
    if plan.lift.iter().any(|section| section.visits.len() > 1) {
        sheet.blank();
        sheet.paragraph(BETWEEN_VISITS, 0);
    }
}

fn row(section: &SectionLift) -> Vec<String> {
    vec![
        section.section.clone(),
        number(section.target_level.number(), 1),
        levels(section.first_strand),
        levels(section.last_strand),
        levels(section.rule),
        there(&section.reached_on_clock),
        chance(&section.chance),
    ]
}

fn chance(chance: &Interval<Share>) -> String {
    span(chance, in_hundred)
}

fn levels(levels: Interval<Level>) -> String {
    span(&levels, |level| number(level.number(), 1))
}

fn there(time: &TimeTo) -> String {
    let minute = |at: Option<Duration>| at.map_or_else(|| "never".to_owned(), |at| amount(at, 0));
    format!("{} ({} to {})", minute(time.median), minute(time.early), minute(time.late))
}

fn seen(sheet: &mut Sheet, section: &SectionLift) {
    for seen in &section.seen {
        let again =
            seen.look_again.map(|at| format!("; look again at minute {}", whole_minutes(at))).unwrap_or_default();
        let text = format!("{}, minute {}: {}: {}{again}", section.section, amount(seen.at, 0), seen.next, seen.why);
        sheet.paragraph(&text, 2);
    }
}

/// When to look, and what to expect, on the clock of the order.
fn looks(sheet: &mut Sheet, plan: &Plan) {
    let mut rows: Vec<(f64, Vec<String>)> = Vec::new();
    for section in &plan.lift {
        for look in &section.looks {
            let mut cells = vec![amount(look.at, 0), section.section.clone(), amount(look.on_hair, 0)];
            cells.extend(look.level.to_array().map(|level| number(level.number(), 1)));
            rows.push((look.at.min(), cells));
        }
    }
    rows.sort_by(|a, b| a.0.total_cmp(&b.0));
    sheet.blank();
    let rows = rows.into_iter().map(|(_, cells)| cells).collect();
    sheet.table(&["minute", "look at", "on hair", "at least", "expect", "at most"], &[0, 2, 3, 4, 5], rows);
    sheet.paragraph(&format!("At every look: {}.", LOOK_FOR.join("; ")), 2);
}

fn details(sheet: &mut Sheet, section: &SectionLift) {
    let rests = match section.readings {
        0 => "no strand of this hair is read, so at least two levels either way".to_owned(),
        readings => count(readings, "reading", "readings"),
    };
    let reached = section.visits.last().is_some_and(|visit| visit.chance.best() >= OFTEN);
    let visits = match (section.visits.len(), reached) {
        (1, true) => "one visit does in 80 of 100".to_owned(),
        (visits, true) => format!("{visits} such visits do in 80 of 100"),
        (visits, false) => format!("{visits} such visits do not in 80 of 100"),
    };
    let text = format!(
        "{}: {rests}; known: {}; the strand that teaches most is read at minute {} of its own. A second fresh mix \
         reaches {} in {} of 100; {visits}.",
        section.section,
        section.known,
        amount(section.next_strand_test, 0),
        section.target_level,
        chance(&section.chance_fresh),
    );
    sheet.paragraph(&text, 2);
    if section.visits.len() > 1 {
        visits::table(sheet, &section.visits);
    }
    let index = span(&section.strain_index, |index| number(index, 1));
    let text = format!(
        "  strain on the fibre: {} (index {index}, 1 for 40 min at 4 % w/w on the hair); an elasticity test decides",
        section.strain
    );
    sheet.paragraph(&text, 4);
    let lever = |lever: &Factor| {
        let times = span(&lever.times, |times| number(times, 2));
        format!("{} {times} [{}]", lever.lever, lever.basis)
    };
    let levers: Vec<String> = section.levers.iter().map(lever).collect();
    if !levers.is_empty() {
        sheet.paragraph(&format!("  faster or slower than the reference mix by: {}", levers.join("; ")), 4);
    }
}
