use super::{
    checks,
    sign::{not_yet, settle_first, to_sign},
    writing::Writing,
};
use crate::{
    finding::Verdict,
    lift::OFTEN,
    page::{Html, Page},
    service::{AgreedPrice, Mix, NOT_YET, PartKind, Plan, WorkStage, before_signing, guest_words},
    text::{amount, range},
};

/// What the guest is given to read and to sign: what is planned, what may go wrong, what it costs, how to care for it.
///
/// It holds no grams, no field of a file and no cost of the salon. It never says that anything is safe. With a finding that
/// says STOP, or while something has to be settled first, it holds no price and nothing to sign.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::plan_text, sheet::guest_page};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let page = guest_page(&plan);
/// assert!(page.contains("Agreement") && !page.contains("<td"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// That risks and price are told before the service is asked of a colourist by published units
/// ([citation `uk-ofqual-colour-correction`](crate::source::citations::money::QUOTATION)); the advice for home is common
/// practice.
#[must_use]
pub fn guest_page(plan: &Plan) -> String {
    let mut page = Page::new(&format!("For the guest: {}", plan.title));
    let html = page.body();
    html.element("h1", &[("dir", "auto")], &plan.title);
    let writing = Writing::of(plan.habits);
    // What is booked, where it is known: it counts bowls, looks and walks too.
    let takes = plan.booking.book.unwrap_or(plan.chair.total);
    let mut when = format!("{}, about {} min in the chair", writing.start(plan.start), amount(takes, 0));
    // Without the other work the end is not known.
    match (plan.chair.other_work, plan.start.plus(takes)) {
        (None, _) => when += ", and consultation, drying",
        (Some(_), Some(finish)) => when += &format!(", until about {}", writing.time(finish)),
        (Some(_), None) => {}
    }
    html.element("p", &[], &when);
    if let Some(guest) = &plan.guest {
        html.marked("p", &[("dir", "auto")], "for", guest);
    }
    planned(html, plan);
    let before = before_signing(plan);
    risks(html, plan, &before);
    let signable = !plan.blocked && before.is_empty();
    if signable {
        price(html, plan, writing);
    }
    care(html, plan);
    if signable {
        to_sign(html);
    }
    page.finish()
}

fn planned(html: &mut Html, plan: &Plan) {
    html.element("h2", &[], "What we plan");
    let sections = plan.colour.iter().map(|section| {
        let tone = section.target_tone.as_deref().map(|tone| format!(", {tone}")).unwrap_or_default();
        format!("{}: to {}{tone}", section.section, section.target_level)
    });
    let others = plan.mixes.iter().filter(|mix| !plan.colour.iter().any(|section| section.section == mix.name));
    html.list(
        "",
        plan.told_first().into_iter().chain(sections).chain(others.map(|mix| format!("{}: {}", mix.name, kind(mix)))),
    );
    html.element("p", &[], "Levels count from 1, black, to 10, the lightest blond. Hair decides how far it goes: we look at a strand again and again, and stop when it has had enough.");
    let unsure: Vec<String> = plan
        .lift
        .iter()
        .filter(|section| section.chance.low() < OFTEN)
        .map(|section| section.section.clone())
        .collect();
    if !unsure.is_empty() {
        html.marked("p", &[("dir", "auto")], "Perhaps not in one visit:", &unsure.join(", "));
    }
}

/// What a mix is that has no target of its own.
fn kind(mix: &Mix) -> &'static str {
    match mix.stage {
        WorkStage::Toner => "toner",
        WorkStage::RootShadow => "root shadow",
        WorkStage::Section if mix.products().any(|part| part.kind == PartKind::Lightener) => "lightener",
        WorkStage::Section => "colour",
    }
}

/// What has to be told before: what the checks found, in words for the guest, what they could not judge, then what holds for
/// every such service.
fn risks(html: &mut Html, plan: &Plan, before: &[String]) {
    html.element("h2", &[], "What you should know");
    let named = |verdict| guest_words::names(checks::rules(checks::of(plan, verdict)));
    if plan.blocked {
        not_yet(html, &named(Verdict::Stop));
    } else if !before.is_empty() {
        settle_first(html);
    }
    let mind = plan.findings.iter().filter(|found| matches!(found.verdict, Verdict::Stop | Verdict::Warning));
    html.list("", checks::rules(mind).into_iter().filter_map(guest_words::told).map(str::to_owned));
    let open = named(Verdict::NotJudged);
    if !open.is_empty() {
        html.marked("p", &[], "Not yet settled:", &format!("{}; ask your colourist.", open.join(", ")));
    }
    html.list("", plan.risks());
    // That it cannot begin stands above already.
    let settle: Vec<String> = before.iter().filter(|said| *said != NOT_YET).cloned().collect();
    if !settle.is_empty() {
        html.element("h2", &[], "Before we begin");
        html.list("", settle);
    }
}

fn price(html: &mut Html, plan: &Plan, writing: Writing) {
    let Some(agreed) = AgreedPrice::of_one_visit(plan) else { return };
    html.element("h2", &[], "Price");
    let tax = if agreed.tax_included { ", tax included" } else { ", before tax" };
    let listed = plan.booking.is_listed();
    let said = match (listed, agreed.left_out.as_slice()) {
        (true, _) => format!("by our price list, for what is planned here{tax}."),
        (false, []) => format!("for what is planned here{tax}."),
        (false, _) => format!("so far{tax}. The price is not complete yet: we tell you the rest before we begin."),
    };
    html.marked("p", &[], &writing.money(agreed.planned), &said);
    // A price of the list does not move with the grams.
    let range = plan.money.as_ref().filter(|_| !listed).and_then(|money| super::money::range(plan, money));
    if let Some(told) = range {
        html.element("p", &[], &format!("{told}. It covers this visit, with the work and the times planned."));
    }
    html.element("p", &[], "Another product, more time or a second application cost more. We ask you before we go on.");
}

/// Common practice.
fn care(html: &mut Html, plan: &Plan) {
    html.element("h2", &[], "At home");
    let mut advice = vec![
        "Wait two days before you wash it; lukewarm water, mild shampoo, conditioner each time.",
        "Little heat: dry gently, iron seldom and not hot, with something that shields from heat.",
        "Sun, chlorine and salt water change the colour: cover it, and rinse with clear water before and after.",
        "If the skin itches, swells or blisters in the next days, wash it out, see a doctor, and tell us.",
    ];
    if !plan.lift.is_empty() {
        advice.push("Lightened hair tears when it is wet: a wide comb, from the ends up.");
    }
    html.list("", advice.into_iter().map(str::to_owned));
    let soonest = plan.head.sections.iter().map(|section| section.line_shows_after);
    if let Some(weeks) = soonest.min_by(|a, b| a.best().weeks().total_cmp(&b.best().weeks())) {
        let weeks = range(&weeks, 0);
        let text = format!("The regrowth begins to show after about {weeks} weeks, an estimate: come back then.");
        html.element("p", &[], &text);
    }
}
