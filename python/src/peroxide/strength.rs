//! Strengths and densities.

use super::conditions::Product;
use crate::{
    answer::answer,
    bounds::Estimate,
    columns::{Column, OnRefusal, apply_kernel},
    error::raise,
    target::How,
};
use foilwork::{
    column::{self, Cells},
    peroxide::{self, Conditions, ConversionError, MolarVolume, StatedStrength, Strength, StrengthUnit},
    quantity::{Density, MassFraction, Temperature, TradeLabel},
};
use pyo3::prelude::*;

/// Convert a strength of hydrogen peroxide from one unit to another.
///
/// The best value only: where a density stands between the units, ``convert_interval`` also gives the bounds it brings. A
/// trade label is no strength and has no unit here; see ``read_label``.
///
/// Args:
///     value: strength in ``from_unit``, a number or an array.
///     from_unit: one of ``strength_units()``: ``"% w/w"``, ``"% w/v"``, ``"g/L"``, ``"mol/L"``, ``"mol/kg"`` (per
///         kilogram of water), ``"N"`` (two equivalents per mole), ``"% active oxygen"``, ``"volumes"`` (of oxygen).
///     to_unit: another of them.
///     temperature_c: temperature of the solution in C, a number or an array that broadcasts with ``value``.
///     molar_volume: how oxygen is counted for ``"volumes"``, one of ``molar_volumes()``: an ideal gas at 0 C and 1 atm
///         unless you say otherwise.
///     density_g_per_ml: density of the product in g/mL if you measured it; otherwise that of a clear solution.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
///     out: an array of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     Strength in ``to_unit``: a float for numbers, else a float64 array of the broadcast shape. NaN stays NaN.
///
/// Raises:
///     FoilworkError: a strength out of range, an unknown unit, or no density (known from 0 to 70 % w/w and 0 to 50 C).
///
/// Source:
///     ``volumes = c Vm / 2`` with CODATA constants; density of aqueous peroxide checked against handbook tables.
///
/// Examples:
///     >>> from foilwork.peroxide import convert
///     >>> round(convert(12, "% w/w", "volumes"), 1)
///     41.2
///     >>> convert([3, 6], "% w/v", "g/L").tolist()
///     [30.0, 60.0]
#[pyfunction]
#[pyo3(
    signature = (value, from_unit, to_unit, *, temperature_c = Column::Number(20.0), molar_volume = "ideal-1atm",
        density_g_per_ml = None, errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(value, from_unit, to_unit, *, temperature_c=20.0, molar_volume='ideal-1atm', density_g_per_ml=None, errors='raise', out=None, where=None)"
)]
pub fn convert<'py>(
    py: Python<'py>,
    value: Column<'py>,
    from_unit: &str,
    to_unit: &str,
    temperature_c: Column<'py>,
    molar_volume: &str,
    density_g_per_ml: Option<f64>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Bound<'py, PyAny>> {
    let (from, to) = units(from_unit, to_unit)?;
    let product = Product::new(molar_volume, "aqueous", density_g_per_ml)?;
    let scalar = |number: f64, at: &Conditions| {
        let converted = peroxide::convert(Strength::of(number, from)?, to, at)?;
        Ok::<_, ConversionError>(converted.number())
    };
    let how = How::new(errors, out, r#where)?;
    // A temperature that holds for no row is an error of the call, or makes every row missing.
    let for_all_rows = match &temperature_c {
        Column::Number(celsius) if how.errors == OnRefusal::Raise => Some(product.at_celsius(*celsius)?),
        Column::Number(celsius) => product.at_celsius(*celsius).ok().filter(|at| scalar(0.0, at).is_ok()),
        Column::Array(_) => None,
    };
    let [found] = if let Some(at) = for_all_rows {
        let kernel =
            |[values]: [Cells<'_>; 1], [out]: [&mut [f64]; 1]| column::convert_strengths(values, from, to, &at, out);
        apply_kernel(py, [&value], how, |[number]| scalar(number, &at).map(|found| [found]), kernel)?
    } else {
        let kernel = |[values, temperatures]: [Cells<'_>; 2], [out]: [&mut [f64]; 1]| {
            column::convert_strengths_at(values, temperatures, (from, to), &product.0, out)
        };
        let rule = |[number, celsius]: [f64; 2]| {
            Ok::<_, ConversionError>([scalar(number, &product.at(Temperature::from_celsius(celsius)?))?])
        };
        apply_kernel(py, [&value, &temperature_c], how, rule, kernel)?
    };
    Ok(found)
}

/// Convert a strength of hydrogen peroxide, with the bounds that the density brings.
///
/// Args:
///     value: strength in ``from_unit``, a number or an array.
///     from_unit: one of ``strength_units()``.
///     to_unit: another of them.
///     temperature_c: temperature of the solution in C, a number or an array that broadcasts with ``value``.
///     molar_volume: one of ``molar_volumes()``.
///     density_g_per_ml: density of the product in g/mL if you measured it; taken as exact.
///     medium: ``"aqueous"`` for a clear solution, ``"emulsion"`` for a cream of unknown density: assumed to lie from 8 %
///         below to 2 % above that of the clear solution.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
///     out: a tuple of three arrays of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     ``Bounds`` in ``to_unit``: floats for numbers, else float64 arrays. All three are the same where no
///     density stands between the units.
///
/// Raises:
///     FoilworkError: as for ``convert``.
///
/// Source:
///     As for ``convert``; the bounds cover the differences between independent density tables.
///
/// Examples:
///     >>> from foilwork.peroxide import convert_interval
///     >>> [round(x, 1) for x in convert_interval(6, "% w/w", "volumes", medium="emulsion")]
///     [18.5, 20.2, 20.6]
#[pyfunction]
#[pyo3(
    signature = (value, from_unit, to_unit, *, temperature_c = Column::Number(20.0), molar_volume = "ideal-1atm",
        density_g_per_ml = None, medium = "aqueous", errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(value, from_unit, to_unit, *, temperature_c=20.0, molar_volume='ideal-1atm', density_g_per_ml=None, medium='aqueous', errors='raise', out=None, where=None)"
)]
pub fn convert_interval<'py>(
    py: Python<'py>,
    value: Column<'py>,
    from_unit: &str,
    to_unit: &str,
    temperature_c: Column<'py>,
    molar_volume: &str,
    density_g_per_ml: Option<f64>,
    medium: &str,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Estimate<Bound<'py, PyAny>>> {
    let (from, to) = units(from_unit, to_unit)?;
    let product = Product::new(molar_volume, medium, density_g_per_ml)?;
    let kernel = |[values, temperatures]: [Cells<'_>; 2], out: [&mut [f64]; 3]| {
        column::convert_intervals(values, temperatures, (from, to), &product.0, out)
    };
    let rule = |[number, celsius]: [f64; 2]| {
        let at = product.at(Temperature::from_celsius(celsius)?);
        let found = peroxide::convert_interval(Strength::of(number, from)?, to, &at)?;
        Ok::<_, ConversionError>([found.low().number(), found.best().number(), found.high().number()])
    };
    let how = How::new(errors, out, r#where)?;
    Ok(Estimate(apply_kernel(py, [&value, &temperature_c], how, rule, kernel)?))
}

/// Density of aqueous hydrogen peroxide.
///
/// Args:
///     strength_ww_percent: strength in % w/w, from 0 to 70, a number or an array.
///     temperature_c: temperature in C, from 0 to 50, a number or an array that broadcasts with it.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
///     out: an array of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     Density in g/mL: a float for numbers, else a float64 array. Good to 0.0005 g/mL up to 50 % w/w, then less:
///     ``density_interval`` says how much.
///
/// Raises:
///     FoilworkError: a strength or temperature out of range.
///
/// Source:
///     Kell (1975) for water; coefficients of unnamed origin for the increment, checked against handbook tables.
///
/// Examples:
///     >>> from foilwork.peroxide import density
///     >>> round(density(12), 4)
///     1.0415
#[pyfunction]
#[pyo3(
    signature = (strength_ww_percent, temperature_c = Column::Number(20.0), *, errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(strength_ww_percent, temperature_c=20.0, *, errors='raise', out=None, where=None)"
)]
pub fn density<'py>(
    py: Python<'py>,
    strength_ww_percent: Column<'py>,
    temperature_c: Column<'py>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Bound<'py, PyAny>> {
    let kernel = |[strengths, temperatures]: [Cells<'_>; 2], [out]: [&mut [f64]; 1]| {
        column::densities(strengths, temperatures, out)
    };
    let rule = |row| density_of(row).map(|[_, best, _]| [best]);
    let how = How::new(errors, out, r#where)?;
    let [found] = apply_kernel(py, [&strength_ww_percent, &temperature_c], how, rule, kernel)?;
    Ok(found)
}

/// Density of aqueous hydrogen peroxide, with the bounds within which independent tables agree.
///
/// Args:
///     strength_ww_percent: strength in % w/w, from 0 to 70, a number or an array.
///     temperature_c: temperature in C, from 0 to 50, a number or an array that broadcasts with it.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
///     out: a tuple of three arrays of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     ``Bounds`` in g/mL: floats for numbers, else float64 arrays.
///
/// Raises:
///     FoilworkError: a strength or temperature out of range.
///
/// Source:
///     As for ``density``.
///
/// Examples:
///     >>> from foilwork.peroxide import density_interval
///     >>> [round(x, 4) for x in density_interval(12)]
///     [1.041, 1.0415, 1.042]
#[pyfunction]
#[pyo3(
    signature = (strength_ww_percent, temperature_c = Column::Number(20.0), *, errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(strength_ww_percent, temperature_c=20.0, *, errors='raise', out=None, where=None)"
)]
pub fn density_interval<'py>(
    py: Python<'py>,
    strength_ww_percent: Column<'py>,
    temperature_c: Column<'py>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Estimate<Bound<'py, PyAny>>> {
    let kernel = |[strengths, temperatures]: [Cells<'_>; 2], out: [&mut [f64]; 3]| {
        column::density_intervals(strengths, temperatures, out)
    };
    let how = How::new(errors, out, r#where)?;
    Ok(Estimate(apply_kernel(py, [&strength_ww_percent, &temperature_c], how, density_of, kernel)?))
}

fn density_of([percent, celsius]: [f64; 2]) -> Result<[f64; 3], ConversionError> {
    let found = peroxide::density(MassFraction::from_ww_percent(percent)?, Temperature::from_celsius(celsius)?)?;
    Ok([found.low(), found.best(), found.high()].map(Density::g_per_ml))
}

answer! {
    in "foilwork.peroxide";
    /// What a trade label can mean; made by ``read_label``.
    LabelReadings {
        /// Number on the label.
        vol: f64,
        /// Percent that the trade pairs with it, read as % w/w.
        as_ww_ww_percent: f64,
        /// The percent read as % w/v, in % w/w.
        as_wv_ww_percent: Estimate<f64>,
        /// The number read as true oxygen volumes, in % w/w.
        as_volumes_ww_percent: Estimate<f64>,
        /// Oxygen volumes that the w/w reading really gives.
        volumes_if_ww: Estimate<f64>,
        /// Oxygen volumes that the w/v reading really gives.
        volumes_if_wv: f64,
        /// Span of all three readings in % w/w.
        spread_ww_percent: Estimate<f64>,
    }
}

/// Read a trade label (``20 vol`` and its like) every way it can be read.
///
/// By trade convention N vol stands for 0.3 N percent (20 vol for 6), without saying of what: % w/w and % w/v differ, and
/// neither gives just that many volumes of oxygen.
///
/// Args:
///     vol: number on the label, from 1 to 60.
///     temperature_c: temperature in C.
///     molar_volume: one of ``molar_volumes()``.
///     density_g_per_ml: density of the product in g/mL if you measured it.
///     medium: ``"aqueous"`` or ``"emulsion"``; see ``convert_interval``.
///
/// Returns:
///     The readings, and the span of them all.
///
/// Raises:
///     FoilworkError: another number, or no density at that temperature.
///
/// Source:
///     Common practice of the trade for the pairing; arithmetic for the rest.
///
/// Examples:
///     >>> from foilwork.peroxide import read_label
///     >>> readings = read_label(40)
///     >>> round(readings.volumes_if_ww.best, 1), round(readings.volumes_if_wv, 1)
///     (41.2, 39.5)
#[pyfunction]
#[pyo3(signature = (vol, *, temperature_c = 20.0, molar_volume = "ideal-1atm", density_g_per_ml = None, medium = "aqueous"))]
pub fn read_label(
    vol: f64,
    temperature_c: f64,
    molar_volume: &str,
    density_g_per_ml: Option<f64>,
    medium: &str,
) -> PyResult<LabelReadings> {
    let at = Product::new(molar_volume, medium, density_g_per_ml)?.at_celsius(temperature_c)?;
    let found = peroxide::read_label(TradeLabel::from_vol(vol).map_err(raise)?, &at).map_err(raise)?;
    Ok(LabelReadings {
        vol: found.label.vol(),
        as_ww_ww_percent: found.as_ww.ww_percent(),
        as_wv_ww_percent: found.as_wv.into(),
        as_volumes_ww_percent: found.as_volumes.into(),
        volumes_if_ww: found.volumes_if_ww.into(),
        volumes_if_wv: found.volumes_if_wv.volumes(),
        spread_ww_percent: found.spread().into(),
    })
}

/// The strength in % w/w of a bottle as it is labelled.
///
/// Args:
///     text: ``"6 % w/w"``, ``"6 % w/v"``, ``"60 g/L"``, ``"19.8 volumes"`` or ``"20 vol label"``.
///     temperature_c: temperature in C.
///     molar_volume: one of ``molar_volumes()``.
///     density_g_per_ml: density of the product in g/mL if you measured it.
///     medium: ``"aqueous"`` or ``"emulsion"``; see ``convert_interval``.
///
/// Returns:
///     ``Bounds`` in % w/w. A w/w figure is exact; a trade label spans all its readings.
///
/// Raises:
///     FoilworkError: a text that states no strength (a bare ``%`` does not), or no density.
///
/// Source:
///     As for ``convert`` and ``read_label``.
///
/// Examples:
///     >>> from foilwork.peroxide import strength_ww_percent
///     >>> strength_ww_percent("6 % w/w")
///     Bounds(low=6.0, best=6.0, high=6.0)
///     >>> [round(x, 2) for x in strength_ww_percent("20 vol label")]
///     [5.88, 6.0, 6.0]
#[pyfunction]
#[pyo3(signature = (text, *, temperature_c = 20.0, molar_volume = "ideal-1atm", density_g_per_ml = None, medium = "aqueous"))]
pub fn strength_ww_percent(
    text: &str,
    temperature_c: f64,
    molar_volume: &str,
    density_g_per_ml: Option<f64>,
    medium: &str,
) -> PyResult<Estimate<f64>> {
    let at = Product::new(molar_volume, medium, density_g_per_ml)?.at_celsius(temperature_c)?;
    let stated: StatedStrength = text.parse().map_err(raise)?;
    Ok(stated.mass_fraction_under(&at).map_err(raise)?.into())
}

/// The units that a strength can be stated in.
///
/// Returns:
///     Their names, as ``convert`` takes them.
///
/// Examples:
///     >>> from foilwork.peroxide import strength_units
///     >>> strength_units()[:3]
///     ['% w/w', '% w/v', 'g/L']
#[pyfunction]
pub fn strength_units() -> Vec<&'static str> {
    StrengthUnit::ALL.iter().map(|unit| unit.code()).collect()
}

/// The ways to count a volume of oxygen, all at 0 C.
///
/// Returns:
///     Molar volume in L/mol by name, as ``convert`` takes the names.
///
/// Source:
///     CODATA constants; Schmidt & Wagner's equation of state for real oxygen; 22.4 L/mol in school books.
///
/// Examples:
///     >>> from foilwork.peroxide import molar_volumes
///     >>> round(molar_volumes()["ideal-1bar"], 3)
///     22.711
#[pyfunction]
pub fn molar_volumes() -> std::collections::BTreeMap<&'static str, f64> {
    MolarVolume::ALL.iter().map(|convention| (convention.code(), convention.l_per_mol())).collect()
}

pub fn units(from: &str, to: &str) -> PyResult<(StrengthUnit, StrengthUnit)> {
    Ok((from.parse().map_err(raise)?, to.parse().map_err(raise)?))
}
