use super::LevelChange;
use schemars::JsonSchema;
use serde::Serialize;
use std::{fmt, ops::Sub, str::FromStr};

/// How light hair is: 1 is black, 10 the lightest blond; some scales run to 12.
///
/// A decimal number on the European 1-10 naming. It says nothing about tone, and a number read on another scale is not
/// a `Level` until a [`ScaleMapping`](super::ScaleMapping) says so.
///
/// ```
/// use foilwork::colour::Level;
///
/// let level: Level = "6.5".parse()?;
/// assert_eq!(level.number(), 6.5);
/// assert_eq!(level.to_string(), "level 6.5");
/// # Ok::<(), foilwork::colour::InvalidLevel>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, JsonSchema)]
#[serde(transparent)]
#[schemars(inline, extend("x-unit" = "level", "minimum" = 1.0, "maximum" = 12.0))]
pub struct Level(f64);

/// A number or text that is not a level.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum InvalidLevel {
    /// The number is outside the scale.
    #[error("invalid level (got {0}): must be from 1 (black) to 12 (the lightest of the scales that run beyond 10)")]
    OutOfRange(f64),
    /// The text is not a number.
    #[error("invalid level (got {0:?}): write a decimal number such as 7 or 6.5")]
    NotANumber(String),
}

impl Level {
    /// Black, the darkest.
    pub const DARKEST: Self = Self(1.0);
    /// Lightest blond, the top of the European 1-10 naming.
    pub const LIGHTEST_OF_TEN: Self = Self(10.0);
    /// The top of the scales that run to 12.
    pub const LIGHTEST: Self = Self(12.0);

    /// Takes a level from 1 to 12.
    ///
    /// # Errors
    ///
    /// [`InvalidLevel::OutOfRange`] outside 1 to 12, and for a value that is not a number.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::{Level, LevelChange};
    ///
    /// let natural = Level::new(4.0)?;
    /// assert_eq!(natural.plus(LevelChange::from_levels(3.5)?)?, Level::new(7.5)?);
    /// assert!(Level::new(13.0).is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub const fn new(number: f64) -> Result<Self, InvalidLevel> {
        if number >= 1.0 && number <= 12.0 { Ok(Self(number)) } else { Err(InvalidLevel::OutOfRange(number)) }
    }

    /// A level that is known to lie in range, moved to the nearest bound if rounding carried it outside.
    pub(crate) const fn clamped(number: f64) -> Self {
        if number >= 1.0 { Self(if number <= 12.0 { number } else { 12.0 }) } else { Self(1.0) }
    }

    /// The number of the level.
    #[must_use]
    pub const fn number(self) -> f64 {
        self.0
    }

    /// The level so many levels lighter (or darker, when the change is negative).
    ///
    /// # Errors
    ///
    /// [`InvalidLevel::OutOfRange`] when that leaves the scale.
    pub fn plus(self, change: LevelChange) -> Result<Self, InvalidLevel> {
        Self::new(self.0 + change.levels())
    }
}

/// The way from the second level to the first: positive is lighter.
impl Sub for Level {
    type Output = LevelChange;

    fn sub(self, from: Self) -> LevelChange {
        LevelChange::between(from.0, self.0)
    }
}

impl TryFrom<f64> for Level {
    type Error = InvalidLevel;

    fn try_from(number: f64) -> Result<Self, InvalidLevel> {
        Self::new(number)
    }
}

impl fmt::Display for Level {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match f.precision() {
            Some(digits) => write!(f, "level {:.digits$}", self.0),
            None => write!(f, "level {}", self.0),
        }
    }
}

/// Reads `7`, `6.5`, `6,5` or `level 6.5`.
impl FromStr for Level {
    type Err = InvalidLevel;

    fn from_str(text: &str) -> Result<Self, InvalidLevel> {
        let number = text.trim();
        let number = number.strip_prefix("level").unwrap_or(number).trim_start();
        let plain = !number.is_empty() && number.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | ','));
        match number.replace(',', ".").parse() {
            Ok(value) if plain => Self::new(value),
            _ => Err(InvalidLevel::NotANumber(text.to_owned())),
        }
    }
}
