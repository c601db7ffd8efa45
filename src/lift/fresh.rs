//! What a fresh mix brings after all that the hair has carried: the one figure of a plan, of a look and of a log.

use super::Lightening;
use crate::{
    choice::choice,
    colour::Level,
    quantity::{Duration, Share},
    source::{Interval, Sourced},
    text::of_hundred,
};

/// A fresh mix is worth it where it reaches the target in so many of 100 cases.
const WORTH_PERCENT: Sourced<f64> = Sourced::assumed(50.0);

choice! {
    /// What to do after a look.
    Next: "next step" {
        /// The target is reached, or it is time: rinse.
        Rinse = "rinse",
        /// Go on, and look again.
        GoOn = "go-on" => "go on",
        /// The planned time is up, and nobody has looked of late: look, and rinse if it is there.
        LookNow = "look-now" => "look now, and rinse if it is there",
        /// This mixture will not get there within its limit; a fresh one probably would.
        FreshMix = "fresh-mix" => "rinse, and consider a fresh mix",
        /// Not today: rinse, and plan another visit.
        NextVisit = "next-visit" => "rinse, and plan the rest for another visit",
    }
}

impl Next {
    /// Whether it comes off now.
    pub(crate) fn comes_off(self) -> bool {
        !matches!(self, Self::GoOn | Self::LookNow)
    }
}

impl Lightening {
    /// The same hair after all applications that it carried.
    pub(crate) fn after_each(self, carried: &[Duration]) -> Self {
        carried.iter().fold(self, |lightening, time| lightening.after(*time))
    }
}

/// The chance that a fresh mix of the same strength reaches a target within one application, with what it is from either bound of
/// the start, for hair that has carried so much.
pub(crate) fn chance_of_fresh(
    lightening: &Lightening,
    carried: &[Duration],
    target: Level,
    limit: Duration,
) -> Interval<Share> {
    lightening.after_each(carried).chance_between(target, limit)
}

/// Whether such a chance is worth a fresh mix, by the best estimate.
pub(crate) fn is_worth_it(chance: Share) -> bool {
    chance.percent() >= WORTH_PERCENT.value
}

/// What follows where the time is up and the target is not reached, and why.
pub(crate) fn at_the_limit(
    (limit, seen, target): (Duration, Level, Level),
    chance: &Interval<Share>,
) -> (Next, String) {
    let (next, even, only) = if is_worth_it(chance.best()) {
        (Next::FreshMix, "a fresh mix of the same strength", "")
    } else {
        (Next::NextVisit, "even a fresh mix", " only")
    };
    let cases = of_hundred(chance);
    (next, format!("the limit of {limit} is reached at {seen}; {even} reaches {target} in {cases} cases{only}"))
}
