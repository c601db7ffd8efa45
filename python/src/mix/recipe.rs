//! Wrappers of `foilwork::mix`: recipes, additives, units, grey, the mixing card.

use super::bowl::{Ratio, mass};
use crate::{bounds::Stated, error::raise, plain::plain};
use foilwork::{
    mix::{self, CardRequest, Dose, RecipeAmount, Unit},
    quantity::{Density, Duration, MassFraction, Share},
    source::Sourced,
};
use pyo3::prelude::*;
use rust_decimal::Decimal;
use std::collections::HashMap;

fn unit(symbol: &str) -> PyResult<Unit> {
    symbol.parse().map_err(raise)
}

fn amount(value: Decimal, symbol: &str) -> PyResult<RecipeAmount> {
    Ok(RecipeAmount { value, unit: unit(symbol)? })
}

fn density(g_per_ml: f64) -> PyResult<Sourced<Density>> {
    Density::from_g_per_ml(g_per_ml).map(Sourced::stated).map_err(raise)
}

/// An additive and its dose; take it from the additive's own leaflet. It holds no peroxide and dilutes the bowl.
///
/// Made by :meth:`per_bowl`, :meth:`of_bowl` or :meth:`of_product`.
#[pyclass(frozen, from_py_object, module = "foilwork.mix")]
#[derive(Clone)]
pub struct Additive(pub mix::Addition);

#[pymethods]
impl Additive {
    /// So many g in every bowl, whatever its size.
    #[staticmethod]
    fn per_bowl(product: String, mass_g: f64) -> PyResult<Self> {
        Ok(Self(mix::Addition { product, dose: Dose::PerBowl(mass(mass_g)?) }))
    }

    /// A share of the rest of the bowl: 2 % is 2 g for every 100 g of it.
    #[staticmethod]
    fn of_bowl(product: String, share_percent: f64) -> PyResult<Self> {
        let share = Share::from_percent(share_percent).map_err(raise)?;
        Ok(Self(mix::Addition { product, dose: Dose::OfBowl(share) }))
    }

    /// A share of one product in the bowl: 2 % is 2 g for every 100 g of ``other``.
    #[staticmethod]
    fn of_product(product: String, other: String, share_percent: f64) -> PyResult<Self> {
        let share = Share::from_percent(share_percent).map_err(raise)?;
        Ok(Self(mix::Addition { product, dose: Dose::OfProduct(other, share) }))
    }
}

/// A written recipe, kept in exact decimals; it prints back as it was read.
///
/// Args:
///     text: parts joined by `` + ``, each a number, a unit (``g``, ``mL``, ``US fl oz``, ``UK fl oz``) and a name.
///
/// Raises:
///     FoilworkError: with the position of the character that cannot be read.
///
/// Examples:
///     >>> from decimal import Decimal
///     >>> from foilwork.mix import Recipe
///     >>> recipe = Recipe("30 g 7.1 + 15 g 8.3 + 67.5 g 6%")
///     >>> str(recipe.to_total(Decimal("56.25")))
///     '15 g 7.1 + 7.5 g 8.3 + 33.75 g 6%'
#[pyclass(frozen, eq, module = "foilwork.mix")]
#[derive(PartialEq)]
pub struct Recipe(pub mix::Recipe);

#[pymethods]
impl Recipe {
    #[new]
    fn new(text: &str) -> PyResult<Self> {
        text.parse().map(Self).map_err(raise)
    }

    /// The parts as (value, unit, product).
    #[getter]
    fn parts(&self) -> Vec<(Decimal, &'static str, String)> {
        let part = |p: &mix::Part| (p.amount.value, p.amount.unit.words(), p.product.clone());
        self.0.parts().iter().map(part).collect()
    }

    /// The masses in g; every part must be in g.
    fn masses_g(&self) -> PyResult<Vec<f64>> {
        Ok(self.0.masses().map_err(raise)?.iter().map(|m| m.g()).collect())
    }

    /// The sum of all parts, in their one unit.
    fn total(&self) -> PyResult<Decimal> {
        Ok(self.0.total().map_err(raise)?.value)
    }

    /// The parts as a ratio.
    fn ratio(&self) -> PyResult<Ratio> {
        self.0.ratio().map(Ratio).map_err(raise)
    }

    /// Every amount times a factor.
    fn times(&self, factor: Decimal) -> PyResult<Self> {
        self.0.times(factor).map(Self).map_err(raise)
    }

    /// The recipe with another total.
    #[pyo3(signature = (total, unit = "g"))]
    fn to_total(&self, total: Decimal, unit: &str) -> PyResult<Self> {
        self.0.to_total(amount(total, unit)?).map(Self).map_err(raise)
    }

    /// The recipe in which one product has a given amount.
    #[pyo3(signature = (product, value, unit = "g"))]
    fn to_part(&self, product: &str, value: Decimal, unit: &str) -> PyResult<Self> {
        self.0.to_part(product, amount(value, unit)?).map(Self).map_err(raise)
    }

    /// The recipe that uses up whole packs of one product.
    #[pyo3(signature = (product, pack, packs, unit = "g"))]
    fn to_packs(&self, product: &str, pack: Decimal, packs: u32, unit: &str) -> PyResult<Self> {
        self.0.to_packs(product, amount(pack, unit)?, packs).map(Self).map_err(raise)
    }

    /// Whole packs of one product that this recipe needs: always rounded up.
    #[pyo3(signature = (product, pack, unit = "g"))]
    fn packs_needed(&self, product: &str, pack: Decimal, unit: &str) -> PyResult<u64> {
        self.0.packs_needed(product, amount(pack, unit)?).map_err(raise)
    }

    /// Both recipes in one bowl; a product of both is named once.
    fn combined(&self, other: &Self) -> PyResult<Self> {
        self.0.combined(&other.0).map(Self).map_err(raise)
    }

    /// The recipe divided over bowls in a ratio.
    fn split(&self, bowls: &Ratio) -> PyResult<Vec<Self>> {
        Ok(self.0.split(&bowls.0).map_err(raise)?.into_iter().map(Self).collect())
    }

    /// The recipe with every volume turned into g by the density of its product in g/mL.
    fn in_grams(&self, densities_g_per_ml: HashMap<String, f64>) -> PyResult<Self> {
        let known = densities_g_per_ml.into_iter().map(|(name, value)| Ok((name, density(value)?)));
        let known: HashMap<String, Sourced<Density>> = known.collect::<PyResult<_>>()?;
        self.0.in_grams(|product| known.get(product).copied()).map(Self).map_err(raise)
    }

    /// The recipe with additives on top of it.
    fn with_additives(&self, additives: Vec<Additive>) -> PyResult<Self> {
        let additives: Vec<mix::Addition> = additives.into_iter().map(|a| a.0).collect();
        self.0.with_additives(&additives).map(Self).map_err(raise)
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> String {
        format!("Recipe({:?})", self.0.to_string())
    }
}

/// Turn an amount into another unit: ``g``, ``mL``, ``US fl oz``, ``UK fl oz``.
///
/// Between mass and volume a density is needed.
///
/// Args:
///     value: the amount, exact as a ``Decimal``.
///     from_unit: its unit.
///     to_unit: the unit wanted.
///     density_g_per_ml: density of the product in g/mL.
///
/// Raises:
///     FoilworkError: for an unknown unit, or between mass and volume without a density.
///
/// Examples:
///     >>> from decimal import Decimal
///     >>> from foilwork.mix import convert_amount
///     >>> convert_amount(Decimal(2), "US fl oz", "mL")
///     Decimal('59.147059125')
///
/// Source:
///     NIST Handbook 44, Appendix C; Weights and Measures Act 1985 (both from memory, checked against pint).
#[pyfunction]
#[pyo3(signature = (value, from_unit, to_unit, *, density_g_per_ml = None))]
pub fn convert_amount(
    value: Decimal,
    from_unit: &str,
    to_unit: &str,
    density_g_per_ml: Option<f64>,
) -> PyResult<Decimal> {
    let density = density_g_per_ml.map(density).transpose()?;
    Ok(amount(value, from_unit)?.convert(unit(to_unit)?, density).map_err(raise)?.amount.value)
}

/// How much natural shade the trade adds to cover a share of white hair: a convention, with its range.
///
/// Args:
///     white_percent: share of white hair in percent.
///
/// Returns:
///     Least, usual and most share of natural shade among the shades of the formula, in percent.
///
/// Examples:
///     >>> from foilwork.mix import natural_share
///     >>> natural_share(50)
///     (33.0, 50.0, 67.0)
///
/// Source:
///     Common practice; half at half is printed in a trade article.
#[pyfunction]
pub fn natural_share(white_percent: f64) -> PyResult<(f64, f64, f64)> {
    let share = mix::natural_share(Share::from_percent(white_percent).map_err(raise)?).share;
    Ok((share.low().percent(), share.best().percent(), share.high().percent()))
}

/// The card to lay beside a bowl, as plain data: who, what, grams, strength as applied, time mixed, use-by.
///
/// Args:
///     who: guest or column.
///     what: what the bowl is for.
///     recipe: the recipe of this bowl, in g.
///     strengths_ww_percent: hydrogen peroxide in each part in % w/w, as a number or (low, best, high); None where not known.
///     division_g: division of the scale in g.
///     mixed_at: date and time on the salon clock, for example ``"2026-11-25T10:05"``.
///     working_life_min: how long it may be used, in min.
///     remarks: lines to add, for example an exceeded limit.
///
/// Returns:
///     A dict; its ``"text"`` is the card to print.
///
/// Raises:
///     FoilworkError: when the recipe is not in g, cannot be weighed on the scale, or has no working life.
///
/// Examples:
///     >>> from foilwork.mix import Recipe, mixing_card
///     >>> card = mixing_card("chair 2", "roots", Recipe("30 g 7.1 + 45 g 6%"), [0, 6], 1, "2026-11-25T10:05", 40)
///     >>> card["use_by"], card["strength_as_applied_ww_percent"]["best"]
///     ('2026-11-25 10:45', 3.6)
#[pyfunction]
#[pyo3(signature = (who, what, recipe, strengths_ww_percent, division_g, mixed_at, working_life_min, *, remarks = vec![]), text_signature = "(who, what, recipe, strengths_ww_percent, division_g, mixed_at, working_life_min, *, remarks=())")]
#[expect(clippy::too_many_arguments, reason = "arguments of one Python function")]
pub fn mixing_card<'py>(
    py: Python<'py>,
    who: &str,
    what: &str,
    recipe: &Recipe,
    strengths_ww_percent: Vec<Option<Stated<MassFraction>>>,
    division_g: f64,
    mixed_at: &str,
    working_life_min: f64,
    remarks: Vec<String>,
) -> PyResult<Bound<'py, PyAny>> {
    let strengths: Vec<_> = strengths_ww_percent.into_iter().map(|s| s.map(|s| s.0)).collect();
    let request = CardRequest {
        who,
        what,
        recipe: &recipe.0,
        strengths: &strengths,
        division: mass(division_g)?,
        mixed_at: mixed_at.parse().map_err(raise)?,
        working_life: Duration::from_min(working_life_min).map_err(raise)?,
    };
    let card = mix::Card::new(&request).map_err(raise)?;
    let card = remarks.into_iter().fold(card, mix::Card::with_remark);
    let data = plain(py, &card)?;
    data.set_item("text", card.to_string())?;
    Ok(data)
}
