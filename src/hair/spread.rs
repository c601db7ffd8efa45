//! Estimates that vary between people by a factor: log-normal, with bounds that hold 80 of 100.

use crate::{quantity::Quantity, source::Interval};

/// Standard deviations from the middle to either bound of 80 of 100.
pub(super) const BOUND: f64 = 1.281_551_565_544_6;

/// An estimate whose coefficient of variation between people is known.
pub(super) fn varying<Q: Quantity>(best: Q, variation: f64) -> Interval<Q> {
    let factor = (BOUND * (variation * variation).ln_1p().sqrt()).exp();
    Interval::ordered(Q::nearest(best.in_unit() / factor), best, Q::nearest(best.in_unit() * factor))
}

/// The product of independent estimates, none below zero.
///
/// Logarithms of independent factors add up, and so do the squares of how far their bounds are away. Corners of the
/// intervals would say that a guest is thin-haired in every way at once.
pub(crate) fn product(factors: &[Interval<f64>]) -> Interval<f64> {
    let best: f64 = factors.iter().map(Interval::best).product();
    let away = |bound: fn(&Interval<f64>) -> f64| {
        let square = |factor: &Interval<f64>| {
            let step = (bound(factor) / factor.best()).ln();
            if factor.best() > 0.0 { step * step } else { 0.0 }
        };
        factors.iter().map(square).sum::<f64>().sqrt()
    };
    Interval::ordered(best * (-away(Interval::low)).exp(), best, best * away(Interval::high).exp())
}

/// What two independent estimates of one thing say together: each weighs by how narrow it is.
pub(super) fn agreed<Q: Quantity>(one: Interval<Q>, other: Interval<Q>) -> Interval<Q> {
    let width = |of: &Interval<Q>| (of.high().in_unit() / of.low().in_unit()).ln() / (2.0 * BOUND);
    let (first, second) = (width(&one), width(&other));
    if first <= 0.0 || !second.is_finite() {
        return one;
    }
    if second <= 0.0 || !first.is_finite() {
        return other;
    }
    let (weight, against) = (1.0 / (first * first), 1.0 / (second * second));
    let sum = weight + against;
    let middle = (one.best().in_unit().ln() * weight + other.best().in_unit().ln() * against) / sum;
    let away = BOUND / sum.sqrt();
    Interval::ordered((middle - away).exp(), middle.exp(), (middle + away).exp()).map(Q::nearest)
}

#[cfg(test)]
mod tests {
    use super::{Interval, product};

    #[test]
    fn exact_factors_leave_the_width_alone() {
        let wide = Interval::ordered(0.5, 1.0, 2.0);
        let got = product(&[wide, Interval::exact(3.0)]);
        assert!((got.low() - 1.5).abs() < 1e-12 && (got.high() - 6.0).abs() < 1e-12);
        assert_eq!(product(&[wide, Interval::exact(0.0)]), Interval::exact(0.0));
        // Twice the same spread is the square root of two as wide in the logarithm.
        assert!((product(&[wide, wide]).high() - 2f64.powf(2f64.sqrt())).abs() < 1e-12);
    }
}
