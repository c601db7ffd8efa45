use crate::quantity::Mass;

/// Masses that cannot be weighed on this scale.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum WeighError {
    /// Nothing on the scale.
    #[error("there is nothing to weigh (total 0 g): give at least one part above 0 g")]
    Nothing,
    /// A division of zero.
    #[error("invalid division of the scale (got {0}): must be above 0 g, for example 0.1 g or 1 g")]
    Division(Mass),
    /// Finer than any balance.
    #[error("invalid division of the scale (got {:e} g): no balance shows less than 0.0000001 g, give 0.1 or 1", .0.g())]
    TooFine(Mass),
    /// The whole bowl disappears in one division.
    #[error("the bowl of {total} rounds to nothing on a scale of {division}: use a finer scale or a bigger bowl")]
    Coarse {
        /// The bowl.
        total: Mass,
        /// The division.
        division: Mass,
    },
    /// A part that the scale cannot show.
    #[error(
        "a part of {wanted:.3} rounds to nothing on a scale of {division}: {}make more at once",
        .finer.map(|finer| format!("use a scale of {finer} or finer, or ")).unwrap_or_default()
    )]
    Vanishes {
        /// The part.
        wanted: Mass,
        /// The division.
        division: Mass,
        /// A scale that shows it, where scales are made that fine.
        finer: Option<Mass>,
    },
    /// More divisions than can be counted exactly.
    #[error("the bowl of {total} is too many divisions of {division} to count exactly (at most 9e15)")]
    Fine {
        /// The bowl.
        total: Mass,
        /// The division.
        division: Mass,
    },
}
