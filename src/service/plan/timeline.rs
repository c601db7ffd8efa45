//! The fifth stage: when each task is mixed, applied, looked at and rinsed.

use super::{
    Hair, Mix,
    own_times::OwnTimes,
    sections::{Sections, Work},
    strengths::Strengths,
};
use crate::{
    hair::Texture,
    lift,
    quantity::{Duration, Quantity},
    service::{request::WorkStage, shape::WaitFor},
};
use schemars::JsonSchema;
use serde::Serialize;

/// One line of the running order. Times count from the first brush; those of toners and root shadows from the end of the
/// last rinse before them.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Step {
    /// Place in the order, from one.
    pub number: usize,
    /// The section, toner or root shadow.
    pub name: String,
    /// Which of these it is.
    pub stage: WorkStage,
    /// When its bowls are mixed.
    #[serde(rename = "mix_at_min")]
    pub mix_at: Vec<Duration>,
    /// When its application begins.
    #[serde(rename = "begin_min")]
    pub begin: Duration,
    /// When its application ends.
    #[serde(rename = "applied_min")]
    pub applied: Duration,
    /// When to look at it: its first strands, and from [`look_at_last`](Self::look_at_last) on its last ones too.
    #[serde(rename = "look_at_min")]
    pub look_at: Vec<Duration>,
    /// The look from which on the last strand is looked at too; none where it is looked at only when it is rinsed.
    #[serde(rename = "look_at_last_min")]
    pub look_at_last: Option<Duration>,
    /// When it is planned to be rinsed, never beyond a product's own limit.
    #[serde(rename = "rinse_by_min")]
    pub rinse_by: Duration,
    /// When it comes off at the latest: by the longest of its products where all of them state theirs, else as planned.
    #[serde(rename = "off_by_min")]
    pub off_by: Duration,
    /// The longest that its products let a first strand carry it. Not part of the plain data, as the shelf has it.
    #[serde(skip)]
    #[schemars(skip)]
    pub(crate) longest: OwnTimes,
    /// The sections that a toner goes on; none of what is no toner. Not part of the plain data, as the service file has it.
    #[serde(skip)]
    #[schemars(skip)]
    pub(crate) goes_on: Vec<String>,
}

impl Step {
    /// The longest that its products let a first strand carry it, where it is known: all of them say it, or what they say ends no later
    /// than planned. Where nobody noted when all was on, it took as long as planned.
    pub(crate) fn longest_known(&self, begun: Duration, applied: Option<Duration>) -> Option<Duration> {
        let planned = self.rinse_by.min() - self.begin.min();
        self.longest_stated(begun, applied).filter(|own| own.min() <= planned || self.longest.by_all())
    }

    /// The longest by the products that state theirs.
    pub(crate) fn longest_stated(&self, begun: Duration, applied: Option<Duration>) -> Option<Duration> {
        let applying = applied.map_or(self.applied.min() - self.begin.min(), |applied| applied.min() - begun.min());
        self.longest.longest_on_first_strand(Duration::nearest(applying.max(0.0)))
    }
}

/// The running order of one pair of hands: each application begins when the one before it ends, and what it waits for is
/// over.
pub(super) struct Timeline(pub(super) Vec<Step>);

impl Timeline {
    pub(super) fn of(
        hair: &Hair,
        sections: &Sections<'_>,
        mixes: &[Mix],
        strengths: &Strengths,
        after: Duration,
    ) -> Self {
        let texture = hair.texture.unwrap_or_default();
        // Steps before the colour are over when the first section begins.
        let mut clock = [after.min(), 0.0];
        let [on_the_hair, after_rinsing] = &mut clock;
        let mut steps: Vec<Step> = Vec::new();
        for (work, mix) in sections.iter().zip(mixes) {
            let now = if work.is_section() { &mut *on_the_hair } else { &mut *after_rinsing };
            let begin = work.task.after.iter().fold(*now, |at, (before, what)| {
                let first = sections.places(&[*before]).find_map(|first| steps.get(first.place));
                first.map_or(at, |first| at.max(over(first, *what).min()))
            });
            // A section that finishes with others waits for its start.
            let schedule = strengths.schedule(work.place).map(|(first, wait, rinse)| {
                let from = steps.get(first).map_or(begin, |first| first.begin.min());
                (from + wait.min(), from + rinse.min())
            });
            let begin = schedule.map_or(begin, |(start, _)| begin.max(start));
            let applied = begin + work.task.apply.min();
            *now = applied;
            let longest = OwnTimes::of(work);
            let rinse_by = rinse_by(work, &longest, begin);
            let rinse_by = schedule.map_or(rinse_by, |(_, together)| rinse_by.min(together.max(applied)));
            let looks = Looks::of(work, texture, begin, applied, rinse_by);
            let fresh = mix.bowls.iter().flat_map(|bowl| &bowl.mixed_after);
            let by_products = longest.longest_on_first_strand(work.task.apply).filter(|_| longest.by_all());
            let off_by = by_products.map_or(rinse_by, |most| rinse_by.max(begin + most.min()));
            steps.push(Step {
                number: steps.len() + 1,
                name: work.name().to_owned(),
                stage: work.stage(),
                mix_at: fresh.map(|after| min(begin + after.min())).collect(),
                begin: min(begin),
                applied: min(applied),
                look_at: looks.at,
                look_at_last: looks.last,
                rinse_by: min(rinse_by),
                off_by: min(off_by),
                longest,
                goes_on: sections.places(&work.task.goes_on).map(|on| on.name().to_owned()).collect(),
            });
        }
        Self(steps)
    }

    pub(super) fn at(&self, work: &Work<'_>) -> Option<&Step> {
        self.0.get(work.place)
    }

    /// What the same hands apply after it, in the order of their beginnings.
    pub(super) fn later(&self, work: &Work<'_>) -> impl Iterator<Item = &Step> {
        let of_sections = work.is_section();
        self.0.iter().skip(work.place + 1).filter(move |step| (step.stage == WorkStage::Section) == of_sections)
    }

    /// When the last rinse before the toners is due; rinsing itself is not counted.
    pub(super) fn last_rinse(&self) -> Duration {
        last_rinse(&self.0)
    }

    /// When the last toner or root shadow is to be rinsed, after that.
    pub(super) fn after_rinse(&self) -> Duration {
        end(self.0.iter().filter(|step| step.stage != WorkStage::Section))
    }
}

/// When the last rinse before the toners is due.
pub(super) fn last_rinse(steps: &[Step]) -> Duration {
    end(steps.iter().filter(|step| step.stage == WorkStage::Section))
}

fn end<'s>(steps: impl Iterator<Item = &'s Step>) -> Duration {
    steps.map(|step| step.rinse_by).fold(Duration::ZERO, |last, at| if at > last { at } else { last })
}

/// When what a section waits for is over.
fn over(first: &Step, what: WaitFor) -> Duration {
    match what {
        WaitFor::Application | WaitFor::FoilClosing => first.applied,
        WaitFor::Development | WaitFor::Rinse => first.rinse_by,
    }
}

/// As planned, or earlier where a product's own limit is reached earlier.
fn rinse_by(work: &Work<'_>, longest: &OwnTimes, begin: f64) -> f64 {
    let planned = begin + work.task.apply.min() + work.task.develop.min();
    longest.longest_on_first_strand(work.task.apply).map_or(planned, |most| planned.min(begin + most.min()))
}

/// When one section is looked at.
struct Looks {
    at: Vec<Duration>,
    last: Option<Duration>,
}

impl Looks {
    /// Lighteners are looked at again and again, from the first strand on; colour once, when it is rinsed.
    ///
    /// The looks are no farther apart than the cited first look may vary, so one of them meets the last strand when the
    /// first look at it is due.
    fn of(work: &Work<'_>, texture: Texture, begin: f64, applied: f64, rinse_by: f64) -> Self {
        if !work.lightens() {
            return Self { at: vec![min(rinse_by)], last: None };
        }
        let from_first = lift::looks(texture, min(rinse_by - begin));
        // The same rule, asked for the first look alone.
        let due = applied + lift::looks(texture, Duration::MAX).first().map_or(0.0, |first| first.min());
        // The last bits of a sum are no minute beyond the rinse.
        let at: Vec<Duration> = from_first.iter().map(|look| min((begin + look.min()).min(rinse_by))).collect();
        let last = at.iter().copied().find(|look| look.min() >= due && look.min() < rinse_by);
        Self { at, last }
    }
}

/// Sums of a file's durations, each of them a few hours at most.
fn min(minutes: f64) -> Duration {
    Duration::nearest(minutes)
}
