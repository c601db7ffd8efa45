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

#[cfg(test)]
mod tests {
    use super::{OnHair, Tables, Underway, begin};
    use crate::{
        day::{Floor, SectionWork},
        quantity::Duration,
    };

    fn min(value: f64) -> Duration {
        Duration::from_min(value).unwrap()
    }

    fn on(section: usize, start: f64, applied: f64) -> OnHair {
        let (start, applied) = (min(start), Some(min(applied)));
        OnHair { section, start, applied, at_once: false, left_on_until: None, comes_off_by: None }
    }

    /// Sections 0 and 1 are one foil, section 2 is alone. By hand, in minutes from the begin of its first bowl: a bowl takes 3, a rinse 3;
    /// the foil is on at 21, has developed at 38, as section 1 has at 41 and is rinsed 3 later, and must go by 43; section 2 is on at 9,
    /// has developed at 24 and must go by 33. Told are the hour, each unit's times, what is on since when, and what is overdue.
    struct Told {
        at: f64,
        windows: [[f64; 2]; 2],
        on: Vec<(usize, f64)>,
        rinsed: Vec<usize>,
        late: Vec<usize>,
    }

    fn told(now: f64, on: &[OnHair], rinsed: &[usize]) -> Told {
        let foil = |one| SectionWork { same_foil: Some(1), ..one };
        let section = |apply, develop, longest| SectionWork::new("", min(apply), min(develop), min(longest));
        let work = [foil(section(10.0, 20.0, 40.0)), foil(section(5.0, 20.0, 40.0)), section(6.0, 15.0, 30.0)];
        let floor = Floor { look: Duration::ZERO, ..Floor::default() };
        let mut tables = Tables::of(&work, &[], &floor, &[vec![0, 1], vec![2]]);
        let underway = Underway { now: min(now), on: on.to_vec(), rinsed: rinsed.to_vec() };
        let late = begin(&mut tables, &underway);
        let minutes = |seconds: i64| seconds as f64 / 60.0;
        let windows = [0, 1].map(|unit| [tables.units[unit].low, tables.units[unit].high].map(minutes));
        let started = &tables.started;
        Told {
            at: minutes(started.at),
            windows,
            on: started.on.iter().map(|(unit, begun)| (*unit, minutes(*begun))).collect(),
            rinsed: started.rinsed.clone(),
            late,
        }
    }

    const ALONE: [f64; 2] = [24.0, 33.0];

    #[test]
    fn what_is_on_stands_where_it_was_begun() {
        // Section 1 is not on yet: hands are busy with the foil until its 21 min are over.
        let half = |now: f64| told(now, &[OnHair { applied: None, ..on(0, 3.0, 0.0) }], &[]);
        let early = half(15.0);
        assert_eq!((early.at, early.windows, early.on), (21.0, [[38.0, 43.0], ALONE], vec![(0, 0.0)]));
        assert_eq!((half(30.0).at, half(30.0).late, half(30.0).rinsed), (30.0, vec![], vec![]));
        // The end of one of two says nothing of the other.
        assert_eq!(told(15.0, &[on(0, 3.0, 13.0)], &[]).at, 21.0);
        assert_eq!(told(15.0, &[on(0, 3.0, 13.0), OnHair { applied: None, ..on(1, 14.0, 0.0) }], &[]).at, 21.0);
        // Begun at 2, on at 31 instead of 23: it would have developed 8 later, at 46, and goes by 43.
        let slow = told(25.0, &[on(0, 5.0, 17.0), on(1, 20.0, 31.0)], &[]);
        assert_eq!((slow.at, slow.windows[0], slow.on), (31.0, [43.0, 43.0], vec![(0, 2.0)]));
        // On at 20 instead of 23, noted in the other order too.
        let quick = told(25.0, &[on(1, 12.0, 20.0), on(0, 5.0, 15.0)], &[]);
        assert_eq!((quick.at, quick.windows[0], quick.on), (25.0, [35.0, 43.0], vec![(0, 2.0)]));
        // One section of the foil is rinsed: nobody puts the other on.
        let rinsed = told(25.0, &[], &[1]);
        assert_eq!((rinsed.at, rinsed.on, rinsed.rinsed), (25.0, vec![], vec![0]));
        assert_eq!(told(25.0, &[], &[2, 0]).rinsed, [0, 1]);
    }

    #[test]
    fn what_a_look_or_a_note_says_moves_its_times() {
        let both = |of_one: OnHair, of_other: OnHair| told(25.0, &[of_one, of_other], &[]).windows[0];
        let (one, other) = (on(0, 5.0, 15.0), on(1, 12.0, 20.0));
        assert_eq!(both(one, other), [35.0, 43.0]);
        let until = |at: f64, one: OnHair| OnHair { left_on_until: Some(min(at)), ..one };
        let by = |at: f64, one: OnHair| OnHair { comes_off_by: Some(min(at)), ..one };
        // 42 from the begin at 2; no longer than its work says, and one over before counts for nothing.
        assert_eq!(both(one, until(44.0, other)), [42.0, 43.0]);
        assert_eq!(both(until(44.0, one), until(40.0, other)), [42.0, 43.0]);
        assert_eq!(both(one, until(50.0, other)), [43.0, 43.0]);
        assert_eq!(both(one, until(30.0, other)), [35.0, 43.0]);
        // By 40, less the begin at 2 and the rinse of section 0 before it; of section 0 without that.
        assert_eq!(both(one, by(40.0, other)), [35.0, 35.0]);
        assert_eq!(both(by(40.0, one), other), [35.0, 38.0]);
        assert_eq!(both(by(60.0, one), other), [35.0, 43.0]);
        // Left on by a look the work's own end is moved: to 58 for section 0, and section 1 must go by 56 - 3.
        assert_eq!(both(by(60.0, until(50.0, one)), other), [48.0, 53.0]);
        assert_eq!(both(by(45.0, until(50.0, one)), other), [43.0, 43.0]);
        // A second that is not over yet does not count: 40.01 min are 2400.6 s.
        assert_eq!(both(by(40.01, one), other), [35.0, 38.0]);
        // It comes off now, 27 - 2 from its begin, when the water is there.
        assert_eq!(both(OnHair { at_once: true, ..one }, other), [0.0, 25.0]);
        assert_eq!(both(one, until(44.0, OnHair { at_once: true, ..other })), [0.0, 25.0]);
    }

    /// Section 2 begun at 7 must go by 40, the foil begun at 2 by 45; the walk takes 2, and the rinse of section 2 another 3.
    #[test]
    fn what_the_water_reaches_too_late_is_overdue() {
        let foil = [on(0, 5.0, 15.0), on(1, 12.0, 20.0)];
        let alone = on(2, 10.0, 16.0);
        let all = |now: f64, alone: OnHair| told(now, &[foil[0], foil[1], alone], &[]);
        let in_time = all(38.0, alone);
        assert_eq!((in_time.late, in_time.windows), (vec![], [[35.0, 43.0], ALONE]));
        assert_eq!(in_time.on, [(0, 2.0), (1, 7.0)]);
        let late = all(39.0, alone);
        assert_eq!((late.late, late.windows), (vec![2], [[35.0, 43.0], [24.0, 34.0]]));
        // At 41 + 2 + 3 the foil is a minute late as well.
        let both = all(41.0, alone);
        assert_eq!((both.late, both.windows), (vec![2, 0, 1], [[35.0, 44.0], [24.0, 36.0]]));
        // What has to come off at once is not overdue, nor is what its longest time still allows.
        let asked = all(41.0, OnHair { at_once: true, ..alone });
        assert_eq!((asked.late, asked.windows[1]), (vec![0, 1], [0.0, 36.0]));
        let noted = |now: f64| all(now, OnHair { comes_off_by: Some(min(60.0)), ..alone });
        assert_eq!((noted(39.0).late, noted(39.0).windows[1]), (vec![], [24.0, 34.0]));
        let only = |now: f64| told(now, &[OnHair { comes_off_by: Some(min(60.0)), ..alone }], &[]);
        assert_eq!((only(58.0).late, only(59.0).late), (vec![], vec![2]));
        assert_eq!((only(58.0).windows[1], only(59.0).windows[1]), ([24.0, 53.0], [24.0, 54.0]));
        let gone = told(50.0, &foil, &[2]);
        assert_eq!((gone.late, gone.windows[0], gone.rinsed), (vec![0, 1], [35.0, 50.0], vec![1]));
    }
}
