use super::{
    Belief, Situation,
    dose::{Dose, Rates},
    factors::{ON_OXIDANT, Shift},
    normal::Z80,
    pigment,
    real::Real,
};
use crate::{
    colour::Level,
    quantity::{Duration, MassFraction},
    source::Interval,
};
use wide::f64x4;

/// A belief about one hair, made ready for one mixture: what all forecasts and inverse questions start from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lightening {
    /// What is on the hair, and how.
    pub(super) situation: Situation,
    /// The start, as far as its reading may be off.
    pub(super) starts: Interval<Level>,
    /// Median of the level reached at the very end, and its standard deviation.
    pub(super) ceiling: f64,
    pub(super) ceiling_sd: f64,
    /// Of ln k, ln kd and the ceiling, in this situation.
    pub(super) covariance: [[f64; 3]; 3],
    /// The medians of both rates.
    pub(super) rates: Rates,
    /// What earlier applications did at the medians, and how many minutes they took.
    pub(super) before: Dose<f64>,
    pub(super) minutes_before: f64,
    /// Levels either way that hair without a reading is uncertain by at least.
    least: f64,
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
        Self::shifted(belief, situation, &situation.shift(), start)
    }

    /// The same where what the situation shifts is at hand.
    pub(super) fn shifted(
        belief: &Belief,
        situation: &Situation,
        shift: &Shift,
        start: impl Into<Interval<Level>>,
    ) -> Self {
        let starts = start.into();
        let Shift { pigment, oxidant, spreads } = *shift;
        let unknown = spreads.iter().zip(&belief.tested).map(|(here, tested)| (here - tested) * (here - tested));
        let oxidant_variance: f64 = unknown.clone().take(ON_OXIDANT).sum();
        let pigment_variance: f64 = unknown.skip(ON_OXIDANT).sum();
        let [k, kd, ceiling] = belief.mean;
        let [[kk, k_kd, kc], [_, dd, dc], [_, _, cc]] = belief.covariance;
        // Without any peroxide nothing happens, and that is certain.
        let untested = belief.readings == 0 && situation.on_hair.high() > MassFraction::ZERO;
        Self {
            situation: *situation,
            starts,
            ceiling,
            ceiling_sd: cc.max(0.0).sqrt(),
            rates: Rates { pigment: (k + pigment).exp(), oxidant: (kd + oxidant).exp() },
            covariance: [[kk + pigment_variance, k_kd, kc], [k_kd, dd + oxidant_variance, dc], [kc, dc, cc]],
            before: Dose { amount: 0.0, by_loss: 0.0 },
            minutes_before: 0.0,
            least: if untested { UNTESTED_LEVELS } else { 0.0 },
        }
    }

    /// The same hair after an application of the same mixture: what a fresh one adds comes on top.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::Level, lift::{Belief, Lightening, Situation}};
    /// use foilwork::{quantity::{Duration, MassFraction}, source::Interval};
    ///
    /// let mix = Situation::usual(Interval::exact(MassFraction::from_ww_percent(4.0)?));
    /// let (start, half_hour) = (Level::new(4.0)?, Duration::from_min(30.0)?);
    /// let first = Lightening::new(&Belief::untested(), &mix, start);
    /// let second = first.clone().after(half_hour);
    /// assert_eq!(second.start(), start);
    /// assert!(second.level_after(half_hour).best() > first.level_after(half_hour).best());
    /// let target = Level::new(7.0)?;
    /// assert!(first.time_to(target).median.is_some_and(|median| median < Duration::from_min(120.0).unwrap_or(median)));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn after(mut self, time: Duration) -> Self {
        self.before = self.dose(time.min());
        self.minutes_before += time.min();
        self
    }

    /// The level it starts from: the best estimate.
    #[must_use]
    pub const fn start(&self) -> Level {
        self.starts.best()
    }

    /// The level it starts from, as far as its reading may be off.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::Level, lift::{Belief, Lightening, Situation}, quantity::MassFraction, source::Interval};
    ///
    /// let mix = Situation::usual(Interval::exact(MassFraction::from_ww_percent(4.0)?));
    /// let read = Interval::ordered(Level::new(5.5)?, Level::new(6.0)?, Level::new(6.5)?);
    /// assert_eq!(Lightening::new(&Belief::untested(), &mix, read).starts(), read);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub const fn starts(&self) -> Interval<Level> {
        self.starts
    }

    /// The same hair, if it really starts there.
    pub(super) fn starting_at(&self, start: Level) -> Self {
        Self { starts: start.into(), ..*self }
    }

    /// All that the applications have done when the last one lies on the hair for so many minutes.
    #[inline]
    pub(super) fn dose<T: Real>(&self, minutes: T) -> Dose<T> {
        let fresh = self.rates.dose(minutes);
        if self.before.amount == 0.0 {
            return fresh;
        }
        let (amount, by_loss) = (T::of(self.before.amount), T::of(self.before.by_loss));
        let both = fresh.amount + amount;
        Dose { amount: both, by_loss: (fresh.amount * fresh.by_loss + amount * by_loss) / both }
    }

    /// The level after this time: median and 80 % interval.
    ///
    /// The dose is close to lognormal, so its quantiles are those of its logarithm pushed through the law; the ceiling's
    /// spread is added to it. Over simulated guests the interval holds about 80 of 100 (see the tests).
    #[must_use]
    pub fn level_after(&self, time: Duration) -> Interval<Level> {
        let [low, best, high] = self.levels(time.min()).map(Level::clamped);
        Interval::ordered(low, best, high)
    }

    /// The same for four times at once: low, best and high, each four levels.
    #[inline]
    pub(crate) fn levels_of_four(&self, minutes: [f64; 4]) -> [[f64; 4]; 3] {
        self.levels(f64x4::new(minutes)).map(f64x4::to_array)
    }

    /// The formula, for one time or several.
    #[inline]
    fn levels<T: Real>(&self, minutes: T) -> [T; 3] {
        let gone = self.gone(minutes);
        let [low, best, high] = self.levels_from(self.starts.best(), &gone);
        if self.starts.is_exact() {
            return [low, best, high];
        }
        let [darker, _, _] = self.levels_from(self.starts.low(), &gone);
        let [_, _, lighter] = self.levels_from(self.starts.high(), &gone);
        [low.least(darker), best, high.most(lighter)]
    }

    /// What holds from every start.
    #[inline]
    fn gone<T: Real>(&self, minutes: T) -> Gone<T> {
        let Dose { amount, by_loss } = self.dose(minutes);
        let spread = self.dose_spread(by_loss);
        let times = (T::of(Z80) * spread).exp();
        let gone = |dose: T| T::of(1.0) - pigment::left(dose);
        let (low, best, high) = (gone(amount / times), gone(amount), gone(amount * times));
        let ceiling = T::of(Z80 * self.ceiling_sd) * best;
        // After a reading a quicker hair with a lower end explains it as well as a slower one with a higher: the two lean
        // against each other, and the level is better known than either.
        let [[_, _, kc], [_, _, dc], _] = self.covariance;
        let leaning = if kc == 0.0 && dc == 0.0 {
            T::of(0.0)
        } else {
            let shared = T::of(Z80) * best * (T::of(kc) + by_loss * T::of(dc)) / spread.most(T::of(f64::MIN_POSITIVE));
            shared.least(ceiling).most(-ceiling)
        };
        let share = ((minutes + T::of(self.minutes_before)) * T::of(1.0 / WIDENING_MIN)).least(T::of(1.0));
        Gone { low, best, high, ceiling, leaning, least: T::of(self.least) * share }
    }

    #[inline]
    fn levels_from<T: Real>(&self, start: Level, gone: &Gone<T>) -> [T; 3] {
        let way = self.way_from(start);
        let top = T::of((start.number() + way + Z80 * self.ceiling_sd).min(Level::LIGHTEST.number()));
        let (start, way) = (T::of(start.number()), T::of(way));
        let best = start + way * gone.best;
        let both = |off: T| {
            let squared = off * off + gone.ceiling * gone.ceiling + T::of(2.0) * gone.leaning * off;
            squared.most(T::of(0.0)).sqrt().most(gone.least)
        };
        let (down, up) = (both(way * (gone.best - gone.low)), both(way * (gone.high - gone.best)));
        [(best - down).most(start), best, (best + up).least(top)]
    }

    /// How the level after this time answers to the logarithms of both rates and to the ceiling.
    pub(super) fn answers(&self, time: Duration) -> [f64; 3] {
        let Dose { amount, by_loss } = self.dose(time.min());
        let (left, slope) = pigment::left_and_slope(amount);
        let by_rate = -self.way_from(self.start()) * slope * amount;
        [by_rate, by_rate * by_loss, 1.0 - left]
    }

    /// Levels from a start to the median ceiling; a hair that is lighter already goes nowhere.
    pub(super) fn way_from(&self, start: Level) -> f64 {
        (self.ceiling - start.number()).max(0.0)
    }

    /// Standard deviation of the logarithm of the dose, whose answer to the oxidant's loss is given.
    #[inline]
    pub(super) fn dose_spread<T: Real>(&self, by_loss: T) -> T {
        let [[kk, k_kd, _], [_, dd, _], _] = self.covariance;
        (T::of(kk) + by_loss * (T::of(2.0 * k_kd) + by_loss * T::of(dd))).most(T::of(0.0)).sqrt()
    }
}

/// Share of the way to the ceiling that lies behind: the bounds by the dose, those by the ceiling, how the two lean.
struct Gone<T> {
    low: T,
    best: T,
    high: T,
    ceiling: T,
    leaning: T,
    least: T,
}
