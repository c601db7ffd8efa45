use crate::text::{escaped, number};
use std::fmt;

/// How a shape is filled and outlined. Colours are CSS colours, such as `#444` or `currentColor`.
///
/// # Example
///
/// ```
/// use foilwork::chart::Paint;
///
/// let dashed = Paint::line("#444", 1.5).dashed();
/// assert_eq!(dashed.to_string(), "fill=\"none\" stroke=\"#444\" stroke-width=\"1.5\" stroke-dasharray=\"5 4\"");
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Paint<'c> {
    fill: Option<&'c str>,
    stroke: Option<(&'c str, f64)>,
    opacity: f64,
    dashed: bool,
}

impl<'c> Paint<'c> {
    /// An area of one colour, without outline.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::chart::Paint;
    ///
    /// let foil = Paint::area("#ddd").outlined("#444", 0.5).opacity(0.8).to_string();
    /// assert!(foil.contains("fill=\"#ddd\"") && foil.contains("stroke=\"#444\""));
    /// ```
    #[must_use]
    pub const fn area(colour: &'c str) -> Self {
        Self { fill: Some(colour), stroke: None, opacity: 1.0, dashed: false }
    }

    /// A line, not filled.
    #[must_use]
    pub const fn line(colour: &'c str, width: f64) -> Self {
        Self { fill: None, stroke: Some((colour, width)), opacity: 1.0, dashed: false }
    }

    /// The same with an outline.
    #[must_use]
    pub const fn outlined(self, colour: &'c str, width: f64) -> Self {
        Self { stroke: Some((colour, width)), ..self }
    }

    /// The same, seen through: 0 is invisible, 1 covers.
    #[must_use]
    pub const fn opacity(self, opacity: f64) -> Self {
        Self { opacity, ..self }
    }

    /// The same with its line dashed.
    #[must_use]
    pub const fn dashed(self) -> Self {
        Self { dashed: true, ..self }
    }
}

/// The attributes of an element.
impl fmt::Display for Paint<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "fill=\"{}\"", escaped(self.fill.unwrap_or("none")))?;
        if let Some((colour, width)) = self.stroke {
            write!(f, " stroke=\"{}\" stroke-width=\"{}\"", escaped(colour), number(width, 2))?;
        }
        if self.dashed {
            f.write_str(" stroke-dasharray=\"5 4\"")?;
        }
        if self.opacity < 1.0 {
            write!(f, " opacity=\"{}\"", number(self.opacity.max(0.0), 2))?;
        }
        Ok(())
    }
}
