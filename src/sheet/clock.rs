use super::writing::Writing;
use crate::{
    quantity::Duration,
    service::{Plan, Start, WorkStage},
    text::whole_minutes,
};

/// Times of the plan as the bench reads them: on the clock where the time of day is stated, else in minutes.
#[derive(Clone, Copy)]
pub(super) struct Clock {
    start: Start,
    rinsed: Duration,
    writing: Writing,
}

impl Clock {
    pub(super) fn of(plan: &Plan) -> Self {
        let sections = plan.order.iter().filter(|step| step.stage == WorkStage::Section);
        let rinsed =
            sections.fold(Duration::ZERO, |last, step| if step.rinse_by > last { step.rinse_by } else { last });
        Self { start: plan.start, rinsed, writing: Writing::of(plan.habits) }
    }

    pub(super) const fn writing(self) -> Writing {
        self.writing
    }

    pub(super) fn at(self, when: Duration, stage: WorkStage) -> String {
        let begun = self.after_first_brush(when, stage);
        self.start.plus(begun).map_or_else(|| whole_minutes(when), |at| self.writing.time(at))
    }

    /// The minutes from the first brush; toners and root shadows count from the last rinse before them.
    pub(super) fn after_first_brush(self, when: Duration, stage: WorkStage) -> Duration {
        if stage == WorkStage::Section { when } else { self.rinsed + when }
    }
}
