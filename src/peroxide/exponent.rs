//! Exponential, and natural logarithm of a quotient, for the law of loss. They are products and sums without a branch, the same for one number
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

/// The natural logarithm of a quotient, without the quotient: from 1e-300 to 1e300, however near to one.
///
/// With `under` moved by doublings until it is near `over`, their difference is exact, and one division is all there is.
#[inline(always)]
pub(super) fn logarithm_of_ratio(over: f64, under: f64) -> f64 {
    const HALF: u64 = 1 << 51;
    const WHOLE: f64 = 4_503_599_627_370_496.0; // 2^52
    // The bits of a number are its logarithm but for at most 0.0861, so the quotient that is left is below 2^0.5861, or above its
    // inverse. 1024 doublings more than there are keep the number positive.
    let exponent = over.to_bits().wrapping_sub(under.to_bits()).wrapping_add((1024 << 52) + HALF) >> 52;
    let doublings = f64::from_bits(exponent | WHOLE.to_bits()) - (WHOLE + 1024.0);
    let near = under * f64::from_bits(exponent.wrapping_sub(1) << 52);
    // ln((1 + s) / (1 - s)) is 2 s + s^3 times a series in s^2: what is left of it is 2^-60 of the logarithm.
    let s = (over - near) / (over + near);
    let square = s * s;
    let sum = polynomial(
        0.136_116_143_541_051_4,
        [
            0.132_093_714_941_152_16,
            0.153_888_849_415_587,
            0.181_817_371_969_786_37,
            0.222_222_230_538_264_56,
            0.285_714_285_672_430_3,
            0.400_000_000_000_080_1,
            0.666_666_666_666_666_6,
        ],
        square,
    );
    let rest = s.mul_add(2.0, (s * square).mul_add(sum, doublings * LN_2[1]));
    doublings.mul_add(LN_2[0], rest)
}

/// The same of any numbers above zero.
pub(super) fn logarithm_of_any_ratio(over: f64, under: f64) -> f64 {
    let (over, raised) = in_reach(over);
    let (under, lowered) = in_reach(under);
    logarithm_of_ratio(over, under) - (raised - lowered) * std::f64::consts::LN_2
}

/// A number raised into the reach of [`logarithm_of_ratio`], and by how many doublings.
fn in_reach(x: f64) -> (f64, f64) {
    if x < 1e-220 { (x * 2.0_f64.powi(600), 600.0) } else { (x, 0.0) }
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

        // The system's library is off by less than one place. Near to each other, numbers have an exact difference.
        #[test]
        fn both_are_the_library_s(x in 0.0..700.0_f64, by in -300..2_i32, y in 1e-9..1.0_f64, near in 0..40_i32) {
            for x in [x, (x * 10.0_f64.powi(by)).min(708.0)] {
                prop_assert!(places(decay(x), (-x).exp()) <= 2.0, "e^-{x}: {} {}", decay(x), (-x).exp());
            }
            let x = x + 1e-3;
            for over in [x * y, x * (1.0 - y * 0.5_f64.powi(near)), x * (1.0 + y * 0.5_f64.powi(near)), x.next_down(), x] {
                let (found, off) = (logarithm_of_ratio(over, x), over / x);
                let library = if (0.5..=2.0).contains(&off) { ((over - x) / x).ln_1p() } else { off.ln() };
                prop_assert!(places(found, library) <= 3.0, "ln({over} / {x}): {found} {library}");
                prop_assert_eq!(found.to_bits(), logarithm_of_any_ratio(over, x).to_bits());
            }
            // Where the quotient would be too large or too small for a number of its own.
            for (over, under) in [(x, y * 10.0_f64.powi(by)), (y * 10.0_f64.powi(by), x), (5e-324, x), (x, 1e-310)] {
                let (found, library) = (logarithm_of_any_ratio(over, under), over.ln() - under.ln());
                prop_assert!((found - library).abs() <= 4e-13, "ln({over} / {under}): {found} {library}");
            }
        }
    }

    #[test]
    fn where_they_end() {
        assert_eq!((decay(0.0), decay(-0.0), decay(1e300), decay(f64::INFINITY)), (1.0, 1.0, 0.0, 0.0));
        assert!(decay(f64::NAN).is_nan());
        assert_eq!([1e-150, 0.3, 1e150].map(|x| logarithm_of_ratio(x, x)), [0.0; 3]);
        // ln 1e-300 = -300 ln 10.
        assert!((logarithm_of_ratio(1e-150, 1e150) + 300.0 * std::f64::consts::LN_10).abs() < 1e-12);
    }
}
