//! What follows the chair on the page: colours, head, lift, money, cautions, and what stands behind it all.

use super::{notes::Notes, page_finding::told, pictures, writing::Writing};
use crate::{
    finding::{Reason, Verdict},
    lift::LOOK_FOR,
    page::Html,
    service::{Plan, if_all_reached},
    text::{in_hundred, number, range, span},
};

/// Swatches, the map of the head, what to expect at the looks.
pub(super) fn looks(html: &mut Html, plan: &Plan, notes: &mut Notes) {
    if !plan.colour.is_empty() {
        html.element("h2", &[], "Colours on the way");
        let rests_on = "swatches: a spectral model of hair with its own error, not a photograph";
        let when = if_all_reached(&plan.lift).map(|when| format!(", {when}")).unwrap_or_default();
        notes.noted(html, "p", &format!("Now, lightened, at the end; +/- in CIEDE2000{when}"), rests_on);
        html.open("div", &[("class", "pictures")]);
        for section in &plan.colour {
            html.picture(&pictures::swatches(section));
        }
        html.close("div");
    }
    if !plan.lift.is_empty() {
        html.element("h2", &[], "Lift against time");
        let rests_on = "lift: a model with bounds for 80 of 100 cases; a strand decides";
        notes.noted(html, "p", &format!("At every look: {}", LOOK_FOR.join("; ")), rests_on);
        let level =
            |level: &crate::source::Interval<crate::colour::Level>| span(level, |level| number(level.number(), 1));
        let rows = plan.lift.iter().map(|section| {
            vec![
                section.section.clone(),
                number(section.target_level.number(), 1),
                level(&section.first_strand),
                level(&section.last_strand),
                span(&section.chance, in_hundred),
            ]
        });
        let names = ["section", "wanted", "first strand at the rinse", "last strand", "reach it, in 100"];
        html.table("Levels at the planned rinse", &names, &[1, 4], &rows.collect::<Vec<_>>());
        html.open("div", &[("class", "pictures")]);
        for section in &plan.lift {
            html.picture(&pictures::looks(section));
        }
        html.close("div");
    }
    if plan.head.sections.is_empty() {
        return;
    }
    html.element("h2", &[], "Head and foils");
    html.open("div", &[("class", "beside")]);
    if let Some(map) = super::head_map(plan) {
        html.open("div", &[("class", "map")]);
        html.picture(&map);
        html.close("div");
    }
    html.open("div", &[]);
    foils(html, plan, notes);
    html.close("div");
    html.close("div");
}

fn foils(html: &mut Html, plan: &Plan, notes: &mut Notes) {
    let head = &plan.head;
    let sections = head.sections.iter().filter(|section| section.foils.is_some() || section.takes.is_some());
    let rows: Vec<Vec<String>> = sections
        .map(|section| {
            let foils = section.first_foil.zip(section.last_foil);
            vec![
                section.section.clone(),
                section.technique.to_string(),
                foils.map_or_else(|| "-".to_owned(), |(first, last)| format!("{first} to {last}")),
                section.mix_per_foil.as_ref().map_or_else(|| "-".to_owned(), |mass| range(mass, 1)),
                section.takes.as_ref().map_or_else(|| "?".to_owned(), |mass| range(mass, 0)),
            ]
        })
        .collect();
    if !rows.is_empty() {
        html.table(
            "Foils in the order of the work",
            &["section", "taken by", "foils", "g a foil", "takes g"],
            &[3, 4],
            &rows,
        );
        let when = if_all_reached(&plan.lift).map(|when| format!("; it reads as drawn {when}")).unwrap_or_default();
        let said = format!("Grams and foils are estimates{when}");
        notes.noted(html, "p", &said, &format!("hair and foils: {}", head.basis));
    }
    let depth = head.sections.iter().filter_map(|section| Some((section, section.lowlights.as_ref()?)));
    let depth = depth.map(|(section, depth)| {
        let places: Vec<String> = section.lowlight_places.iter().map(super::head::lowlight_place).collect();
        vec![section.section.clone(), super::head::lowlights(depth), places.join("; ")]
    });
    let depth: Vec<Vec<String>> = depth.collect();
    if !depth.is_empty() {
        html.table("Darker strands", &["section", "of what, and how much", "where"], &[], &depth);
    }
    let graded = head.sections.iter().filter_map(|section| {
        let along = section.along.as_ref().filter(|along| along.stretches.len() > 1)?;
        Some(vec![section.section.clone(), super::head::levels_along(along, &section.section, plan)])
    });
    let graded: Vec<Vec<String>> = graded.collect();
    if !graded.is_empty() {
        html.table("Level along the strand", &["section", "cm from the scalp: level"], &[], &graded);
    }
}

/// Cost and price.
pub(super) fn money(html: &mut Html, plan: &Plan, notes: &mut Notes) {
    let Some(money) = &plan.money else { return };
    let writing = Writing::of(plan.habits);
    html.element("h2", &[], "Cost and price");
    html.element("p", &[], &super::money::booked(plan));
    if let Some(listed) = plan.booking.price {
        let pays = format!("The guest pays {}, by the price list.", writing.money(listed));
        html.element("p", &[], &pays);
    }
    if let Some(picture) = pictures::cost_picture(plan, "Cost") {
        html.open("div", &[("class", "costs")]);
        html.picture(&picture);
        html.close("div");
    }
    let rests_on = format!("money: prices and wages stated by you, every line rounded once ({})", money.rounding);
    // In words too, for the picture stays off the paper.
    let kinds = money.cost.by_kind().into_iter().map(|(kind, amount)| format!("{kind} {}", writing.money(amount)));
    let kinds = kinds.collect::<Vec<_>>().join(", ");
    let mut said = format!("Cost {} ({kinds})", writing.money(money.cost.total()));
    if let Some(set) = &money.price {
        said += &format!(
            "; {}{}net price {}: margin {}, which is mark-up {}",
            super::money::by_costs(plan),
            super::money::fee(money, writing),
            writing.money(set.price),
            set.margin,
            set.markup
        );
    }
    if let Some(taxed) = &money.taxed {
        said += &format!("; {}", super::money::with_tax(plan, taxed, "the guest pays"));
    }
    if let Some(told) = super::money::range(plan, money) {
        said += &format!(". {told}");
    }
    said += &format!(". {}", super::money::times(plan));
    notes.noted(html, "p", &said, &rests_on);
    let left_out: Vec<String> = money.left_out.iter().map(super::money::words).collect();
    if !left_out.is_empty() {
        html.marked("p", &[("class", "small")], "Not counted:", &left_out.join("; "));
    }
}

/// The cautions in full.
pub(super) fn cautions(html: &mut Html, plan: &Plan) {
    html.element("h2", &[], "Cautions");
    html.list("small columns", plan.cautions.iter().map(|caution| caution.text.to_owned()));
}

/// What is looked up rather than read: all checks, defaults, what is missing, sources. It stays closed, and off the paper.
pub(super) fn background(html: &mut Html, plan: &Plan) {
    html.open("details", &[("class", "paperless")]);
    html.element("summary", &[], "Notes and what passed");
    let quiet = plan.findings.iter().filter(|found| matches!(found.verdict, Verdict::Note | Verdict::Passed));
    for finding in quiet {
        told(html, finding);
    }
    html.element("p", &[], "\"ok\" means nothing was found, not that anything is safe.");
    html.close("details");
    html.open("details", &[("class", "paperless")]);
    html.element("summary", &[], "Defaults used, and what was not computed");
    let sources = |sources: &[Reason]| sources.iter().map(ToString::to_string).collect::<Vec<_>>().join("; ");
    let default = |used: &crate::service::DefaultUsed| {
        format!("{} = {} [{}] {}", used.field, used.value, used.basis, sources(&used.sources))
    };
    html.list("small", plan.defaults.iter().map(default));
    html.list("small", plan.not_computed.iter().map(|missing| format!("{}: {}", missing.what, missing.why)));
    html.list(
        "small",
        plan.stated_not_used.iter().map(|fact| format!("stated, not used: {}: {}", fact.field, fact.why)),
    );
    html.close("details");
    html.open("details", &[("class", "paperless")]);
    html.element("summary", &[], "Sources of the checks");
    let mut seen: Vec<String> = Vec::new();
    for finding in &plan.findings {
        let text = format!("{}: {}", finding.rule, sources(&finding.sources));
        if !seen.contains(&text) {
            seen.push(text);
        }
    }
    html.list("small", seen);
    html.close("details");
    let closed = "All checks, defaults and sources are on the page, closed, and in `foilwork plan`.";
    html.element("p", &[("class", "soft small")], closed);
}
