//! `foilwork day`: who does what when, as text, data or a picture; several guests on one floor.

use super::{BLOCKED, Outcome, Refusal, args::DayArgs, output, plan, rest};
use crate::{
    chart::{DayChart, day_chart},
    day::{Floor, SECTIONS_AT_MOST, SharedFloor, Timeline, share_floor},
    service::{DayPlan, Plan},
    sheet,
    text::{Sheet, amount},
};

pub(super) fn run(args: &DayArgs) -> Outcome {
    if let Some(log) = &args.log {
        return rest::run(args, log);
    }
    let plans: Vec<Plan> = args
        .files
        .iter()
        .map(|file| {
            plan::Loaded::read(file)?.plan(&[], |file| {
                file.salon.people = args.people.or(file.salon.people);
                file.salon.basins = args.basins.or(file.salon.basins);
            })
        })
        .collect::<Result<_, Refusal>>()?;
    let status = if plans.iter().any(|plan| plan.blocked) { BLOCKED } else { 0 };
    let [plan] = plans.as_slice() else { return shared(args, &plans, status) };
    let day = day_of(plan)?;
    if args.trail.trail {
        best(plan, day)?;
        let trail = output::trail(&plan.trail_of_day(), args.report.json)?;
        return output::deliver(trail, status, &args.report.output);
    }
    let text = match (args.svg, args.report.json) {
        (true, _) => picture(plan, best(plan, day)?),
        (false, true) => output::json(day)?,
        (false, false) => sheet::day_sheet(plan),
    };
    output::deliver(text, status, &args.report.output)
}

fn day_of(plan: &Plan) -> Result<&DayPlan, Refusal> {
    let many =
        || Refusal(format!("{}: more sections than a day is arranged for: {SECTIONS_AT_MOST} at most", plan.title));
    plan.day.as_ref().ok_or_else(many)
}

/// The proposed order, or why there is none.
fn best<'p>(plan: &Plan, day: &'p DayPlan) -> Result<&'p Timeline, Refusal> {
    let why = || day.proposed_why_not.clone().unwrap_or_default();
    day.proposed.as_ref().ok_or_else(|| Refusal(format!("{}: no order: {}", plan.title, why())))
}

fn picture(plan: &Plan, timeline: &Timeline) -> String {
    day_chart(&DayChart { title: &plan.title, timeline })
}

/// Several guests.
fn shared(args: &DayArgs, plans: &[Plan], status: u8) -> Outcome {
    if args.svg {
        return Err(Refusal("--svg: one picture shows one guest: name one file".to_owned()));
    }
    let days: Vec<Timeline> =
        plans.iter().map(|plan| Ok(best(plan, day_of(plan)?)?.clone())).collect::<Result<_, Refusal>>()?;
    let floor = plans.first().map(|plan| Ok::<Floor, Refusal>(day_of(plan)?.floor)).transpose()?.unwrap_or_default();
    let found = share_floor(&days, &floor)?;
    let text = if args.report.json { output::json(&found)? } else { told(plans, &found, floor) };
    output::deliver(text, status, &args.report.output)
}

fn told(plans: &[Plan], found: &SharedFloor, floor: Floor) -> String {
    let mut sheet = Sheet::default();
    sheet.title(&format!("THE FLOOR  {} people, {} basins", floor.people, floor.basins));
    for plan in plans.iter().filter(|plan| plan.blocked) {
        let name = plan.guest.as_ref().unwrap_or(&plan.title);
        sheet.paragraph(&format!("*** DO NOT BEGIN {name}: the plan says STOP (foilwork plan tells why). ***"), 4);
    }
    let rows = plans.iter().zip(&found.guests).map(|(plan, guest)| {
        let name = plan.guest.clone().unwrap_or_else(|| plan.title.clone());
        vec![name, amount(guest.start, 0), amount(guest.finish, 0)]
    });
    sheet.table(&["guest", "begin", "rinsed"], &[1, 2], rows.collect());
    sheet.blank();
    let text = format!(
        "Minutes from the first work on the first guest, up to the last rinse of the sections; toners follow. All are through \
         after {} min, {} min one after the other; nothing beats {} min.",
        amount(found.finish, 0),
        amount(found.in_turn, 0),
        amount(found.bound, 0)
    );
    sheet.paragraph(&text, 0);
    sheet.finish()
}
