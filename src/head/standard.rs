//! A head of our own: eleven regions whose areas are assumed.

use super::{Region, Template};
use crate::{
    quantity::{Quantity, Share},
    source::{Basis, Interval},
};

/// Name, area, density against the mean with bounds, outline, inward, front, place on the map.
type Row = (&'static str, f64, (f64, f64, f64), bool, f64, bool, [f64; 4]);

/// Areas are assumed: front 20 %, top 25 %, both sides 27 %, back 20 %, nape 8 %, each split. Densities against the mean:
/// parietal and occipital alike (one); the temples from 0.52 to 0.84 of the midline's hairline (citation
/// `hairline-density`), the sides 0.79 of the front, which is 9/12 of its summed diameters at 60/63 of its diameter (citation
/// `temple-and-front`); the nape assumed.
const ROWS: [Row; 11] = [
    ("front hairline", 5.0, (75.0, 90.0, 105.0), true, 0.0, true, [4.0, 0.0, 4.0, 1.5]),
    ("front", 15.0, (90.0, 100.0, 115.0), false, 40.0, true, [4.0, 1.5, 4.0, 3.0]),
    ("top", 13.0, (90.0, 105.0, 120.0), false, 80.0, true, [4.0, 4.5, 4.0, 3.0]),
    ("crown", 12.0, (90.0, 105.0, 120.0), false, 100.0, false, [4.0, 7.5, 4.0, 2.5]),
    ("left temple", 3.5, (52.0, 66.0, 84.0), true, 0.0, true, [0.0, 1.5, 1.5, 4.0]),
    ("right temple", 3.5, (52.0, 66.0, 84.0), true, 0.0, true, [10.5, 1.5, 1.5, 4.0]),
    ("left side", 10.0, (65.0, 79.0, 95.0), false, 40.0, true, [1.5, 1.5, 2.5, 6.5]),
    ("right side", 10.0, (65.0, 79.0, 95.0), false, 40.0, true, [8.0, 1.5, 2.5, 6.5]),
    ("back", 20.0, (90.0, 102.0, 115.0), false, 60.0, false, [2.5, 10.0, 7.0, 3.0]),
    ("nape", 5.0, (65.0, 85.0, 105.0), false, 30.0, false, [3.0, 13.0, 6.0, 1.5]),
    ("nape line", 3.0, (50.0, 70.0, 95.0), true, 0.0, false, [3.5, 14.5, 5.0, 1.5]),
];

impl Template {
    /// The template of foilwork's own; its areas are assumed, and a user's own file replaces it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::Template, source::Basis};
    ///
    /// let template = Template::standard();
    /// assert_eq!(template.basis, Basis::Assumed);
    /// assert_eq!(template.regions().iter().filter(|region| region.outline).count(), 4);
    /// ```
    #[must_use]
    pub fn standard() -> Self {
        let region = |(name, area, (low, best, high), outline, inward, front, place): Row| Region {
            name: name.to_owned(),
            area: Share::nearest(area),
            density_percent: Interval::ordered(low, best, high),
            outline,
            inward: Share::nearest(inward),
            front,
            place: Some(place),
        };
        Self::known_good(ROWS.into_iter().map(region).collect(), Basis::Assumed)
    }
}
