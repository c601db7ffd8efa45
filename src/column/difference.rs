use super::{ColumnError, ColumnOutcome, Triples, split::in_parts};
use crate::colour::{Lanes, Ranges, ciede2000_lanes};

/// CIEDE2000 of columns of colours: L\*, a\*, b\* of the first colours and of the second, all for the same white.
///
/// Four rows at a time, long columns by all processors; equal to the scalar rule.
///
/// # Errors
///
/// [`ColumnError::Length`] unless every column has the rows of `out`.
///
/// # Example
///
/// ```
/// use foilwork::column::{Cells, Triples, ciede2000};
///
/// let first = [50.0, 2.6772, -79.7751, 50.0, f64::NAN, 0.0, 120.0, 0.0, 0.0];
/// let second = [Cells::Same(50.0), Cells::Same(0.0), Cells::Same(-82.7485)];
/// let mut apart = [0.0; 3];
/// let outcome = ciede2000(Triples::Rows(&first), Triples::Columns(second), &mut apart)?;
/// assert_eq!(apart.map(|value| format!("{value:.4}")), ["2.0425", "NaN", "NaN"]);
/// assert_eq!((outcome.refused, outcome.first), (1, Some(2)));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// See [`CIEDE2000_PAPER`](crate::source::citations::colour::CIEDE2000_PAPER).
pub fn ciede2000(first: Triples<'_>, second: Triples<'_>, out: &mut [f64]) -> Result<ColumnOutcome, ColumnError> {
    first.fits(out.len())?;
    second.fits(out.len())?;
    Ok(in_parts(out, 1, |first_row, slots| {
        let mut outcome = ColumnOutcome::default();
        for (chunk, slots) in slots.chunks_mut(Lanes::WIDTH).enumerate() {
            let start = first_row + chunk * Lanes::WIDTH;
            let (one, other) = (first.four(start), second.four(start));
            let apart = ciede2000_lanes(one, other);
            if Ranges::LAB.hold_all(one) && Ranges::LAB.hold_all(other) && slots.len() == Lanes::WIDTH {
                slots.copy_from_slice(&apart);
                continue;
            }
            for ((row, slot), value) in (start..).zip(slots).zip(apart) {
                let (one, other) = (first.get(row), second.get(row));
                *slot = if Ranges::LAB.hold(one) && Ranges::LAB.hold(other) {
                    value
                } else {
                    outcome.refuse_unless_missing(row, one.iter().chain(&other));
                    f64::NAN
                };
            }
        }
        outcome
    }))
}
