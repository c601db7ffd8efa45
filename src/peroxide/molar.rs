use crate::choice::choice;

/// Molar mass of hydrogen peroxide in g/mol: `2 (1.0080 + 15.999)`, IUPAC abridged atomic weights
/// ([`ATOMIC_WEIGHTS`](crate::source::citations::peroxide::ATOMIC_WEIGHTS)).
pub(crate) const PEROXIDE_G_PER_MOL: f64 = 34.014;
/// Molar mass of the active oxygen atom in g/mol, IUPAC abridged atomic weight.
pub(crate) const OXYGEN_G_PER_MOL: f64 = 15.999;

choice! {
    /// How the oxygen in "volumes" is counted: at which pressure, and as which gas, always at 0 C.
    ///
    /// One litre of an N volume solution gives N litres of oxygen: `volumes = c Vm / 2` with `c` in mol/L. The two
    /// pressures differ by 1.3 %, so a figure in volumes means little without this choice.
    ///
    /// # Source
    ///
    /// `R T / p` with the CODATA gas constant at 273.15 K ([`CODATA`]); real oxygen by the Schmidt & Wagner equation of
    /// state ([`OXYGEN_GAS`]). The default is the one the pharmacopoeia assay implies ([`BP_SIX`]): 0.56 mL of oxygen for
    /// 0.05 mmol of peroxide.
    ///
    /// [`CODATA`]: crate::source::citations::peroxide::CODATA
    /// [`OXYGEN_GAS`]: crate::source::citations::peroxide::OXYGEN_GAS
    /// [`BP_SIX`]: crate::source::citations::peroxide::BP_SIX
    #[derive(Default)]
    MolarVolume: "molar volume" {
        /// Ideal gas at 0 C and 1 atm: 22.413 97 L/mol. The default.
        #[default]
        IdealAtm = "ideal-1atm",
        /// Real oxygen at 0 C and 1 atm: 22.391 93 L/mol.
        RealAtm = "real-1atm",
        /// Ideal gas at 0 C and 1 bar, the standard pressure since 1982: 22.710 95 L/mol.
        IdealBar = "ideal-1bar",
        /// Real oxygen at 0 C and 1 bar: 22.688 91 L/mol.
        RealBar = "real-1bar",
        /// The rounding in school books, 22.4 L/mol, for checking a worksheet; its factor is 11.2 volumes per mol/L.
        Textbook = "textbook",
    }
}

impl MolarVolume {
    /// The molar volume in litres per mole.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::peroxide::MolarVolume;
    ///
    /// assert_eq!(format!("{:.4}", "ideal-1atm".parse::<MolarVolume>()?.l_per_mol()), "22.4140");
    /// # Ok::<(), foilwork::choice::UnknownChoice>(())
    /// ```
    #[must_use]
    pub const fn l_per_mol(self) -> f64 {
        const R_T: f64 = 8.314_462_618_153_24 * 273.15;
        match self {
            Self::IdealAtm => R_T / 101.325,
            Self::RealAtm => 22.391_928,
            Self::IdealBar => R_T / 100.0,
            Self::RealBar => 22.688_908,
            Self::Textbook => 22.4,
        }
    }
}
