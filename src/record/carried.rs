//! What the hair of a section carried by the log, and what that did to the fibre.

use super::{SectionSoFar, SoFar};
use crate::{
    lift::{Strain, condition},
    quantity::{Duration, Quantity},
    service::SectionLift,
};

/// What the fibre of a lightened section went through.
pub(crate) struct Undergone {
    /// By the model.
    pub(crate) strain: Strain,
    /// How long each application was on.
    pub(crate) carried: Vec<Duration>,
    /// Whether begin and rinse of the last are noted; else it is taken as on at least as long as planned.
    pub(crate) is_noted: bool,
}

impl Undergone {
    /// Of a section as the log has it.
    pub(crate) fn of(lift: &SectionLift, so_far: &SoFar) -> Self {
        let one = so_far.sections.iter().find(|one| one.name == lift.section);
        let mut carried = one.map_or_else(|| vec![lift.limit], |one| one.carried_each(so_far.now, lift.limit));
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

impl SectionSoFar {
    /// How long each application was on: one that is not rinsed until now, and one that is not begun by the log as planned.
    pub(super) fn carried_each(&self, now: Duration, planned: Duration) -> Vec<Duration> {
        let one = |begun: Duration, until: Duration| Duration::nearest((until.min() - begun.min()).max(0.0));
        let mut carried: Vec<Duration> =
            self.earlier.iter().map(|earlier| one(earlier.begun, earlier.rinsed)).collect();
        carried.push(match self.begun {
            Some(begun) => one(begun, self.rinsed.unwrap_or(now)),
            None => planned,
        });
        carried
    }

    /// The longest that it carried mixture without a rinse between; none before the last is rinsed.
    pub(super) fn longest_carried(&self) -> Option<Duration> {
        let (mut longest, mut unrinsed) = (0.0_f64, 0.0);
        for earlier in &self.earlier {
            unrinsed += earlier.rinsed.min() - earlier.begun.min();
            longest = longest.max(unrinsed);
            if earlier.rinse_noted {
                unrinsed = 0.0;
            }
        }
        let last = self.rinsed?.min() - self.begun?.min();
        Some(Duration::nearest(longest.max(unrinsed + last.max(0.0))))
    }
}
