use super::{
    SheetPart, bases, chair, checks, colour, day, hair, head, lapsed::lapsed, lift, mixes, money, order, stock,
    writing::Writing,
};
use crate::{
    service::{ChairClock, Plan},
    text::{Sheet, amount, list},
};
use std::fmt;

/// The plan as plain text for the bench: 80 columns, aligned, readable without colour. What is needed at the chair comes
/// first; what says STOP comes before everything.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::{parse, plan}, sheet::bench_sheet};
///
/// let file = parse(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let text = bench_sheet(&plan(&file)?);
/// assert!(text.lines().all(|line| line.chars().count() <= 80));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn bench_sheet(plan: &Plan) -> String {
    bench_sheet_of(plan, SheetPart::ALL)
}

/// The same with these parts only, in the order of the sheet. What says STOP is printed whatever is chosen, and what other
/// findings are left out is counted.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::{parse, plan}, sheet::{SheetPart, bench_sheet_of}};
///
/// let file = parse(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let page = bench_sheet_of(&plan(&file)?, SheetPart::SHORT);
/// assert!(page.contains("AT THE CHAIR") && page.contains("[WARN]"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn bench_sheet_of(plan: &Plan, parts: &[SheetPart]) -> String {
    let mut sheet = Sheet::default();
    opening(&mut sheet, plan);
    checks::stops(&mut sheet, plan);
    for told in lapsed(plan) {
        sheet.blank();
        sheet.paragraph(&told, 2);
    }
    checks::hidden(&mut sheet, plan, parts);
    for part in SheetPart::ALL.iter().filter(|part| parts.contains(part)) {
        match part {
            SheetPart::Chair => chair::chair(&mut sheet, plan, parts),
            SheetPart::Checks => checks::checks(&mut sheet, plan, parts),
            SheetPart::Bowls => mixes::mixes(&mut sheet, plan),
            SheetPart::Order => order::order(&mut sheet, plan),
            SheetPart::Day => day::day(&mut sheet, plan),
            SheetPart::Colour => colour::colour(&mut sheet, plan),
            SheetPart::Lift => lift::lift(&mut sheet, plan),
            SheetPart::Head => head::head(&mut sheet, plan),
            SheetPart::Stock => stock::stock(&mut sheet, plan),
            SheetPart::Hair => hair::hair(&mut sheet, plan),
            SheetPart::Money => money::money(&mut sheet, plan),
            SheetPart::Cautions => bases::cautions(&mut sheet, plan),
            SheetPart::Defaults => bases::defaults(&mut sheet, plan),
            SheetPart::Unknowns => bases::unknowns(&mut sheet, plan),
            SheetPart::Sources => bases::sources(&mut sheet, plan),
        }
    }
    sheet.blank();
    sheet.line(&format!("foilwork {}", plan.foilwork));
    sheet.finish()
}

/// The bench sheet.
impl fmt::Display for Plan {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&bench_sheet(self))
    }
}

fn opening(sheet: &mut Sheet, plan: &Plan) {
    sheet.title(&format!("BENCH SHEET  {}", plan.title));
    let mut facts = vec![format!("starts {}", Writing::of(plan.habits).start(plan.start))];
    facts.extend(plan.guest.as_ref().map(|guest| format!("guest {guest}")));
    facts.extend(plan.colourist.as_ref().map(|colourist| format!("colourist {colourist}")));
    facts.push(match &plan.jurisdiction {
        Some(jurisdiction) => format!("law of {jurisdiction}"),
        None => "no jurisdiction stated".to_owned(),
    });
    sheet.paragraph(&facts.join("   "), 0);
    sheet.paragraph(&chair_time(plan), 0);
    if let Some(notes) = &plan.notes {
        sheet.paragraph(&format!("Notes: {notes}"), 7);
    }
}

/// How long the guest is there, until when, and what that counts.
pub(super) fn chair_time(plan: &Plan) -> String {
    let chair = &plan.chair;
    let takes = plan.booking.book.unwrap_or(plan.chair.total);
    let until = plan.start.plus(takes).map(|at| Writing::of(plan.habits).time(at));
    let minutes = amount(takes, 0);
    let unknown = "consultation, drying, for which the file states no `other_work_min`";
    let opening = match (chair.other_work, until) {
        (None, _) => format!("book {minutes} min and {unknown}"),
        (Some(_), Some(until)) => format!("finished at {until}, if all goes as planned: book {minutes} min"),
        (Some(_), None) => format!("book {minutes} min"),
    };
    let other = chair.other_work.map(|other| format!("{} min of other work", amount(other, 0)));
    let work = ["bowls", "looks", "walks", "rinses"].map(str::to_owned);
    match (chair.clock, other) {
        (ChairClock::Day, other) => {
            let counted = list(work.into_iter().chain(other), "and");
            format!("{opening}, with {counted}; the times below count none of these")
        }
        (ChairClock::Sheet, Some(other)) => format!("{opening}, with {other}; {} are not in it", list(work, "and")),
        (ChairClock::Sheet, None) => format!("{opening}; {} are not in it", list(work, "and")),
    }
}
