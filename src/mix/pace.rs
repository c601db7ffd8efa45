use crate::quantity::{Duration, InvalidQuantity, Mass, quantity};

quantity! {
    /// How fast product goes onto the hair, in grams per minute.
    Pace: "pace" in "g/min", key "g_per_min", from_g_per_min / g_per_min,
    5e-324..=1e4, "above 0 and at most 1e4 g/min"
}

impl Pace {
    /// The pace that puts `mass` on in `time`.
    ///
    /// # Errors
    ///
    /// [`InvalidQuantity`] when the quotient is not a pace, as when the time is 0 min.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::Pace, quantity::{Duration, Mass}};
    ///
    /// assert_eq!(Pace::of(Mass::from_g(60.0)?, Duration::from_min(20.0)?)?.to_string(), "3 g/min");
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    pub fn of(mass: Mass, time: Duration) -> Result<Self, InvalidQuantity> {
        Self::from_g_per_min(mass.g() / time.min())
    }
}
