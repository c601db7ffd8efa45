//! When to order.

use super::list::{json_of, raise_all, rows_of, shop_of};
use crate::{
    answer::answer,
    error::{FoilworkError, raise},
    money::cost::measure,
    plain::data_of,
    source::TracedResult,
};
use foilwork::{
    business::{StockLevel, list},
    quantity::Mass,
    shop::{self, OrderDays},
};
use pyo3::prelude::*;
use rust_decimal::Decimal;

answer! {
    in "foilwork.business";
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

answer! {
    in "foilwork.business";
    /// One product of the shop: how fast it goes, and whether to order it.
    ProductOrder {
        /// The product, by its name in the shop.
        product: String,
        /// Used on an average day, waste included.
        daily_use_g: f64,
        /// On the shelf; ``None`` where the shop does not say.
        in_hand_g: Option<f64>,
        /// What a pack holds; ``None`` where the shop has no pack with a price.
        pack_g: Option<f64>,
        /// How many days the stock in hand lasts; ``None`` where it is not known or nothing is used.
        stock_days: Option<Decimal>,
        /// Order at this stock or below, in g; ``None`` where stock or pack is not known.
        reorder_point: Option<Decimal>,
        /// Whether that is the case now.
        due: Option<bool>,
        /// How many whole packs to order; 0 while nothing is due.
        packs: Option<i64>,
    }
}

impl From<shop::ProductOrder> for ProductOrder {
    fn from(order: shop::ProductOrder) -> Self {
        Self {
            product: order.product,
            daily_use_g: order.daily_use.g(),
            in_hand_g: order.in_hand.map(Mass::g),
            pack_g: order.pack.map(Mass::g),
            stock_days: order.stock_days,
            reorder_point: order.reorder.as_ref().map(|reorder| reorder.reorder_point),
            due: order.reorder.as_ref().map(|reorder| reorder.due),
            packs: order.reorder.as_ref().map(|reorder| reorder.packs),
        }
    }
}

/// What to order of the products that a list of services takes.
///
/// What is ordered and not yet delivered the shop does not know.
///
/// Args:
///     services: as in :func:`price_services`; ``product`` and ``developer`` name products of the shop, ``sold`` counts.
///     shop: the shop as a mapping of the shape of a shop file, with ``in_hand_g``, ``pack_g`` and ``price`` of its products.
///     sold_in_days: the days in which the list was sold.
///     lead_days: days from order to delivery.
///     cover_days: days a delivery should last.
///     reserve_days: of how many days' use is kept for bad days.
///
/// Returns:
///     A ``ProductOrder`` for each product that the list names, in the order of first mention.
///
/// Raises:
///     FoilworkError: everything that is wrong with list or shop; no days at all.
///
/// Examples:
///     >>> from foilwork.business import reorder_list
///     >>> powder = {"name": "powder", "ratio": "1:2", "in_hand_g": 900, "pack_g": 500, "price": "31.50"}
///     >>> foils = {
///     ...     "service": "foils", "product": "powder", "product_g": 32, "product_waste_g": 4, "hands_on_min": 65,
///     ...     "chair_min": 120, "sold": 100,
///     ... }
///     >>> shop = {"currency": "EUR", "lightener": [powder]}
///     >>> order = reorder_list([foils], shop, sold_in_days=30, lead_days=5, cover_days=14, reserve_days=3)[0]
///     >>> order.daily_use_g, order.due, order.packs
///     (120.0, True, 4)
#[pyfunction]
#[pyo3(signature = (services, shop, *, sold_in_days, lead_days, cover_days, reserve_days = 0))]
pub fn reorder_list(
    services: &Bound<'_, PyAny>,
    shop: &Bound<'_, PyAny>,
    sold_in_days: u32,
    lead_days: u32,
    cover_days: u32,
    reserve_days: u32,
) -> PyResult<Vec<ProductOrder>> {
    let rows = rows_of(services)?;
    let shop = shop_of(&data_of(shop)?)?;
    let no_price = "currency: is missing: a list names products by their packs and prices";
    let packs = shop.packs().ok_or_else(|| FoilworkError::new_err(no_price))?;
    let list = list::parse_json(&json_of(rows), packs).map_err(raise_all)?;
    let days = OrderDays { sold_in: sold_in_days, lead: lead_days, cover: cover_days, reserve: reserve_days };
    let orders = shop.orders(&list::taken(&list).map_err(raise)?, days).map_err(raise)?;
    Ok(orders.into_iter().map(Into::into).collect())
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
    let stock = stock([on_hand, on_order, daily_use, reserve], unit)?;
    let reorder = stock.reorder(lead_days, cover_days, measure(pack, unit)?).map_err(raise)?;
    Ok(Reorder {
        reorder_point: reorder.reorder_point,
        due: reorder.due,
        packs: reorder.packs,
        stock_days: stock.days().map_err(raise)?,
    })
}

fn stock([on_hand, on_order, daily_use, reserve]: [f64; 4], unit: &str) -> PyResult<StockLevel> {
    Ok(StockLevel {
        on_hand: measure(on_hand, unit)?,
        on_order: measure(on_order, unit)?,
        daily_use: measure(daily_use, unit)?,
        reserve: measure(reserve, unit)?,
    })
}

/// How the point at which to order a product, the packs and the days that it lasts come about.
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
/// Returns:
///     A :class:`foilwork.source.TracedResult` for each.
///
/// Raises:
///     FoilworkError: as :func:`reorder`.
///
/// Examples:
///     >>> from foilwork.business import trace_reorder
///     >>> trace_reorder(900, 120, 500, unit="g", lead_days=5, cover_days=14, reserve=300)[0].worked
///     '120 x 5 + 300'
#[pyfunction]
#[pyo3(signature = (on_hand, daily_use, pack, *, unit, lead_days, cover_days, reserve = 0.0, on_order = 0.0))]
pub fn trace_reorder(
    on_hand: f64,
    daily_use: f64,
    pack: f64,
    unit: &str,
    lead_days: u32,
    cover_days: u32,
    reserve: f64,
    on_order: f64,
) -> PyResult<Vec<TracedResult>> {
    let stock = stock([on_hand, on_order, daily_use, reserve], unit)?;
    let found = stock.trail(lead_days, cover_days, measure(pack, unit)?).map_err(raise)?;
    Ok(found.into_iter().map(Into::into).collect())
}
