use super::{InvalidQuantity, newtype::quantity};
use std::{iter::Sum, ops::Add};

quantity! {
    /// Mass, stored in grams.
    ///
    /// The upper bound is far beyond any salon; it keeps sums finite.
    Mass: "mass" in "g", key "g", from_g / g,
    0.0..=1e9, "from 0 to 1e9 g"
}

impl Mass {
    /// No mass.
    pub const ZERO: Self = Self(0.0);

    /// This mass times a plain factor.
    ///
    /// # Errors
    ///
    /// [`InvalidQuantity`] when the product is negative, not a number or out of range.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::quantity::Mass;
    ///
    /// let (powder, developer) = (Mass::from_g(30.0)?, Mass::from_g(45.0)?);
    /// assert_eq!(powder.times(1.5)?, developer);
    /// assert_eq!(powder.minus_or_zero(developer), Mass::ZERO);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn times(self, factor: f64) -> Result<Self, InvalidQuantity> {
        Self::from_g(self.0 * factor)
    }

    /// What is left after taking `other` away, never less than zero.
    #[must_use]
    pub fn minus_or_zero(self, other: Self) -> Self {
        Self((self.0 - other.0).max(0.0))
    }
}

impl Add for Mass {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl Sum for Mass {
    fn sum<I: Iterator<Item = Self>>(iter: I) -> Self {
        iter.fold(Self::ZERO, Add::add)
    }
}
