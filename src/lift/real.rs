//! Numbers that a formula is written in once: one at a time, or four in the lanes of a vector.

use std::ops::{Add, Div, Mul, Neg, Sub};
use wide::{CmpLt, f64x4};

/// What a formula needs of its numbers. Both branches of [`below`](Self::below) are worked out, so a branch that is not taken
/// may be anything.
pub(super) trait Real:
    Copy + Add<Output = Self> + Sub<Output = Self> + Mul<Output = Self> + Div<Output = Self> + Neg<Output = Self>
{
    fn of(value: f64) -> Self;
    fn exp(self) -> Self;
    /// `1 - exp(-x)` for `x` from zero on, without loss of digits near zero.
    fn used_up(self) -> Self;
    fn sqrt(self) -> Self;
    fn least(self, other: Self) -> Self;
    fn most(self, other: Self) -> Self;
    /// One of two numbers, by whether this one lies below a bound.
    fn below(self, bound: Self, then: Self, otherwise: Self) -> Self;
}

impl Real for f64 {
    #[inline]
    fn of(value: f64) -> Self {
        value
    }

    #[inline]
    fn exp(self) -> Self {
        self.exp()
    }

    #[inline]
    fn used_up(self) -> Self {
        -(-self).exp_m1()
    }

    #[inline]
    fn sqrt(self) -> Self {
        self.sqrt()
    }

    #[inline]
    fn least(self, other: Self) -> Self {
        if other < self { other } else { self }
    }

    #[inline]
    fn most(self, other: Self) -> Self {
        if other > self { other } else { self }
    }

    #[inline]
    fn below(self, bound: Self, then: Self, otherwise: Self) -> Self {
        if self < bound { then } else { otherwise }
    }
}

/// Below this the series of nine terms has all digits of `1 - exp(-x)`, above it the difference has.
const SERIES: f64 = 0.05;

impl Real for f64x4 {
    #[inline]
    fn of(value: f64) -> Self {
        Self::splat(value)
    }

    #[inline]
    fn exp(self) -> Self {
        self.exp()
    }

    #[inline]
    fn used_up(self) -> Self {
        let series = (2..=9u8).rev().fold(Self::ONE, |sum, n| Self::ONE - self * Self::splat(1.0 / f64::from(n)) * sum);
        self.below(Self::splat(SERIES), self * series, Self::ONE - (-self).exp())
    }

    #[inline]
    fn sqrt(self) -> Self {
        self.sqrt()
    }

    #[inline]
    fn least(self, other: Self) -> Self {
        self.fast_min(other)
    }

    #[inline]
    fn most(self, other: Self) -> Self {
        self.fast_max(other)
    }

    #[inline]
    fn below(self, bound: Self, then: Self, otherwise: Self) -> Self {
        self.cmp_lt(bound).blend(then, otherwise)
    }
}
