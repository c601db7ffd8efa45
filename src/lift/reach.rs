use super::{Lightening, normal, normal::Z80, pigment};
use crate::{
    colour::Level,
    quantity::{Duration, Quantity, Share},
    source::Interval,
};
use schemars::JsonSchema;
use serde::Serialize;

/// When a level is reached: none where the mixture is spent before.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct TimeTo {
    /// The earliest of the 80 % interval.
    #[serde(rename = "early_min")]
    pub early: Option<Duration>,
    /// As likely before as after.
    #[serde(rename = "median_min")]
    pub median: Option<Duration>,
    /// The latest of the 80 % interval.
    #[serde(rename = "late_min")]
    pub late: Option<Duration>,
}

/// After so many lives of its oxidant a mixture is spent to the last digit: what is not reached by then never is.
const SPENT: f64 = 40.0;
/// Where a bound is looked for: from so many lives on, in steps of this factor. Near the end the spread may grow faster than the dose, so that
/// a chance comes to nine of ten and loses it again; between two steps that is less than a fifth of a point.
const SOON: f64 = 0.25;
const STEP: f64 = 1.5;
/// Halvings that settle a time far below a second.
const HALVINGS: usize = 20;

impl Lightening {
    /// The chance that the level is reached after this time, from the best estimate of the start.
    #[must_use]
    pub fn chance_by(&self, target: Level, time: Duration) -> Share {
        let wanted = self.dose_to(target);
        let dose = self.dose(time.min());
        let chance = if wanted <= 0.0 {
            1.0
        } else {
            let spread = self.target_spread(self.by_ceiling(target, wanted), dose.by_loss);
            normal::chance_below((dose.amount.ln() - wanted.ln()) / spread)
        };
        Quantity::nearest(100.0 * chance)
    }

    /// The same chance, with what it is from either bound of the start.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::Level, lift::{Belief, Lightening, Situation}};
    /// use foilwork::{quantity::{Duration, MassFraction}, source::Interval};
    ///
    /// let mix = Situation::usual(Interval::exact(MassFraction::from_ww_percent(4.0)?));
    /// let read = Interval::ordered(Level::new(5.5)?, Level::new(6.0)?, Level::new(6.5)?);
    /// let lightening = Lightening::new(&Belief::untested(), &mix, read);
    /// let (target, time) = (Level::new(8.0)?, Duration::from_min(30.0)?);
    /// let chance = lightening.chance_between(target, time);
    /// assert_eq!(chance.best(), lightening.chance_by(target, time));
    /// assert!(chance.low() < chance.best() && chance.best() < chance.high());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn chance_between(&self, target: Level, time: Duration) -> Interval<Share> {
        self.starts.map(|start| self.starting_at(start).chance_by(target, time))
    }

    /// The time at which the target is reached: median and 80 % interval; no upper bound, or no time at all, where the
    /// oxidant runs out first.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::Level, lift::{Belief, Lightening, Situation}, quantity::{Duration, MassFraction}, source::Interval};
    ///
    /// let mix = Situation::usual(Interval::exact(MassFraction::from_ww_percent(4.0)?));
    /// let lightening = Lightening::new(&Belief::untested(), &mix, Level::new(4.0)?);
    /// let there = lightening.time_to(Level::new(6.0)?);
    /// assert!(there.early < there.median); // and the latest may be never
    /// let level = lightening.level_after(there.median.unwrap_or(Duration::ZERO)).best();
    /// assert!((level.number() - 6.0).abs() < 0.05);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn time_to(&self, target: Level) -> TimeTo {
        let best = self.time_from_start(target);
        if self.starts.is_exact() {
            return best;
        }
        let from = |start| self.starting_at(start).time_from_start(target);
        let all = [best, from(self.starts.low()), from(self.starts.high())];
        let earliest = all.iter().filter_map(|time| time.early).min_by(|a, b| a.min().total_cmp(&b.min()));
        // A bound that never gets there has no latest time.
        let late = |time: &TimeTo| time.late.map_or(f64::INFINITY, Duration::min);
        let latest = all.iter().max_by(|a, b| late(a).total_cmp(&late(b))).and_then(|time| time.late);
        TimeTo { early: earliest, median: best.median, late: latest }
    }

    /// The median of it alone, in minutes; none where it is never reached.
    pub(super) fn median_to(&self, target: Level) -> Option<f64> {
        self.rates.time_to((self.dose_to(target) - self.before.amount).max(0.0))
    }

    fn time_from_start(&self, target: Level) -> TimeTo {
        let wanted = self.dose_to(target);
        // Hair that is that light already waits for nothing.
        if wanted <= 0.0 {
            let now = Some(Duration::ZERO);
            return TimeTo { early: now, median: now, late: now };
        }
        let median = self.median_to(target);
        let by_ceiling = self.by_ceiling(target, wanted);
        let at = |z: f64| {
            let is_behind = |minutes: f64| {
                let dose = self.dose(minutes);
                dose.amount < wanted * (z * self.target_spread(by_ceiling, dose.by_loss)).exp()
            };
            self.first(is_behind).map(Quantity::nearest)
        };
        TimeTo { early: at(-Z80), median: median.map(Quantity::nearest), late: at(Z80) }
    }

    /// The minutes after which something is no longer behind; none where it still is when the mixture is spent.
    fn first(&self, is_behind: impl Fn(f64) -> bool) -> Option<f64> {
        let minutes = |lives: f64| lives / self.rates.oxidant;
        if !is_behind(0.0) {
            return Some(0.0);
        }
        let (mut low, mut high) = (0.0, SOON);
        while is_behind(minutes(high)) {
            if high > SPENT {
                return None;
            }
            (low, high) = (high, high * STEP);
        }
        for _ in 0..HALVINGS {
            let middle = f64::midpoint(low, high);
            if is_behind(minutes(middle)) { low = middle } else { high = middle }
        }
        Some(minutes(high))
    }

    fn dose_to(&self, target: Level) -> f64 {
        let levels = target.number() - self.start().number();
        if levels <= 0.0 { 0.0 } else { pigment::dose_leaving(1.0 - levels / self.way_from(self.start())) }
    }

    /// How the logarithm of the dose that a level needs answers to the ceiling: a higher one asks for less. A level beyond the ceiling needs
    /// more than any dose, whatever that answer.
    fn by_ceiling(&self, target: Level, wanted: f64) -> f64 {
        let way = self.way_from(self.start());
        let levels = target.number() - self.start().number();
        levels / (way * way) / (pigment::slope(wanted) * wanted)
    }

    /// The spread of the dose, with what the unknown ceiling does to the dose that is wanted.
    fn target_spread(&self, by_ceiling: f64, by_loss: f64) -> f64 {
        let [[_, _, kc], [_, _, dc], [_, _, cc]] = self.covariance;
        let spread = self.dose_spread(by_loss);
        let both = spread * spread + by_ceiling * by_ceiling * cc - 2.0 * by_ceiling * (kc + by_loss * dc);
        both.max(1e-12).sqrt()
    }
}
