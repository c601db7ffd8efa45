//! Levels of the log as a plan takes them, and what the plan says of them on the clock of the log.

use super::{
    SectionSoFar, SoFar,
    again::{Again, second_applications},
    toned::{CameTo, came_to, why_not_bare},
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
    /// Levels that no forecast can take, with the reason.
    pub left_out: Vec<String>,
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

/// The levels of a log for the plan that it belongs to. Where a begin is not noted, it is taken as planned.
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
        let CameTo { lifted, toned } = came_to(plan, so_far, one);
        let result = lifted.map(|(read, level)| (read, reached(one, read), level));
        // A result is read better than a look of the same minute.
        let toned = toned.map(|(read, level)| (read, read, level));
        let seen = one.seen.iter().map(|(at, level)| (*at, *at, *level));
        let seen = seen.filter(|(at, ..)| result.into_iter().chain(toned).all(|(_, read, _)| *at != read));
        for (read, at, level) in seen.chain(result).chain(toned) {
            let told = |at: Duration, why: &str| {
                let level = number(level.number(), 2);
                format!("{}: level {level} at minute {}: {why}", one.name, amount(at, 0))
            };
            match why_not_bare(plan, so_far, one, read) {
                Some(why) => found.left_out.push(told(read, why)),
                None => match on_the_sheet(plan, one, at) {
                    Ok(at) => found.levels.push(SeenLevel { section: one.name.clone(), at, level }),
                    Err(why) => found.left_out.push(told(at, &why)),
                },
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
    let (first, ..) = one.first();
    if let Some(earlier) = one.earlier.first().filter(|earlier| at > earlier.rinsed) {
        let after = if earlier.rinse_noted { "its first rinse, and put on again" } else { "it was begun again" };
        return Err(format!("seen after {after}: the forecast is of one application"));
    }
    let (begun, which) = match first {
        Some(begun) => (begun, "noted"),
        None => (planned, "planned (note when it was begun)"),
    };
    if at <= begun {
        return Err(format!("not after its begin, {} as {which}", amount(begun, 0)));
    }
    Ok(Duration::nearest(planned.min() + at.min() - begun.min()))
}

fn planned(plan: &Plan, section: &str) -> Option<Duration> {
    plan.order.iter().find(|step| step.name == section).map(|step| step.begin)
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
        let begun = so_far.sections.iter().find(|one| one.name == lift.section).and_then(|one| one.first().0);
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
    // What was seen before the last look, or before the rinse, says nothing of what to do now.
    let rinsed = |name: &str| so_far.sections.iter().any(|one| one.name == name && one.rinsed.is_some());
    let still = moved.lift.iter().filter(|lift| !rinsed(&lift.section));
    let mut all: Vec<AfterLevel> = still.filter_map(|lift| of(lift).pop()).collect();
    for decided in second_applications(moved, so_far) {
        let lift = moved.lift.iter().find(|lift| lift.section == decided.section);
        let last = all.iter_mut().find(|after| after.section == decided.section);
        let Some((lift, last)) = lift.zip(last) else { continue };
        if last.next == Next::GoOn && decided.decision != Again::GoOn {
            // Something else than the level says that it comes off.
            last.next = Next::Rinse;
            last.why = decided.reasons.first().cloned().unwrap_or_default();
            last.look_again = None;
        } else if last.level == decided.level && matches!(last.next, Next::FreshMix | Next::NextVisit) {
            // Told with the chance of the decision, by all that the hair carried until now.
            let at = (lift.limit, decided.level, lift.target_level);
            (last.next, last.why) = at_the_limit(at, &decided.fresh_chance);
        }
    }
    all
}
