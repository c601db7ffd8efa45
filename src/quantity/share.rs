use super::{InvalidQuantity, newtype::quantity};

quantity! {
    /// A part of a whole, stored in percent: share of the hair, share of white, share of a recipe.
    Share: "share" in "%", key "percent", from_percent / percent,
    0.0..=100.0, "from 0 to 100 %"
}

impl Share {
    /// None of it.
    pub const NONE: Self = Self(0.0);
    /// All of it.
    pub const ALL: Self = Self(100.0);

    /// Takes a fraction from 0 to 1.
    ///
    /// # Errors
    ///
    /// [`InvalidQuantity`] (in %) outside that range.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::quantity::Share;
    ///
    /// let white = Share::from_fraction(0.25)?;
    /// assert_eq!((white.percent(), white.fraction()), (25.0, 0.25));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn from_fraction(value: f64) -> Result<Self, InvalidQuantity> {
        Self::from_percent(value * 100.0)
    }

    /// The fraction from 0 to 1.
    #[must_use]
    pub fn fraction(self) -> f64 {
        self.0 / 100.0
    }
}
