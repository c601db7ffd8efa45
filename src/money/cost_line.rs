use super::{CardFee, Labour, Measure, Money, MoneyError, Overhead, PackPrice, Rounding, supply_cost};
use crate::quantity::Duration;

/// What one line of costs is worked out from.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum CostSource {
    /// Taken from a pack: product, additive, foils, gloves, towels.
    Supply {
        /// The pack and its price.
        pack: PackPrice,
        /// What went on the head.
        used: Measure,
        /// What was mixed and thrown away: it is paid for all the same.
        wasted: Option<Measure>,
    },
    /// Hands-on time.
    Labour {
        /// What an hour of it costs.
        labour: Labour,
        /// How long it takes.
        hands_on: Duration,
    },
    /// Time in the chair.
    Overhead {
        /// What an hour of it carries.
        overhead: Overhead,
        /// How long the chair is taken.
        in_chair: Duration,
    },
    /// What the card terminal keeps.
    CardFee {
        /// Its rate and fixed part.
        fee: CardFee,
        /// The payment it is taken from.
        payment: Money,
    },
    /// An amount that is known as such.
    Stated(Money),
}

/// What one line costs, rounded once. The cost of a service, a list of services and a column of services are loops over
/// this.
///
/// # Errors
///
/// [`MoneyError::DifferentMeasures`], [`MoneyError::AmountOutOfRange`] for a stated amount below zero,
/// [`MoneyError::MixedCurrencies`], [`MoneyError::TooLarge`].
///
/// # Example
///
/// ```
/// use foilwork::{money::*, quantity::{Duration, Mass}};
///
/// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
/// let lightener = CostSource::Supply {
///     pack: PackPrice::new(euros("26.40")?, Mass::from_g(500.0)?)?,
///     used: Mass::from_g(35.0)?.into(),
///     wasted: Some(Mass::from_g(5.0)?.into()),
/// };
/// assert_eq!(cost_line(&lightener, Rounding::MidpointAwayFromZero)?.to_string(), "2.11 EUR"); // 2.112
///
/// let overhead = Overhead::per_hour(euros("10.00")?)?;
/// let chair = CostSource::Overhead { overhead, in_chair: Duration::from_min(120.0)? };
/// assert_eq!(cost_line(&chair, Rounding::MidpointAwayFromZero)?.to_string(), "20.00 EUR");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn cost_line(source: &CostSource, rounding: Rounding) -> Result<Money, MoneyError> {
    match *source {
        CostSource::Supply { pack, used, wasted: None } => supply_cost(pack, used, rounding),
        CostSource::Supply { pack, used, wasted: Some(wasted) } => supply_cost(pack, used.plus(wasted)?, rounding),
        CostSource::Labour { labour, hands_on } => labour.cost(hands_on, rounding),
        CostSource::Overhead { overhead, in_chair } => overhead.cost(in_chair, rounding),
        CostSource::CardFee { fee, payment } => fee.of(payment, rounding),
        CostSource::Stated(amount) => amount.not_negative("cost"),
    }
}
