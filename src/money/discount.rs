use super::{Discount, Money, MoneyError, Rounding, exact::HUNDRED};
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
