//! Pay, tips, chair rent, productivity and stock.

use super::business::{Pay, RentOrWageAnswer, Reorder};
use super::{HALF_UP, PyMoney, cost::measure, exact::Number, hours, rounding};
use crate::error::{FoilworkError, raise};
use foilwork::{
    business::{self, CommissionRule, CommissionTier, Denominator, RentOrWage, StockLevel},
    money::{CommissionRate, Money},
};
use pyo3::prelude::*;
use rust_decimal::Decimal;

/// Commission on the net takings of one period, with the base pay beside it.
///
/// Args:
///     takings: net takings of the period.
///     percent: one rate on everything, or on what exceeds ``threshold``.
///     threshold: nothing is paid up to here.
///     tiers: ``(up_to, percent)`` for each slice, rising; the last has ``None`` and no end. Instead of ``percent``.
///     base: wage or retainer; nothing when left out.
///     rounding: how the commission becomes whole minor units, once; see :class:`Money`.
///
/// Raises:
///     FoilworkError: no rule or two, a rate outside 0 to 100, tiers that do not rise, negative takings.
///
/// Source:
///     Yale-New Haven Teachers Institute, unit 80.07.07, 1980, examples 1-3.
///
/// Examples:
///     >>> from foilwork.money import Money, commission_pay
///     >>> commission_pay(Money("1300", "USD"), tiers=[(Money("800", "USD"), 8), (None, 14)]).commission
///     Money('134.00', 'USD')
///     >>> week, base = Money("1540", "USD"), Money("120", "USD")
///     >>> commission_pay(week, percent=5, threshold=Money("500", "USD"), base=base).total
///     Money('172.00', 'USD')
#[pyfunction]
#[pyo3(signature = (takings, *, percent = None, threshold = None, tiers = None, base = None, rounding = HALF_UP), text_signature = "(takings, *, percent=None, threshold=None, tiers=None, base=None, rounding='midpoint-away-from-zero')")]
pub fn commission_pay(
    takings: PyMoney,
    percent: Option<Number>,
    threshold: Option<PyMoney>,
    tiers: Option<Vec<(Option<PyMoney>, Number)>>,
    base: Option<PyMoney>,
    rounding: &str,
) -> PyResult<Pay> {
    let rate = |percent: Number| CommissionRate::from_percent(percent.0).map_err(raise);
    let rule = match (percent, threshold, tiers) {
        (Some(percent), None, None) => CommissionRule::Flat(rate(percent)?),
        (Some(percent), Some(threshold), None) => {
            CommissionRule::OverThreshold { threshold: threshold.0, rate: rate(percent)? }
        }
        (None, None, Some(tiers)) => {
            let tier = |(up_to, percent): (Option<PyMoney>, Number)| {
                Ok(CommissionTier { up_to: up_to.map(|end| end.0), rate: rate(percent)? })
            };
            CommissionRule::Tiered(tiers.into_iter().map(tier).collect::<PyResult<_>>()?)
        }
        _ => return Err(FoilworkError::new_err("give percent, percent with threshold, or tiers")),
    };
    let base = base.map_or(Money::zero(takings.0.currency()), |base| base.0);
    let pay = business::commission_pay(base, &rule, takings.0, self::rounding(rounding)?).map_err(raise)?;
    Ok(Pay { base: PyMoney(pay.base), commission: PyMoney(pay.commission), total: PyMoney(pay.total) })
}

/// Share pooled tips by time worked, and lose no minor unit.
///
/// Args:
///     tips: all tips.
///     worked_h: hours of each person.
///
/// Raises:
///     FoilworkError: nobody, or nobody worked; tips below nothing.
///
/// Examples:
///     >>> from foilwork.money import Money, share_tips
///     >>> [str(share) for share in share_tips(Money("50.00", "EUR"), [8, 8, 5])]
///     ['19.05 EUR', '19.05 EUR', '11.90 EUR']
#[pyfunction]
pub fn share_tips(tips: PyMoney, worked_h: Vec<f64>) -> PyResult<Vec<PyMoney>> {
    let worked = worked_h.into_iter().map(hours).collect::<PyResult<Vec<_>>>()?;
    let shares = business::share_tips(tips.0, &worked).map_err(raise)?;
    Ok(shares.into_iter().map(PyMoney).collect())
}

/// Chair rent against wage for the same chair and period, seen by the one who works at it.
///
/// Args:
///     takings: net takings of the period.
///     rent: rent of the chair.
///     own_costs: what else a self-employed stylist pays for.
///     variable_percent: what the work itself costs, in percent of the takings.
///     wage: the wage when employed.
///     commission_percent: commission when employed, in percent of the takings.
///     rounding: how amounts become whole minor units; see :class:`Money`.
///
/// Raises:
///     FoilworkError: shares that take all of the takings, a value out of range, two currencies.
///
/// Examples:
///     >>> from foilwork.money import Money, rent_or_wage
///     >>> eur = lambda text: Money(text, "EUR")
///     >>> renting = {"rent": eur("200"), "own_costs": eur("50"), "variable_percent": 12}
///     >>> choice = rent_or_wage(eur("1500"), **renting, wage=eur("480"), commission_percent=15)
///     >>> choice.break_even_takings, choice.difference
///     (Money('1000.00', 'EUR'), Money('365.00', 'EUR'))
#[pyfunction]
#[pyo3(signature = (takings, *, rent, own_costs, variable_percent, wage, commission_percent, rounding = HALF_UP), text_signature = "(takings, *, rent, own_costs, variable_percent, wage, commission_percent, rounding='midpoint-away-from-zero')")]
pub fn rent_or_wage(
    takings: PyMoney,
    rent: PyMoney,
    own_costs: PyMoney,
    variable_percent: Number,
    wage: PyMoney,
    commission_percent: Number,
    rounding: &str,
) -> PyResult<RentOrWageAnswer> {
    let rounding = self::rounding(rounding)?;
    let choice = RentOrWage {
        rent: rent.0,
        own_costs: own_costs.0,
        variable_percent: variable_percent.0,
        wage: wage.0,
        commission: CommissionRate::from_percent(commission_percent.0).map_err(raise)?,
    };
    let at = choice.at(takings.0, rounding).map_err(raise)?;
    Ok(RentOrWageAnswer {
        break_even_takings: PyMoney(choice.break_even_takings(rounding).map_err(raise)?),
        renting: PyMoney(at.renting),
        employed: PyMoney(at.employed),
        difference: PyMoney(at.difference),
    })
}

/// Productive time in percent of a stated other time.
///
/// Args:
///     productive_h: hours with a client in the chair.
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
///     >>> from foilwork.money import productivity
///     >>> productivity(30, 40, denominator="recorded-time")
///     (Decimal('75'), 'recorded-time')
#[pyfunction]
#[pyo3(signature = (productive_h, of_h, *, denominator))]
pub fn productivity(productive_h: f64, of_h: f64, denominator: &str) -> PyResult<(Decimal, &'static str)> {
    let of: Denominator = denominator.parse().map_err(raise)?;
    let found = business::productivity(hours(productive_h)?, hours(of_h)?, of).map_err(raise)?;
    Ok((found.percent, of.code()))
}

/// When to order a product, how many packs, and how long the stock lasts.
///
/// Args:
///     on_hand: on the shelf now, in ``unit``.
///     daily_use: used on an average day.
///     pack: what a pack holds.
///     unit: ``"g"``, ``"mL"`` or ``"piece"`` for all of them.
///     lead_days: days from order to delivery.
///     cover_days: days the delivery should last.
///     reserve: kept for bad days.
///     on_order: ordered and not yet delivered.
///
/// Raises:
///     FoilworkError: a value out of range, an empty pack, an unknown unit.
///
/// Examples:
///     >>> from foilwork.money import reorder
///     >>> reorder(900, 120, 500, unit="g", lead_days=5, cover_days=14, reserve=300)
///     Reorder(reorder_point=Decimal('900'), due=True, packs=4, stock_days=Decimal('7.5'))
#[pyfunction]
#[pyo3(signature = (on_hand, daily_use, pack, *, unit, lead_days, cover_days, reserve = 0.0, on_order = 0.0))]
#[expect(clippy::too_many_arguments, reason = "keywords of one Python function")]
pub fn reorder(
    on_hand: f64,
    daily_use: f64,
    pack: f64,
    unit: &str,
    lead_days: u32,
    cover_days: u32,
    reserve: f64,
    on_order: f64,
) -> PyResult<Reorder> {
    let stock = StockLevel {
        on_hand: measure(on_hand, unit)?,
        on_order: measure(on_order, unit)?,
        daily_use: measure(daily_use, unit)?,
        reserve: measure(reserve, unit)?,
    };
    let reorder = stock.reorder(lead_days, cover_days, measure(pack, unit)?).map_err(raise)?;
    Ok(Reorder {
        reorder_point: reorder.reorder_point,
        due: reorder.due,
        packs: reorder.packs,
        stock_days: stock.days().map_err(raise)?,
    })
}
