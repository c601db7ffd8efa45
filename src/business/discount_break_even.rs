use crate::money::{Money, MoneyError, Rounding, exact, exact::HUNDRED};
use rust_decimal::Decimal;
use serde::Serialize;

/// What an offer must bring in to leave as much as before.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct DiscountBreakEven {
    /// What one service leaves at the full price.
    pub contribution_before: Money,
    /// What it leaves at the reduced price.
    pub contribution_after: Money,
    /// How many services the offer must sell for the contribution to stay the same, rounded up.
    pub count_needed: i64,
    /// By how much that is more, in percent, unrounded.
    pub extra_percent: Decimal,
}

/// How many services must be sold at a reduced net price to leave what `count` leave at the full one.
///
/// `needed = count · (before - variable) / (after - variable)`. A discount comes wholly out of the contribution: 20 %
/// off a service that leaves half its price takes 67 % more guests to earn back.
///
/// # Errors
///
/// [`MoneyError::NeverReached`] when the reduced price leaves nothing; [`MoneyError::AmountOutOfRange`] when the
/// reduced price is above the full one; [`MoneyError::MixedCurrencies`].
///
/// # Example
///
/// ```
/// use foilwork::{business::discount_break_even, money::{Currency, Money}};
///
/// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
/// let offer = discount_break_even(euros("100.00")?, euros("80.00")?, euros("50.00")?, 30)?;
/// assert_eq!((offer.count_needed, offer.extra_percent.round_dp(1).to_string()), (50, "66.7".into()));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Contribution per sale, [OpenStax, Principles of Accounting, Volume 2](crate::source::citations::money::MANAGERIAL_ACCOUNTING), module m68115; the ratio is derived.
pub fn discount_break_even(
    before: Money,
    after: Money,
    variable: Money,
    count: u32,
) -> Result<DiscountBreakEven, MoneyError> {
    let (contribution_before, contribution_after) = (before.minus(variable)?, after.minus(variable)?);
    if after > before {
        let allowed = "at most the full price";
        return Err(MoneyError::AmountOutOfRange { field: "reduced price", value: after, allowed });
    }
    if contribution_after.minor() <= 0 {
        return Err(MoneyError::NeverReached { goal: "the contribution before the offer", left: contribution_after });
    }
    let (over, under) = (contribution_before.decimal(), contribution_after.decimal());
    let up = Rounding::ToPositiveInfinity;
    let count_needed = exact::quotient(&[over, count.into()], &[under], 0, up, "number of services")?;
    let extra = contribution_before.minus(contribution_after)?.decimal();
    let extra_percent = exact::ratio(&[extra, HUNDRED], &[under], "extra services")?;
    Ok(DiscountBreakEven { contribution_before, contribution_after, count_needed, extra_percent })
}
