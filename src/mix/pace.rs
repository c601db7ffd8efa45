use crate::quantity::{Duration, InvalidQuantity, Mass};

/// How fast product goes onto the hair, in grams per minute.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Pace(f64);

impl Pace {
    /// Takes a pace in grams per minute.
    ///
    /// # Errors
    ///
    /// [`InvalidQuantity`] unless the value is above 0 and at most 1e4 g/min.
    pub fn from_g_per_min(value: f64) -> Result<Self, InvalidQuantity> {
        if value > 0.0 && value <= 1e4 {
            Ok(Self(value))
        } else {
            Err(InvalidQuantity { quantity: "pace", value, unit: "g/min", allowed: "above 0 and at most 1e4 g/min" })
        }
    }

    /// The pace that puts `mass` on in `time`.
    ///
    /// # Errors
    ///
    /// [`InvalidQuantity`] when the quotient is not a pace, as when the time is 0 min.
    pub fn of(mass: Mass, time: Duration) -> Result<Self, InvalidQuantity> {
        Self::from_g_per_min(mass.g() / time.min())
    }

    /// The pace in grams per minute.
    #[must_use]
    pub const fn g_per_min(self) -> f64 {
        self.0
    }
}

impl std::fmt::Display for Pace {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} g/min", self.0)
    }
}
