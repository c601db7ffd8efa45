//! Wrappers of `foilwork::mix`: what is in a product and in the bowl, and how to handle it.

use super::bowl::mass;
use crate::{
    bounds::{Estimate, Stated},
    error::raise,
    plain::plain,
};
use foilwork::{
    mix::{self, Hazard, handling_advice as points},
    quantity::MassFraction,
};
use pyo3::prelude::*;

/// One ingredient of a product as its maker or its user states it.
///
/// Args:
///     name: the name on the label.
///     level_ww_percent: mass fraction in % w/w, as a number or (low, best, high); exactly 0 says the product is free of it.
///     cas: CAS number; without it a table is searched by name.
///     stated_as: the form the level is stated in, for example ``"free-base"``, when not the substance itself.
///     groups: groups of the law it belongs to, for entries without CAS numbers.
///
/// Raises:
///     FoilworkError: for a level out of range, a mistyped CAS number or an unknown form.
///
/// Examples:
///     >>> from foilwork.mix import Ingredient
///     >>> Ingredient("resorcinol", (0.4, 0.5, 0.6), cas="108-46-3")
///     Ingredient('resorcinol', (0.4, 0.5, 0.6))
#[pyclass(frozen, from_py_object, module = "foilwork.mix")]
#[derive(Clone)]
pub struct Ingredient(mix::Ingredient);

#[pymethods]
impl Ingredient {
    #[new]
    #[pyo3(signature = (name, level_ww_percent, *, cas = None, stated_as = None, groups = vec![]), text_signature = "(name, level_ww_percent, *, cas=None, stated_as=None, groups=())")]
    fn new(
        name: String,
        level_ww_percent: Stated<MassFraction>,
        cas: Option<&str>,
        stated_as: Option<&str>,
        groups: Vec<String>,
    ) -> PyResult<Self> {
        let cas = cas.map(str::parse).transpose().map_err(raise)?;
        let stated_as = stated_as.map(str::parse).transpose().map_err(raise)?;
        Ok(Self(mix::Ingredient { name, cas, stated_as, groups, level: level_ww_percent.0 }))
    }

    fn __repr__(&self) -> String {
        format!("Ingredient('{}', {:?})", self.0.name, <(f64, f64, f64)>::from(Estimate::from(self.0.level).0))
    }
}

/// A product as supplied, with what is known to be in it.
///
/// Args:
///     name: what the user calls it.
///     ingredients: what is known to be in it.
///     fully_declared: whether the list names everything the law may limit; otherwise the rest is unknown, not absent.
///
/// Examples:
///     >>> from foilwork.mix import Product
///     >>> Product("shade 7.1", [], fully_declared=False)
///     Product('shade 7.1', 0 ingredients, not declared in full)
#[pyclass(frozen, from_py_object, module = "foilwork.mix")]
#[derive(Clone)]
pub struct Product(mix::Product);

#[pymethods]
impl Product {
    #[new]
    #[pyo3(signature = (name, ingredients, *, fully_declared = true))]
    fn new(name: String, ingredients: Vec<Ingredient>, fully_declared: bool) -> Self {
        let ingredients = ingredients.into_iter().map(|i| i.0).collect();
        Self(mix::Product { name, ingredients, fully_declared })
    }

    fn __repr__(&self) -> String {
        let declared = if self.0.fully_declared { "" } else { ", not declared in full" };
        format!("Product('{}', {} ingredients{declared})", self.0.name, self.0.ingredients.len())
    }
}

/// What is in the mixed bowl, and so on the hair: every declared substance with its bounds, and what is not known.
///
/// Args:
///     parts: (mass in g, product) for each part.
///
/// Raises:
///     FoilworkError: when the bowl is empty.
///
/// Examples:
///     >>> from foilwork.mix import Composition, Product, Ingredient
///     >>> developer = Product("developer", [Ingredient("hydrogen peroxide", 6, cas="7722-84-1")])
///     >>> bowl = Composition([(60, developer), (60, Product("7.1", [], fully_declared=False))])
///     >>> [(c["level_ww_percent"]["best"], c["undeclared_in"]) for c in bowl.constituents()]
///     [(3.0, ['7.1'])]
#[pyclass(frozen, module = "foilwork.mix")]
pub struct Composition(pub mix::Composition);

#[pymethods]
impl Composition {
    #[new]
    fn new(parts: Vec<(f64, Product)>) -> PyResult<Self> {
        let parts = parts.into_iter().map(|(g, product)| Ok((mass(g)?, product.0)));
        let parts = parts.collect::<PyResult<Vec<_>>>()?;
        mix::Composition::mix(parts).map(Self).map_err(raise)
    }

    /// The mass of the bowl in g.
    #[getter]
    fn total_g(&self) -> f64 {
        self.0.total().g()
    }

    /// Every declared substance as a dict: name, cas, level and what undeclared products could add, in % w/w.
    fn constituents<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        plain(py, &self.0.constituents())
    }

    /// Products in the bowl whose contents are not declared in full.
    #[getter]
    fn undeclared(&self) -> Vec<String> {
        self.0.undeclared().map(|portion| portion.product.name.clone()).collect()
    }

    /// What in this bowl calls for care, as codes for :func:`handling_advice`.
    #[getter]
    fn hazards(&self) -> Vec<&'static str> {
        self.0.hazards().into_iter().map(Hazard::code).collect()
    }
}

/// The handling checklist for what is in a bowl, in the order of the work. It informs; it decides nothing.
///
/// Args:
///     hazards: any of ``"peroxide"``, ``"persulfate"``, ``"ammonia"``, ``"oxidative-dye"``, ``"resorcinol"``,
///         ``"unknown"``.
///
/// Returns:
///     Points as dicts: stage, text, what they are about, keys of their sources (none: common practice).
///
/// Raises:
///     FoilworkError: for an unknown code.
///
/// Examples:
///     >>> from foilwork.mix import handling_advice
///     >>> handling_advice(["persulfate"])[0]["stage"]
///     'before'
#[pyfunction]
pub fn handling_advice(py: Python<'_>, hazards: Vec<String>) -> PyResult<Bound<'_, PyAny>> {
    let hazards: Vec<Hazard> = hazards.iter().map(|code| code.parse()).collect::<Result<_, _>>().map_err(raise)?;
    plain(py, &points(&hazards))
}
