/// Molar mass of hydrogen peroxide in g/mol: `2 (1.0080 + 15.999)`, IUPAC abridged atomic weights.
pub(crate) const PEROXIDE_G_PER_MOL: f64 = 34.014;
/// Molar mass of the active oxygen atom in g/mol, IUPAC abridged atomic weight.
pub(crate) const OXYGEN_G_PER_MOL: f64 = 15.999;

/// How the oxygen in "volumes" is counted: at which pressure, and as which gas, always at 0 C.
///
/// One litre of an N volume solution gives N litres of oxygen: `volumes = c · Vm / 2` with `c` in mol/L. The two
/// pressures differ by 1.3 %, so a figure in volumes means little without this choice.
///
/// # Source
///
/// `R T / p` with the CODATA gas constant at 273.15 K; real oxygen by the Schmidt & Wagner equation of state. The
/// default is the one the pharmacopoeia assay implies (0.56 mL of oxygen for 0.05 mmol of peroxide).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum MolarVolume {
    /// Ideal gas at 0 C and 1 atm: 22.413 97 L/mol. The default.
    #[default]
    IdealAtm,
    /// Real oxygen at 0 C and 1 atm: 22.391 93 L/mol.
    RealAtm,
    /// Ideal gas at 0 C and 1 bar, the standard pressure since 1982: 22.710 95 L/mol.
    IdealBar,
    /// Real oxygen at 0 C and 1 bar: 22.688 91 L/mol.
    RealBar,
    /// The rounding in school books, 22.4 L/mol, for checking a worksheet; its factor is 11.2 volumes per mol/L.
    School,
}

impl MolarVolume {
    /// Every convention.
    pub const ALL: [Self; 5] = [Self::IdealAtm, Self::RealAtm, Self::IdealBar, Self::RealBar, Self::School];

    /// The molar volume in litres per mole.
    #[must_use]
    pub const fn l_per_mol(self) -> f64 {
        const R_T: f64 = 8.314_462_618_153_24 * 273.15;
        match self {
            Self::IdealAtm => R_T / 101.325,
            Self::RealAtm => 22.391_928,
            Self::IdealBar => R_T / 100.0,
            Self::RealBar => 22.688_908,
            Self::School => 22.4,
        }
    }

    /// The name used in text, on the command line and in Python.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::IdealAtm => "ideal-1atm",
            Self::RealAtm => "real-1atm",
            Self::IdealBar => "ideal-1bar",
            Self::RealBar => "real-1bar",
            Self::School => "school-22.4",
        }
    }
}

impl std::fmt::Display for MolarVolume {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.pad(self.name())
    }
}

/// A text that names no molar volume.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error(
    "unknown molar volume (got {text:?}): must be one of ideal-1atm, real-1atm, ideal-1bar, real-1bar, school-22.4 \
     (oxygen at 0 C)"
)]
pub struct UnknownMolarVolume {
    /// The text that was given.
    pub text: String,
}

impl std::str::FromStr for MolarVolume {
    type Err = UnknownMolarVolume;

    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let wanted = text.trim().to_ascii_lowercase();
        Self::ALL
            .into_iter()
            .find(|candidate| candidate.name() == wanted)
            .ok_or_else(|| UnknownMolarVolume { text: text.to_owned() })
    }
}
