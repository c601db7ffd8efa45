//! Wrappers of `foilwork::mix`: what is in a product and in the bowl.

use super::weighing::mass;
use crate::{
    answer::answer,
    bounds::{Estimate, Stated},
    error::raise,
    sequence::Sequence,
};
use foilwork::{
    mix::{self, Hazard},
    quantity::MassFraction,
};
use pyo3::{prelude::*, types::PyDict};
use std::hash::{DefaultHasher, Hash, Hasher};

fn hash_of(value: impl Hash) -> u64 {
    let mut hasher = DefaultHasher::new();
    value.hash(&mut hasher);
    hasher.finish()
}

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
#[pyclass(frozen, eq, from_py_object, module = "foilwork.mix")]
#[derive(Clone, PartialEq)]
pub struct Ingredient(mix::Ingredient);

#[pymethods]
impl Ingredient {
    #[new]
    #[pyo3(signature = (name, level_ww_percent, *, cas = None, stated_as = None, groups = Sequence(vec![])), text_signature = "(name, level_ww_percent, *, cas=None, stated_as=None, groups=())")]
    fn new(
        name: String,
        level_ww_percent: Stated<MassFraction>,
        cas: Option<&str>,
        stated_as: Option<&str>,
        groups: Sequence<String>,
    ) -> PyResult<Self> {
        let groups = groups.0;
        let cas = cas.map(str::parse).transpose().map_err(raise)?;
        let stated_as = stated_as.map(str::parse).transpose().map_err(raise)?;
        Ok(Self(mix::Ingredient { name, cas, stated_as, groups, level: level_ww_percent.0 }))
    }

    /// The name on the label.
    #[getter]
    fn name(&self) -> &str {
        &self.0.name
    }

    /// Mass fraction in % w/w, with its bounds.
    #[getter]
    fn level_ww_percent(&self) -> Estimate<f64> {
        self.0.level.into()
    }

    /// CAS number, where it was given.
    #[getter]
    fn cas(&self) -> Option<String> {
        self.0.cas.as_ref().map(ToString::to_string)
    }

    /// The form the level is stated in, when not the substance itself.
    #[getter]
    fn stated_as(&self) -> Option<&'static str> {
        self.0.stated_as.map(mix::Form::code)
    }

    /// Groups of the law it belongs to.
    #[getter]
    fn groups(&self) -> Vec<String> {
        self.0.groups.clone()
    }

    fn __hash__(&self) -> u64 {
        hash_of((&self.0.name, self.0.cas, &self.0.groups))
    }

    fn __getnewargs_ex__<'py>(&self, py: Python<'py>) -> PyResult<NewArguments<'py, (&str, Estimate<f64>)>> {
        let keywords = PyDict::new(py);
        keywords.set_item("cas", self.cas())?;
        keywords.set_item("stated_as", self.stated_as())?;
        keywords.set_item("groups", self.groups())?;
        Ok(((self.name(), self.level_ww_percent()), keywords))
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
///     >>> Product("shade J7-mist", [], fully_declared=False)
///     Product('shade J7-mist', 0 ingredients, not declared in full)
#[pyclass(frozen, eq, from_py_object, module = "foilwork.mix")]
#[derive(Clone, PartialEq)]
pub struct Product(mix::Product);

#[pymethods]
impl Product {
    #[new]
    #[pyo3(signature = (name, ingredients, *, fully_declared = true))]
    fn new(name: String, ingredients: Sequence<Ingredient>, fully_declared: bool) -> Self {
        let ingredients = ingredients.0;
        let ingredients = ingredients.into_iter().map(|i| i.0).collect();
        Self(mix::Product { name, ingredients, fully_declared })
    }

    /// What the user calls it.
    #[getter]
    fn name(&self) -> &str {
        &self.0.name
    }

    /// What is known to be in it.
    #[getter]
    fn ingredients(&self) -> Vec<Ingredient> {
        self.0.ingredients.iter().cloned().map(Ingredient).collect()
    }

    /// Whether the list names everything the law may limit.
    #[getter]
    fn fully_declared(&self) -> bool {
        self.0.fully_declared
    }

    fn __hash__(&self) -> u64 {
        hash_of((&self.0.name, self.0.fully_declared, self.0.ingredients.len()))
    }

    fn __getnewargs_ex__<'py>(&self, py: Python<'py>) -> PyResult<NewArguments<'py, (&str, Vec<Ingredient>)>> {
        let keywords = PyDict::new(py);
        keywords.set_item("fully_declared", self.fully_declared())?;
        Ok(((self.name(), self.ingredients()), keywords))
    }

    fn __repr__(&self) -> String {
        let declared = if self.0.fully_declared { "" } else { ", not declared in full" };
        format!("Product('{}', {} ingredients{declared})", self.0.name, self.0.ingredients.len())
    }
}

/// What ``pickle`` calls the class with: the arguments by place and by name.
type NewArguments<'py, T> = (T, Bound<'py, PyDict>);

answer! {
    in "foilwork.mix";
    /// One substance in a bowl; an item of :attr:`Composition.constituents`.
    Constituent {
        /// Its name.
        name: String,
        /// CAS number, where it is known.
        cas: Option<String>,
        /// The form the level is stated in, when not the substance itself.
        stated_as: Option<String>,
        /// Groups of the law it belongs to.
        groups: Vec<String>,
        /// The level that is declared, in % w/w.
        level_ww_percent: Estimate<f64>,
        /// Products that may hold more of it, for their contents are not declared in full.
        undeclared_in: Vec<String>,
        /// The most that these could add, in % w/w.
        undeclared_at_most_ww_percent: f64,
    }
}

impl From<&mix::Constituent> for Constituent {
    fn from(found: &mix::Constituent) -> Self {
        Self {
            name: found.name.clone(),
            cas: found.cas.as_ref().map(ToString::to_string),
            stated_as: found.stated_as.map(|form| form.code().to_owned()),
            groups: found.groups.clone(),
            level_ww_percent: found.level.into(),
            undeclared_in: found.undeclared_in.clone(),
            undeclared_at_most_ww_percent: found.undeclared_at_most.ww_percent(),
        }
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
///     >>> bowl = Composition([(60, developer), (60, Product("J7-mist", [], fully_declared=False))])
///     >>> [(found.level_ww_percent.best, found.undeclared_in) for found in bowl.constituents]
///     [(3.0, ['J7-mist'])]
#[pyclass(frozen, eq, module = "foilwork.mix")]
#[derive(PartialEq)]
pub struct Composition(pub mix::Composition);

#[pymethods]
impl Composition {
    #[new]
    fn new(parts: Sequence<(f64, Product)>) -> PyResult<Self> {
        let parts = parts.0;
        let parts = parts.into_iter().map(|(g, product)| Ok((mass(g)?, product.0)));
        let parts = parts.collect::<PyResult<Vec<_>>>()?;
        mix::Composition::mix(parts).map(Self).map_err(raise)
    }

    /// The mass of the bowl in g.
    #[getter]
    fn total_g(&self) -> f64 {
        self.0.total().g()
    }

    /// Every declared substance, with its level and what undeclared products could add.
    #[getter]
    fn constituents(&self) -> Vec<Constituent> {
        self.0.constituents().iter().map(Constituent::from).collect()
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

    fn __hash__(&self) -> u64 {
        hash_of(self.0.portions().iter().map(|portion| &portion.product.name).collect::<Vec<_>>())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyAny>, (Vec<(f64, Product)>,)) {
        let portions = slf.get().0.portions().iter();
        let parts = portions.map(|portion| (portion.mass.g(), Product(portion.product.clone()))).collect();
        (slf.get_type().into_any(), (parts,))
    }

    fn __repr__(&self) -> String {
        let names: Vec<_> = self.0.portions().iter().map(|portion| portion.product.name.as_str()).collect();
        format!("<foilwork.mix.Composition {} g of {}>", self.total_g(), names.join(", "))
    }
}
