//! The keywords that state the conditions of a conversion.

use crate::error::raise;
use foilwork::{
    peroxide::{Conditions, MolarVolume, SolutionDensity, SolutionKind, StrengthUnit},
    quantity::{Density, Temperature},
};
use pyo3::prelude::*;

/// A product and how its oxygen is counted; the temperature comes separately.
#[derive(Clone, Copy)]
pub struct Product(pub Conditions);

impl Product {
    /// Reads ``molar_volume``, ``medium`` and ``density_g_per_ml``.
    pub fn new(molar_volume: &str, medium: &str, density_g_per_ml: Option<f64>) -> PyResult<Self> {
        let kind: SolutionKind = medium.parse().map_err(raise)?;
        let density = match density_g_per_ml {
            Some(value) => SolutionDensity::measured(Density::from_g_per_ml(value).map_err(raise)?),
            None => kind.into(),
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

/// What a number in a unit is multiplied by for its quantity type: % w/v and g/L share the one in g/L.
pub fn scale(unit: StrengthUnit) -> f64 {
    if unit == StrengthUnit::WvPercent { 10.0 } else { 1.0 }
}
