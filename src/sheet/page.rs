use super::{lapsed::lapsed, notes::Notes, page_chair, page_day, page_finding::told, page_rest, writing::Writing};
use crate::{
    finding::{Finding, Verdict},
    page::{Html, Page},
    service::Plan,
};

/// The plan as a page: one file without network, for a phone at the chair and for one or two sheets of paper.
///
/// What is needed at the chair comes first: what says STOP and WARN, times, grams, looks, rinse. Then the colours, the map of
/// the head and the lift; then money, cautions, and what the numbers rest on. Without its script the page reads as paper
/// does; with it, it counts down from the first brush.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::plan_text, sheet::bench_page};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let page = bench_page(&plan);
/// assert!(page.starts_with("<!doctype html>") && page.contains("default-src 'none'"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn bench_page(plan: &Plan) -> String {
    let mut page = Page::new(&format!("Bench sheet: {}", plan.title)).with_script();
    let mut notes = Notes::default();
    let html = page.body();
    opening(html, plan);
    warnings(html, plan);
    page_chair::chair(html, plan, &mut notes);
    page_rest::looks(html, plan, &mut notes);
    page_day::day(html, plan);
    page_rest::money(html, plan, &mut notes);
    page_rest::cautions(html, plan);
    notes.write(html);
    page_rest::background(html, plan);
    html.element("p", &[("class", "soft small")], &format!("foilwork {}", plan.foilwork));
    page.finish()
}

fn opening(html: &mut Html, plan: &Plan) {
    html.element("h1", &[("dir", "auto")], &plan.title);
    let writing = Writing::of(plan.habits);
    let mut facts = vec![format!("starts {}", writing.start(plan.start))];
    facts.push(super::bench::chair_time(plan));
    facts.push(plan.jurisdiction.map_or_else(|| "no jurisdiction stated".to_owned(), |law| format!("law of {law}")));
    html.element("p", &[], &facts.join("; "));
    for (who, name) in [("guest", &plan.guest), ("colourist", &plan.colourist), ("notes", &plan.notes)] {
        if let Some(name) = name {
            html.marked("p", &[("dir", "auto")], who, name);
        }
    }
}

/// What says STOP, then what warns, then how much is open.
fn warnings(html: &mut Html, plan: &Plan) {
    let of = |verdict| plan.findings.iter().filter(move |finding| finding.verdict == verdict);
    if plan.blocked {
        html.open("section", &[("class", "stop"), ("aria-label", "stop")]);
        html.element("h2", &[], "Do not begin: resolve this first");
        for finding in of(Verdict::Stop) {
            told(html, finding);
        }
        html.close("section");
    }
    for told in lapsed(plan) {
        html.element("p", &[("dir", "auto")], &told);
    }
    if of(Verdict::Warning).next().is_some() {
        html.open("section", &[("class", "warn"), ("aria-label", "warnings")]);
        html.element("h2", &[], "Mind before you begin");
        for finding in of(Verdict::Warning) {
            told(html, finding);
        }
        html.close("section");
    }
    let open: Vec<&Finding> = of(Verdict::NotJudged).collect();
    if !open.is_empty() {
        html.open("details", &[("class", "warn")]);
        let rules: Vec<String> = super::checks::rules(open.iter().copied()).iter().map(ToString::to_string).collect();
        html.element("summary", &[], &format!("OPEN, unknown and never passed: {}", rules.join(", ")));
        for finding in open {
            told(html, finding);
        }
        html.close("details");
    }
}
