use crate::{
    choice::{UnknownChoice, choice},
    quantity::{
        ActiveOxygen, AmountConcentration, MassConcentration, MassFraction, Molality, Normality, OxygenVolumes,
        Quantity,
    },
};

choice! {
    reading by hand;
    /// The units a strength of peroxide can be stated in.
    ///
    /// `Display` prints the preferred spelling; `FromStr` reads that and a few common ones. A bare `%` and a bare `vol` are
    /// refused: the first hides its basis, the second is a trade label and not a measured strength.
    StrengthUnit: "unit of strength" {
        /// Percent by mass: g of peroxide in 100 g of solution.
        WwPercent = "% w/w",
        /// Percent mass by volume: g of peroxide in 100 mL of solution.
        WvPercent = "% w/v",
        /// Grams in a litre of solution.
        GPerL = "g/L",
        /// Moles in a litre of solution.
        MolPerL = "mol/L",
        /// Moles in a kilogram of water.
        MolPerKg = "mol/kg",
        /// Equivalents in a litre, two for each mole of peroxide.
        EqPerL = "N",
        /// Percent of active oxygen by mass: g in 100 g of solution.
        ActiveOxygenPercent = "% active oxygen",
        /// Volumes of oxygen gas from one volume of solution.
        Volumes = "volumes",
    }
}

/// A text that is not a unit of strength.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum ParseUnitError {
    /// `%` alone.
    #[error("the unit % hides its basis: write % w/w or % w/v")]
    BarePercent,
    /// `vol` alone.
    #[error(
        "the unit vol is a trade label, not a measured strength: write volumes for oxygen volumes, or read the label \
         as % w/w or % w/v first"
    )]
    BareVol,
    /// Something else.
    #[error(transparent)]
    Unknown(#[from] UnknownChoice),
}

impl StrengthUnit {
    /// The largest number a strength in this unit can be: that of its quantity.
    pub(crate) const fn max(self) -> f64 {
        match self {
            Self::WwPercent => MassFraction::MAX.ww_percent(),
            Self::WvPercent => MassConcentration::MAX.wv_percent(),
            Self::GPerL => MassConcentration::MAX.g_per_l(),
            Self::MolPerL => AmountConcentration::MAX.mol_per_l(),
            Self::MolPerKg => Molality::MAX.mol_per_kg(),
            Self::EqPerL => Normality::MAX.eq_per_l(),
            Self::ActiveOxygenPercent => ActiveOxygen::MAX.ww_percent(),
            Self::Volumes => OxygenVolumes::MAX.volumes(),
        }
    }

    /// Whether the unit counts by mass of solution, so that no density stands between it and % w/w.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::peroxide::StrengthUnit;
    ///
    /// assert!(StrengthUnit::WwPercent.is_by_mass() && !StrengthUnit::Volumes.is_by_mass());
    /// ```
    #[must_use]
    pub const fn is_by_mass(self) -> bool {
        matches!(self, Self::WwPercent | Self::MolPerKg | Self::ActiveOxygenPercent)
    }
}

impl std::str::FromStr for StrengthUnit {
    type Err = ParseUnitError;

    fn from_str(text: &str) -> Result<Self, Self::Err> {
        // As it is shown: nothing has to be squeezed.
        if let Some(unit) = Self::ALL.iter().find(|unit| unit.code() == text) {
            return Ok(*unit);
        }
        // `N` and `M` are symbols and keep their case; everything else is read without regard to case and spaces.
        let squeezed: String = text.chars().filter(|c| !c.is_whitespace()).collect();
        match squeezed.as_str() {
            "N" => return Ok(Self::EqPerL),
            "M" => return Ok(Self::MolPerL),
            _ => {}
        }
        Ok(match squeezed.to_ascii_lowercase().as_str() {
            "%w/w" | "w/w" | "ww" | "%m/m" | "m/m" => Self::WwPercent,
            "%w/v" | "w/v" | "wv" | "%m/v" | "m/v" => Self::WvPercent,
            "g/l" => Self::GPerL,
            "mol/l" => Self::MolPerL,
            "mol/kg" => Self::MolPerKg,
            "eq/l" => Self::EqPerL,
            "%activeoxygen" | "activeoxygen" => Self::ActiveOxygenPercent,
            "volumes" | "oxygenvolumes" => Self::Volumes,
            "%" | "percent" => return Err(ParseUnitError::BarePercent),
            "vol" | "vol." | "volume" => return Err(ParseUnitError::BareVol),
            _ => return Err(UnknownChoice::of::<Self>(text).into()),
        })
    }
}
