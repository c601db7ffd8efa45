use super::Situation;
use crate::{colour::Level, quantity::Duration};

/// What is said of a level after lightening that is darker than before, and the way out.
pub(crate) const LIGHTER: &str = "lightener makes it lighter (swap the two?)";

/// One reading of a test strand: what lay on it, how long, and the levels before and after.
#[derive(Debug, Clone, PartialEq)]
pub struct StrandReading {
    /// The mixture and the hair.
    pub situation: Situation,
    /// How long it lay on the strand.
    pub time: Duration,
    /// The level before, as read.
    pub before: Level,
    /// The level after, as read.
    pub after: Level,
    /// How it was read.
    pub reader: Reader,
    /// Whose hair, by a code; readings of one guest hang together.
    pub guest: Option<String>,
    /// The product; readings of one product hang together.
    pub product: Option<String>,
}

crate::choice::choice! {
    /// How a level was read, which says how far it may be off.
    Reader: "reader" {
        /// By eye, against a swatch ring. Off by a third of a level or so.
        Eye = "eye",
        /// By an instrument. Off by a tenth of a level or so.
        Instrument = "instrument",
    }
}

impl StrandReading {
    /// Whether the strand became darker, by more than two readings of the same hair differ by in 19 of 20 cases.
    pub(crate) fn is_darker(&self) -> bool {
        let within = 1.96 * std::f64::consts::SQRT_2 * self.reader.sd_levels();
        (self.before - self.after).levels() > within
    }

    /// That it became darker, in words; none where it did not.
    pub(crate) fn darker(&self) -> Option<String> {
        let (after, before) = (self.after, self.before);
        self.is_darker().then(|| format!("{after} is darker than {before} before: {LIGHTER}"))
    }
}

impl Reader {
    /// Standard deviation of one reading, in levels.
    ///
    /// Assumed: a reading by eye to the half level is seldom worse than half a level off.
    pub(super) const fn sd_levels(self) -> f64 {
        match self {
            Self::Eye => 0.35,
            Self::Instrument => 0.12,
        }
    }
}
