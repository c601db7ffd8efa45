//! When to order.

use crate::{answer::answer, error::raise, money::cost::measure};
use foilwork::business::StockLevel;
use pyo3::prelude::*;
use rust_decimal::Decimal;

answer! {
    /// When to order, and how much.
    Reorder {
        /// Order at this stock or below, in the unit of the stock.
        reorder_point: Decimal,
        /// Whether that is the case now.
        due: bool,
        /// How many whole packs to order; 0 while nothing is due.
        packs: i64,
        /// How many days the stock on hand lasts; ``None`` when nothing is used.
        stock_days: Option<Decimal>,
    }
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
///     >>> from foilwork.business import reorder
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
