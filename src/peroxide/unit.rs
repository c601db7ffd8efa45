/// The units a strength of peroxide can be stated in.
///
/// `Display` prints the preferred spelling; `FromStr` reads that and a few common ones. A bare `%` and a bare `vol` are
/// refused: the first hides its basis, the second is a trade label and not a measured strength.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum StrengthUnit {
    /// Percent by mass, `% w/w`: g of peroxide in 100 g of solution.
    PercentWw,
    /// Percent mass by volume, `% w/v`: g of peroxide in 100 mL of solution.
    PercentWv,
    /// `g/L`.
    GPerL,
    /// `mol/L`.
    MolPerL,
    /// `mol/kg`: per kilogram of water.
    MolPerKg,
    /// `N`: equivalents per litre, two for each mole of peroxide.
    EqPerL,
    /// `% active oxygen`: g of active oxygen in 100 g of solution.
    PercentActiveOxygen,
    /// `volumes` of oxygen gas from one volume of solution.
    Volumes,
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
    #[error(
        "unknown unit of strength (got {text:?}): must be one of % w/w, % w/v, g/L, mol/L, mol/kg, N, % active oxygen, \
         volumes"
    )]
    Unknown {
        /// The text that was given.
        text: String,
    },
}

impl StrengthUnit {
    /// Every unit.
    pub const ALL: [Self; 8] = [
        Self::PercentWw,
        Self::PercentWv,
        Self::GPerL,
        Self::MolPerL,
        Self::MolPerKg,
        Self::EqPerL,
        Self::PercentActiveOxygen,
        Self::Volumes,
    ];

    /// The preferred spelling.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::PercentWw => "% w/w",
            Self::PercentWv => "% w/v",
            Self::GPerL => "g/L",
            Self::MolPerL => "mol/L",
            Self::MolPerKg => "mol/kg",
            Self::EqPerL => "N",
            Self::PercentActiveOxygen => "% active oxygen",
            Self::Volumes => "volumes",
        }
    }

    /// The largest number a strength in this unit can be, as the typed quantities check it.
    pub(crate) const fn max(self) -> f64 {
        match self {
            Self::PercentWw | Self::MolPerL => 100.0,
            Self::PercentWv | Self::EqPerL => 200.0,
            Self::GPerL => 2000.0,
            Self::MolPerKg => 1e5,
            Self::PercentActiveOxygen => 47.1,
            Self::Volumes => 500.0,
        }
    }

    /// Whether the unit counts by mass of solution, so that no density stands between it and % w/w.
    #[must_use]
    pub const fn is_by_mass(self) -> bool {
        matches!(self, Self::PercentWw | Self::MolPerKg | Self::PercentActiveOxygen)
    }
}

impl std::fmt::Display for StrengthUnit {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.pad(self.symbol())
    }
}

impl std::str::FromStr for StrengthUnit {
    type Err = ParseUnitError;

    fn from_str(text: &str) -> Result<Self, Self::Err> {
        // `N` and `M` are symbols and keep their case; everything else is read without regard to case and spaces.
        let squeezed: String = text.chars().filter(|c| !c.is_whitespace()).collect();
        match squeezed.as_str() {
            "N" => return Ok(Self::EqPerL),
            "M" => return Ok(Self::MolPerL),
            _ => {}
        }
        Ok(match squeezed.to_ascii_lowercase().as_str() {
            "%w/w" | "w/w" | "ww" | "%m/m" | "m/m" => Self::PercentWw,
            "%w/v" | "w/v" | "wv" | "%m/v" | "m/v" => Self::PercentWv,
            "g/l" => Self::GPerL,
            "mol/l" => Self::MolPerL,
            "mol/kg" => Self::MolPerKg,
            "eq/l" => Self::EqPerL,
            "%activeoxygen" | "activeoxygen" => Self::PercentActiveOxygen,
            "volumes" | "oxygenvolumes" => Self::Volumes,
            "%" | "percent" => return Err(ParseUnitError::BarePercent),
            "vol" | "vol." | "volume" => return Err(ParseUnitError::BareVol),
            _ => return Err(ParseUnitError::Unknown { text: text.to_owned() }),
        })
    }
}
