//! The keywords that state the conditions of a conversion, and tuples of bounds.

use crate::error::{FoilworkError, raise};
use foilwork::{
    peroxide::{Conditions, MolarVolume, SolutionDensity, StrengthUnit},
    quantity::{Density, Temperature},
    source::Interval,
};
use pyo3::prelude::*;

/// Lower bound, best estimate, upper bound.
pub type Bounds = (f64, f64, f64);

/// A product and how its oxygen is counted; the temperature comes separately.
#[derive(Clone, Copy)]
pub struct Product(Conditions);

impl Product {
    /// Reads ``molar_volume``, ``medium`` and ``density_g_per_ml``.
    pub fn new(molar_volume: &str, medium: &str, density_g_per_ml: Option<f64>) -> PyResult<Self> {
        let density = match (density_g_per_ml, medium) {
            (Some(value), _) => SolutionDensity::measured(Density::from_g_per_ml(value).map_err(raise)?),
            (None, "aqueous") => SolutionDensity::Aqueous,
            (None, "emulsion") => SolutionDensity::Emulsion,
            (None, other) => {
                let text = format!("unknown medium (got {other:?}): must be 'aqueous' or 'emulsion'");
                return Err(FoilworkError::new_err(text));
            }
        };
        let molar_volume: MolarVolume = molar_volume.parse().map_err(raise)?;
        Ok(Self(Conditions::default().with_molar_volume(molar_volume).with_density(density)))
    }

    /// The product at a temperature.
    pub fn at(self, temperature: Temperature) -> Conditions {
        Conditions { temperature, ..self.0 }
    }

    /// The product at a temperature in degrees Celsius.
    pub fn at_celsius(self, temperature_c: f64) -> PyResult<Conditions> {
        Ok(self.at(Temperature::from_celsius(temperature_c).map_err(raise)?))
    }
}

/// An interval as a tuple of numbers.
pub fn bounds<Q: Copy + PartialOrd>(interval: Interval<Q>, number: impl Fn(Q) -> f64) -> Bounds {
    (number(interval.low()), number(interval.best()), number(interval.high()))
}

/// What a number in a unit is multiplied by for its quantity type: % w/v and g/L share the one in g/L.
pub fn scale(unit: StrengthUnit) -> f64 {
    if unit == StrengthUnit::PercentWv { 10.0 } else { 1.0 }
}
