//! Dilution by volume.

use super::{conditions::scale, dilution::Strengths};
use crate::{
    answer::answer,
    bounds::Estimate,
    columns::{Column, OnRefusal, apply_kernel},
    error::{FoilworkError, raise},
    figures::Figures,
    target::How,
};
use foilwork::{
    column::{self, Cells, WhichVolume},
    peroxide::{self, KnownVolume, MakeUpError, PourError, StrengthUnit, VolumeStrength},
    quantity::{AmountConcentration, MassConcentration, MassFraction, Normality, OxygenVolumes, Temperature, Volume},
};
use pyo3::prelude::*;

answer! {
    in "foilwork.peroxide";
    /// What to take and where to fill up to; made by ``make_up``. Floats for numbers, else float64 arrays; it unpacks.
    MakeUp as tuple {
        /// Stock to take, in mL.
        stock_ml: Figures,
        /// The mark to add diluent up to, in mL.
        total_ml: Figures,
    }
}

/// Make a solution up to the mark: ``c1 V1 = c2 V2``, exact whatever the contraction.
///
/// Give exactly one of ``total_ml`` and ``stock_ml``.
///
/// Args:
///     stock: strength of the stock in ``unit``, a number or an array.
///     target: strength wanted in the same unit, a number or an array.
///     unit: one that counts by volume: ``"% w/v"``, ``"g/L"``, ``"mol/L"``, ``"N"`` or ``"volumes"``.
///     total_ml: volume wanted in mL, a number or an array.
///     stock_ml: or the volume of stock there is, in mL.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
///     out: a tuple of two arrays of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     The stock to take and the mark to add diluent up to: floats for numbers, else float64 arrays.
///
/// Raises:
///     FoilworkError: a target above the stock, something zero, a unit by mass, or not exactly one volume.
///
/// Source:
///     Conservation of the solute.
///
/// Examples:
///     >>> from foilwork.peroxide import make_up
///     >>> make_up(100, 20, "volumes", 500)
///     MakeUp(stock_ml=100.0, total_ml=500.0)
#[pyfunction]
#[pyo3(
    signature = (stock, target, unit, total_ml = None, *, stock_ml = None, errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(stock, target, unit, total_ml=None, *, stock_ml=None, errors='raise', out=None, where=None)"
)]
pub fn make_up<'py>(
    py: Python<'py>,
    stock: Column<'py>,
    target: Column<'py>,
    unit: &str,
    total_ml: Option<Column<'py>>,
    stock_ml: Option<Column<'py>>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<MakeUp> {
    fn by<Q: VolumeStrength>(stock: f64, target: f64, known: KnownVolume) -> Result<peroxide::MakeUp, MakeUpError> {
        peroxide::make_up(Q::from_unit(stock)?, Q::from_unit(target)?, known)
    }

    let (known, volume): (WhichVolume, _) = match (total_ml, stock_ml) {
        (Some(volume), None) => (KnownVolume::Total, volume),
        (None, Some(volume)) => (KnownVolume::Stock, volume),
        _ => return Err(FoilworkError::new_err("give exactly one of total_ml and stock_ml")),
    };
    let unit = by_volume(unit)?;
    let scalar = match unit {
        StrengthUnit::MolPerL => by::<AmountConcentration>,
        StrengthUnit::EqPerL => by::<Normality>,
        StrengthUnit::Volumes => by::<OxygenVolumes>,
        _ => by::<MassConcentration>,
    };
    let scale = scale(unit);
    let rule = |[stock, target, volume]: [f64; 3]| {
        let made = scalar(stock * scale, target * scale, known(Volume::from_ml(volume)?))?;
        Ok::<_, MakeUpError>([made.stock.ml(), made.total.ml()])
    };
    let kernel = |[stock, target, volume]: [Cells<'_>; 3], out: [&mut [f64]; 2]| {
        column::make_ups([stock, target], unit, known, volume, out)
    };
    let found = apply_kernel(py, [&stock, &target, &volume], How::new(errors, out, r#where)?, rule, kernel)?;
    let [stock_ml, total_ml] = found.map(Figures::from);
    Ok(MakeUp { stock_ml, total_ml })
}

/// The strength after a volume of stock is made up to the mark.
///
/// Args:
///     stock: strength of the stock in ``unit``, a number or an array.
///     unit: one that counts by volume: ``"% w/v"``, ``"g/L"``, ``"mol/L"``, ``"N"`` or ``"volumes"``.
///     taken_ml: volume of stock in mL, a number or an array.
///     total_ml: the mark in mL, a number or an array.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
///     out: an array of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     Strength in ``unit``: a float for numbers, else a float64 array.
///
/// Raises:
///     FoilworkError: a mark of zero or below the volume of stock, or a unit by mass.
///
/// Source:
///     Conservation of the solute.
///
/// Examples:
///     >>> from foilwork.peroxide import strength_after_make_up
///     >>> strength_after_make_up(3, "% w/v", 417, 10_000)
///     0.1251
#[pyfunction]
#[pyo3(
    signature = (stock, unit, taken_ml, total_ml, *, errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(stock, unit, taken_ml, total_ml, *, errors='raise', out=None, where=None)"
)]
pub fn strength_after_make_up<'py>(
    py: Python<'py>,
    stock: Column<'py>,
    unit: &str,
    taken_ml: Column<'py>,
    total_ml: Column<'py>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Bound<'py, PyAny>> {
    fn by<Q: VolumeStrength>(stock: f64, taken: Volume, total: Volume) -> Result<f64, MakeUpError> {
        Ok(peroxide::strength_after_make_up(Q::from_unit(stock)?, taken, total)?.in_unit())
    }
    let unit = by_volume(unit)?;
    let scalar = match unit {
        StrengthUnit::MolPerL => by::<AmountConcentration>,
        StrengthUnit::EqPerL => by::<Normality>,
        StrengthUnit::Volumes => by::<OxygenVolumes>,
        _ => by::<MassConcentration>,
    };
    let scale = scale(unit);
    let rule = |[stock, taken, total]: [f64; 3]| {
        Ok::<_, MakeUpError>([scalar(stock * scale, Volume::from_ml(taken)?, Volume::from_ml(total)?)? / scale])
    };
    let kernel = |[stock, taken, total]: [Cells<'_>; 3], [out]: [&mut [f64]; 1]| {
        column::strengths_after_make_up(stock, unit, taken, total, out)
    };
    let [found] = apply_kernel(py, [&stock, &taken_ml, &total_ml], How::new(errors, out, r#where)?, rule, kernel)?;
    Ok(found)
}

fn by_volume(unit: &str) -> PyResult<StrengthUnit> {
    let unit: StrengthUnit = unit.parse().map_err(raise)?;
    if unit.is_by_mass() {
        let text = format!("{unit} counts by mass: weigh it (dilute), or convert it to a unit that counts by volume");
        return Err(FoilworkError::new_err(text));
    }
    Ok(unit)
}

answer! {
    in "foilwork.peroxide";
    /// A clear solution diluted with water by measuring cylinder; made by ``dilute_volume``. Floats for numbers, else float64
    /// arrays.
    VolumeDilution {
        /// Stock to measure, in mL.
        stock_ml: Estimate<Figures>,
        /// Water to measure, in mL.
        water_ml: Estimate<Figures>,
        /// What the two come to once mixed, in mL: the volume asked for.
        total_ml: Figures,
        /// How much the sum of the two shrinks on mixing, in mL.
        contraction_ml: Estimate<Figures>,
    }
}

/// Split a volume into volumes of stock and water, with the contraction allowed for.
///
/// Clear solutions only, all at one temperature. Weighing (``dilute``) is exact; this is as good as the densities.
///
/// Args:
///     stock_ww_percent: strength of the stock in % w/w, a number or an array.
///     target_ww_percent: strength wanted in % w/w, a number or an array.
///     total_ml: volume wanted in mL, a number or an array.
///     temperature_c: temperature in C, a number or an array.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row cannot be; an ``OutOfRangeWarning`` counts them.
///     out: a tuple of nine arrays of float64 for the results: stock, water and contraction, each the lower bound, the best
///         estimate and the upper bound; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     What to measure, with the bounds of the densities.
///
/// Raises:
///     FoilworkError: a target above the stock, a zero volume, or no density.
///
/// Source:
///     Conservation of mass and of peroxide; ``density_interval``.
///
/// Examples:
///     >>> from foilwork.peroxide import dilute_volume
///     >>> made = dilute_volume(35, 3, 1000)
///     >>> round(made.stock_ml.best, 1), round(made.water_ml.best, 1), round(made.contraction_ml.best, 1)
///     (76.4, 924.0, 0.5)
///     >>> dilute_volume(35, [3, 6], 1000).stock_ml.best.round(1).tolist()
///     [76.4, 154.5]
#[pyfunction]
#[pyo3(
    signature = (stock_ww_percent, target_ww_percent, total_ml, *, temperature_c = Column::Number(20.0), errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(stock_ww_percent, target_ww_percent, total_ml, *, temperature_c=20.0, errors='raise', out=None, where=None)"
)]
pub fn dilute_volume<'py>(
    py: Python<'py>,
    stock_ww_percent: Column<'py>,
    target_ww_percent: Column<'py>,
    total_ml: Column<'py>,
    temperature_c: Column<'py>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<VolumeDilution> {
    let rule = |[stock, target, total, celsius]: [f64; 4]| {
        let (stock, target) = (MassFraction::from_ww_percent(stock)?, MassFraction::from_ww_percent(target)?);
        let (total, temperature) = (Volume::from_ml(total)?, Temperature::from_celsius(celsius)?);
        let made = peroxide::dilute_volume(stock, target, total, temperature)?;
        let volumes = [made.stock, made.water, made.contraction()].map(|volume| volume.to_array().map(Volume::ml));
        let [[a, b, c], [d, e, f], [g, h, i]] = volumes;
        Ok::<_, PourError>([a, b, c, d, e, f, g, h, i])
    };
    let kernel = |[stock, target, total, celsius]: [Cells<'_>; 4], out: [&mut [f64]; 9]| {
        column::dilutions_by_volume([stock, target], total, celsius, out)
    };
    let columns = [&stock_ww_percent, &target_ww_percent, &total_ml, &temperature_c];
    let found = apply_kernel(py, columns, How::new(errors, out, r#where)?, rule, kernel)?;
    let [a, b, c, d, e, f, g, h, i] = found.map(Figures::from);
    Ok(VolumeDilution {
        stock_ml: Estimate([a, b, c]),
        water_ml: Estimate([d, e, f]),
        total_ml: total_ml.given(py).into(),
        contraction_ml: Estimate([g, h, i]),
    })
}

answer! {
    in "foilwork.peroxide";
    /// What comes of pouring measured volumes together; made by ``mix_volumes``.
    PouredMixture {
        /// The strength of the whole in % w/w.
        strength_ww_percent: Estimate<f64>,
        /// The mass of the whole in g.
        total_g: Estimate<f64>,
        /// The volumes added up, in mL.
        poured_ml: f64,
        /// The volume of the mixture in mL: a little less.
        volume_ml: Estimate<f64>,
    }
}

/// Strength and volume of clear solutions that are measured by volume and poured together.
///
/// Args:
///     strengths_ww_percent: strength of each part in % w/w, a number or ``Bounds``.
///     volumes_ml: volume of each part in mL.
///     temperature_c: temperature in C.
///
/// Returns:
///     The mixture, with the bounds of the densities and of the strengths.
///
/// Raises:
///     FoilworkError: no volume at all, no density, or not one volume for each strength.
///
/// Source:
///     Conservation of mass and of peroxide; ``density_interval``.
///
/// Examples:
///     >>> from foilwork.peroxide import mix_volumes
///     >>> mixed = mix_volumes([50, 0], [100, 100])
///     >>> round(mixed.strength_ww_percent.best, 1), mixed.poured_ml, round(mixed.volume_ml.best, 1)
///     (27.2, 200.0, 199.4)
#[pyfunction]
#[pyo3(signature = (strengths_ww_percent, volumes_ml, *, temperature_c = 20.0))]
pub fn mix_volumes(
    strengths_ww_percent: Strengths,
    volumes_ml: Column<'_>,
    temperature_c: f64,
) -> PyResult<PouredMixture> {
    let (strengths, volumes) = (strengths_ww_percent.0, volumes_ml.to_vec()?);
    if strengths.len() != volumes.len() {
        let text =
            format!("{} strengths and {} volumes: give one volume for each strength", strengths.len(), volumes.len());
        return Err(FoilworkError::new_err(text));
    }
    let temperature = Temperature::from_celsius(temperature_c).map_err(raise)?;
    let part = |(strength, volume)| Ok((strength, Volume::from_ml(volume).map_err(raise)?));
    let parts = strengths.into_iter().zip(volumes).map(part).collect::<PyResult<Vec<_>>>()?;
    let mixed = peroxide::mix_volumes(&parts, temperature).map_err(raise)?;
    Ok(PouredMixture {
        strength_ww_percent: mixed.strength.into(),
        total_g: mixed.total.into(),
        poured_ml: mixed.poured.ml(),
        volume_ml: mixed.volume.into(),
    })
}
