use super::{ColumnError, ColumnOutcome, split::in_parts, triples::FOUR_ROWS};
use crate::{
    colour::Lanes,
    lift::Lightening,
    quantity::{Duration, Quantity},
};

/// Levels after columns of minutes: `out` holds the lower bound, the median and the upper bound for each row of `minutes`.
///
/// Four rows at a time, long columns by all processors; equal to [`Lightening::level_after`] to within 1e-12 levels.
///
/// # Errors
///
/// [`ColumnError::Length`] unless `out` has three times the length of `minutes`.
///
/// # Example
///
/// ```
/// use foilwork::{colour::Level, column::levels_after, lift::{Belief, Lightening, Situation}};
/// use foilwork::{quantity::MassFraction, source::Interval};
///
/// let mix = Situation::usual(Interval::exact(MassFraction::from_ww_percent(4.0)?));
/// let lightening = Lightening::new(&Belief::untested(), &mix, Level::new(4.0)?);
/// let mut levels = [0.0; 9];
/// let outcome = levels_after(&lightening, &[0.0, 30.0, -1.0], &mut levels)?;
/// assert_eq!((levels[0], outcome.refused), (4.0, 1));
/// assert!(levels[4] > 6.0 && levels[3] <= levels[4] - 2.0 && levels[8].is_nan());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn levels_after(lightening: &Lightening, minutes: &[f64], out: &mut [f64]) -> Result<ColumnOutcome, ColumnError> {
    let want = minutes.len().saturating_mul(3);
    if out.len() != want {
        return Err(ColumnError::Length { got: out.len(), want });
    }
    let range = Duration::MIN.min()..=Duration::MAX.min();
    Ok(in_parts(out, 3, |start, slots| {
        let mut outcome = ColumnOutcome::default();
        let given = minutes.get(start..).unwrap_or_default();
        for (chunk, (slots, given)) in slots.chunks_mut(FOUR_ROWS).zip(given.chunks(Lanes::WIDTH)).enumerate() {
            let mut four = [0.0; Lanes::WIDTH];
            for (cell, minutes) in four.iter_mut().zip(given) {
                *cell = *minutes;
            }
            let in_range = four.map(|minutes| range.contains(&minutes));
            let [low, best, high] = lightening.levels_of_four(four);
            let rows = low.into_iter().zip(best).zip(high).zip(in_range);
            for ((lane, slot), (((low, best), high), fits)) in slots.chunks_exact_mut(3).enumerate().zip(rows) {
                slot.copy_from_slice(&if fits { [low, best, high] } else { [f64::NAN; 3] });
                if !fits {
                    outcome.refuse_unless_missing(start + chunk * Lanes::WIDTH + lane, given.get(lane));
                }
            }
        }
        outcome
    }))
}
