use crate::money::{Money, MoneyError, ProfitTax, Rounding, exact, exact::HUNDRED};
use rust_decimal::Decimal;
use serde::Serialize;

/// What one sale leaves to pay the fixed costs, and the part of the price that is.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Contribution {
    /// Net price less variable cost.
    pub each: Money,
    /// The same in percent of the net price, unrounded.
    pub ratio_percent: Decimal,
}

/// Net price less what one more sale costs.
///
/// A wage by the hour is not a cost of one more sale; put it into the fixed costs, or turn it into the cost of the
/// minutes with [`Labour`](crate::money::Labour) first.
///
/// # Errors
///
/// [`MoneyError::AmountOutOfRange`] unless the price is more than zero; [`MoneyError::MixedCurrencies`].
///
/// # Example
///
/// ```
/// use foilwork::{business::contribution, money::{Currency, Money}};
///
/// let usd = |text: &str| Money::parse(text, Currency::from_code("USD")?);
/// let cut = contribution(usd("35.00")?, usd("20.00")?)?;
/// assert_eq!((cut.each.to_string(), cut.ratio_percent.round_dp(1).to_string()), ("15.00 USD".into(), "42.9".into()));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [OpenStax, Principles of Accounting, Volume 2](crate::source::citations::money::MANAGERIAL_ACCOUNTING), module m68115.
pub fn contribution(price: Money, variable: Money) -> Result<Contribution, MoneyError> {
    let each = price.minus(variable.not_negative("variable cost")?)?;
    price.positive("price")?;
    Ok(Contribution { each, ratio_percent: each.percent_of(price)? })
}

/// How much must be sold to reach a goal.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct SalesNeeded {
    /// How many sales, unrounded.
    pub count_exact: Decimal,
    /// How many whole sales, rounded up: one fewer does not reach the goal.
    pub count: i64,
    /// The net takings of the whole sales.
    pub sales: Money,
    /// The net takings at which the goal is met exactly: goal / contribution ratio, rounded as named.
    pub sales_exact: Money,
}

/// How many sales cover the fixed costs: `fixed / (price - variable)`.
///
/// # Errors
///
/// [`MoneyError::NeverReached`] when a sale leaves nothing; [`MoneyError::AmountOutOfRange`] for a negative cost;
/// [`MoneyError::MixedCurrencies`].
///
/// # Example
///
/// ```
/// use foilwork::{business::break_even, money::{Currency, Money, Rounding}};
///
/// let usd = |text: &str| Money::parse(text, Currency::from_code("USD")?);
/// let cuts = break_even(usd("3000.00")?, usd("35.00")?, usd("20.00")?, Rounding::MidpointAwayFromZero)?;
/// assert_eq!((cuts.count, cuts.sales.to_string()), (200, "7000.00 USD".into()));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [OpenStax, Principles of Accounting, Volume 2](crate::source::citations::money::MANAGERIAL_ACCOUNTING), module m68116 (the salon example).
pub fn break_even(fixed: Money, price: Money, variable: Money, rounding: Rounding) -> Result<SalesNeeded, MoneyError> {
    target_profit(fixed, price, variable, Money::zero(fixed.currency()), rounding)
}

/// How many sales cover the fixed costs and leave a profit before tax: `(fixed + profit) / (price - variable)`.
///
/// # Errors
///
/// As [`break_even`].
///
/// # Example
///
/// ```
/// use foilwork::{business::target_profit, money::{Currency, Money, Rounding}};
///
/// let usd = |text: &str| Money::parse(text, Currency::from_code("USD")?);
/// let half_up = Rounding::MidpointAwayFromZero;
/// let cuts = target_profit(usd("3000.00")?, usd("35.00")?, usd("20.00")?, usd("1500.00")?, half_up)?;
/// assert_eq!(cuts.count, 300); // 4500 / 15
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [OpenStax, Principles of Accounting, Volume 2](crate::source::citations::money::MANAGERIAL_ACCOUNTING), module m68116.
pub fn target_profit(
    fixed: Money,
    price: Money,
    variable: Money,
    profit: Money,
    rounding: Rounding,
) -> Result<SalesNeeded, MoneyError> {
    let goal = fixed.not_negative("fixed costs")?.plus(profit.not_negative("target profit")?)?;
    let each = contribution(price, variable)?.each;
    goal.same_currency(each)?;
    if each.minor() <= 0 {
        return Err(MoneyError::NeverReached { goal: "the target", left: each });
    }
    let (over, under) = ([goal.decimal()], [each.decimal()]);
    let count = exact::quotient(&over, &under, 0, Rounding::ToPositiveInfinity, "number of sales")?;
    let sales_exact = Money::rounded(&[goal.decimal(), price.decimal()], &under, price.currency(), rounding, "sales")?;
    let count_exact = exact::ratio(&over, &under, "number of sales")?;
    Ok(SalesNeeded { count_exact, count, sales: price.times(count)?, sales_exact })
}

/// The profit before tax that leaves a profit after it: `after / (1 - tax)`.
///
/// # Errors
///
/// [`MoneyError::TooLarge`].
///
/// # Example
///
/// ```
/// use foilwork::{business::profit_before_tax, money::{Currency, Money, ProfitTax, Rounding}};
///
/// let after = Money::parse("700.00", Currency::from_code("EUR")?)?;
/// let before = profit_before_tax(after, ProfitTax::from_percent(30.into())?, Rounding::MidpointAwayFromZero)?;
/// assert_eq!(before.to_string(), "1000.00 EUR");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [OpenStax, Principles of Accounting, Volume 2](crate::source::citations::money::MANAGERIAL_ACCOUNTING), module m68116.
pub fn profit_before_tax(after_tax: Money, tax: ProfitTax, rounding: Rounding) -> Result<Money, MoneyError> {
    let under = [HUNDRED - tax.percent()];
    Money::rounded(&[after_tax.decimal(), HUNDRED], &under, after_tax.currency(), rounding, "profit before tax")
}

/// What so many sales leave after the fixed costs; below zero, a loss.
///
/// # Errors
///
/// [`MoneyError::MixedCurrencies`]; [`MoneyError::TooLarge`].
///
/// # Example
///
/// ```
/// use foilwork::{business::profit_at, money::{Currency, Money}};
///
/// let usd = |text: &str| Money::parse(text, Currency::from_code("USD")?);
/// assert_eq!(profit_at(usd("3000.00")?, usd("35.00")?, usd("20.00")?, 150)?.to_string(), "-750.00 USD");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn profit_at(fixed: Money, price: Money, variable: Money, count: u32) -> Result<Money, MoneyError> {
    price.minus(variable)?.times(count.into())?.minus(fixed)
}

/// How far sales can fall before there is a loss.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct MarginOfSafety {
    /// Sales less break-even sales; below zero, there is a loss already.
    pub amount: Money,
    /// The same in percent of the sales, unrounded.
    pub percent_of_sales: Decimal,
}

/// Sales less the sales at which there is neither profit nor loss.
///
/// # Errors
///
/// [`MoneyError::AmountOutOfRange`] unless sales are more than zero; [`MoneyError::MixedCurrencies`].
///
/// # Example
///
/// ```
/// use foilwork::{business::margin_of_safety, money::{Currency, Money}};
///
/// let usd = |text: &str| Money::parse(text, Currency::from_code("USD")?);
/// let safety = margin_of_safety(usd("225000.00")?, usd("153000.00")?)?;
/// assert_eq!((safety.amount.to_string(), safety.percent_of_sales.to_string()), ("72000.00 USD".into(), "32".into()));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [OpenStax, Principles of Accounting, Volume 2](crate::source::citations::money::MANAGERIAL_ACCOUNTING), module m68120.
pub fn margin_of_safety(sales: Money, break_even_sales: Money) -> Result<MarginOfSafety, MoneyError> {
    let amount = sales.minus(break_even_sales)?;
    Ok(MarginOfSafety { amount, percent_of_sales: amount.percent_of(sales.positive("sales")?)? })
}

/// A cost with a part that is there anyway and a part that comes with every sale.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MixedCost {
    /// What it is, in the user's words.
    pub what: String,
    /// For the period, whatever is sold.
    pub fixed: Money,
    /// For each sale.
    pub each: Money,
}

/// Adds up the fixed and the variable parts of a list of costs: first for the period, then for each sale.
///
/// # Errors
///
/// [`MoneyError::Empty`], [`MoneyError::MixedCurrencies`] or [`MoneyError::TooLarge`].
///
/// # Example
///
/// ```
/// use foilwork::{business::{MixedCost, split_costs}, money::{Currency, Money}};
///
/// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
/// let cost = |what: &str, fixed, each| Ok::<_, Box<dyn std::error::Error>>(MixedCost { what: what.into(), fixed: euros(fixed)?, each: euros(each)? });
/// let costs = [cost("water", "40.00", "0.60")?, cost("till", "25.00", "0.10")?];
/// let (fixed, each) = split_costs(&costs)?;
/// assert_eq!((fixed.to_string(), each.to_string()), ("65.00 EUR".into(), "0.70 EUR".into()));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn split_costs(costs: &[MixedCost]) -> Result<(Money, Money), MoneyError> {
    let first = costs.first().ok_or(MoneyError::Empty { field: "list of costs" })?;
    let currency = first.fixed.currency();
    let fixed = Money::total(costs.iter().map(|cost| cost.fixed), currency)?;
    Ok((fixed, Money::total(costs.iter().map(|cost| cost.each), currency)?))
}
