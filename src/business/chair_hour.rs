use crate::money::{Money, MoneyError, UnitPrice, exact, exact::SIXTY};
use crate::quantity::Duration;
use rust_decimal::Decimal;
use serde::Serialize;

/// A service that competes for the chair.
#[derive(Debug, Clone, PartialEq)]
pub struct ChairService {
    /// The service, in the user's words.
    pub what: String,
    /// Its net price.
    pub price: Money,
    /// What one more of it costs.
    pub variable: Money,
    /// How long it takes the chair, developing time included.
    pub in_chair: Duration,
}

/// A service with what it earns for an hour of the chair.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RankedService {
    /// The service.
    pub what: String,
    /// Net price less variable cost.
    pub contribution: Money,
    /// The contribution for one hour of the chair, unrounded.
    pub per_chair_hour: UnitPrice,
}

/// What one service earns for an hour of the chair.
///
/// # Errors
///
/// [`MoneyError::OutOfRange`] for no time at all; [`MoneyError::MixedCurrencies`].
///
/// # Example
///
/// ```
/// use foilwork::{business::{ChairService, contribution_per_chair_hour}, money::{Currency, Money}, quantity::Duration};
///
/// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
/// let toner = ChairService {
///     what: "toner".into(),
///     price: euros("35.00")?,
///     variable: euros("5.00")?,
///     in_chair: Duration::from_min(40.0)?,
/// };
/// assert_eq!(contribution_per_chair_hour(&toner)?.per_chair_hour.to_string(), "45 EUR/h");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn contribution_per_chair_hour(service: &ChairService) -> Result<RankedService, MoneyError> {
    let contribution = service.price.minus(service.variable)?;
    let minutes = exact::decimal(service.in_chair.min(), "chair time")?;
    if minutes <= Decimal::ZERO {
        let allowed = "more than nothing";
        return Err(MoneyError::OutOfRange { field: "chair time", value: minutes, unit: "min", allowed });
    }
    let per_unit = exact::ratio(&[contribution.decimal(), SIXTY], &[minutes], "contribution per chair hour")?;
    let per_chair_hour = UnitPrice { per_unit, currency: contribution.currency(), unit: "h" };
    Ok(RankedService { what: service.what.clone(), contribution, per_chair_hour })
}

/// Ranks services by what they leave for an hour of the chair, the best first; equals keep their order.
///
/// The chair is what runs out on a full day, so the service with the highest price is not always the one to promote.
///
/// # Errors
///
/// As [`contribution_per_chair_hour`]; [`MoneyError::MixedCurrencies`] across the list.
///
/// # Example
///
/// ```
/// use foilwork::{business::{ChairService, rank_by_chair_hour}, money::{Currency, Money}, quantity::Duration};
///
/// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
/// let services = [
///     ChairService {
///         what: "full head of foils".into(),
///         price: euros("140.00")?,
///         variable: euros("20.00")?,
///         in_chair: Duration::from_min(180.0)?,
///     },
///     ChairService {
///         what: "toner".into(),
///         price: euros("35.00")?,
///         variable: euros("5.00")?,
///         in_chair: Duration::from_min(40.0)?,
///     },
/// ];
/// let ranked = rank_by_chair_hour(&services)?;
/// assert_eq!(ranked[0].per_chair_hour.to_string(), "45 EUR/h"); // the toner, not the foils at 40
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Contribution per unit of the scarce resource; [Journal of Accountancy, August 1990](crate::source::citations::money::CHAIR_HOUR), argues it for a salon.
pub fn rank_by_chair_hour(services: &[ChairService]) -> Result<Vec<RankedService>, MoneyError> {
    let mut ranked = services.iter().map(contribution_per_chair_hour).collect::<Result<Vec<_>, _>>()?;
    if let Some(first) = ranked.first() {
        ranked.iter().try_for_each(|service| service.contribution.same_currency(first.contribution))?;
    }
    ranked.sort_by_key(|service| std::cmp::Reverse(service.per_chair_hour.per_unit));
    Ok(ranked)
}
