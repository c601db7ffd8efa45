//! From one unit to another by one factor: a multiplication, or a division where that keeps round factors exact.

use super::{
    Cells, ColumnError, ColumnOutcome,
    rows::{Law, rows_by_law, within},
};
use crate::peroxide::kernel::Ratio;

/// The strengths of a column in a unit that is a ratio away, up to the most of both units; `rule` is asked about the others.
pub(super) fn in_ratio<E>(
    values: Cells<'_>,
    out: &mut [f64],
    ratio: Ratio,
    (most_in, most_out): (f64, f64),
    rule: impl Fn([f64; 1]) -> Result<[f64; 1], E> + Sync,
) -> Result<ColumnOutcome, ColumnError> {
    let near = match ratio {
        Ratio::Times(factor) => most_out / factor,
        Ratio::Over(factor) => most_out * factor,
    };
    // Both ways rise with the number, so what is in range up to here is in range after it.
    let mut most = near.min(most_in);
    while ratio.apply(most) > most_out {
        most = most.next_down();
    }
    match ratio {
        Ratio::Times(factor) => {
            rows_by_law([values], [out], move |[x]: [f64; 1]| ([x * factor], within(x, most)), rule)
        }
        Ratio::Over(factor) => match Quotient::by(factor, most) {
            Some(law) => rows_by_law([values], [out], law, rule),
            None => rows_by_law([values], [out], move |[x]: [f64; 1]| ([x / factor], within(x, most)), rule),
        },
    }
}

/// Below it, what is left of a division might be too small to be exact.
const LEAST: f64 = 1e-200;

/// A division by one number for all rows. Where the machine does a product and a sum in one step it takes three such steps, a
/// fraction of the time of a division, and comes to the same number.
///
/// With `y` the nearest number to `1 / factor`, `q = x y` and the rest `r = x - q factor`, it is `q + r y`. Let `e` be
/// `|factor y - 1|`, counted in 2^-53, and `b` the factor without its power of two, from 1 to below 2. Then `q` is at most
/// `e + 1/2` units of its last place off the quotient. The rest has no more than 53 bits, and so is exact, where that times `b`
/// is at most 2. What is rounded in the end is off the quotient by that times `e` in 2^-53 of a unit. A quotient is never halfway
/// between two numbers: it is at least `1 / b` of the same off there. So where that times `e b` is below 1, `q + r y` is rounded
/// as the quotient would be.
#[derive(Debug, Clone, Copy)]
struct Quotient {
    factor: f64,
    inverse: f64,
    most: f64,
}

impl Quotient {
    /// None where it is not known that it comes to the same.
    fn by(factor: f64, most: f64) -> Option<Self> {
        let inverse = 1.0 / factor;
        let off = factor.mul_add(inverse, -1.0).abs() * 2.0_f64.powi(53);
        let mantissa = f64::from_bits(factor.to_bits() & 0x000f_ffff_ffff_ffff | 1.0_f64.to_bits());
        let furthest = (off + 0.5) * mantissa;
        let usual = (1e-3..1e6).contains(&factor);
        (usual && furthest <= 2.0 && furthest * off < 1.0).then_some(Self { factor, inverse, most })
    }

    #[inline]
    #[expect(clippy::needless_bitwise_bool, reason = "a lazy operator is a branch")]
    fn fits(self, x: f64) -> bool {
        // Zero fits too, unless it has a sign.
        ((x >= LEAST) & (x <= self.most)) | (x.to_bits() == 0)
    }
}

#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
impl Law<1, 1> for Quotient {
    #[inline(always)]
    fn row(self, [x]: [f64; 1]) -> ([f64; 1], bool) {
        ([x / self.factor], self.fits(x))
    }

    #[inline(always)]
    fn row_in_lanes(self, [x]: [f64; 1]) -> ([f64; 1], bool) {
        let near = x * self.inverse;
        let rest = (-near).mul_add(self.factor, x);
        ([rest.mul_add(self.inverse, near)], self.fits(x))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn a_division_in_three_steps_is_the_division(factor in 1.0..2000.0_f64, x in 0.0..5000.0_f64, tiny in -200..0_i32) {
            if let Some(law) = Quotient::by(factor, f64::MAX) {
                for x in [x, x * 10.0_f64.powi(tiny), factor * x, (factor * x).next_up(), 0.0] {
                    prop_assert!(law.row([x]) == law.row_in_lanes([x]) || !law.fits(x));
                }
            }
        }
    }

    #[test]
    fn most_factors_can_be_divided_by_in_three_steps() {
        let known = (0..1000).filter(|n| Quotient::by(1.0 + f64::from(*n) * 0.777, 1.0).is_some()).count();
        assert!(known > 700, "{known}");
    }
}
