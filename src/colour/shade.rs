use super::{Level, Tone};
use crate::{quantity::Share, text::is_shown};
use std::fmt;

/// One shade of the user's own chart: a code, a level and a tone.
///
/// The type knows no file format and no brand's digits: the reader of a chart says what each digit means and builds
/// the [`Tone`] from it.
#[derive(Debug, Clone, PartialEq)]
pub struct Shade {
    code: String,
    level: Level,
    tone: Tone,
    strength: Share,
}

/// Why a shade cannot be built.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum ShadeError {
    /// Nothing to write on the weighing sheet.
    #[error("invalid shade code: it is empty (give the code printed on the tube)")]
    EmptyCode,
    /// A line break, or what a terminal would obey.
    #[error(
        "invalid shade code: it holds a line break or a character that acts on a terminal (give the code printed on the tube)"
    )]
    ActiveCode,
}

impl Shade {
    /// A shade that, on white hair and left to its full time, gives its own level.
    ///
    /// ```
    /// use foilwork::colour::{Hue, Level, Shade, Tone};
    ///
    /// let pearl = Shade::new("J9-pearl", Level::new(9.0)?, Tone::of(Hue::Violet))?;
    /// assert_eq!(pearl.to_string(), "J9-pearl (level 9, violet)");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    ///
    /// [`ShadeError::EmptyCode`] when there is no code, [`ShadeError::ActiveCode`] when it would act where it is printed.
    pub fn new(code: impl Into<String>, level: Level, tone: Tone) -> Result<Self, ShadeError> {
        let code = code.into().trim().to_owned();
        if code.is_empty() {
            return Err(ShadeError::EmptyCode);
        }
        if !code.chars().all(is_shown) {
            return Err(ShadeError::ActiveCode);
        }
        Ok(Self { code, level, tone, strength: Share::ALL })
    }

    /// The same shade, depositing only a part of what its level says: a sheer shade, or at 0 % a clear one that only
    /// dilutes.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::{Level, Shade, Tone}, quantity::Share};
    ///
    /// let sheer = Shade::new("J8-veil", Level::new(8.0)?, Tone::neutral())?.with_strength(Share::from_percent(50.0)?);
    /// assert_eq!((sheer.code(), sheer.level(), sheer.strength().percent()), ("J8-veil", Level::new(8.0)?, 50.0));
    /// assert!(sheer.tone().is_neutral());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn with_strength(self, strength: Share) -> Self {
        Self { strength, ..self }
    }

    /// The code printed on the tube.
    #[must_use]
    pub fn code(&self) -> &str {
        &self.code
    }

    /// The level it gives on white hair at full strength.
    #[must_use]
    pub const fn level(&self) -> Level {
        self.level
    }

    /// The tone.
    #[must_use]
    pub const fn tone(&self) -> &Tone {
        &self.tone
    }

    /// How much it deposits of what its level says.
    #[must_use]
    pub const fn strength(&self) -> Share {
        self.strength
    }
}

impl fmt::Display for Shade {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} ({}, {})", self.code, self.level, self.tone)
    }
}
