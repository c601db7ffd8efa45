//! Exact products and quotients: one rounding, at the end, decided on the true value.
//!
//! Every cost in this room is a product of decimals over a product of decimals. Carrying an intermediate quotient in
//! 28 digits would decide a tie wrongly: 11.00 an hour for 300.3 min is 55.055 exactly, but 11/60 cut at 28 digits and
//! multiplied by 300.3 falls just below. So numerators and denominators are multiplied out as whole numbers (128 bits,
//! or as many as it takes) and divided once.

use super::{MoneyError, Rounding};
use num_bigint::{BigInt, Sign};
use rust_decimal::Decimal;
use std::cmp::Ordering;

/// `10^exponent · product(over) / product(under)` as a whole number, rounded once.
///
/// A denominator of zero is the caller's mistake and gives `TooLarge`, like any result beyond `i64`.
pub(crate) fn quotient(
    over: &[Decimal],
    under: &[Decimal],
    exponent: u32,
    rounding: Rounding,
    field: &'static str,
) -> Result<i64, MoneyError> {
    let scale = |factors: &[Decimal]| factors.iter().map(|d| i64::from(d.scale())).sum::<i64>();
    let shift = i64::from(exponent) + scale(under) - scale(over);
    narrow(over, under, shift, rounding)
        .or_else(|| wide(over, under, shift, rounding))
        .ok_or(MoneyError::TooLarge { field })
}

/// The ordinary case: everything fits into 128 bits.
fn narrow(over: &[Decimal], under: &[Decimal], shift: i64, rounding: Rounding) -> Option<i64> {
    let product = |factors: &[Decimal]| factors.iter().try_fold(1_i128, |product, d| product.checked_mul(d.mantissa()));
    let power = 10_i128.checked_pow(u32::try_from(shift.unsigned_abs()).ok()?)?;
    let (mut numerator, mut denominator) = (product(over)?, product(under)?);
    if shift >= 0 {
        numerator = numerator.checked_mul(power)?;
    } else {
        denominator = denominator.checked_mul(power)?;
    }
    divide(numerator, denominator, rounding)
}

/// One division of whole numbers, rounded as named; `None` for a zero denominator or a result beyond `i64`.
#[inline]
pub(crate) fn divide(numerator: i128, denominator: i128, rounding: Rounding) -> Option<i64> {
    if let (Ok(numerator), Ok(denominator)) = (i64::try_from(numerator), i64::try_from(denominator)) {
        return divide_64(numerator, denominator, rounding);
    }
    let quotient = i64::try_from(numerator.checked_div(denominator)?).ok()?;
    let rest = numerator.checked_rem(denominator)?;
    if rest == 0 {
        return Some(quotient);
    }
    // `|rest| < |denominator|`, so the difference cannot wrap.
    let to_next = denominator.unsigned_abs() - rest.unsigned_abs();
    let half = rest.unsigned_abs().cmp(&to_next);
    step(quotient, (numerator < 0) != (denominator < 0), half, rounding)
}

/// The same division where everything fits into 64 bits, as nearly every amount does: it takes a fraction of the time.
#[inline]
pub(crate) fn divide_64(numerator: i64, denominator: i64, rounding: Rounding) -> Option<i64> {
    let (quotient, rest) = (numerator.checked_div(denominator)?, numerator.checked_rem(denominator)?);
    if rest == 0 {
        return Some(quotient);
    }
    let half = rest.unsigned_abs().cmp(&(denominator.unsigned_abs() - rest.unsigned_abs()));
    step(quotient, (numerator < 0) != (denominator < 0), half, rounding)
}

/// The same division for factors that need more than 128 bits.
fn wide(over: &[Decimal], under: &[Decimal], shift: i64, rounding: Rounding) -> Option<i64> {
    let product = |factors: &[Decimal]| factors.iter().map(|d| BigInt::from(d.mantissa())).product::<BigInt>();
    let power = BigInt::from(10).pow(u32::try_from(shift.unsigned_abs()).ok()?);
    let (mut numerator, mut denominator) = (product(over), product(under));
    if shift >= 0 {
        numerator *= power;
    } else {
        denominator *= power;
    }
    if denominator.sign() == Sign::NoSign {
        return None;
    }
    let quotient = i64::try_from(&numerator / &denominator).ok()?;
    let rest = (&numerator % &denominator).magnitude().clone();
    if rest.bits() == 0 {
        return Some(quotient);
    }
    let to_next = denominator.magnitude() - &rest;
    let negative = (numerator.sign() == Sign::Minus) != (denominator.sign() == Sign::Minus);
    step(quotient, negative, rest.cmp(&to_next), rounding)
}

/// Moves a quotient that was cut off, by one or not at all. `half` says how the rest compares with one half.
fn step(cut: i64, negative: bool, half: Ordering, rounding: Rounding) -> Option<i64> {
    let grow = match rounding {
        Rounding::MidpointAwayFromZero => half != Ordering::Less,
        Rounding::MidpointNearestEven => half == Ordering::Greater || (half == Ordering::Equal && cut % 2 != 0),
        Rounding::MidpointTowardZero => half == Ordering::Greater,
        Rounding::ToZero => false,
        Rounding::AwayFromZero => true,
        Rounding::ToNegativeInfinity => negative,
        Rounding::ToPositiveInfinity => !negative,
    };
    match (grow, negative) {
        (false, _) => Some(cut),
        (true, false) => cut.checked_add(1),
        (true, true) => cut.checked_sub(1),
    }
}

/// `product(over) / product(under)` in 28 significant digits, for rates and percentages that are shown or passed on.
pub(crate) fn ratio(over: &[Decimal], under: &[Decimal], field: &'static str) -> Result<Decimal, MoneyError> {
    let product =
        |factors: &[Decimal]| factors.iter().try_fold(Decimal::ONE, |product, factor| product.checked_mul(*factor));
    product(over)
        .zip(product(under))
        .and_then(|(over, under)| over.checked_div(under))
        .map(|ratio| ratio.normalize())
        .ok_or(MoneyError::TooLarge { field })
}

/// A measured value as the decimal it was written as.
///
/// An `f64` holds 15 significant digits surely, so that many are kept: 0.1 is one tenth, and the dust of a float sum
/// (0.1 + 0.2) disappears instead of deciding a tie.
pub(crate) fn decimal(value: f64, field: &'static str) -> Result<Decimal, MoneyError> {
    if let Some(thousandths) = thousandths(value) {
        return Ok(Decimal::new(thousandths, 3));
    }
    // A decimal ends after 28 places, so a tiny value has fewer digits left.
    let read = if value.abs() < 1e-12 {
        format!("{value:.28}").parse()
    } else {
        Decimal::from_scientific(&format!("{value:.14e}"))
    };
    read.map_err(|_| MoneyError::TooLarge { field })
}

/// A thousand million, in thousandths: where masses and times end.
pub(crate) const MOST_THOUSANDTHS: i64 = 1_000_000_000_000;

/// How far a measured value may be from whole thousandths to be them, relative to it.
///
/// It is more than the `f64` nearest to them is off (2.3e-16, with the rounding of a product). With one rounding more, that of
/// a sum of two, it is less than what is lost where a value is read in its 15 sure digits (5e-16 at least), so both ways
/// give the same decimal.
pub(crate) const NEAR: f64 = 2.5e-16;

/// A measured value as whole thousandths, when it has at most three decimals, as nearly every mass and time has.
#[inline]
pub(crate) fn thousandths(value: f64) -> Option<i64> {
    let scaled = value * 1000.0;
    #[expect(clippy::cast_possible_truncation, reason = "a value beyond the range fails the comparison below")]
    let whole = (scaled + if scaled < 0.0 { -0.5 } else { 0.5 }) as i64;
    #[expect(clippy::cast_precision_loss, reason = "whole numbers up to 1e12 are exact")]
    let (near, exact) = (whole as f64, whole.unsigned_abs() <= MOST_THOUSANDTHS.unsigned_abs());
    (exact && (scaled - near).abs() <= near.abs() * NEAR).then_some(whole)
}

/// A fixed rate in lowest terms, for a long column of multiplications: minor units for one thousandth of something.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Rate {
    over: i64,
    under: i64,
}

impl Rate {
    /// The same product over product as [`quotient`], for one thousandth of the missing factor; `None` when it takes
    /// more than 64 bits.
    pub(crate) fn new(over: &[Decimal], under: &[Decimal], exponent: u32) -> Option<Self> {
        let whole = |factors: &[Decimal]| {
            factors.iter().try_fold(1_i128, |product, d| product.checked_mul(d.normalize().mantissa()))
        };
        let scale = |factors: &[Decimal]| factors.iter().map(|d| i64::from(d.normalize().scale())).sum::<i64>();
        let shift = i64::from(exponent) + scale(under) - scale(over) - 3;
        let power = 10_i128.checked_pow(u32::try_from(shift.unsigned_abs()).ok()?)?;
        let (mut over, mut under) = (whole(over)?, whole(under)?);
        if shift >= 0 {
            over = over.checked_mul(power)?;
        } else {
            under = under.checked_mul(power)?;
        }
        let divisor = i128::try_from(greatest_common_divisor(over.unsigned_abs(), under.unsigned_abs())).ok()?;
        Some(Self { over: i64::try_from(over / divisor).ok()?, under: i64::try_from(under / divisor).ok()? })
    }

    /// Numerator and denominator.
    pub(crate) const fn parts(self) -> (i64, i64) {
        (self.over, self.under)
    }

    /// So many thousandths at this rate, rounded once.
    #[inline]
    pub(crate) fn times(self, thousandths: i64, rounding: Rounding) -> Option<i64> {
        divide_64(self.over.checked_mul(thousandths)?, self.under, rounding)
    }
}

/// At least 1, so that a division by it is always possible.
pub(crate) const fn greatest_common_divisor(mut a: u128, mut b: u128) -> u128 {
    while b != 0 {
        (a, b) = (b, a % b);
    }
    if a == 0 { 1 } else { a }
}

/// Percent as a factor: 20 gives the pair 20 over 100.
pub(crate) const HUNDRED: Decimal = Decimal::ONE_HUNDRED;

/// Minutes in an hour.
pub(crate) const SIXTY: Decimal = Decimal::from_parts(60, 0, 0, false, 0);

#[cfg(test)]
mod tests {
    use super::*;

    /// Down to the whole number below, and how much is left of the divisor: from there every rounding is told by hand.
    fn by_hand(over: i128, under: i128, rounding: Rounding) -> i128 {
        let (over, under) = if under < 0 { (-over, -under) } else { (over, under) };
        let (floor, rest) = (over.div_euclid(under), over.rem_euclid(under));
        let up = match rounding {
            _ if rest == 0 => false,
            Rounding::MidpointAwayFromZero => 2 * rest > under || (2 * rest == under && over > 0),
            Rounding::MidpointTowardZero => 2 * rest > under || (2 * rest == under && over < 0),
            Rounding::MidpointNearestEven => 2 * rest > under || (2 * rest == under && floor % 2 != 0),
            Rounding::ToZero => over < 0,
            Rounding::AwayFromZero => over > 0,
            Rounding::ToNegativeInfinity => false,
            Rounding::ToPositiveInfinity => true,
        };
        floor + i128::from(up)
    }

    /// The same quotients in 64 bits, in 128 and in as many as it takes: the second and third are widened by a factor that cancels.
    #[test]
    fn a_division_is_rounded_alike_in_every_width() {
        let wide_factor = 1_i128 << 70;
        for rounding in Rounding::ALL.iter().copied() {
            for over in -25_i64..=25 {
                for under in [-10, -7, -4, -2, -1, 1, 2, 3, 4, 7, 10] {
                    let want = i64::try_from(by_hand(over.into(), under.into(), rounding)).ok();
                    assert_eq!(divide_64(over, under, rounding), want, "{over} / {under}, {rounding}");
                    let (wide_over, wide_under) = (i128::from(over) * wide_factor, i128::from(under) * wide_factor);
                    assert_eq!(divide(over.into(), under.into(), rounding), want, "{over} / {under}, {rounding}");
                    assert_eq!(divide(wide_over, wide_under, rounding), want, "{over} / {under}, {rounding}");
                    // A shift is so many tens above the line, or below it.
                    for shift in [-3_i64, 0, 2] {
                        let tens = 10_i128.pow(u32::try_from(shift.unsigned_abs()).unwrap());
                        let (n, d) = (i128::from(over), i128::from(under));
                        let (n, d) = if shift < 0 { (n, d * tens) } else { (n * tens, d) };
                        let want = i64::try_from(by_hand(n, d, rounding)).ok();
                        let factors = |number| [Decimal::new(number, 1), Decimal::ONE];
                        let (over, under) = (factors(over), factors(under));
                        assert_eq!(narrow(&over, &under, shift, rounding), want, "{over:?} {under:?} {rounding}");
                        assert_eq!(wide(&over, &under, shift, rounding), want, "{over:?} {under:?} {rounding}");
                    }
                }
            }
        }
        for rounding in Rounding::ALL.iter().copied() {
            let nothing = [Decimal::ZERO];
            assert_eq!((divide_64(1, 0, rounding), divide(1 << 100, 0, rounding)), (None, None));
            assert_eq!(wide(&[Decimal::ONE], &nothing, 0, rounding), None);
            // Beyond what 64 bits hold.
            assert_eq!(divide(1 << 100, 1, rounding), None);
            assert_eq!(wide(&[Decimal::MAX], &[Decimal::ONE], 0, rounding), None);
            assert_eq!(wide(&[Decimal::ONE], &[Decimal::ONE], 30, rounding), None);
        }
        // The largest is rounded up no further.
        let most = i128::from(i64::MAX);
        assert_eq!(divide(most * 4 + 2, 4, Rounding::MidpointAwayFromZero), None);
        assert_eq!(divide(most * 4 + 2, 4, Rounding::ToZero), Some(i64::MAX));
    }

    /// Thousandths as they are written, with the dust of a float sum, and what has more decimals or is too large.
    #[test]
    fn three_decimals_are_thousandths() {
        let cases = [
            (0.0, Some(0)),
            (-0.0, Some(0)),
            (0.001, Some(1)),
            (1.5, Some(1500)),
            (-1.5, Some(-1500)),
            (-0.001, Some(-1)),
            (0.1 + 0.2, Some(300)),
            (1e9, Some(1_000_000_000_000)),
            (-1e9, Some(-1_000_000_000_000)),
            (1_000_000_000.001, None),
            (0.0004, None),
            (0.0005, None),
            (-0.0005, None),
            (12.345_678, None),
            (333.333_3, None),
            (f64::NAN, None),
            (f64::INFINITY, None),
            (1e300, None),
        ];
        for (value, want) in cases {
            assert_eq!(thousandths(value), want, "{value}");
        }
    }

    /// 15 digits are kept, and of a tiny value what 28 decimals hold.
    #[test]
    fn a_measured_value_is_the_decimal_it_was_written_as() {
        let read = |value| decimal(value, "mass").map(|read| read.normalize().to_string());
        assert_eq!(read(12.345_678_901_234_567).unwrap(), "12.3456789012346");
        assert_eq!(read(0.000_123_456_789_012_345_6).unwrap(), "0.000123456789012346");
        assert_eq!(read(1e-12).unwrap(), "0.000000000001");
        assert_eq!(read(2e-20).unwrap(), "0.00000000000000000002");
        assert_eq!(read(-1.25).unwrap(), "-1.25");
        assert_eq!(read(1e-30).unwrap(), "0");
        assert!(read(1e30).is_err() && read(f64::NAN).is_err() && read(f64::INFINITY).is_err());
    }

    #[test]
    fn a_rate_is_in_lowest_terms() {
        let of = |over: &[i64], under: &[i64], exponent| {
            let decimals = |numbers: &[i64]| numbers.iter().map(|number| Decimal::new(*number, 2)).collect::<Vec<_>>();
            Rate::new(&decimals(over), &decimals(under), exponent).map(Rate::parts)
        };
        // 15.00 over 60.00 in cents for a thousandth: 1500 over 60 000.
        assert_eq!(of(&[1500], &[6000], 2), Some((1, 40)));
        // 7.30 over 60.00: 730 over 60 000. In units of a currency without a smaller one: 7.3 over 60 000.
        assert_eq!(of(&[730], &[6000], 2), Some((73, 6000)));
        assert_eq!(of(&[730], &[6000], 0), Some((73, 600_000)));
        // 12.50 times 120 % over 100 % and 60 in thousandths of the unit: 15 000 over 60 000.
        assert_eq!(of(&[1250, 12_000], &[10_000, 6000], 3), Some((1, 4)));
        assert_eq!(of(&[0], &[6000], 2), Some((0, 1)));
        assert_eq!(Rate::new(&[Decimal::MAX, Decimal::MAX], &[Decimal::ONE], 2).map(Rate::parts), None);
        let rate = Rate::new(&[Decimal::new(1500, 2)], &[Decimal::new(60, 0)], 2).unwrap();
        // 20 thousandths at 1/40 are a half.
        assert_eq!(rate.times(20, Rounding::MidpointAwayFromZero), Some(1));
        assert_eq!(
            (rate.times(20, Rounding::MidpointTowardZero), rate.times(19, Rounding::AwayFromZero)),
            (Some(0), Some(1))
        );
        assert_eq!(Rate { over: i64::MAX, under: 1 }.times(2, Rounding::ToZero), None);
    }

    #[test]
    fn the_greatest_common_divisor_is_at_least_one() {
        let cases = [
            ((0, 0), 1),
            ((0, 5), 5),
            ((5, 0), 5),
            ((12, 18), 6),
            ((18, 12), 6),
            ((7, 13), 1),
            ((1 << 100, 1 << 90), 1 << 90),
        ];
        for ((a, b), want) in cases {
            assert_eq!(greatest_common_divisor(a, b), want, "{a} {b}");
        }
    }
}
