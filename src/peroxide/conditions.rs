use super::{
    cubic::Cubic,
    density::{DensityError, MAX_STRENGTH_WW, aqueous, half_width},
    molar::MolarVolume,
};
use crate::{
    choice::choice,
    quantity::{Density, Temperature},
    source::{Basis, Interval},
};

choice! {
    /// What a product is, as far as its density goes.
    SolutionKind: "medium" {
        /// A clear solution in water.
        Aqueous = "aqueous",
        /// A cream or emulsion of unknown density.
        Emulsion = "emulsion",
    }
}

impl From<SolutionKind> for SolutionDensity {
    fn from(kind: SolutionKind) -> Self {
        match kind {
            SolutionKind::Aqueous => Self::Aqueous,
            SolutionKind::Emulsion => Self::Emulsion,
        }
    }
}

/// What stands between mass and volume: the density of the product in the bottle.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub enum SolutionDensity {
    /// A clear solution in water: [`density`](super::density) applies.
    #[default]
    Aqueous,
    /// A cream or emulsion whose density nobody measured: the aqueous value, with bounds from 8 % below to 2 % above.
    ///
    /// The bounds are assumed (fat is lighter than water, and a cream holds air); a measured density replaces them.
    Emulsion,
    /// Measured by the user on this product, at the temperature in use.
    Measured(Interval<Density>),
}

impl SolutionDensity {
    /// A measured density without stated bounds.
    #[must_use]
    pub const fn measured(density: Density) -> Self {
        Self::Measured(Interval::exact(density))
    }

    /// The basis of the density.
    #[must_use]
    pub const fn basis(self) -> Basis {
        match self {
            Self::Aqueous => Basis::Published,
            Self::Emulsion => Basis::Assumed,
            Self::Measured(_) => Basis::Measured,
        }
    }
}

/// Everything a conversion between strengths needs besides the strength.
///
/// The default is a clear solution at 20 C, with oxygen counted as an ideal gas at 0 C and 1 atm.
///
/// # Example
///
/// ```
/// use foilwork::peroxide::{Conditions, MolarVolume, SolutionDensity};
/// use foilwork::{quantity::{Density, Temperature}, source::Basis};
///
/// let measured = SolutionDensity::measured(Density::from_g_per_ml(0.99)?);
/// let cream = Conditions::at(Temperature::from_celsius(25.0)?).with_density(measured);
/// assert_eq!(cream.density.basis(), Basis::Measured);
/// let real = cream.with_molar_volume(MolarVolume::RealAtm);
/// assert_eq!((real.temperature, real.density), (cream.temperature, measured));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Conditions {
    /// Temperature of the solution (not of the oxygen, which is counted at 0 C).
    pub temperature: Temperature,
    /// How the oxygen in volumes is counted.
    pub molar_volume: MolarVolume,
    /// Density of the product.
    pub density: SolutionDensity,
}

impl Default for Conditions {
    fn default() -> Self {
        Self::at(Temperature::REFERENCE)
    }
}

impl Conditions {
    /// A clear solution at a temperature, oxygen as an ideal gas at 0 C and 1 atm.
    #[must_use]
    pub const fn at(temperature: Temperature) -> Self {
        Self { temperature, molar_volume: MolarVolume::IdealAtm, density: SolutionDensity::Aqueous }
    }

    /// The same with another molar volume.
    #[must_use]
    pub const fn with_molar_volume(self, molar_volume: MolarVolume) -> Self {
        Self { molar_volume, ..self }
    }

    /// The same with another density.
    #[must_use]
    pub const fn with_density(self, density: SolutionDensity) -> Self {
        Self { density, ..self }
    }

    /// The density as a cubic in the mass fraction.
    #[inline]
    pub(crate) fn cubic(&self) -> Result<Cubic, DensityError> {
        self.measured_cubic().map_or_else(|| aqueous(self.temperature), Ok)
    }

    /// The density as it was measured, whatever the temperature.
    #[inline]
    pub(crate) fn measured_cubic(&self) -> Option<Cubic> {
        match self.density {
            SolutionDensity::Measured(density) => Some(Cubic::constant(density.best().g_per_ml())),
            SolutionDensity::Aqueous | SolutionDensity::Emulsion => None,
        }
    }

    /// The strongest solution the density holds for, in percent w/w.
    #[inline]
    pub(crate) const fn max_ww_percent(&self) -> f64 {
        match self.density {
            SolutionDensity::Aqueous | SolutionDensity::Emulsion => MAX_STRENGTH_WW,
            SolutionDensity::Measured(_) => 100.0,
        }
    }

    /// Lower and upper density over best density at a strength in percent w/w with a best density in g/mL.
    #[inline]
    pub(crate) fn relative_bounds(&self, ww_percent: f64, best_g_per_ml: f64) -> (f64, f64) {
        match self.density {
            SolutionDensity::Aqueous => {
                let half = half_width(ww_percent) / best_g_per_ml;
                (1.0 - half, 1.0 + half)
            }
            SolutionDensity::Emulsion => (0.92, 1.02),
            SolutionDensity::Measured(d) => {
                (d.low().g_per_ml() / d.best().g_per_ml(), d.high().g_per_ml() / d.best().g_per_ml())
            }
        }
    }
}
