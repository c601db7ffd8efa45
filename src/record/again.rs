//! Whether a section is put on a second time: one decision from level, condition, time and applications together.

use super::{
    Instruction, SectionSoFar, SoFar,
    begun::{as_begun, taken_as_begun},
    instructions,
    replay::LEAST_MIN,
    toned::{level_without_toner, why_not_bare},
};
use crate::{
    choice::choice,
    colour::Level,
    hair::Weeks,
    lift::{
        Condition, Due, Lightening, MOST_VISITS, OFTEN, Strain, TimeOn, Visit, chance_of_fresh, condition, is_there,
        is_worth_it, series, weeks_between,
    },
    quantity::{Duration, Quantity, Share},
    service::{Plan, SectionLift, Start, later},
    source::{Basis, Interval, Sourced},
    text::{amount, number, of_hundred},
};
use schemars::JsonSchema;
use serde::Serialize;

choice! {
    /// What follows for a section that is, or was, lightened.
    Again: "second application" {
        /// What is on goes on working.
        GoOn = "go-on" => "leave on what is on, and look again",
        /// The planned time is up, and nobody has looked of late.
        LookNow = "look-now" => "look now, and rinse if it is there",
        /// The level is there.
        StopAndTone = "stop-and-tone" => "stop and tone",
        /// A fresh mix on the same hair, today.
        FreshMix = "fresh-mix" => "a fresh mix today",
        /// Something has to be known first.
        TestFirst = "test-first" => "test first, then decide",
        /// No more lightener today.
        NextVisit = "next-visit" => "stop for today, and plan another visit",
        /// No more peroxide today, of whatever strength.
        TreatOnly = "treat-only" => "rinse, and treat only",
    }
}

impl Again {
    /// Whether it may stay on until somebody looks at it.
    pub(super) const fn leaves_on(self) -> bool {
        matches!(self, Self::GoOn | Self::LookNow)
    }
}

/// What was not taken, and why.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct AgainRejected {
    /// What.
    pub what: Again,
    /// Why.
    pub why: String,
}

/// The decision on a second application of one section.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SecondApplication {
    /// The section.
    pub section: String,
    /// The level that it came to, or that was seen last.
    pub level: Level,
    /// The level wanted.
    pub target_level: Level,
    /// What follows.
    pub decision: Again,
    /// When to look again, where it is left on or looked at now.
    #[serde(rename = "look_again_min")]
    pub look_again: Option<Duration>,
    /// Why, the weightiest first.
    pub reasons: Vec<String>,
    /// What was not taken, with its reason.
    pub rejected: Vec<AgainRejected>,
    /// How often it was put on so far; what was begun again without a noted rinse counts once.
    pub applications: usize,
    /// How long the hair has carried mixture, all applications together.
    #[serde(rename = "on_hair_min")]
    pub on_hair: Duration,
    /// How long a fresh mix would take to the target, no longer than one application may last; absent where the target is
    /// reached, or no fresh mix reaches it.
    #[serde(rename = "fresh_min")]
    pub fresh: Option<Interval<Duration>>,
    /// The chance that a fresh mix reaches the target within one application.
    #[serde(rename = "fresh_chance_percent")]
    pub fresh_chance: Interval<Share>,
    /// What the fibre has been through with such a fresh mix.
    pub strain_with_fresh: Strain,
    /// Weeks to leave before another visit, by what the fibre has been through so far.
    #[serde(rename = "wait_weeks")]
    pub wait: Interval<Weeks>,
    /// The first day of another visit, where the fibre alone decides; absent where hair and scalp are only treated: then a doctor or a
    /// test has the next word.
    pub not_before: Option<Start>,
    /// The visits that are left then, with the same mixture and time; empty where the target is reached or hair and scalp are
    /// only treated.
    pub visits: Vec<Visit>,
    /// What the decision rests on: the forecast of a fresh mix and the bounds are assumed.
    pub basis: Basis,
}

/// The decision for every section whose level was seen before its toner went on, by the last of these: what is left of the target,
/// what the hair and the scalp say, how long and how often it was on, and what a fresh mix would bring, in one.
///
/// `moved` is the plan made with [`levels_seen`](super::levels_seen). What the plan or the log says stop to, comfort and condition
/// come before the level; what burned or swelled once that day is not taken back, and an unknown condition is never taken as good.
///
/// The planned time is an estimate, and the longest that the products allow is the limit. Once the planned time is up, what was not
/// looked at within the last five minutes is looked at now, and rinsed if it is there; what a look shows not to be there is left on and
/// looked at every five minutes, until the longest at the latest. Where the longest is not known, the planned time is the limit.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, record::{Again, read_log, replay, second_applications}, service::{parse, plan}};
///
/// let plan = plan(&parse(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?)?;
/// let log = read_log(
///     "{\"format\":1,\"at_min\":0,\"what\":\"begun\",\"section\":\"nape\"}
/// {\"format\":1,\"at_min\":48,\"what\":\"seen\",\"section\":\"nape\",\"level\":7}
/// {\"format\":1,\"at_min\":50,\"what\":\"rinsed\",\"section\":\"nape\"}
/// {\"format\":1,\"at_min\":52,\"what\":\"elasticity\",\"section\":\"nape\",\"elasticity\":\"reduced\"}\n",
/// );
/// let nape = &second_applications(&plan, &replay(&log.entries))[0];
/// assert_eq!(nape.decision, Again::NextVisit);
/// assert!(nape.rejected.iter().any(|one| one.what == Again::FreshMix && one.why.contains("returns slowly")));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Elasticity and comfort before level: common practice. How often in a visit, and the chance that is worth it: assumed.
#[must_use]
pub fn second_applications(moved: &Plan, so_far: &SoFar) -> Vec<SecondApplication> {
    let follows = instructions(so_far);
    let of = |noted: &SectionSoFar| {
        let one = &as_begun(moved, noted);
        let lift = moved.lift.iter().find(|lift| lift.section == one.name)?;
        let (_, level) = level_without_toner(moved, so_far, one)?;
        let mut decided = Asked { moved, so_far, one, lift, level, follows: &follows }.decide();
        decided.reasons.extend(taken_as_begun(moved, noted));
        Some(decided)
    };
    so_far.sections.iter().filter_map(of).collect()
}

pub(super) struct Asked<'a> {
    pub(super) moved: &'a Plan,
    pub(super) so_far: &'a SoFar,
    pub(super) one: &'a SectionSoFar,
    pub(super) lift: &'a SectionLift,
    level: Level,
    pub(super) follows: &'a [Instruction],
}

/// What a fresh mix would bring.
pub(super) struct Fresh {
    minutes: Option<Interval<Duration>>,
    pub(super) chance: Interval<Share>,
    pub(super) strain: Strain,
}

impl Asked<'_> {
    fn decide(&self) -> SecondApplication {
        let (target, limit) = (self.lift.target_level, self.lift.limit);
        let carried = self.one.carried_each(self.so_far.now, limit);
        let on_hair = Duration::nearest(carried.iter().map(|time| time.min()).sum());
        let start = self.lift.lightening.after_each(&carried);
        let missing = (target - self.level).levels();
        let reached = is_there(self.level, target);
        let fresh = self.fresh(&start, &carried);
        let situation = self.lift.situation;
        let all: Vec<_> = carried.iter().map(|time| (situation, *time)).collect();
        let Sourced { value: wait, .. } = weeks_between(condition(&all).strain);
        let not_before = Start::Day(later(self.moved.start.earliest().date(), wait.low()));
        let mut rejected = Vec::new();
        let time = self.still_on();
        let (decision, mut reasons) = self.choose((missing, reached), (&fresh, time.as_ref()), &mut rejected);
        reasons.extend(self.read_later());
        SecondApplication {
            section: self.one.name.clone(),
            level: self.level,
            target_level: target,
            decision,
            look_again: time.and_then(|time| self.on_clock(time.look_again()?)).filter(|_| decision.leaves_on()),
            reasons,
            rejected,
            applications: self.one.applications(),
            on_hair,
            fresh: fresh.minutes.filter(|_| !reached),
            fresh_chance: fresh.chance,
            strain_with_fresh: fresh.strain,
            wait,
            not_before: (decision != Again::TreatOnly).then_some(not_before),
            visits: match decision {
                Again::TreatOnly | Again::StopAndTone => Vec::new(),
                _ => series(&start, target, limit, OFTEN, MOST_VISITS),
            },
            basis: Basis::Assumed,
        }
    }

    fn fresh(&self, start: &Lightening, carried: &[Duration]) -> Fresh {
        let (target, limit) = (self.lift.target_level, self.lift.limit);
        let time = start.time_to(target);
        let within = |time: Option<Duration>| {
            time.map_or(limit.min(), Duration::min).clamp(LEAST_MIN.min(limit.min()), limit.min())
        };
        let minutes = time.median.map(|_| {
            Interval::ordered(within(time.early), within(time.median), within(time.late)).map(Duration::nearest)
        });
        let lasts = minutes.map_or(limit, |minutes| minutes.high());
        let all = carried.iter().chain([&lasts]).map(|time| (self.lift.situation, *time));
        let Condition { strain, .. } = condition(&all.collect::<Vec<_>>());
        Fresh { minutes, chance: chance_of_fresh(&self.lift.lightening, carried, target, limit), strain }
    }

    /// What was read since then with the toner on it, and is not decided by.
    fn read_later(&self) -> Option<String> {
        let last = self.one.latest_level();
        let (at, level) = last.filter(|last| Some(*last) != level_without_toner(self.moved, self.so_far, self.one))?;
        let why = why_not_bare(self.moved, self.so_far, self.one, at)?;
        Some(format!("level {} at minute {}: {why}", number(level.number(), 2), amount(at, 0)))
    }

    /// The decision with its reasons; what was not taken goes on the list.
    fn choose(
        &self,
        (missing, reached): (f64, bool),
        (fresh, on): (&Fresh, Option<&TimeOn>),
        rejected: &mut Vec<AgainRejected>,
    ) -> (Again, Vec<String>) {
        let mut reject = |what: Again, why: &str| rejected.push(AgainRejected { what, why: why.to_owned() });
        let (level, target) = (self.level, self.lift.target_level);
        let stops = self.stops();
        if let [first, ..] = stops.as_slice() {
            for what in [Again::StopAndTone, Again::FreshMix] {
                reject(what, first);
            }
            return (Again::TreatOnly, stops);
        }
        let rinse = on.map(|on| self.rinse_now(on)).unwrap_or_default();
        if let [first, ..] = rinse.as_slice() {
            reject(Again::GoOn, first);
        }
        let state = if reached {
            format!("{level} is seen and {target} was wanted")
        } else {
            format!("{level} is seen, {} short of {target}", levels(missing))
        };
        if reached {
            if on.is_some() && rinse.is_empty() {
                reject(Again::GoOn, "the level is there");
            }
            reject(Again::FreshMix, "the level is reached: more oxidises the fibre for nothing");
            return (Again::StopAndTone, [rinse, vec![state], self.before_toner()].concat());
        }
        if let (Some(on), true) = (on, rinse.is_empty()) {
            let look = on.due() == Due::LookNow;
            reject(Again::FreshMix, "what is on still works");
            let (decision, why) = if look {
                (Again::LookNow, "the level was not reached when it was looked at last, and time is left")
            } else {
                (Again::GoOn, "the level is not reached, and time is left")
            };
            reject(Again::StopAndTone, why);
            return (decision, vec![state, self.time_left(on)]);
        }
        reject(Again::StopAndTone, &format!("it would be toned at {level}; take that where the guest wishes it"));
        let against = self.against_fresh(fresh);
        if let [first, ..] = against.as_slice() {
            reject(Again::FreshMix, first);
            return (Again::NextVisit, [rinse, vec![state], self.swollen_elsewhere(), against].concat());
        }
        let chance = of_hundred(&fresh.chance);
        // What is worth it by the best estimate alone is not told as if its bounds said so too.
        let only = if is_worth_it(fresh.chance.low()) { "" } else { ", worth it by the estimate, not by its bounds" };
        let brings =
            format!("a fresh mix of the same strength reaches it within one application in {chance} cases{only}");
        let open = self.not_known();
        if !open.is_empty() {
            reject(Again::FreshMix, &open.join("; "));
            return (Again::TestFirst, [rinse, vec![state], open, vec![brings]].concat());
        }
        reject(
            Again::NextVisit,
            "nothing that was tested or asked speaks against a fresh mix today, and it is worth its while",
        );
        let look = "look every five minutes from the first strand on, and rinse when the level is there".to_owned();
        (Again::FreshMix, vec![state, brings, look])
    }
}

fn levels(missing: f64) -> String {
    let one = (missing - 1.0).abs() < 1e-9;
    format!("{} {}", number(missing, 2), if one { "level" } else { "levels" })
}
