use super::{
    Belief, Situation,
    dose::Rates,
    factors::Shift,
    normal::{self, Z80},
    pigment,
};
use crate::{
    colour::Level,
    quantity::{Duration, Quantity, Share},
    source::Interval,
};
use schemars::JsonSchema;
use serde::Serialize;

/// A belief about one hair, made ready for one mixture: what all forecasts and inverse questions start from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lightening {
    start: Level,
    /// How far the reading of the start may be off.
    starts: Interval<Level>,
    /// Means of ln k, ln kd and the ceiling, in this situation.
    mean: [f64; 3],
    covariance: [[f64; 3]; 3],
    /// The medians of both rates.
    rates: Rates,
    /// Dose of earlier applications at the medians.
    before: f64,
    untested: bool,
}

/// Without a strand test the interval reaches at least this many levels either way.
const UNTESTED_LEVELS: f64 = 2.0;
/// Minutes over which that widening comes in: at the first minute nothing has happened yet.
const WIDENING_MIN: f64 = 10.0;

impl Lightening {
    /// Makes a belief ready for a mixture on hair of this level, or of a level that is known within bounds: then every
    /// interval reaches as far as the forecasts from either bound do.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::Level, lift::{Belief, Lightening, Situation}};
    /// use foilwork::{quantity::{Duration, MassFraction}, source::Interval};
    ///
    /// let mix = Situation::usual(Interval::exact(MassFraction::from_ww_percent(4.0)?));
    /// let lightening = Lightening::new(&Belief::untested(), &mix, Level::new(4.0)?);
    /// let level = lightening.level_after(Duration::from_min(40.0)?);
    /// assert!(level.low().number() < level.best().number() - 1.9);
    /// assert_eq!(lightening.level_after(Duration::ZERO).high().number(), 4.0);
    ///
    /// let read = Interval::ordered(Level::new(3.5)?, Level::new(4.0)?, Level::new(4.5)?);
    /// let lightening = Lightening::new(&Belief::untested(), &mix, read);
    /// assert_eq!(lightening.level_after(Duration::ZERO), read);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn new(belief: &Belief, situation: &Situation, start: impl Into<Interval<Level>>) -> Self {
        let starts = start.into();
        let Shift { pigment, oxidant, spreads } = situation.shift();
        let mut unknown = spreads.iter().zip(&belief.tested).map(|(here, tested)| (here - tested) * (here - tested));
        let oxidant_variance = unknown.next_back().unwrap_or_default();
        let pigment_variance: f64 = unknown.sum();
        let [k, kd, ceiling] = belief.mean;
        let [[kk, k_kd, kc], [_, dd, dc], [_, _, cc]] = belief.covariance;
        Self {
            start: starts.best(),
            starts,
            rates: Rates { pigment: (k + pigment).exp(), oxidant: (kd + oxidant).exp() },
            mean: [k + pigment, kd + oxidant, ceiling],
            covariance: [[kk + pigment_variance, k_kd, kc], [k_kd, dd + oxidant_variance, dc], [kc, dc, cc]],
            before: 0.0,
            untested: belief.readings == 0,
        }
    }

    /// The same hair after an application of the same mixture: what a fresh one adds comes on top.
    #[must_use]
    pub fn after(mut self, time: Duration) -> Self {
        self.before += self.rates().dose(time);
        self
    }

    /// The level it starts from: the best estimate.
    #[must_use]
    pub const fn start(&self) -> Level {
        self.start
    }

    /// The same hair, if it really starts there.
    fn starting_at(&self, start: Level) -> Self {
        Self { start, starts: start.into(), ..*self }
    }

    pub(super) fn rates(&self) -> Rates {
        self.rates
    }

    /// The level after this time: median and 80 % interval.
    ///
    /// The dose is close to lognormal, so its quantiles are those of its logarithm pushed through the law; the ceiling's
    /// spread is added to it. Over simulated guests the interval holds about 80 of 100 (see the tests).
    #[must_use]
    pub fn level_after(&self, time: Duration) -> Interval<Level> {
        let from = |start| self.starting_at(start).level_from_start(time);
        from(self.start).widened_to(from(self.starts.low())).widened_to(from(self.starts.high()))
    }

    fn level_from_start(&self, time: Duration) -> Interval<Level> {
        let (fresh, sensitivity) = self.rates.dose_and_sensitivity(time);
        let dose = self.before + fresh;
        if dose <= 0.0 {
            return Interval::exact(self.start);
        }
        let spread = self.dose_spread(sensitivity);
        let way = self.way();
        let lift = |dose: f64| way * (1.0 - pigment::left(dose));
        let times = (Z80 * spread).exp();
        let (low, best, high) = (lift(dose / times), lift(dose), lift(dose * times));
        let [[_, _, kc], [_, _, dc], [_, _, ceiling_variance]] = self.covariance;
        let ceiling_spread = ceiling_variance.max(0.0).sqrt();
        let ceiling = Z80 * ceiling_spread * best / way.max(f64::MIN_POSITIVE);
        // After a reading a quicker hair with a lower end explains it as well as a slower one with a higher: the two lean
        // against each other, and the level is better known than either.
        let shared = (kc + sensitivity * dc) / (spread * ceiling_spread).max(f64::MIN_POSITIVE);
        let both = |dose: f64| {
            (dose * dose + ceiling * ceiling + 2.0 * shared.clamp(-1.0, 1.0) * dose * ceiling).max(0.0).sqrt()
        };
        let (mut down, mut up) = (both(best - low), both(high - best));
        if self.untested {
            let least = UNTESTED_LEVELS * (time.min() / WIDENING_MIN).min(1.0);
            (down, up) = (down.max(least), up.max(least));
        }
        let start = self.start.number();
        let top = self.start.number() + way + Z80 * ceiling_variance.max(0.0).sqrt();
        Interval::ordered(
            Level::clamped((start + best - down).max(start)),
            Level::clamped(start + best),
            Level::clamped((start + best + up).min(top)),
        )
    }

    /// The chance that the level is reached after this time, from the best estimate of the start.
    #[must_use]
    pub fn chance_by(&self, target: Level, time: Duration) -> Share {
        let wanted = self.dose_to(target);
        let dose = self.before + self.rates().dose(time);
        let chance = if wanted <= 0.0 {
            1.0
        } else if dose <= 0.0 {
            0.0
        } else {
            normal::chance_below((dose.ln() - wanted.ln()) / self.target_spread(target, wanted, time))
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
    #[must_use]
    pub fn time_to(&self, target: Level) -> TimeTo {
        let from = |start| self.starting_at(start).time_from_start(target);
        let (best, low, high) = (from(self.start), from(self.starts.low()), from(self.starts.high()));
        let all = [best, low, high];
        let earliest = all.iter().filter_map(|time| time.early).min_by(|a, b| a.min().total_cmp(&b.min()));
        // A bound that never gets there has no latest time.
        let lates: Option<Vec<Duration>> = all.iter().map(|time| time.late).collect();
        let latest = lates.into_iter().flatten().max_by(|a, b| a.min().total_cmp(&b.min()));
        TimeTo { early: earliest, median: best.median, late: latest }
    }

    fn time_from_start(&self, target: Level) -> TimeTo {
        let wanted = self.dose_to(target);
        // Hair that is that light already waits for nothing.
        if wanted <= 0.0 {
            let now = Some(Duration::ZERO);
            return TimeTo { early: now, median: now, late: now };
        }
        let rates = self.rates();
        let median = rates.time_to((wanted - self.before).max(0.0));
        let at = |z: f64| {
            // The spread depends on the time through the oxidant's share of it; two rounds settle it to a second.
            let mut time = median.unwrap_or(f64::INFINITY);
            for _ in 0..3 {
                let now = Quantity::nearest(time.min(600.0));
                let spread = self.target_spread(target, wanted, now);
                let dose = (wanted - self.before).max(0.0) * (z * spread).exp();
                time = rates.time_to(dose).unwrap_or(f64::INFINITY);
            }
            Some(time).filter(|t| t.is_finite()).map(Quantity::nearest)
        };
        TimeTo { early: at(-Z80), median: median.filter(|t| t.is_finite()).map(Quantity::nearest), late: at(Z80) }
    }

    /// Levels from the start to the median ceiling; a hair that is lighter already goes nowhere.
    fn way(&self) -> f64 {
        let [_, _, ceiling] = self.mean;
        (ceiling - self.start.number()).max(0.0)
    }

    fn dose_to(&self, target: Level) -> f64 {
        let levels = target.number() - self.start.number();
        if levels <= 0.0 { 0.0 } else { pigment::dose_leaving(1.0 - levels / self.way().max(f64::MIN_POSITIVE)) }
    }

    /// Standard deviation of the logarithm of the dose, whose answer to the oxidant's loss is given.
    fn dose_spread(&self, sensitivity: f64) -> f64 {
        let [[kk, k_kd, _], [_, dd, _], _] = self.covariance;
        (kk + 2.0 * sensitivity * k_kd + sensitivity * sensitivity * dd).max(0.0).sqrt()
    }

    /// The same, with what the unknown ceiling does to the dose that is wanted.
    fn target_spread(&self, target: Level, wanted: f64, time: Duration) -> f64 {
        let way = self.way().max(f64::MIN_POSITIVE);
        let levels = (target.number() - self.start.number()).min(way);
        // d ln(dose) / d ceiling at a fixed level.
        let sensitivity = levels / (way * way) / (pigment::slope(wanted).min(-1e-12) * wanted.max(1e-12));
        let [[_, _, kc], [_, _, dc], [_, _, cc]] = self.covariance;
        let loss = self.rates.loss_sensitivity(time);
        let dose = self.dose_spread(loss);
        let both = dose * dose + sensitivity * sensitivity * cc - 2.0 * sensitivity * (kc + loss * dc);
        both.max(1e-12).sqrt()
    }
}

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
