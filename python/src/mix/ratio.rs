//! Wrapper of `foilwork::mix`: the mixing ratio.

use super::weighing::mass;
use crate::{error::raise, exact::Number};
use foilwork::mix;
use pyo3::prelude::*;
use rust_decimal::Decimal;
use std::hash::{DefaultHasher, Hash, Hasher};

/// A mixing ratio by mass, kept as the exact decimals that were written.
///
/// Args:
///     text: parts joined by ``:`` or ``+``, for example ``"1:1.5"``, ``"1+2"`` or ``"3:1:6"``.
///
/// Raises:
///     FoilworkError: with the position of the character that cannot be read.
///
/// Examples:
///     >>> from foilwork.mix import Ratio
///     >>> Ratio("1:1.5").split_total(75)
///     [30.0, 45.0]
///     >>> str(Ratio("1+2")), Ratio("1:1.5").lowest_terms()
///     ('1+2', [2, 3])
#[pyclass(frozen, eq, module = "foilwork.mix")]
#[derive(PartialEq)]
pub struct Ratio(pub mix::Ratio);

#[pymethods]
impl Ratio {
    #[new]
    fn new(text: &str) -> PyResult<Self> {
        text.parse().map(Self).map_err(raise)
    }

    /// The parts as written, exact.
    #[getter]
    fn parts(&self) -> Vec<Decimal> {
        self.0.parts().to_vec()
    }

    /// The same ratio in the smallest whole numbers.
    fn lowest_terms(&self) -> Vec<u128> {
        self.0.lowest_terms()
    }

    /// Whether both ratios weigh out alike, as ``1:1.5`` and ``2:3`` do.
    fn same_mix(&self, other: &Self) -> bool {
        self.0.same_mix(&other.0)
    }

    /// The masses in g that make up ``total_g``; nothing is rounded.
    fn split_total(&self, total_g: f64) -> PyResult<Vec<f64>> {
        let parts = self.0.split_total(mass(total_g)?).map_err(raise)?;
        Ok(parts.iter().map(|part| part.g()).collect())
    }

    /// The shares of a total as decimals of 28 digits, in the unit of the total.
    fn split_decimal(&self, total: Number) -> PyResult<Vec<Decimal>> {
        self.0.split_decimal(total.0).map_err(raise)
    }

    /// All masses in g when part ``part`` (counted from 0) weighs ``mass_g``.
    fn given_part(&self, part: usize, mass_g: f64) -> PyResult<Vec<f64>> {
        let parts = self.0.given_part(part, mass(mass_g)?).map_err(raise)?;
        Ok(parts.iter().map(|part| part.g()).collect())
    }

    fn __hash__(&self) -> u64 {
        let mut hasher = DefaultHasher::new();
        self.0.parts().hash(&mut hasher);
        hasher.finish()
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyAny>, (String,)) {
        (slf.get_type().into_any(), (slf.get().0.to_string(),))
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> String {
        format!("Ratio('{}')", self.0)
    }
}
