//! Wrappers of `foilwork::mix`: recipes, additives, units.

use super::{ratio::Ratio, weighing::mass};
use crate::{
    answer::answer,
    error::{FoilworkError, raise},
    exact::Number,
    sequence::Sequence,
    source::TracedResult,
};
use foilwork::{
    mix::{self, Dose, RecipeAmount, Unit},
    quantity::{Density, Share},
    source::Sourced,
};
use pyo3::prelude::*;
use rust_decimal::Decimal;
use std::{
    collections::HashMap,
    hash::{DefaultHasher, Hash, Hasher},
};

fn unit(symbol: &str) -> PyResult<Unit> {
    symbol.parse().map_err(raise)
}

fn amount(value: Number, symbol: &str) -> PyResult<RecipeAmount> {
    Ok(RecipeAmount { value: value.0, unit: unit(symbol)? })
}

fn density(g_per_ml: f64) -> PyResult<Sourced<Density>> {
    Density::from_g_per_ml(g_per_ml).map(Sourced::stated).map_err(raise)
}

answer! {
    in "foilwork.mix";
    /// An additive and its dose; take it from the additive's own leaflet. It holds no peroxide and dilutes the bowl.
    ///
    /// Made by :meth:`per_bowl`, :meth:`of_bowl` or :meth:`of_product`.
    ///
    /// Examples:
    ///     >>> from foilwork.mix import Addition, Recipe
    ///     >>> doses = [Addition.per_bowl("bond builder", 2), Addition.of_product("thickener", "lightener", 10)]
    ///     >>> str(Recipe("20 g lightener + 40 g 9%").with_additives(doses))
    ///     '20 g lightener + 40 g 9% + 2 g bond builder + 2 g thickener'
    Addition {
        /// What is added.
        product: String,
        /// Its mass in every bowl, in g; None for a share.
        mass_g: Option<f64>,
        /// Its share of the rest of the bowl, or of ``other``, in percent; None for a fixed mass.
        share_percent: Option<f64>,
        /// The product that the share counts of; None for the rest of the bowl.
        other: Option<String>,
    }
    impl {
        /// So many g in every bowl, whatever its size.
        ///
        /// Args:
        ///     product: what is added.
        ///     mass_g: its mass in every bowl, in g.
        ///
        /// Returns:
        ///     The additive.
        ///
        /// Raises:
        ///     FoilworkError: a mass out of range.
        #[staticmethod]
        fn per_bowl(product: String, mass_g: f64) -> PyResult<Self> {
            Ok(Self { product, mass_g: Some(mass(mass_g)?.g()), share_percent: None, other: None })
        }

        /// A share of the rest of the bowl: 2 % is 2 g for every 100 g of it.
        ///
        /// Args:
        ///     product: what is added.
        ///     share_percent: its share, from 0 to 100 %.
        ///
        /// Returns:
        ///     The additive.
        ///
        /// Raises:
        ///     FoilworkError: a share out of range.
        #[staticmethod]
        fn of_bowl(product: String, share_percent: f64) -> PyResult<Self> {
            let share = share(share_percent)?;
            Ok(Self { product, mass_g: None, share_percent: Some(share.percent()), other: None })
        }

        /// A share of one product in the bowl: 2 % is 2 g for every 100 g of ``other``.
        ///
        /// Args:
        ///     product: what is added.
        ///     other: the product that the share counts of.
        ///     share_percent: its share, from 0 to 100 %.
        ///
        /// Returns:
        ///     The additive.
        ///
        /// Raises:
        ///     FoilworkError: a share out of range.
        #[staticmethod]
        fn of_product(product: String, other: String, share_percent: f64) -> PyResult<Self> {
            let share = share(share_percent)?;
            Ok(Self { product, mass_g: None, share_percent: Some(share.percent()), other: Some(other) })
        }
    }
}

fn share(percent: f64) -> PyResult<Share> {
    Share::from_percent(percent).map_err(raise)
}

/// Additives as the core takes them.
pub fn additions(additives: &[Addition]) -> PyResult<Vec<mix::Addition>> {
    let addition = |additive: &Addition| {
        let dose = match (additive.mass_g, additive.share_percent, additive.other.clone()) {
            (Some(grams), None, None) => Dose::PerBowl(mass(grams)?),
            (None, Some(percent), None) => Dose::OfBowl(share(percent)?),
            (None, Some(percent), Some(other)) => Dose::OfProduct(other, share(percent)?),
            _ => return Err(FoilworkError::new_err("an additive has a mass or a share")),
        };
        Ok(mix::Addition { product: additive.product.clone(), dose })
    };
    additives.iter().map(addition).collect()
}

answer! {
    in "foilwork.mix";
    /// One part of a recipe.
    Part {
        /// How much of it, as written.
        value: Decimal,
        /// The unit of that.
        unit: String,
        /// The product.
        product: String,
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
///     >>> recipe = Recipe("30 g J7-mist + 15 g J8-oat + 67.5 g 6%")
///     >>> str(recipe.to_total(Decimal("56.25")))
///     '15 g J7-mist + 7.5 g J8-oat + 33.75 g 6%'
///     >>> recipe.parts[1]
///     Part(value=Decimal('15'), unit='g', product='J8-oat')
#[pyclass(frozen, eq, module = "foilwork.mix")]
#[derive(PartialEq)]
pub struct Recipe(pub mix::Recipe);

#[pymethods]
impl Recipe {
    #[new]
    fn new(text: &str) -> PyResult<Self> {
        text.parse().map(Self).map_err(raise)
    }

    /// The parts.
    #[getter]
    fn parts(&self) -> Vec<Part> {
        let part = |p: &mix::Part| Part {
            value: p.amount.value,
            unit: p.amount.unit.words().to_owned(),
            product: p.product.clone(),
        };
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

    /// How the parts of this recipe, scaled to another size, come about.
    ///
    /// Args:
    ///     scaled: the same recipe at its other size.
    ///
    /// Returns:
    ///     A :class:`foilwork.source.TracedResult` for each part.
    ///
    /// Examples:
    ///     >>> from foilwork.mix import Recipe
    ///     >>> recipe = Recipe("30 g mist + 45 g 6%")
    ///     >>> [one.value for one in recipe.trail_to(recipe.times(2))]
    ///     ['60', '90']
    fn trail_to(&self, scaled: PyRef<'_, Self>) -> PyResult<Vec<TracedResult>> {
        Ok(self.0.trail_to(&scaled.0).map_err(raise)?.into_iter().map(Into::into).collect())
    }

    /// Every amount times a factor.
    fn times(&self, factor: Number) -> PyResult<Self> {
        self.0.times(factor.0).map(Self).map_err(raise)
    }

    /// The recipe with another total.
    #[pyo3(signature = (total, unit = "g"))]
    fn to_total(&self, total: Number, unit: &str) -> PyResult<Self> {
        self.0.to_total(amount(total, unit)?).map(Self).map_err(raise)
    }

    /// The recipe in which one product has a given amount.
    #[pyo3(signature = (product, value, unit = "g"))]
    fn to_part(&self, product: &str, value: Number, unit: &str) -> PyResult<Self> {
        self.0.to_part(product, amount(value, unit)?).map(Self).map_err(raise)
    }

    /// The recipe that uses up whole packs of one product.
    #[pyo3(signature = (product, pack, packs, unit = "g"))]
    fn to_packs(&self, product: &str, pack: Number, packs: u32, unit: &str) -> PyResult<Self> {
        self.0.to_packs(product, amount(pack, unit)?, packs).map(Self).map_err(raise)
    }

    /// Whole packs of one product that this recipe needs: always rounded up.
    #[pyo3(signature = (product, pack, unit = "g"))]
    fn packs_needed(&self, product: &str, pack: Number, unit: &str) -> PyResult<u64> {
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
    fn with_additives(&self, additives: Sequence<Addition>) -> PyResult<Self> {
        let additives = additives.0;
        self.0.with_additives(&additions(&additives)?).map(Self).map_err(raise)
    }

    fn __hash__(&self) -> u64 {
        let mut hasher = DefaultHasher::new();
        for part in self.0.parts() {
            (part.amount.value, part.amount.unit.code(), &part.product).hash(&mut hasher);
        }
        hasher.finish()
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyAny>, (String,)) {
        (slf.get_type().into_any(), (slf.get().0.to_string(),))
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
    value: Number,
    from_unit: &str,
    to_unit: &str,
    density_g_per_ml: Option<f64>,
) -> PyResult<Decimal> {
    let density = density_g_per_ml.map(density).transpose()?;
    Ok(amount(value, from_unit)?.convert(unit(to_unit)?, density).map_err(raise)?.amount.value)
}
