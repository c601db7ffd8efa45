use crate::money::{Money, MoneyError, PriceRule, Rounding, ServicePrice, exact, exact::HUNDRED};
use crate::{
    quantity::Duration,
    source::{Basis, Interval},
};
use rust_decimal::Decimal;
use serde::Serialize;

/// One part of the cost of a service that is not known exactly before the work.
#[derive(Debug, Clone, PartialEq)]
pub struct QuotePart {
    /// What it is, in the user's words: product, hands-on time, a second lightening stage.
    pub what: String,
    /// What it costs: least, expected, most.
    pub cost: Interval<Money>,
    /// Where the bounds come from.
    pub basis: Basis,
}

/// What is paid in advance.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Deposit {
    /// A part of the expected gross price, in percent.
    Percent(Decimal),
    /// A fixed amount.
    Fixed(Money),
}

/// How much one part moves the price.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct QuoteDriver {
    /// The part.
    pub what: String,
    /// Where its bounds come from.
    pub basis: Basis,
    /// Net price with this part at its least and all others as expected.
    pub low: Money,
    /// Net price with this part at its most and all others as expected.
    pub high: Money,
    /// The difference.
    pub swing: Money,
    /// The swing in percent of the sum of all swings, to one decimal; together they are exactly 100.
    pub share_percent: Option<Decimal>,
}

/// A price from-to, with what drives it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Quote {
    /// Every part at its least.
    pub low: ServicePrice,
    /// Every part as expected.
    pub best: ServicePrice,
    /// Every part at its most.
    pub high: ServicePrice,
    /// What moves the price, the most important first.
    pub drivers: Vec<QuoteDriver>,
    /// What is paid in advance; never more than the low end of the quote.
    pub deposit: Money,
    /// What is left to pay at the expected price.
    pub balance: Money,
}

/// A quotation: least, expected and most, each by the same price rule.
///
/// The ends assume that everything goes well, or badly, at once; the drivers show each part alone. Take the time in
/// the chair as an interval too: it counts when the target is set for an hour of the chair.
///
/// # Errors
///
/// [`MoneyError::Empty`] without parts; [`MoneyError::OutOfRange`] for a deposit outside 0 to 100 %; otherwise as
/// [`PriceRule::price`].
///
/// # Example
///
/// ```
/// use foilwork::{business::*, money::*, source::{Basis, Interval}};
///
/// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
/// let rule = PriceRule {
///     target: PriceTarget::Markup(Markup::from_percent(100.into())?),
///     tax: TaxRate::from_percent(0.into())?,
///     card: None,
///     ending: None,
///     rounding: Rounding::MidpointAwayFromZero,
/// };
/// let parts = [
///     QuotePart {
///         what: "lightener".into(),
///         cost: Interval::new(euros("4.00")?, euros("6.00")?, euros("10.00")?)?,
///         basis: Basis::Assumed,
///     },
///     QuotePart {
///         what: "hands-on time".into(),
///         cost: Interval::new(euros("30.00")?, euros("34.00")?, euros("44.00")?)?,
///         basis: Basis::Stated,
///     },
/// ];
/// let quote = quote_range(&parts, &rule, None, Deposit::Percent(25.into()))?;
/// assert_eq!(quote.low.taxed.gross.to_string(), "68.00 EUR");
/// assert_eq!(quote.high.taxed.gross.to_string(), "108.00 EUR");
/// assert_eq!((quote.drivers[0].what.as_str(), quote.drivers[0].swing.to_string()), ("hands-on time", "28.00 EUR".into()));
/// assert_eq!(quote.deposit.to_string(), "20.00 EUR");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// A quotation with time and cost is asked for by [Ofqual unit D/600/1010](crate::source::citations::money::QUOTATION), 1.11; the arithmetic is derived.
pub fn quote_range(
    parts: &[QuotePart],
    rule: &PriceRule,
    in_chair: Option<Interval<Duration>>,
    deposit: Deposit,
) -> Result<Quote, MoneyError> {
    let first = parts.first().ok_or(MoneyError::Empty { field: "list of parts" })?;
    let currency = first.cost.best().currency();
    let sum = |of: fn(&Interval<Money>) -> Money| Money::total(parts.iter().map(|part| of(&part.cost)), currency);
    let (low_cost, best_cost, high_cost) = (sum(Interval::low)?, sum(Interval::best)?, sum(Interval::high)?);
    let low = rule.price(low_cost, in_chair.map(|time| time.low()))?;
    let best = rule.price(best_cost, in_chair.map(|time| time.best()))?;
    let high = rule.price(high_cost, in_chair.map(|time| time.high()))?;
    let deposit = in_advance(deposit, low.taxed.gross, best.taxed.gross, rule.rounding)?;
    let drivers = drivers(parts, rule, best_cost, in_chair)?;
    Ok(Quote { balance: best.taxed.gross.minus(deposit)?, low, best, high, drivers, deposit })
}

fn drivers(
    parts: &[QuotePart],
    rule: &PriceRule,
    best_cost: Money,
    in_chair: Option<Interval<Duration>>,
) -> Result<Vec<QuoteDriver>, MoneyError> {
    let best_time = in_chair.map(|time| time.best());
    let mut drivers = Vec::with_capacity(parts.len() + 1);
    let mut drive = |what: &str, basis, low: Money, high: Money| {
        let swing = high.minus(low)?;
        drivers.push(QuoteDriver { what: what.to_owned(), basis, low, high, swing, share_percent: None });
        Ok::<(), MoneyError>(())
    };
    for part in parts {
        let others = best_cost.minus(part.cost.best())?;
        let low = rule.target_net(others.plus(part.cost.low())?, best_time)?;
        let high = rule.target_net(others.plus(part.cost.high())?, best_time)?;
        drive(&part.what, part.basis, low, high)?;
    }
    if let (Some(time), crate::money::PriceTarget::PerChairHour(_)) = (in_chair, rule.target) {
        let low = rule.target_net(best_cost, Some(time.low()))?;
        drive("time in the chair", Basis::Stated, low, rule.target_net(best_cost, Some(time.high()))?)?;
    }
    let swings: Vec<_> = drivers.iter().map(|driver| driver.swing).collect();
    if let Some(shares) = crate::money::allocate::shares(&swings, 1) {
        for (driver, share) in drivers.iter_mut().zip(shares) {
            driver.share_percent = Some(share);
        }
    }
    drivers.sort_by_key(|driver| std::cmp::Reverse(driver.swing.minor()));
    Ok(drivers)
}

fn in_advance(deposit: Deposit, low: Money, best: Money, rounding: Rounding) -> Result<Money, MoneyError> {
    let amount = match deposit {
        Deposit::Percent(percent) if percent < Decimal::ZERO || percent > HUNDRED => {
            let (unit, allowed) = ("% of the expected price", "from 0 to 100 % of the expected price");
            return Err(MoneyError::OutOfRange { field: "deposit", value: percent, unit, allowed });
        }
        Deposit::Percent(percent) => {
            let over = [best.decimal(), percent];
            Money::from_minor(
                exact::quotient(&over, &[HUNDRED], best.currency().exponent(), rounding, "deposit")?,
                best.currency(),
            )
        }
        Deposit::Fixed(amount) => amount.not_negative("deposit")?,
    };
    amount.same_currency(low)?;
    Ok(if amount > low { low } else { amount })
}
