use crate::peroxide::{ConversionError, StrengthUnit};

/// What became of a column.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
#[must_use]
pub struct ColumnOutcome {
    /// How many values the rule refused; they are not-a-number in the result. Missing values are not counted.
    pub refused: usize,
    /// Where the first of them is, counted from 0.
    pub first: Option<usize>,
}

impl ColumnOutcome {
    /// Counts a row that is out of range, unless it lacks a value.
    pub(super) fn refuse_unless_missing<'a>(&mut self, row: usize, values: impl IntoIterator<Item = &'a f64>) {
        if !values.into_iter().any(|value| value.is_nan()) {
            self.refuse(row);
        }
    }

    /// Counts a row that the rule refuses.
    pub(super) fn refuse(&mut self, row: usize) {
        self.refused += 1;
        self.first.get_or_insert(row);
    }
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
    /// What is made up to a mark counts by volume.
    #[error("{unit} counts by mass: weigh it (dilute), or convert it to a unit that counts by volume")]
    ByMass {
        /// The unit.
        unit: StrengthUnit,
    },
    /// The conditions hold for no row at all.
    #[error(transparent)]
    Conversion(#[from] ConversionError),
}
