//! The fifth stage: when each task is mixed, applied, looked at and rinsed.

use super::{
    Mix,
    sections::{Sections, Work},
};
use crate::{
    quantity::{Duration, Quantity},
    service::request::WorkStage,
    source::{Sourced, citations::trade},
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
    /// When to look at it.
    #[serde(rename = "look_at_min")]
    pub look_at: Vec<Duration>,
    /// When it is to be rinsed at the latest.
    #[serde(rename = "rinse_by_min")]
    pub rinse_by: Duration,
}

/// First look at a lightener and the look after that, in minutes.
///
/// Source: retrieved pages collected in the register under `check-interval`: first check after 15 to 20 min, then every
/// 5 to 10 min. The earlier figure of each range is used, since a late look cannot be made up for.
const FIRST_LOOK: Sourced<f64> = Sourced::published(15.0, &trade::CHECK_INTERVAL);
const NEXT_LOOK: Sourced<f64> = Sourced::published(5.0, &trade::CHECK_INTERVAL);

/// The running order of one pair of hands: each application begins when the one before it ends.
pub(super) struct Timeline(pub(super) Vec<Step>);

impl Timeline {
    pub(super) fn of(sections: &Sections<'_>, mixes: &[Mix]) -> Self {
        let mut clock = [0.0; 2];
        let [on_the_hair, after_rinsing] = &mut clock;
        let mut steps = Vec::new();
        for (work, mix) in sections.iter().zip(mixes) {
            let now = if work.is_section() { &mut *on_the_hair } else { &mut *after_rinsing };
            let begin = *now;
            let applied = begin + work.task.apply.min();
            *now = applied;
            let rinse_by = applied + work.task.develop.min();
            let fresh = mix.bowls.iter().flat_map(|bowl| &bowl.mixed_after);
            steps.push(Step {
                number: steps.len() + 1,
                name: work.name().to_owned(),
                stage: work.stage(),
                mix_at: fresh.map(|after| min(begin + after.min())).collect(),
                begin: min(begin),
                applied: min(applied),
                look_at: looks(work, applied, rinse_by),
                rinse_by: min(rinse_by),
            });
        }
        Self(steps)
    }

    pub(super) fn at(&self, work: &Work<'_>) -> Option<&Step> {
        self.0.get(work.place)
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

/// Lighteners are looked at again and again; colour once, near the end.
fn looks(work: &Work<'_>, applied: f64, rinse_by: f64) -> Vec<Duration> {
    let mut looks = Vec::new();
    let mut at = applied + FIRST_LOOK.value;
    while work.lightens() && at < rinse_by {
        looks.push(min(at));
        at += NEXT_LOOK.value;
    }
    looks.push(min(rinse_by));
    looks
}

/// Sums of a file's durations, each of them a few hours at most.
fn min(minutes: f64) -> Duration {
    Duration::nearest(minutes)
}
