use super::{ColumnError, ColumnOutcome, split::in_parts};
use crate::colour::{Lab, Srgb, White};

/// The nearest colours a screen can show, for rows of three coordinates that lie one after the other.
///
/// `out` holds four numbers for each row of `labs`: red, green and blue from 0 to 255, and 1 where it is the colour itself or 0
/// where it is the nearest at the edge of what sRGB can show, as [`Srgb::nearest`] has them. Long columns are worked off by all
/// processors.
///
/// # Errors
///
/// [`ColumnError::Length`] unless `out` has four numbers for every three of `labs`.
///
/// # Example
///
/// ```
/// use foilwork::{colour::White, column::screen_colours};
///
/// let (labs, mut shown) = ([100.0, 0.0, 0.0, 120.0, 0.0, 0.0], [0.0; 8]);
/// let outcome = screen_colours(White::D65TwoDegree, &labs, &mut shown)?;
/// assert_eq!((&shown[..4], outcome.first), (&[255.0, 255.0, 255.0, 1.0][..], Some(1)));
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
pub fn screen_colours(white: White, labs: &[f64], out: &mut [f64]) -> Result<ColumnOutcome, ColumnError> {
    let want = labs.len() / 3 * 4;
    if out.len() != want {
        return Err(ColumnError::Length { got: out.len(), want });
    }
    Ok(in_parts(out, 4, |start, slots| {
        let mut outcome = ColumnOutcome::default();
        let given = labs.as_chunks::<3>().0.iter().skip(start);
        for ((row, slot), given) in (start..).zip(slots.as_chunks_mut::<4>().0).zip(given) {
            let [l, a, b] = *given;
            *slot = if let Ok(lab) = Lab::new(l, a, b, white) {
                let (shown, itself) = Srgb::nearest(lab);
                [shown.red.into(), shown.green.into(), shown.blue.into(), f64::from(u8::from(itself))]
            } else {
                outcome.refuse_unless_missing(row, given);
                [f64::NAN; 4]
            };
        }
        outcome
    }))
}
