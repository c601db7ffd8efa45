use super::{Duration, InvalidQuantity, newtype::quantity};

quantity! {
    /// Share of what is left that is lost in a unit of time (first order), stored per day of 24 hours.
    LossRate: "loss rate" in "per day", key "per_day", from_per_day / per_day,
    0.0..=1e6, "from 0 to 1e6 per day"
}

impl LossRate {
    /// Takes a rate constant per second.
    ///
    /// # Errors
    ///
    /// [`InvalidQuantity`] (per day) when out of range.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::quantity::LossRate;
    ///
    /// let rate = LossRate::from_per_s(1e-6)?;
    /// assert_eq!(format!("{rate:.4}"), "0.0864 per day"); // a day has 86 400 s
    /// assert!((rate.per_s() - 1e-6).abs() < 1e-18);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn from_per_s(value: f64) -> Result<Self, InvalidQuantity> {
        Self::from_per_day(value * 86_400.0)
    }

    /// Takes the time in which half is lost.
    ///
    /// # Errors
    ///
    /// [`InvalidQuantity`] (per day) when the half-life is too short to be one, for example zero.
    pub fn from_half_life(half_life: Duration) -> Result<Self, InvalidQuantity> {
        Self::from_per_day(std::f64::consts::LN_2 / half_life.days())
    }

    /// The rate constant per second.
    #[must_use]
    pub fn per_s(self) -> f64 {
        self.0 / 86_400.0
    }

    /// The time in which half is lost.
    ///
    /// # Errors
    ///
    /// [`InvalidQuantity`] when none is lost, or so little that the time is out of range.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::quantity::{Duration, LossRate};
    ///
    /// let rate = LossRate::from_half_life(Duration::from_days(10.0)?)?;
    /// assert_eq!(format!("{rate:.5}"), "0.06931 per day"); // ln 2 / 10
    /// assert_eq!(format!("{:.1}", rate.half_life()?.days()), "10.0");
    /// assert!(LossRate::from_per_day(0.0)?.half_life().is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn half_life(self) -> Result<Duration, InvalidQuantity> {
        Duration::from_days(std::f64::consts::LN_2 / self.0)
    }
}

quantity! {
    /// Price of one kilogram, in whatever one currency all prices of a shelf are in.
    PricePerKg: "price" in "per kg", key "per_kg", from_per_kg / per_kg,
    0.0..=1e9, "from 0 to 1e9 per kg"
}
