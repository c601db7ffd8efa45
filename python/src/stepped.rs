//! Every second value of an array, or every tenth: a column of a table. What lies in the gaps is read too, since whole stretches of the
//! memory are taken apart many values at a time, and single ones are not.

use foilwork::column::Draw;
use numpy::{PyArrayDyn, PyArrayMethods, PyReadonlyArrayDyn, PyUntypedArrayMethods};
use pyo3::prelude::*;

/// Where the first value is, how far it is to the next, and how many there are.
#[derive(Clone, Copy)]
pub struct Steps {
    first: usize,
    step: usize,
    rows: usize,
}

/// An array that another one is a stepped view of, and the steps; none where it is not.
pub fn stepped<'py>(view: &PyReadonlyArrayDyn<'py, f64>) -> Option<(PyReadonlyArrayDyn<'py, f64>, Steps)> {
    let (&[rows], &[stride]) = (view.shape(), view.strides()) else { return None };
    let whole = view.as_any().getattr("base").ok()?.cast_into_exact::<PyArrayDyn<f64>>().ok()?.try_readonly().ok()?;
    let places = |bytes: usize| bytes.is_multiple_of(size_of::<f64>()).then_some(bytes / size_of::<f64>());
    let first = places(view.data().addr().checked_sub(whole.data().addr())?)?;
    let step = places(usize::try_from(stride).ok()?).filter(|step| *step > 0)?;
    let last = first.checked_add(rows.checked_sub(1)?.checked_mul(step)?)?;
    (last < whole.as_slice().ok()?.len()).then_some((whole, Steps { first, step, rows }))
}

impl Steps {
    /// The values of the array.
    pub fn over(self, whole: &[f64]) -> Stepped<'_> {
        Stepped { values: whole.get(self.first..).unwrap_or_default(), step: self.step, rows: self.rows }
    }
}

/// A column with equal gaps.
#[derive(Debug)]
pub struct Stepped<'a> {
    values: &'a [f64],
    step: usize,
    rows: usize,
}

impl Draw for Stepped<'_> {
    fn rows(&self) -> usize {
        self.rows
    }

    fn draw(&self, start: usize, block: &mut [f64]) {
        let values = self.values.get(start * self.step..).unwrap_or_default();
        match self.step {
            2 => taken_apart::<2>(values, block),
            3 => taken_apart::<3>(values, block),
            4 => taken_apart::<4>(values, block),
            step => {
                for (slot, value) in block.iter_mut().zip(values.iter().step_by(step)) {
                    *slot = *value;
                }
            }
        }
    }
}

/// The first of each group.
fn taken_apart<const STEP: usize>(values: &[f64], block: &mut [f64]) {
    let (groups, rest) = values.as_chunks::<STEP>();
    for (slot, group) in block.iter_mut().zip(groups) {
        *slot = group[0];
    }
    // The gap after the last value may be cut off.
    if let (Some(slot), Some(last)) = (block.get_mut(groups.len()), rest.first()) {
        *slot = *last;
    }
}
