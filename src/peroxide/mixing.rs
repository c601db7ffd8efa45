use super::{
    blend::BlendError,
    density::{DensityError, density_of},
};
use crate::{
    quantity::{InvalidQuantity, Mass, MassFraction, Quantity, Temperature, Volume},
    source::Interval,
};

/// What comes of stirring parts together.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mixture {
    /// The strength of the whole.
    pub strength: Interval<MassFraction>,
    /// The mass of the whole.
    pub total: Mass,
}

/// Strength and mass of parts stirred together, whatever their order.
///
/// A part without peroxide takes part with a strength of 0 % w/w and so dilutes the rest. Bounds are carried over as if
/// the parts were all low or all high at once, which is the widest the whole can be; exact strengths give an exact one.
///
/// # Units
///
/// Strengths in % w/w, masses in g. By volume the answer is another one: [`mix_volumes`].
///
/// # Errors
///
/// [`BlendError::Nothing`] when there is no mass at all.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::mix_strengths, quantity::{Mass, MassFraction}};
///
/// let part = |percent, g| Ok::<_, foilwork::quantity::InvalidQuantity>((MassFraction::from_ww_percent(percent)?, Mass::from_g(g)?));
/// let mixed = mix_strengths(&[part(12.0, 30.0)?, part(6.0, 30.0)?])?;
/// assert_eq!((mixed.strength.best().ww_percent(), mixed.total.g()), (9.0, 60.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Conservation of mass and of peroxide; no tabulated value.
pub fn mix_strengths<S: Copy + Into<Interval<MassFraction>>>(parts: &[(S, Mass)]) -> Result<Mixture, BlendError> {
    let strength = mean_strength(parts.iter().map(|&(strength, mass)| (strength.into(), mass)));
    let strength = strength.ok_or(BlendError::Nothing { what: "total" })?;
    let total: Mass = parts.iter().map(|(_, mass)| *mass).sum();
    Ok(Mixture { strength, total: Mass::from_g(total.g())? })
}

/// Strength of two parts stirred together, each a strength and its mass: a product and its developer, say.
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
/// use foilwork::{peroxide::mix_two, quantity::{Mass, MassFraction}};
///
/// let (cream, developer) = (MassFraction::ZERO, MassFraction::from_ww_percent(9.0)?);
/// let bowl = mix_two((cream, Mass::from_g(30.0)?), (developer, Mass::from_g(60.0)?))?;
/// assert_eq!(bowl.ww_percent(), 6.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Conservation of mass and of peroxide; no tabulated value.
pub fn mix_two(first: (MassFraction, Mass), second: (MassFraction, Mass)) -> Result<MassFraction, BlendError> {
    mix_strengths(&[first, second]).map(|mixed| mixed.strength.best())
}

/// The mean of strengths by mass, with their bounds; none when there is no mass.
pub(crate) fn mean_strength(
    parts: impl Iterator<Item = (Interval<MassFraction>, Mass)> + Clone,
) -> Option<Interval<MassFraction>> {
    let mean = |bound: fn(&Interval<MassFraction>) -> MassFraction| {
        mean(parts.clone().map(|(strength, mass)| (bound(&strength), mass)))
    };
    Some(Interval::ordered(mean(Interval::low)?, mean(Interval::best)?, mean(Interval::high)?))
}

/// The mean of strengths by mass, never outside the weakest and the strongest part, also not in the last bit.
fn mean(parts: impl Iterator<Item = (MassFraction, Mass)>) -> Option<MassFraction> {
    let (mut total, mut peroxide) = (0.0, 0.0);
    let (mut weakest, mut strongest) = (f64::INFINITY, f64::NEG_INFINITY);
    for (strength, mass) in parts.filter(|(_, mass)| *mass > Mass::ZERO) {
        let percent = strength.ww_percent();
        total += mass.g();
        peroxide += mass.g() * percent;
        weakest = percent.min(weakest);
        strongest = percent.max(strongest);
    }
    (total > 0.0).then(|| MassFraction::nearest((peroxide / total).max(weakest).min(strongest)))
}

/// What comes of pouring measured volumes of clear solutions together; the bounds are those of the densities and of the
/// strengths.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PouredMixture {
    /// The strength of the whole.
    pub strength: Interval<MassFraction>,
    /// The mass of the whole.
    pub total: Interval<Mass>,
    /// The volumes added up, before mixing.
    pub poured: Volume,
    /// The volume of the mixture: a little less, as peroxide and water draw together.
    pub volume: Interval<Volume>,
}

/// Why volumes cannot be mixed on paper.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum PourError {
    /// No volume at all, or not a blend.
    #[error(transparent)]
    Blend(#[from] BlendError),
    /// No density, no mass.
    #[error(transparent)]
    Density(#[from] DensityError),
    /// Not a volume.
    #[error(transparent)]
    Quantity(#[from] InvalidQuantity),
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
/// let (stock, ml) = (MassFraction::from_ww_percent(50.0)?, Volume::from_ml(100.0)?);
/// let mixed = mix_volumes(&[(stock, ml), (MassFraction::ZERO, ml)], Temperature::REFERENCE)?;
/// assert_eq!(format!("{:.1}, {:.0}", mixed.strength.best(), mixed.volume.best()), "27.2 % w/w, 199 mL");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Conservation of mass and of peroxide, with the densities of [`density`](super::density).
pub fn mix_volumes<S: Copy + Into<Interval<MassFraction>>>(
    parts: &[(S, Volume)],
    temperature: Temperature,
) -> Result<PouredMixture, PourError> {
    let mut weighed = Vec::with_capacity(parts.len());
    let mut poured = 0.0;
    for &(strength, volume) in parts {
        let strength = strength.into();
        let density = density_of(strength, temperature)?;
        weighed.push((strength, density.try_map(|density| Mass::from_g(volume.ml() * density.g_per_ml()))?));
        poured += volume.ml();
    }
    let strength = uncertain_mean(&weighed).ok_or(BlendError::Nothing { what: "total" })?;
    let sum = |bound: fn(&Interval<Mass>) -> Mass| weighed.iter().map(|(_, mass)| bound(mass)).sum();
    let total: Interval<Mass> = Interval::ordered(sum(Interval::low), sum(Interval::best), sum(Interval::high));
    let density = density_of(strength, temperature)?;
    let volume = total.try_combine(density, |total, density| Volume::from_ml(total.g() / density.g_per_ml()))?;
    Ok(PouredMixture { strength, total, poured: Volume::from_ml(poured)?, volume })
}

/// The mean by masses that have bounds themselves: strongest when everything above some strength is heavy and the rest
/// is light, weakest the other way round.
fn uncertain_mean(parts: &[(Interval<MassFraction>, Interval<Mass>)]) -> Option<Interval<MassFraction>> {
    let best = mean(parts.iter().map(|(strength, mass)| (strength.best(), mass.best())))?;
    let mut bounds = Interval::exact(best);
    for (pivot, _) in parts {
        let weigh = |heavy: bool, mass: &Interval<Mass>| if heavy { mass.high() } else { mass.low() };
        let strong = mean(parts.iter().map(|(s, mass)| (s.high(), weigh(s.high() >= pivot.high(), mass))))?;
        let weak = mean(parts.iter().map(|(s, mass)| (s.low(), weigh(s.low() <= pivot.low(), mass))))?;
        bounds = bounds.widened_to(Interval::ordered(weak, best, strong));
    }
    Some(bounds)
}
