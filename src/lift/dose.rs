use super::real::Real;

/// The two rates of one application, as numbers per minute: how fast pigment goes, and how fast the oxidant is used up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Rates {
    /// Pigment taken by a fresh mixture.
    pub(super) pigment: f64,
    /// Loss of the oxidant while it works.
    pub(super) oxidant: f64,
}

/// What an application has done, and how that hangs on the loss of the oxidant.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Dose<T> {
    /// `S = (k / kd) (1 - exp(-kd t))`.
    pub(super) amount: T,
    /// How its logarithm answers to the logarithm of the oxidant's loss: from 0 for a fresh mixture to -1 for one that is spent.
    pub(super) by_loss: T,
}

impl Rates {
    /// What one application has done after so many minutes.
    ///
    /// Pigment is taken in proportion to the oxidant that is left, and that falls exponentially; the integral of the two
    /// is a closed form. Doses of fresh applications add up.
    #[inline]
    pub(super) fn dose<T: Real>(self, minutes: T) -> Dose<T> {
        let spent = T::of(self.oxidant) * minutes;
        let used = spent.used_up();
        let (none, one) = (T::of(f64::MIN_POSITIVE), T::of(1.0));
        // Before anything is used up both quotients are nothing over nothing.
        let mean = spent.below(none, one, used / spent);
        let by_loss = spent.below(none, T::of(0.0), spent * (one - used) / used - one);
        Dose { amount: T::of(self.pigment) * minutes * mean, by_loss }
    }

    /// The time after which one application has done `dose`; none when its oxidant runs out before.
    pub(super) fn time_to(self, dose: f64) -> Option<f64> {
        let used_up = dose * self.oxidant / self.pigment;
        (used_up < 1.0).then(|| -(-used_up).ln_1p() / self.oxidant)
    }
}
