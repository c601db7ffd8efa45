use super::{Cells, ColumnError, ColumnOutcome};
use crate::colour::{Lanes, ciede2000_lanes, lab_in_range};

/// CIEDE2000 of columns of colours: L\*, a\*, b\* of the first colours, then of the second, all for the same white.
///
/// Four rows at a time; equal to the scalar rule to within 1e-11.
///
/// # Errors
///
/// [`ColumnError::Length`] unless every column has the length of `out`.
///
/// # Example
///
/// ```
/// use foilwork::column::{Cells, ciede2000};
///
/// let (l, a, b) = ([50.0, 50.0, 120.0], [2.6772, f64::NAN, 0.0], [-79.7751, 0.0, 0.0]);
/// let first = [Cells::Each(&l), Cells::Each(&a), Cells::Each(&b)];
/// let second = [Cells::Same(50.0), Cells::Same(0.0), Cells::Same(-82.7485)];
/// let mut apart = [0.0; 3];
/// let outcome = ciede2000(first, second, &mut apart)?;
/// assert_eq!(apart.map(|value| format!("{value:.4}")), ["2.0425", "NaN", "NaN"]);
/// assert_eq!((outcome.refused, outcome.first), (1, Some(2)));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// See [`CIEDE2000_PAPER`](crate::source::citations::colour::CIEDE2000_PAPER).
pub fn ciede2000(first: [Cells<'_>; 3], second: [Cells<'_>; 3], out: &mut [f64]) -> Result<ColumnOutcome, ColumnError> {
    for cells in first.iter().chain(&second) {
        match cells {
            Cells::Each(values) if values.len() != out.len() => {
                return Err(ColumnError::Length { got: values.len(), want: out.len() });
            }
            _ => {}
        }
    }
    let mut outcome = ColumnOutcome::default();
    for (chunk, slots) in out.chunks_mut(Lanes::WIDTH).enumerate() {
        let start = chunk * Lanes::WIDTH;
        // Beyond the last row the cells are not-a-number, and there is no slot to write them to.
        let lanes = |cells: [Cells<'_>; 3]| cells.map(|cells| Lanes::of(|lane| cells.get(start + lane)));
        let apart = ciede2000_lanes(lanes(first), lanes(second));
        for ((row, slot), value) in (start..).zip(slots).zip(apart) {
            let (one, other) = (first.map(|cells| cells.get(row)), second.map(|cells| cells.get(row)));
            let missing = one.iter().chain(&other).any(|coordinate| coordinate.is_nan());
            if missing || (lab_in_range(one) && lab_in_range(other)) {
                *slot = if missing { f64::NAN } else { value };
            } else {
                *slot = f64::NAN;
                outcome.refused += 1;
                outcome.first.get_or_insert(row);
            }
        }
    }
    Ok(outcome)
}
