use super::{ColumnError, ColumnOutcome, split::in_parts};

/// Applies a rule that gives an estimate with its bounds, row by row: `out` holds three numbers for each row of `input`.
///
/// A missing (not-a-number) value gives missing values. One that the rule refuses does too, and is counted. Long columns are
/// worked off by all processors.
///
/// # Errors
///
/// [`ColumnError::Length`] unless `out` has three times the length of `input`.
///
/// # Example
///
/// ```
/// use foilwork::{colour::Level, column::bounded, lift::{Belief, Lightening, Situation}};
/// use foilwork::{quantity::{Duration, InvalidQuantity, MassFraction}, source::Interval};
///
/// let mix = Situation::usual(Interval::exact(MassFraction::from_ww_percent(4.0)?));
/// let lightening = Lightening::new(&Belief::untested(), &mix, Level::new(4.0)?);
/// let mut levels = [0.0; 6];
/// let outcome = bounded(&[0.0, 30.0], &mut levels, |minutes| {
///     let level = lightening.level_after(Duration::from_min(minutes)?);
///     Ok::<_, InvalidQuantity>(level.to_array().map(Level::number))
/// })?;
/// assert_eq!((levels[0], outcome.refused), (4.0, 0));
/// assert!(levels[4] > 6.0 && levels[3] <= levels[4] - 2.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn bounded<E>(
    input: &[f64],
    out: &mut [f64],
    rule: impl Fn(f64) -> Result<[f64; 3], E> + Sync,
) -> Result<ColumnOutcome, ColumnError> {
    let want = input.len().saturating_mul(3);
    if out.len() != want {
        return Err(ColumnError::Length { got: out.len(), want });
    }
    Ok(in_parts(out, 3, |start, slots| {
        let mut outcome = ColumnOutcome::default();
        let given = input.iter().skip(start);
        for ((row, slot), given) in (start..).zip(slots.chunks_exact_mut(3)).zip(given) {
            let found = if given.is_nan() {
                [f64::NAN; 3]
            } else {
                rule(*given).unwrap_or_else(|_| {
                    outcome.refuse(row);
                    [f64::NAN; 3]
                })
            };
            slot.copy_from_slice(&found);
        }
        outcome
    }))
}
