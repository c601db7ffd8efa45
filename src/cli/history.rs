//! `foilwork history`: many services summed up, and what they teach.

use super::{
    Outcome, Refusal,
    args::HistoryArgs,
    output,
    reactions::{self, WentWrong},
    read, records,
};
use crate::{
    history::{
        CountedOnce, GroupBy, KeptRecord, Learned, Lessons, Summary, counted_once, lessons, records_csv,
        strand_readings, summarise, trace_lessons, trace_summaries,
    },
    lift::strand_line,
    text::{Sheet, count, number},
};
use serde::Serialize;

/// What the command says as data.
#[derive(Serialize)]
struct Told<'t> {
    records: usize,
    went_wrong: &'t [WentWrong<'t>],
    summaries: &'t [Summary],
    lessons: &'t Lessons,
    left_out: &'t [String],
}

pub(super) fn run(args: &HistoryArgs) -> Outcome {
    let by: GroupBy = read::option("--by", &args.by)?;
    if let Some(path) = args.strands.as_ref().filter(|path| path.is_file()) {
        let way_out = "name a new file, and join the two yourself";
        return Err(Refusal(format!("--strands: {} is there already and would be lost: {way_out}", path.display())));
    }
    let (mut found, left_out) = records::read(&args.paths)?;
    if let Some(guest) = &args.guest {
        found.retain(|record| record.guest.as_deref() == Some(guest.trim()));
    }
    if found.is_empty() {
        let why = left_out.first().map(|why| format!("; {why}")).unwrap_or_default();
        return Err(Refusal(format!("no record is there (keep one with foilwork record --keep){why}")));
    }
    if let Some(path) = &args.strands {
        let lines: String = strand_readings(&found).iter().map(|one| strand_line(Some(one))).collect();
        output::write(path, &(strand_line(None) + &lines))?;
    }
    found.sort_by(|a, b| a.on.cmp(&b.on));
    let CountedOnce { records: once, .. } = counted_once(&found);
    if args.csv {
        return output::deliver(records_csv(&once), 0, &args.report.output);
    }
    let trail = || {
        let all = trace_summaries(&found, by).into_iter().chain(trace_lessons(&found));
        Ok::<_, Refusal>(all.collect())
    };
    if let Some(told) = output::traced((&args.trail, &args.report), 0, trail) {
        return told;
    }
    let (summaries, lessons) = (summarise(&found, by), lessons(&found));
    let went_wrong = reactions::of(&once);
    let data = Told {
        records: once.len(),
        went_wrong: &went_wrong,
        summaries: &summaries,
        lessons: &lessons,
        left_out: &left_out,
    };
    output::report(&args.report, &data, || {
        let mut sheet = Sheet::default();
        sheet.title(&format!("HISTORY  {}", count(once.len(), "service", "services")));
        for why in &left_out {
            sheet.paragraph(&format!("Left out: {why}."), 2);
        }
        reactions::told(&mut sheet, &went_wrong);
        if args.guest.is_some() {
            guest(&mut sheet, &once);
        }
        for one in &summaries {
            summary(&mut sheet, one);
        }
        learned(&mut sheet, &lessons);
        sheet.finish()
    })
}

/// The services of a guest, as a consultation takes them.
fn guest(sheet: &mut Sheet, records: &[KeptRecord]) {
    sheet.heading("Earlier services, for the consultation of the next");
    for record in records.iter().rev() {
        for section in &record.section {
            let parts: Vec<String> =
                section.part.iter().map(|part| format!("{} g {}", number(part.mass_g, 1), part.product)).collect();
            let twice = section.applications.filter(|times| *times > 1);
            let twice = twice.map(|times| format!(" in {times} applications")).unwrap_or_default();
            let min = section.on_hair_min.map(|min| format!(", {} min", number(min, 0))).unwrap_or_default() + &twice;
            let result =
                section.result_level.map(|level| format!(", to level {}", number(level, 1))).unwrap_or_default();
            let toned = section.toned_level.map(|level| format!(", level {} with its toner", number(level, 1)));
            let result = result + &toned.unwrap_or_default();
            let text = format!("{} {}: {}{min}{result}", record.on, section.name, parts.join(" + "));
            sheet.paragraph(&text, 2);
        }
    }
}

fn summary(sheet: &mut Sheet, one: &Summary) {
    sheet.heading(if one.of.is_empty() { "not stated" } else { &one.of });
    let services = count(one.services, "service", "services");
    let unknown = |value: Option<String>| value.unwrap_or_else(|| "unknown".to_owned());
    let guests = match (one.guests, one.without_guest) {
        (0, _) => "guests not stated".to_owned(),
        (guests, 0) => count(guests, "guest", "guests"),
        (guests, more) => format!("{}, {more} without a code", count(guests, "guest", "guests")),
    };
    let hours = unknown(one.chair_min.map(|min| format!("{} h", number(min / 60.0, 1))));
    let putting_on = unknown(one.applying_min.map(|min| format!("{} min", number(min, 0))));
    sheet.paragraph(
        &format!("{services}, {guests}; in the chair as planned {hours}, putting on as noted {putting_on}."),
        0,
    );
    let grams = |mass_g: Option<f64>| unknown(mass_g.map(|mass_g| format!("{} g", number(mass_g, 1))));
    let waste = unknown(one.waste_percent.map(|percent| format!("{} %", number(percent, 1))));
    sheet.paragraph(
        &format!("Weighed {}, left over {}; waste {waste}.", grams(one.weighed_g), grams(one.left_over_g)),
        0,
    );
    for takings in &one.money {
        let margin = takings.margin_percent.map(|percent| format!(", margin {percent} %")).unwrap_or_default();
        let text = format!(
            "{} net for {}, cost {}, profit {}{margin}.",
            takings.price,
            count(takings.services, "service", "services"),
            takings.cost,
            takings.profit
        );
        sheet.paragraph(&text, 0);
        if let Some(left) = takings.left_over {
            let services = count(takings.left_over_services, "service", "services");
            sheet.paragraph(&format!("Of that cost {left} was left over, in {services} that say so."), 0);
        }
    }
    let used = one.used.iter().take(12).map(|part| format!("{} {} g", part.product, number(part.mass_g, 1)));
    let used: Vec<String> = used.collect();
    if !used.is_empty() {
        let how = if one.as_planned > 0 { "Used, as planned where nobody weighed" } else { "Used" };
        sheet.paragraph(&format!("{how}: {}.", used.join(", ")), 2);
    }
    if one.incidents > 0 {
        sheet.line(&format!("{} kept.", count(one.incidents, "reaction or stop", "reactions and stops")));
    }
}

fn learned(sheet: &mut Sheet, lessons: &Lessons) {
    sheet.heading("What they teach");
    for one in &lessons.demand {
        let technique = one.technique.map_or_else(|| "all sections".to_owned(), |technique| technique.to_string());
        sheet.paragraph(&format!("Grams used over grams expected, {technique}: {}", figure(&one.factor, 2)), 2);
    }
    for one in &lessons.foils {
        let who = one.colourist.as_deref().unwrap_or("nobody named");
        sheet.paragraph(&format!("Minutes for a foil, {who}: {}", figure(&one.min_per_foil, 2)), 2);
    }
    if let Some(waste) = &lessons.waste {
        let change =
            match (waste.change_percent_points, waste.change_low_percent_points, waste.change_high_percent_points) {
                (Some(change), Some(low), Some(high)) => {
                    format!("; {} points in 30 days ({} to {})", number(change, 1), number(low, 1), number(high, 1))
                }
                _ => String::new(),
            };
        sheet.paragraph(&format!("Waste: {}{change}.", waste.text), 2);
    }
    if let Some(weeks) = &lessons.weeks_between_visits {
        sheet.paragraph(&format!("Weeks between two visits of a guest: {}", figure(weeks, 1)), 2);
    }
    if let Some(off) = &lessons.level_off {
        sheet.paragraph(&format!("Levels that came out less levels wanted: {}", figure(off, 2)), 2);
    }
    if lessons.put_on_again > 0 {
        let sections = count(lessons.put_on_again, "section", "sections");
        sheet.paragraph(&format!("Put on more than once, left out of grams and levels: {sections}."), 2);
    }
    if lessons.read_toned > 0 {
        let sections = count(lessons.read_toned, "section", "sections");
        let text = format!("Read with the toner on, which darkens, left out of levels and strand books: {sections}.");
        sheet.paragraph(&text, 2);
    }
}

/// A figure with how well it is known and where the next will lie.
fn figure(of: &Learned, decimals: usize) -> String {
    let mean = number(of.mean, decimals);
    match (of.mean_low, of.mean_high, of.next_low, of.next_high) {
        (Some(low), Some(high), Some(next_low), Some(next_high)) => format!(
            "{mean} ({} to {}), the next {} to {}; {} noted.",
            number(low, decimals),
            number(high, decimals),
            number(next_low, decimals),
            number(next_high, decimals),
            of.count
        ),
        _ => format!("{mean}, one noted: too few for an interval."),
    }
}
