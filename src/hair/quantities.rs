use crate::quantity::quantity;

quantity! {
    /// A number of hairs; an estimate of it need not be whole.
    HairCount: "number of hairs" in "hairs", key "hairs", from_hairs / hairs,
    0.0..=1e7, "from 0 to 1e7 hairs"
}

quantity! {
    /// Hairs on a square centimetre of scalp.
    HairDensity: "hair density" in "hairs/cm2", key "hairs_per_cm2", from_hairs_per_cm2 / hairs_per_cm2,
    1.0..=1000.0, "from 1 to 1000 hairs/cm2"
}

quantity! {
    /// How thick a hair is, in micrometres.
    Diameter: "diameter" in "um", key "um", from_um / um,
    5.0..=300.0, "from 5 to 300 um"
}

quantity! {
    /// Area of a cut through a hair, in square micrometres.
    CrossSection: "cross-section" in "um2", key "um2", from_um2 / um2,
    20.0..=75000.0, "from 20 to 75000 um2"
}

quantity! {
    /// Mass of one hair by its length, in micrograms per centimetre.
    LinearDensity: "linear density" in "ug/cm", key "ug_per_cm", from_ug_per_cm / ug_per_cm,
    0.1..=1200.0, "from 0.1 to 1200 ug/cm"
}

quantity! {
    /// Mass of a bundle of hair by its length, in grams per centimetre.
    MassPerLength: "mass per length" in "g/cm", key "g_per_cm", from_g_per_cm / g_per_cm,
    0.0..=1000.0, "from 0 to 1000 g/cm"
}

quantity! {
    /// How fast hair grows, in centimetres per month of 30.44 days.
    GrowthRate: "growth rate" in "cm/month", key "cm_per_month", from_cm_per_month / cm_per_month,
    0.1..=3.0, "from 0.1 to 3 cm/month"
}

quantity! {
    /// A number of weeks.
    Weeks: "time" in "weeks", key "weeks", from_weeks / weeks,
    0.0..=2000.0, "from 0 to 2000 weeks"
}

quantity! {
    /// Age of the guest; what is known of hair by age holds for grown-ups.
    Age: "age" in "years", key "years", from_years / years,
    16.0..=110.0, "from 16 to 110 years"
}

/// A year of 365.25 days, in twelve parts.
pub(crate) const DAYS_OF_MONTH: f64 = 365.25 / 12.0;

/// What grows in a week, by what grows in a day.
#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[inline(always)]
pub(crate) fn weekly(cm_per_day: f64) -> f64 {
    cm_per_day * 7.0
}

impl GrowthRate {
    /// Takes micrometres per day, the unit of the published figures.
    ///
    /// # Errors
    ///
    /// [`InvalidQuantity`](crate::quantity::InvalidQuantity) (in cm/month) when out of range.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::hair::GrowthRate;
    ///
    /// assert_eq!(format!("{:.2}", GrowthRate::from_um_per_day(367.0)?), "1.12 cm/month");
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    pub fn from_um_per_day(value: f64) -> Result<Self, crate::quantity::InvalidQuantity> {
        Self::from_cm_per_month(value * 1e-4 * DAYS_OF_MONTH)
    }

    pub(super) fn cm_per_week(self) -> f64 {
        weekly(self.cm_per_month() / DAYS_OF_MONTH)
    }
}
