use crate::{choice::choice, quantity::Duration};
use schemars::JsonSchema;
use serde::Serialize;

choice! {
    /// What hands do.
    PieceKind: "piece of work" {
        /// Weigh and mix a bowl.
        Mix = "mix",
        /// Put a section on.
        Apply = "apply",
        /// Look over all that is on.
        Look = "look",
        /// Bring the guest to the basin.
        Walk = "walk",
        /// Rinse a section at the basin.
        Rinse = "rinse",
    }
}

/// Foils that are closed in one go, numbered within their section.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
pub struct FoilGroup {
    /// The first of them, from 1.
    pub first: u32,
    /// The last.
    pub last: u32,
}

/// A piece of work of one person, without a break.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct Piece {
    /// What is done.
    pub kind: PieceKind,
    /// The place of the section, from 0; none for a look, which is at all that is on, and for a walk.
    pub section: Option<usize>,
    /// Who does it, from 0.
    pub person: usize,
    /// When it begins, from the first work on the guest.
    #[serde(rename = "from_min")]
    pub from: Duration,
    /// When it ends.
    #[serde(rename = "to_min")]
    pub to: Duration,
    /// The foils that are closed in it.
    pub foils: Option<FoilGroup>,
}
