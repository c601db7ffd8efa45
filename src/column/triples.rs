use super::{Cells, ColumnError};
use crate::colour::Lanes;

/// Numbers in four rows of three.
pub(super) const FOUR_ROWS: usize = 3 * Lanes::WIDTH;

/// A column of colours: three coordinates in each row.
#[derive(Debug, Clone, Copy)]
pub enum Triples<'a> {
    /// A column for each coordinate.
    Columns([Cells<'a>; 3]),
    /// Row after row in one piece.
    Rows(&'a [f64]),
}

impl Triples<'_> {
    /// The coordinates in a row; beyond the last row they are not-a-number.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::column::{Cells, Triples};
    ///
    /// let (l, rows) = ([50.0, 60.0], [50.0, 2.0, 3.0, 60.0, 2.0, 3.0]);
    /// let columns = Triples::Columns([Cells::Each(&l), Cells::Same(2.0), Cells::Same(3.0)]);
    /// assert_eq!(columns.get(1), Triples::Rows(&rows).get(1));
    /// ```
    #[must_use]
    pub fn get(&self, row: usize) -> [f64; 3] {
        match self {
            Self::Columns(columns) => columns.map(|cells| cells.get(row)),
            Self::Rows(rows) => rows.as_chunks().0.get(row).copied().unwrap_or([f64::NAN; 3]),
        }
    }

    /// The coordinates of four rows; beyond the last row they are not-a-number.
    #[inline]
    pub(super) fn four(&self, start: usize) -> [Lanes; 3] {
        let four = match self {
            Self::Columns(columns) => columns.map(|cells| cells.four(start)),
            Self::Rows(rows) => columns(rows.get(3 * start..).unwrap_or_default()),
        };
        four.map(Lanes::from)
    }

    pub(super) fn fits(&self, rows: usize) -> Result<(), ColumnError> {
        match self {
            Self::Columns(columns) => columns.iter().try_for_each(|cells| cells.fits(rows)),
            Self::Rows(values) if values.len() != rows.saturating_mul(3) => {
                Err(ColumnError::Length { got: values.len() / 3, want: rows })
            }
            Self::Rows(_) => Ok(()),
        }
    }
}

/// The first four rows as three columns; rows beyond the last are not-a-number.
#[inline]
pub(super) fn columns(rows: &[f64]) -> [[f64; Lanes::WIDTH]; 3] {
    if let Some([a0, b0, c0, a1, b1, c1, a2, b2, c2, a3, b3, c3]) = rows.first_chunk::<FOUR_ROWS>() {
        return [[*a0, *a1, *a2, *a3], [*b0, *b1, *b2, *b3], [*c0, *c1, *c2, *c3]];
    }
    let mut columns = [[f64::NAN; Lanes::WIDTH]; 3];
    for (row, values) in rows.chunks_exact(3).enumerate() {
        for (column, value) in columns.iter_mut().zip(values) {
            if let Some(slot) = column.get_mut(row) {
                *slot = *value;
            }
        }
    }
    columns
}
