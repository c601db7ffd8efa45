use crate::quantity::{Length, Quantity};

/// The shape of the scalp under a panel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Curvature {
    /// Flat, as a small panel nearly is.
    Flat,
    /// A circle of this radius; a head is about 9 cm.
    Round(Length),
}

/// Sections held to one place and coloured to one line.
///
/// The line is `ahead` of the first root and `out` from the scalp there. Along its own strand a section that is rooted
/// behind the first begins to be coloured further down: released, its start drops.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OverDirection {
    /// In front of the first root, along the scalp.
    pub ahead: Length,
    /// Out from the scalp at the first root.
    pub out: Length,
    /// The shape of the scalp.
    pub scalp: Curvature,
}

impl OverDirection {
    /// From the root to the line of colour along a strand rooted `behind` the first section, measured on the scalp.
    ///
    /// Flat: `sqrt((x + a)2 + b2)`. On a circle the root lies lower and less far back than on the plane.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::{OverDirection, Curvature}, quantity::Length};
    ///
    /// let cm = |cm| Length::from_cm(cm);
    /// let forward = OverDirection { ahead: cm(3.0)?, out: cm(6.0)?, scalp: Curvature::Flat };
    /// assert_eq!(format!("{:.2}", forward.start(cm(2.0)?)), "7.81 cm");
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    ///
    /// # Source
    ///
    /// Plane geometry.
    #[must_use]
    pub fn start(&self, behind: Length) -> Length {
        let (back, below) = match self.scalp {
            Curvature::Round(radius) if radius.cm() > 0.0 => {
                let angle = behind.cm() / radius.cm();
                (radius.cm() * angle.sin(), radius.cm() * (1.0 - angle.cos()))
            }
            _ => (behind.cm(), 0.0),
        };
        Length::nearest((back + self.ahead.cm()).hypot(below + self.out.cm()))
    }
}
