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
    pub fn from_h(value: f64) -> Result<Self, InvalidQuantity> {
        Self::from_min(value * 60.0)
    }

    /// Takes a duration in days of 24 hours.
    ///
    /// # Errors
    ///
    /// [`InvalidQuantity`] (in min) when out of range.
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
