use super::{
    Cells, ColumnError, ColumnOutcome,
    divisor::Machine,
    rows::{Given, greater, lesser, rows, rows_by_law},
};
use crate::colour::{Level, Scale, ScaleError, ScaleMapping, ScaleReading, Stretch};

/// So many straight lines are looked through without a branch.
const STRETCHES: usize = 8;

/// The levels that readings on another scale stand for: lower bounds, best estimates, upper bounds.
///
/// # Errors
///
/// [`ColumnError::Length`] unless all columns have the same rows.
///
/// # Example
///
/// ```
/// use foilwork::{colour::{Scale, ScaleMapping}, column::{Cells, levels_on_scale}};
///
/// let (mut low, mut best, mut high) = ([0.0; 2], [0.0; 2], [0.0; 2]);
/// let (readings, mapping) = (Cells::Each(&[9.5, 21.0]), ScaleMapping::japanese_by_underlying_pigment());
/// let outcome = levels_on_scale(readings, Scale::Japanese20, &mapping, [&mut low, &mut best, &mut high])?;
/// assert_eq!((low[0], best[0], high[0], outcome.first), (6.0, 7.0, 8.0, Some(1)));
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
pub fn levels_on_scale(
    readings: Cells<'_>,
    scale: Scale,
    mapping: &ScaleMapping,
    out: [&mut [f64]; 3],
) -> Result<ColumnOutcome, ColumnError> {
    let rule = |[reading]: [f64; 1]| {
        let found = mapping.level(ScaleReading::new(scale, reading)?)?;
        Ok::<_, ScaleError>(found.level.to_array().map(Level::number))
    };
    match mapping.stretches::<STRETCHES>().filter(|_| mapping.is_for(scale)) {
        Some(known) => rows_by_law([readings], out, Given(known, level), rule),
        None => rows([readings], out, rule),
    }
}

/// Anchors lie on the scale, so that a reading between them does too.
#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[expect(clippy::needless_bitwise_bool, reason = "a lazy operator is a branch")]
#[inline(always)]
fn level((stretches, half_width): ([Stretch; STRETCHES], f64), [reading]: [f64; 1], _: Machine) -> ([f64; 3], bool) {
    let [first, .., last] = stretches;
    let mut on = last;
    for stretch in stretches.iter().rev() {
        // Of two that share an anchor the first.
        let here = reading <= stretch.to;
        on = stretch.if_else(here, on);
    }
    let best = on.level(reading);
    let within = |level: f64| lesser(greater(level, Level::DARKEST.number()), Level::LIGHTEST.number());
    let found = [best - half_width, best, best + half_width].map(within);
    (found, (reading >= first.from) & (reading <= last.to))
}
