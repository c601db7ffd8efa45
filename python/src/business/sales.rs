//! How much must be sold.

use crate::{
    answer::answer,
    error::raise,
    exact::Number,
    money::{HALF_UP, PyMoney, rounding},
    sequence::Sequence,
};
use foilwork::{
    business::{self, MixedCost, SalesMixItem},
    money::{Money, ProfitTax},
};
use pyo3::prelude::*;
use rust_decimal::Decimal;

answer! {
    in "foilwork.business";
    /// How much must be sold to reach a goal.
    SalesNeeded {
        /// How many sales, unrounded.
        count_exact: Decimal,
        /// How many whole sales, rounded up.
        count: i64,
        /// The net takings of the whole sales.
        sales: PyMoney,
        /// The net takings at which the goal is met exactly.
        sales_exact: PyMoney,
    }
}

answer! {
    in "foilwork.business";
    /// How far sales can fall before there is a loss.
    MarginOfSafety {
        /// Sales less break-even sales.
        amount: PyMoney,
        /// The same in percent of the sales.
        percent_of_sales: Decimal,
    }
}

answer! {
    in "foilwork.business";
    /// One service of a mix that reaches a goal.
    SalesMixLine {
        /// The service.
        what: String,
        /// How many.
        count: i64,
        /// Their net takings.
        sales: PyMoney,
        /// What they leave.
        contribution: PyMoney,
    }
}

answer! {
    in "foilwork.business";
    /// How many of each service reach a goal.
    SalesMixPlan {
        /// What the average service leaves, unrounded.
        average_contribution: Decimal,
        /// How many services in all, unrounded.
        count_exact: Decimal,
        /// How many whole services in all, so that the goal is met.
        count: i64,
        /// Each service.
        services: Vec<SalesMixLine>,
        /// Net takings of all of them.
        sales: PyMoney,
        /// What they leave beyond the goal.
        left_over: PyMoney,
    }
}

answer! {
    in "foilwork.business";
    /// What an offer must bring in to leave as much as before.
    DiscountBreakEven {
        /// What one service leaves at the full price.
        contribution_before: PyMoney,
        /// What it leaves at the reduced price.
        contribution_after: PyMoney,
        /// How many services the offer must sell, rounded up.
        count_needed: i64,
        /// By how much that is more, in percent, unrounded.
        extra_percent: Decimal,
    }
}

impl From<business::SalesNeeded> for SalesNeeded {
    fn from(needed: business::SalesNeeded) -> Self {
        Self {
            count_exact: needed.count_exact,
            count: needed.count,
            sales: PyMoney(needed.sales),
            sales_exact: PyMoney(needed.sales_exact),
        }
    }
}

/// How many sales cover the fixed costs and leave a profit before tax: ``(fixed + profit) / (price - variable)``.
///
/// Args:
///     fixed: fixed costs of a period. Wages by the hour belong here, not among the variable costs.
///     price: net price of one sale.
///     variable: what one more sale costs.
///     profit: profit wanted before tax; nothing when left out.
///     rounding: how ``sales_exact`` becomes whole minor units; see :class:`Money`.
///
/// Raises:
///     FoilworkError: a sale that leaves nothing, a negative amount, two currencies.
///
/// Source:
///     OpenStax, Principles of Accounting, Volume 2, module m68116.
///
/// Examples:
///     >>> from foilwork.business import break_even
///     >>> from foilwork.money import Money
///     >>> usd = lambda text: Money(text, "USD")
///     >>> break_even(usd("3000"), usd("35"), usd("20")).count
///     200
#[pyfunction]
#[pyo3(signature = (fixed, price, variable, *, profit = None, rounding = HALF_UP), text_signature = "(fixed, price, variable, *, profit=None, rounding='midpoint-away-from-zero')")]
pub fn break_even(
    fixed: PyMoney,
    price: PyMoney,
    variable: PyMoney,
    profit: Option<PyMoney>,
    rounding: &str,
) -> PyResult<SalesNeeded> {
    let profit = profit.map_or(Money::zero(fixed.0.currency()), |profit| profit.0);
    business::target_profit(fixed.0, price.0, variable.0, profit, self::rounding(rounding)?)
        .map(Into::into)
        .map_err(raise)
}

/// The profit before tax that leaves a profit after it.
///
/// Args:
///     after_tax: profit wanted after tax.
///     tax_percent: tax on the profit, in percent of the profit, below 100.
///     rounding: how the profit becomes whole minor units; see :class:`Money`.
///
/// Raises:
///     FoilworkError: a tax outside 0 to below 100.
///
/// Examples:
///     >>> from foilwork.business import profit_before_tax
///     >>> from foilwork.money import Money
///     >>> profit_before_tax(Money("24000", "USD"), 40)
///     Money('40000.00', 'USD')
#[pyfunction]
#[pyo3(signature = (after_tax, tax_percent, *, rounding = HALF_UP), text_signature = "(after_tax, tax_percent, *, rounding='midpoint-away-from-zero')")]
pub fn profit_before_tax(after_tax: PyMoney, tax_percent: Number, rounding: &str) -> PyResult<PyMoney> {
    let tax = ProfitTax::from_percent(tax_percent.0).map_err(raise)?;
    business::profit_before_tax(after_tax.0, tax, self::rounding(rounding)?).map(PyMoney).map_err(raise)
}

/// How far sales can fall before there is a loss.
///
/// Args:
///     sales: net takings.
///     break_even_sales: net takings at which there is neither profit nor loss.
///
/// Raises:
///     FoilworkError: no sales, two currencies.
///
/// Examples:
///     >>> from foilwork.business import margin_of_safety
///     >>> from foilwork.money import Money
///     >>> margin_of_safety(Money("225000", "USD"), Money("153000", "USD")).percent_of_sales
///     Decimal('32')
#[pyfunction]
pub fn margin_of_safety(sales: PyMoney, break_even_sales: PyMoney) -> PyResult<MarginOfSafety> {
    let safety = business::margin_of_safety(sales.0, break_even_sales.0).map_err(raise)?;
    Ok(MarginOfSafety { amount: PyMoney(safety.amount), percent_of_sales: safety.percent_of_sales })
}

/// How many services, sold in a given mix, cover the fixed costs and leave a profit before tax.
///
/// Args:
///     fixed: fixed costs of a period.
///     profit: profit wanted before tax.
///     items: ``(what, price, variable, weight)`` for each service; weights are proportions.
///
/// Raises:
///     FoilworkError: no services, a mix that leaves nothing, a negative weight, two currencies.
///
/// Examples:
///     >>> from foilwork.business import sales_mix_target
///     >>> from foilwork.money import Money
///     >>> eur = lambda text: Money(text, "EUR")
///     >>> mix = [("foils", eur("120"), eur("30"), 1), ("gloss", eur("45"), eur("10"), 3)]
///     >>> plan = sales_mix_target(eur("4000"), eur("0"), mix)
///     >>> plan.count, [line.count for line in plan.services]
///     (83, [21, 62])
#[pyfunction]
pub fn sales_mix_target(
    fixed: PyMoney,
    profit: PyMoney,
    items: Sequence<(String, PyMoney, PyMoney, Number)>,
) -> PyResult<SalesMixPlan> {
    let items = items.0;
    let plan = business::sales_mix_target(fixed.0, profit.0, &mix_items(items)).map_err(raise)?;
    let line = |line: business::SalesMixLine| SalesMixLine {
        what: line.what,
        count: line.count,
        sales: PyMoney(line.sales),
        contribution: PyMoney(line.contribution),
    };
    Ok(SalesMixPlan {
        average_contribution: plan.average_contribution.per_unit,
        count_exact: plan.count_exact,
        count: plan.count,
        services: plan.services.into_iter().map(line).collect(),
        sales: PyMoney(plan.sales),
        left_over: PyMoney(plan.left_over),
    })
}

/// How many services must be sold at a reduced net price to leave what ``count`` leave at the full one.
///
/// Args:
///     before: the full net price.
///     after: the reduced net price.
///     variable: what one more service costs.
///     count: how many are sold at the full price.
///
/// Raises:
///     FoilworkError: a reduced price that leaves nothing, or one above the full price.
///
/// Examples:
///     >>> from foilwork.business import discount_break_even
///     >>> from foilwork.money import Money
///     >>> discount_break_even(Money("100", "EUR"), Money("80", "EUR"), Money("50", "EUR"), 30).count_needed
///     50
#[pyfunction]
pub fn discount_break_even(
    before: PyMoney,
    after: PyMoney,
    variable: PyMoney,
    count: u32,
) -> PyResult<DiscountBreakEven> {
    let offer = business::discount_break_even(before.0, after.0, variable.0, count).map_err(raise)?;
    Ok(DiscountBreakEven {
        contribution_before: PyMoney(offer.contribution_before),
        contribution_after: PyMoney(offer.contribution_after),
        count_needed: offer.count_needed,
        extra_percent: offer.extra_percent,
    })
}

answer! {
    in "foilwork.business";
    /// What one sale leaves to pay the fixed costs.
    Contribution {
        /// Net price less variable cost.
        each: PyMoney,
        /// The same in percent of the net price, unrounded.
        ratio_percent: Decimal,
    }
}

/// Net price less what one more sale costs.
///
/// Args:
///     price: net price.
///     variable: what one more sale costs.
///
/// Raises:
///     FoilworkError: no price, a negative cost, two currencies.
///
/// Source:
///     OpenStax, Principles of Accounting, Volume 2, module m68115.
///
/// Examples:
///     >>> from foilwork.business import contribution
///     >>> from foilwork.money import Money
///     >>> contribution(Money("40", "USD"), Money("10", "USD"))
///     Contribution(each=Money('30.00', 'USD'), ratio_percent=Decimal('75'))
#[pyfunction]
pub fn contribution(price: PyMoney, variable: PyMoney) -> PyResult<Contribution> {
    let found = business::contribution(price.0, variable.0).map_err(raise)?;
    Ok(Contribution { each: PyMoney(found.each), ratio_percent: found.ratio_percent })
}

/// What a number of sales leaves after the fixed costs; below zero, a loss.
///
/// Args:
///     fixed: fixed costs of a period.
///     price: net price of one sale.
///     variable: what one more sale costs.
///     count: how many are sold.
///
/// Raises:
///     FoilworkError: two currencies, or too large.
///
/// Examples:
///     >>> from foilwork.business import profit_at
///     >>> from foilwork.money import Money
///     >>> usd = lambda text: Money(text, "USD")
///     >>> profit_at(usd("3000"), usd("35"), usd("20"), 150)
///     Money('-750.00', 'USD')
#[pyfunction]
pub fn profit_at(fixed: PyMoney, price: PyMoney, variable: PyMoney, count: u32) -> PyResult<PyMoney> {
    business::profit_at(fixed.0, price.0, variable.0, count).map(PyMoney).map_err(raise)
}

/// What a period leaves when services were sold in these numbers.
///
/// Args:
///     fixed: fixed costs of the period.
///     sold: ``(what, price, variable, count)`` for each service.
///
/// Raises:
///     FoilworkError: two currencies, or a count that is not whole.
///
/// Examples:
///     >>> from foilwork.business import sales_mix_profit
///     >>> from foilwork.money import Money
///     >>> eur = lambda text: Money(text, "EUR")
///     >>> sales_mix_profit(eur("450"), [("toner", eur("35"), eur("5"), 20)])
///     Money('150.00', 'EUR')
#[pyfunction]
pub fn sales_mix_profit(fixed: PyMoney, sold: Sequence<(String, PyMoney, PyMoney, Number)>) -> PyResult<PyMoney> {
    let sold = sold.0;
    business::sales_mix_profit(fixed.0, &mix_items(sold)).map(PyMoney).map_err(raise)
}

/// The fixed and the variable parts of a list of costs, each added up.
///
/// Args:
///     costs: ``(what, fixed, each)`` for each cost: for the period, and for every sale.
///
/// Returns:
///     What is fixed for the period, and what comes with every sale.
///
/// Raises:
///     FoilworkError: no costs, two currencies.
///
/// Examples:
///     >>> from foilwork.business import split_costs
///     >>> from foilwork.money import Money
///     >>> eur = lambda text: Money(text, "EUR")
///     >>> split_costs([("water", eur("40"), eur("0.60")), ("till", eur("25"), eur("0.10"))])
///     (Money('65.00', 'EUR'), Money('0.70', 'EUR'))
#[pyfunction]
pub fn split_costs(costs: Sequence<(String, PyMoney, PyMoney)>) -> PyResult<(PyMoney, PyMoney)> {
    let costs = costs.0;
    let costs: Vec<_> =
        costs.into_iter().map(|(what, fixed, each)| MixedCost { what, fixed: fixed.0, each: each.0 }).collect();
    let (fixed, each) = business::split_costs(&costs).map_err(raise)?;
    Ok((PyMoney(fixed), PyMoney(each)))
}

pub(super) fn mix_items(items: Vec<(String, PyMoney, PyMoney, Number)>) -> Vec<SalesMixItem> {
    items
        .into_iter()
        .map(|(what, price, variable, weight)| SalesMixItem {
            what,
            price: price.0,
            variable: variable.0,
            weight: weight.0,
        })
        .collect()
}
