use super::cubic::Cubic;
use crate::{
    quantity::{Density, MassFraction, Quantity, Temperature},
    source::Interval,
};

/// Strongest solution with a known density, in percent w/w.
pub(crate) const MAX_STRENGTH_WW: f64 = 70.0;
/// Warmest solution with a known density, in degrees Celsius.
pub(crate) const MAX_CELSIUS: f64 = 50.0;

/// Why there is no density to be had.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum DensityError {
    /// Beyond the strengths the coefficients are checked for.
    #[error("no density for {strength}: known from 0 to 70 % w/w (measure the density and give it in g/mL)")]
    Strength {
        /// The strength asked for.
        strength: MassFraction,
    },
    /// Beyond the temperatures the coefficients are checked for.
    #[error("no density at {temperature}: known from 0 to 50 C (measure the density and give it in g/mL)")]
    Temperature {
        /// The temperature asked for.
        temperature: Temperature,
    },
}

/// Density of aqueous hydrogen peroxide, with the bounds within which the independent tables agree.
///
/// For solutions in water from 0 to 70 % w/w and 0 to 50 C. A cream developer is an emulsion and not this:
/// see [`SolutionDensity`](super::SolutionDensity).
///
/// # Units
///
/// Strength in % w/w, temperature in C, density in g/mL. The bounds are 0.0005 g/mL either way up to 50 % w/w and
/// widen evenly to 0.0012 g/mL at 70 % w/w.
///
/// # Errors
///
/// [`DensityError`] outside 0 to 70 % w/w or 0 to 50 C.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::density, quantity::{MassFraction, Temperature}};
///
/// let rho = density(MassFraction::from_ww_percent(12.0)?, Temperature::REFERENCE)?;
/// assert_eq!(format!("{:.4}", rho.best()), "1.0415 g/mL");
/// assert!(rho.high().g_per_ml() - rho.low().g_per_ml() < 0.0011);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Water: Kell, J. Chem. Eng. Data 20 (1975) 97 ([`WATER`]; agrees with IAPWS-95 to 4e-6 g/mL). Peroxide: a cubic in mass fraction
/// and temperature whose printed coefficients name no literature source ([`MIXTURE_DENSITY`]); the form is the one fitted to Easton,
/// Mitchell & Wynne-Jones ([`EASTON`]; 1952, measured from 0 to 96 C, fit within 1 part in 5000). It was preferred to a new fit
/// because the independent points are of one temperature (18 C) or rounded to two or three figures. Against the handbook
/// column at 18 C it is within 0.0003 g/mL up to 50 % and 0.0011 g/mL up to 70 %: hence the bounds.
///
/// [`WATER`]: crate::source::citations::peroxide::WATER
/// [`MIXTURE_DENSITY`]: crate::source::citations::peroxide::MIXTURE_DENSITY
/// [`EASTON`]: crate::source::citations::peroxide::EASTON
pub fn density(strength: MassFraction, temperature: Temperature) -> Result<Interval<Density>, DensityError> {
    let cubic = aqueous(temperature)?;
    if strength.ww_percent() > MAX_STRENGTH_WW {
        return Err(DensityError::Strength { strength });
    }
    let (best, half) = (cubic.at(strength.fraction()), half_width(strength.ww_percent()));
    Ok(Interval::ordered(best - half, best, best + half).map(Density::nearest))
}

/// The density of a solution whose strength has bounds.
pub(crate) fn density_of(
    strength: Interval<MassFraction>,
    temperature: Temperature,
) -> Result<Interval<Density>, DensityError> {
    let [low, best, high] = strength.to_array().map(|strength| density(strength, temperature));
    Ok(best?.widened_to(low?).widened_to(high?))
}

/// The cubic of aqueous peroxide where it is known.
#[inline]
pub(crate) fn aqueous(temperature: Temperature) -> Result<Cubic, DensityError> {
    let t = temperature.celsius();
    if (0.0..=MAX_CELSIUS).contains(&t) {
        Ok(Cubic::aqueous(t))
    } else {
        Err(DensityError::Temperature { temperature })
    }
}

/// Half the width of the density interval in g/mL.
#[inline]
pub(crate) fn half_width(ww_percent: f64) -> f64 {
    0.0005 + 0.0007 * ((ww_percent - 50.0) / 20.0).max(0.0)
}
