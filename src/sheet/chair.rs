use super::{SheetPart, checks, clock::Clock, first, writing::Writing};
use crate::{
    finding::Verdict,
    quantity::{Duration, Mass},
    service::{Bowl, Mix, Plan, Start, Step, WeighedPart, WorkStage},
    text::{Sheet, amount, count, range},
};

/// What is needed at the chair, on one page: what to mind, then bowl by bowl when, what to weigh, when to look, when to rinse.
pub(super) fn chair(sheet: &mut Sheet, plan: &Plan, parts: &[SheetPart]) {
    sheet.heading("At the chair");
    for finding in checks::of(plan, Verdict::Warning) {
        checks::one(sheet, finding);
    }
    open(sheet, plan, parts);
    steps(sheet, plan);
    reminders(sheet, plan, parts);
}

/// What is unknown, in one line; with it how many notes are left to the checks.
fn open(sheet: &mut Sheet, plan: &Plan, parts: &[SheetPart]) {
    let counted = checks::rules(checks::of(plan, Verdict::NotJudged)).into_iter().map(|rule| {
        let number = checks::of(plan, Verdict::NotJudged).filter(|finding| finding.rule == rule).count();
        if number == 1 { rule.to_string() } else { format!("{rule} ({number})") }
    });
    let counted: Vec<_> = counted.collect();
    if !counted.is_empty() {
        let notes = checks::of(plan, Verdict::Note).count();
        let notes = if notes == 0 { String::new() } else { format!("; {}", count(notes, "note", "notes")) };
        let place = if parts.contains(&SheetPart::Checks) {
            "; in full under CHECKS".to_owned()
        } else {
            format!("{notes}; in full in the part `checks`")
        };
        let text = format!("[{}] {}: unknown, never passed{place}", Verdict::NotJudged, counted.join(", "));
        sheet.paragraph(&text, 7);
    }
}

fn steps(sheet: &mut Sheet, plan: &Plan) {
    let clock = Clock::of(plan);
    first::chair(sheet, plan, clock);
    for stage in [false, true] {
        let steps = plan.mixes.iter().zip(&plan.order).filter(|(mix, _)| (mix.stage != WorkStage::Section) == stage);
        for (place, (mix, step)) in steps.enumerate() {
            sheet.blank();
            if stage && place == 0 {
                sheet.line(match plan.start {
                    Start::At(_) => "After rinsing; these times are the earliest, as if rinsing took none:",
                    Start::Day(_) => "After rinsing, counted anew from its end:",
                });
            }
            one(sheet, mix, step, clock);
        }
    }
    sheet.blank();
    let times = match plan.start {
        Start::At(_) => "Times are those of the clock (minutes in a warning count from the first brush)",
        Start::Day(_) => "Times are minutes from the first brush: the file states no time of day",
    };
    let text = format!(
        "{times}, as planned; write down the real ones. In brackets: what the scale then shows. {}",
        by_the_clock(plan, clock)
    );
    sheet.paragraph(&text, 0);
    if let Some(note) = clock.writing().note() {
        sheet.paragraph(&note, 0);
    }
}

/// When to rinse: the planned minute is an estimate, and a limit only where the products' longest is no later, or not known.
pub(super) fn by_the_clock(plan: &Plan, clock: Clock) -> &'static str {
    let later = |step: &Step| clock.at(step.off_by, step.stage) != clock.at(step.rinse_by, step.stage);
    if plan.order.iter().any(later) {
        "Rinse a strand when it is there, not by the clock; at LATEST whatever it shows."
    } else {
        "Rinse a strand when it is there, not by the clock."
    }
}

fn one(sheet: &mut Sheet, mix: &Mix, step: &Step, clock: Clock) {
    let at = |when: Duration| clock.at(when, mix.stage);
    let begin = at(step.begin);
    let indent = begin.len().max(5) + 2;
    let many = |times: &[Duration]| times.iter().map(|when| at(*when)).collect::<Vec<_>>().join(" ");
    for bowl in &mix.bowls {
        let bowls = match bowl.count {
            1 => format!("a bowl of {}", grams(bowl.total)),
            count => format!("{count} fresh bowls of {} each, mixed {}", grams(bowl.total), many(&step.mix_at)),
        };
        let head = format!(
            "{begin:<indent$}{}. {}: {bowls}, {} % w/w on the hair",
            step.number,
            step.name,
            range(&bowl.on_hair, mix.decimals())
        );
        sheet.paragraph(&head, indent);
        sheet.indented(&weigh(bowl, clock.writing()), indent);
        let used = match (bowl.count, step.mix_at.first()) {
            (1, Some(mixed)) => format!("this bowl until {}", at(*mixed + bowl.use_within)),
            _ => format!("each bowl for {} min", amount(bowl.use_within, 0)),
        };
        let (planned, latest) = (at(step.rinse_by), at(step.off_by));
        let rinse = if planned == latest {
            format!("RINSE BY {planned}")
        } else {
            format!("PLANNED RINSE {planned}, LATEST {latest}")
        };
        let times = format!("all on by {}; {rinse}; {used}", at(step.applied));
        sheet.indented(&times, indent);
    }
    // A look at the rinse alone goes without saying.
    if step.look_at != [step.rinse_by] {
        let last = step.look_at_last.map(|from| format!("; last strand from {}", at(from))).unwrap_or_default();
        sheet.indented(&format!("look {}{last}", many(&step.look_at)), indent);
    }
}

/// What to weigh, in one line, and what the scale shows after each but the first.
fn weigh(bowl: &Bowl, writing: Writing) -> String {
    let part = |(place, part): (usize, &WeighedPart)| {
        let shows = if place == 0 { String::new() } else { format!(" ({})", grams(part.scale_shows)) };
        format!("{} {}{shows}", writing.grams(part.weigh), part.product)
    };
    format!("weigh {}", bowl.parts.iter().enumerate().map(part).collect::<Vec<_>>().join(", "))
}

fn grams(mass: Mass) -> String {
    format!("{} g", amount(mass, 2))
}

/// What is short enough to be read while working; in full it is a part of its own.
fn reminders(sheet: &mut Sheet, plan: &Plan, parts: &[SheetPart]) {
    let reminders: Vec<_> = plan.cautions.iter().filter_map(|caution| caution.reminder).collect();
    let place = if parts.contains(&SheetPart::Cautions) { "under CAUTIONS" } else { "part `cautions`" };
    sheet.blank();
    sheet.paragraph(&format!("Mind: {} (in full: {place}).", reminders.join("; ")), 6);
}
