use super::{Money, MoneyError, Rounding, UnitPrice, exact, exact::SIXTY};
use crate::quantity::Duration;
use rust_decimal::Decimal;

/// What the salon costs before anyone picks up a brush, spread over the chair hours that earn.
///
/// `per chair hour = cost of the period / (chairs · productive hours of one chair)`. Opening hours instead of
/// productive hours understate it: an empty chair pays no rent.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Overhead {
    period_cost: Money,
    chairs: u32,
    productive_min: Decimal,
}

impl Overhead {
    /// The overhead of a period, the chairs, and the productive time of one chair in that period.
    ///
    /// # Errors
    ///
    /// [`MoneyError::AmountOutOfRange`] for a negative cost; [`MoneyError::OutOfRange`] without a chair or without
    /// productive time.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{money::{Currency, Money, Overhead, Rounding}, quantity::Duration};
    ///
    /// let eur = Currency::from_code("EUR")?;
    /// let overhead = Overhead::new(Money::parse("6000.00", eur)?, 3, Duration::from_h(100.0)?)?;
    /// let hour = overhead.cost(Duration::from_h(1.0)?, Rounding::MidpointAwayFromZero)?;
    /// assert_eq!((hour, overhead.currency()), (Money::parse("20.00", eur)?, eur));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn new(period_cost: Money, chairs: u32, productive_per_chair: Duration) -> Result<Self, MoneyError> {
        period_cost.not_negative("overhead")?;
        let productive_min = exact::decimal(productive_per_chair.min(), "productive time")?;
        let allowed = "more than nothing";
        if chairs == 0 {
            return Err(MoneyError::OutOfRange {
                field: "number of chairs",
                value: chairs.into(),
                unit: "chairs",
                allowed,
            });
        }
        if productive_min <= Decimal::ZERO {
            let field = "productive time of a chair";
            return Err(MoneyError::OutOfRange { field, value: productive_min, unit: "min", allowed });
        }
        Ok(Self { period_cost, chairs, productive_min })
    }

    /// The overhead of one hour in a chair, where that is known.
    ///
    /// # Errors
    ///
    /// [`MoneyError::AmountOutOfRange`] for a cost below zero.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{money::{Currency, Money, Overhead, Rounding}, quantity::Duration};
    ///
    /// let overhead = Overhead::per_hour(Money::parse("10.00", Currency::from_code("EUR")?)?)?;
    /// let cost = overhead.cost(Duration::from_min(90.0)?, Rounding::MidpointAwayFromZero)?;
    /// assert_eq!(cost.to_string(), "15.00 EUR");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn per_hour(cost: Money) -> Result<Self, MoneyError> {
        Ok(Self { period_cost: cost.not_negative("overhead")?, chairs: 1, productive_min: SIXTY })
    }

    /// What so much time in the chair carries, rounded once.
    ///
    /// # Errors
    ///
    /// [`MoneyError::TooLarge`].
    pub fn cost(&self, in_chair: Duration, rounding: Rounding) -> Result<Money, MoneyError> {
        self.cost_of_minutes(exact::decimal(in_chair.min(), "chair time")?, rounding)
    }

    fn cost_of_minutes(&self, minutes: Decimal, rounding: Rounding) -> Result<Money, MoneyError> {
        let (over, under) = ([self.period_cost.decimal(), minutes], [self.chairs.into(), self.productive_min]);
        Money::rounded(&over, &under, self.period_cost.currency(), rounding, "overhead")
    }

    /// The cost of one minute for a column of times; `None` when it takes more than 64 bits.
    pub(crate) fn rate(&self) -> Option<exact::Rate> {
        let (over, under) = ([self.period_cost.decimal()], [self.chairs.into(), self.productive_min]);
        exact::Rate::new(&over, &under, self.period_cost.currency().exponent())
    }

    /// The currency of the overhead.
    #[must_use]
    pub const fn currency(&self) -> super::Currency {
        self.period_cost.currency()
    }
}

/// Overhead for one productive hour of one chair, unrounded.
///
/// # Errors
///
/// [`MoneyError::TooLarge`].
///
/// # Example
///
/// ```
/// use foilwork::{money::{Currency, Money, Overhead, overhead_per_chair_hour}, quantity::Duration};
///
/// let year = Money::parse("60000.00", Currency::from_code("EUR")?)?;
/// let overhead = Overhead::new(year, 4, Duration::from_h(1500.0)?)?;
/// assert_eq!(overhead_per_chair_hour(&overhead)?.to_string(), "10 EUR/h");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Overhead rate per hour of activity: [OpenStax, Principles of Accounting, Volume 2](crate::source::citations::money::MANAGERIAL_ACCOUNTING), module m68135.
pub fn overhead_per_chair_hour(overhead: &Overhead) -> Result<UnitPrice, MoneyError> {
    let over = [overhead.period_cost.decimal(), SIXTY];
    let per_unit = exact::ratio(&over, &[overhead.chairs.into(), overhead.productive_min], "overhead per hour")?;
    Ok(UnitPrice { per_unit, currency: overhead.period_cost.currency(), unit: "h" })
}
