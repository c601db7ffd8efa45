use super::{CrossSection, Diameter, LinearDensity};
use crate::{
    choice::choice,
    quantity::{Density, Length, Quantity},
    source::{Basis, Interval, Sourced, citations::hair},
};
use std::f64::consts::PI;

choice! {
    /// How a diameter was measured.
    DiameterMethod: "way of measuring" {
        /// A micrometer caliper or gauge on single hairs.
        Caliper = "caliper",
        /// A camera on the scalp, which sees the long axis: 1.41 times the caliper.
        ScalpCamera = "scalp-camera" => "scalp camera",
    }
}

/// What a camera on the scalp reads over what a caliper reads: 108.78 / 76.9 um in the same women.
const CAMERA_OVER_CALIPER: f64 = 1.41;

impl DiameterMethod {
    /// The diameter that a caliper would read.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::hair::{Diameter, DiameterMethod};
    ///
    /// let by_caliper = DiameterMethod::ScalpCamera.by_caliper(Diameter::from_um(108.78)?);
    /// assert_eq!(format!("{by_caliper:.1}"), "77.1 um");
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    ///
    /// # Source
    ///
    /// Citation `caliper-and-camera`. Squared, the difference would be twice the mass.
    #[must_use]
    pub fn by_caliper(self, read: Diameter) -> Diameter {
        Diameter::nearest(read.um() / self.over_caliper())
    }

    /// What it reads for each that a caliper does.
    pub(crate) const fn over_caliper(self) -> f64 {
        match self {
            Self::Caliper => 1.0,
            Self::ScalpCamera => CAMERA_OVER_CALIPER,
        }
    }
}

/// A cut through a hair: an ellipse by its two axes.
///
/// # Example
///
/// ```
/// use foilwork::hair::{Diameter, Cut};
///
/// let cut = Cut::new(Diameter::from_um(60.7)?, Diameter::from_um(85.6)?);
/// assert_eq!(format!("{:.0}", cut.area()), "4081 um2");
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cut {
    minor: Diameter,
    major: Diameter,
}

impl Cut {
    /// An ellipse by its axes, in either order.
    #[must_use]
    pub fn new(one: Diameter, other: Diameter) -> Self {
        if one <= other { Self { minor: one, major: other } } else { Self { minor: other, major: one } }
    }

    /// A circle.
    #[must_use]
    pub const fn round(diameter: Diameter) -> Self {
        Self { minor: diameter, major: diameter }
    }

    /// An ellipse of this area whose long axis is `ellipticity` times the short one.
    pub(super) fn of_area(area: CrossSection, ellipticity: f64) -> Self {
        let minor = (4.0 * area.um2() / (PI * ellipticity)).sqrt();
        Self::new(Diameter::nearest(minor), Diameter::nearest(minor * ellipticity))
    }

    /// The short axis.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::hair::{Cut, Diameter};
    ///
    /// let (short, long) = (Diameter::from_um(60.7)?, Diameter::from_um(85.6)?);
    /// let cut = Cut::new(long, short);
    /// assert_eq!((cut.minor(), cut.major()), (short, long));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub const fn minor(self) -> Diameter {
        self.minor
    }

    /// The long axis.
    #[must_use]
    pub const fn major(self) -> Diameter {
        self.major
    }

    /// Its area.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::hair::{Diameter, Cut};
    ///
    /// assert_eq!(format!("{:.0}", Cut::round(Diameter::from_um(72.1)?).area()), "4083 um2");
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn area(self) -> CrossSection {
        CrossSection::nearest(PI / 4.0 * self.minor.um() * self.major.um())
    }

    /// Its circumference, which times the length is the surface that a product meets.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::hair::{Diameter, Cut};
    ///
    /// assert_eq!(format!("{:.4}", Cut::round(Diameter::from_um(70.0)?).circumference().mm()), "0.2199");
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    ///
    /// # Source
    ///
    /// Ramanujan's second approximation; below two to one it is exact to 1e-8.
    #[must_use]
    pub fn circumference(self) -> Length {
        let (a, b) = (self.major.um() / 2.0, self.minor.um() / 2.0);
        let h = ((a - b) / (a + b)).powi(2);
        Length::nearest(PI * (a + b) * (1.0 + 3.0 * h / (10.0 + (4.0 - 3.0 * h).sqrt())) * 1e-4)
    }
}

/// Density of air-dry keratin: 1.32 (1.30 to 1.34) g/mL, from memory of textbooks.
///
/// # Example
///
/// ```
/// assert_eq!(foilwork::hair::fibre_density().value.best().g_per_ml(), 1.32);
/// ```
#[must_use]
pub fn fibre_density() -> Sourced<Interval<Density>> {
    let value = Interval::ordered(1.30, 1.32, 1.34).map(Density::nearest);
    Sourced { value, basis: Basis::Assumed, citation: Some(&hair::KERATIN_DENSITY) }
}

impl CrossSection {
    /// Mass of one hair of this cross-section by its length: 1 um2 times 1 g/cm3 is 0.01 ug/cm.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{hair::CrossSection, quantity::Density};
    ///
    /// let hair = CrossSection::from_um2(4079.0)?.linear_density(Density::from_g_per_ml(1.32)?);
    /// assert_eq!(format!("{hair:.1}"), "53.8 ug/cm");
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn linear_density(self, keratin: Density) -> LinearDensity {
        LinearDensity::nearest(self.um2() * keratin.g_per_ml() * 0.01)
    }
}
