use serde::{Deserialize, Serialize};
use std::fmt;

/// The kinds of product that level arithmetic tells apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Product {
    /// Oxidative colour that lifts and deposits.
    PermanentColour,
    /// Permanent colour made to lighten several levels.
    HighLiftTint,
    /// Oxidative colour with weak developer: deposits only.
    QuasiPermanentColour,
    /// Colour without developer: deposits only.
    SemiPermanentColour,
    /// Oxidises melanin; deposits nothing.
    Lightener,
}

impl Product {
    /// The word the trade uses.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::PermanentColour => "permanent colour",
            Self::HighLiftTint => "high-lift tint",
            Self::QuasiPermanentColour => "quasi-permanent colour",
            Self::SemiPermanentColour => "semi-permanent colour",
            Self::Lightener => "lightener",
        }
    }
}

impl fmt::Display for Product {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.words())
    }
}

/// What the hair already carries.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Canvas {
    /// Natural pigment only.
    Natural,
    /// Artificial colour from an earlier service.
    Coloured,
}
