//! When to look at a section, what to look for, and what a level seen in mid-service changes.

use super::{
    Belief, Lightening, Reader, Situation, StrandReading,
    due::{Due, NEXT_LOOK_MIN, TimeOn},
    fresh::{Next, at_the_limit, chance_of_fresh},
};
use crate::{
    colour::Level,
    hair::Texture,
    quantity::{Duration, Quantity, Share},
    source::{Sourced, citations::trade},
    text::in_hundred,
};

/// First look, in minutes from the first strand.
///
/// The earlier figure of the published range, since a late look cannot be made up for; on fine hair the first look comes
/// at the time at which fine hair may be done.
const FIRST_LOOK_MIN: Sourced<f64> = Sourced::published(15.0, &trade::CHECK_INTERVAL);
const FIRST_LOOK_FINE_MIN: Sourced<f64> = Sourced::common_practice(10.0);

/// A level read by eye to the half step counts as reached within this.
const REACHED_WITHIN_LEVELS: Sourced<f64> = Sourced::assumed(0.25);

/// Whether a level is the one that is wanted, as far as the eye tells.
pub(crate) fn is_there(level: Level, target: Level) -> bool {
    (target - level).levels() <= REACHED_WITHIN_LEVELS.value
}

/// What to look for at every look, in the order of urgency.
pub const LOOK_FOR: [&str; 5] = [
    "comfort: burning, itching or pain means rinse now",
    "heat: a foil that gets hot, swells or bubbles is opened and rinsed at once",
    "swelling or gumminess of the strand: rinse",
    "moisture: where the mix has dried it lifts no further, so do not wait for it",
    "the level, on a strand wiped clean",
];

/// The looks at a section, in minutes from its first strand; the last is the limit itself.
///
/// # Example
///
/// ```
/// use foilwork::{hair::Texture, lift::looks, quantity::Duration};
///
/// let minutes: Vec<f64> = looks(Texture::Medium, Duration::from_min(28.0)?).iter().map(|at| at.min()).collect();
/// assert_eq!(minutes, [15.0, 20.0, 25.0, 28.0]);
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
///
/// # Source
///
/// Citation `check-interval`: first after 15 to 20 min, then every 5 to 10; 10 min on fine hair is common practice.
#[must_use]
pub fn looks(texture: Texture, limit: Duration) -> Vec<Duration> {
    let first = if texture == Texture::Fine { FIRST_LOOK_FINE_MIN } else { FIRST_LOOK_MIN };
    // More looks than this nobody makes; it keeps a limit typed in the wrong unit from filling the sheet.
    let mut looks: Vec<Duration> = (0..100u8)
        .map(|i| first.value + NEXT_LOOK_MIN.value * f64::from(i))
        .take_while(|at| *at < limit.min())
        .map(Duration::nearest)
        .collect();
    looks.push(limit);
    looks
}

/// What a level seen in mid-service says.
#[derive(Debug, Clone, PartialEq)]
pub struct AfterLook {
    /// What to do.
    pub next: Next,
    /// Why, in words.
    pub why: String,
    /// What is believed of this hair now.
    pub belief: Belief,
    /// When the target is reached, from the first strand: median and 80 % interval.
    pub reached: super::TimeTo,
    /// The chance that it is reached by the limit.
    pub chance_by_limit: Share,
    /// When to look again.
    pub look_again: Option<Duration>,
}

/// The section that is looked at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Look {
    /// The mixture and the hair.
    pub situation: Situation,
    /// Level at the start.
    pub start: Level,
    /// Level wanted.
    pub target: Level,
    /// Minutes since its first strand.
    pub at: Duration,
    /// Level seen now.
    pub seen: Level,
    /// How it was read.
    pub reader: Reader,
    /// How long it is planned to be on; the longest that a strand may carry the mixture, unless that is stated apart.
    pub limit: Duration,
    /// The longest that its products allow a strand to carry it, where that is known: from the planned time on it is left on until then,
    /// as long as looks show that the level is not there.
    pub longest: Option<Duration>,
}

impl Look {
    /// How long it is on, with this look just made.
    pub(crate) fn time(&self) -> TimeOn {
        TimeOn { on: self.at, planned: self.limit, longest: self.longest, looked: Some(self.at) }
    }
}

/// Revises what is believed by what is seen, and says what follows: rinse, go on, a fresh mix, or another visit.
///
/// It knows level and time only. Comfort, heat, swelling and elasticity come first, and any of them means rinse whatever
/// the level.
///
/// The planned time is an estimate: once it is up, what is not at the target is left on and looked at again, until the longest that its
/// products allow. There it is rinsed. Where that is not known, the planned time is the limit.
///
/// # Example
///
/// ```
/// use foilwork::{colour::Level, lift::{Belief, Look, Next, Reader, Situation, after_look}};
/// use foilwork::{quantity::{Duration, MassFraction}, source::Interval};
///
/// let situation = Situation::usual(Interval::exact(MassFraction::from_ww_percent(4.0)?));
/// let (at, limit) = (Duration::from_min(20.0)?, Duration::from_min(45.0)?);
/// let (start, target) = (Level::new(5.0)?, Level::new(8.0)?);
/// let look = Look { situation, start, target, at, seen: target, reader: Reader::Eye, limit, longest: None };
/// assert_eq!(after_look(&Belief::untested(), &look).next, Next::Rinse);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn after_look(belief: &Belief, look: &Look) -> AfterLook {
    let Look { situation, start, target, at, seen, reader, limit, .. } = *look;
    let reading = StrandReading { situation, time: at, before: start, after: seen, reader, guest: None, product: None };
    let belief = belief.after_readings(&[reading]);
    let lightening = Lightening::new(&belief, &situation, start);
    let reached = lightening.time_to(target);
    let chance_by_limit = lightening.chance_by(target, limit);
    let time = look.time();
    let (next, why) = if is_there(seen, target) {
        (Next::Rinse, format!("{seen} is seen and {target} was wanted"))
    } else if time.due() == Due::Rinse {
        at_the_limit((time.end(), seen, target), &chance_of_fresh(&lightening, &[at], target, limit))
    } else if let Some(told) = time.told(Duration::ZERO) {
        (Next::GoOn, told)
    } else {
        let chance = in_hundred(chance_by_limit);
        let why = if chance_by_limit.percent() >= 20.0 {
            format!("{target} is reached by the limit in {chance} of 100 cases")
        } else {
            format!("{target} will hardly be reached by the limit ({chance} of 100 cases): decide there")
        };
        (Next::GoOn, why)
    };
    let look_again = time.look_again().filter(|_| next == Next::GoOn);
    AfterLook { next, why, belief, reached, chance_by_limit, look_again }
}
