//! `foilwork day --log`: what is left of a service from where its log stands.

use super::{BLOCKED, Outcome, Refusal, again, args::DayArgs, input, output, plan::Loaded};
use crate::{
    finding::Verdict,
    record::{RestOfService, after_levels, levels_seen, read_log, replay, rest_of_service},
    service::{Plan, ServiceFile},
    sheet,
    text::{Sheet, amount, whole_minutes},
};
use std::path::Path;

pub(super) fn run(args: &DayArgs, log: &Path) -> Outcome {
    let [file] = args.files.as_slice() else {
        return Err(Refusal("--log: one log belongs to one guest: name one file".to_owned()));
    };
    let change = |file: &mut ServiceFile| {
        file.salon.people = args.people.or(file.salon.people);
        file.salon.basins = args.basins.or(file.salon.basins);
    };
    let log = read_log(&input::read_grown(log)?);
    let so_far = replay(&log.entries);
    let loaded = Loaded::read(file)?;
    let before = loaded.plan(&[], change)?;
    let seen = levels_seen(&before, &so_far);
    let moved = if seen.levels.is_empty() { before } else { loaded.plan(&seen.levels, change)? };
    let levels = after_levels(&moved, &so_far);
    let mut found = rest_of_service(&moved, &so_far, &levels);
    found.left_out.extend(seen.left_out.iter().map(ToString::to_string));
    found.left_out.extend(log.problems.iter().map(ToString::to_string));
    let off = !found.at_once.is_empty() || !found.overdue.is_empty();
    let stops = moved.blocked
        || off
        || found.timeline.is_none()
        || found.instructions.iter().any(|one| one.verdict == Verdict::Stop);
    let text = if args.report.json { output::json(&found)? } else { told(&moved, &found) };
    output::deliver(text, if stops { BLOCKED } else { 0 }, &args.report.output)
}

fn told(plan: &Plan, found: &RestOfService) -> String {
    let mut sheet = Sheet::default();
    sheet.title(&format!("FROM MINUTE {} ON  {}", amount(found.now, 0), plan.title));
    for what in &found.left_out {
        sheet.paragraph(&format!("Left out: {what}."), 2);
    }
    for stop in again::plan_stops(plan) {
        sheet.paragraph(&stop, 7);
    }
    for one in &found.instructions {
        sheet.paragraph(&format!("[{}] {} [{}]", one.verdict, one.told(), one.basis), 7);
    }
    for one in &found.levels {
        let again = one.look_again.map(|at| format!("; look again at {}", whole_minutes(at))).unwrap_or_default();
        let text = format!("{} at minute {}: {}: {}{again}", one.section, amount(one.at, 0), one.next, one.why);
        sheet.paragraph(&text, 2);
    }
    for one in &found.at_once {
        sheet.paragraph(&format!("*** RINSE NOW: {} ***", one.replacen("rinse now: ", "", 1)), 4);
    }
    for one in &found.overdue {
        sheet.paragraph(&format!("*** OVERDUE: {one} cannot be rinsed within its longest time: rinse it first ***"), 4);
    }
    let Some(timeline) = &found.timeline else {
        sheet.paragraph(&format!("No order: {}.", found.why_not.as_deref().unwrap_or("unknown")), 0);
        return sheet.finish();
    };
    sheet.heading("What is left, in minutes of the log");
    if timeline.sections.is_empty() {
        sheet.line("All is rinsed.");
        return sheet.finish();
    }
    sheet::day_times(&mut sheet, timeline);
    sheet.blank();
    let rules = plan.day.as_ref().map(|day| day.rules.as_slice()).unwrap_or_default();
    let proof = sheet::day_proof(timeline, rules, &format!("minute {}", amount(timeline.bound, 0)));
    let text = format!(
        "All rinsed at minute {} ({proof}). Rinse a strand when it is there, not when the clock says so.",
        amount(timeline.finish, 0)
    );
    sheet.paragraph(&text, 0);
    if let Some(kept) = sheet::day_rules(rules) {
        sheet.paragraph(&kept, 0);
    }
    sheet.heading("Piece by piece");
    sheet::day_pieces(&mut sheet, timeline);
    sheet.finish()
}
