use crate::peroxide::ConversionError;

/// What became of a column.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
#[must_use]
pub struct ColumnOutcome {
    /// How many values the rule refused; they are not-a-number in the result. Missing values are not counted.
    pub refused: usize,
    /// Where the first of them is, counted from 0.
    pub first: Option<usize>,
}

/// Why a column was not begun.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ColumnError {
    /// Every column must have one value for each row.
    #[error("columns of different length (got {got} and {want} values): give one value for each row")]
    Length {
        /// Length of the offending column.
        got: usize,
        /// Length of the first column.
        want: usize,
    },
    /// The conditions hold for no row at all.
    #[error(transparent)]
    Conversion(#[from] ConversionError),
}
