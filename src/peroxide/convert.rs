use super::{
    conditions::Conditions,
    density::DensityError,
    formula::{Ratio, from_g_per_l, from_ww_percent, g_per_l, max_g_per_l, to_g_per_l, to_ww_percent, ww_percent},
    strength::{Strength, StrengthQuantity},
    unit::StrengthUnit,
};
use crate::{
    quantity::{InvalidQuantity, MassFraction},
    source::Interval,
};

/// Why a strength cannot be put into another unit.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ConversionError {
    /// The result is no possible quantity, for example more than 100 % w/w.
    #[error(transparent)]
    Quantity(#[from] InvalidQuantity),
    /// A density is needed and there is none.
    #[error(transparent)]
    Density(#[from] DensityError),
    /// Stronger by volume than any solution of known density.
    #[error("no density for {strength}: stronger than 70 % w/w (measure the density and give it in g/mL)")]
    BeyondDensity {
        /// The strength that was given.
        strength: Strength,
    },
}

/// Puts a strength into another unit, keeping both types visible.
///
/// The fastest way when both units are known: `convert_to::<OxygenVolumes>(mass_fraction, &conditions)`. Gives the best
/// value; [`convert_interval`] adds the bounds that come from the density.
///
/// # Units
///
/// Those of the two types. A density is used only between mass and volume.
///
/// # Errors
///
/// [`ConversionError`] when a density is needed and unknown, or the result is out of range.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::{Conditions, convert_to}, quantity::{MassFraction, OxygenVolumes}};
///
/// let bottle = MassFraction::from_ww_percent(12.0)?;
/// let volumes: OxygenVolumes = convert_to(bottle, &Conditions::default())?;
/// assert_eq!(format!("{volumes:.1}"), "41.2 volumes"); // not 40: that is the label
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// `volumes = c Vm / 2` and 2 equivalents per mole (British Pharmacopoeia assay); density as in
/// [`density`](super::density).
#[inline]
pub fn convert_to<To: StrengthQuantity>(
    strength: impl StrengthQuantity + Into<Strength>,
    conditions: &Conditions,
) -> Result<To, ConversionError> {
    Ok(To::from_unit(number(strength.in_unit(), unit_of(&strength), To::STRENGTH_UNIT, conditions)?)?)
}

const fn unit_of<Q: StrengthQuantity>(_: &Q) -> StrengthUnit {
    Q::STRENGTH_UNIT
}

/// Puts a strength into another unit chosen while the program runs: the best value.
///
/// # Errors
///
/// [`ConversionError`] when a density is needed and unknown, or the result is out of range.
///
/// # Example
///
/// ```
/// use foilwork::peroxide::{Conditions, Strength, StrengthUnit, convert};
///
/// let bottle = Strength::of(6.0, StrengthUnit::WvPercent)?;
/// let volumes = convert(bottle, "volumes".parse()?, &Conditions::default())?;
/// assert_eq!(format!("{volumes:.2}"), "19.77 volumes");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// As for [`convert_to`].
pub fn convert(strength: Strength, to: StrengthUnit, conditions: &Conditions) -> Result<Strength, ConversionError> {
    Ok(Strength::of(number(strength.number(), strength.unit(), to, conditions)?, to)?)
}

/// Puts a strength into another unit, with the bounds that come from the density and those that it has already.
///
/// Exact (no width) when the strength is and no density stands between the two units.
///
/// # Errors
///
/// [`ConversionError`] when a density is needed and unknown, or the result is out of range.
///
/// # Example
///
/// ```
/// use foilwork::peroxide::{Conditions, SolutionDensity, Strength, StrengthUnit, convert_interval};
///
/// let cream = Conditions::default().with_density(SolutionDensity::Emulsion);
/// let bottle = Strength::of(6.0, StrengthUnit::WwPercent)?;
/// let volumes = convert_interval(bottle, StrengthUnit::Volumes, &cream)?;
/// assert_eq!(format!("{:.1} to {:.1}", volumes.low(), volumes.high()), "18.5 volumes to 20.6 volumes");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// As for [`convert_to`]; the bounds are those of [`density`](super::density) or of the
/// [`SolutionDensity`](super::SolutionDensity) in use.
pub fn convert_interval(
    strength: impl Into<Interval<Strength>>,
    to: StrengthUnit,
    conditions: &Conditions,
) -> Result<Interval<Strength>, ConversionError> {
    let strength = strength.into();
    let best = with_bounds(strength.best(), to, conditions)?;
    if strength.is_exact() {
        return Ok(best);
    }
    let [low, high] = [strength.low(), strength.high()].map(|bound| with_bounds(bound, to, conditions));
    Ok(best.widened_to(low?).widened_to(high?))
}

/// [`convert_interval`] to a unit that the type names, as [`convert_to`].
///
/// # Errors
///
/// [`ConversionError`] when a density is needed and unknown, or the result is out of range.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::{Conditions, convert_interval_to}, quantity::{AmountConcentration, MassFraction}};
/// use foilwork::source::Interval;
///
/// let titrated = [0.87, 0.88, 0.89].map(AmountConcentration::from_mol_per_l);
/// let [low, best, high] = titrated;
/// let bottle = convert_interval_to::<MassFraction>(Interval::new(low?, best?, high?)?, &Conditions::default())?;
/// assert_eq!(format!("{:.2} to {:.2}", bottle.low(), bottle.high()), "2.93 % w/w to 3.00 % w/w");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn convert_interval_to<To: StrengthQuantity>(
    strength: impl Into<Interval<Strength>>,
    conditions: &Conditions,
) -> Result<Interval<To>, ConversionError> {
    let found = convert_interval(strength, To::STRENGTH_UNIT, conditions)?;
    Ok(found.map(|strength| To::nearest(strength.number())))
}

/// One strength in another unit, with the bounds of the density.
fn with_bounds(
    strength: Strength,
    to: StrengthUnit,
    conditions: &Conditions,
) -> Result<Interval<Strength>, ConversionError> {
    let best = convert(strength, to, conditions)?;
    if strength.unit().is_by_mass() == to.is_by_mass() {
        return Ok(Interval::exact(best));
    }
    let ww_percent = number(strength.number(), strength.unit(), StrengthUnit::WwPercent, conditions)?;
    let (low, high) = conditions.relative_bounds(ww_percent, conditions.cubic()?.at(ww_percent / 100.0));
    let bound = |factor: f64| {
        let shifted = if to.is_by_mass() {
            from_ww_percent((ww_percent / factor).min(100.0), to)
        } else {
            best.number() * factor
        };
        Strength::nearest(shifted, to)
    };
    Ok(Interval::ordered(bound(low), best, bound(high)))
}

/// The whole conversion on plain numbers. The input is taken as checked; the result still has to be.
#[expect(clippy::inline_always, reason = "a column loop calls it for every row")]
#[inline(always)]
fn number(x: f64, from: StrengthUnit, to: StrengthUnit, conditions: &Conditions) -> Result<f64, ConversionError> {
    if from as u8 == to as u8 {
        return Ok(x);
    }
    let vm = conditions.molar_volume;
    match (from.is_by_mass(), to.is_by_mass()) {
        (true, true) => Ok(from_ww_percent(to_ww_percent(x, from), to)),
        (false, false) => Ok(Ratio::between(from, to, vm).apply(x)),
        (true, false) => {
            let percent = to_ww_percent(x, from);
            let cubic = conditions.cubic()?;
            if percent > conditions.max_ww_percent() {
                return Err(too_strong(percent));
            }
            Ok(from_g_per_l(g_per_l(percent, &cubic), to, vm))
        }
        (false, true) => {
            let (cubic, limit) = (conditions.cubic()?, conditions.max_ww_percent());
            let concentration = to_g_per_l(x, from, vm);
            if concentration > max_g_per_l(limit, &cubic) {
                return Err(beyond_density(x, from));
            }
            Ok(from_ww_percent(ww_percent(concentration, &cubic).min(limit), to))
        }
    }
}

/// The error for a strength by mass without a density; out of the way of the arithmetic.
#[cold]
fn too_strong(ww_percent: f64) -> ConversionError {
    MassFraction::from_ww_percent(ww_percent)
        .map_or_else(ConversionError::from, |strength| DensityError::Strength { strength }.into())
}

/// The same for a strength by volume.
#[cold]
fn beyond_density(number: f64, unit: StrengthUnit) -> ConversionError {
    Strength::of(number, unit)
        .map_or_else(ConversionError::from, |strength| ConversionError::BeyondDensity { strength })
}
