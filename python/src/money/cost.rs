use super::{HALF_UP, PyMoney, grams, hours, minutes, rounding};
use crate::{
    error::{FoilworkError, raise},
    exact::Number,
    sequence::Sequence,
};
use foilwork::{
    money::{self, Labour, Measure, OnCosts, Overhead, PackPrice},
    quantity::Volume,
};
use pyo3::prelude::*;
use rust_decimal::Decimal;

/// Cost of what was taken from a pack, waste included, at its unrounded price: by mass, by volume or as a count.
///
/// Args:
///     pack_price: what a pack costs.
///     pack: what it holds, in ``unit``.
///     used: what was used and thrown away, in ``unit``.
///     unit: ``"g"``, ``"mL"`` or ``"piece"``.
///     rounding: how the cost becomes whole minor units, once; see :class:`Money`.
///
/// Raises:
///     FoilworkError: an empty pack, a price below nothing, a value out of range, an unknown unit.
///
/// Examples:
///     >>> from foilwork.money import Money, supply_cost
///     >>> supply_cost(Money("18.90", "EUR"), 1000, 42, unit="g")
///     Money('0.79', 'EUR')
///     >>> supply_cost(Money("24.00", "EUR"), 500, 42, unit="piece")
///     Money('2.02', 'EUR')
#[pyfunction]
#[pyo3(signature = (pack_price, pack, used, *, unit, rounding = HALF_UP), text_signature = "(pack_price, pack, used, *, unit, rounding='midpoint-away-from-zero')")]
pub fn supply_cost(pack_price: PyMoney, pack: f64, used: f64, unit: &str, rounding: &str) -> PyResult<PyMoney> {
    let pack = PackPrice::new(pack_price.0, measure(pack, unit)?).map_err(raise)?;
    money::supply_cost(pack, measure(used, unit)?, self::rounding(rounding)?).map(PyMoney).map_err(raise)
}

/// Price of one gram, millilitre or piece, unrounded to 28 significant digits.
///
/// Args:
///     pack_price: what a pack costs.
///     pack: what it holds, in ``unit``.
///     unit: ``"g"``, ``"mL"`` or ``"piece"``.
///
/// Raises:
///     FoilworkError: as :func:`supply_cost`.
///
/// Source:
///     OpenStax, Prealgebra 2e, module m81303.
///
/// Examples:
///     >>> from foilwork.money import Money, unit_price
///     >>> unit_price(Money("3.99", "USD"), 24, unit="piece")
///     Decimal('0.16625')
#[pyfunction]
#[pyo3(signature = (pack_price, pack, *, unit))]
pub fn unit_price(pack_price: PyMoney, pack: f64, unit: &str) -> PyResult<Decimal> {
    let pack = PackPrice::new(pack_price.0, measure(pack, unit)?).map_err(raise)?;
    money::unit_price(pack).map(|price| price.per_unit).map_err(raise)
}

/// How many whole packs cover the need: always rounded up.
///
/// Args:
///     need: what is needed, in ``unit``.
///     pack: what a pack holds, in ``unit``.
///     unit: ``"g"``, ``"mL"`` or ``"piece"``.
///
/// Raises:
///     FoilworkError: an empty pack, a value out of range, an unknown unit.
///
/// Examples:
///     >>> from foilwork.money import packs_needed
///     >>> packs_needed(17_500, 12, unit="g")
///     1459
#[pyfunction]
#[pyo3(signature = (need, pack, *, unit))]
pub fn packs_needed(need: f64, pack: f64, unit: &str) -> PyResult<i64> {
    money::packs_needed(measure(need, unit)?, measure(pack, unit)?).map_err(raise)
}

/// Cost of labour for one productive minute, on-costs and idle hours included, unrounded.
///
/// Args:
///     wage_per_h: wage for one paid hour.
///     on_costs_percent: what the employer pays on top, in percent of the wage.
///     paid_h: paid hours of a period.
///     productive_h: hours of the same period with hands on a guest.
///
/// Raises:
///     FoilworkError: a negative wage, on-costs out of range, productive hours above paid ones.
///
/// Examples:
///     >>> from foilwork.money import Money, labour_per_minute
///     >>> labour_per_minute(Money("15.00", "EUR"), 20, paid_h=40, productive_h=30)
///     Decimal('0.4')
#[pyfunction]
pub fn labour_per_minute(
    wage_per_h: PyMoney,
    on_costs_percent: Number,
    paid_h: f64,
    productive_h: f64,
) -> PyResult<Decimal> {
    let labour = labour(wage_per_h, on_costs_percent, paid_h, productive_h)?;
    money::labour_per_minute(&labour).map(|price| price.per_unit).map_err(raise)
}

/// Cost of so much hands-on time, rounded once from the exact value.
///
/// Args:
///     hands_on_min: hands-on time, in min.
///     wage_per_h: wage for one paid hour.
///     on_costs_percent: what the employer pays on top, in percent of the wage.
///     paid_h: paid hours of a period.
///     productive_h: hours of the same period with hands on a guest.
///     rounding: how the cost becomes whole minor units; see :class:`Money`.
///
/// Raises:
///     FoilworkError: as :func:`labour_per_minute`.
///
/// Examples:
///     >>> from foilwork.money import Money, labour_cost
///     >>> labour_cost(75, Money("16.00", "EUR"), 25, paid_h=38, productive_h=28.5)
///     Money('33.33', 'EUR')
#[pyfunction]
#[pyo3(signature = (hands_on_min, wage_per_h, on_costs_percent, paid_h, productive_h, *, rounding = HALF_UP), text_signature = "(hands_on_min, wage_per_h, on_costs_percent, paid_h, productive_h, *, rounding='midpoint-away-from-zero')")]
pub fn labour_cost(
    hands_on_min: f64,
    wage_per_h: PyMoney,
    on_costs_percent: Number,
    paid_h: f64,
    productive_h: f64,
    rounding: &str,
) -> PyResult<PyMoney> {
    let labour = labour(wage_per_h, on_costs_percent, paid_h, productive_h)?;
    labour.cost(minutes(hands_on_min)?, self::rounding(rounding)?).map(PyMoney).map_err(raise)
}

/// Overhead for one productive hour of one chair, unrounded.
///
/// Args:
///     overhead: overhead of a period.
///     chairs: how many chairs carry it.
///     productive_h_per_chair: hours of one chair in that period with a guest in it. Opening hours understate it.
///
/// Raises:
///     FoilworkError: a negative overhead, no chair, no productive hours.
///
/// Source:
///     Overhead rate per hour of activity: OpenStax, Principles of Accounting, Volume 2, module m68135.
///
/// Examples:
///     >>> from foilwork.money import Money, overhead_per_chair_hour
///     >>> overhead_per_chair_hour(Money("60000", "EUR"), chairs=4, productive_h_per_chair=1500)
///     Decimal('10')
#[pyfunction]
pub fn overhead_per_chair_hour(overhead: PyMoney, chairs: u32, productive_h_per_chair: f64) -> PyResult<Decimal> {
    let overhead = Overhead::new(overhead.0, chairs, hours(productive_h_per_chair)?).map_err(raise)?;
    money::overhead_per_chair_hour(&overhead).map(|price| price.per_unit).map_err(raise)
}

/// Overhead of so much time in the chair, rounded once from the exact value.
///
/// Args:
///     chair_min: time in the chair, in min.
///     overhead: overhead of a period.
///     chairs: how many chairs carry it.
///     productive_h_per_chair: hours of one chair in that period with a guest in it.
///     rounding: how the cost becomes whole minor units; see :class:`Money`.
///
/// Raises:
///     FoilworkError: as :func:`overhead_per_chair_hour`.
///
/// Examples:
///     >>> from foilwork.money import Money, overhead_cost
///     >>> overhead_cost(100, Money("60000", "EUR"), chairs=4, productive_h_per_chair=1500)
///     Money('16.67', 'EUR')
#[pyfunction]
#[pyo3(signature = (chair_min, overhead, chairs, productive_h_per_chair, *, rounding = HALF_UP), text_signature = "(chair_min, overhead, chairs, productive_h_per_chair, *, rounding='midpoint-away-from-zero')")]
pub fn overhead_cost(
    chair_min: f64,
    overhead: PyMoney,
    chairs: u32,
    productive_h_per_chair: f64,
    rounding: &str,
) -> PyResult<PyMoney> {
    let overhead = Overhead::new(overhead.0, chairs, hours(productive_h_per_chair)?).map_err(raise)?;
    overhead.cost(minutes(chair_min)?, self::rounding(rounding)?).map(PyMoney).map_err(raise)
}

/// Share an amount out in proportion to weights; the shares always add up to the amount.
///
/// Args:
///     amount: what is shared out.
///     weights: one for each share, nothing or more.
///
/// Raises:
///     FoilworkError: no weights, a negative one, or all of them nothing.
///
/// Examples:
///     >>> from foilwork.money import Money, allocate
///     >>> allocate(Money("10.00", "EUR"), [1, 1, 1])
///     [Money('3.34', 'EUR'), Money('3.33', 'EUR'), Money('3.33', 'EUR')]
#[pyfunction]
pub fn allocate(amount: PyMoney, weights: Sequence<Number>) -> PyResult<Vec<PyMoney>> {
    let weights: Vec<_> = weights.0.into_iter().map(|weight| weight.0).collect();
    let shares = money::allocate(amount.0, &weights).map_err(raise)?;
    Ok(shares.into_iter().map(PyMoney).collect())
}

pub(super) fn labour(
    wage_per_h: PyMoney,
    on_costs_percent: Number,
    paid_h: f64,
    productive_h: f64,
) -> PyResult<Labour> {
    let on_costs = OnCosts::from_percent(on_costs_percent.0).map_err(raise)?;
    Labour::new(wage_per_h.0, on_costs, hours(paid_h)?, hours(productive_h)?).map_err(raise)
}

pub fn measure(value: f64, unit: &str) -> PyResult<Measure> {
    match unit {
        "g" => grams(value).map(Measure::Mass),
        "mL" => Volume::from_ml(value).map(Measure::Volume).map_err(raise),
        "piece" if value >= 0.0 && value <= f64::from(u32::MAX) && value.fract() == 0.0 =>
        {
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a whole number in range")]
            Ok(Measure::Count(value as u32))
        }
        "piece" => Err(FoilworkError::new_err(format!("invalid count (got {value} pieces): must be a whole number"))),
        _ => Err(FoilworkError::new_err(format!("unknown unit {unit:?}: give \"g\", \"mL\" or \"piece\""))),
    }
}

/// The wage for an hour when a payment covers some hours.
///
/// Args:
///     paid: what was paid.
///     worked_h: the hours that it covers.
///
/// Raises:
///     FoilworkError: no hours.
///
/// Examples:
///     >>> from foilwork.money import Money, pay_per_hour
///     >>> pay_per_hour(Money("684", "EUR"), 38)
///     Decimal('18')
#[pyfunction]
pub fn pay_per_hour(paid: PyMoney, worked_h: f64) -> PyResult<Decimal> {
    money::pay_per_hour(paid.0, hours(worked_h)?).map(|price| price.per_unit).map_err(raise)
}
