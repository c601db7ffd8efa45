//! What the hair of a section carried by the log, and what that did to the fibre.

use super::{SectionSoFar, SoFar, begun::as_begun, instructions};
use crate::{
    finding::Verdict,
    lift::{Strain, condition},
    quantity::{Duration, Quantity},
    service::{Plan, SectionLift},
};

/// What the fibre of a lightened section went through.
pub(crate) struct Undergone {
    /// By the model.
    pub(crate) strain: Strain,
    /// How long each application was on; what was begun again without a noted rinse is one.
    pub(crate) carried: Vec<Duration>,
    /// Whether begin and rinse of the last are noted; else it is taken as on at least as long as planned.
    pub(crate) is_noted: bool,
}

impl Undergone {
    /// Of each lightened section that the log says was on; of all as planned where it says so of none, unless it says stop.
    pub(crate) fn all<'p>(plan: &'p Plan, so_far: &SoFar) -> Vec<(&'p str, Self)> {
        let was_on = |lift: &&SectionLift| so_far.sections.iter().any(|one| one.name == lift.section && one.was_on());
        let stopped = || instructions(so_far).iter().any(|one| one.verdict == Verdict::Stop);
        let none = !plan.lift.iter().any(|lift| was_on(&lift));
        let as_planned = none && !stopped();
        let counted = plan.lift.iter().filter(|lift| as_planned || was_on(lift));
        counted.map(|lift| (lift.section.as_str(), Self::of(plan, lift, so_far))).collect()
    }

    /// Of a section as the log has it.
    fn of(plan: &Plan, lift: &SectionLift, so_far: &SoFar) -> Self {
        let one = so_far.sections.iter().find(|one| one.name == lift.section);
        let begun = one.map(|one| as_begun(plan, one));
        let mut carried = begun.map_or_else(|| vec![lift.limit], |one| one.carried_each(so_far.now, lift.limit));
        let is_noted = one.is_some_and(|one| one.carried().is_some());
        if let (false, Some(last)) = (is_noted, carried.last_mut()) {
            // The service is over, and nobody knows when it was rinsed: not read better than it may be.
            *last = Duration::nearest(last.min().max(lift.limit.min()));
        }
        let all: Vec<_> = carried.iter().map(|time| (lift.situation, *time)).collect();
        Self { strain: condition(&all).strain, carried, is_noted }
    }

    /// All applications together.
    pub(crate) fn minutes(&self) -> f64 {
        self.carried.iter().map(|time| time.min()).sum()
    }
}

/// A time that the hair carried mixture, without a noted rinse in it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Stretch {
    /// Its first strand.
    pub(super) begun: Duration,
    /// When all of it was on, where somebody noted it.
    pub(super) applied: Option<Duration>,
    /// Its rinse.
    end: Duration,
}

impl Stretch {
    pub(super) fn min(&self) -> f64 {
        (self.end.min() - self.begun.min()).max(0.0)
    }
}

impl SectionSoFar {
    /// Every time that it carried mixture: what was begun again without a noted rinse goes on with what was on before. What is not
    /// rinsed lasts until `now`.
    pub(super) fn stretches(&self, now: Duration) -> Vec<Stretch> {
        let earlier = self.earlier.iter().map(|one| (one.begun, one.applied, one.rinsed, one.rinse_noted));
        // Where nobody noted the first strand, it was on from the end of its application at the latest.
        let begun = self.begun.or(self.applied);
        let last = begun.map(|begun| (begun, self.applied, self.rinsed.unwrap_or(now), true));
        let (mut all, mut goes_on) = (Vec::<Stretch>::new(), false);
        for (begun, applied, end, rinse_noted) in earlier.chain(last) {
            match all.last_mut().filter(|_| goes_on) {
                Some(before) => before.end = end,
                None => all.push(Stretch { begun, applied, end }),
            }
            goes_on = !rinse_noted;
        }
        all
    }

    /// What is on now, from its first strand; from the end of its application where nobody noted the first.
    pub(super) fn on_now(&self, now: Duration) -> Option<Stretch> {
        if self.rinsed.is_some() { None } else { self.stretches(now).pop() }
    }

    /// How long each application was on: one that is not rinsed until now, and one that is not begun by the log as planned.
    pub(super) fn carried_each(&self, now: Duration, planned: Duration) -> Vec<Duration> {
        match self.begun {
            Some(_) => self.stretches(now).iter().map(|one| Duration::nearest(one.min())).collect(),
            None => vec![planned],
        }
    }

    /// Whether the log says anything that is said only of hair that carried its mixture.
    pub(crate) fn was_on(&self) -> bool {
        let times = self.begun.or(self.applied).or(self.rinsed).is_some();
        times || self.was_looked_at() || self.elasticity.is_some()
    }

    /// Whether somebody looked at it while it was on; a strand may be tested before.
    pub(super) fn was_looked_at(&self) -> bool {
        !self.seen.is_empty() || self.result.is_some() || self.foil_worst.is_some()
    }
}
