//! How well the chair is used.

use crate::{
    answer::answer,
    error::raise,
    exact::Number,
    money::{HALF_UP, PyMoney, hours, minutes, rounding},
    sequence::Sequence,
    source::TracedResult,
};
use foilwork::{
    business::{self, ChairService, Denominator},
    money::ProductiveShare,
};
use pyo3::prelude::*;
use rust_decimal::Decimal;

answer! {
    in "foilwork.business";
    /// A service with what it earns for an hour of the chair.
    RankedService {
        /// The service.
        what: String,
        /// Net price less variable cost.
        contribution: PyMoney,
        /// The contribution for one hour of the chair, unrounded.
        per_chair_hour: Decimal,
    }
}

/// Rank services by what they leave for an hour of the chair, the best first.
///
/// Args:
///     services: ``(what, price, variable, chair_min)`` for each: net price, cost of one more, chair time in min.
///
/// Raises:
///     FoilworkError: no time, two currencies.
///
/// Examples:
///     >>> from foilwork.business import rank_by_chair_hour
///     >>> from foilwork.money import Money
///     >>> eur = lambda text: Money(text, "EUR")
///     >>> foils, toner = ("foils", eur("140"), eur("20"), 180), ("toner", eur("35"), eur("5"), 40)
///     >>> [(service.what, str(service.per_chair_hour)) for service in rank_by_chair_hour([foils, toner])]
///     [('toner', '45'), ('foils', '40')]
#[pyfunction]
pub fn rank_by_chair_hour(services: Sequence<(String, PyMoney, PyMoney, f64)>) -> PyResult<Vec<RankedService>> {
    let services = services.0;
    let services = services
        .into_iter()
        .map(|(what, price, variable, chair_min)| {
            Ok(ChairService { what, price: price.0, variable: variable.0, in_chair: minutes(chair_min)? })
        })
        .collect::<PyResult<Vec<_>>>()?;
    let ranked = business::rank_by_chair_hour(&services).map_err(raise)?;
    Ok(ranked
        .into_iter()
        .map(|service| RankedService {
            what: service.what,
            contribution: PyMoney(service.contribution),
            per_chair_hour: service.per_chair_hour.per_unit,
        })
        .collect())
}

answer! {
    in "foilwork.business";
    /// Productive time in percent of a stated other time.
    Productivity {
        /// The percentage, unrounded.
        percent: Decimal,
        /// Of what: one of the denominators of :func:`productivity`.
        of: String,
    }
}

/// Productive time in percent of a stated other time.
///
/// Args:
///     productive_h: hours with a guest in the chair.
///     of_h: the hours to compare with.
///     denominator: what these are: ``"recorded-time"``, ``"paid-time"``, ``"rostered-time"``, ``"opening-time"`` or
///         ``"standard-time"``. The same week reads 75 or 125, so it must be said.
///
/// Returns:
///     The percentage, unrounded, and the denominator again.
///
/// Raises:
///     FoilworkError: no hours to compare with, an unknown denominator.
///
/// Examples:
///     >>> from foilwork.business import productivity
///     >>> productivity(30, 40, denominator="recorded-time")
///     Productivity(percent=Decimal('75'), of='recorded-time')
#[pyfunction]
#[pyo3(signature = (productive_h, of_h, *, denominator))]
pub fn productivity(productive_h: f64, of_h: f64, denominator: &str) -> PyResult<Productivity> {
    let of: Denominator = denominator.parse().map_err(raise)?;
    let found = business::productivity(hours(productive_h)?, hours(of_h)?, of).map_err(raise)?;
    Ok(Productivity { percent: found.percent, of: of.code().to_owned() })
}

/// How productive time in percent of a stated other time comes about.
///
/// Args:
///     productive_h: hours with a guest in the chair.
///     of_h: the hours to compare with.
///     denominator: what these are, as of :func:`productivity`.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult`.
///
/// Raises:
///     FoilworkError: as :func:`productivity`.
///
/// Examples:
///     >>> from foilwork.business import trace_productivity
///     >>> trace_productivity(30, 40, denominator="paid-time").worked
///     '1800 / 2400 x 100'
#[pyfunction]
#[pyo3(signature = (productive_h, of_h, *, denominator))]
pub fn trace_productivity(productive_h: f64, of_h: f64, denominator: &str) -> PyResult<TracedResult> {
    let of: Denominator = denominator.parse().map_err(raise)?;
    business::trace_productivity(hours(productive_h)?, hours(of_h)?, of).map(Into::into).map_err(raise)
}

/// Where a share of productive hours lies beside what a guide to the trade gives for it.
///
/// Args:
///     productive_percent: productive hours in percent of all paid hours.
///
/// Returns:
///     ``"below-all"`` (below 30), ``"low"``, ``"typical"`` (40 to 55), ``"high"`` or ``"above-all"`` (above 70).
///
/// Raises:
///     FoilworkError: a share outside 0 to 100.
///
/// Source:
///     CCH, Hairdressing trade sector guide; see ``cch-productive-hours`` in :func:`foilwork.source.register`.
///
/// Examples:
///     >>> from foilwork.business import beside_trade
///     >>> beside_trade(50)
///     'typical'
#[pyfunction]
pub fn beside_trade(productive_percent: Number) -> PyResult<&'static str> {
    let share = ProductiveShare::from_percent(productive_percent.0).map_err(raise)?;
    Ok(business::beside_trade(share).value.code())
}

/// Net takings for each guest, rounded once.
///
/// Args:
///     takings: net takings of a period.
///     guests: how many came.
///     rounding: how the amount becomes whole minor units; see :class:`foilwork.money.Money`.
///
/// Raises:
///     FoilworkError: no guests.
///
/// Examples:
///     >>> from foilwork.business import average_bill
///     >>> from foilwork.money import Money
///     >>> average_bill(Money("500", "EUR"), 6)
///     Money('83.33', 'EUR')
#[pyfunction]
#[pyo3(signature = (takings, guests, *, rounding = HALF_UP), text_signature = "(takings, guests, *, rounding='midpoint-away-from-zero')")]
pub fn average_bill(takings: PyMoney, guests: u32, rounding: &str) -> PyResult<PyMoney> {
    business::average_bill(takings.0, guests, self::rounding(rounding)?).map(PyMoney).map_err(raise)
}

/// Retail sales in percent of all net takings, services and retail together, unrounded.
///
/// Args:
///     retail: net retail sales.
///     all_takings: net takings of services and retail.
///
/// Raises:
///     FoilworkError: retail below zero or above the takings, two currencies.
///
/// Examples:
///     >>> from foilwork.business import retail_share
///     >>> from foilwork.money import Money
///     >>> retail_share(Money("120", "EUR"), Money("1500", "EUR"))
///     Decimal('8')
#[pyfunction]
pub fn retail_share(retail: PyMoney, all_takings: PyMoney) -> PyResult<Decimal> {
    business::retail_share(retail.0, all_takings.0).map_err(raise)
}

/// The middle of a list of counts, such as guests a day: half the days had fewer, half had more.
///
/// Args:
///     counts: the counts.
///
/// Raises:
///     FoilworkError: an empty list.
///
/// Examples:
///     >>> from foilwork.business import median_count
///     >>> median_count([9, 4, 11, 7])
///     Decimal('8')
#[pyfunction]
pub fn median_count(counts: Sequence<u32>) -> PyResult<Decimal> {
    let counts = counts.0;
    business::median_count(&counts).map_err(raise)
}
