use super::{Discount, Money, MoneyError, Rounding, exact, exact::HUNDRED};
use rust_decimal::Decimal;
use serde::Serialize;

/// A price with a discount: `before - off = after`, always.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct DiscountedPrice {
    /// The full price.
    pub before: Money,
    /// What is taken off.
    pub off: Money,
    /// What is left to pay.
    pub after: Money,
}

/// Takes a discount off a price. What is taken off is rounded; the rest is the difference.
///
/// # Errors
///
/// [`MoneyError::TooLarge`].
///
/// # Source
///
/// OpenStax, Contemporary Mathematics, module m00058.
pub fn apply_discount(before: Money, discount: Discount, rounding: Rounding) -> Result<DiscountedPrice, MoneyError> {
    let off = before.percent(discount.percent(), rounding)?;
    Ok(DiscountedPrice { before, off, after: before.minus(off)? })
}

/// The full price under a discounted one: `before = after / (1 - discount)`.
///
/// # Errors
///
/// [`MoneyError::TooLarge`].
///
/// # Source
///
/// OpenStax, Contemporary Mathematics, module m00058.
pub fn price_before_discount(
    after: Money,
    discount: Discount,
    rounding: Rounding,
) -> Result<DiscountedPrice, MoneyError> {
    let under = HUNDRED - discount.percent();
    let before = Money::rounded(&[after.decimal(), HUNDRED], &[under], after.currency(), rounding, "full price")?;
    Ok(DiscountedPrice { before, off: before.minus(after)?, after })
}

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
/// off a service that leaves half its price takes 67 % more clients to earn back.
///
/// # Errors
///
/// [`MoneyError::NeverReached`] when the reduced price leaves nothing; [`MoneyError::AmountOutOfRange`] when the
/// reduced price is above the full one; [`MoneyError::MixedCurrencies`].
///
/// # Example
///
/// ```
/// use foilwork::money::{Currency, Money, discount_break_even};
///
/// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
/// let offer = discount_break_even(euros("100.00")?, euros("80.00")?, euros("50.00")?, 30)?;
/// assert_eq!((offer.count_needed, offer.extra_percent.round_dp(1).to_string()), (50, "66.7".into()));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Contribution per sale, OpenStax, Principles of Accounting, Volume 2, module m68115; the ratio is derived.
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
