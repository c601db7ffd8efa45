use super::{HairCount, MassPerLength, product};
use crate::{
    quantity::{Area, Length, Mass, Quantity},
    source::Interval,
};

/// A part of the hair, of any length: hairs, and grams and surface by length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tress {
    /// How many hairs.
    pub hairs: Interval<HairCount>,
    /// Mass of them all by their length.
    pub mass_per_length: Interval<MassPerLength>,
    /// Circumference of one hair.
    pub circumference: Interval<Length>,
}

impl Tress {
    /// Mass of a length of it: the mean length of the hair, not the longest.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{hair::HairFacts, quantity::{Length, Share}};
    ///
    /// let hair = HairFacts::default().head().part(Share::ALL);
    /// let shoulder = hair.mass(Length::from_cm(20.0)?.into());
    /// assert_eq!(format!("{:.0}, {:.0} to {:.0}", shoulder.best(), shoulder.low(), shoulder.high()), "136 g, 86 g to 229 g");
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn mass(&self, length: Interval<Length>) -> Interval<Mass> {
        product(&[self.mass_per_length.map(MassPerLength::g_per_cm), length.map(Length::cm)]).map(Mass::nearest)
    }

    /// Surface of a length of it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{hair::HairFacts, quantity::{Length, Share}};
    ///
    /// let hair = HairFacts::default().head().part(Share::ALL);
    /// // About 122 000 hairs of 0.23 mm around: five and a half square metres on 20 cm.
    /// assert!((4.5e4..6.5e4).contains(&hair.surface(Length::from_cm(20.0)?.into()).best().cm2()));
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn surface(&self, length: Interval<Length>) -> Interval<Area> {
        let around = self.circumference.map(Length::cm);
        product(&[self.hairs.map(HairCount::hairs), around, length.map(Length::cm)]).map(Area::nearest)
    }
}
