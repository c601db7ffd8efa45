use super::{
    Chroma, Difference, Hue, Lab, Level, Lightness, Redness, Shade, Srgb, Tone, White, Yellowness,
    assumptions::SETS,
    bands::Bands,
    difference::ciede2000,
    fibre::{MODELS, Model},
    pigment::Melanin,
    space::{lab_of, xyz_of},
    table,
};
use crate::{
    quantity::{Quantity, Share},
    source::{Basis, Interval},
};
use schemars::JsonSchema;
use serde::Serialize;
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
    /// X, Y, Z for D65 and 10 degrees under each set of assumptions, the best first.
    pub(crate) samples: [[f64; 3]; SETS],
    measured: Option<Lab>,
    basis: Basis,
}

impl Swatch {
    /// The words that go with every modelled colour.
    pub const NOTICE: &'static str = "model, not a photograph";

    fn of(absorption: impl Fn(&Model) -> Bands) -> Self {
        Self::modelled(MODELS.each_ref().map(|model| model.fibre.xyz(&absorption(model))))
    }

    /// A modelled colour from its samples.
    pub(crate) const fn modelled(samples: [[f64; 3]; SETS]) -> Self {
        Self { samples, measured: None, basis: Basis::Assumed }
    }

    /// A colour that somebody named, from its samples.
    pub(crate) const fn stated(samples: [[f64; 3]; SETS]) -> Self {
        Self { samples, measured: None, basis: Basis::Stated }
    }

    /// X, Y, Z (D65, 10 degrees) under every set of assumptions, the best first: all there is to a swatch beside its basis.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::Swatch;
    ///
    /// let white = Swatch::white();
    /// assert_eq!(Swatch::from_samples(white.samples(), white.basis()), Some(white));
    /// ```
    #[must_use]
    pub const fn samples(&self) -> &[[f64; 3]] {
        &self.samples
    }

    /// A swatch that was kept as its samples; none unless there are as many as [`samples`](Self::samples) gives.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::Swatch, source::Basis};
    ///
    /// assert_eq!(Swatch::from_samples(&[], Basis::Assumed), None);
    /// ```
    #[must_use]
    pub fn from_samples(samples: &[[f64; 3]], basis: Basis) -> Option<Self> {
        let samples: [[f64; 3]; SETS] = samples.try_into().ok()?;
        let [best, ..] = samples;
        Some(Self { samples, measured: (basis == Basis::Measured).then(|| lab_of(best)), basis })
    }

    /// X, Y, Z of the best estimate.
    pub(crate) const fn best_sample(&self) -> [f64; 3] {
        let [best, ..] = self.samples;
        best
    }

    /// Natural hair of a level.
    #[must_use]
    pub fn natural(level: Level) -> Self {
        Self::modelled(table::natural(level))
    }

    /// White hair: no pigment, the slight yellow of keratin.
    #[must_use]
    pub fn white() -> Self {
        Self::of(|model| Melanin::NONE.absorption(model))
    }

    /// Hair of natural level `from` lightened until it is as light as natural `to`: eumelanin goes first, so the colour
    /// is warmer than natural hair of that level. Hair that is already that light stays as it is.
    #[must_use]
    pub fn lightened(from: Level, to: Level) -> Self {
        Self::modelled(table::lightened(from, to))
    }

    /// What a shade shows on white hair at full strength.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::{Hue, Level, Shade, Swatch, Tone};
    ///
    /// let (level, tone) = (Level::new(9.0)?, Tone::of(Hue::Violet));
    /// let pearl = Swatch::of_shade(&Shade::new("J9-pearl", level, tone.clone())?);
    /// assert_eq!(pearl, Swatch::of_look(level, &tone));
    /// assert_eq!(pearl.notice(), Swatch::NOTICE);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn of_shade(shade: &Shade) -> Self {
        if shade.strength() == Share::ALL {
            return Self::of_look(shade.level(), shade.tone());
        }
        Self::of(|model| shade.deposit(model))
    }

    /// The look of a level and a tone, as a shade of that level and tone shows it on white hair.
    #[must_use]
    pub fn of_look(level: Level, tone: &Tone) -> Self {
        Self::modelled(table::look(level, tone))
    }

    /// A colour measured on the hair itself. It has no bounds but those of the instrument.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::{Lab, Swatch, White};
    ///
    /// let read = Swatch::measured(Lab::new(57.0, 5.0, 28.0, White::D65TenDegree)?);
    /// assert!((read.lightness().best().lab_l() - 57.0).abs() < 1e-6);
    /// assert!(read.redness().best().lab_a() < read.yellowness().best().lab_b());
    /// assert!(read.chroma().best().chroma() > 28.0 && read.hue().is_some());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn measured(lab: Lab) -> Self {
        Self { samples: [xyz_of(lab); SETS], measured: Some(lab), basis: Basis::Measured }
    }

    /// Strands of two colours side by side, seen from far enough that they merge: their light adds up.
    ///
    /// `share` is the share of `other`. This is how a section with highlights looks; it is not how dyes mix.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::{Level, Swatch}, quantity::Share};
    ///
    /// let (base, light) = (Swatch::natural(Level::new(5.0)?), Swatch::natural(Level::new(9.0)?));
    /// let woven = base.beside(&light, Share::from_percent(30.0)?);
    /// assert!(base.lab().l() < woven.lab().l() && woven.lab().l() < light.lab().l());
    /// assert!(base.difference_to(&woven).lighter > 0.0);
    /// assert_ne!(base.srgb(), woven.srgb());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
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
            (Some(_), Some(_)) => samples.first().map(|best| lab_of(*best)),
            _ => None,
        };
        Self { samples, measured, basis: self.basis.weaker(other.basis) }
    }

    /// The best estimate in CIELAB (D65, 10 degrees unless measured otherwise).
    #[must_use]
    pub fn lab(&self) -> Lab {
        let [best, ..] = self.samples;
        self.measured.unwrap_or_else(|| lab_of(best))
    }

    /// L\* with its bounds over the assumptions of the model.
    #[must_use]
    pub fn lightness(&self) -> Interval<Lightness> {
        self.bounded(|lab| Lightness::nearest(lab.l()))
    }

    /// a\* with its bounds.
    #[must_use]
    pub fn redness(&self) -> Interval<Redness> {
        self.bounded(|lab| Redness::nearest(lab.a()))
    }

    /// b\* with its bounds.
    #[must_use]
    pub fn yellowness(&self) -> Interval<Yellowness> {
        self.bounded(|lab| Yellowness::nearest(lab.b()))
    }

    /// Chroma with its bounds.
    #[must_use]
    pub fn chroma(&self) -> Interval<Chroma> {
        self.bounded(|lab| Chroma::nearest(lab.chroma()))
    }

    /// A coordinate of the best estimate, widened to that of every set of assumptions.
    fn bounded<Q: Copy + PartialOrd>(&self, of: impl Fn(Lab) -> Q) -> Interval<Q> {
        let white = self.lab().white();
        let all = self.samples.iter().map(|sample| of(lab_of(*sample).adapted_to(white)));
        let best = Interval::exact(of(self.lab()));
        if self.measured.is_some() { best } else { all.fold(best, |all, one| all.widened_to(Interval::exact(one))) }
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

    /// From this colour to the other, both for D65 and 10 degrees.
    #[must_use]
    pub fn difference_to(&self, other: &Self) -> Difference {
        let at = |swatch: &Self| swatch.lab().adapted_to(White::D65TenDegree);
        Difference::of(at(self), at(other))
    }

    /// CIEDE2000 to the other, with its bounds: both colours under the same set of assumptions, one set after the other.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::{Level, Swatch};
    ///
    /// let (dark, light) = (Swatch::natural(Level::new(5.0)?), Swatch::natural(Level::new(7.0)?));
    /// let apart = dark.difference_bounds(&light);
    /// assert_eq!(apart.best(), dark.difference_to(&light).ciede2000);
    /// assert!(apart.high() > apart.low() && dark.difference_bounds(&dark).is_exact());
    /// # Ok::<(), foilwork::colour::InvalidLevel>(())
    /// ```
    #[must_use]
    pub fn difference_bounds(&self, other: &Self) -> Interval<f64> {
        let best = Interval::exact(self.difference_to(other).ciede2000);
        if self.measured.is_some() && other.measured.is_some() {
            return best;
        }
        self.samples
            .iter()
            .zip(&other.samples)
            .fold(best, |all, (one, other)| all.widened_to(Interval::exact(ciede2000(lab_of(*one), lab_of(*other)))))
    }

    /// Measured, named by somebody, or assumed: the model rests on published absorptions but assumes how much pigment a
    /// level has.
    #[must_use]
    pub const fn basis(&self) -> Basis {
        self.basis
    }

    /// The words to show beside the colour.
    #[must_use]
    pub const fn notice(&self) -> &'static str {
        match self.basis {
            Basis::Measured => "shown from a measurement; a screen is not hair",
            Basis::Stated => "as named by eye, not a photograph",
            _ => Self::NOTICE,
        }
    }
}

/// What a swatch says as plain data.
#[derive(Serialize, JsonSchema)]
struct Shown {
    lab_l: Interval<Lightness>,
    lab_a: Interval<Redness>,
    lab_b: Interval<Yellowness>,
    /// The white the coordinates are counted from.
    white: White,
    /// The nearest colour a screen can show.
    srgb: Srgb,
    /// The hue in the words of the wheel, where there is one.
    hue: Option<Hue>,
    /// How far off the model may be, in CIEDE2000.
    uncertainty_ciede2000: f64,
    basis: Basis,
    /// The words to show beside it.
    notice: &'static str,
}

impl Serialize for Swatch {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let shown = Shown {
            lab_l: self.lightness(),
            lab_a: self.redness(),
            lab_b: self.yellowness(),
            white: self.lab().white(),
            srgb: self.srgb(),
            hue: self.hue(),
            uncertainty_ciede2000: self.uncertainty(),
            basis: self.basis(),
            notice: self.notice(),
        };
        shown.serialize(serializer)
    }
}

impl JsonSchema for Swatch {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Swatch".into()
    }

    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        Shown::json_schema(generator)
    }
}

impl fmt::Display for Swatch {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {:.1} ({})", self.srgb(), self.lab(), self.notice())
    }
}
