use super::{InvalidQuantity, newtype::quantity};
use std::{iter::Sum, ops::Add};

quantity! {
    /// A stretch of time, stored in minutes, the unit of the salon clock.
    Duration: "duration" in "min", key "min", from_min / min,
    0.0..=1e9, "from 0 to 1e9 min"
}

impl Duration {
    /// No time at all.
    pub const ZERO: Self = Self(0.0);

    /// Takes a duration in hours.
    ///
    /// # Errors
    ///
    /// [`InvalidQuantity`] (in min) when out of range.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::quantity::Duration;
    ///
    /// let visit = Duration::from_h(2.5)?;
    /// assert_eq!((visit.min(), visit.h()), (150.0, 2.5));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn from_h(value: f64) -> Result<Self, InvalidQuantity> {
        Self::from_min(value * 60.0)
    }

    /// Takes a duration in days of 24 hours.
    ///
    /// # Errors
    ///
    /// [`InvalidQuantity`] (in min) when out of range.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::quantity::Duration;
    ///
    /// let skin_test = Duration::from_days(2.0)?;
    /// assert_eq!((skin_test.h(), skin_test.days()), (48.0, 2.0));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn from_days(value: f64) -> Result<Self, InvalidQuantity> {
        Self::from_min(value * 1440.0)
    }

    /// The duration in hours.
    #[must_use]
    pub fn h(self) -> f64 {
        self.0 / 60.0
    }

    /// The duration in days of 24 hours.
    #[must_use]
    pub fn days(self) -> f64 {
        self.0 / 1440.0
    }
}

impl Add for Duration {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl Sum for Duration {
    fn sum<I: Iterator<Item = Self>>(iter: I) -> Self {
        iter.fold(Self::ZERO, Add::add)
    }
}
