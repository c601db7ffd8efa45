use crate::colour::{Lab, Level, Swatch, Tone};

/// The colour a toner should reach.
#[derive(Debug, Clone, PartialEq)]
pub enum Target {
    /// A colour measured on a swatch or a head.
    Lab(Lab),
    /// A level and a tone, as a shade of that level and tone shows them on white hair (modelled).
    Look {
        /// The level.
        level: Level,
        /// The tone.
        tone: Tone,
    },
}

impl Target {
    /// The colour itself.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::{Hue, Level, Tone}, toner::Target};
    ///
    /// let cool = Target::Look { level: Level::new(9.0)?, tone: Tone::of(Hue::Violet) };
    /// let plain = Target::Look { level: Level::new(9.0)?, tone: Tone::neutral() };
    /// assert!(cool.swatch().lab().b() < plain.swatch().lab().b()); // less yellow
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn swatch(&self) -> Swatch {
        match self {
            Self::Lab(lab) => Swatch::measured(*lab),
            Self::Look { level, tone } => Swatch::of_look(*level, tone),
        }
    }
}
