use super::{MassPerLength, fibre_density};
use crate::{
    quantity::{Density, Length, Quantity, Share},
    source::Interval,
};
use std::f64::consts::PI;

/// A ponytail pulled tight, by its girth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ponytail {
    /// Around it, where it is tied.
    pub girth: Interval<Length>,
    /// How much of the hair is in it; a short fringe or nape is not.
    pub gathered: Share,
}

/// How much of a tight ponytail is hair and not air; assumed, and to be measured.
const PACKING: (f64, f64, f64) = (0.55, 0.70, 0.85);

impl Ponytail {
    /// Mass of all the hair by its length.
    ///
    /// A bundle of girth `c` is `c2 / (4 pi)` across, of which 0.70 (0.55 to 0.85) is hair; none for a ponytail that
    /// gathers none.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{hair::Ponytail, quantity::{Length, Share}};
    ///
    /// let tail = Ponytail { girth: Length::from_cm(10.0)?.into(), gathered: Share::ALL };
    /// assert_eq!(format!("{:.2}", tail.mass_per_length().best()), "7.35 g/cm");
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn mass_per_length(&self) -> Interval<MassPerLength> {
        let (low, best, high) = PACKING;
        let across = self.girth.map(|girth| girth.cm() * girth.cm() / (4.0 * PI));
        let keratin = fibre_density().value.map(Density::g_per_ml);
        let tail = super::product(&[across, Interval::ordered(low, best, high), keratin]);
        let gathered = self.gathered.fraction();
        tail.map(|mass| MassPerLength::nearest(if gathered > 0.0 { mass / gathered } else { 0.0 }))
    }
}
