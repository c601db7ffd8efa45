use super::{Cells, ColumnError, ColumnOutcome, split::in_parts};
use crate::colour::{Lanes, ciede2000_lanes, lab_in_range};

/// CIEDE2000 of columns of colours: L\*, a\*, b\* of the first colours, then of the second, all for the same white.
///
/// Four rows at a time, long columns by all processors; equal to the scalar rule to within 1e-11.
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
    Ok(in_parts(out, 1, |first_row, slots| {
        let mut outcome = ColumnOutcome::default();
        for (chunk, slots) in slots.chunks_mut(Lanes::WIDTH).enumerate() {
            let start = first_row + chunk * Lanes::WIDTH;
            let (one, other) = (first.map(|cells| cells.four(start)), second.map(|cells| cells.four(start)));
            let apart = ciede2000_lanes(one.map(Lanes::from), other.map(Lanes::from));
            let row = |lane: usize, [l, a, b]: [[f64; 4]; 3]| {
                [l, a, b].map(|four| four.get(lane).copied().unwrap_or(f64::NAN))
            };
            for ((lane, slot), value) in slots.iter_mut().enumerate().zip(apart) {
                let (one, other) = (row(lane, one), row(lane, other));
                // A missing coordinate is not in range either; only then is it looked for.
                *slot = if lab_in_range(one) & lab_in_range(other) {
                    value
                } else {
                    if !one.iter().chain(&other).any(|coordinate| coordinate.is_nan()) {
                        outcome.refused += 1;
                        outcome.first.get_or_insert(start + lane);
                    }
                    f64::NAN
                };
            }
        }
        outcome
    }))
}
