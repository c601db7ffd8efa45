//! From one unit to another by one factor: a multiplication, or a division where that keeps round factors exact.

use super::{
    Cells, ColumnError, ColumnOutcome,
    divisor::{Divisor, LEAST, Machine},
    rows::{Given, between, rows_by_law},
};
use crate::peroxide::kernel::Ratio;

/// What of a column is in range: numbers from the least up to the most, whose result is at most that much.
#[derive(Debug, Clone, Copy)]
pub(super) struct Range {
    pub(super) least: f64,
    pub(super) most_in: f64,
    pub(super) most_out: f64,
}

/// The numbers of a column in a unit that is a ratio away; `rule` is asked about those out of range.
pub(super) fn in_ratio<E>(
    values: Cells<'_>,
    out: &mut [f64],
    ratio: Ratio,
    range: Range,
    rule: impl Fn([f64; 1]) -> Result<[f64; 1], E> + Sync,
) -> Result<ColumnOutcome, ColumnError> {
    let least = range.least;
    let near = match ratio {
        Ratio::Times(factor) => range.most_out / factor,
        Ratio::Over(factor) => range.most_out * factor,
    };
    // Both ways rise with the number, so what is in range up to here is in range after it.
    let mut most = near.min(range.most_in);
    while ratio.apply(most) > range.most_out {
        most = most.next_down();
    }
    match ratio {
        Ratio::Times(factor) => {
            rows_by_law([values], [out], move |[x]: [f64; 1]| ([x * factor], between(x, least, most)), rule)
        }
        Ratio::Over(factor) => match Divisor::by(factor) {
            Some(by) => {
                let zero = if least == 0.0 { 0.0_f64 } else { f64::NAN }.to_bits();
                let known = Quotient { by, least: least.max(LEAST), most, zero };
                rows_by_law([values], [out], Given(known, quotient), rule)
            }
            None => rows_by_law([values], [out], move |[x]: [f64; 1]| ([x / factor], between(x, least, most)), rule),
        },
    }
}

/// A division for all rows, and which of them are in range.
#[derive(Debug, Clone, Copy)]
struct Quotient {
    by: Divisor,
    least: f64,
    most: f64,
    /// What a zero without a sign looks like where it is in range; else what no number of use does.
    zero: u64,
}

#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[inline(always)]
fn quotient(known: Quotient, [x]: [f64; 1], machine: Machine) -> ([f64; 1], bool) {
    let Quotient { by, least, most, zero } = known;
    // Zero fits too, unless it has a sign. Not-a-number fits by its bits alone, and stays what it is.
    ([machine.over(x, by)], between(x, least, most) | (x.to_bits() == zero))
}
