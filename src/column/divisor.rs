//! A division by a number that is the same in every row, without dividing.

use crate::hair::kernel::DAYS_OF_MONTH;

/// Below it, what is left of a division might be too small to be exact.
pub(super) const LEAST: f64 = 1e-200;

/// A number to divide by. Where the machine does a product and a sum in one step it takes three such steps, a fraction of the
/// time of a division, and comes to the same number: of zero without a sign, and of what is not below [`LEAST`].
///
/// With `y` the nearest number to `1 / factor`, `q = x y` and the rest `r = x - q factor`, it is `q + r y`. Let `e` be
/// `|factor y - 1|`, counted in 2^-53, and `b` the factor without its power of two, from 1 to below 2. Then `q` is at most
/// `e + 1/2` units of its last place off the quotient. The rest has no more than 53 bits, and so is exact, where that times `b`
/// is at most 2. What is rounded in the end is off the quotient by that times `e` in 2^-53 of a unit. A quotient is never halfway
/// between two numbers: it is at least `1 / b` of the same off there. So where that times `e b` is below 1, `q + r y` is rounded
/// as the quotient would be.
#[derive(Debug, Clone, Copy)]
pub(super) struct Divisor {
    factor: f64,
    inverse: f64,
}

impl Divisor {
    pub(super) const TEN: Self = Self::known(10.0);
    pub(super) const HUNDRED: Self = Self::known(100.0);
    pub(super) const MINUTES_OF_DAY: Self = Self::known(1440.0);
    pub(super) const DAYS_OF_MONTH: Self = Self::known(DAYS_OF_MONTH);

    /// None where it is not known that it comes to the same.
    pub(super) fn by(factor: f64) -> Option<Self> {
        let found = Self::known(factor);
        let off = factor.mul_add(found.inverse, -1.0).abs() * 2.0_f64.powi(53);
        let mantissa = f64::from_bits(factor.to_bits() & 0x000f_ffff_ffff_ffff | 1.0_f64.to_bits());
        let furthest = (off + 0.5) * mantissa;
        let usual = (1e-3..1e6).contains(&factor);
        (usual && furthest <= 2.0 && furthest * off < 1.0).then_some(found)
    }

    /// Of one for which a test asks `by`.
    const fn known(factor: f64) -> Self {
        Self { factor, inverse: 1.0 / factor }
    }
}

/// What the machine can do in one step.
#[derive(Debug, Clone, Copy)]
pub(super) struct Machine {
    /// A product and a sum.
    pub(super) fuses: bool,
}

impl Machine {
    #[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
    #[inline(always)]
    pub(super) fn over(self, x: f64, by: Divisor) -> f64 {
        if !self.fuses {
            return x / by.factor;
        }
        let near = x * by.inverse;
        let rest = (-near).mul_add(by.factor, x);
        rest.mul_add(by.inverse, near)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const PLAIN: Machine = Machine { fuses: false };
    const FUSING: Machine = Machine { fuses: true };

    proptest! {
        #[test]
        fn a_division_in_three_steps_is_the_division(factor in 1.0..2000.0_f64, x in 0.0..5000.0_f64, tiny in -200..0_i32) {
            let drawn = Divisor::by(factor);
            for by in drawn.into_iter().chain([Divisor::TEN, Divisor::HUNDRED, Divisor::MINUTES_OF_DAY, Divisor::DAYS_OF_MONTH]) {
                for x in [x, x * 10.0_f64.powi(tiny), factor * x, (factor * x).next_up(), 0.0] {
                    prop_assert!(x != 0.0 && x < LEAST || PLAIN.over(x, by).to_bits() == FUSING.over(x, by).to_bits(), "{x} / {by:?}");
                }
            }
        }
    }

    #[test]
    fn most_factors_can_be_divided_by_in_three_steps() {
        let known = (0..1000).filter(|n| Divisor::by(1.0 + f64::from(*n) * 0.777).is_some()).count();
        // Those whose inverse is furthest off are left to the division, as are those far from any that a bowl needs.
        assert!(known > 700 && known < 1000, "{known}");
        assert!([0.0, -10.0, 1e-4, 1e6, f64::INFINITY, f64::NAN].iter().all(|factor| Divisor::by(*factor).is_none()));
        assert!(
            [Divisor::TEN, Divisor::HUNDRED, Divisor::MINUTES_OF_DAY, Divisor::DAYS_OF_MONTH]
                .iter()
                .all(|by| Divisor::by(by.factor).is_some())
        );
    }
}
