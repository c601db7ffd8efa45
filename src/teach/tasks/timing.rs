use super::Task;
use crate::{
    money::Currency,
    quantity::Duration,
    teach::{
        Mistake,
        draft::{Draft, clock, count, hour, minutes, words},
        draw::Draw,
    },
};
use jiff::{ToSpan, civil};

pub(super) const TASKS: &[Task] = &[
    Task::gentle("rinse-at", rinse_at),
    Task::steady("first-strand", first_strand),
    Task::stretch("time-left-for-development", time_left),
];

/// A time of the morning or afternoon in minutes after midnight, and the same as a time of day.
fn start(draw: &mut Draw) -> Option<(i64, civil::Time)> {
    let at = draw.between(9 * 12, 15 * 12) * 5;
    Some((at, civil::Time::new(i8::try_from(at / 60).ok()?, i8::try_from(at % 60).ok()?, 0, 0).ok()?))
}

fn whole(duration: Duration) -> i64 {
    duration.min().round() as i64
}

/// What somebody reads who takes an hour for a hundred minutes.
fn hundred(at: i64, after: i64) -> Option<String> {
    let sum = at / 60 * 100 + at % 60 + after;
    (sum % 100 < 60).then(|| format!("{}:{:02}", sum / 100, sum % 100))
}

fn rinse_at(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let ((at, time), apply, develop) = (start(draw)?, draw.between(2, 9) * 5, draw.between(3, 10) * 5);
    let total = whole(minutes(apply) + minutes(develop));
    let found = time.checked_add(total.minutes()).ok()?;
    let rinse = i64::from(found.hour()) * 60 + i64::from(found.minute());
    Some(
        Draft::new(format!(
            "The first brush stroke at Juniper & Tide is at {}. Applying takes {apply} min, and {develop} min of development count \
             from the end of it. When is it rinsed?",
            hour(at)
        ))
        .given("start", hour(at))
        .given("apply_min", apply)
        .given("develop_min", develop)
        .step("minutes from the first stroke", format!("{apply} min + {develop} min"), format!("{total} min"))
        .answer("on the clock", format!("{} + {total} min", hour(at)), clock(rinse)?)
        .wrong(Mistake::LeftOut, clock(at + develop))
        .wrong(Mistake::LeftOut, clock(at + apply))
        .wrong(Mistake::HundredMinutes, hundred(at, total).and_then(words)),
    )
}

fn first_strand(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let ((at, _), apply, wait) = (start(draw)?, draw.between(2, 9) * 5, draw.between(2, 8) * 5);
    let carried = whole(minutes(apply) + minutes(wait));
    Some(
        Draft::new(format!(
            "Lightener goes on from {} to {} at Juniper & Tide, and all of it is rinsed at {}. How many minutes has the first strand \
             carried it?",
            hour(at),
            hour(at + apply),
            hour(at + carried)
        ))
        .given("start", hour(at))
        .given("applied", hour(at + apply))
        .given("rinsed", hour(at + carried))
        .answer("from the first strand to the rinse", format!("{} - {}", hour(at + carried), hour(at)), count(carried, "min")?)
        .wrong(Mistake::LeftOut, count(wait, "min"))
        .wrong(Mistake::LeftOut, count(apply, "min"))
        .wrong(Mistake::HundredMinutes, count((at + carried) / 60 * 100 + (at + carried) % 60 - at / 60 * 100 - at % 60, "min")),
    )
}

fn time_left(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (foils, limit) = (draw.between(8, 30), draw.between(7, 12) * 5);
    let tenths = draw.pick(&[10, 15, 20])?;
    let apply = Duration::from_min((foils * tenths) as f64 / 10.0).ok()?;
    let left = limit * 10 - foils * tenths;
    if left < 50 || left % 10 != 0 {
        return None;
    }
    let each = rust_decimal::Decimal::new(tenths, 1).normalize();
    Some(
        Draft::new(format!(
            "No strand may carry the lightener longer than {limit} min, says its leaflet. At Juniper & Tide {foils} foils take {each} \
             min each. How many minutes of development are left after the last foil, if all are rinsed together?"
        ))
        .given("limit_min", limit)
        .given("foils", foils)
        .given("foil_min", each)
        .step("minutes to apply", format!("{foils} x {each} min"), format!("{} min", whole(apply)))
        .answer("left for the first strand", format!("{limit} min - {} min", whole(apply)), count(left / 10, "min")?)
        .wrong(Mistake::GivenForAnswer, count(limit, "min"))
        .wrong(Mistake::OtherPart, count(whole(apply), "min"))
        .wrong(Mistake::Added, count(limit + whole(apply), "min")),
    )
}
