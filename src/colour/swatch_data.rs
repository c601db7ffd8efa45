use super::{LabBounds, Swatch};
use crate::source::Basis;
use serde::Serialize;

/// A swatch as plain data, for a plan or a file.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SwatchData {
    /// Lightness L\*.
    pub lab_l: f64,
    /// a\*.
    pub lab_a: f64,
    /// b\*.
    pub lab_b: f64,
    /// The white the coordinates are counted from, in words.
    pub white: String,
    /// Bounds of a model for D65 and 2 degrees; none for a measurement.
    pub bounds: Option<LabBounds>,
    /// The nearest colour a screen can show, such as `#9d8b6c`.
    pub srgb: String,
    /// The hue in the words of the wheel, where there is one.
    pub hue: Option<&'static str>,
    /// What the colour rests on.
    pub basis: Basis,
    /// The words to show beside it.
    pub notice: &'static str,
}

impl Swatch {
    /// The swatch as plain data.
    #[must_use]
    pub fn data(&self) -> SwatchData {
        let lab = self.lab();
        SwatchData {
            lab_l: lab.l(),
            lab_a: lab.a(),
            lab_b: lab.b(),
            white: lab.white().to_string(),
            bounds: (self.basis() != Basis::Measured).then(|| self.bounds()),
            srgb: self.srgb().to_string(),
            hue: self.hue().map(super::Hue::words),
            basis: self.basis(),
            notice: self.notice(),
        }
    }
}
