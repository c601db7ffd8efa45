use crate::money::{Money, MoneyError, ProductiveShare, Rounding, exact, exact::HUNDRED};
use crate::{
    choice::choice,
    quantity::Duration,
    source::{Sourced, citations::money::PRODUCTIVE_HOURS},
};
use rust_decimal::Decimal;
use serde::Serialize;
use std::fmt;

choice! {
    /// What productive time is measured against. The same week reads 75 % or 125 %, so the answer always says which.
    Denominator: "time to compare with" {
        /// Hours that were recorded, productive or not.
        RecordedTime = "recorded-time" => "recorded time",
        /// Hours that were paid, breaks and training included.
        PaidTime = "paid-time" => "paid time",
        /// Hours on the rota.
        RosteredTime = "rostered-time" => "rostered time",
        /// Hours that the door was open, times chairs.
        OpeningTime = "opening-time" => "opening time",
        /// A fixed standard such as a 40-hour week: overtime can take it above 100 %.
        StandardTime = "standard-time" => "standard time",
    }
}

/// Productive time as a percentage of a stated other time.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Productivity {
    /// The percentage, unrounded.
    pub percent: Decimal,
    /// Of what.
    pub of: Denominator,
}

impl fmt::Display for Productivity {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let shown = self.percent.round_dp_with_strategy(1, Rounding::MidpointAwayFromZero.strategy());
        write!(f, "{} % of {}", shown.normalize(), self.of.words())
    }
}

/// Productive time, with a guest in the chair, against a stated other time.
///
/// # Errors
///
/// [`MoneyError::OutOfRange`] when the other time is zero.
///
/// # Example
///
/// ```
/// use foilwork::{business::{Denominator, productivity}, quantity::Duration};
///
/// let week = productivity(Duration::from_h(30.0)?, Duration::from_h(40.0)?, Denominator::RecordedTime)?;
/// assert_eq!(week.to_string(), "75 % of recorded time");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn productivity(productive: Duration, of: Duration, denominator: Denominator) -> Result<Productivity, MoneyError> {
    let over = exact::decimal(productive.min(), "productive time")?;
    let under = exact::decimal(of.min(), "time to compare with")?;
    if under <= Decimal::ZERO {
        let allowed = "more than nothing";
        return Err(MoneyError::OutOfRange { field: denominator.words(), value: under, unit: "min", allowed });
    }
    let percent = exact::ratio(&[over, HUNDRED], &[under], "productivity")?;
    Ok(Productivity { percent, of: denominator })
}

choice! {
    /// Where productive time lies beside what a guide to the trade gives for it.
    BesideTrade: "place beside the trade" {
        /// Below 30 %: below the low end that the guide gives.
        BelowAll = "below-all" => "below the low end of the trade",
        /// From 30 to below 40 %.
        Low = "low" => "low for the trade",
        /// From 40 to 55 %.
        Typical = "typical" => "typical of the trade",
        /// Above 55, up to 70 %.
        High = "high" => "high for the trade",
        /// Above 70 %: above the high end. Check that idle and unsold hours were counted; prices rest on this figure.
        AboveAll = "above-all" => "above the high end of the trade",
    }
}

/// Holds a share of productive hours against the trade: 40 to 55 % is typical, about 30 low, about 70 high.
///
/// A productive share that is too rosy is how a price comes out too low: every cost of an hour is divided by it.
///
/// # Example
///
/// ```
/// use foilwork::business::{BesideTrade, beside_trade};
/// use foilwork::money::ProductiveShare;
///
/// let half = ProductiveShare::from_percent(50.into())?;
/// assert_eq!(beside_trade(half).value, BesideTrade::Typical);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [`PRODUCTIVE_HOURS`], which does not print its denominator; all paid hours are meant, as we read it.
#[must_use]
pub fn beside_trade(productive: ProductiveShare) -> Sourced<BesideTrade> {
    let at_least = |percent: i64| productive.percent() >= Decimal::from(percent);
    let at_most = |percent: i64| productive.percent() <= Decimal::from(percent);
    let place = match () {
        () if !at_least(30) => BesideTrade::BelowAll,
        () if !at_least(40) => BesideTrade::Low,
        () if at_most(55) => BesideTrade::Typical,
        () if at_most(70) => BesideTrade::High,
        () => BesideTrade::AboveAll,
    };
    Sourced::published(place, &PRODUCTIVE_HOURS)
}

/// Net takings for each guest, rounded once.
///
/// # Errors
///
/// [`MoneyError::OutOfRange`] without guests.
///
/// # Example
///
/// ```
/// use foilwork::{business::average_bill, money::{Currency, Money, Rounding}};
///
/// let day = Money::parse("500.00", Currency::from_code("EUR")?)?;
/// assert_eq!(average_bill(day, 6, Rounding::MidpointAwayFromZero)?.to_string(), "83.33 EUR");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn average_bill(takings: Money, guests: u32, rounding: Rounding) -> Result<Money, MoneyError> {
    if guests == 0 {
        let allowed = "at least 1";
        return Err(MoneyError::OutOfRange {
            field: "number of guests",
            value: Decimal::ZERO,
            unit: "guests",
            allowed,
        });
    }
    Money::rounded(&[takings.decimal()], &[guests.into()], takings.currency(), rounding, "average bill")
}

/// Retail sales in percent of all net takings, services and retail together, unrounded.
///
/// # Errors
///
/// [`MoneyError::AmountOutOfRange`] for retail below zero or above the takings; [`MoneyError::MixedCurrencies`].
///
/// # Example
///
/// ```
/// use foilwork::{business::retail_share, money::{Currency, Money}};
///
/// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
/// assert_eq!(retail_share(euros("120.00")?, euros("1500.00")?)?.to_string(), "8");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn retail_share(retail: Money, all_takings: Money) -> Result<Decimal, MoneyError> {
    retail.not_negative("retail sales")?.same_currency(all_takings.positive("takings")?)?;
    if retail > all_takings {
        let allowed = "at most all takings, services and retail together";
        return Err(MoneyError::AmountOutOfRange { field: "retail sales", value: retail, allowed });
    }
    retail.percent_of(all_takings)
}

/// The middle of a list of counts (guests a day, say): half the days had fewer, half had more.
///
/// One odd day moves it less than it moves the mean. Of two middle values it is the mean.
///
/// # Errors
///
/// [`MoneyError::Empty`].
///
/// # Example
///
/// ```
/// use foilwork::business::median_count;
///
/// assert_eq!(median_count(&[9, 4, 11, 7])?.to_string(), "8");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [OpenStax, Prealgebra 2e](crate::source::citations::money::PREALGEBRA), module m81304.
pub fn median_count(counts: &[u32]) -> Result<Decimal, MoneyError> {
    let mut sorted = counts.to_vec();
    sorted.sort_unstable();
    let upper = sorted.get(sorted.len() / 2);
    let lower = sorted.get(sorted.len().saturating_sub(1) / 2);
    let (Some(lower), Some(upper)) = (lower, upper) else {
        return Err(MoneyError::Empty { field: "list of counts" });
    };
    Ok(Decimal::new((i64::from(*lower) + i64::from(*upper)) * 5, 1).normalize())
}
