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
    #[must_use]
    pub fn swatch(&self) -> Swatch {
        match self {
            Self::Lab(lab) => Swatch::measured(*lab),
            Self::Look { level, tone } => Swatch::of_look(*level, tone),
        }
    }
}
