use super::{CrossSection, Cut, Diameter, HairDensity};
use crate::{
    choice::choice,
    quantity::Quantity,
    source::{Basis, Interval, Sourced, citations::hair},
};

choice! {
    /// How thick a strand is by eye and touch; medium where nobody said, which is what the cited rules are for.
    #[derive(Default)]
    Texture: "texture" {
        /// Thin strands, below 60 um.
        Fine = "fine",
        /// In between, 60 to 80 um.
        #[default]
        Medium = "medium",
        /// Thick strands, above 80 um.
        Coarse = "coarse",
    }
}

choice! {
    /// How much hair there is on the scalp, by eye.
    DensityByEye: "density" {
        /// Little.
        Low = "low",
        /// Middling.
        Medium = "medium",
        /// Much.
        High = "high",
    }
}

impl Texture {
    /// The diameters of the class; its open ends are assumed.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::hair::Texture;
    ///
    /// assert_eq!(Texture::Medium.diameter().value.best().um(), 70.0);
    /// ```
    ///
    /// # Source
    ///
    /// Citation `diameter-classes`: below 60 um, 60 to 80, above 80; no standard was found.
    #[must_use]
    pub fn diameter(self) -> Sourced<Interval<Diameter>> {
        let (low, best, high) = match self {
            Self::Fine => (40.0, 50.0, 60.0),
            Self::Medium => (60.0, 70.0, 80.0),
            Self::Coarse => (80.0, 90.0, 105.0),
        };
        let value = Interval::ordered(low, best, high).map(Diameter::nearest);
        Sourced { value, basis: Basis::Assumed, citation: Some(&hair::DIAMETER_CLASSES) }
    }

    pub(super) fn cross_section(self) -> Sourced<Interval<CrossSection>> {
        let Sourced { value, basis, citation } = self.diameter();
        Sourced { value: value.map(|round| Cut::round(round).area()), basis, citation }
    }
}

impl DensityByEye {
    /// The third of the people that is meant: its mean, and bounds that allow the eye to be half a third off (assumed).
    ///
    /// Standard deviations from the mean: the mean of the upper third of a normal distribution is at 1.091; the quantiles
    /// are those of 5, 50 and 16.7 of 100.
    pub(super) fn of(self, mean: HairDensity, variation: f64) -> Interval<HairDensity> {
        let (low, best, high) = match self {
            Self::Low => (-1.645, -1.091, 0.0),
            Self::Medium => (-0.967, 0.0, 0.967),
            Self::High => (0.0, 1.091, 1.645),
        };
        Interval::ordered(low, best, high).map(|sd| HairDensity::nearest(mean.hairs_per_cm2() * (1.0 + variation * sd)))
    }
}
