//! A small symmetric system: as much of linear algebra as a fit of a few dozen numbers needs.

/// A symmetric positive definite matrix, row by row.
#[derive(Debug, Clone)]
pub(super) struct Symmetric {
    size: usize,
    cells: Vec<f64>,
}

impl Symmetric {
    pub(super) fn diagonal(values: &[f64]) -> Self {
        let size = values.len();
        let mut matrix = Self { size, cells: vec![0.0; size * size] };
        for (i, value) in values.iter().enumerate() {
            matrix.add(i, i, *value);
        }
        matrix
    }

    pub(super) fn get(&self, row: usize, column: usize) -> f64 {
        self.cells.get(row * self.size + column).copied().unwrap_or_default()
    }

    /// Adds to one cell, not to its mirror.
    pub(super) fn add(&mut self, row: usize, column: usize, value: f64) {
        if let Some(cell) = self.cells.get_mut(row * self.size + column) {
            *cell += value;
        }
    }

    /// Adds `weight v v'` for a vector given by its few cells that are not zero.
    pub(super) fn add_square(&mut self, vector: &[(usize, f64)], weight: f64) {
        for (i, a) in vector {
            for (j, b) in vector {
                self.add(*i, *j, weight * a * b);
            }
        }
    }

    /// The product with a vector.
    pub(super) fn times(&self, vector: &[f64]) -> Vec<f64> {
        let rows = 0..self.size;
        rows.map(|row| vector.iter().enumerate().map(|(column, x)| self.get(row, column) * x).sum()).collect()
    }

    /// Cholesky's factor `L` with `L L' = self`; a pivot that rounding made negative is held at the smallest number.
    fn factor(&self) -> Self {
        let mut lower = Self { size: self.size, cells: vec![0.0; self.cells.len()] };
        for i in 0..self.size {
            for j in 0..=i {
                let known: f64 = (0..j).map(|k| lower.get(i, k) * lower.get(j, k)).sum();
                let rest = self.get(i, j) - known;
                let cell = if i == j { rest.max(1e-300).sqrt() } else { rest / lower.get(j, j) };
                lower.add(i, j, cell);
            }
        }
        lower
    }

    /// The solution of `self x = right`.
    pub(super) fn solve(&self, right: &[f64]) -> Vec<f64> {
        self.factor().solve_factored(right)
    }

    fn solve_factored(&self, right: &[f64]) -> Vec<f64> {
        let mut x: Vec<f64> = Vec::with_capacity(self.size);
        for (i, value) in right.iter().enumerate() {
            let known: f64 = x.iter().enumerate().map(|(k, done)| self.get(i, k) * done).sum();
            x.push((value - known) / self.get(i, i));
        }
        for i in (0..self.size).rev() {
            let known: f64 = x.iter().enumerate().skip(i + 1).map(|(k, done)| self.get(k, i) * done).sum();
            if let Some(cell) = x.get_mut(i) {
                *cell = (*cell - known) / self.get(i, i);
            }
        }
        x
    }

    /// The inverse, column by column.
    pub(super) fn inverse(&self) -> Self {
        let lower = self.factor();
        let mut inverse = Self { size: self.size, cells: vec![0.0; self.cells.len()] };
        for column in 0..self.size {
            let unit: Vec<f64> = (0..self.size).map(|row| if row == column { 1.0 } else { 0.0 }).collect();
            for (row, value) in lower.solve_factored(&unit).into_iter().enumerate() {
                inverse.add(row, column, value);
            }
        }
        inverse
    }
}
