//! Smooth functions kept as Chebyshev series.

use std::f64::consts::PI;
use wide::f64x4;

/// What can be added up in parts: numbers, alone or in lanes, and arrays of them.
pub(super) trait Linear: Copy {
    /// The sum of none.
    const NONE: Self;

    /// So much of another on top.
    #[must_use]
    fn plus(self, other: &Self, by: f64) -> Self;
}

impl Linear for f64 {
    const NONE: Self = 0.0;

    fn plus(self, other: &Self, by: f64) -> Self {
        self + other * by
    }
}

impl Linear for f64x4 {
    const NONE: Self = Self::ZERO;

    #[inline]
    fn plus(self, other: &Self, by: f64) -> Self {
        self + *other * by
    }
}

impl<T: Linear, const N: usize> Linear for [T; N] {
    const NONE: Self = [T::NONE; N];

    #[inline]
    fn plus(mut self, other: &Self, by: f64) -> Self {
        for (mine, other) in self.iter_mut().zip(other) {
            *mine = mine.plus(other, by);
        }
        self
    }
}

/// The places from -1 to 1 at which a function is sampled for a series of `N` terms, the greatest first.
pub(super) fn nodes<const N: usize>() -> [f64; N] {
    let mut turn = -0.5;
    [(); N].map(|()| {
        turn += 1.0;
        (PI * turn / N as f64).cos()
    })
}

/// The polynomials T0, T1, ... at a place from -1 to 1.
pub(super) fn polynomials<const N: usize>(x: f64) -> [f64; N] {
    let (mut before, mut here) = (x, 1.0);
    [(); N].map(|()| {
        let now = here;
        (before, here) = (here, 2.0 * x * here - before);
        now
    })
}

/// The coefficients of the series through samples at the [`nodes`].
pub(super) fn series<T: Linear, const N: usize>(samples: &[T; N]) -> [T; N] {
    let at_nodes = nodes::<N>().map(polynomials::<N>);
    let mut order = 0;
    [(); N].map(|()| {
        let scale = if order == 0 { 1.0 } else { 2.0 } / N as f64;
        let each = samples.iter().zip(&at_nodes);
        let weighed = each.map(|(sample, values)| (sample, values.get(order).map_or(0.0, |value| scale * value)));
        let coefficient = weighed.fold(T::NONE, |all, (sample, by)| all.plus(sample, by));
        order += 1;
        coefficient
    })
}

/// The value of a series with the [`polynomials`] at a place.
#[inline]
pub(super) fn value<T: Linear, const N: usize>(series: &[T; N], polynomials: &[f64; N]) -> T {
    series.iter().zip(polynomials).fold(T::NONE, |all, (coefficient, by)| all.plus(coefficient, *by))
}

#[cfg(test)]
mod tests {
    use super::*;

    // exp(x) from -1 to 1: what nine terms leave out begins with 2 I9(1) = 1.1e-8, a modified Bessel function.
    #[test]
    fn a_series_of_nine_terms_holds_the_exponential() {
        let series = series(&nodes::<9>().map(|x| f64x4::splat(x.exp())));
        for step in -50..=50 {
            let x = f64::from(step) / 50.0;
            let got = value(&series, &polynomials(x)).to_array();
            assert!((got[0] - x.exp()).abs() < 2e-8, "{x}: {got:?}");
        }
    }
}
