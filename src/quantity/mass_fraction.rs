use super::{InvalidQuantity, newtype::quantity};

quantity! {
    /// Mass of solute over mass of solution, stored in percent w/w.
    ///
    /// Not interchangeable with percent w/v: that needs a density.
    MassFraction: "strength" in "% w/w", key "ww_percent", from_ww_percent / ww_percent,
    0.0..=100.0, "from 0 to 100 % w/w"
}

impl MassFraction {
    /// None of the solute.
    pub const ZERO: Self = Self(0.0);

    /// Takes a mass fraction from 0 to 1.
    ///
    /// # Errors
    ///
    /// [`InvalidQuantity`] (in % w/w) outside that range.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::quantity::MassFraction;
    ///
    /// let strength = MassFraction::from_fraction(0.125)?;
    /// assert_eq!((strength.ww_percent(), strength.fraction()), (12.5, 0.125));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn from_fraction(value: f64) -> Result<Self, InvalidQuantity> {
        Self::from_ww_percent(value * 100.0)
    }

    /// The mass fraction from 0 to 1.
    #[must_use]
    pub fn fraction(self) -> f64 {
        self.0 / 100.0
    }
}
