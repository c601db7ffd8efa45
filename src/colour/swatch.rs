use super::{
    Difference, Hue, Lab, Level, Shade, Srgb, Tone, White,
    absorption::Absorption,
    assumptions::{Assumptions, ENSEMBLE, SETS},
    dye::deposit,
    pigment::Melanin,
    srgb::{lab_of_linear, linear_of_lab},
};
use crate::{quantity::Share, source::Basis};
use std::fmt;

/// A modelled (or measured) colour of hair: CIELAB with bounds, and a colour for the screen.
///
/// A swatch is a model, not a photograph, and says so in [`notice`](Self::notice) and wherever it is shown. Its bounds
/// are the extremes over the assumptions of the model, each moved to its bound.
///
/// ```
/// use foilwork::colour::{Level, Swatch};
///
/// let (dark, light) = (Level::new(3.0)?, Level::new(8.0)?);
/// let lightened = Swatch::lightened(dark, light);
/// assert!(lightened.lab().l() > Swatch::natural(dark).lab().l());
/// assert!(lightened.to_string().ends_with("(model, not a photograph)"));
/// # Ok::<(), foilwork::colour::InvalidLevel>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Swatch {
    /// Linear sRGB reflectance under each set of assumptions, the best first.
    pub(crate) samples: [[f64; 3]; SETS],
    measured: Option<Lab>,
}

/// The bounds of a modelled colour, coordinate by coordinate.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct LabBounds {
    /// Lowest and highest L\*.
    pub l: (f64, f64),
    /// Lowest and highest a\*.
    pub a: (f64, f64),
    /// Lowest and highest b\*.
    pub b: (f64, f64),
}

impl Swatch {
    /// The words that go with every modelled colour.
    pub const NOTICE: &'static str = "model, not a photograph";

    fn of(absorption: impl Fn(&Assumptions) -> Absorption) -> Self {
        Self { samples: ENSEMBLE.map(|with| absorption(&with).reflectance(&with)), measured: None }
    }

    /// A modelled colour from its samples.
    pub(crate) const fn modelled(samples: [[f64; 3]; SETS]) -> Self {
        Self { samples, measured: None }
    }

    /// Natural hair of a level.
    #[must_use]
    pub fn natural(level: Level) -> Self {
        Self::of(|with| Melanin::natural(level, with).absorption())
    }

    /// White hair: no pigment, the slight yellow of keratin.
    #[must_use]
    pub fn white() -> Self {
        Self::of(|_| Melanin::NONE.absorption())
    }

    /// Hair of natural level `from` lightened until it is as light as natural `to`: eumelanin goes first, so the colour
    /// is warmer than natural hair of that level. Hair that is already that light stays as it is.
    #[must_use]
    pub fn lightened(from: Level, to: Level) -> Self {
        Self::of(|with| Melanin::natural(from, with).lightened_to(to, with).absorption())
    }

    /// What a shade shows on white hair at full strength.
    #[must_use]
    pub fn of_shade(shade: &Shade) -> Self {
        Self::of(|with| shade.deposit(with))
    }

    /// The look of a level and a tone, as a shade of that level and tone shows it on white hair.
    #[must_use]
    pub fn of_look(level: Level, tone: &Tone) -> Self {
        Self::of(|with| deposit(level, tone, with))
    }

    /// A colour measured on the hair itself. It has no bounds but those of the instrument.
    #[must_use]
    pub fn measured(lab: Lab) -> Self {
        Self { samples: [linear_of_lab(lab); SETS], measured: Some(lab) }
    }

    /// Strands of two colours side by side, seen from far enough that they merge: their light adds up.
    ///
    /// `share` is the share of `other`. This is how a section with highlights looks; it is not how dyes mix.
    #[must_use]
    pub fn beside(&self, other: &Self, share: Share) -> Self {
        let (ours, theirs) = (1.0 - share.fraction(), share.fraction());
        let mut samples = self.samples;
        for (mine, other) in samples.iter_mut().zip(&other.samples) {
            for (mine, other) in mine.iter_mut().zip(other) {
                *mine = *mine * ours + other * theirs;
            }
        }
        let measured = match (self.measured, other.measured) {
            (Some(_), Some(_)) => samples.first().map(|best| lab_of_linear(*best)),
            _ => None,
        };
        Self { samples, measured }
    }

    /// The best estimate in CIELAB (D65, 2 degrees unless measured otherwise).
    #[must_use]
    pub fn lab(&self) -> Lab {
        let [best, ..] = self.samples;
        self.measured.unwrap_or_else(|| lab_of_linear(best))
    }

    /// The bounds of the estimate (D65, 2 degrees).
    #[must_use]
    pub fn bounds(&self) -> LabBounds {
        let mut bounds = LabBounds { l: NOTHING, a: NOTHING, b: NOTHING };
        for sample in self.samples {
            let lab = lab_of_linear(sample);
            widen(&mut bounds.l, lab.l());
            widen(&mut bounds.a, lab.a());
            widen(&mut bounds.b, lab.b());
        }
        bounds
    }

    /// The lowest and highest chroma of the estimate.
    #[must_use]
    pub fn chroma_bounds(&self) -> (f64, f64) {
        let mut bounds = NOTHING;
        for sample in self.samples {
            widen(&mut bounds, lab_of_linear(sample).chroma());
        }
        bounds
    }

    /// The hue in the words of the wheel, or nothing when the colour is too grey to tell.
    #[must_use]
    pub fn hue(&self) -> Option<Hue> {
        Hue::nearest_to(self.lab())
    }

    /// The nearest colour a screen can show.
    #[must_use]
    pub fn srgb(&self) -> Srgb {
        Srgb::nearest(self.lab()).0
    }

    /// From this colour to the other, both for D65 and 2 degrees.
    #[must_use]
    pub fn difference_to(&self, other: &Self) -> Difference {
        let at = |swatch: &Self| swatch.lab().adapted_to(White::D65TwoDegree);
        Difference::of(at(self), at(other))
    }

    /// Measured, or assumed: the model rests on published absorptions but assumes how much pigment a level has.
    #[must_use]
    pub const fn basis(&self) -> Basis {
        if self.measured.is_some() { Basis::Measured } else { Basis::Assumed }
    }

    /// The words to show beside the colour.
    #[must_use]
    pub const fn notice(&self) -> &'static str {
        if self.measured.is_some() { "shown from a measurement; a screen is not hair" } else { Self::NOTICE }
    }
}

const NOTHING: (f64, f64) = (f64::INFINITY, f64::NEG_INFINITY);

fn widen(bounds: &mut (f64, f64), value: f64) {
    bounds.0 = bounds.0.min(value);
    bounds.1 = bounds.1.max(value);
}

impl fmt::Display for Swatch {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {:.1} ({})", self.srgb(), self.lab(), self.notice())
    }
}
