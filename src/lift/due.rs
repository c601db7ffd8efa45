//! From the planned minute to the longest that the products allow: the one rule of every door.

use crate::{
    quantity::{Duration, Quantity},
    source::{Sourced, citations::trade},
    text::whole_minutes,
};

/// From one look to the next: the earlier figure of the published range, since a late look cannot be made up for.
pub(super) const NEXT_LOOK_MIN: Sourced<f64> = Sourced::published(5.0, &trade::CHECK_INTERVAL);

/// How long something is on whose level is not there yet, from its first strand.
///
/// The planned minute is an estimate and the longest that the products allow is the limit. Until the planned minute it is left on. From
/// then on it is left on only as long as looks show that it is not there: at the planned minute or after it, with no look for one
/// interval of looks, somebody looks now. At the longest it is rinsed, whatever it shows. Where the longest is not known, the planned
/// minute is the limit.
///
/// What is seen at the target or past it, and what burns, itches, swells, breaks or stretches is rinsed at any minute: who asks has
/// looked at that first.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct TimeOn {
    /// How long it is on.
    pub(crate) on: Duration,
    /// How long it is planned to be on.
    pub(crate) planned: Duration,
    /// The longest that its products allow, where it is known.
    pub(crate) longest: Option<Duration>,
    /// When its level was looked at last, where somebody did since it is on.
    pub(crate) looked: Option<Duration>,
}

/// What the time says where the level is not there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Due {
    /// The planned time is not up.
    Working,
    /// It is up, and nobody looked of late.
    LookNow,
    /// It is up, and a look has shown that the level is not there.
    LeaveOn,
    /// The longest is reached.
    Rinse,
}

impl TimeOn {
    /// When it comes off, whatever it shows.
    pub(crate) fn end(&self) -> Duration {
        self.longest.unwrap_or(self.planned)
    }

    /// What the time says; at a bound, what is said from then on.
    pub(crate) fn due(&self) -> Due {
        let of_late = |looked: Duration| self.on.min() - looked.min() < NEXT_LOOK_MIN.value;
        if self.on >= self.end() {
            Due::Rinse
        } else if self.on < self.planned {
            Due::Working
        } else if self.looked.is_some_and(of_late) {
            Due::LeaveOn
        } else {
            Due::LookNow
        }
    }

    /// When to look again, never in the past; none where it comes off.
    pub(crate) fn look_again(&self) -> Option<Duration> {
        let next = self.looked.map_or(self.on.min(), |looked| looked.min() + NEXT_LOOK_MIN.value).max(self.on.min());
        let end = self.end().min();
        match self.due() {
            // The planned minute is a look of its own.
            Due::Working => Some(Duration::nearest(next.min(self.planned.min()).min(end))),
            Due::LookNow => Some(self.on),
            Due::LeaveOn => Some(Duration::nearest(next.min(end))),
            Due::Rinse => None,
        }
    }

    /// What follows from the planned minute on, on a clock that shows `begun` at the first strand; none before it, and none where it
    /// comes off.
    pub(crate) fn told(&self, begun: Duration) -> Option<String> {
        let on_clock = |at: Duration| whole_minutes(Duration::nearest(begun.min() + at.min()));
        let latest = on_clock(self.end());
        match self.due() {
            Due::Working | Due::Rinse => None,
            Due::LookNow => {
                let since = self.looked.map(|looked| format!(" since minute {}", on_clock(looked))).unwrap_or_default();
                Some(format!(
                    "the planned time is up, and nobody looked at its level{since}: look now, and rinse if it is there; rinse at \
                     minute {latest} at the latest, whatever the level"
                ))
            }
            Due::LeaveOn => {
                let left = whole_minutes(Duration::nearest(self.end().min() - self.on.min()));
                let again = self.look_again().map(on_clock).unwrap_or_default();
                Some(format!(
                    "the planned time is up; {left} min are left of the longest that the product allows: look again at minute \
                     {again}, and rinse at minute {latest} at the latest, whatever the level"
                ))
            }
        }
    }
}
