//! Columns in parts, and what became of all of them.

use super::{ColumnOutcome, cells::BLOCK};
use crate::threads;

/// Rows of a rule that is asked row by row below which starting a thread costs more than it saves.
pub(super) const WORTH_A_THREAD: usize = 16_384;

/// Works a column off in parts, one for each processor where it is long enough: `work` gets the first row of its part and
/// the part's slots of the output, `width` of them for each row.
pub(super) fn in_parts(
    out: &mut [f64],
    width: usize,
    work: impl Fn(usize, &mut [f64]) -> ColumnOutcome + Sync,
) -> ColumnOutcome {
    let width = width.max(1);
    let parts = threads::share_out(out.len() / width, WORTH_A_THREAD);
    // A multiple of the lanes, so that only the last part has rows left over.
    threads::in_parts([out], (parts, 4 * width), |first, [slots]| work(first / width, slots), joined)
}

/// The same for several columns of one length, in so many parts.
pub(super) fn many_in_parts<const M: usize>(
    columns: [&mut [f64]; M],
    parts: usize,
    work: impl Fn(usize, [&mut [f64]; M]) -> ColumnOutcome + Sync,
) -> ColumnOutcome {
    threads::in_parts(columns, (parts, BLOCK), work, joined)
}

fn joined(all: ColumnOutcome, one: ColumnOutcome) -> ColumnOutcome {
    ColumnOutcome { refused: all.refused + one.refused, first: all.first.or(one.first) }
}
