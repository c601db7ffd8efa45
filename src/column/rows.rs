use super::{ColumnError, ColumnOutcome};

/// Rows worked on at a time: enough to forget the overhead, few enough for the first cache.
const BLOCK: usize = 256;

/// An input column: a value for each row, or one for all of them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Cells<'a> {
    /// The same value in every row.
    Same(f64),
    /// A value for each row.
    Each(&'a [f64]),
}

impl Cells<'_> {
    /// The value in a row.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::column::Cells;
    ///
    /// let strengths = [6.0, 9.0];
    /// assert_eq!(Cells::from(&strengths[..]).get(1), 9.0);
    /// assert_eq!(Cells::from(12.0).get(1), 12.0); // one value for all rows
    /// ```
    #[inline]
    #[must_use]
    pub fn get(&self, row: usize) -> f64 {
        match self {
            Self::Same(value) => *value,
            Self::Each(values) => values.get(row).copied().unwrap_or(f64::NAN),
        }
    }

    /// The values of four rows; beyond the last row they are not-a-number.
    #[inline]
    pub(super) fn four(&self, start: usize) -> [f64; 4] {
        match self {
            Self::Same(value) => [*value; 4],
            Self::Each(values) => match values.get(start..).and_then(|rest| rest.first_chunk()) {
                Some(four) => *four,
                None => [0, 1, 2, 3].map(|lane| self.get(start + lane)),
            },
        }
    }

    /// The values of some rows, into the front of a block.
    fn copy(&self, start: usize, rows: usize, block: &mut [f64; BLOCK]) {
        match self {
            Self::Same(value) => block.fill(*value),
            Self::Each(values) => {
                for (slot, value) in block.iter_mut().zip(values.iter().skip(start).take(rows)) {
                    *slot = *value;
                }
            }
        }
    }

    pub(super) fn fits(&self, rows: usize) -> Result<(), ColumnError> {
        match self {
            Self::Each(values) if values.len() != rows => Err(ColumnError::Length { got: values.len(), want: rows }),
            _ => Ok(()),
        }
    }
}

impl From<f64> for Cells<'_> {
    fn from(value: f64) -> Self {
        Self::Same(value)
    }
}

impl<'a> From<&'a [f64]> for Cells<'a> {
    fn from(values: &'a [f64]) -> Self {
        Self::Each(values)
    }
}

/// Applies a scalar rule row by row: `N` input columns, `M` output columns.
///
/// A row with a missing (not-a-number) input gives missing outputs. A row that the rule refuses does too, and is
/// counted.
///
/// # Errors
///
/// [`ColumnError::Length`] unless all columns have the length of the first output.
///
/// # Example
///
/// ```
/// use foilwork::{column::{Cells, rows}, quantity::{Mass, MassFraction}, peroxide::dilute};
///
/// let (mut stock, mut diluent) = ([0.0; 3], [0.0; 3]);
/// let targets = [3.0, 20.0, f64::NAN];
/// let inputs = [Cells::Same(12.0), Cells::Each(&targets), Cells::Same(60.0)];
/// let outcome = rows(inputs, [&mut stock, &mut diluent], |[stock, target, total]| {
///     let (stock, target) = (MassFraction::from_ww_percent(stock)?, MassFraction::from_ww_percent(target)?);
///     let blend = dilute(stock, target, Mass::from_g(total)?)?;
///     Ok::<_, Box<dyn std::error::Error>>([blend.stock.g(), blend.diluent.g()])
/// })?;
/// assert_eq!((stock[0], diluent[0]), (15.0, 45.0));
/// assert!(stock[1].is_nan() && stock[2].is_nan());
/// assert_eq!((outcome.refused, outcome.first), (1, Some(1)));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn rows<const N: usize, const M: usize, E>(
    inputs: [Cells<'_>; N],
    mut outputs: [&mut [f64]; M],
    rule: impl Fn([f64; N]) -> Result<[f64; M], E>,
) -> Result<ColumnOutcome, ColumnError> {
    let count = outputs.first().map_or(0, |column| column.len());
    inputs.iter().try_for_each(|column| column.fits(count))?;
    outputs.iter().try_for_each(|column| Cells::Each(column).fits(count))?;
    let mut outcome = ColumnOutcome::default();
    let mut blocks = [[0.0; BLOCK]; N];
    let mut answers = [[0.0; BLOCK]; M];
    for start in (0..count).step_by(BLOCK) {
        let rows = BLOCK.min(count - start);
        for (block, column) in blocks.iter_mut().zip(&inputs) {
            column.copy(start, rows, block);
        }
        for row in 0..rows {
            let values = blocks.each_ref().map(|block| block.get(row).copied().unwrap_or(f64::NAN));
            let answer = if values.iter().any(|value| value.is_nan()) {
                [f64::NAN; M]
            } else {
                rule(values).unwrap_or_else(|_| {
                    outcome.refused += 1;
                    outcome.first.get_or_insert(start + row);
                    [f64::NAN; M]
                })
            };
            for (block, value) in answers.iter_mut().zip(answer) {
                if let Some(slot) = block.get_mut(row) {
                    *slot = value;
                }
            }
        }
        for (column, block) in outputs.iter_mut().zip(&answers) {
            for (slot, value) in column.iter_mut().skip(start).zip(block.iter().take(rows)) {
                *slot = *value;
            }
        }
    }
    Ok(outcome)
}
