use super::{Difference, Level, Swatch, reading::levels_of};
use crate::{
    quantity::Share,
    source::{Basis, Interval},
};
use schemars::JsonSchema;
use serde::Serialize;

/// How a section with lightened strands among others reads from a distance.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SectionLook {
    /// The colour that the eye mixes: the light of both, by their shares.
    pub mixed: Swatch,
    /// The level that natural hair as light as this has, with its bounds.
    pub perceived_level: Interval<Level>,
    /// From the strands left to the lightened ones.
    pub contrast: Difference,
    /// Whether two readings of one tress differ as much: then the strands do not show.
    pub reads_as_one: bool,
    /// The basis: assumed.
    pub basis: Basis,
    /// What the figures leave out.
    pub caveat: &'static str,
}

impl SectionLook {
    /// What the figures leave out.
    pub const CAVEAT: &'static str = "mixed as light is, seen from too far to tell strands apart; close by, in sun or in \
                                      movement the contrast counts, and strands on top weigh more than their share";
}

/// The look of a section: `share` of its hair lightened (and toned), the rest left.
///
/// # Example
///
/// ```
/// use foilwork::{colour::{Level, Swatch, section_look}, quantity::Share};
///
/// let (base, foils) = (Swatch::natural(Level::new(6.0)?), Swatch::lightened(Level::new(6.0)?, Level::new(9.0)?));
/// let look = section_look(&base, &foils, Share::from_percent(50.0)?);
/// assert!(look.perceived_level.best() > Level::new(6.5)? && look.perceived_level.best() < Level::new(9.0)?);
/// assert!(!look.reads_as_one);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Light adds up (partitive mixing); the levels are those of the hair model.
#[must_use]
pub fn section_look(rest: &Swatch, lightened: &Swatch, share: Share) -> SectionLook {
    let mixed = rest.beside(lightened, share);
    let contrast = rest.difference_to(lightened);
    SectionLook {
        perceived_level: levels_of(&mixed),
        reads_as_one: contrast.is_within_repeat_readings(),
        mixed,
        contrast,
        basis: Basis::Assumed,
        caveat: SectionLook::CAVEAT,
    }
}

/// A strip of swatches beside each other as a piece of HTML, each with its label and its facts in words: for a section its
/// natural, exposed and toned hair.
///
/// # Example
///
/// ```
/// use foilwork::colour::{Level, Swatch, strip};
///
/// let (natural, exposed) = (Level::new(5.0)?, Level::new(9.0)?);
/// let html = strip([("natural", &Swatch::natural(natural)), ("exposed", &Swatch::lightened(natural, exposed))]);
/// assert_eq!(html.matches("model, not a photograph").count(), 2);
/// # Ok::<(), foilwork::colour::InvalidLevel>(())
/// ```
#[must_use]
pub fn strip<'a>(swatches: impl IntoIterator<Item = (&'a str, &'a Swatch)>) -> String {
    let each: String = swatches.into_iter().map(|(label, swatch)| swatch.html(label)).collect();
    format!("<div style=\"display:flex;flex-wrap:wrap;gap:1.5em\">{each}</div>")
}
