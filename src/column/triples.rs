use super::{ColumnError, ColumnOutcome, split::in_parts};

/// Applies a rule of three numbers to three, row by row, to rows that lie one after the other: colour coordinates.
///
/// A row with a missing (not-a-number) value gives missing values. A row that the rule refuses does too, and is counted.
/// Long columns are worked off by all processors.
///
/// # Errors
///
/// [`ColumnError::Length`] unless both have the same length.
///
/// # Example
///
/// ```
/// use foilwork::{colour::{InvalidColour, Lab, White}, column::triples};
///
/// let (labs, mut chroma) = ([50.0, 3.0, 4.0, 120.0, 0.0, 0.0], [0.0; 6]);
/// let outcome = triples(&labs, &mut chroma, |[l, a, b]| {
///     let lch = Lab::new(l, a, b, White::D65TenDegree)?.lch();
///     Ok::<_, InvalidColour>([lch.l(), lch.chroma(), lch.hue_degrees()])
/// })?;
/// assert_eq!((chroma[1], chroma[4].is_nan(), outcome.first), (5.0, true, Some(1)));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn triples<E>(
    input: &[f64],
    out: &mut [f64],
    rule: impl Fn([f64; 3]) -> Result<[f64; 3], E> + Sync,
) -> Result<ColumnOutcome, ColumnError> {
    if input.len() != out.len() {
        return Err(ColumnError::Length { got: input.len(), want: out.len() });
    }
    Ok(in_parts(out, 3, |start, slots| {
        let mut outcome = ColumnOutcome::default();
        let given = input.chunks_exact(3).skip(start);
        for ((row, slot), given) in (start..).zip(slots.chunks_exact_mut(3)).zip(given) {
            let [a, b, c] = *given else { continue };
            let found = if a.is_nan() || b.is_nan() || c.is_nan() {
                [f64::NAN; 3]
            } else {
                rule([a, b, c]).unwrap_or_else(|_| {
                    outcome.refused += 1;
                    outcome.first.get_or_insert(row);
                    [f64::NAN; 3]
                })
            };
            slot.copy_from_slice(&found);
        }
        outcome
    }))
}
