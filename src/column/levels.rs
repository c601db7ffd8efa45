use super::{Cells, ColumnError, ColumnOutcome, rows::rows_by_law};
use crate::colour::{self, ArithmeticError, Canvas, InvalidLevel, Level, ProductKind, Scale};

/// How far hair has to go, in levels: positive is lift, negative is deposit.
///
/// # Errors
///
/// [`ColumnError::Length`] unless every column has the rows of `out`.
///
/// # Example
///
/// ```
/// use foilwork::column::{Cells, lifts_needed};
///
/// let mut lift = [0.0; 2];
/// let outcome = lifts_needed(Cells::Each(&[5.0, 13.0]), 9.0.into(), &mut lift)?;
/// assert_eq!((lift[0], outcome.first), (4.0, Some(1)));
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
pub fn lifts_needed(
    from_levels: Cells<'_>,
    target_levels: Cells<'_>,
    out: &mut [f64],
) -> Result<ColumnOutcome, ColumnError> {
    let law =
        move |[from, target]: [f64; 2]| ([rounded((target - from) * 1e13) / 1e13], is_level(from) & is_level(target));
    rows_by_law([from_levels, target_levels], [out], law, |[from, target]| {
        Ok::<_, InvalidLevel>([colour::lift_needed(Level::new(from)?, Level::new(target)?).levels()])
    })
}

/// Levels of the shades that bring hair to targets, by the rule of the mean.
///
/// # Errors
///
/// [`ColumnError::Length`] unless every column has the rows of `out`. A product, hair or scale that the rule does not hold for
/// is refused in every row.
///
/// # Example
///
/// ```
/// use foilwork::{colour::{Canvas, ProductKind, Scale}, column::{Cells, formula_levels}};
///
/// let mut shades = [0.0; 2];
/// let (product, hair, scale) = (ProductKind::PermanentColour, Canvas::Natural, Scale::European10);
/// let outcome = formula_levels(6.0.into(), Cells::Each(&[8.0, 9.0]), (product, hair, scale), &mut shades)?;
/// assert_eq!((shades[0], outcome.first), (10.0, Some(1))); // there is no level 12 on this scale
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
#[expect(clippy::needless_bitwise_bool, reason = "a lazy operator is a branch")]
pub fn formula_levels(
    natural_levels: Cells<'_>,
    target_levels: Cells<'_>,
    (product, canvas, scale): (ProductKind, Canvas, Scale),
    out: &mut [f64],
) -> Result<ColumnOutcome, ColumnError> {
    let simple = product == ProductKind::PermanentColour && canvas == Canvas::Natural && scale.counts_levels();
    let (lowest, highest) = (scale.lowest(), scale.highest());
    let law = move |[natural, target]: [f64; 2]| {
        let needed = rounded((2.0 * target - natural) * 1e9) / 1e9;
        let good = is_level(natural) & is_level(target) & is_level(needed);
        ([needed], good & simple & (needed >= lowest) & (needed <= highest))
    };
    rows_by_law([natural_levels, target_levels], [out], law, |[natural, target]| {
        let (natural, target) = (level(natural)?, level(target)?);
        let shade = colour::formula_level(natural, target, product, canvas, scale).map_err(|_| Refused)?;
        Ok::<_, Refused>([shade.value.number()])
    })
}

/// Levels that natural hair reaches under permanent shades.
///
/// # Errors
///
/// [`ColumnError::Length`] unless every column has the rows of `out`. Another product is refused in every row.
///
/// # Example
///
/// ```
/// use foilwork::{colour::ProductKind, column::{Cells, result_levels}};
///
/// let mut levels = [0.0; 2];
/// let applied = Cells::Each(&[6.0, 0.0]);
/// let outcome = result_levels(2.0.into(), applied, ProductKind::PermanentColour, &mut levels)?;
/// assert_eq!((levels[0], outcome.first), (4.0, Some(1)));
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
pub fn result_levels(
    natural_levels: Cells<'_>,
    applied_levels: Cells<'_>,
    product: ProductKind,
    out: &mut [f64],
) -> Result<ColumnOutcome, ColumnError> {
    let simple = product == ProductKind::PermanentColour;
    #[expect(clippy::manual_midpoint, reason = "levels do not overflow, and the library's has a branch")]
    let law = move |[natural, applied]: [f64; 2]| {
        ([(natural + applied) / 2.0], simple & is_level(natural) & is_level(applied))
    };
    rows_by_law([natural_levels, applied_levels], [out], law, |[natural, applied]| {
        let found =
            colour::result_level(level(natural)?, level(applied)?, product).map_err(|_: ArithmeticError| Refused)?;
        Ok::<_, Refused>([found.value.number()])
    })
}

/// A row that the rule refuses; what it says is worded where it is asked for.
struct Refused;

fn level(number: f64) -> Result<Level, Refused> {
    Level::new(number).map_err(|_| Refused)
}

#[inline]
fn is_level(number: f64) -> bool {
    (number >= Level::DARKEST.number()) & (number <= Level::LIGHTEST.number())
}

/// The nearest whole number, a half away from zero, as `f64::round` gives it below 2^51: without a call, so that it vectorises.
#[inline]
fn rounded(x: f64) -> f64 {
    const SHIFT: f64 = 6_755_399_441_055_744.0; // 1.5 x 2^52: adding it leaves no place for a fraction
    let near = (x.abs() + SHIFT) - SHIFT; // a half goes to the even number
    let up = if x.abs() - near == 0.5 { near + 1.0 } else { near };
    up.copysign(x)
}

#[cfg(test)]
mod tests {
    use super::rounded;

    /// `f64::round` is the reference.
    #[test]
    fn rounds_as_the_library_does() {
        for whole in [0.0, 1.0, 2.0, 3.0, 110_000_000_000_000.0, 2_251_799_813_685_247.0] {
            for part in [0.0, 0.25, 0.499_999_999_999_999_94, 0.5, 0.75] {
                for x in [whole + part, -(whole + part)] {
                    assert_eq!(rounded(x).to_bits(), x.round().to_bits(), "{x}");
                }
            }
        }
    }
}
