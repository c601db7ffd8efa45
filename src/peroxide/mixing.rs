use super::{
    blend::BlendError,
    density::{DensityError, density},
};
use crate::{
    quantity::{InvalidQuantity, Mass, MassFraction, Temperature, Volume},
    source::InvalidInterval,
};

/// What comes of stirring parts together.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mixture {
    /// The strength of the whole.
    pub strength: MassFraction,
    /// The mass of the whole.
    pub total: Mass,
}

/// Strength and mass of parts stirred together, whatever their order.
///
/// # Units
///
/// Strengths in % w/w, masses in g.
///
/// # Errors
///
/// [`BlendError::Nothing`] when there is no mass at all.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::mix, quantity::{Mass, MassFraction}};
///
/// let part = |percent, g| Ok::<_, foilwork::quantity::InvalidQuantity>((MassFraction::from_percent_ww(percent)?, Mass::from_g(g)?));
/// let mixed = mix(&[part(12.0, 30.0)?, part(6.0, 30.0)?])?;
/// assert_eq!((mixed.strength.percent_ww(), mixed.total.g()), (9.0, 60.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn mix(parts: &[(MassFraction, Mass)]) -> Result<Mixture, BlendError> {
    let total: Mass = parts.iter().map(|(_, mass)| *mass).sum();
    if total == Mass::ZERO {
        return Err(BlendError::Nothing { what: "total" });
    }
    let peroxide: f64 = parts.iter().map(|(strength, mass)| strength.percent_ww() * mass.g()).sum();
    // A mean cannot leave the range of what it is the mean of; rounding can.
    let (low, high) = parts
        .iter()
        .filter(|(_, mass)| *mass > Mass::ZERO)
        .fold((100.0_f64, 0.0_f64), |(low, high), part| (low.min(part.0.percent_ww()), high.max(part.0.percent_ww())));
    let mean = (peroxide / total.g()).max(low).min(high);
    Ok(Mixture { strength: MassFraction::from_percent_ww(mean)?, total: Mass::from_g(total.g())? })
}

/// What comes of pouring measured volumes of clear solutions together.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PouredMixture {
    /// The strength of the whole.
    pub strength: MassFraction,
    /// The mass of the whole.
    pub total: Mass,
    /// The volumes added up, before mixing.
    pub poured: Volume,
    /// The volume of the mixture: a little less, as peroxide and water draw together.
    pub volume: Volume,
}

/// Why volumes cannot be mixed on paper.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum PourError {
    /// Nothing, or not a blend.
    #[error(transparent)]
    Blend(#[from] BlendError),
    /// No density, no mass.
    #[error(transparent)]
    Density(#[from] DensityError),
    /// Not a volume.
    #[error(transparent)]
    Quantity(#[from] InvalidQuantity),
    /// Bounds out of order; does not happen with densities that are positive.
    #[error(transparent)]
    Interval(#[from] InvalidInterval),
}

/// Strength and volume of clear solutions that are measured by volume, with their contraction.
///
/// # Units
///
/// Strengths in % w/w, volumes in mL, both at the temperature given. Densities as in [`density`](super::density): the
/// contraction is a small difference between densities, 0.3 % for 50 % and water but below their uncertainty (0.05 %)
/// under about 20 % w/w.
///
/// # Errors
///
/// [`PourError`] when there is no volume, or no density at that strength and temperature.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::mix_volumes, quantity::{MassFraction, Temperature, Volume}};
///
/// let (stock, ml) = (MassFraction::from_percent_ww(50.0)?, Volume::from_ml(100.0)?);
/// let mixed = mix_volumes(&[(stock, ml), (MassFraction::ZERO, ml)], Temperature::REFERENCE)?;
/// assert_eq!(format!("{:.1}, {:.0}", mixed.strength, mixed.volume), "27.2 % w/w, 199 mL");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn mix_volumes(parts: &[(MassFraction, Volume)], temperature: Temperature) -> Result<PouredMixture, PourError> {
    let mut weighed = Vec::with_capacity(parts.len());
    let mut poured = 0.0;
    for (strength, volume) in parts {
        let mass = volume.ml() * density(*strength, temperature)?.best().g_per_ml();
        weighed.push((*strength, Mass::from_g(mass)?));
        poured += volume.ml();
    }
    let mixed = mix(&weighed)?;
    let volume = Volume::from_ml(mixed.total.g() / density(mixed.strength, temperature)?.best().g_per_ml())?;
    Ok(PouredMixture { strength: mixed.strength, total: mixed.total, poured: Volume::from_ml(poured)?, volume })
}
