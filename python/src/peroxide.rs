//! Wrappers of `foilwork::peroxide`.

use crate::{
    columns::{Column, OnRefusal, apply, apply_kernel},
    error::raise,
};
use foilwork::{
    column,
    peroxide::{self, BlendError, Conditions, ConversionError, MolarVolume, SolutionDensity, Strength, StrengthUnit},
    quantity::{Density, Mass, MassFraction, Temperature},
};
use pyo3::prelude::*;

/// Reads the keywords that state the conditions of a conversion.
fn conditions(temperature_c: f64, molar_volume: &str, density_g_per_ml: Option<f64>) -> PyResult<Conditions> {
    let temperature = Temperature::from_celsius(temperature_c).map_err(raise)?;
    let at = Conditions::at(temperature).with_molar_volume(molar_volume.parse::<MolarVolume>().map_err(raise)?);
    Ok(match density_g_per_ml {
        None => at,
        Some(value) => at.with_density(SolutionDensity::measured(Density::from_g_per_ml(value).map_err(raise)?)),
    })
}

/// Convert a strength of hydrogen peroxide from one unit to another.
///
/// Units: ``"% w/w"``, ``"% w/v"``, ``"g/L"``, ``"mol/L"``, ``"mol/kg"`` (of water), ``"N"`` (2 equivalents per mole),
/// ``"% active oxygen"``, ``"volumes"`` (oxygen volumes, not the trade label).
#[pyfunction]
#[pyo3(signature = (value, from_unit, to_unit, *, temperature_c = Column::Number(20.0), molar_volume = "ideal-1atm", density_g_per_ml = None, errors = OnRefusal::Raise), text_signature = "(value, from_unit, to_unit, *, temperature_c=20.0, molar_volume='ideal-1atm', density_g_per_ml=None, errors='raise')")]
#[expect(clippy::too_many_arguments, reason = "keywords of one Python function")]
pub fn convert<'py>(
    py: Python<'py>,
    value: Column<'py>,
    from_unit: &str,
    to_unit: &str,
    temperature_c: Column<'py>,
    molar_volume: &str,
    density_g_per_ml: Option<f64>,
    errors: OnRefusal,
) -> PyResult<Bound<'py, PyAny>> {
    let from: StrengthUnit = from_unit.parse().map_err(raise)?;
    let to: StrengthUnit = to_unit.parse().map_err(raise)?;
    let scalar = |number: f64, at: &Conditions| {
        let converted = peroxide::convert(Strength::of(number, from)?, to, at)?;
        Ok::<_, ConversionError>(converted.number())
    };
    let Column::Number(celsius) = temperature_c else {
        let base = conditions(20.0, molar_volume, density_g_per_ml)?;
        let [found] = apply(py, [&value, &temperature_c], errors, |[number, celsius]| {
            let temperature = Temperature::from_celsius(celsius)?;
            Ok::<_, ConversionError>([scalar(number, &Conditions { temperature, ..base })?])
        })?;
        return Ok(found);
    };
    let at = conditions(celsius, molar_volume, density_g_per_ml)?;
    apply_kernel(
        py,
        &value,
        errors,
        |number| scalar(number, &at),
        |values, out| column::convert(values, from, to, &at, out),
    )
}

/// Split a total into stock and diluent.
#[pyfunction]
#[pyo3(signature = (stock_ww, target_ww, total_g, *, errors = OnRefusal::Raise), text_signature = "(stock_ww, target_ww, total_g, *, errors='raise')")]
pub fn dilute<'py>(
    py: Python<'py>,
    stock_ww: Column<'py>,
    target_ww: Column<'py>,
    total_g: Column<'py>,
    errors: OnRefusal,
) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyAny>)> {
    let [stock, diluent] = apply(py, [&stock_ww, &target_ww, &total_g], errors, |[stock, target, total]| {
        let (stock, target) = (MassFraction::from_percent_ww(stock)?, MassFraction::from_percent_ww(target)?);
        let blend = peroxide::dilute(stock, target, Mass::from_g(total)?)?;
        Ok::<_, BlendError>([blend.stock.g(), blend.diluent.g()])
    })?;
    Ok((stock, diluent))
}
