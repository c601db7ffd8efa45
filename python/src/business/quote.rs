use crate::bounds::Estimate;
use crate::{
    answer::answer,
    error::{FoilworkError, ours, raise},
    exact::Number,
    money::{PyMoney, minutes, price::ServicePrice, rule::PyPriceRule},
    sequence::Sequence,
    source::TracedResult,
};
use foilwork::business::{self, ClassCost, Deposit, QuotePart};
use foilwork::quantity::Duration;
use foilwork::source::{Basis, Interval};
use pyo3::prelude::*;
use rust_decimal::Decimal;

answer! {
    in "foilwork.business";
    /// How much one part of a quote moves the net price, alone.
    QuoteDriver {
        /// The part.
        what: String,
        /// Net price with this part at its least.
        low: PyMoney,
        /// Net price with this part at its most.
        high: PyMoney,
        /// The difference.
        swing: PyMoney,
        /// The swing in percent of all swings; together they are exactly 100, ``None`` when nothing moves.
        share_percent: Option<Decimal>,
    }
}

answer! {
    in "foilwork.business";
    /// A price from-to, with what drives it.
    Quote {
        /// Every part at its least.
        low: ServicePrice,
        /// Every part as expected.
        best: ServicePrice,
        /// Every part at its most.
        high: ServicePrice,
        /// What moves the price, the most important first.
        drivers: Vec<QuoteDriver>,
        /// What is paid in advance; never more than the low end.
        deposit: PyMoney,
        /// What is left to pay at the expected price.
        balance: PyMoney,
    }
}

answer! {
    in "foilwork.business";
    /// One entry of a price list, gross.
    PriceListEntry {
        /// The service.
        service: String,
        /// The class of guest.
        guest_class: String,
        /// When all goes well.
        low: PyMoney,
        /// As expected.
        usual: PyMoney,
        /// When all goes badly.
        high: PyMoney,
        /// What moves the price most; ``None`` when nothing does.
        driver: Option<QuoteDriver>,
    }
}

impl From<business::QuoteDriver> for QuoteDriver {
    fn from(driver: business::QuoteDriver) -> Self {
        Self {
            what: driver.what,
            low: PyMoney(driver.low),
            high: PyMoney(driver.high),
            swing: PyMoney(driver.swing),
            share_percent: driver.share_percent,
        }
    }
}

/// A part as it comes from Python: what, least, expected, most.
type Part = (String, PyMoney, PyMoney, PyMoney);

/// A quotation: least, expected and most, each by the same price rule, and what drives the difference.
///
/// Args:
///     parts: ``(what, least, expected, most)`` for each part of the cost.
///     rule: how prices are set.
///     chair_min: time in the chair as ``(least, expected, most)``; needed for a target by the hour.
///     deposit_percent: what is paid in advance, in percent of the expected gross price.
///     deposit: what is paid in advance, as an amount; give one of the two or neither.
///
/// Raises:
///     FoilworkError: no parts, bounds that do not enclose the expected cost, a deposit out of range, no price.
///
/// Examples:
///     >>> from foilwork.business import quote_range
///     >>> from foilwork.money import Money, PriceRule
///     >>> euros = lambda text: Money(text, "EUR")
///     >>> parts = [
///     ...     ("lightener", euros("4.00"), euros("6.00"), euros("10.00")),
///     ...     ("hands-on time", euros("30.00"), euros("34.00"), euros("44.00")),
///     ... ]
///     >>> quote = quote_range(parts, PriceRule(markup_percent=100), deposit_percent=25)
///     >>> quote.low.taxed.gross, quote.high.taxed.gross, quote.deposit
///     (Money('68.00', 'EUR'), Money('108.00', 'EUR'), Money('20.00', 'EUR'))
///     >>> quote.drivers[0].what
///     'hands-on time'
#[pyfunction]
#[pyo3(signature = (parts, rule, *, chair_min = None, deposit_percent = None, deposit = None))]
pub fn quote_range(
    parts: Sequence<Part>,
    rule: PyPriceRule,
    chair_min: Option<Estimate<f64>>,
    deposit_percent: Option<Number>,
    deposit: Option<PyMoney>,
) -> PyResult<Quote> {
    let deposit = in_advance(deposit_percent, deposit)?;
    let quote = business::quote_range(&costs(parts.0)?, &rule.0, time(chair_min)?, deposit).map_err(raise)?;
    Ok(Quote {
        low: quote.low.into(),
        best: quote.best.into(),
        high: quote.high.into(),
        drivers: quote.drivers.into_iter().map(Into::into).collect(),
        deposit: PyMoney(quote.deposit),
        balance: PyMoney(quote.balance),
    })
}

fn in_advance(percent: Option<Number>, amount: Option<PyMoney>) -> PyResult<Deposit> {
    match (percent, amount) {
        (None, None) => Ok(Deposit::Percent(Decimal::ZERO)),
        (Some(percent), None) => Ok(Deposit::Percent(percent.0)),
        (None, Some(amount)) => Ok(Deposit::Fixed(amount.0)),
        (Some(_), Some(_)) => Err(FoilworkError::new_err("give deposit_percent or deposit, not both")),
    }
}

/// How a quotation comes about: the expected price, with the least and the most as its bounds.
///
/// Args:
///     parts: as of :func:`quote_range`.
///     rule: how prices are set.
///     chair_min: time in the chair as ``(least, expected, most)``; needed for a target by the hour.
///     deposit_percent: what is paid in advance, in percent of the expected gross price.
///     deposit: what is paid in advance, as an amount; give one of the two or neither.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult` for each step.
///
/// Raises:
///     FoilworkError: as :func:`quote_range`.
///
/// Examples:
///     >>> from foilwork.business import trace_quote
///     >>> from foilwork.money import Money, PriceRule
///     >>> parts = [("hands-on time", Money("30.00", "EUR"), Money("34.00", "EUR"), Money("44.00", "EUR"))]
///     >>> trace_quote(parts, PriceRule(markup_percent=100))[1].bounds
///     ('60.00', '88.00')
#[pyfunction]
#[pyo3(signature = (parts, rule, *, chair_min = None, deposit_percent = None, deposit = None))]
pub fn trace_quote(
    parts: Sequence<Part>,
    rule: PyPriceRule,
    chair_min: Option<Estimate<f64>>,
    deposit_percent: Option<Number>,
    deposit: Option<PyMoney>,
) -> PyResult<Vec<TracedResult>> {
    let (parts, deposit, in_chair) = (costs(parts.0)?, in_advance(deposit_percent, deposit)?, time(chair_min)?);
    let quote = business::quote_range(&parts, &rule.0, in_chair, deposit).map_err(raise)?;
    Ok(quote.trail(&parts, &rule.0, in_chair).into_iter().map(Into::into).collect())
}

/// A price list by class of service: low, usual and high, gross, by one price rule.
///
/// Args:
///     classes: ``(service, class, parts)`` or ``(service, class, parts, chair_min)`` for each entry, parts and
///         time as in :func:`quote_range`.
///     rule: how prices are set.
///
/// Raises:
///     FoilworkError: as :func:`quote_range`.
///
/// Examples:
///     >>> from foilwork.business import price_list
///     >>> from foilwork.money import Money, PriceRule
///     >>> euros = lambda text: Money(text, "EUR")
///     >>> cost = ("product and time", euros("40.00"), euros("46.00"), euros("55.00"))
///     >>> rule = PriceRule(margin_percent=40, tax_percent=20, price_step=euros("5.00"))
///     >>> entry = price_list([("half head of foils", "long", [cost])], rule)[0]
///     >>> entry.low, entry.usual, entry.high
///     (Money('80.00', 'EUR'), Money('95.00', 'EUR'), Money('110.00', 'EUR'))
#[pyfunction]
pub fn price_list(classes: Sequence<Bound<'_, PyAny>>, rule: PyPriceRule) -> PyResult<Vec<PriceListEntry>> {
    let classes = classes.0;
    let read = |entry: Bound<'_, PyAny>| {
        let (service, class, parts, chair) = match entry.extract() {
            Ok(whole) => whole,
            Err(_) => {
                let (service, class, parts) = entry.extract().map_err(|error| ours(entry.py(), error))?;
                (service, class, parts, None)
            }
        };
        Ok::<_, PyErr>(ClassCost { service, class, parts: costs(parts)?, in_chair: time(chair)? })
    };
    let classes = classes.into_iter().map(read).collect::<PyResult<Vec<_>>>()?;
    let list = business::price_list(&classes, &rule.0).map_err(raise)?;
    Ok(list
        .into_iter()
        .map(|entry| PriceListEntry {
            service: entry.service,
            guest_class: entry.class,
            low: PyMoney(entry.low),
            usual: PyMoney(entry.usual),
            high: PyMoney(entry.high),
            driver: entry.driver.map(Into::into),
        })
        .collect())
}

fn costs(parts: Vec<Part>) -> PyResult<Vec<QuotePart>> {
    parts
        .into_iter()
        .map(|(what, low, best, high)| {
            let cost = Interval::new(low.0, best.0, high.0)
                .map_err(|error| FoilworkError::new_err(format!("{what}: {error}, in one currency")))?;
            Ok(QuotePart { what, cost, basis: Basis::Stated })
        })
        .collect()
}

fn time(chair_min: Option<Estimate<f64>>) -> PyResult<Option<Interval<Duration>>> {
    chair_min
        .map(|Estimate([low, best, high])| Interval::new(minutes(low)?, minutes(best)?, minutes(high)?).map_err(raise))
        .transpose()
}
