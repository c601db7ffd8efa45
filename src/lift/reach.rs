use super::{Lightening, dose::Dose, normal, normal::Z80, pigment};
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

/// Rounds that settle a time to a second.
const ROUNDS: usize = 3;
/// The longest that such a round looks ahead, in minutes.
const FAR: f64 = 600.0;

impl Lightening {
    /// The chance that the level is reached after this time, from the best estimate of the start.
    #[must_use]
    pub fn chance_by(&self, target: Level, time: Duration) -> Share {
        let wanted = self.dose_to(target);
        let dose = self.dose(time.min());
        let chance = if wanted <= 0.0 {
            1.0
        } else if dose.amount <= 0.0 {
            0.0
        } else {
            normal::chance_below((dose.amount.ln() - wanted.ln()) / self.target_spread(target, wanted, dose))
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
        self.rates.time_to((self.dose_to(target) - self.before.amount).max(0.0)).filter(|minutes| minutes.is_finite())
    }

    fn time_from_start(&self, target: Level) -> TimeTo {
        let wanted = self.dose_to(target);
        // Hair that is that light already waits for nothing.
        if wanted <= 0.0 {
            let now = Some(Duration::ZERO);
            return TimeTo { early: now, median: now, late: now };
        }
        let median = self.rates.time_to((wanted - self.before.amount).max(0.0));
        let first = self.dose(median.unwrap_or(FAR).min(FAR));
        let at = |z: f64| {
            // The spread depends on the time through the oxidant's share of it.
            let (mut dose, mut time) = (first, f64::INFINITY);
            for round in 1..=ROUNDS {
                let more = wanted * (z * self.target_spread(target, wanted, dose)).exp();
                time = self.rates.time_to((more - self.before.amount).max(0.0)).unwrap_or(f64::INFINITY);
                if round < ROUNDS {
                    dose = self.dose(time.min(FAR));
                }
            }
            Some(time).filter(|t| t.is_finite()).map(Quantity::nearest)
        };
        TimeTo { early: at(-Z80), median: median.filter(|t| t.is_finite()).map(Quantity::nearest), late: at(Z80) }
    }

    fn dose_to(&self, target: Level) -> f64 {
        let levels = target.number() - self.start().number();
        let way = self.way_from(self.start());
        if levels <= 0.0 { 0.0 } else { pigment::dose_leaving(1.0 - levels / way.max(f64::MIN_POSITIVE)) }
    }

    /// The spread of the dose, with what the unknown ceiling does to the dose that is wanted.
    fn target_spread(&self, target: Level, wanted: f64, dose: Dose<f64>) -> f64 {
        let way = self.way_from(self.start()).max(f64::MIN_POSITIVE);
        let levels = (target.number() - self.start().number()).min(way);
        // d ln(dose) / d ceiling at a fixed level.
        let sensitivity = levels / (way * way) / (pigment::slope(wanted).min(-1e-12) * wanted.max(1e-12));
        let [[_, _, kc], [_, _, dc], [_, _, cc]] = self.covariance;
        let spread = self.dose_spread(dose.by_loss);
        let both = spread * spread + sensitivity * sensitivity * cc - 2.0 * sensitivity * (kc + dose.by_loss * dc);
        both.max(1e-12).sqrt()
    }
}
