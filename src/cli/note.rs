use super::{Answer, Outcome, Refusal, again, append::append, args::NoteArgs, input, plan::Loaded, read};
use crate::{
    colour::Level,
    quantity::{Duration, Mass},
    record::{LogEntry, Noted, instructions, levels_seen, log_line, read_log, replay, second_applications},
    text::{Sheet, amount},
};

/// `foilwork note`: a line of the log, and what follows from all of them.
pub(super) fn run(args: &NoteArgs) -> Outcome {
    let entry = entry(args)?.checked()?;
    let failed = |error: std::io::Error| Refusal(format!("cannot write {}: {error}", args.log.display()));
    append(&args.log, "", &log_line(&entry)).map_err(failed)?;
    let log = read_log(&input::read_grown(&args.log)?);
    let mut text = format!("noted: minute {}, {}\n", amount(entry.at, 1), entry.what);
    for problem in &log.problems {
        text += &format!("left out: {problem}\n");
    }
    for one in instructions(&replay(&log.entries)) {
        let section = one.section.map(|name| format!("{name}: ")).unwrap_or_default();
        text += &format!("[{}] {section}{}\n", one.verdict, one.text);
    }
    if let Some(file) = &args.plan {
        let (loaded, so_far) = (Loaded::read(file)?, replay(&log.entries));
        let seen = levels_seen(&loaded.plan(&[], |_| ())?, &so_far);
        let mut all = second_applications(&loaded.plan(&seen.levels, |_| ())?, &so_far);
        // A line about one section is answered for that section.
        all.retain(|one| args.section.as_ref().is_none_or(|name| *name == one.section));
        let mut sheet = Sheet::default();
        again::told(&mut sheet, &all);
        text += &sheet.finish();
    }
    Ok(Answer::fine(text))
}

fn entry(args: &NoteArgs) -> Result<LogEntry, Refusal> {
    let flags = [
        (args.begun, Noted::Begun),
        (args.applied, Noted::Applied),
        (args.rinsed, Noted::Rinsed),
        (args.seen.is_some(), Noted::Seen),
        (args.comfort.is_some(), Noted::Comfort),
        (args.foil.is_some(), Noted::Foil),
        (args.elasticity.is_some(), Noted::Elasticity),
        (args.weighed.is_some(), Noted::Weighed),
        (args.left_over.is_some(), Noted::LeftOver),
        (args.result.is_some(), Noted::Result),
    ];
    let what = flags.into_iter().find(|(given, _)| *given).map_or(Noted::Incident, |(_, what)| what);
    let level = args.seen.or(args.result).map(Level::new).transpose()?;
    let mass = args.weighed.or(args.left_over).map(Mass::from_g).transpose()?;
    Ok(LogEntry {
        section: args.section.clone(),
        level,
        tone: args.tone.clone(),
        comfort: args.comfort.as_deref().map(|word| read::option("--comfort", word)).transpose()?,
        foil: args.foil.as_deref().map(|word| read::option("--foil", word)).transpose()?,
        elasticity: args.elasticity.as_deref().map(|word| read::option("--elasticity", word)).transpose()?,
        mass,
        note: args.incident.clone(),
        ..LogEntry::new(Duration::from_min(args.at)?, what)
    })
}
