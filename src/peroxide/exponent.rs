//! Exponential and natural logarithm for the law of loss. They are sums and products without a branch, the same for one number
//! as in the lanes of a column, and on every machine; a call into the system's library is neither.

/// ln 2 in two parts, the first with so few bits that its product with a whole number is exact.
const LN_2: [f64; 2] = [6.931_471_803_691_238e-1, 1.908_214_929_270_587_7e-10];

/// 1.5 x 2^52: adding it leaves no place for a fraction, and the whole number in the last bits.
const SHIFT: f64 = 6_755_399_441_055_744.0;

/// What is left of one after a time, `e^-x` for `x` from 0: nothing where `f64` has no full number for it, beyond 708.
#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[inline(always)]
pub(super) fn decay(x: f64) -> f64 {
    let power = -(if x > 708.0 { 708.0 } else { x });
    let shifted = power * std::f64::consts::LOG2_E + SHIFT;
    let doublings = shifted - SHIFT;
    let rest = power - doublings * LN_2[0] - doublings * LN_2[1];
    // One over the factorials: beyond them less is left than the last place of an `f64`.
    let mut sum = 1.0 / 6_227_020_800.0;
    for factorial in
        [479_001_600.0, 39_916_800.0, 3_628_800.0, 362_880.0, 40_320.0, 5_040.0, 720.0, 120.0, 24.0, 6.0, 2.0]
    {
        sum = sum * rest + 1.0 / factorial;
    }
    let scale = f64::from_bits(shifted.to_bits().wrapping_add(1023) << 52);
    let left = (1.0 + (rest + rest * rest * sum)) * scale;
    if x > 708.0 { 0.0 } else { left }
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
    let doublings = f64::from_bits(exponent | WHOLE.to_bits()) - WHOLE - if tiny { 1023.0 + 54.0 } else { 1023.0 };
    let above = f64::from_bits(bits.wrapping_sub(exponent << 52).wrapping_add(ONE)) - 1.0;
    // ln((1 + s) / (1 - s)) is 2 (s + s^3/3 + s^5/5 + ..).
    let s = above / (2.0 + above);
    let square = s * s;
    let mut sum = 2.0 / 21.0;
    for odd in [19.0, 17.0, 15.0, 13.0, 11.0, 9.0, 7.0, 5.0, 3.0] {
        sum = sum * square + 2.0 / odd;
    }
    let found = doublings * LN_2[0] - ((s * (above - square * sum) - doublings * LN_2[1]) - above);
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
