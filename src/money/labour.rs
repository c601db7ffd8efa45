use super::{
    Money, MoneyError, OnCosts, ProductiveShare, Rounding, UnitPrice, exact,
    exact::{HUNDRED, SIXTY},
};
use crate::quantity::Duration;
use rust_decimal::Decimal;

/// What an hour of hands-on work really costs the employer.
///
/// Wages are paid for every hour on the rota; only the productive ones, with a guest in the chair, can carry them.
/// `per productive hour = wage · (1 + on-costs) · paid / productive`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Labour {
    wage_per_h: Money,
    on_costs: OnCosts,
    paid: Decimal,
    productive: Decimal,
}

impl Labour {
    /// The wage for one hour, the on-costs, and the paid and the productive hours of the same period.
    ///
    /// # Errors
    ///
    /// [`MoneyError::AmountOutOfRange`] for a negative wage; [`MoneyError::OutOfRange`] unless
    /// `0 < productive <= paid`.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{money::{Currency, Labour, Money, OnCosts}, quantity::Duration};
    ///
    /// let eur = Currency::from_code("EUR")?;
    /// let (paid, productive) = (Duration::from_h(40.0)?, Duration::from_h(30.0)?);
    /// let labour = Labour::new(Money::parse("15.00", eur)?, OnCosts::from_percent(20.into())?, paid, productive)?;
    /// assert_eq!((labour.productive_share()?.percent(), labour.currency()), (75.into(), eur));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn new(wage_per_h: Money, on_costs: OnCosts, paid: Duration, productive: Duration) -> Result<Self, MoneyError> {
        wage_per_h.not_negative("wage for an hour")?;
        let (paid, productive) =
            (exact::decimal(paid.min(), "paid time")?, exact::decimal(productive.min(), "productive time")?);
        if productive <= Decimal::ZERO || productive > paid {
            let allowed = "more than nothing and at most the paid time of the same period";
            return Err(MoneyError::OutOfRange { field: "productive time", value: productive, unit: "min", allowed });
        }
        Ok(Self { wage_per_h, on_costs, paid, productive })
    }

    /// The same where the productive share is known instead of the two times.
    ///
    /// # Errors
    ///
    /// [`MoneyError::AmountOutOfRange`] for a wage below zero.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{money::*, quantity::Duration};
    ///
    /// let wage = Money::parse("15.00", Currency::from_code("EUR")?)?;
    /// let (on_costs, share) = (OnCosts::from_percent(20.into())?, ProductiveShare::from_percent(75.into())?);
    /// let labour = Labour::with_productive_share(wage, on_costs, share)?;
    /// let hour = labour.cost(Duration::from_h(1.0)?, Rounding::MidpointAwayFromZero)?;
    /// assert_eq!(hour.to_string(), "24.00 EUR"); // 15.00 x 1.2 / 0.75
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn with_productive_share(
        wage_per_h: Money,
        on_costs: OnCosts,
        productive: ProductiveShare,
    ) -> Result<Self, MoneyError> {
        wage_per_h.not_negative("wage for an hour")?;
        Ok(Self { wage_per_h, on_costs, paid: HUNDRED, productive: productive.percent() })
    }

    /// What so much hands-on time costs, rounded once.
    ///
    /// # Errors
    ///
    /// [`MoneyError::TooLarge`].
    pub fn cost(&self, hands_on: Duration, rounding: Rounding) -> Result<Money, MoneyError> {
        self.cost_of_minutes(exact::decimal(hands_on.min(), "hands-on time")?, rounding)
    }

    fn cost_of_minutes(&self, minutes: Decimal, rounding: Rounding) -> Result<Money, MoneyError> {
        let over = [self.wage_per_h.decimal(), HUNDRED + self.on_costs.percent(), self.paid, minutes];
        let under = [HUNDRED, self.productive, SIXTY];
        Money::rounded(&over, &under, self.wage_per_h.currency(), rounding, "labour cost")
    }

    /// The productive part of the paid time.
    ///
    /// # Errors
    ///
    /// [`MoneyError::TooLarge`].
    pub fn productive_share(&self) -> Result<ProductiveShare, MoneyError> {
        ProductiveShare::from_percent(exact::ratio(&[self.productive, HUNDRED], &[self.paid], "productive share")?)
    }

    /// The cost of one minute for a column of times; `None` when it takes more than 64 bits.
    pub(crate) fn rate(&self) -> Option<exact::Rate> {
        let over = [self.wage_per_h.decimal(), HUNDRED + self.on_costs.percent(), self.paid];
        exact::Rate::new(&over, &[HUNDRED, self.productive, SIXTY], self.wage_per_h.currency().exponent())
    }

    /// The currency of the wage.
    #[must_use]
    pub const fn currency(&self) -> super::Currency {
        self.wage_per_h.currency()
    }
}

/// Cost of labour for one productive minute, on-costs and idle hours included, unrounded.
///
/// # Errors
///
/// [`MoneyError::TooLarge`].
///
/// # Example
///
/// ```
/// use foilwork::{money::{Currency, Labour, Money, OnCosts, labour_per_minute}, quantity::Duration};
///
/// let wage = Money::parse("15.00", Currency::from_code("EUR")?)?;
/// let labour = Labour::new(wage, OnCosts::from_percent(20.into())?, Duration::from_h(40.0)?, Duration::from_h(30.0)?)?;
/// assert_eq!(labour_per_minute(&labour)?.to_string(), "0.4 EUR/min"); // 15.00 x 1.2 x 40/30 / 60
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Hourly cost over productive hours: unit standards cited as [`nz-28846`](crate::source::citations::money::SALON_COSTS) and [`au-psm502`](crate::source::citations::money::HOURLY_EXPENSES) name the elements; the
/// arithmetic is common practice.
pub fn labour_per_minute(labour: &Labour) -> Result<UnitPrice, MoneyError> {
    let over = [labour.wage_per_h.decimal(), HUNDRED + labour.on_costs.percent(), labour.paid];
    let per_unit = exact::ratio(&over, &[HUNDRED, labour.productive, SIXTY], "labour per minute")?;
    Ok(UnitPrice { per_unit, currency: labour.wage_per_h.currency(), unit: "min" })
}

/// The wage for an hour when a payment covers some hours.
///
/// # Errors
///
/// [`MoneyError::OutOfRange`] for no time at all.
///
/// # Example
///
/// ```
/// use foilwork::{money::{Currency, Money, pay_per_hour}, quantity::Duration};
///
/// let week = Money::parse("684.00", Currency::from_code("EUR")?)?;
/// assert_eq!(pay_per_hour(week, Duration::from_h(38.0)?)?.to_string(), "18 EUR/h");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [OpenStax, Contemporary Mathematics](crate::source::citations::money::CONTEMPORARY_MATHEMATICS): pay proportional to hours.
pub fn pay_per_hour(paid: Money, worked: Duration) -> Result<UnitPrice, MoneyError> {
    let minutes = exact::decimal(worked.min(), "worked time")?;
    if minutes <= Decimal::ZERO {
        let allowed = "more than nothing";
        return Err(MoneyError::OutOfRange { field: "worked time", value: minutes, unit: "min", allowed });
    }
    let per_unit = exact::ratio(&[paid.decimal(), SIXTY], &[minutes], "pay per hour")?;
    Ok(UnitPrice { per_unit, currency: paid.currency(), unit: "h" })
}
