use crate::{
    choice::choice,
    quantity::{Length, Quantity, Share},
    source::Interval,
};
use schemars::JsonSchema;
use serde::Serialize;

choice! {
    /// How a start of colour looks.
    Softness: "softness" {
        /// Within half a centimetre: a line.
        Line = "line",
        /// Within three centimetres.
        Soft = "soft",
        /// Over more than three centimetres: no place where it begins.
        Diffuse = "diffuse",
    }
}

/// How much of a strand is covered, at every centimetre: nothing up to `start`, then rising evenly over `transition`.
///
/// `covered(s) = share x clamp((s - start) / transition, 0, 1)`. Back-combing leaves `1 - share` at the scalp, as it was.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct Profile {
    /// Of the hair taken, the share that is covered behind the transition.
    #[serde(rename = "covered_percent")]
    pub covered: Interval<Share>,
    /// From the scalp to the first colour.
    #[serde(rename = "start_cm")]
    pub start: Interval<Length>,
    /// From the first colour to where the share is covered in full.
    #[serde(rename = "transition_cm")]
    pub transition: Interval<Length>,
}

impl Profile {
    /// The share that is covered at a distance from the scalp.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::Profile, quantity::{Length, Share}};
    ///
    /// let cm = |cm| Length::from_cm(cm);
    /// let combed = Profile {
    ///     covered: Share::from_percent(60.0)?.into(), start: cm(5.0)?.into(), transition: cm(4.0)?.into(),
    /// };
    /// assert_eq!(combed.covered_at(cm(7.0)?).best().percent(), 30.0);
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn covered_at(&self, at: Length) -> Interval<Share> {
        let way = self.start.combine(self.transition, |start, over| risen(at.cm() - start.cm(), over.cm()));
        self.covered.combine(way, |share, way| Share::nearest(share.percent() * way))
    }

    /// The length that would hold as much product if it were covered in full from its first centimetre: the hair of
    /// `length`, less the start and half of the transition, times the share.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::Profile, quantity::{Length, Share}};
    ///
    /// let cm = |cm| Length::from_cm(cm);
    /// let whole = Profile { covered: Share::ALL.into(), start: cm(5.0)?.into(), transition: cm(4.0)?.into() };
    /// assert_eq!(whole.painted(cm(30.0)?.into()).best().cm(), 23.0);
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn painted(&self, length: Interval<Length>) -> Interval<Length> {
        let behind = length.combine(self.start, |length, start| length.cm() - start.cm());
        let full = behind.combine(self.transition, |behind, over| filled(behind, over.cm()));
        self.covered.combine(full, |share, full| Length::nearest(share.fraction() * full))
    }

    /// How the start looks, by its transition.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::{Softness, Technique}, quantity::Length};
    ///
    /// let length = Length::from_cm(30.0)?;
    /// assert_eq!(Technique::Slice.profile(length).value.softness(), Softness::Line);
    /// assert_eq!(Technique::Freehand.profile(length).value.softness(), Softness::Diffuse);
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn softness(&self) -> Softness {
        match self.transition.best().cm() {
            over if over <= 0.5 => Softness::Line,
            over if over <= 3.0 => Softness::Soft,
            _ => Softness::Diffuse,
        }
    }
}

/// How far along a rise of this width a place is, from 0 to 1.
fn risen(behind: f64, over: f64) -> f64 {
    if behind <= 0.0 {
        0.0
    } else if behind >= over {
        1.0
    } else {
        behind / over
    }
}

/// The integral of `risen` from its start to `behind`.
fn filled(behind: f64, over: f64) -> f64 {
    if behind <= 0.0 {
        0.0
    } else if behind >= over {
        behind - over / 2.0
    } else {
        behind * behind / (2.0 * over)
    }
}
