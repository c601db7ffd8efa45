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
    /// The discount.
    #[serde(rename = "discount_percent")]
    pub discount: Discount,
    /// Whether the full price was found from the discounted one; else it was given.
    pub full_price_found: bool,
}

/// Takes a discount off a price. What is taken off is rounded; the rest is the difference.
///
/// # Errors
///
/// [`MoneyError::TooLarge`].
///
/// # Example
///
/// ```
/// use foilwork::money::{Currency, Discount, Money, Rounding, apply_discount};
///
/// let full = Money::parse("85.00", Currency::from_code("EUR")?)?;
/// let offer = apply_discount(full, Discount::from_percent(15.into())?, Rounding::MidpointAwayFromZero)?;
/// assert_eq!((offer.off.to_string(), offer.after.to_string()), ("12.75 EUR".into(), "72.25 EUR".into()));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [OpenStax, Contemporary Mathematics](crate::source::citations::money::CONTEMPORARY_MATHEMATICS), module m00058.
pub fn apply_discount(before: Money, discount: Discount, rounding: Rounding) -> Result<DiscountedPrice, MoneyError> {
    let off = before.percent(discount.percent(), rounding)?;
    Ok(DiscountedPrice { before, off, after: before.minus(off)?, discount, full_price_found: false })
}

/// The full price under a discounted one: `before = after / (1 - discount)`.
///
/// # Errors
///
/// [`MoneyError::TooLarge`].
///
/// # Example
///
/// ```
/// use foilwork::money::{Currency, Discount, Money, Rounding, price_before_discount};
///
/// let paid = Money::parse("72.25", Currency::from_code("EUR")?)?;
/// let offer = price_before_discount(paid, Discount::from_percent(15.into())?, Rounding::MidpointAwayFromZero)?;
/// assert_eq!(offer.before.to_string(), "85.00 EUR");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [OpenStax, Contemporary Mathematics](crate::source::citations::money::CONTEMPORARY_MATHEMATICS), module m00058, and the
/// [University of York's notes](crate::source::citations::money::PERCENTAGES) on percentage decrease.
pub fn price_before_discount(
    after: Money,
    discount: Discount,
    rounding: Rounding,
) -> Result<DiscountedPrice, MoneyError> {
    let under = HUNDRED - discount.percent();
    let before = Money::rounded(&[after.decimal(), HUNDRED], &[under], after.currency(), rounding, "full price")?;
    Ok(DiscountedPrice { before, off: before.minus(after)?, after, discount, full_price_found: true })
}
