use super::newtype::quantity;

quantity! {
    /// Temperature, stored in degrees Celsius.
    Temperature: "temperature" in "C", key "c", from_celsius / celsius,
    -273.15..=1e4, "from -273.15 to 1e4 C"
}

impl Temperature {
    /// 20 C, the reference temperature of volumetric glassware and of most density tables.
    pub const REFERENCE: Self = Self(20.0);

    /// The thermodynamic temperature in kelvin.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::quantity::Temperature;
    ///
    /// assert_eq!(Temperature::REFERENCE.kelvin(), 293.15);
    /// ```
    #[must_use]
    pub fn kelvin(self) -> f64 {
        self.0 + 273.15
    }
}
