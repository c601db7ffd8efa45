//! How sales that are needed come about.

use super::sales::mix_items;
use crate::{
    error::raise,
    exact::Number,
    money::{HALF_UP, PyMoney, rounding},
    sequence::Sequence,
    source::TracedResult,
};
use foilwork::{business, money::Money};
use pyo3::prelude::*;

/// How the sales that cover the fixed costs and leave a profit, and their takings, come about.
///
/// Args:
///     fixed: fixed costs of a period.
///     price: net price of one sale.
///     variable: what one more sale costs.
///     profit: profit wanted before tax; nothing when left out.
///     rounding: how takings become whole minor units; see :class:`Money`.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult` for each.
///
/// Raises:
///     FoilworkError: as :func:`break_even`.
///
/// Examples:
///     >>> from foilwork.business import trace_target_profit
///     >>> from foilwork.money import Money
///     >>> usd = lambda text: Money(text, "USD")
///     >>> trace_target_profit(usd("3000"), usd("35"), usd("20"))[0].worked
///     'up ((3000.00 + 0.00) / (35.00 - 20.00))'
#[pyfunction]
#[pyo3(signature = (fixed, price, variable, *, profit = None, rounding = HALF_UP), text_signature = "(fixed, price, variable, *, profit=None, rounding='midpoint-away-from-zero')")]
pub fn trace_target_profit(
    fixed: PyMoney,
    price: PyMoney,
    variable: PyMoney,
    profit: Option<PyMoney>,
    rounding: &str,
) -> PyResult<Vec<TracedResult>> {
    let profit = profit.map_or(Money::zero(fixed.0.currency()), |profit| profit.0);
    let found = business::trace_target_profit(fixed.0, price.0, variable.0, profit, self::rounding(rounding)?);
    Ok(found.map_err(raise)?.into_iter().map(Into::into).collect())
}

/// How what each sale leaves before and after a discount comes about, and the sales that leave as much as before.
///
/// Args:
///     before: the full net price.
///     after: the reduced net price.
///     variable: what one more sale costs.
///     count: how many are sold at the full price.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult` for each.
///
/// Raises:
///     FoilworkError: as :func:`discount_break_even`.
///
/// Examples:
///     >>> from foilwork.business import trace_discount
///     >>> from foilwork.money import Money
///     >>> eur = lambda text: Money(text, "EUR")
///     >>> trace_discount(eur("100"), eur("80"), eur("50"), 30)[2].worked
///     'up (30 x (100.00 - 50.00) / (80.00 - 50.00))'
#[pyfunction]
pub fn trace_discount(before: PyMoney, after: PyMoney, variable: PyMoney, count: u32) -> PyResult<Vec<TracedResult>> {
    let found = business::trace_discount(before.0, after.0, variable.0, count).map_err(raise)?;
    Ok(found.into_iter().map(Into::into).collect())
}

/// How the sales of a mix that cover the fixed costs, and their takings, come about.
///
/// Args:
///     fixed: fixed costs of a period.
///     profit: profit wanted before tax.
///     items: ``(what, price, variable, weight)`` for each service; weights are proportions.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult` for each.
///
/// Raises:
///     FoilworkError: as :func:`sales_mix_target`.
///
/// Examples:
///     >>> from foilwork.business import trace_sales_mix
///     >>> from foilwork.money import Money
///     >>> eur = lambda text: Money(text, "EUR")
///     >>> trace_sales_mix(eur("90"), eur("0"), [("foils", eur("100"), eur("40"), 1)])[0].value
///     '2'
#[pyfunction]
pub fn trace_sales_mix(
    fixed: PyMoney,
    profit: PyMoney,
    items: Sequence<(String, PyMoney, PyMoney, Number)>,
) -> PyResult<Vec<TracedResult>> {
    let plan = business::sales_mix_target(fixed.0, profit.0, &mix_items(items.0)).map_err(raise)?;
    Ok(business::trace_sales_mix(&plan).into_iter().map(Into::into).collect())
}
