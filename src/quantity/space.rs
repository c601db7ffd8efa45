use super::{InvalidQuantity, newtype::quantity};

quantity! {
    /// Volume, stored in millilitres.
    Volume: "volume" in "mL", key "ml", from_ml / ml,
    0.0..=1e9, "from 0 to 1e9 mL"
}

quantity! {
    /// Density, stored in grams per millilitre.
    Density: "density" in "g/mL", key "g_per_ml", from_g_per_ml / g_per_ml,
    0.1..=25.0, "from 0.1 to 25 g/mL"
}

quantity! {
    /// Length, stored in centimetres.
    Length: "length" in "cm", key "cm", from_cm / cm,
    0.0..=1e5, "from 0 to 1e5 cm"
}

quantity! {
    /// Area, stored in square centimetres.
    Area: "area" in "cm2", key "cm2", from_cm2 / cm2,
    0.0..=1e9, "from 0 to 1e9 cm2"
}

impl Length {
    /// Takes a length in millimetres.
    ///
    /// # Errors
    ///
    /// [`InvalidQuantity`] (in cm) when out of range.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::quantity::Length;
    ///
    /// let weave = Length::from_mm(5.0)?;
    /// assert_eq!((weave.cm(), weave.mm()), (0.5, 5.0));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn from_mm(value: f64) -> Result<Self, InvalidQuantity> {
        Self::from_cm(value / 10.0)
    }

    /// The length in millimetres.
    #[must_use]
    pub fn mm(self) -> f64 {
        self.0 * 10.0
    }
}
