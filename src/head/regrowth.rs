use super::{Profile, Region, Softness};
use crate::{
    colour::{Level, TRANSITION_LEVELS},
    hair::{GrowthRate, Weeks, weeks_to_grow},
    quantity::{Length, Quantity},
    source::{Interval, Sourced},
};
use schemars::JsonSchema;
use serde::Serialize;

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

/// A stretch of a root shadow.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct ShadowStep {
    /// Where it begins, from the scalp.
    #[serde(rename = "from_cm")]
    pub from: Length,
    /// Where it ends.
    #[serde(rename = "to_cm")]
    pub to: Length,
    /// How deep it is there.
    pub level: Level,
}

/// How a root shadow is blended into lighter hair: at its full depth for two thirds of its length, then in even steps of at
/// most [`TRANSITION_LEVELS`], which no two formulas may differ by without a line. The two thirds are assumed. Nothing to
/// blend where the hair is no lighter.
///
/// # Example
///
/// ```
/// use foilwork::{colour::Level, head::shadow_steps, quantity::Length};
///
/// let (level, cm) = (|level| Level::new(level), |cm| Length::from_cm(cm));
/// let steps = shadow_steps(level(5.0)?, level(9.0)?, cm(3.0)?);
/// // Four levels are two steps of two: one level between them.
/// assert_eq!(steps.iter().map(|step| step.level.number()).collect::<Vec<_>>(), [5.0, 7.0]);
/// assert_eq!((steps[0].to, steps[1].to), (cm(2.0)?, cm(3.0)?));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn shadow_steps(shadow: Level, light: Level, length: Length) -> Vec<ShadowStep> {
    let (apart, full) = ((light - shadow).levels(), length.cm() * 2.0 / 3.0);
    let between = (apart / TRANSITION_LEVELS - 1e-9).ceil() - 1.0;
    if between < 1.0 {
        return vec![ShadowStep { from: Length::MIN, to: length, level: shadow }];
    }
    let each = (length.cm() - full) / between;
    let mut steps = vec![ShadowStep { from: Length::MIN, to: Length::nearest(full), level: shadow }];
    // Twelve levels are the whole scale, so these are a handful.
    for (i, step) in (1..=11_u8).map(f64::from).take_while(|step| *step <= between).enumerate() {
        let from = steps.get(i).map_or(Length::MIN, |before| before.to);
        let level = Level::clamped(shadow.number() + apart * step / (between + 1.0));
        steps.push(ShadowStep { from, to: Length::nearest(full + each * step), level });
    }
    steps
}
