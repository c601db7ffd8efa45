//! Levels of the log as a plan takes them, and what the plan says of them on the clock of the log.

#[cfg(feature = "cli")]
use super::LogEntry;
use super::{
    SectionSoFar, SoFar,
    again::{Again, SecondApplication, second_applications},
    begun::{as_begun, step_of},
    toned::{CameTo, came_to, level_without_toner, why_not_bare},
    too_long::time_on,
};
use crate::{
    colour::Level,
    lift::{Next, at_the_limit},
    quantity::{Duration, Quantity},
    service::{Plan, SectionLift, SeenLevel},
    text::{amount, number},
};
use schemars::JsonSchema;
use serde::Serialize;

/// Levels of a log, as [`plan_with`](crate::service::plan_with) takes them.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LevelsSeen {
    /// On the clock of the sheet: as long after the planned begin as they were seen after the real one.
    pub levels: Vec<SeenLevel>,
    /// Levels that no forecast can take.
    pub left_out: Vec<LevelLeftOut>,
}

/// A level that no forecast can take.
#[derive(Debug, Clone, PartialEq)]
pub struct LevelLeftOut {
    /// The section.
    pub section: String,
    /// When it was read.
    pub at: Duration,
    /// What was read.
    pub level: Level,
    /// Why no forecast can take it.
    pub why: String,
}

#[cfg(feature = "cli")]
impl LevelLeftOut {
    /// Whether it is the level of a line of the log.
    pub(crate) fn is_of(&self, entry: &LogEntry) -> bool {
        entry.section.as_ref() == Some(&self.section) && entry.at == self.at && entry.level == Some(self.level)
    }
}

impl std::fmt::Display for LevelLeftOut {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let Self { section, at, level, why } = self;
        write!(f, "{section}: level {} at minute {}: {why}", number(level.number(), 2), amount(*at, 0))
    }
}

/// A level that was seen, and what follows from it. Times are those of the log.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct AfterLevel {
    /// The section.
    pub section: String,
    /// When it was seen.
    #[serde(rename = "at_min")]
    pub at: Duration,
    /// What was seen.
    pub level: Level,
    /// What to do.
    pub next: Next,
    /// Why.
    pub why: String,
    /// When to look again.
    #[serde(rename = "look_again_min")]
    pub look_again: Option<Duration>,
}

/// The levels of a log for the plan that it belongs to. Where a begin is not noted, it is taken as planned: before the end of its
/// application where that is noted, else by the sheet.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, record::{levels_seen, read_log, replay}, service::{parse, plan}};
///
/// let plan = plan(&parse(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?)?;
/// let log = read_log(
///     "{\"format\":1,\"at_min\":4,\"what\":\"begun\",\"section\":\"nape\"}
/// {\"format\":1,\"at_min\":29,\"what\":\"seen\",\"section\":\"nape\",\"level\":7.5}",
/// );
/// // 25 min on the hair; by the sheet the nape is begun at 0.
/// assert_eq!(levels_seen(&plan, &replay(&log.entries)).levels[0].to_string(), "nape=7.5@25");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn levels_seen(plan: &Plan, so_far: &SoFar) -> LevelsSeen {
    let mut found = LevelsSeen::default();
    for one in &so_far.sections {
        let CameTo { lifted, toned, .. } = came_to(plan, so_far, one);
        let result = lifted.map(|(read, level)| (read, reached(one, read), level));
        // A result is read better than a look of the same minute, or of the one in which it was reached.
        let toned = toned.map(|(read, level)| (read, read, level));
        let seen = one.seen.iter().map(|(at, level)| (*at, *at, *level));
        let better =
            |at: Duration| result.into_iter().chain(toned).any(|(read, reached, _)| at == read || at == reached);
        let seen = seen.filter(|(at, ..)| !better(*at));
        for (read, at, level) in seen.chain(result).chain(toned) {
            let section = one.name.clone();
            let taken = why_not_bare(plan, so_far, one, read)
                .map_or_else(|| on_the_sheet(plan, one, at), |why| Err(why.to_owned()));
            match taken {
                Ok(at) => found.levels.push(SeenLevel { section, at, level }),
                Err(why) => found.left_out.push(LevelLeftOut { section, at: read, level, why }),
            }
        }
    }
    found
}

/// A result as a look at the end of what was on: what is read after the rinse was reached before it.
fn reached(one: &SectionSoFar, read: Duration) -> Duration {
    one.rinsed.filter(|rinsed| *rinsed < read).unwrap_or(read)
}

fn on_the_sheet(plan: &Plan, one: &SectionSoFar, at: Duration) -> Result<Duration, String> {
    if !plan.lift.iter().any(|lift| lift.section == one.name) {
        return Err("no section of this name is lightened".to_owned());
    }
    let planned = planned(plan, &one.name).ok_or("the plan does not begin it")?;
    if let Some(earlier) = one.earlier.first().filter(|earlier| at > earlier.rinsed) {
        let after = if earlier.rinse_noted { "its first rinse, and put on again" } else { "it was begun again" };
        return Err(format!("seen after {after}: the forecast is of one application"));
    }
    let (begun, which) = match (one.first().0, as_begun(plan, one).first_strand()) {
        (Some(begun), _) => (begun, "noted"),
        (None, Some(begun)) => (begun, "planned before it was all on (note when it was begun)"),
        (None, None) => (planned, "planned (note when it was begun)"),
    };
    if at <= begun {
        return Err(format!("not after its begin, {} as {which}", amount(begun, 0)));
    }
    Ok(Duration::nearest(planned.min() + at.min() - begun.min()))
}

fn planned(plan: &Plan, section: &str) -> Option<Duration> {
    step_of(plan, section).map(|step| step.begin)
}

/// What the last level of each section that is on says to do, on the clock of the log; `moved` is the plan made with [`levels_seen`].
///
/// # Example
///
/// ```
/// use foilwork::{
///     reader::Format,
///     record::{after_levels, levels_seen, read_log, replay},
///     service::{Evidence, parse, plan, plan_with},
/// };
///
/// let file = parse(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let log = read_log(
///     "{\"format\":1,\"at_min\":4,\"what\":\"begun\",\"section\":\"nape\"}
/// {\"format\":1,\"at_min\":29,\"what\":\"seen\",\"section\":\"nape\",\"level\":7.5}",
/// );
/// let so_far = replay(&log.entries);
/// let seen = levels_seen(&plan(&file)?, &so_far).levels;
/// let moved = plan_with(&file, &Evidence { seen, ..Evidence::default() })?;
/// assert_eq!(after_levels(&moved, &so_far)[0].at.min(), 29.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn after_levels(moved: &Plan, so_far: &SoFar) -> Vec<AfterLevel> {
    let of = |lift: &SectionLift| {
        let one = so_far.sections.iter().find(|one| one.name == lift.section);
        let begun = one.and_then(|one| as_begun(moved, one).first_strand());
        let later = match (begun, planned(moved, &lift.section)) {
            (Some(begun), Some(planned)) => begun.min() - planned.min(),
            _ => 0.0,
        };
        let of_log = move |at: Duration| Duration::nearest((at.min() + later).max(0.0));
        let one = |seen: &crate::service::SeenNow| AfterLevel {
            section: lift.section.clone(),
            at: of_log(seen.at),
            level: seen.level,
            next: seen.next,
            why: seen.why.clone(),
            look_again: seen.look_again.map(of_log),
        };
        lift.seen.iter().map(one).collect::<Vec<_>>()
    };
    let decided = second_applications(moved, so_far);
    let follows = |lift: &SectionLift| {
        let one = so_far.sections.iter().find(|one| one.name == lift.section).map(|one| as_begun(moved, one));
        let one = one.as_ref();
        // What was seen before the last look, or before the rinse, says nothing of what to do now.
        if one.is_some_and(|one| one.rinsed.is_some()) {
            return None;
        }
        let by_plan = of(lift).pop();
        match one.zip(decided.iter().find(|decided| decided.section == lift.section)) {
            Some((one, decided)) => {
                let (at, _) = level_without_toner(moved, so_far, one)?;
                let by_plan = by_plan.filter(|seen| seen.level == decided.level && is_same(seen.at, at));
                let end = time_on(moved, so_far, one).map_or(lift.limit, |time| time.end());
                Some(by_log(decided, (at, end), by_plan, lift))
            }
            None => by_plan,
        }
    };
    moved.lift.iter().filter_map(follows).collect()
}

/// Whether two minutes differ by the last bits of a sum at most.
fn is_same(one: Duration, other: Duration) -> bool {
    (one.min() - other.min()).abs() < 1e-6
}

/// What follows from the level known last by the decision on its section, which knows of hair, scalp and all that was on; in the words
/// of the plan where both say the same.
fn by_log(
    decided: &SecondApplication,
    (at, end): (Duration, Duration),
    by_plan: Option<AfterLevel>,
    lift: &SectionLift,
) -> AfterLevel {
    let by_plan_next = by_plan.as_ref().map(|seen| seen.next);
    let why_by_plan = by_plan.map(|seen| seen.why);
    let first = || decided.reasons.first().cloned().unwrap_or_default();
    // The level, which comes first, stands beside it already.
    let time_left = || decided.reasons.iter().skip(1).cloned().collect::<Vec<_>>().join("; ");
    let (next, why) = match (decided.decision, by_plan_next) {
        // Before the planned time is up the plan has the chance of reaching it.
        (Again::GoOn, Some(Next::GoOn)) if decided.on_hair < lift.limit && end >= lift.limit => {
            (Next::GoOn, why_by_plan.unwrap_or_else(first))
        }
        (Again::GoOn, _) => (Next::GoOn, time_left()),
        (Again::LookNow, _) => (Next::LookNow, time_left()),
        // Something else than the level says that it comes off.
        (Again::TreatOnly, _) | (_, Some(Next::GoOn | Next::LookNow) | None) => (Next::Rinse, first()),
        (_, Some(Next::FreshMix | Next::NextVisit)) => {
            // Told with the chance of the decision, by all that the hair carried until now.
            let (next, why) = at_the_limit((end, decided.level, lift.target_level), &decided.fresh_chance);
            if (decided.decision, next) == (Again::NextVisit, Next::FreshMix) {
                (Next::NextVisit, decided.reasons.join("; "))
            } else {
                (next, why)
            }
        }
        (_, Some(Next::Rinse)) => (Next::Rinse, why_by_plan.unwrap_or_else(first)),
    };
    let (section, level, look_again) = (decided.section.clone(), decided.level, decided.look_again);
    AfterLevel { section, at, level, next, why, look_again }
}

#[cfg(test)]
mod tests {
    use super::{Duration, Level, is_same};
    #[cfg(feature = "cli")]
    use super::{LevelLeftOut, LogEntry};

    fn min(value: f64) -> Duration {
        Duration::from_min(value).unwrap()
    }

    #[test]
    fn minutes_are_the_same_but_for_the_last_bits_of_a_sum() {
        assert!(is_same(min(10.0), min(10.0)) && is_same(min(0.1 + 0.2), min(0.3)) && is_same(min(0.0), min(0.0)));
        assert!(!is_same(min(10.0), min(10.01)) && !is_same(min(10.01), min(10.0)) && !is_same(min(0.0), min(1.0)));
    }

    /// The line with this section, minute and level, and no other.
    #[cfg(feature = "cli")]
    #[test]
    fn a_level_that_is_left_out_is_of_its_own_line() {
        let level = |level: f64| Level::new(level).unwrap();
        let left = LevelLeftOut { section: "nape".to_owned(), at: min(5.0), level: level(7.0), why: String::new() };
        let line = |section: &str, at: f64, read: Option<f64>| LogEntry {
            section: Some(section.to_owned()),
            level: read.map(level),
            ..LogEntry::new(min(at), super::super::Noted::Seen)
        };
        assert!(left.is_of(&line("nape", 5.0, Some(7.0))));
        for other in [
            line("crown", 5.0, Some(7.0)),
            line("nape", 6.0, Some(7.0)),
            line("nape", 5.0, Some(8.0)),
            line("nape", 5.0, None),
        ] {
            assert!(!left.is_of(&other), "{other:?}");
        }
        assert_eq!(left.to_string(), "nape: level 7 at minute 5: ");
    }
}
