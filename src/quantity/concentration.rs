use super::{InvalidQuantity, newtype::quantity};

quantity! {
    /// Mass of solute over volume of solution, stored in grams per litre.
    ///
    /// Percent w/v is grams per 100 mL, so 1 % w/v is 10 g/L. Not interchangeable with percent w/w: that needs a
    /// density.
    MassConcentration: "mass concentration" in "g/L", key "g_per_l", from_g_per_l / g_per_l,
    0.0..=2000.0, "from 0 to 2000 g/L"
}

impl MassConcentration {
    /// Takes a strength in percent w/v, grams of solute in 100 mL of solution.
    ///
    /// # Errors
    ///
    /// [`InvalidQuantity`] (in % w/v) outside 0 to 200 % w/v.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::quantity::MassConcentration;
    ///
    /// let bottle = MassConcentration::from_wv_percent(6.0)?; // 6 g in 100 mL
    /// assert_eq!((bottle.g_per_l(), bottle.wv_percent()), (60.0, 6.0));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub const fn from_wv_percent(value: f64) -> Result<Self, InvalidQuantity> {
        if value >= 0.0 && value <= 200.0 {
            Ok(Self(value * 10.0))
        } else {
            Err(InvalidQuantity { quantity: "strength", value, unit: "% w/v", allowed: "from 0 to 200 % w/v" })
        }
    }

    /// The strength in percent w/v.
    #[must_use]
    pub const fn wv_percent(self) -> f64 {
        self.0 / 10.0
    }
}

quantity! {
    /// Amount of solute over volume of solution, stored in moles per litre.
    AmountConcentration: "amount concentration" in "mol/L", key "mol_per_l", from_mol_per_l / mol_per_l,
    0.0..=100.0, "from 0 to 100 mol/L"
}

quantity! {
    /// Amount of solute over mass of **solvent** (the water, not the solution), stored in moles per kilogram.
    Molality: "molality" in "mol/kg", key "mol_per_kg", from_mol_per_kg / mol_per_kg,
    0.0..=1e5, "from 0 to 1e5 mol/kg of water"
}

quantity! {
    /// Equivalents of solute over volume of solution, stored in equivalents per litre (N).
    ///
    /// How many equivalents one mole has depends on the reaction; the caller states it when converting.
    Normality: "normality" in "N", key "eq_per_l", from_eq_per_l / eq_per_l,
    0.0..=200.0, "from 0 to 200 N"
}
