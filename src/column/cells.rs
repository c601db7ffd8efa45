use super::ColumnError;
use std::fmt::Debug;

/// Rows worked on at a time: enough to forget the overhead, few enough for the first cache.
pub(super) const BLOCK: usize = 256;

/// A column that lies elsewhere than in one piece: with gaps between its values, in chunks, repeated, or in other numbers.
///
/// It is asked for some rows at a time, so that a long column needs no copy of its own.
pub trait Draw: Debug + Sync {
    /// How many rows there are.
    fn rows(&self) -> usize;

    /// Puts the values of the rows from `start` into `block`; a value that is missing is not-a-number.
    fn draw(&self, start: usize, block: &mut [f64]);
}

/// An input column: a value for each row, or one for all of them.
#[derive(Debug, Clone, Copy)]
pub enum Cells<'a> {
    /// The same value in every row.
    Same(f64),
    /// A value for each row.
    Each(&'a [f64]),
    /// A value for each row, fetched some rows at a time.
    Drawn(&'a dyn Draw),
}

impl<'a> Cells<'a> {
    /// The value in a row; beyond the last row it is not-a-number.
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
            Self::Drawn(column) => {
                let mut one = [f64::NAN];
                if row < column.rows() {
                    column.draw(row, &mut one);
                }
                one[0]
            }
        }
    }

    /// Whether the other is the same column, in the same place.
    pub(super) fn is(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Same(one), Self::Same(other)) => one.to_bits() == other.to_bits(),
            (Self::Each(one), Self::Each(other)) => std::ptr::eq(*one, *other),
            // Two of different types may have one address; that two of one type are taken for different ones costs time alone.
            (Self::Drawn(one), Self::Drawn(other)) => std::ptr::eq(*one, *other),
            _ => false,
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
            Self::Drawn(_) => [0, 1, 2, 3].map(|lane| self.get(start + lane)),
        }
    }

    /// A block of rows: where they lie, or in `scratch`, whose further places hold the last of them once more: a law that vouches
    /// for the rows vouches for the block.
    #[inline]
    pub(super) fn block<'b>(&self, start: usize, rows: usize, scratch: &'b mut [f64; BLOCK]) -> &'b [f64; BLOCK]
    where
        'a: 'b,
    {
        match self {
            // Filled once, before the first block.
            Self::Same(_) => {}
            Self::Each(values) => {
                let rest = values.get(start..).unwrap_or_default();
                if let Some(block) = rest.first_chunk() {
                    return block;
                }
                for (slot, value) in scratch.iter_mut().zip(rest.iter().take(rows)) {
                    *slot = *value;
                }
                repeat_last(scratch, rows);
            }
            Self::Drawn(column) => {
                column.draw(start, scratch.get_mut(..rows).unwrap_or_default());
                repeat_last(scratch, rows);
            }
        }
        scratch
    }

    pub(super) fn fits(&self, rows: usize) -> Result<(), ColumnError> {
        let got = match self {
            Self::Same(_) => return Ok(()),
            Self::Each(values) => values.len(),
            Self::Drawn(column) => column.rows(),
        };
        if got == rows { Ok(()) } else { Err(ColumnError::Length { got, want: rows }) }
    }
}

fn repeat_last(block: &mut [f64; BLOCK], rows: usize) {
    if let Some((given, further)) = block.split_at_mut_checked(rows)
        && let Some(last) = given.last()
    {
        further.fill(*last);
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

impl<'a, const N: usize> From<&'a [f64; N]> for Cells<'a> {
    fn from(values: &'a [f64; N]) -> Self {
        Self::Each(values)
    }
}

impl<'a> From<&'a Vec<f64>> for Cells<'a> {
    fn from(values: &'a Vec<f64>) -> Self {
        Self::Each(values)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[derive(Debug)]
    struct Ones(usize);

    impl Draw for Ones {
        fn rows(&self) -> usize {
            self.0
        }

        fn draw(&self, _: usize, block: &mut [f64]) {
            block.fill(1.0);
        }
    }

    /// What is given thrice is worked out once. Two zeros are two numbers, and like numbers in two places two columns.
    #[test]
    fn a_column_is_the_same_where_it_lies_in_the_same_place() {
        let (one, other) = ([1.0, 2.0], [1.0, 2.0]);
        let (drawn, also) = (Ones(2), Ones(3));
        let columns = [
            Cells::Same(0.0),
            Cells::Same(-0.0),
            Cells::Same(f64::NAN),
            Cells::Each(&one),
            Cells::Each(&other),
            Cells::Each(&one[..1]),
            Cells::Drawn(&drawn),
            Cells::Drawn(&also),
        ];
        for (place, column) in columns.iter().enumerate() {
            for (at, another) in columns.iter().enumerate() {
                assert_eq!(column.is(another), place == at, "{column:?} {another:?}");
            }
        }
    }

    /// Rows 4 to 6 of 7 and one beyond, wherever they lie.
    #[test]
    fn four_rows_end_with_the_column() {
        let numbers = [1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0];
        let [a, b, c, beyond] = Cells::Each(&numbers).four(4);
        assert_eq!(([a, b, c], beyond.is_nan()), ([5.0, 6.0, 7.0], true));
        assert_eq!(Cells::Each(&numbers).four(2), [3.0, 4.0, 5.0, 6.0]);
        let [a, b, c, beyond] = Cells::Drawn(&Ones(7)).four(4);
        assert_eq!(([a, b, c], beyond.is_nan()), ([1.0; 3], true));
        assert_eq!(Cells::Same(3.0).four(9), [3.0; 4]);
    }

    /// What a block has beyond its rows is its last row once more, and no row of the block before.
    #[test]
    fn a_block_ends_with_its_last_row() {
        let numbers: Vec<f64> = (0..300).map(f64::from).collect();
        let mut scratch = [7.0; BLOCK];
        assert_eq!(Cells::Each(&numbers).block(0, BLOCK, &mut scratch)[..], numbers[..BLOCK]);
        let last = *Cells::Each(&numbers).block(256, 44, &mut scratch);
        assert_eq!((last[..44].to_vec(), last[44..].to_vec()), (numbers[256..].to_vec(), vec![299.0; 212]));
        let mut scratch = [7.0; BLOCK];
        assert_eq!(Cells::Drawn(&Ones(3)).block(0, 3, &mut scratch), &[1.0; BLOCK]);
    }
}
