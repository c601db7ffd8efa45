use super::{
    factors::{LEVERS, OXIDANT_PER_MIN, Spreads},
    normal::Z80,
};
use crate::{colour::Level, source::Interval};

/// What is known of how a hair lightens: three numbers with their spread and how they hang together.
///
/// The logarithm of the rate at which pigment goes (per minute, at the reference mixture), the logarithm of the rate at
/// which the oxidant is used up (per minute), and the level that the product reaches at the very end. They are normal in
/// these forms, so a rate is never negative.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Belief {
    pub(super) mean: [f64; 3],
    /// Covariance, row by row.
    pub(super) covariance: [[f64; 3]; 3],
    /// Strand readings it rests on.
    pub(super) readings: usize,
    /// What the levers' unknowns were worth in the situations that were tested.
    pub(super) tested: Spreads,
}

/// Middle of the rate of pigment loss for hair nobody has tested.
///
/// Assumed, near what the one published series of levels gives (citation `lightening-series`): 0.038 per minute on the
/// 20-step scale, 0.041 on this one.
const PIGMENT_PER_MIN: f64 = 0.041;
/// Level that lightener reaches at the very end, on the scale of ten. Assumed.
const CEILING: f64 = 10.2;

/// Spread of the logarithm of the rate between salons (their water, their heads, their way of mixing). Assumed.
pub(super) const SALON_SD: f64 = 0.35;
/// Between products at the same strength. Assumed.
pub(super) const PRODUCT_SD: f64 = 0.42;
/// Between guests. Assumed; together the three span a factor of 2.6 either way in 80 of 100 cases.
pub(super) const GUEST_SD: f64 = 0.51;
/// Of the logarithm of the oxidant's loss. Assumed.
pub(super) const OXIDANT_SD: f64 = 0.5;
/// Of the ceiling, in levels. Assumed.
pub(super) const CEILING_SD: f64 = 0.4;

impl Belief {
    /// What is believed of hair, product and salon that nobody has tested.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::lift::Belief;
    ///
    /// let rate = Belief::untested().pigment_per_min();
    /// assert!(rate.low() < 0.02 && rate.high() > 0.1);
    /// ```
    #[must_use]
    pub fn untested() -> Self {
        let variance = SALON_SD * SALON_SD + PRODUCT_SD * PRODUCT_SD + GUEST_SD * GUEST_SD;
        Self {
            mean: [PIGMENT_PER_MIN.ln(), OXIDANT_PER_MIN.ln(), CEILING],
            covariance: [
                [variance, 0.0, 0.0],
                [0.0, OXIDANT_SD * OXIDANT_SD, 0.0],
                [0.0, 0.0, CEILING_SD * CEILING_SD],
            ],
            readings: 0,
            tested: [0.0; LEVERS],
        }
    }

    /// Strand readings it rests on.
    #[must_use]
    pub const fn readings(&self) -> usize {
        self.readings
    }

    /// The rate of pigment loss of the reference mixture per minute: median and 80 % interval.
    #[must_use]
    pub fn pigment_per_min(&self) -> Interval<f64> {
        let ([mean, ..], [[variance, ..], ..]) = (self.mean, self.covariance);
        spread(mean, variance).map(f64::exp)
    }

    /// The rate at which the oxidant is used up, per minute: median and 80 % interval.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::lift::Belief;
    ///
    /// let untested = Belief::untested();
    /// assert_eq!(untested.readings(), 0);
    /// assert!(untested.oxidant_per_min().low() < untested.oxidant_per_min().high());
    /// assert!(untested.ceiling().low() < untested.ceiling().high());
    /// ```
    #[must_use]
    pub fn oxidant_per_min(&self) -> Interval<f64> {
        let ([_, mean, _], [_, [_, variance, _], _]) = (self.mean, self.covariance);
        spread(mean, variance).map(f64::exp)
    }

    /// The level reached at the very end: median and 80 % interval.
    #[must_use]
    pub fn ceiling(&self) -> Interval<Level> {
        let ([_, _, mean], [_, _, [_, _, variance]]) = (self.mean, self.covariance);
        spread(mean, variance).map(Level::clamped)
    }
}

fn spread(mean: f64, variance: f64) -> Interval<f64> {
    let half = Z80 * variance.max(0.0).sqrt();
    Interval::ordered(mean - half, mean, mean + half)
}
