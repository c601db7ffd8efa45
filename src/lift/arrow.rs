//! Normal equations in the shape of an arrow: a corner of unknowns that hang together, and many tips that hang on the corner
//! alone.
//!
//! Two guests have no reading in common, so their unknowns meet only in the salon's and the products'. Each is taken out
//! by one division; what is left to factor is the small corner, however many guests a book has.

/// A symmetric positive definite matrix of that shape.
#[derive(Debug, Clone)]
pub(super) struct Arrow {
    /// Unknowns of the corner.
    size: usize,
    /// The corner, row by row; only its lower triangle counts.
    pub(super) corner: Vec<f64>,
    /// Where a tip meets the corner: column and value, tip by tip.
    pub(super) arms: Vec<(usize, f64)>,
    /// Where the arms of each tip end.
    ends: Vec<usize>,
    /// What stands on the diagonal for each tip.
    pub(super) tips: Vec<f64>,
}

impl Arrow {
    /// All zero, with the columns that each tip meets.
    pub(super) fn new(size: usize, columns: &[Vec<usize>]) -> Self {
        let arms: Vec<(usize, f64)> = columns.iter().flatten().map(|column| (*column, 0.0)).collect();
        let ends = columns.iter().scan(0, |end, columns| {
            *end += columns.len();
            Some(*end)
        });
        Self { size, corner: vec![0.0; size * size], arms, ends: ends.collect(), tips: vec![0.0; columns.len()] }
    }

    /// Zero again.
    pub(super) fn clear(&mut self) {
        self.corner.fill(0.0);
        self.tips.fill(0.0);
        self.arms.iter_mut().for_each(|(_, value)| *value = 0.0);
    }

    /// Adds to a cell of the corner.
    #[inline]
    pub(super) fn add(&mut self, row: usize, column: usize, value: f64) {
        let (row, column) = if column > row { (column, row) } else { (row, column) };
        if let Some(cell) = self.corner.get_mut(row * self.size + column) {
            *cell += value;
        }
    }

    /// Where the arms of a tip lie.
    pub(super) fn place(&self, tip: usize) -> std::ops::Range<usize> {
        let before = tip.checked_sub(1).and_then(|before| self.ends.get(before)).copied().unwrap_or(0);
        before..self.ends.get(tip).copied().unwrap_or(before)
    }

    /// The first three rows and columns of the corner.
    pub(super) fn shared(&self) -> [[f64; 3]; 3] {
        let cell = |row: usize, column: usize| self.corner.get(row * self.size + column).copied().unwrap_or_default();
        [0, 1, 2].map(|row| [0, 1, 2].map(|column: usize| cell(row.max(column), row.min(column))))
    }

    fn arm(&self, tip: usize) -> &[(usize, f64)] {
        self.arms.get(self.place(tip)).unwrap_or_default()
    }

    /// Makes it ready to be solved; `factored` keeps its memory from call to call.
    pub(super) fn factor(&self, factored: &mut Vec<f64>) {
        factored.clone_from(&self.corner);
        for (tip, diagonal) in self.tips.iter().enumerate() {
            let arm = self.arm(tip);
            for (row, a) in arm {
                for (column, b) in arm.iter().take_while(|(column, _)| column <= row) {
                    if let Some(cell) = factored.get_mut(row * self.size + column) {
                        *cell -= a * b / diagonal;
                    }
                }
            }
        }
        cholesky(factored, self.size);
    }

    /// Solves for one right side, in place: `corner` and `tips` become the unknowns.
    pub(super) fn solve(&self, factored: &[f64], corner: &mut [f64], tips: &mut [f64]) {
        for (tip, (value, diagonal)) in tips.iter().zip(&self.tips).enumerate().filter(|(_, (value, _))| **value != 0.0)
        {
            for (column, arm) in self.arm(tip) {
                if let Some(cell) = corner.get_mut(*column) {
                    *cell -= arm * value / diagonal;
                }
            }
        }
        substitute(factored, self.size, corner);
        for (tip, (value, diagonal)) in tips.iter_mut().zip(&self.tips).enumerate() {
            let known: f64 =
                self.arm(tip).iter().map(|(column, arm)| arm * corner.get(*column).copied().unwrap_or_default()).sum();
            *value = (*value - known) / diagonal;
        }
    }
}

/// The inverse of a covariance of three numbers, and a covariance from its inverse.
pub(super) fn inverse(of: &[[f64; 3]; 3]) -> [[f64; 3]; 3] {
    let mut lower = of.concat();
    cholesky(&mut lower, 3);
    [0, 1, 2].map(|unit| {
        let mut column = [0, 1, 2].map(|i| if i == unit { 1.0 } else { 0.0 });
        substitute(&lower, 3, &mut column);
        column
    })
}

/// Cholesky's factor `L` with `L L' = matrix`, in the lower triangle; a pivot that rounding made negative is held at the
/// smallest number.
fn cholesky(cells: &mut [f64], size: usize) {
    for i in 0..size {
        let (above, rest) = cells.split_at_mut(i * size);
        let Some(row) = rest.get_mut(..=i) else { return };
        for j in 0..=i {
            let (done, open) = row.split_at_mut(j);
            let Some(cell) = open.first_mut() else { return };
            let dot = |other: &[f64]| done.iter().zip(other).map(|(a, b)| a * b).sum::<f64>();
            if j == i {
                *cell = (*cell - dot(done)).max(1e-300).sqrt();
            } else if let Some(other) = above.get(j * size..=j * size + j) {
                *cell = (*cell - dot(other)) / other.last().copied().unwrap_or(1.0);
            }
        }
    }
}

/// The solution of `L L' x = right`, in place.
fn substitute(lower: &[f64], size: usize, x: &mut [f64]) {
    let row = |i: usize| lower.get(i * size..=i * size + i).unwrap_or_default();
    for i in 0..size {
        let (done, open) = x.split_at_mut(i);
        let (Some(value), Some((diagonal, row))) = (open.first_mut(), row(i).split_last()) else { return };
        *value = (*value - row.iter().zip(&*done).map(|(a, b)| a * b).sum::<f64>()) / diagonal;
    }
    for i in (0..size).rev() {
        let (left, done) = x.split_at_mut(i);
        let (Some(value), Some((diagonal, row))) = (done.first_mut(), row(i).split_last()) else { return };
        *value /= diagonal;
        for (cell, a) in left.iter_mut().zip(row) {
            *cell -= a * *value;
        }
    }
}
