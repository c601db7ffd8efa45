//! The stage before the mixes: a strength and a start for every section whose developer is left open.

use super::{
    developer::{self, Candidate},
    proportion,
    sections::{Sections, Work},
    shelf_strengths::{self, Possible},
    situation::{longest, situation},
    together::{ChosenStrength, RejectedStrength, TogetherPlan, TogetherSection},
};
use crate::{
    colour::{Level, LevelChange},
    lift::{Belief, CannotFinish, Experience, FinishTogether, Lightening, TimedSection, finish_together},
    quantity::{Duration, MassFraction, Quantity},
    reader::{InField, Problems},
    service::{
        request::{Oxidant, Request, guest},
        shape::WaitFor,
    },
    text::{in_hundred, number, span},
};

/// What the stage came to.
#[derive(Debug, Default)]
pub(super) struct Strengths {
    timed: Vec<Timed>,
    pub(super) chosen: Vec<ChosenStrength>,
    pub(super) together: Vec<TogetherPlan>,
}

/// What is set for one section.
#[derive(Debug, Clone, Copy)]
struct Timed {
    place: usize,
    developer: Option<MassFraction>,
    /// The place of the section with which its group begins, and begin and rinse counted from that.
    schedule: Option<(usize, Duration, Duration)>,
}

impl Strengths {
    pub(super) fn of(request: &Request, sections: &Sections<'_>, known: &Experience) -> Result<Self, Problems> {
        let mut strengths = Self::default();
        let stocks = developer::candidates(request);
        for group in groups(sections) {
            if group.iter().any(|(work, _)| is_open(work)) {
                strengths.add(request, &stocks, &group, known)?;
            }
        }
        Ok(strengths)
    }

    /// The strength chosen for the section at this place.
    pub(super) fn developer(&self, place: usize) -> Option<MassFraction> {
        self.at(place)?.developer
    }

    /// The place whose begin the times count from, and begin and rinse of the section at `place`.
    pub(super) fn schedule(&self, place: usize) -> Option<(usize, Duration, Duration)> {
        self.at(place)?.schedule
    }

    fn at(&self, place: usize) -> Option<&Timed> {
        self.timed.iter().find(|timed| timed.place == place)
    }

    fn add(
        &mut self,
        request: &Request,
        stocks: &[Candidate<'_>],
        group: &[(&Work<'_>, Duration)],
        known: &Experience,
    ) -> Result<(), Problems> {
        let members: Result<Vec<_>, _> =
            group.iter().map(|(work, busy)| Member::new(request, stocks, (work, *busy), known)).collect();
        let members = members?;
        let timed: Vec<TimedSection> = members.iter().map(|member| member.timed.clone()).collect();
        let answer = finish_together(&timed, request.window);
        let first = members.first().map_or(0, |member| member.work.place);
        for (i, member) in members.iter().enumerate() {
            let choice = answer.as_ref().ok().and_then(|answer| answer.sections.get(i).copied());
            let strength = choice.map_or_else(|| member.alone(), |choice| choice.strength);
            let rinse = answer.as_ref().map_or(Duration::ZERO, |answer| answer.rinse);
            let open = is_open(member.work);
            let developer = member.possible.get(strength).filter(|_| open).map(|one| one.developer.best());
            let schedule = choice.map(|choice| (first, choice.begin, rinse));
            self.timed.push(Timed { place: member.work.place, developer, schedule });
            if open {
                self.chosen.extend(member.chosen(strength, choice.is_some()));
            }
        }
        self.together.push(together(request, &members, answer));
        Ok(())
    }
}

fn is_open(work: &Work<'_>) -> bool {
    work.task.oxidant == Oxidant::Open
}

/// Lightened sections that can be rinsed together, each with the minutes of other work before it. One that waits for
/// another to have developed begins a new group.
fn groups<'s, 'r>(sections: &'s Sections<'r>) -> Vec<Vec<(&'s Work<'r>, Duration)>> {
    let mut groups: Vec<Vec<(&Work, Duration)>> = Vec::new();
    let mut busy = 0.0;
    for work in sections.iter().filter(|work| work.is_section()) {
        if !work.lightens() {
            busy += work.task.apply.min();
            continue;
        }
        let waits = |earlier: &(&Work<'r>, Duration)| {
            work.waits_for(earlier.0).any(|what| matches!(what, WaitFor::Development | WaitFor::Rinse))
        };
        match groups.last_mut() {
            Some(group) if !group.iter().any(waits) => group.push((work, Duration::nearest(busy))),
            _ => groups.push(vec![(work, Duration::ZERO)]),
        }
        busy = 0.0;
    }
    groups
}

/// A section of a group.
struct Member<'s, 'r> {
    work: &'s Work<'r>,
    possible: Vec<Possible>,
    refused: Vec<(MassFraction, String)>,
    target: Level,
    timed: TimedSection,
}

impl<'s, 'r> Member<'s, 'r> {
    fn new(
        request: &Request,
        stocks: &[Candidate<'_>],
        (work, busy_before): (&'s Work<'r>, Duration),
        known: &Experience,
    ) -> Result<Self, Problems> {
        let field = &work.task.field;
        let (_, liquid) = proportion::split(work.ratio.as_ref(), work.task.amount.value.best()).in_field(field)?;
        let shelf = shelf_strengths::strengths(request, stocks, work, liquid).in_field(field)?;
        let product = work.products.first().map(|(item, _)| item.name.as_str());
        let belief: Belief = known.of(Some(guest(&request.file)), product);
        let on_hair: Vec<_> = shelf.possible.iter().map(|one| one.on_hair).collect();
        let first = on_hair.first().copied().ok_or("there is no developer on the shelf").in_field(field)?;
        let start = work.darkest;
        let target = work.task.target.unwrap_or(start.best());
        let timed = TimedSection {
            belief,
            situation: situation(request, work, first),
            on_hair,
            start,
            target,
            tolerance: request.tolerance,
            busy_before,
            apply: work.task.apply,
            longest: longest(work),
        };
        let mut member = Self { work, possible: shelf.possible, refused: shelf.refused, target, timed };
        if !is_open(work) {
            // A strength that is stated is timed by what it reaches, not by a target that it never will.
            let reached = member.lightening(0).level_after(member.time()).best();
            let short = Level::clamped((reached.number() - 0.05).max(start.best().number()));
            member.timed.target = if short < target { short } else { target };
        }
        Ok(member)
    }

    /// The longest that its middle strand may carry it.
    fn time(&self) -> Duration {
        Duration::nearest((self.timed.longest.min() - self.timed.apply.min() / 2.0).max(0.0))
    }

    fn lightening(&self, strength: usize) -> Lightening {
        let on_hair = self.timed.on_hair.get(strength).copied().unwrap_or(self.timed.situation.on_hair);
        let situation = crate::lift::Situation { on_hair, ..self.timed.situation };
        Lightening::new(&self.timed.belief, &situation, self.timed.start)
    }

    /// The weakest that is expected to reach the target in its own time, else the strongest.
    fn alone(&self) -> usize {
        let reaches = |i: &usize| self.lightening(*i).level_after(self.time()).best() >= self.target;
        (0..self.possible.len()).find(reaches).unwrap_or(self.possible.len().saturating_sub(1))
    }

    fn chosen(&self, strength: usize, together: bool) -> Option<ChosenStrength> {
        let chosen = self.possible.get(strength)?;
        let reached = self.reach(strength);
        let why = match (together, self.lightening(strength).level_after(self.time()).best() >= self.target) {
            (true, true) => format!("the weakest with which all finish together: {reached}"),
            (true, false) => format!("the nearest that the shelf has: {reached}"),
            (false, true) => format!("the weakest that reaches the target in its own time: {reached}"),
            (false, false) => format!("the strongest that may be used: {reached}"),
        };
        let shown = |i: usize, one: &Possible| i != strength && (one.bottle || i.abs_diff(strength) == 1);
        let others = self.possible.iter().enumerate().filter(|(i, one)| shown(*i, one)).map(|(i, one)| {
            let enough = self.lightening(i).level_after(self.time()).best() >= self.target;
            let why = match (i < strength, enough) {
                (true, false) => format!("too weak: {}", self.reach(i)),
                (true, true) => format!("too slow to finish with the others: {}", self.reach(i)),
                (false, _) if reached_is_enough(self, strength) => "not needed: a weaker one does it".to_owned(),
                (false, _) => format!("does not fit the times of the others: {}", self.reach(i)),
            };
            RejectedStrength { developer: one.developer.best(), why }
        });
        let refused =
            self.refused.iter().map(|(developer, why)| RejectedStrength { developer: *developer, why: why.clone() });
        let mut rejected: Vec<RejectedStrength> = others.chain(refused).collect();
        rejected.sort_by(|a, b| a.developer.ww_percent().total_cmp(&b.developer.ww_percent()));
        let section = self.work.name().to_owned();
        Some(ChosenStrength { section, developer: chosen.developer, on_hair: chosen.on_hair, why, rejected })
    }

    /// What a strength does in the time there is, in words.
    fn reach(&self, strength: usize) -> String {
        let (lightening, time) = (self.lightening(strength), self.time());
        let chance = span(&lightening.chance_between(self.target, time), in_hundred);
        let level = number(lightening.level_after(time).best().number(), 1);
        let target = self.target;
        let in_time = format!("{level} after {} min, {target} by then in {chance} of 100 cases", number(time.min(), 0));
        match lightening.time_to(target).median {
            Some(at) if at <= time => format!("{target} after about {} min; {in_time}", number(at.min(), 0)),
            _ => in_time,
        }
    }
}

fn reached_is_enough(member: &Member<'_, '_>, strength: usize) -> bool {
    member.lightening(strength).level_after(member.time()).best() >= member.target
}

fn together(
    request: &Request,
    members: &[Member<'_, '_>],
    answer: Result<FinishTogether, CannotFinish>,
) -> TogetherPlan {
    let name = |i: usize| members.get(i).map(|member| member.work.name().to_owned()).unwrap_or_default();
    let names: Vec<String> = (0..members.len()).map(name).collect();
    match answer {
        Ok(answer) => {
            let short = answer.short > LevelChange::NONE;
            let wider = answer.window > request.window;
            let why_not = match (short, wider) {
                (true, _) => Some(format!(
                    "no strength of the shelf brings all to their targets in their times: the nearest falls {} levels \
                     short; agree on a lower target or a second visit, or allow more time where the product does",
                    number(answer.short.levels(), 1)
                )),
                (false, true) => Some(format!(
                    "not within {} of each other: the nearest is {} min; apply in another order, split the longest \
                     section, or work with a helper",
                    request.window,
                    number(answer.window.min(), 0)
                )),
                _ => None,
            };
            let sections = names.into_iter().zip(&answer.sections).map(|(section, choice)| TogetherSection {
                section,
                begin: choice.begin,
                reaches: Some(choice.reaches).filter(|_| !short),
                at_rinse: choice.level,
            });
            TogetherPlan {
                sections: sections.collect(),
                rinse: Some(answer.rinse),
                window_asked: request.window,
                window_needed: Some(answer.window).filter(|_| !short),
                short: answer.short,
                why_not,
            }
        }
        Err(why) => {
            let (CannotFinish::NoStrength(i) | CannotFinish::TooLongToApply(i)) = why else {
                return TogetherPlan::none(request.window, why.to_string());
            };
            let about = name(i.saturating_sub(1));
            TogetherPlan::none(request.window, format!("{why} (section {i} is {about}); each is timed by itself"))
        }
    }
}
