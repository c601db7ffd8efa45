//! Blends from a shelf of bottles.

use crate::error::raise;
use foilwork::{
    peroxide::{self, Objective, Shelf},
    quantity::{Mass, MassFraction, PricePerKg},
};
use pyo3::prelude::*;

/// One bottle on the shelf.
///
/// Args:
///     name: What you call it; no two bottles of a blend share a name.
///     strength_ww: Its strength in % w/w.
///     in_hand_g: How much is in it, in g; None when there is always enough, as of tap water.
///     price_per_kg: What a kilogram costs, in the one currency of all prices; None counts as free.
///
/// Raises:
///     FoilworkError: A strength, amount or price out of range.
///
/// >>> from foilwork.peroxide import Stock
/// >>> Stock("12 %", 12, in_hand_g=500, price_per_kg=8.5)
/// Stock('12 %', 12.0, in_hand_g=500.0, price_per_kg=8.5)
#[pyclass(frozen, eq, from_py_object)]
#[derive(Clone, PartialEq)]
pub struct Stock(peroxide::Stock);

#[pymethods]
impl Stock {
    #[new]
    #[pyo3(signature = (name, strength_ww, *, in_hand_g = None, price_per_kg = None))]
    fn new(name: String, strength_ww: f64, in_hand_g: Option<f64>, price_per_kg: Option<f64>) -> PyResult<Self> {
        let strength = MassFraction::from_percent_ww(strength_ww).map_err(raise)?;
        let in_hand = in_hand_g.map(Mass::from_g).transpose().map_err(raise)?;
        let price = price_per_kg.map(PricePerKg::from_per_kg).transpose().map_err(raise)?;
        Ok(Self(peroxide::Stock { in_hand, price, ..peroxide::Stock::new(name, strength) }))
    }

    /// What you call it.
    #[getter]
    fn name(&self) -> &str {
        &self.0.name
    }

    /// Its strength in % w/w.
    #[getter]
    fn strength_ww(&self) -> f64 {
        self.0.strength.best().percent_ww()
    }

    /// How much is in it, in g, or None.
    #[getter]
    fn in_hand_g(&self) -> Option<f64> {
        self.0.in_hand.map(Mass::g)
    }

    /// What a kilogram costs, or None.
    #[getter]
    fn price_per_kg(&self) -> Option<f64> {
        self.0.price.map(PricePerKg::per_kg)
    }

    fn __repr__(&self) -> String {
        let mut text = format!("Stock('{}', {:?}", self.name().escape_debug(), self.strength_ww());
        for (name, value) in [("in_hand_g", self.in_hand_g()), ("price_per_kg", self.price_per_kg())] {
            if let Some(value) = value {
                text += &format!(", {name}={value:?}");
            }
        }
        text + ")"
    }
}

/// Names and masses to weigh, their sum, and their strength.
type Weighed = (Vec<(String, f64)>, f64, f64);

/// A blend from the shelf; made by ``blend_shelf``.
#[pyclass(frozen)]
pub struct ShelfBlend(peroxide::ShelfBlend);

#[pymethods]
impl ShelfBlend {
    /// What to take: ``(name, mass_g)`` for each bottle used, in the order of the shelf. Nothing is rounded.
    #[getter]
    fn portions(&self) -> Vec<(String, f64)> {
        self.0.portions.iter().map(|portion| (portion.stock.name.clone(), portion.mass.g())).collect()
    }

    /// Everything together, in g.
    #[getter]
    fn total_g(&self) -> f64 {
        self.0.total().g()
    }

    /// What it costs, in the currency of the prices.
    #[getter]
    fn cost(&self) -> f64 {
        self.0.cost()
    }

    /// What stays in the bottles used, in g; bottles without an amount in hand do not count.
    #[getter]
    fn leftover_g(&self) -> f64 {
        self.0.leftover().g()
    }

    /// The blend as a scale shows it.
    ///
    /// Args:
    ///     division_g: What the last figure of the scale counts, in g.
    ///
    /// Returns:
    ///     ``(portions, total_g, strength_ww)``: ``(name, mass_g)`` to weigh, their sum, and their true strength.
    ///
    /// Raises:
    ///     FoilworkError: A division of zero or coarser than the blend.
    fn round_to_scale(&self, division_g: f64) -> PyResult<Weighed> {
        let rounded = self.0.round_to_scale(Mass::from_g(division_g).map_err(raise)?).map_err(raise)?;
        let names = self.0.portions.iter().map(|portion| portion.stock.name.clone());
        let portions = names.zip(rounded.masses.iter().map(|mass| mass.g())).collect();
        Ok((portions, rounded.total.g(), rounded.strength.best().percent_ww()))
    }

    fn __repr__(&self) -> String {
        let portions: Vec<String> =
            self.0.portions.iter().map(|portion| format!("{:.2} of {}", portion.mass, portion.stock.name)).collect();
        format!("<blend of {}>", portions.join(" + "))
    }
}

/// Blend any number of stocks to a strength and a total.
///
/// Args:
///     stocks: The bottles, ``Stock`` objects with different names.
///     target_ww: Strength wanted in % w/w.
///     total_g: How much is wanted, in g.
///     objective: ``"least-cost"``, ``"fewest-bottles"`` (then least cost) or ``"least-leftover"`` in the bottles used
///         (then fewest bottles, then least cost). The last two look at every combination, of at most 16 bottles.
///
/// Returns:
///     ``ShelfBlend``.
///
/// Raises:
///     FoilworkError: Nothing on the shelf, two bottles of one name, or a target or total out of reach: the text says what
///         is reachable.
///
/// Source:
///     Conservation of mass and of peroxide; least cost is a linear programme solved exactly by its dual.
///
/// >>> from foilwork.peroxide import Stock, blend_shelf
/// >>> shelf = [Stock("strong", 12, in_hand_g=30, price_per_kg=9), Stock("weak", 3, price_per_kg=5)]
/// >>> blend_shelf(shelf, 6, 60)
/// <blend of 20.00 g of strong + 40.00 g of weak>
#[pyfunction]
#[pyo3(signature = (stocks, target_ww, total_g, *, objective = "least-cost"))]
pub fn blend_shelf(stocks: Vec<Stock>, target_ww: f64, total_g: f64, objective: &str) -> PyResult<ShelfBlend> {
    let objective: Objective = objective.parse().map_err(raise)?;
    let shelf = Shelf::new(stocks.into_iter().map(|stock| stock.0).collect()).map_err(raise)?;
    let target = MassFraction::from_percent_ww(target_ww).map_err(raise)?;
    let total = Mass::from_g(total_g).map_err(raise)?;
    Ok(ShelfBlend(peroxide::blend_shelf(&shelf, target, total, objective).map_err(raise)?))
}
