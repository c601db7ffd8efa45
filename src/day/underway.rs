//! The rest of a day that has begun: what is on the hair stays as it is, all that is left is arranged anew.

use super::{
    Before, CannotArrange, Effort, Floor, SectionWork, Timeline,
    arrange::{best, checked},
    bounds::bounded_clock,
    floor::{many, seconds, seconds_over},
    tables::{Started, Tables, Unit},
};
use crate::quantity::Duration;

/// A section on the hair.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OnHair {
    /// Its place in the list of the work, from 0.
    pub section: usize,
    /// Its first strand.
    pub start: Duration,
    /// When all of it was on; as its work says where that is not known or not over.
    pub applied: Option<Duration>,
    /// Whether it has to come off now, developed or not.
    pub at_once: bool,
    /// Until when a look says to leave it on, longer than its work says; no later than its longest time.
    pub left_on_until: Option<Duration>,
    /// When its longest time is over by what was noted, where that is known: it comes off no later, nor later than its work says unless a
    /// look leaves it on.
    pub comes_off_by: Option<Duration>,
}

/// Where a day stands.
#[derive(Debug, Clone, PartialEq)]
pub struct Underway {
    /// What time it is, on a clock of your own; all other times are of the same.
    pub now: Duration,
    /// What is on the hair.
    pub on: Vec<OnHair>,
    /// What is rinsed, by its place in the list of the work.
    pub rinsed: Vec<usize>,
}

/// The rest of a day.
#[derive(Debug, Clone, PartialEq)]
pub struct RestOfDay {
    /// What is left to do, on the clock of [`Underway`]; what is rinsed is left out.
    pub timeline: Timeline,
    /// Sections that are on the hair for longer than they may before the water can reach them, by their places.
    pub overdue: Vec<usize>,
}

/// Arranges what is left of a day: the same rules, the same limits, from where it stands.
///
/// What has to come off at once, or would pass its longest time, is rinsed before anything else is begun.
///
/// # Errors
///
/// [`CannotArrange`], as for [`arrange`](super::arrange()); a section that is named twice, does not exist or has its first
/// strand after now; a time more than a week from the zero of the clock.
///
/// # Example
///
/// ```
/// use foilwork::{day::{Effort, Floor, OnHair, SectionWork, Underway, go_on}, quantity::Duration};
///
/// let min = |value| Duration::from_min(value);
/// let work = [
///     SectionWork::new("nape", min(15.0)?, min(35.0)?, min(60.0)?),
///     SectionWork::new("hairline", min(10.0)?, min(20.0)?, min(50.0)?),
/// ];
/// // The nape took until minute 25.
/// let nape = OnHair { section: 0, start: min(3.0)?, applied: Some(min(25.0)?), at_once: false, left_on_until: None, comes_off_by: None };
/// let underway = Underway { now: min(25.0)?, on: vec![nape], rinsed: Vec::new() };
/// let rest = go_on(&work, &[], &Floor::default(), &underway, Effort::Quick)?;
/// let hairline = rest.timeline.sections.iter().find(|one| one.name == "hairline").ok_or("it is left")?;
/// assert_eq!(hairline.mix_at[0].min(), 25.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn go_on(
    work: &[SectionWork],
    before: &[Before],
    floor: &Floor,
    underway: &Underway,
    effort: Effort,
) -> Result<RestOfDay, CannotArrange> {
    let count = work.len();
    let named = || underway.on.iter().map(|one| one.section).chain(underway.rinsed.iter().copied());
    if named().any(|section| section >= count || named().filter(|other| *other == section).count() > 1) {
        return Err(CannotArrange::NotUnderway { count });
    }
    let on = underway.on.iter();
    let times = on.flat_map(|one| {
        let until = one.left_on_until.map(|at| ("left_on_until", at));
        let by = one.comes_off_by.map(|at| ("comes_off_by", at));
        [Some(("start", one.start)), one.applied.map(|at| ("applied", at)), until, by]
    });
    bounded_clock(times.flatten().chain([("now", underway.now)]))?;
    if let Some(one) = underway.on.iter().find(|one| one.start > underway.now) {
        return Err(CannotArrange::NotBegun { section: one.section, start: one.start, now: underway.now });
    }
    let mut tables = checked(work, before, floor)?;
    let overdue = begin(&mut tables, underway);
    let timeline = best(work, &tables, floor, effort)?;
    Ok(RestOfDay { timeline, overdue })
}

/// Sets the tables to where the day stands, and tells which sections are overdue.
fn begin(tables: &mut Tables, underway: &Underway) -> Vec<usize> {
    let on = |section: usize| underway.on.iter().find(|one| one.section == section);
    let mut started = Started { at: seconds(underway.now), ..Started::default() };
    let (mix, walk, rinse) = (tables.mix, tables.walk, tables.rinse);
    let mut ends = Vec::new();
    for (place, unit) in tables.units.iter_mut().enumerate() {
        let those: Vec<&OnHair> = unit.jobs.iter().filter_map(|job| on(job.section)).collect();
        let Some(first) = those.iter().map(|one| seconds(one.start)).min() else {
            if unit.jobs.iter().any(|job| underway.rinsed.contains(&job.section)) {
                started.rinsed.push(place);
            }
            continue;
        };
        let begun = first - mix;
        let takes: i64 = unit.jobs.iter().map(|job| job.takes).sum();
        // Hands that still put it on are free when all of it is on.
        let applied = those.iter().map(|one| one.applied.map(seconds)).collect::<Option<Vec<i64>>>();
        let applied = applied.filter(|all| all.len() == unit.jobs.len()).and_then(|all| all.into_iter().max());
        started.at = started.at.max(applied.unwrap_or(begun + takes));
        if let Some(applied) = applied {
            unit.low += applied - (begun + takes);
        }
        if let Some(until) = those.iter().filter_map(|one| one.left_on_until).map(seconds).max() {
            unit.low = unit.low.max(until - begun);
        }
        let end;
        (unit.high, end) = limits(unit, (begun, mix, rinse), on);
        if those.iter().any(|one| one.at_once) {
            (unit.low, unit.high) = (0, 0);
        }
        ends.push((place, end));
        started.on.push((place, begun));
    }
    // One after the other by their limits: who cannot be in time is due as soon as it can be.
    let window = |(place, begun): &(usize, i64)| tables.units.get(*place).map(|unit| (begun + unit.high, unit.rinse));
    let mut order = started.on.clone();
    order.sort_by_key(|on| window(on).map_or(0, |(high, rinse)| high + rinse));
    let (mut at, mut late) = (started.at + walk, Vec::new());
    for (place, begun) in order {
        let Some(unit) = tables.units.get_mut(place) else { continue };
        if at > begun + unit.high {
            let asked = |section: usize| on(section).is_some_and(|one| one.at_once);
            // Later than its work says is not overdue while its longest time lasts.
            if ends.iter().any(|(of, end)| *of == place && at > begun + end) {
                late.extend(unit.jobs.iter().map(|job| job.section).filter(|section| !asked(*section)));
            }
            unit.high = at - begun;
        }
        // What was put on slowly develops for as long as its limit leaves.
        unit.low = unit.low.min(unit.high);
        at += unit.rinse;
    }
    tables.started = started;
    late
}

/// From its begin, when a unit on the hair comes off at the latest, and when it has been on for longer than it may: both as its work
/// says where nothing is noted of its longest time.
fn limits<'o>(
    unit: &Unit,
    (begun, mix, rinse): (i64, i64, i64),
    on: impl Fn(usize) -> Option<&'o OnHair>,
) -> (i64, i64) {
    let (mut painted, mut limits) = (0, (i64::MAX, i64::MAX));
    for (place, job) in unit.jobs.iter().enumerate() {
        // In one foil those before it are rinsed before it.
        let waits = many(place) * rinse;
        let by_work = painted + mix + job.longest - waits;
        painted += job.takes;
        let noted = on(job.section).and_then(|one| Some((one, seconds_over(one.comes_off_by?) - begun - waits)));
        let (high, end) = match noted {
            Some((one, end)) if one.left_on_until.is_some() => (end, end),
            Some((_, end)) => (by_work.min(end), end),
            None => (by_work, by_work),
        };
        limits = (limits.0.min(high), limits.1.min(end));
    }
    limits
}
