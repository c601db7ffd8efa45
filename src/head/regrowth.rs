use super::{Profile, Region, Softness};
use crate::{
    hair::{GrowthRate, Weeks, weeks_to_grow},
    quantity::{Length, Quantity},
    source::{Interval, Sourced},
};

/// Regrowth that shows as a line, by how the colour starts; assumed.
const fn shows_at(softness: Softness) -> (f64, f64, f64) {
    match softness {
        Softness::Line => (0.5, 1.0, 1.5),
        Softness::Soft => (1.5, 2.5, 4.0),
        Softness::Diffuse => (4.0, 6.0, 9.0),
    }
}

/// The weeks until the regrowth of a section shows: 1 cm above a line, 2.5 cm above a soft start, 6 cm above a diffuse one,
/// all assumed with wide bounds.
///
/// # Example
///
/// ```
/// use foilwork::{hair::growth, head::{Technique, line_shows_after}, quantity::Length};
///
/// let length = Length::from_cm(30.0)?;
/// let weeks = |technique: Technique| line_shows_after(&technique.profile(length).value, growth(None).value).value.best();
/// assert!(weeks(Technique::Slice) < weeks(Technique::BackComb));
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
#[must_use]
pub fn line_shows_after(profile: &Profile, rate: Interval<GrowthRate>) -> Sourced<Interval<Weeks>> {
    let (low, best, high) = shows_at(profile.softness());
    let length = Interval::ordered(low, best, high).map(Length::nearest);
    Sourced::assumed(weeks_to_grow(length, rate))
}

/// How long a root shadow is in a region: 1 cm (0.5 to 1.5) at the outline, 3 cm (2 to 4) at the crown, evenly between;
/// assumed from the trade's rule that it is shortest at the hairline.
///
/// # Example
///
/// ```
/// use foilwork::head::{Template, root_shadow_length};
///
/// let template = Template::standard();
/// let [hairline, .., crown] = [0, 1, 2, 3].map(|i| root_shadow_length(&template.regions()[i]).value.best().cm());
/// assert_eq!((hairline, crown), (1.0, 3.0));
/// ```
#[must_use]
pub fn root_shadow_length(region: &Region) -> Sourced<Interval<Length>> {
    let inward = region.inward.fraction();
    let at = |outline: f64, crown: f64| outline + (crown - outline) * inward;
    Sourced::assumed(Interval::ordered(at(0.5, 2.0), at(1.0, 3.0), at(1.5, 4.0)).map(Length::nearest))
}
