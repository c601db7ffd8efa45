//! `foilwork day`: who does what when, as text, data or a picture; several guests on one floor.

use super::{BLOCKED, Outcome, Refusal, args::DayArgs, output, plan::Loaded, rest};
use crate::{
    chart::{DayChart, day_chart},
    day::{Floor, SECTIONS_AT_MOST, SharedFloor, Timeline, share_either, share_floor},
    service::{DayPlan, Plan},
    sheet,
    text::{Sheet, amount},
};

pub(super) fn run(args: &DayArgs) -> Outcome {
    if let Some(log) = &args.log {
        return rest::run(args, log);
    }
    // Each is read once: the standard input cannot be read again.
    let loaded = args.files.iter().map(|file| Loaded::read(file)).collect::<Result<Vec<_>, _>>()?;
    let planned = |people: Option<u32>| {
        let one = |loaded: &Loaded| {
            loaded.plan(&[], |file| {
                file.salon.people = people.or(file.salon.people);
                file.salon.basins = args.basins.or(file.salon.basins);
            })
        };
        loaded.iter().map(one).collect::<Result<Vec<Plan>, Refusal>>()
    };
    let plans = planned(args.people)?;
    let status = if plans.iter().any(|plan| plan.blocked) { BLOCKED } else { 0 };
    let [plan] = plans.as_slice() else { return shared(args, &plans, || planned(Some(1)), status) };
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

/// Several guests; each of them may have all the hands or a single pair, so that another guest has the others.
fn shared(args: &DayArgs, plans: &[Plan], by_one: impl Fn() -> Result<Vec<Plan>, Refusal>, status: u8) -> Outcome {
    if args.svg {
        return Err(Refusal("--svg: one picture shows one guest: name one file".to_owned()));
    }
    if args.trail.trail {
        return Err(Refusal("--trail: a trail is of the day of one guest: name one file".to_owned()));
    }
    let days = |plans: &[Plan]| {
        plans.iter().map(|plan| Ok(best(plan, day_of(plan)?)?.clone())).collect::<Result<Vec<Timeline>, Refusal>>()
    };
    let floor = plans.first().map(|plan| Ok::<Floor, Refusal>(day_of(plan)?.floor)).transpose()?.unwrap_or_default();
    let together = days(plans)?;
    let found = if floor.people > 1 {
        share_either(&together, &days(&by_one()?)?, &floor)?
    } else {
        share_floor(&together, &floor)?
    };
    let text = if args.report.json { output::json(&found)? } else { told(plans, &found, floor) };
    output::deliver(text, status, &args.report.output)
}

fn counted(count: u32, what: &str, of: &str) -> String {
    format!("{count} {what}{}{of}", if count == 1 { "" } else { "s" })
}

fn told(plans: &[Plan], found: &SharedFloor, floor: Floor) -> String {
    let mut sheet = Sheet::default();
    let (hands, basins) = (counted(floor.people, "pair", " of hands"), counted(floor.basins, "basin", ""));
    sheet.title(&format!("THE FLOOR  {hands}, {basins}"));
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
         after {} min, {} min one after the other; of their days by all the hands or by one pair, nothing beats {} min.",
        amount(found.finish, 0),
        amount(found.in_turn, 0),
        amount(found.bound, 0)
    );
    sheet.paragraph(&text, 0);
    sheet.finish()
}
