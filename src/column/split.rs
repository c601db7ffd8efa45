use super::ColumnOutcome;
use std::{num::NonZero, thread};

/// Rows below which starting a thread costs more than it saves.
const WORTH_A_THREAD: usize = 16_384;

/// Works a column off in parts, one for each processor where it is long enough: `work` gets the first row of its part and
/// the part's slots of the output, `width` of them for each row. Parts are joined in order, so the result does not depend
/// on how many there are.
pub(super) fn in_parts(
    out: &mut [f64],
    width: usize,
    work: impl Fn(usize, &mut [f64]) -> ColumnOutcome + Sync,
) -> ColumnOutcome {
    let rows = out.len() / width.max(1);
    let processors = thread::available_parallelism().map_or(1, NonZero::get);
    let parts = (rows / WORTH_A_THREAD).clamp(1, processors);
    if parts == 1 {
        return work(0, out);
    }
    // A multiple of the lanes, so that only the last part has rows left over.
    let each = rows.div_ceil(parts).next_multiple_of(4);
    let mut outcomes = vec![ColumnOutcome::default(); rows.div_ceil(each)];
    thread::scope(|scope| {
        let work = &work;
        for ((part, slots), outcome) in out.chunks_mut(each * width).enumerate().zip(&mut outcomes) {
            scope.spawn(move || *outcome = work(part * each, slots));
        }
    });
    outcomes.into_iter().fold(ColumnOutcome::default(), |all, one| ColumnOutcome {
        refused: all.refused + one.refused,
        first: all.first.or(one.first),
    })
}
