use super::{BLOCKED, Outcome, Refusal, again, append::append, args::RecordArgs, input, output, plan::Loaded};
use crate::{
    finding::Verdict,
    history::{
        HomeCare, Rebooking, home_care, keep, left_over_cost, left_over_wrong, read_records, rebooking, record_line,
    },
    money::Money,
    record::{
        self, AfterLevel, Again, Instruction, LogProblem, Record, SecondApplication, after_levels, levels_seen,
        read_log, replay, second_applications, trace_record,
    },
    text::{Sheet, amount, list, number, range, whole_minutes},
};
use serde::Serialize;
use std::path::Path;

/// What the command says as data.
#[derive(Serialize)]
struct Told<'t> {
    #[serde(flatten)]
    record: &'t Record,
    second_applications: &'t [SecondApplication],
    left_over_cost: Option<Money>,
    home_care: &'t HomeCare,
    rebooking: Option<&'t Rebooking>,
}

/// `foilwork record`: what happened beside what was planned.
pub(super) fn run(args: &RecordArgs) -> Outcome {
    let log = read_log(&input::read_grown(&args.log)?);
    let so_far = replay(&log.entries);
    let loaded = Loaded::read(&args.file)?;
    // A forecast that the levels of this service have moved is no forecast of it.
    let before = loaded.plan(&[], |_| ())?;
    let mut found = record::record(&before, &so_far);
    if let Some(path) = &args.keep {
        kept(path, &log.problems, &record_line(&keep(&before, &so_far)))?;
    }
    let care = home_care(&before, &so_far);
    let trace = trace_record(&before, &so_far);
    let left = left_over_cost(&before, &so_far);
    found.left_out.extend(left_over_wrong(&before, &so_far));
    let seen = levels_seen(&before, &so_far);
    found.left_out.extend(seen.left_out.iter().map(ToString::to_string));
    found.left_out.extend(log.problems.iter().map(ToString::to_string));
    let back = rebooking(&before).map(|back| {
        let trail = back.trail(&before);
        (back, trail)
    });
    let moved = if seen.levels.is_empty() { before } else { loaded.plan(&seen.levels, |_| ())? };
    let again = second_applications(&moved, &so_far);
    let plan_stops = again::plan_stops(&moved).collect::<Vec<_>>();
    // What was stopped is not repeated, and no day is named for it.
    let stop = stop(&found, &plan_stops);
    let (back, returns) = back.filter(|_| stop.is_none()).unzip();
    let stops = moved.blocked || stop.is_some() || again.iter().any(|one| one.decision == Again::TreatOnly);
    let status = if stops { BLOCKED } else { 0 };
    let trail = trace.into_iter().chain(returns).collect();
    if let Some(told) = output::traced((&args.trail, &args.report), status, || Ok::<_, Refusal>(trail)) {
        return told;
    }
    let text = if args.report.json {
        output::json(&Told {
            record: &found,
            second_applications: &again,
            left_over_cost: left,
            home_care: &care,
            rebooking: back.as_ref(),
        })?
    } else {
        told(&found, (&plan_stops, stop.as_deref()), &after_levels(&moved, &so_far), &again)
            + &left_over(left)
            + &after(back.as_ref(), &care, stop.as_deref())
    };
    output::deliver(text, status, &args.report.output)
}

/// Keeps a record that says all that the log says, and that is read back as it is.
fn kept(path: &Path, problems: &[LogProblem], line: &str) -> Result<(), Refusal> {
    if let Some(problem) = problems.first() {
        let text = format!(
            "--keep: not all of the log can be read: {problem} (note again what it said, and take that line out of the \
                            log; nothing is kept)"
        );
        return Err(Refusal(text));
    }
    if let Some(problem) = read_records(line).problems.first() {
        let text =
            format!("--keep: what the log says cannot be: {} (correct the log; nothing is kept)", problem.message);
        return Err(Refusal(text));
    }
    let failed = |error: std::io::Error| Refusal(format!("cannot write {}: {error}", path.display()));
    append(path, "", line, |text| !read_records(text).records.is_empty()).map_err(failed)
}

/// The first of what the log or the plan says stop to.
fn stop(found: &Record, plan_stops: &[String]) -> Option<String> {
    let of_log = found.instructions.iter().find(|one| one.verdict == Verdict::Stop);
    of_log.map(Instruction::told).or_else(|| plan_stops.first().cloned())
}

fn told(
    found: &Record,
    (plan_stops, stop): (&[String], Option<&str>),
    levels: &[AfterLevel],
    second: &[SecondApplication],
) -> String {
    let mut sheet = Sheet::default();
    sheet.title(&format!("RECORD  {}", found.title));
    for what in &found.left_out {
        sheet.paragraph(&format!("Left out: {what}."), 2);
    }
    for stop in plan_stops {
        sheet.paragraph(stop, 7);
    }
    for one in &found.instructions {
        sheet.paragraph(&format!("[{}] {} [{}]", one.verdict, one.told(), one.basis), 7);
    }
    for one in levels {
        let again = one.look_again.map(|at| format!("; look again at {}", whole_minutes(at))).unwrap_or_default();
        let text = format!("{} at minute {}: {}: {}{again}", one.section, amount(one.at, 0), one.next, one.why);
        sheet.paragraph(&text, 2);
    }
    if !second.is_empty() {
        sheet.heading("A second application");
        again::told(&mut sheet, second);
    }
    sheet.heading("Planned and actual");
    let rows = found.pairs.iter().map(|pair| {
        let (planned, actual) = (number(pair.planned, 1), number(pair.actual, 1));
        vec![pair.section.clone(), pair.what.to_string(), planned, actual, pair.words.clone()]
    });
    if found.pairs.is_empty() {
        sheet.line("Nothing is noted that can be held against the plan.");
    } else {
        sheet.table(&["section", "what", "planned", "actual", ""], &[2, 3], rows.collect());
    }
    sheet.blank();
    if let Some(even) = &found.evenness {
        let spread = number(even.spread_levels, 2);
        let text = format!("Evenness against the targets: {spread} levels apart; {} [{}].", even.text, even.basis);
        sheet.paragraph(&text, 0);
    }
    forecast(&mut sheet, found);
    match stop {
        Some(why) => {
            sheet.heading("What was on");
            sheet.paragraph(&format!("Do not repeat it: {why}."), 2);
        }
        None => sheet.heading("To repeat it"),
    }
    if found.to_repeat.is_empty() {
        sheet.line("Nothing is noted of a section of the plan.");
    }
    for line in &found.to_repeat {
        sheet.paragraph(line, 2);
    }
    sheet.finish()
}

/// What was paid for and thrown away.
fn left_over(left: Option<Money>) -> String {
    left.map(|left| format!("\nLeft over for {left}, which the cost of the service holds.\n")).unwrap_or_default()
}

/// What follows the service: care at home, and when to come back.
fn after(back: Option<&Rebooking>, care: &HomeCare, stop: Option<&str>) -> String {
    let mut sheet = Sheet::default();
    sheet.heading("At home");
    sheet.paragraph(&format!("Condition: {}.", care.condition), 2);
    for one in &care.advice {
        sheet.paragraph(&format!("{} ({}) [{}]", one.text, one.why, one.basis), 2);
    }
    if let Some(back) = back {
        sheet.heading("To come back");
        let weeks = range(&back.after, 0);
        let text = format!(
            "Regrowth shows after {weeks} weeks: about {}, {} at the earliest, {} at the latest; {} [{}]",
            back.usual, back.earliest, back.latest, back.why, back.basis
        );
        sheet.paragraph(&text, 2);
    }
    if let Some(why) = stop {
        sheet.heading("To come back");
        sheet.paragraph(&format!("No day by the regrowth is named, for it was stopped: {why}."), 2);
    }
    sheet.finish()
}

/// How the forecast that was made before the service stands.
fn forecast(sheet: &mut Sheet, found: &Record) {
    match found.model_error_levels {
        Some(error) => sheet.paragraph(
            &format!(
                "The forecast made before the service was off by {} levels in the mean; {} of {} inside its interval.",
                number(error, 2),
                found.inside_interval,
                found.forecasts
            ),
            0,
        ),
        None if found.not_judged.is_empty() => {
            sheet.line("No level that a section came to is noted: the forecast cannot be judged.");
        }
        None => {}
    }
    if !found.for_planned_time.is_empty() {
        let names = list(&found.for_planned_time, "and");
        sheet.paragraph(&format!("For the time planned, as their own is not noted: {names}."), 2);
    }
    for why in &found.not_judged {
        sheet.paragraph(&format!("Forecast not judged: {why}."), 2);
    }
}
