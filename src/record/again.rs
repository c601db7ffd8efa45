//! Whether a section is put on a second time: one decision from level, condition, time and applications together.

use super::{Comfort, Instruction, SectionSoFar, SoFar, instructions};
use crate::{
    choice::choice,
    colour::Level,
    finding::Verdict,
    hair::Weeks,
    lift::{Condition, Lightening, MOST_VISITS, OFTEN, Strain, Visit, condition, series, weeks_between},
    quantity::{Duration, Quantity, Share},
    service::{Plan, SectionLift, Start, later, shape::Elasticity},
    source::{Basis, Interval, Sourced},
    text::{amount, in_hundred, number},
};
use schemars::JsonSchema;
use serde::Serialize;

/// A level read by eye to the half step counts as reached within this.
const REACHED_WITHIN_LEVELS: Sourced<f64> = Sourced::assumed(0.25);
/// How often lightener goes on the same hair in one visit.
const MOST_APPLICATIONS: Sourced<usize> = Sourced::assumed(2);
/// A fresh mix is put on where it reaches the target in so many of 100 cases.
const WORTH_PERCENT: Sourced<f64> = Sourced::assumed(50.0);
/// Between two looks; nothing is put on for less.
const LEAST_MIN: f64 = 5.0;

choice! {
    /// What follows for a section that is, or was, lightened.
    Again: "second application" {
        /// What is on goes on working.
        GoOn = "go-on" => "leave on what is on, and look again",
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
    /// Why, the weightiest first.
    pub reasons: Vec<String>,
    /// What was not taken, with its reason.
    pub rejected: Vec<AgainRejected>,
    /// How often it was put on so far.
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
    /// The first day of another visit.
    pub not_before: Start,
    /// The visits that are left then, with the same mixture and time; empty where the target is reached.
    pub visits: Vec<Visit>,
    /// What the decision rests on: the forecast of a fresh mix and the bounds are assumed.
    pub basis: Basis,
}

/// The decision for every section whose level was seen: what is left of the target, what the hair and the scalp say, how long and how
/// often it was on, and what a fresh mix would bring, in one.
///
/// `moved` is the plan made with [`levels_seen`](super::levels_seen). Comfort and condition come before the level, and an unknown
/// condition is never taken as good.
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
    let of = |one: &SectionSoFar| {
        let lift = moved.lift.iter().find(|lift| lift.section == one.name)?;
        let level = one.result.or_else(|| one.seen.last().map(|(_, level)| *level))?;
        Some(Asked { moved, so_far, one, lift, level, follows: &follows }.decide())
    };
    so_far.sections.iter().filter_map(of).collect()
}

struct Asked<'a> {
    moved: &'a Plan,
    so_far: &'a SoFar,
    one: &'a SectionSoFar,
    lift: &'a SectionLift,
    level: Level,
    follows: &'a [Instruction],
}

/// What a fresh mix would bring.
struct Fresh {
    minutes: Option<Interval<Duration>>,
    chance: Interval<Share>,
    strain: Strain,
}

impl Asked<'_> {
    fn decide(&self) -> SecondApplication {
        let (target, limit) = (self.lift.target_level, self.lift.limit);
        let carried = self.carried();
        let on_hair = Duration::nearest(carried.iter().map(|time| time.min()).sum());
        let start = carried.iter().fold(self.lift.lightening, |lightening, time| lightening.after(*time));
        let missing = (target - self.level).levels();
        let reached = missing <= REACHED_WITHIN_LEVELS.value;
        let fresh = self.fresh(&start, &carried);
        let situation = self.lift.situation;
        let all: Vec<_> = carried.iter().map(|time| (situation, *time)).collect();
        let Sourced { value: wait, .. } = weeks_between(condition(&all).strain);
        let not_before = Start::Day(later(self.moved.start.earliest().date(), wait.low()));
        let mut rejected = Vec::new();
        let (decision, reasons) = self.choose((missing, reached), &carried, &fresh, &mut rejected);
        SecondApplication {
            section: self.one.name.clone(),
            level: self.level,
            target_level: target,
            decision,
            reasons,
            rejected,
            applications: carried.len(),
            on_hair,
            fresh: fresh.minutes.filter(|_| !reached),
            fresh_chance: fresh.chance,
            strain_with_fresh: fresh.strain,
            wait,
            not_before,
            visits: if reached { Vec::new() } else { series(&start, target, limit, OFTEN, MOST_VISITS) },
            basis: Basis::Assumed,
        }
    }

    /// How long each application was on; one that is not begun by the log was so as planned.
    fn carried(&self) -> Vec<Duration> {
        let one = |begun: Duration, until: Duration| Duration::nearest((until.min() - begun.min()).max(0.0));
        let mut carried: Vec<Duration> =
            self.one.earlier.iter().map(|earlier| one(earlier.begun, earlier.rinsed)).collect();
        carried.push(match self.one.begun {
            Some(begun) => one(begun, self.one.rinsed.unwrap_or(self.so_far.now)),
            None => self.lift.limit,
        });
        carried
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
        Fresh { minutes, chance: start.chance_between(target, limit), strain }
    }

    /// The decision with its reasons; what was not taken goes on the list.
    fn choose(
        &self,
        (missing, reached): (f64, bool),
        carried: &[Duration],
        fresh: &Fresh,
        rejected: &mut Vec<AgainRejected>,
    ) -> (Again, Vec<String>) {
        let mut reject = |what: Again, why: &str| rejected.push(AgainRejected { what, why: why.to_owned() });
        let (level, target) = (self.level, self.lift.target_level);
        if let Some(stop) = self.stop() {
            for what in [Again::StopAndTone, Again::FreshMix] {
                reject(what, stop);
            }
            return (Again::TreatOnly, vec![stop.to_owned()]);
        }
        let state = if reached {
            format!("{level} is seen and {target} was wanted")
        } else {
            format!("{level} is seen, {} short of {target}", levels(missing))
        };
        if reached {
            reject(Again::FreshMix, "the level is reached: more oxidises the fibre for nothing");
            let mut reasons = vec![state];
            reasons.extend(self.elasticity_in_words().map(str::to_owned));
            return (Again::StopAndTone, reasons);
        }
        let on = carried.last().copied().unwrap_or(Duration::ZERO);
        if self.one.rinsed.is_none() && on.min() < self.lift.limit.min() {
            reject(Again::FreshMix, "what is on still works");
            reject(Again::StopAndTone, "the level is not reached, and time is left");
            let left = amount(Duration::nearest(self.lift.limit.min() - on.min()), 0);
            return (Again::GoOn, vec![state, format!("{left} min are left of one application")]);
        }
        reject(Again::StopAndTone, &format!("it would be toned at {level}; take that where the guest wishes it"));
        let against = self.against_fresh(carried, fresh);
        if let [first, ..] = against.as_slice() {
            reject(Again::FreshMix, first);
            let mut reasons = vec![state];
            reasons.extend(against);
            return (Again::NextVisit, reasons);
        }
        let chance = in_hundred(fresh.chance.best());
        let brings =
            format!("a fresh mix of the same strength reaches it within one application in {chance} of 100 cases");
        let open = self.not_known();
        if !open.is_empty() {
            reject(Again::FreshMix, &open.join("; "));
            return (Again::TestFirst, [vec![state], open, vec![brings]].concat());
        }
        reject(
            Again::NextVisit,
            "nothing that was tested or asked speaks against a fresh mix today, and it is worth its while",
        );
        let look = "look every five minutes from the first strand on, and rinse when the level is there".to_owned();
        (Again::FreshMix, vec![state, brings, look])
    }

    /// What has to come off whatever the level.
    fn stop(&self) -> Option<&str> {
        let here = |one: &&Instruction| one.section.as_ref().is_none_or(|name| *name == self.one.name);
        self.follows.iter().filter(|one| one.verdict == Verdict::Stop).find(here).map(|one| one.text.as_str())
    }

    fn elasticity_in_words(&self) -> Option<&'static str> {
        match self.one.elasticity {
            None => Some("elasticity is not noted: test a damp strand before the toner"),
            Some(Elasticity::Reduced) => Some("a strand returns slowly: tone gently, treat, test again"),
            Some(_) => None,
        }
    }

    /// All that speaks against a fresh mix today, hair and scalp first.
    fn against_fresh(&self, carried: &[Duration], fresh: &Fresh) -> Vec<String> {
        let mut against = Vec::new();
        if self.one.elasticity == Some(Elasticity::Reduced) {
            against.push("a strand returns slowly: no second application today".to_owned());
        }
        if let Some((at, Comfort::Itching)) = self.so_far.comfort {
            against.push(format!("the scalp itches since minute {}", amount(at, 0)));
        }
        let most = MOST_APPLICATIONS.value;
        if carried.len() >= most {
            against.push(format!("it was put on {} times today: {most} are the most in a visit", carried.len()));
        }
        if fresh.strain == Strain::Severe {
            against.push("with a fresh mix today the strain would be severe: breaking has to be expected".to_owned());
        }
        let (chance, limit) = (in_hundred(fresh.chance.best()), amount(self.lift.limit, 0));
        if fresh.chance.best().percent() < WORTH_PERCENT.value {
            against.push(format!("even a fresh mix reaches it within {limit} min in {chance} of 100 cases only"));
        }
        against
    }

    /// What nobody noted, without which a fresh mix is not put on.
    fn not_known(&self) -> Vec<String> {
        let mut open = Vec::new();
        if self.one.elasticity.is_none() {
            open.push("elasticity is not noted: stretch a damp strand".to_owned());
        }
        if self.so_far.comfort.is_none() {
            open.push("nobody asked how the scalp feels".to_owned());
        }
        let seen = self.one.seen.last().map(|(at, _)| at.min()).filter(|_| self.one.result.is_none());
        if let (Some(seen), Some(rinsed)) = (seen, self.one.rinsed)
            && rinsed.min() - seen > LEAST_MIN
        {
            let before = amount(Duration::nearest(rinsed.min() - seen), 0);
            open.push(format!("the level was seen {before} min before the rinse: read it on a clean strand"));
        }
        open
    }
}

fn levels(missing: f64) -> String {
    let one = (missing - 1.0).abs() < 1e-9;
    format!("{} {}", number(missing, 2), if one { "level" } else { "levels" })
}
