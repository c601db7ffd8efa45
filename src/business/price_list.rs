use super::{QuoteDriver, QuotePart, quote::Deposit, quote_range};
use crate::money::{Money, MoneyError, PriceRule};
use crate::{quantity::Duration, source::Interval};
use serde::Serialize;

/// One service for one class of guest: a length, a hair mass, a number of stages.
#[derive(Debug, Clone, PartialEq)]
pub struct ClassCost {
    /// The service.
    pub service: String,
    /// The class, in the salon's own words: `short`, `long and dense`, `two stages`.
    pub class: String,
    /// What it costs, part by part.
    pub parts: Vec<QuotePart>,
    /// The time in the chair, where the price depends on it.
    pub in_chair: Option<Interval<Duration>>,
}

/// One entry of a price list.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PriceListEntry {
    /// The service.
    pub service: String,
    /// The class.
    pub class: String,
    /// Gross, when all goes well.
    pub low: Money,
    /// Gross, as expected.
    pub usual: Money,
    /// Gross, when all goes badly.
    pub high: Money,
    /// What moves the price most; `None` when nothing does.
    pub driver: Option<QuoteDriver>,
}

/// A price list by class of service: from, usual and to, gross, by one price rule.
///
/// # Errors
///
/// As [`quote_range`]; the first entry that cannot be priced.
///
/// # Example
///
/// ```
/// use foilwork::{business::*, money::*, source::{Basis, Interval}};
///
/// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
/// let rule = PriceRule {
///     target: PriceTarget::Margin(Margin::from_percent(40.into())?),
///     tax: TaxRate::from_percent(20.into())?,
///     card: None,
///     ending: Some((PriceEnding::new(euros("5.00")?, euros("0.00")?)?, Toward::Up)),
///     rounding: Rounding::MidpointAwayFromZero,
/// };
/// let row = |class: &str, low, best, high| {
///     let cost = Interval::new(low, best, high).map_err(|error| error.to_string())?;
///     let parts = vec![QuotePart { what: "product and time".into(), cost, basis: Basis::Assumed }];
///     Ok::<_, String>(ClassCost { service: "half head of foils".into(), class: class.into(), parts, in_chair: None })
/// };
/// let list = price_list(
///     &[
///         row("short", euros("30.00")?, euros("32.00")?, euros("36.00")?)?,
///         row("long", euros("40.00")?, euros("46.00")?, euros("55.00")?)?,
///     ],
///     &rule,
/// )?;
/// assert_eq!((list[0].low.to_string(), list[1].high.to_string()), ("60.00 EUR".into(), "110.00 EUR".into()));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn price_list(classes: &[ClassCost], rule: &PriceRule) -> Result<Vec<PriceListEntry>, MoneyError> {
    classes
        .iter()
        .map(|class| {
            let quote = quote_range(&class.parts, rule, class.in_chair, Deposit::Percent(rust_decimal::Decimal::ZERO))?;
            Ok(PriceListEntry {
                service: class.service.clone(),
                class: class.class.clone(),
                low: quote.low.taxed.gross,
                usual: quote.best.taxed.gross,
                high: quote.high.taxed.gross,
                driver: quote.drivers.into_iter().find(|driver| !driver.swing.is_zero()),
            })
        })
        .collect()
}
