use crate::money::{Money, MoneyError};
use serde::Serialize;

/// What one more stylist brings.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct HiringStep {
    /// How many stylists there are then.
    pub stylists: usize,
    /// How many more services they do together.
    pub more_services: i64,
    /// What these leave, before the wage.
    pub more_contribution: Money,
    /// The same less the wage: below zero, the last one hired does not pay.
    pub left: Money,
}

/// What each further stylist brings, given how many services so many stylists do together in a period.
///
/// # Errors
///
/// [`MoneyError::Empty`]; [`MoneyError::MixedCurrencies`]; [`MoneyError::TooLarge`].
///
/// # Example
///
/// ```
/// use foilwork::{business::hiring_steps, money::{Currency, Money}};
///
/// let usd = |text: &str| Money::parse(text, Currency::from_code("USD")?);
/// let steps = hiring_steps(&[8, 16, 23], usd("8.00")?, usd("60.00")?)?;
/// let left: Vec<_> = steps.iter().map(|step| step.left.to_string()).collect();
/// assert_eq!(left, ["4.00 USD", "4.00 USD", "-4.00 USD"]); // 8 x 8 - 60, then 7 x 8 - 60
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Marginal revenue product against the wage; any introduction to microeconomics (from memory).
pub fn hiring_steps(services: &[u32], contribution: Money, wage: Money) -> Result<Vec<HiringStep>, MoneyError> {
    if services.is_empty() {
        return Err(MoneyError::Empty { field: "list of services" });
    }
    let before = std::iter::once(0).chain(services.iter().copied());
    before
        .zip(services)
        .enumerate()
        .map(|(place, (before, now))| {
            let more_services = i64::from(*now) - i64::from(before);
            let more_contribution = contribution.times(more_services)?;
            let left = more_contribution.minus(wage)?;
            Ok(HiringStep { stylists: place + 1, more_services, more_contribution, left })
        })
        .collect()
}

/// How many stylists leave the most in all, the larger number among equals.
///
/// # Errors
///
/// As [`hiring_steps`].
///
/// # Example
///
/// ```
/// use foilwork::{business::best_number_to_hire, money::{Currency, Money}};
///
/// let usd = |text: &str| Money::parse(text, Currency::from_code("USD")?);
/// assert_eq!(best_number_to_hire(&[8, 16, 23, 29], usd("8.00")?, usd("60.00")?)?, 2);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn best_number_to_hire(services: &[u32], contribution: Money, wage: Money) -> Result<usize, MoneyError> {
    let mut best = (0, 0);
    let mut sum = 0_i128;
    for step in hiring_steps(services, contribution, wage)? {
        sum += i128::from(step.left.minor());
        if sum >= best.0 {
            best = (sum, step.stylists);
        }
    }
    Ok(best.1)
}
