use crate::source::{Sourced, citations::colour::EXAM_GUIDE};
use serde::{Deserialize, Serialize};
use std::{fmt, str::FromStr};

/// One of the twelve hues of the colour wheel, named after the primaries it is mixed from.
///
/// ```
/// use foilwork::colour::Hue;
///
/// assert_eq!(Hue::Orange.complement(), Hue::Blue);
/// assert_eq!("blue violet".parse::<Hue>()?, Hue::YellowOrange.complement());
/// # Ok::<(), foilwork::colour::UnknownHue>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[expect(missing_docs, reason = "the names say all there is")]
pub enum Hue {
    Red,
    RedOrange,
    Orange,
    YellowOrange,
    Yellow,
    YellowGreen,
    Green,
    BlueGreen,
    Blue,
    BlueViolet,
    Violet,
    RedViolet,
}

/// Whether a hue is warm or cool.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Temper {
    /// From red-violet through red and orange to yellow.
    Warm,
    /// From yellow-green through green and blue to violet.
    Cool,
}

/// A word that is not one of the twelve hues.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("unknown hue {0:?}: use one of the twelve of the colour wheel ({list})", list = HUE_LIST)]
pub struct UnknownHue(pub String);

const HUE_LIST: &str = "red, red-orange, orange, yellow-orange, yellow, yellow-green, green, blue-green, blue, \
                        blue-violet, violet, red-violet";

impl Hue {
    /// The wheel in order, starting at red.
    pub const ALL: [Self; 12] = [
        Self::Red,
        Self::RedOrange,
        Self::Orange,
        Self::YellowOrange,
        Self::Yellow,
        Self::YellowGreen,
        Self::Green,
        Self::BlueGreen,
        Self::Blue,
        Self::BlueViolet,
        Self::Violet,
        Self::RedViolet,
    ];

    /// The place on the wheel, from 0 (red) to 11 (red-violet).
    #[must_use]
    pub const fn position(self) -> usize {
        self as usize
    }

    /// The hue opposite on the wheel, which mixes with this one to neutral.
    #[must_use]
    pub const fn complement(self) -> Self {
        match self {
            Self::Red => Self::Green,
            Self::RedOrange => Self::BlueGreen,
            Self::Orange => Self::Blue,
            Self::YellowOrange => Self::BlueViolet,
            Self::Yellow => Self::Violet,
            Self::YellowGreen => Self::RedViolet,
            Self::Green => Self::Red,
            Self::BlueGreen => Self::RedOrange,
            Self::Blue => Self::Orange,
            Self::BlueViolet => Self::YellowOrange,
            Self::Violet => Self::Yellow,
            Self::RedViolet => Self::YellowGreen,
        }
    }

    /// The complement with the ground it stands on: the pairs of primaries and secondaries are published, the pairs
    /// between them are common practice.
    #[must_use]
    pub const fn complement_sourced(self) -> Sourced<Self> {
        match self {
            Self::Red | Self::Green | Self::Orange | Self::Blue | Self::Yellow | Self::Violet => {
                Sourced::published(self.complement(), &EXAM_GUIDE)
            }
            _ => Sourced::common_practice(self.complement()),
        }
    }

    /// Warm or cool. Blue is the only cool primary; the hues mixed mostly from it are cool.
    #[must_use]
    pub const fn temper(self) -> Temper {
        match self {
            Self::Red | Self::RedOrange | Self::Orange | Self::YellowOrange | Self::Yellow | Self::RedViolet => {
                Temper::Warm
            }
            _ => Temper::Cool,
        }
    }

    /// The name in lower case, with a hyphen between two primaries.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Red => "red",
            Self::RedOrange => "red-orange",
            Self::Orange => "orange",
            Self::YellowOrange => "yellow-orange",
            Self::Yellow => "yellow",
            Self::YellowGreen => "yellow-green",
            Self::Green => "green",
            Self::BlueGreen => "blue-green",
            Self::Blue => "blue",
            Self::BlueViolet => "blue-violet",
            Self::Violet => "violet",
            Self::RedViolet => "red-violet",
        }
    }
}

impl fmt::Display for Hue {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.words())
    }
}

/// Reads the twelve names, in any case, with a hyphen or a space.
impl FromStr for Hue {
    type Err = UnknownHue;

    fn from_str(text: &str) -> Result<Self, UnknownHue> {
        let word = text.trim().to_ascii_lowercase().replace([' ', '_'], "-");
        Self::ALL.into_iter().find(|hue| hue.words() == word).ok_or_else(|| UnknownHue(text.to_owned()))
    }
}
