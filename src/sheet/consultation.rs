//! A consultation come to its decision, as text for the chair.

use super::writing::Writing;
use crate::{
    finding::Finding,
    quantity::Duration,
    service::{Agreed, ConsultationPlan, SaidBefore, Start, TestEffect, guest_words},
    text::{Sheet, amount, count, list, number, range},
};
use jiff::Unit;

/// The consultation as text: what was said, whether to go on, what each test changes, the visits, the alternatives, and what
/// is agreed.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::{Evidence, consult, parse}, sheet::consultation_sheet};
///
/// let file = parse(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let text = consultation_sheet(&consult(&file, &Evidence::default())?);
/// assert!(text.contains("WHAT EACH TEST CHANGES") && text.lines().all(|line| line.chars().count() <= 80));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn consultation_sheet(found: &ConsultationPlan) -> String {
    let mut sheet = Sheet::default();
    sheet.title(&format!("CONSULTATION  {}", found.title));
    let guest = found.guest.as_deref().map(|guest| format!("   guest {guest}")).unwrap_or_default();
    sheet.paragraph(&format!("for {}{guest}", found.start), 2);
    sheet.blank();
    sheet.paragraph(&format!("[{}] {}", found.decision.go, found.decision.text), 2);
    decision(&mut sheet, found);
    if let Some(said) = &found.said {
        history(&mut sheet, said);
        wishes(&mut sheet, said);
    }
    tests(&mut sheet, &found.tests);
    if !found.visits.is_empty() {
        sheet.heading("Visits");
        for visit in &found.visits {
            let when = match &visit.after {
                Some(weeks) => format!(
                    "{} weeks after the one before: {} at the earliest, usually {}, to {}",
                    range(weeks, 0),
                    visit.earliest,
                    visit.usual,
                    visit.latest
                ),
                None => visit.usual.to_string(),
            };
            let reached = match visit.reached.as_slice() {
                [] => "none of them reaches its target in 80 of 100 cases".to_owned(),
                names => format!("80 of 100 reach their target: {}", names.join(", ")),
            };
            let sections = visit.sections.join(", ");
            sheet.paragraph(&format!("{}. {when}; lightened: {sections}; {reached}", visit.number), 3);
        }
    }
    sheet.heading("What else was considered");
    for one in &found.alternatives {
        let section = one.section.as_deref().map(|name| format!("{name}: ")).unwrap_or_default();
        let mark = if one.taken { "taken" } else { "not taken" };
        sheet.paragraph(&format!("{section}{} ({mark}): {} [{}]", one.option, one.why, one.basis), 2);
    }
    if found.not_tried > 0 {
        sheet.paragraph(&format!("{} more developers were not tried.", found.not_tried), 2);
    }
    agreement(&mut sheet, found);
    sheet.finish()
}

fn decision(sheet: &mut Sheet, found: &ConsultationPlan) {
    let decision = &found.decision;
    for one in decision.stops.iter().chain(&decision.restrictions).chain(&decision.open) {
        finding(sheet, "", one);
    }
    for consent in &decision.consents {
        let given = consent
            .agreed_on
            .map_or_else(|| "still to ask".to_owned(), |on| format!("agreed on {on} ({})", before(on, found.start)));
        let words = consent.words.as_deref().map(|words| format!(" (\"{words}\")")).unwrap_or_default();
        let to: Vec<&str> = consent.to.iter().map(|rule| rule.words()).collect();
        let stands = if consent.stop_stands { "; the stop stands all the same" } else { "" };
        sheet.paragraph(&format!("{} has to agree: {}: {given}{words}{stands}", consent.who, to.join(", ")), 2);
        for lapsed in &consent.lapsed {
            let (on, rule) = (lapsed.on, lapsed.rule);
            let text = format!("An agreement of {on} ({rule}) no longer counts: {}. Ask anew.", lapsed.why);
            sheet.paragraph(&text, 4);
        }
        for noted in &consent.noted {
            let text = format!(
                "An agreement of {} is noted: check that it covers this, then name what it covers under `rules`.",
                given_to(noted, found.start)
            );
            sheet.paragraph(&text, 4);
        }
    }
    let agreed = found.said.as_ref().map_or(&[][..], |said| &said.agreed);
    for one in decision.unused(agreed) {
        let text = format!("Stated, not used: an agreement of the {} of {}.", one.who, given_to(one, found.start));
        sheet.paragraph(&text, 2);
    }
    if decision.for_the_bench > 0 {
        let many = decision.for_the_bench;
        sheet.paragraph(&format!("{many} more concern the work at the bench: see foilwork plan."), 2);
    }
}

/// The day of an agreement, how long before it was, its words and its rules.
fn given_to(agreed: &Agreed, start: Start) -> String {
    let to = agreed.to.as_deref().map(|words| format!(" to \"{words}\"")).unwrap_or_default();
    let rules: Vec<String> = agreed.rules.iter().map(|rule| rule.words().to_owned()).collect();
    let rules = if rules.is_empty() { String::new() } else { format!(" (for {})", list(&rules, "and")) };
    format!("{} ({}){to}{rules}", agreed.on, before(agreed.on, start))
}

/// How long before the service a day was: by whole years from the first on, for what was said may have changed since.
fn before(then: Start, start: Start) -> String {
    let (then, start) = (then.earliest().date(), start.earliest().date());
    // Both are days of four-digit years, so neither difference can fail.
    let years = then.until((Unit::Year, start)).map_or(0, |span| i32::from(span.get_years()));
    match (years, (start - then).get_days()) {
        (_, ..=0) => "on the day".to_owned(),
        (..=0, days) => format!("{} before", count(usize::try_from(days).unwrap_or_default(), "day", "days")),
        (years, _) => format!("{} before", count(usize::try_from(years).unwrap_or_default(), "year", "years")),
    }
}

fn finding(sheet: &mut Sheet, before: &str, found: &Finding) {
    sheet.paragraph(&format!("{before}[{}] {}: {}", found.verdict, found.rule, found.text), before.len() + 7);
}

fn history(sheet: &mut Sheet, said: &SaidBefore) {
    sheet.heading("Earlier services");
    let rows = said.past.iter().map(|past| {
        let text = |value: Option<String>| value.unwrap_or_else(|| "unknown".to_owned());
        vec![
            text(past.on.map(|on: Start| on.to_string())),
            past.what.to_string(),
            past.zone.map_or_else(String::new, |zone| zone.to_string()),
            text(past.grown_out.map(|cm| range(&cm, 1))),
            text(past.formula.clone()),
        ]
    });
    let rows: Vec<_> = rows.collect();
    if rows.is_empty() {
        sheet.line("None is stated.");
    } else {
        sheet.table(&["on", "what", "zone", "now from cm", "formula"], &[], rows);
    }
    for gap in &said.gaps {
        sheet.paragraph(&format!("Unknown: {}.", gap.text), 2);
    }
}

fn wishes(sheet: &mut Sheet, said: &SaidBefore) {
    if said.wishes.is_empty() {
        return;
    }
    sheet.heading("Wishes");
    for wish in &said.wishes {
        let tone = wish.tone.as_deref().map(|tone| format!(", {tone}")).unwrap_or_default();
        let dislikes = wish.dislikes.as_deref().map(|words| format!("; dislikes now: {words}")).unwrap_or_default();
        let held = wish.in_words();
        let within = number(wish.tolerance_levels.levels(), 2);
        let now = number(wish.now_level.best().number(), 1);
        let text = format!("{}: {} within {within}{tone}{dislikes}; now {now}: {held}", wish.zone, wish.level);
        sheet.paragraph(&text, 2);
    }
}

fn tests(sheet: &mut Sheet, effects: &[TestEffect]) {
    sheet.heading("What each test changes");
    for one in effects {
        let result = one.result.as_deref().unwrap_or("not done");
        let mark = if one.stated { " (as stated)" } else { "" };
        let at = |time: Option<Duration>| time.map_or_else(|| "never".to_owned(), |time| amount(time, 0));
        let time = one.slowest.zip(one.time_factor).filter(|_| !one.stated).map(|(slowest, factor)| {
            let span = format!("{} ({} to {})", at(slowest.median), at(slowest.early), at(slowest.late));
            format!("; slowest section at minute {span}, {} times as long by the median", number(factor, 2))
        });
        sheet.paragraph(&format!("{} {result}{mark}: {}{}", one.test, one.go, time.unwrap_or_default()), 2);
        one.adds.iter().for_each(|found| finding(sheet, "  + ", found));
        one.lifts.iter().for_each(|found| finding(sheet, "  - ", found));
    }
    sheet.line("+ comes with that result, - goes with it.");
}

fn agreement(sheet: &mut Sheet, found: &ConsultationPlan) {
    let agreed = &found.agreement;
    let writing = Writing::of(found.habits);
    sheet.heading("To agree with the guest");
    let told = agreed.warned.iter().filter_map(|rule| guest_words::told(*rule));
    let open = guest_words::names(agreed.open.iter().copied());
    let open = open.into_iter().map(|name| format!("not yet settled: {name}"));
    let warned: Vec<String> = told.map(str::to_owned).chain(open).collect();
    for (what, said) in [
        ("Planned", &agreed.planned),
        ("Visits", &agreed.visits),
        ("Not promised", &agreed.not_promised),
        ("To know", &warned),
        ("Risks", &agreed.risks),
        ("Before we begin", &agreed.before),
    ] {
        for one in said {
            sheet.paragraph(&format!("{what}: {one}"), 2);
        }
    }
    if let Some(price) = &agreed.price {
        sheet.paragraph(&super::agreement_page::price_in_words(price, writing), 2);
    }
}
