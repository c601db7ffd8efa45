use super::{Margin, Markup, Money, MoneyError, Rounding, exact::HUNDRED};
use serde::Serialize;
use std::fmt;

/// A net price set from a cost, with both percentages, so that neither is taken for the other.
///
/// `margin` and `markup` are what the rounded price really gives; they differ a little from the percentage asked for.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, schemars::JsonSchema)]
pub struct SetPrice {
    /// What the service costs.
    pub cost: Money,
    /// The net price.
    pub price: Money,
    /// Price less cost.
    pub profit: Money,
    /// Profit as a part of the price.
    pub margin: Margin,
    /// Profit as a part of the cost.
    pub markup: Markup,
}

impl SetPrice {
    /// Margin and mark-up of a price that is already there.
    ///
    /// # Errors
    ///
    /// [`MoneyError::AmountOutOfRange`] unless price and cost are more than zero;
    /// [`MoneyError::MixedCurrencies`].
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::money::{Currency, Money, SetPrice};
    ///
    /// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
    /// let set = SetPrice::of(euros("60.00")?, euros("80.00")?)?;
    /// assert_eq!((set.profit, set.margin.percent()), (euros("20.00")?, 25.into()));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn of(cost: Money, price: Money) -> Result<Self, MoneyError> {
        let profit = price.minus(cost)?;
        cost_is_something(cost)?;
        price.positive("price")?;
        let margin = Margin::from_percent(profit.percent_of(price)?)?;
        let markup = Markup::from_percent(profit.percent_of(cost)?)?;
        Ok(Self { cost, price, profit, margin, markup })
    }
}

/// A price is set from a cost, so a cost there must be.
pub(super) fn cost_is_something(cost: Money) -> Result<(), MoneyError> {
    if cost.minor() > 0 {
        return Ok(());
    }
    let allowed = "more than nothing: without a cost there is no margin to speak of";
    Err(MoneyError::AmountOutOfRange { field: "cost", value: cost, allowed })
}

impl fmt::Display for SetPrice {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { cost, price, margin, markup, .. } = self;
        write!(f, "{price} (cost {cost}, margin {margin} = mark-up {markup})")
    }
}

/// The net price at which profit is the stated part of the price: `price = cost / (1 - margin)`.
///
/// # Errors
///
/// [`MoneyError::AmountOutOfRange`] unless the cost is more than zero; [`MoneyError::TooLarge`].
///
/// # Example
///
/// ```
/// use foilwork::money::{Currency, Margin, Money, Rounding, price_from_margin};
///
/// let cost = Money::parse("75.00", Currency::from_code("EUR")?)?;
/// let set = price_from_margin(cost, Margin::from_percent(25.into())?, Rounding::MidpointAwayFromZero)?;
/// assert_eq!(
///     set.to_string(),
///     "100.00 EUR (cost 75.00 EUR, margin 25 % of the price = mark-up 33.33 % of the cost)",
/// );
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// The definition of a margin, solved for the price; mark-up beside it as in [OpenStax, Contemporary Mathematics](crate::source::citations::money::CONTEMPORARY_MATHEMATICS), module
/// m00058.
pub fn price_from_margin(cost: Money, margin: Margin, rounding: Rounding) -> Result<SetPrice, MoneyError> {
    cost_is_something(cost)?;
    let (over, under) = ([cost.decimal(), HUNDRED], [HUNDRED - margin.percent()]);
    SetPrice::of(cost, Money::rounded(&over, &under, cost.currency(), rounding, "price")?)
}

/// The net price with the stated part of the cost on top: `price = cost · (1 + mark-up)`.
///
/// # Errors
///
/// As [`price_from_margin`].
///
/// # Example
///
/// ```
/// use foilwork::money::{Currency, Markup, Money, Rounding, price_from_markup};
///
/// let cost = Money::parse("750.00", Currency::from_code("USD")?)?;
/// let set = price_from_markup(cost, Markup::from_percent(45.into())?, Rounding::MidpointAwayFromZero)?;
/// assert_eq!((set.price.to_string(), set.profit.to_string()), ("1087.50 USD".into(), "337.50 USD".into()));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [OpenStax, Contemporary Mathematics](crate::source::citations::money::CONTEMPORARY_MATHEMATICS), module m00058.
pub fn price_from_markup(cost: Money, markup: Markup, rounding: Rounding) -> Result<SetPrice, MoneyError> {
    cost_is_something(cost)?;
    let (over, under) = ([cost.decimal(), HUNDRED + markup.percent()], [HUNDRED]);
    SetPrice::of(cost, Money::rounded(&over, &under, cost.currency(), rounding, "price")?)
}

/// The cost under a price that was set by a mark-up: `cost = price / (1 + mark-up)`.
///
/// # Errors
///
/// As [`price_from_margin`].
///
/// # Example
///
/// ```
/// use foilwork::money::{Currency, Markup, Money, Rounding, cost_from_markup};
///
/// let price = Money::parse("150.00", Currency::from_code("EUR")?)?;
/// let set = cost_from_markup(price, Markup::from_percent(50.into())?, Rounding::MidpointAwayFromZero)?;
/// assert_eq!(set.cost.to_string(), "100.00 EUR");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [OpenStax, Contemporary Mathematics](crate::source::citations::money::CONTEMPORARY_MATHEMATICS), module m00058.
pub fn cost_from_markup(price: Money, markup: Markup, rounding: Rounding) -> Result<SetPrice, MoneyError> {
    let (over, under) = ([price.decimal(), HUNDRED], [HUNDRED + markup.percent()]);
    SetPrice::of(Money::rounded(&over, &under, price.currency(), rounding, "cost")?, price)
}
