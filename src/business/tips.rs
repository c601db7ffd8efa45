use crate::money::{Money, MoneyError, allocate, exact};
use crate::quantity::Duration;
use rust_decimal::Decimal;

/// A tip in percent of the bill, unrounded. A tip is no part of the takings and carries no commission.
///
/// # Errors
///
/// [`MoneyError::AmountOutOfRange`] for a tip below zero or a bill of zero; [`MoneyError::MixedCurrencies`].
///
/// # Example
///
/// ```
/// use foilwork::{business::tip_percent, money::{Currency, Money}};
///
/// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
/// assert_eq!(tip_percent(euros("12.00")?, euros("80.00")?)?.to_string(), "15");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn tip_percent(tip: Money, bill: Money) -> Result<Decimal, MoneyError> {
    tip.not_negative("tip")?.percent_of(bill.positive("bill")?)
}

/// Shares pooled tips by time worked, and loses no minor unit.
///
/// # Errors
///
/// [`MoneyError::Empty`] without anyone; [`MoneyError::OutOfRange`] when no one worked; [`MoneyError::AmountOutOfRange`]
/// for tips below zero.
///
/// # Example
///
/// ```
/// use foilwork::{business::share_tips, money::{Currency, Money}, quantity::Duration};
///
/// let tips = Money::parse("50.00", Currency::from_code("EUR")?)?;
/// let worked = [Duration::from_h(8.0)?, Duration::from_h(8.0)?, Duration::from_h(5.0)?];
/// let shares: Vec<_> = share_tips(tips, &worked)?.iter().map(|share| share.minor()).collect();
/// assert_eq!(shares, [1905, 1905, 1190]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn share_tips(tips: Money, worked: &[Duration]) -> Result<Vec<Money>, MoneyError> {
    let weights = worked.iter().map(|time| exact::decimal(time.min(), "worked time")).collect::<Result<Vec<_>, _>>()?;
    allocate(tips.not_negative("tips")?, &weights)
}
