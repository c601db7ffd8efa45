//! What is needed at the chair, as a page: bowl by bowl when, what to weigh, when to look, when to rinse.

use super::{chair::by_the_clock, clock::Clock, first, notes::Notes};
use crate::{
    page::Html,
    quantity::Duration,
    service::{Bowl, FirstStep, Mix, Plan, Start, Step, WorkStage},
    text::{amount, range},
};

pub(super) fn chair(html: &mut Html, plan: &Plan, notes: &mut Notes) {
    html.element("h2", &[], "At the chair");
    html.element(
        "button",
        &[("id", "begin"), ("type", "button"), ("hidden", ""), ("class", "paperless")],
        "First brush now: count down",
    );
    html.element("p", &[("id", "spoken"), ("role", "status"), ("class", "left")], "");
    let clock = Clock::of(plan);
    let planned: Vec<_> = plan.first_steps.iter().filter(|step| step.planned).collect();
    if !planned.is_empty() {
        html.open("div", &[("class", "bowls")]);
        for step in planned {
            before(html, step, clock, notes);
        }
        html.close("div");
    }
    let after_rinse = |mix: &Mix| mix.stage != WorkStage::Section;
    for later in [false, true] {
        let steps: Vec<_> = plan.mixes.iter().zip(&plan.order).filter(|(mix, _)| after_rinse(mix) == later).collect();
        if later && !steps.is_empty() {
            let counted = match plan.start {
                Start::At(_) => "After rinsing; these times are the earliest, as if rinsing took none:",
                Start::Day(_) => "After rinsing, counted anew from its end:",
            };
            html.element("p", &[], counted);
        }
        html.open("div", &[("class", "bowls")]);
        for (mix, step) in steps {
            one(html, mix, step, clock, notes);
        }
        html.close("div");
    }
    let times = match plan.start {
        Start::At(_) => "Times are those of the clock",
        Start::Day(_) => "Times are minutes from the first brush: the file states no time of day",
    };
    let text = format!("{times}, as planned; write down the real ones. {}", by_the_clock(plan, clock));
    html.element("p", &[("class", "small")], &text);
    if let Some(note) = clock.writing().note() {
        html.element("p", &[("class", "small")], &note);
    }
    let reminders: Vec<_> = plan.cautions.iter().filter_map(|caution| caution.reminder).collect();
    html.marked("p", &[], "Mind:", &reminders.join("; "));
}

fn one(html: &mut Html, mix: &Mix, step: &Step, clock: Clock, notes: &mut Notes) {
    html.open("section", &[("class", "bowl"), ("aria-label", &step.name)]);
    html.element("h3", &[("dir", "auto")], &format!("{}. {}", step.number, step.name));
    times(html, mix, step, clock);
    for bowl in &mix.bowls {
        weigh(html, mix, bowl, clock);
    }
    let said = format!("{} % w/w on the hair; {} g needed", range(&mix.on_hair, mix.decimals()), range(&mix.needed, 0));
    let rests =
        format!("strength on the hair: {}, as weighed; how much is needed: {}", mix.strength_basis, mix.needed_basis);
    notes.noted(html, "p", &said, &rests);
    html.close("section");
}

/// A step before the colour.
fn before(html: &mut Html, step: &FirstStep, clock: Clock, notes: &mut Notes) {
    let name = step.name();
    html.open("section", &[("class", "bowl"), ("aria-label", &name)]);
    html.element("h3", &[("dir", "auto")], &format!("First: {name}"));
    html.open("ul", &[("class", "times")]);
    let over = format!("over: {}", step.then);
    let times = [(step.begin, "begin"), (step.applied, "all on"), (step.over, &over)];
    for (at, what) in times.into_iter().filter_map(|(at, what)| Some((at?, what))) {
        let what =
            if at.is_exact() { what.to_owned() } else { format!("{what}, by estimate {}", first::within(clock, at)) };
        let at = at.best();
        let minute = amount(at, 1);
        let named = format!("{what}, {name}");
        html.open("li", &[("class", "due"), ("data-minute", &minute), ("data-what", &named)]);
        html.tick(&clock.at(at, WorkStage::Section), &what);
        html.element("span", &[("class", "left")], "");
        html.close("li");
    }
    html.close("ul");
    if let Some(why_not) = &step.why_not {
        html.element("p", &[], why_not);
    } else {
        let rows: Vec<Vec<String>> = first::rows(step, clock.writing()).into_iter().map(Vec::from).collect();
        let names = ["into the tared bowl", "weigh", "the scale shows", "takes"];
        html.table(&format!("{name}: mix just before the first brush"), &names, &[1, 2, 3], &rows);
    }
    let said = format!(
        "{}; {} min on the hair, looked at all the while{}",
        step.what,
        range(&step.develop, 0),
        first::strength(step)
    );
    notes.noted(html, "p", &said, &format!("how much the step takes: {}", step.basis));
    html.marked("p", &[], "Mind:", &step.mind.join("; "));
    html.close("section");
}

/// The limit, which the page counts down to as well.
const AT_LATEST: &str = "RINSE AT LATEST";

/// The times of a step in their order, each to be ticked off.
fn times(html: &mut Html, mix: &Mix, step: &Step, clock: Clock) {
    let mut all: Vec<(Duration, String)> = Vec::new();
    let fresh = step.mix_at.len();
    for (place, at) in step.mix_at.iter().enumerate() {
        all.push((*at, if fresh > 1 { format!("mix bowl {} of {fresh}", place + 1) } else { "mix".to_owned() }));
    }
    all.push((step.begin, "begin".to_owned()));
    all.push((step.applied, "all on".to_owned()));
    let last = step.look_at_last;
    let looks = step.look_at.iter().filter(|at| **at != step.rinse_by);
    all.extend(looks.map(|at| {
        let too = last.is_some_and(|from| *at >= from);
        (*at, if too { "look, the last strand too".to_owned() } else { "look".to_owned() })
    }));
    let latest = clock.at(step.off_by, mix.stage);
    if latest == clock.at(step.rinse_by, mix.stage) {
        all.push((step.rinse_by, "RINSE BY".to_owned()));
    } else {
        all.push((step.rinse_by, format!("PLANNED RINSE, LATEST {latest}")));
        all.push((step.off_by, AT_LATEST.to_owned()));
    }
    // What is done at the same minute stays in the order in which it was named.
    all.sort_by(|a, b| a.0.min().total_cmp(&b.0.min()));
    // What is due at the same minute is one line.
    let mut lines: Vec<(Duration, String)> = Vec::new();
    for (at, what) in all {
        match lines.last_mut().filter(|(before, _)| *before == at) {
            Some((_, before)) => *before += &format!(", {what}"),
            None => lines.push((at, what)),
        }
    }
    html.open("ul", &[("class", "times")]);
    for (at, what) in lines {
        let minute = amount(clock.after_first_brush(at, mix.stage), 1);
        let named = format!("{what}, {}", step.name);
        let class = match what.as_str() {
            // On paper the planned rinse says it, and nothing counts down.
            AT_LATEST => "rinse paperless",
            _ if what.contains("RINSE") => "rinse",
            _ => "due",
        };
        html.open("li", &[("class", class), ("data-minute", &minute), ("data-what", &named)]);
        html.tick(&clock.at(at, mix.stage), &what);
        html.element("span", &[("class", "left")], "");
        html.close("li");
    }
    html.close("ul");
}

fn weigh(html: &mut Html, mix: &Mix, bowl: &Bowl, clock: Clock) {
    let grams = |mass| clock.writing().grams(mass);
    let rows: Vec<Vec<String>> = bowl
        .parts
        .iter()
        .map(|part| vec![part.product.clone(), grams(part.weigh), format!("{} g", amount(part.scale_shows, 2))])
        .collect();
    let total = grams(bowl.total);
    let within = amount(bowl.use_within, 0);
    let caption = match bowl.count {
        1 => format!("{}: one bowl of {total}, use within {within} min", mix.name),
        count => format!("{}: {count} fresh bowls of {total} each, use each within {within} min", mix.name),
    };
    html.table(&caption, &["into the tared bowl", "weigh", "the scale shows"], &[1, 2], &rows);
}
