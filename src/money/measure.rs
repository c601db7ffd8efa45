use crate::quantity::{Mass, Quantity, Volume};
use std::fmt;

/// How much of something is bought, used or in stock: by mass, by volume or as a count.
///
/// The three never mix: grams of a product sold by the millilitre need a density, which is not guessed here.
///
/// # Example
///
/// ```
/// use foilwork::money::Measure;
///
/// let used = "42 g".parse::<Measure>()?.plus("8 g".parse()?)?;
/// assert_eq!((used.to_string(), used.unit(), used.none().to_string()), ("50 g".into(), "g", "0 g".into()));
/// assert!(used.plus(Measure::Count(2)).is_err());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Measure {
    /// Weighed.
    Mass(Mass),
    /// Measured out.
    Volume(Volume),
    /// Counted: foils, pairs of gloves, towels, applications.
    Count(u32),
}

impl Measure {
    /// None of it, measured alike.
    #[must_use]
    pub fn none(self) -> Self {
        match self {
            Self::Mass(_) => Self::Mass(Mass::ZERO),
            Self::Volume(_) => Self::Volume(Volume::nearest(0.0)),
            Self::Count(_) => Self::Count(0),
        }
    }

    /// The unit a price per unit is given for.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        match self {
            Self::Mass(_) => "g",
            Self::Volume(_) => "mL",
            Self::Count(_) => "piece",
        }
    }
}

impl fmt::Display for Measure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Mass(mass) => mass.fmt(f),
            Self::Volume(volume) => volume.fmt(f),
            Self::Count(1) => f.write_str("1 piece"),
            Self::Count(count) => write!(f, "{count} pieces"),
        }
    }
}

impl From<Mass> for Measure {
    fn from(mass: Mass) -> Self {
        Self::Mass(mass)
    }
}

impl From<Volume> for Measure {
    fn from(volume: Volume) -> Self {
        Self::Volume(volume)
    }
}
