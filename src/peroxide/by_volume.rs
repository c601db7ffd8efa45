use super::{
    blend::BlendError,
    density::density,
    mixing::PourError,
    strength::{Strength, StrengthQuantity},
};
use crate::{
    quantity::{
        AmountConcentration, InvalidQuantity, MassConcentration, MassFraction, Normality, OxygenVolumes, Quantity,
        Temperature, Volume,
    },
    source::Interval,
};

/// A strength counted by volume of solution, so that `c1 V1 = c2 V2` holds when it is made up to the mark.
pub trait VolumeStrength: StrengthQuantity + Into<Strength> {}

impl VolumeStrength for MassConcentration {}
impl VolumeStrength for AmountConcentration {}
impl VolumeStrength for Normality {}
impl VolumeStrength for OxygenVolumes {}

/// The one volume that is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum KnownVolume {
    /// How much is wanted altogether.
    Total(Volume),
    /// How much stock there is.
    Stock(Volume),
}

/// Stock and final volume of a solution made up to the mark.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MakeUp {
    /// Take this much stock.
    pub stock: Volume,
    /// Add diluent up to this mark. How much that is depends on the contraction; nobody needs to know.
    pub total: Volume,
}

/// Why a volume cannot be worked out.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum MakeUpError {
    /// Diluting never strengthens.
    #[error("cannot reach {target} from a {stock} stock: anything from 0 to {stock} is reachable")]
    TargetAboveStock {
        /// Strength of the stock.
        stock: Strength,
        /// Strength asked for.
        target: Strength,
    },
    /// An amount of zero is asked for.
    #[error("the {what} is zero: give more than 0")]
    Nothing {
        /// What.
        what: &'static str,
    },
    /// More stock than the flask holds.
    #[error("{taken} of stock do not fit into {total}: take less, or make up to a higher mark")]
    AboveMark {
        /// Volume of stock.
        taken: Volume,
        /// The mark.
        total: Volume,
    },
    /// Not a volume.
    #[error(transparent)]
    Quantity(#[from] InvalidQuantity),
}

/// Makes a solution up to the mark: `c1 V1 = c2 V2`, exact whatever the contraction.
///
/// # Units
///
/// Volumes in mL; both strengths in one unit that counts by volume, which the type sees to.
///
/// # Errors
///
/// [`MakeUpError`] when the target is above the stock or something is zero.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::{KnownVolume, make_up}, quantity::{OxygenVolumes, Volume}};
///
/// let (stock, target) = (OxygenVolumes::from_volumes(100.0)?, OxygenVolumes::from_volumes(20.0)?);
/// let made = make_up(stock, target, KnownVolume::Total(Volume::from_ml(500.0)?))?;
/// assert_eq!(made.stock.ml(), 100.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Conservation of the solute; OpenStax, Chemistry 2e, section on molarity, for the form.
pub fn make_up<Q: VolumeStrength>(stock: Q, target: Q, known: KnownVolume) -> Result<MakeUp, MakeUpError> {
    if target > stock {
        return Err(MakeUpError::TargetAboveStock { stock: stock.into(), target: target.into() });
    }
    let (from, to) = (stock.in_unit(), target.in_unit());
    match known {
        KnownVolume::Total(v) if v.ml() == 0.0 => Err(MakeUpError::Nothing { what: "total volume" }),
        KnownVolume::Stock(v) if v.ml() == 0.0 => Err(MakeUpError::Nothing { what: "volume of stock" }),
        _ if from == 0.0 => Err(MakeUpError::Nothing { what: "strength of the stock" }),
        KnownVolume::Stock(_) if to == 0.0 => Err(MakeUpError::Nothing { what: "target" }),
        KnownVolume::Total(total) => Ok(MakeUp { stock: Volume::from_ml(total.ml() * to / from)?, total }),
        KnownVolume::Stock(stock) => Ok(MakeUp { stock, total: Volume::from_ml(stock.ml() * from / to)? }),
    }
}

/// The strength after a volume of stock is made up to the mark.
///
/// # Units
///
/// Volumes in mL; the strength keeps its unit.
///
/// # Errors
///
/// [`MakeUpError`] when the mark is zero or below the volume of stock.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::strength_after_make_up, quantity::{MassConcentration, Volume}};
///
/// let stock = MassConcentration::from_wv_percent(3.0)?;
/// let weak = strength_after_make_up(stock, Volume::from_ml(417.0)?, Volume::from_ml(10_000.0)?)?;
/// assert_eq!(format!("{:.4}", weak.wv_percent()), "0.1251");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Conservation of the solute.
pub fn strength_after_make_up<Q: VolumeStrength>(stock: Q, taken: Volume, total: Volume) -> Result<Q, MakeUpError> {
    if total.ml() == 0.0 {
        return Err(MakeUpError::Nothing { what: "total volume" });
    }
    if taken > total {
        return Err(MakeUpError::AboveMark { taken, total });
    }
    Ok(Q::from_unit(stock.in_unit() * taken.ml() / total.ml())?)
}

/// A clear solution diluted with water by measuring cylinder.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct VolumeDilution {
    /// Stock to measure.
    pub stock: Interval<Volume>,
    /// Water to measure.
    pub water: Interval<Volume>,
    /// What the two come to once mixed: the volume asked for.
    pub total: Volume,
}

impl VolumeDilution {
    /// How much the volume shrinks on mixing: stock and water less the total. Below about 20 % w/w it is smaller than the
    /// uncertainty of the densities, so the lower bound is 0 mL there.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{peroxide::dilute_volume, quantity::{MassFraction, Temperature, Volume}};
    ///
    /// let (stock, target) = (MassFraction::from_ww_percent(35.0)?, MassFraction::from_ww_percent(3.0)?);
    /// let made = dilute_volume(stock, target, Volume::from_ml(1000.0)?, Temperature::REFERENCE)?;
    /// // 76.4 mL and 924.0 mL come to 1000 mL: less than half a millilitre goes.
    /// assert!(made.contraction().best().ml() < 0.5);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn contraction(&self) -> Interval<Volume> {
        self.stock.combine(self.water, |stock, water| Volume::nearest(stock.ml() + water.ml() - self.total.ml()))
    }
}

/// Splits a wanted volume into volumes of stock and water, all at one temperature, with the contraction allowed for.
///
/// Weighing ([`dilute`](super::dilute)) is exact; this is as good as the densities.
///
/// # Units
///
/// Strengths in % w/w, volumes in mL at the temperature given in C.
///
/// # Errors
///
/// [`PourError`] when the target is above the stock, the amount asked for is zero, or there is no density.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::dilute_volume, quantity::{MassFraction, Temperature, Volume}};
///
/// let (stock, target) = (MassFraction::from_ww_percent(35.0)?, MassFraction::from_ww_percent(3.0)?);
/// let made = dilute_volume(stock, target, Volume::from_ml(1000.0)?, Temperature::REFERENCE)?;
/// assert_eq!(format!("{:.1} and {:.1}", made.stock.best(), made.water.best()), "76.4 mL and 924.0 mL");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Conservation of mass and of peroxide, with the densities of [`density`](super::density).
pub fn dilute_volume(
    stock: MassFraction,
    target: MassFraction,
    total: Volume,
    temperature: Temperature,
) -> Result<VolumeDilution, PourError> {
    if total.ml() == 0.0 {
        return Err(BlendError::Nothing { what: "total volume" }.into());
    }
    if target > stock {
        let weakest = MassFraction::ZERO;
        return Err(BlendError::AboveStrongest { target, strongest: stock, weakest }.into());
    }
    let (of_stock, of_target) = (density(stock, temperature)?, density(target, temperature)?);
    let of_water = density(MassFraction::ZERO, temperature)?.best().g_per_ml();
    let share = if stock == MassFraction::ZERO { 0.0 } else { target.fraction() / stock.fraction() };
    let measured = of_target.try_combine(of_stock, |target, stock| {
        Volume::from_ml(total.ml() * target.g_per_ml() * share / stock.g_per_ml())
    })?;
    let water =
        of_target.try_map(|target| Volume::from_ml(total.ml() * target.g_per_ml() * (1.0 - share) / of_water))?;
    Ok(VolumeDilution { stock: measured, water, total })
}
