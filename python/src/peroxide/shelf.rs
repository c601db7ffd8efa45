//! Blends from a shelf of bottles.

use super::dilution::RoundedBlend;
use crate::{
    answer::{Reduced, answer, fields, hash, to_dict},
    bounds::{Estimate, Stated},
    error::raise,
    sequence::Sequence,
};
use foilwork::{
    peroxide::{self, Objective, Shelf},
    quantity::{Mass, MassFraction, PricePerKg},
    source::Interval,
};
use pyo3::{prelude::*, types::PyDict};

/// One bottle on the shelf.
///
/// Args:
///     name: what you call it; no two bottles of a blend share a name.
///     strength_ww_percent: its strength in % w/w, a number or ``Bounds``.
///     in_hand_g: how much is in it, in g; None when there is always enough, as of tap water.
///     price_per_kg: what a kilogram costs, in the one currency of all prices; None counts as free.
///
/// Raises:
///     FoilworkError: a strength, amount or price out of range.
///
/// Examples:
///     >>> from foilwork.peroxide import Stock
///     >>> Stock("12 %", 12, in_hand_g=500, price_per_kg=8.5)
///     Stock('12 %', 12.0, in_hand_g=500.0, price_per_kg=8.5)
#[pyclass(frozen, eq, from_py_object, module = "foilwork.peroxide")]
#[derive(Clone, PartialEq)]
pub struct Stock(peroxide::Stock);

const STOCK: &[&str] = &["name", "strength_ww_percent", "in_hand_g", "price_per_kg"];

#[pymethods]
impl Stock {
    #[new]
    #[pyo3(signature = (name, strength_ww_percent, in_hand_g = None, price_per_kg = None))]
    fn new(
        name: String,
        strength_ww_percent: Stated<MassFraction>,
        in_hand_g: Option<f64>,
        price_per_kg: Option<f64>,
    ) -> PyResult<Self> {
        let in_hand = in_hand_g.map(Mass::from_g).transpose().map_err(raise)?;
        let price = price_per_kg.map(PricePerKg::from_per_kg).transpose().map_err(raise)?;
        Ok(Self(peroxide::Stock { in_hand, price, ..peroxide::Stock::new(name, strength_ww_percent.0) }))
    }

    /// What you call it.
    #[getter]
    fn name(&self) -> &str {
        &self.0.name
    }

    /// Its strength in % w/w, with its bounds.
    #[getter]
    fn strength_ww_percent(&self) -> Estimate<f64> {
        self.0.strength.into()
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

    /// The fields as a dict, bounds as a dict of ``low``, ``best`` and ``high``.
    fn to_dict<'py>(slf: &Bound<'py, Self>) -> PyResult<Bound<'py, PyDict>> {
        to_dict(slf, STOCK)
    }

    fn __hash__(slf: &Bound<'_, Self>) -> PyResult<isize> {
        hash(slf, STOCK)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<Reduced<'py>> {
        Ok((slf.get_type().into_any(), fields(slf, STOCK)?))
    }

    fn __repr__(&self) -> String {
        let percent = self.0.strength.to_array().map(MassFraction::ww_percent);
        let strength = match percent {
            [_, best, _] if self.0.strength.is_exact() => format!("{best:?}"),
            [low, best, high] => format!("({low:?}, {best:?}, {high:?})"),
        };
        let mut text = format!("Stock('{}', {strength}", self.name().escape_debug());
        for (name, value) in [("in_hand_g", self.in_hand_g()), ("price_per_kg", self.price_per_kg())] {
            if let Some(value) = value {
                text += &format!(", {name}={value:?}");
            }
        }
        text + ")"
    }
}

answer! {
    in "foilwork.peroxide";
    /// What to take from one bottle.
    Portion {
        /// The bottle.
        stock: Stock,
        /// How much of it, in g. Nothing is rounded.
        mass_g: f64,
    }
}

answer! {
    in "foilwork.peroxide";
    /// A blend from the shelf; made by ``blend_shelf``.
    ShelfBlend {
        /// What to take from each bottle used, in the order of the shelf.
        portions: Vec<Portion>,
        /// Everything together, in g.
        total_g: f64,
        /// The strength of the whole in % w/w, with the bounds of the bottles.
        strength_ww_percent: Estimate<f64>,
        /// What it costs, in the currency of the prices.
        cost: f64,
        /// What stays in the bottles used, in g; bottles without an amount in hand do not count.
        leftover_g: f64,
    }
    impl {
        /// The blend as a scale shows it; no bottle is asked for more than is in hand.
        ///
        /// Args:
        ///     division_g: what the last figure of the scale counts, in g.
        ///
        /// Returns:
        ///     The masses to weigh in the order of the portions, their sum, and their true strength.
        ///
        /// Raises:
        ///     FoilworkError: a division of zero or coarser than the blend.
        fn round_to_scale(&self, division_g: f64) -> PyResult<RoundedBlend> {
            let portion = |portion: &Portion| {
                Ok(peroxide::Portion {
                    stock: portion.stock.0.clone(),
                    mass: Mass::from_g(portion.mass_g).map_err(raise)?,
                })
            };
            let portions = self.portions.iter().map(portion).collect::<PyResult<_>>()?;
            let division = Mass::from_g(division_g).map_err(raise)?;
            Ok(peroxide::ShelfBlend { portions }.round_to_scale(division).map_err(raise)?.into())
        }
    }
}

/// Blend any number of stocks to a strength and a total.
///
/// Args:
///     stocks: the bottles, ``Stock`` objects with different names.
///     target_ww_percent: strength wanted in % w/w.
///     total_g: how much is wanted, in g.
///     objective: ``"least-cost"``, ``"fewest-bottles"`` (then least cost) or ``"least-leftover"`` in the bottles used
///         (then fewest bottles, then least cost). The last two look at every combination, of at most 16 bottles.
///
/// Returns:
///     The blend, with the bottles used.
///
/// Raises:
///     FoilworkError: nothing on the shelf, two bottles of one name, or a target or total out of reach: the text says what
///         is reachable.
///
/// Source:
///     Conservation of mass and of peroxide; least cost is a linear programme solved exactly by its dual.
///
/// Examples:
///     >>> from foilwork.peroxide import Stock, blend_shelf
///     >>> shelf = [Stock("strong", 12, in_hand_g=30, price_per_kg=9), Stock("weak", 3, price_per_kg=5)]
///     >>> [(portion.stock.name, portion.mass_g) for portion in blend_shelf(shelf, 6, 60).portions]
///     [('strong', 20.0), ('weak', 40.0)]
#[pyfunction]
#[pyo3(signature = (stocks, target_ww_percent, total_g, *, objective = "least-cost"))]
pub fn blend_shelf(
    stocks: Sequence<Stock>,
    target_ww_percent: f64,
    total_g: f64,
    objective: &str,
) -> PyResult<ShelfBlend> {
    let stocks = stocks.0;
    let objective: Objective = objective.parse().map_err(raise)?;
    let shelf = Shelf::new(stocks.into_iter().map(|stock| stock.0).collect()).map_err(raise)?;
    let target = MassFraction::from_ww_percent(target_ww_percent).map_err(raise)?;
    let total = Mass::from_g(total_g).map_err(raise)?;
    let blend = peroxide::blend_shelf(&shelf, target, total, objective).map_err(raise)?;
    let portion =
        |portion: &peroxide::Portion| Portion { stock: Stock(portion.stock.clone()), mass_g: portion.mass.g() };
    Ok(ShelfBlend {
        portions: blend.portions.iter().map(portion).collect(),
        total_g: blend.total().g(),
        strength_ww_percent: blend.strength().unwrap_or(Interval::exact(target)).into(),
        cost: blend.cost(),
        leftover_g: blend.leftover().g(),
    })
}
