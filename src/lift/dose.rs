use crate::quantity::Duration;

/// The two rates of one application, as numbers per minute: how fast pigment goes, and how fast the oxidant is used up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Rates {
    /// Pigment taken by a fresh mixture.
    pub(super) pigment: f64,
    /// Loss of the oxidant while it works.
    pub(super) oxidant: f64,
}

/// Below this product of rate and time the series of `exp` is exact to the last bit.
const SMALL: f64 = 1e-8;

impl Rates {
    /// What one application has done after `time`: `S = (k / kd) (1 - exp(-kd t))`.
    ///
    /// Pigment is taken in proportion to the oxidant that is left, and that falls exponentially; the integral of the two
    /// is this closed form. Doses of fresh applications add up.
    pub(super) fn dose(self, time: Duration) -> f64 {
        self.pigment * time.min() * share_of_time(self.oxidant * time.min())
    }

    /// The dose and [`loss_sensitivity`](Self::loss_sensitivity) together, which share their one exponential.
    pub(super) fn dose_and_sensitivity(self, time: Duration) -> (f64, f64) {
        let (time, spent) = (time.min(), self.oxidant * time.min());
        if spent < SMALL {
            return (self.pigment * time * (1.0 - spent / 2.0), -spent / 2.0);
        }
        let used = -(-spent).exp_m1();
        (self.pigment * time * used / spent, spent * (1.0 - used) / used - 1.0)
    }

    /// The time after which one application has done `dose`; none when its oxidant runs out before.
    pub(super) fn time_to(self, dose: f64) -> Option<f64> {
        if dose <= 0.0 {
            return Some(0.0);
        }
        let used_up = dose * self.oxidant / self.pigment;
        if used_up.abs() < SMALL {
            return Some(dose / self.pigment).filter(|t| t.is_finite());
        }
        (used_up < 1.0).then(|| -(-used_up).ln_1p() / self.oxidant)
    }

    /// How the logarithm of the dose answers to the logarithm of the oxidant's loss: from 0 for a fresh mixture to -1 for
    /// one that is spent.
    pub(super) fn loss_sensitivity(self, time: Duration) -> f64 {
        let spent = self.oxidant * time.min();
        if spent < SMALL { -spent / 2.0 } else { spent / spent.exp_m1() - 1.0 }
    }
}

/// `(1 - exp(-x)) / x`, the mean strength over the time as a share of the fresh one.
fn share_of_time(x: f64) -> f64 {
    if x < SMALL { 1.0 - x / 2.0 } else { -(-x).exp_m1() / x }
}
