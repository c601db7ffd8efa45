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
