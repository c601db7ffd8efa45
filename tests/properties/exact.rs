//! One rounding, on the true value, however many digits there are on the way: held to the definition of each rounding in whole numbers
//! without a bound (the independent side multiplies only, and never divides).

use foilwork::money::{Currency, Money, MoneyError, Rounding};
use num_bigint::BigInt;
use proptest::prelude::*;
use rust_decimal::Decimal;
use std::cmp::Ordering;

const MOST_MANTISSA: u128 = (1 << 96) - 1;

/// An amount, and a percentage with its decimals.
fn any_factors() -> impl Strategy<Value = (i64, Decimal)> {
    (any::<i64>(), 0..MOST_MANTISSA, any::<bool>(), 0..97_u32, 0_u32..=28).prop_map(
        |(minor, mantissa, negative, fewer_bits, scale)| {
            let mantissa = i128::try_from(mantissa >> fewer_bits.min(95)).unwrap();
            let signed = if negative { -mantissa } else { mantissa };
            (minor >> (fewer_bits / 2), Decimal::from_i128_with_scale(signed, scale))
        },
    )
}

/// `5 a` minor units times `10^(s + 1) b` over `100 x 10^s` are `a b / 2`: a half for odd `a` and `b`, with up to 160 bits on the way.
fn halves() -> impl Strategy<Value = (i64, Decimal)> {
    (0_u32..=26, 0..1_000_000_000_i64, 0..2_000_000_000_i64, any::<bool>(), any::<bool>()).prop_map(
        |(scale, a, b, less, off)| {
            let power = 10_i128.pow(scale + 1);
            let most = i128::try_from(MOST_MANTISSA).unwrap() / power;
            let odd = (i128::from(b) % most.max(1)) | 1;
            let mantissa = power * odd.min(most.max(1));
            let minor = 5 * (2 * a + 1) * if less { -1 } else { 1 };
            // A half, or the least beside it that can be written.
            let mantissa = if off && mantissa > 1 { mantissa - 1 } else { mantissa };
            (minor, Decimal::from_i128_with_scale(mantissa, scale))
        },
    )
}

/// Whether `got` is `over / under` (positive) rounded as named: by comparing whole numbers.
fn is_rounded(over: &BigInt, under: &BigInt, got: i64, rounding: Rounding) -> bool {
    let off = over - under * BigInt::from(got);
    let zero = BigInt::from(0);
    let distance = if off < zero { -off.clone() } else { off.clone() };
    if &distance >= under {
        return false;
    }
    // Toward zero means: the value lies beyond what we got, seen from zero.
    let exact = off == zero;
    let beyond = if *over < zero { off < zero } else { off > zero };
    let half = (distance * 2_u8).cmp(under);
    let nearest = |tie: bool| half == Ordering::Less || (half == Ordering::Equal && tie);
    exact
        || match rounding {
            Rounding::MidpointAwayFromZero => nearest(!beyond),
            Rounding::MidpointNearestEven => nearest(got % 2 == 0),
            Rounding::MidpointTowardZero => nearest(beyond),
            Rounding::ToZero => beyond,
            Rounding::AwayFromZero => !beyond,
            Rounding::ToNegativeInfinity => off > zero,
            _ => off < zero,
        }
}

fn held(minor: i64, percent: Decimal) -> Result<(), TestCaseError> {
    let euro = Currency::from_code("EUR").unwrap();
    let over = BigInt::from(minor) * BigInt::from(percent.mantissa());
    let under = BigInt::from(100) * BigInt::from(10).pow(percent.scale());
    for &rounding in Rounding::ALL {
        match Money::from_minor(minor, euro).percent(percent, rounding) {
            Ok(got) => {
                prop_assert!(is_rounded(&over, &under, got.minor(), rounding), "{minor} {percent} {rounding}: {got}");
            }
            Err(error) => {
                prop_assert_eq!(error, MoneyError::TooLarge { field: "percentage" });
                // Refused where no amount holds it, and nowhere else: at the edge itself a rounding may still fit.
                let size = if over < BigInt::from(0) { -over.clone() } else { over.clone() };
                prop_assert!(size > BigInt::from(i64::MAX) * &under - &under, "{minor} {percent} {rounding}");
            }
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn a_percentage_is_rounded_once_on_its_true_value((minor, percent) in any_factors()) {
        held(minor, percent)?;
    }

    #[test]
    fn a_half_and_its_neighbours_fall_as_named((minor, percent) in halves()) {
        held(minor, percent)?;
    }
}

/// The amounts at the very ends: a half more than the most is too much, a half less than it is not.
#[test]
fn the_last_amount_is_held_and_the_next_refused() {
    let euro = Currency::from_code("EUR").unwrap();
    let of =
        |minor, percent: &str, rounding| Money::from_minor(minor, euro).percent(percent.parse().unwrap(), rounding);
    let up = Rounding::AwayFromZero;
    assert_eq!(of(i64::MAX, "100", up).unwrap().minor(), i64::MAX);
    assert_eq!(of(i64::MIN, "100", up).unwrap().minor(), i64::MIN);
    // A hundredth of a hundred-billionth more; the same cut off.
    let more = "100.00000000000000000000000001";
    for minor in [i64::MAX, i64::MIN] {
        assert!(of(minor, more, up).is_err());
        assert_eq!(of(minor, more, Rounding::ToZero).unwrap().minor(), minor);
    }
    assert!(of(i64::MAX, "100.01", Rounding::ToZero).is_err() && of(i64::MIN, "100.01", Rounding::ToZero).is_err());
}
