use super::{Answer, BLOCKED, Outcome, Refusal, again, append::append, args::NoteArgs, input, plan::Loaded, read};
use crate::{
    colour::Level,
    finding::Verdict,
    quantity::{Duration, Mass},
    record::{
        Again, LogEntry, Noted, corrected, instructed, instructions, levels_seen, log_line, read_log, replay,
        second_applications, strange,
    },
    text::{Sheet, amount, inert, list},
};

/// `foilwork note`: a line of the log, and what follows from all of them.
pub(super) fn run(args: &NoteArgs) -> Outcome {
    let entry = entry(args)?.checked()?;
    // A plan that cannot be made is told before anything is written.
    let loaded = args.plan.as_deref().map(Loaded::read).transpose()?;
    let before = loaded.as_ref().map(|loaded| loaded.plan(&[], |_| ())).transpose()?;
    if let Some((name, plan)) = args.section.as_ref().zip(before.as_ref())
        && plan.mixes.iter().all(|mix| mix.name != *name)
    {
        let names: Vec<&str> = plan.mixes.iter().map(|mix| mix.name.as_str()).collect();
        let has = list(&names, "and");
        return Err(Refusal(format!(
            "--section: the plan has no \"{}\": it has {has} (nothing is noted)",
            inert(name)
        )));
    }
    let failed = |error: std::io::Error| Refusal(format!("cannot write {}: {error}", args.log.display()));
    append(&args.log, "", &log_line(&entry), |text| !read_log(text).entries.is_empty()).map_err(failed)?;
    let log = read_log(&input::read_grown(&args.log)?);
    let so_far = replay(&log.entries);
    let earlier = log.entries.split_last().map(|(_, earlier)| replay(earlier));
    let corrects = earlier.map(|earlier| corrected(&earlier, &so_far, &entry)).unwrap_or_default();
    let mut text = format!("noted: minute {}, {}{corrects}\n", amount(entry.at, 1), entry.what);
    for problem in &log.problems {
        text += &format!("left out: {problem}\n");
    }
    let mut taught = Vec::new();
    let moved = loaded.zip(before).map(|(loaded, before)| {
        let seen = levels_seen(&before, &so_far);
        taught = seen.left_out;
        // The line is written by now: levels that no plan takes are told, and the rest is answered.
        loaded.plan(&seen.levels, |_| ()).unwrap_or_else(|Refusal(why)| {
            text += &format!("left out: the levels of the log: {why}\n");
            before
        })
    });
    let follows = moved.as_ref().map_or_else(|| instructions(&so_far), |plan| instructed(plan, &so_far));
    let mut stops = follows.iter().any(|one| one.verdict == Verdict::Stop);
    for one in follows {
        text += &format!("[{}] {}\n", one.verdict, one.told());
    }
    if let Some(moved) = moved {
        stops |= moved.blocked;
        // This line is told above.
        let mut others = so_far.clone();
        others.left_out.retain(|line| *line != entry);
        for what in strange(&moved, &others) {
            text += &format!("left out: {what}\n");
        }
        for stop in again::plan_stops(&moved) {
            text += &format!("{stop}\n");
        }
        let mut all = second_applications(&moved, &so_far);
        // A line about one section is answered for that section.
        all.retain(|one| args.section.as_ref().is_none_or(|name| *name == one.section));
        stops |= all.iter().any(|one| one.decision == Again::TreatOnly);
        // A level that decides nothing says why.
        if all.is_empty() {
            for what in taught.iter().filter(|what| what.is_of(&entry)) {
                text += &format!("{what}; nothing follows from it\n");
            }
        }
        let mut sheet = Sheet::default();
        again::told(&mut sheet, &all);
        text += &sheet.finish();
    }
    Ok(Answer { text, status: if stops { BLOCKED } else { 0 } })
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
