use super::{Money, MoneyError};
use rust_decimal::Decimal;

/// Shares an amount out in proportion to weights, and loses no minor unit.
///
/// Each share is cut to whole minor units; those left over go one each to the largest remainders, the earlier share
/// first among equals (the method of largest remainders). The shares always add up to the amount.
///
/// # Errors
///
/// [`MoneyError::Empty`] without weights; [`MoneyError::OutOfRange`] for a weight below zero or when all are
/// nothing; [`MoneyError::TooLarge`] when the weights have too many digits to be compared exactly.
///
/// # Example
///
/// ```
/// use foilwork::money::{Currency, Money, allocate};
///
/// let tips = Money::parse("10.00", Currency::from_code("EUR")?)?;
/// let shares = allocate(tips, &[1.into(), 1.into(), 1.into()])?;
/// assert_eq!(shares.iter().map(|share| share.minor()).collect::<Vec<_>>(), [334, 333, 333]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Hamilton's method of apportionment (largest remainders), from memory.
pub fn allocate(amount: Money, weights: &[Decimal]) -> Result<Vec<Money>, MoneyError> {
    let minor = share_out(amount.minor(), weights)?;
    Ok(minor.into_iter().map(|minor| Money::from_minor(minor, amount.currency())).collect())
}

/// [`allocate`] for a whole number of anything.
pub(crate) fn share_out(amount: i64, weights: &[Decimal]) -> Result<Vec<i64>, MoneyError> {
    let weights = whole(weights)?;
    let total = weights.iter().try_fold(0_i128, |sum, w| sum.checked_add(*w)).ok_or(TOO_LONG)?;
    if weights.is_empty() {
        return Err(MoneyError::Empty { field: "list of weights" });
    }
    if total == 0 {
        return Err(bad_weight(Decimal::ZERO));
    }
    let mut shares = Vec::with_capacity(weights.len());
    let mut remainders = Vec::with_capacity(weights.len());
    for (place, weight) in weights.iter().enumerate() {
        let part = weight.checked_mul(i128::from(amount.unsigned_abs())).ok_or(TOO_LONG)?;
        shares.push(part / total);
        remainders.push((std::cmp::Reverse(part % total), place));
    }
    let left = i128::from(amount.unsigned_abs()) - shares.iter().sum::<i128>();
    remainders.sort_unstable();
    // Fewer units are left than there are shares, since each cut took less than one.
    for (_, (_, place)) in (0..left).zip(remainders) {
        if let Some(share) = shares.get_mut(place) {
            *share += 1;
        }
    }
    let sign = i128::from(amount.signum());
    shares.into_iter().map(|share| i64::try_from(sign * share).map_err(|_| TOO_LONG)).collect()
}

/// Weights as whole numbers in the same proportion.
fn whole(weights: &[Decimal]) -> Result<Vec<i128>, MoneyError> {
    let scale = weights.iter().map(Decimal::scale).max().unwrap_or(0);
    weights
        .iter()
        .map(|weight| {
            if weight.is_sign_negative() && !weight.is_zero() {
                return Err(bad_weight(*weight));
            }
            let power = 10_i128.checked_pow(scale - weight.scale()).ok_or(TOO_LONG)?;
            weight.mantissa().checked_mul(power).ok_or(TOO_LONG)
        })
        .collect()
}

const TOO_LONG: MoneyError = MoneyError::TooLarge { field: "amount times weight" };

fn bad_weight(value: Decimal) -> MoneyError {
    let allowed = "nothing or more, and more than nothing for at least one share";
    MoneyError::OutOfRange { field: "weight", value, unit: "parts", allowed }
}

/// Percentages of a whole, to `digits` decimals, that add up to exactly 100.
///
/// `None` when the whole is zero or the parts have different signs: such parts are no shares.
pub(crate) fn shares(parts: &[Money], digits: u32) -> Option<Vec<Decimal>> {
    let weights: Vec<_> = parts.iter().map(|part| part.decimal()).collect();
    let whole = 100_i64.checked_mul(10_i64.checked_pow(digits)?)?;
    let shares = share_out(whole, &weights).ok()?;
    Some(shares.into_iter().map(|share| Decimal::new(share, digits)).collect())
}
