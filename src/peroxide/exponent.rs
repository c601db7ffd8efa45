//! Exponential and natural logarithm for the law of loss. They are products and sums without a branch, the same for one number
//! as in the lanes of a column, and on every machine; a call into the system's library is neither. Product and sum are rounded
//! once, together, as IEEE 754 has it, whether the machine does them in one step or the language's library stands in.
//!
//! The polynomials go through the function at the nodes of Chebyshev; their factors were worked out with sixty digits (mpmath).

/// ln 2 in two parts, the first with so few bits that its product with a whole number is exact.
const LN_2: [f64; 2] = [6.931_471_803_691_238e-1, 1.908_214_929_270_587_7e-10];

/// 1.5 x 2^52: adding it leaves no place for a fraction, and the whole number in the last bits.
const SHIFT: f64 = 6_755_399_441_055_744.0;

/// What is left of one after a time, `e^-x` for `x` from 0: nothing where `f64` has no full number for it, beyond 708.
#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[inline(always)]
pub(super) fn decay(x: f64) -> f64 {
    let power = -(if x > 708.0 { 708.0 } else { x });
    let shifted = power.mul_add(std::f64::consts::LOG2_E, SHIFT);
    let doublings = shifted - SHIFT;
    let rest = doublings.mul_add(-LN_2[1], doublings.mul_add(-LN_2[0], power));
    // (e^r - 1 - r) / r^2 for `r` up to half of ln 2: what is left of e^r is 2^-55 of it.
    let sum = polynomial(
        2.510_038_549_551_032e-8,
        [
            2.762_008_844_540_974_6e-7,
            2.755_726_845_999_706_4e-6,
            2.480_152_129_595_437_6e-5,
            1.984_126_986_305_361_8e-4,
            1.388_888_891_721_371_7e-3,
            8.333_333_333_330_062e-3,
            4.166_666_666_662_413e-2,
            1.666_666_666_666_666_9e-1,
            0.500_000_000_000_000_1,
        ],
        rest,
    );
    let scale = f64::from_bits(shifted.to_bits().wrapping_add(1023) << 52);
    let left = (rest * rest).mul_add(sum, rest).mul_add(scale, scale);
    if x > 708.0 { 0.0 } else { left }
}

/// A polynomial from its factors, that of the highest power before the others.
#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[inline(always)]
fn polynomial<const N: usize>(highest: f64, factors: [f64; N], x: f64) -> f64 {
    factors.into_iter().fold(highest, |sum, factor| sum.mul_add(x, factor))
}

/// The natural logarithm, minus infinity of zero, not-a-number below it.
#[inline(always)]
pub(super) fn logarithm(x: f64) -> f64 {
    const HALF_ROOT: u64 = 0x3fe6_a09e_667f_3bcd;
    const ONE: u64 = 1.0_f64.to_bits();
    const WHOLE: f64 = 4_503_599_627_370_496.0; // 2^52
    let tiny = x < f64::MIN_POSITIVE;
    let bits = (if tiny { x * 18_014_398_509_481_984.0 } else { x }).to_bits(); // 2^54
    // The number is 2 to the power of `doublings` times one from the root of a half to that of two.
    let exponent = bits.wrapping_add(ONE - HALF_ROOT) >> 52;
    let doublings = f64::from_bits(exponent | WHOLE.to_bits()) - (WHOLE + if tiny { 1023.0 + 54.0 } else { 1023.0 });
    let above = f64::from_bits(bits.wrapping_sub(exponent << 52).wrapping_add(ONE)) - 1.0;
    // ln((1 + s) / (1 - s)) is 2 s + s^3 times a series in s^2: what is left of it is 2^-57 of the logarithm.
    let s = above / (2.0 + above);
    let square = s * s;
    let sum = polynomial(
        0.146_165_854_249_341_23,
        [
            0.153_317_106_182_064_2,
            0.181_828_894_556_751_05,
            0.222_222_111_302_598_75,
            0.285_714_286_260_032_7,
            0.399_999_999_998_994_44,
            0.666_666_666_666_667,
        ],
        square,
    );
    let off = s.mul_add((-square).mul_add(sum, above), -(doublings * LN_2[1]));
    let found = doublings.mul_add(LN_2[0], above - off);
    if x > 0.0 {
        found
    } else if x == 0.0 {
        f64::NEG_INFINITY
    } else {
        f64::NAN
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// So many last places apart.
    fn places(one: f64, other: f64) -> f64 {
        if one == other { 0.0 } else { (one - other).abs() / (other.abs().next_up() - other.abs()) }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(20_000))]

        // The system's library is off by less than one place.
        #[test]
        fn both_are_the_library_s_to_two_places(x in 0.0..700.0_f64, by in -300..2_i32, y in 1e-9..1.0_f64) {
            for x in [x, (x * 10.0_f64.powi(by)).min(708.0)] {
                prop_assert!(places(decay(x), (-x).exp()) <= 2.0, "e^-{x}: {} {}", decay(x), (-x).exp());
            }
            for x in [x, y, 1.0 - y, 1.0 + y, x * 10.0_f64.powi(by)] {
                prop_assert!(places(logarithm(x), x.ln()) <= 2.0, "ln {x}: {} {}", logarithm(x), x.ln());
            }
        }
    }

    #[test]
    fn where_they_end() {
        assert_eq!((decay(0.0), decay(-0.0), decay(1e300), decay(f64::INFINITY)), (1.0, 1.0, 0.0, 0.0));
        assert!(decay(f64::NAN).is_nan() && logarithm(f64::NAN).is_nan() && logarithm(-1.0).is_nan());
        assert_eq!((logarithm(1.0), logarithm(0.0), logarithm(-0.0)), (0.0, f64::NEG_INFINITY, f64::NEG_INFINITY));
        assert!(places(logarithm(5e-324), 5e-324_f64.ln()) <= 1.0);
    }
}
