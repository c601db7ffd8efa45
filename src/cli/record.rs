use super::{BLOCKED, Outcome, args::RecordArgs, input, output, plan};
use crate::{
    finding::Verdict,
    record::{self, Noted, Record, ServiceLog, read_log, replay},
    service::Plan,
    text::{Sheet, amount, number},
};

/// `foilwork record`: what happened beside what was planned.
pub(super) fn run(args: &RecordArgs) -> Outcome {
    let log = read_log(&input::read_grown(&args.log)?);
    let seen = |entry: &record::LogEntry| {
        let level = entry.level.filter(|_| entry.what == Noted::Seen)?.number();
        Some(format!("{}={level}@{}", entry.section.as_deref()?, entry.at.min()))
    };
    let seen: Vec<String> = log.entries.iter().filter_map(seen).collect();
    let plan = plan::made(&args.file, &seen)?;
    let found = record::record(&plan, &replay(&log.entries));
    let stops = found.instructions.iter().any(|one| one.verdict == Verdict::Stop);
    let text = if args.report.json { output::json(&found)? } else { told(&plan, &log, &found) };
    output::deliver(text, if stops { BLOCKED } else { 0 }, &args.report.output)
}

fn told(plan: &Plan, log: &ServiceLog, found: &Record) -> String {
    let mut sheet = Sheet::default();
    sheet.title(&format!("RECORD  {}", found.title));
    for problem in &log.problems {
        sheet.paragraph(&format!("Left out: {problem}."), 2);
    }
    for one in &found.instructions {
        let section = one.section.as_deref().map(|name| format!("{name}: ")).unwrap_or_default();
        sheet.paragraph(&format!("[{}] {section}{} [{}]", one.verdict, one.text, one.basis), 7);
    }
    for lift in &plan.lift {
        for seen in &lift.seen {
            let again = seen.look_again.map(|at| format!("; look again at {}", amount(at, 0))).unwrap_or_default();
            let text = format!("{} at minute {}: {}: {}{again}", lift.section, amount(seen.at, 0), seen.next, seen.why);
            sheet.paragraph(&text, 2);
        }
    }
    sheet.heading("Planned and actual");
    let rows = found.pairs.iter().map(|pair| {
        let (planned, actual) = (number(pair.planned, 1), number(pair.actual, 1));
        vec![pair.section.clone(), pair.what.to_string(), planned, actual, pair.words.clone()]
    });
    sheet.table(&["section", "what", "planned", "actual", ""], &[2, 3], rows.collect());
    sheet.blank();
    if let Some(even) = &found.evenness {
        let spread = number(even.spread_levels, 2);
        sheet.paragraph(&format!("Evenness against the targets: {spread} levels apart; {}.", even.text), 0);
    }
    match found.model_error_levels {
        Some(error) => sheet.paragraph(
            &format!(
                "The forecast was off by {} levels in the mean; {} of {} inside its interval.",
                number(error, 2),
                found.inside_interval,
                found.forecasts
            ),
            0,
        ),
        None => sheet.line("No level that a section came to is noted: the forecast cannot be judged."),
    }
    sheet.heading("To repeat it");
    for line in &found.to_repeat {
        sheet.paragraph(line, 2);
    }
    sheet.finish()
}
