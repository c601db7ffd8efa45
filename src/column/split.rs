use super::ColumnOutcome;
use std::{num::NonZero, thread};

/// Rows below which starting a thread costs more than it saves.
const WORTH_A_THREAD: usize = 16_384;

/// In how many parts to work rows off: one for each processor, as far as each gets enough of them.
pub(super) fn share_out(rows: usize, worth_a_thread: usize) -> usize {
    let most = rows / worth_a_thread;
    if most < 2 { 1 } else { most.min(thread::available_parallelism().map_or(1, NonZero::get)) }
}

/// Works a column off in parts, one for each processor where it is long enough: `work` gets the first row of its part and
/// the part's slots of the output, `width` of them for each row. Parts are joined in order, so the result does not depend
/// on how many there are.
pub(super) fn in_parts(
    out: &mut [f64],
    width: usize,
    work: impl Fn(usize, &mut [f64]) -> ColumnOutcome + Sync,
) -> ColumnOutcome {
    let rows = out.len() / width.max(1);
    let parts = share_out(rows, WORTH_A_THREAD);
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
    joined(outcomes)
}

/// The same for several columns of one length, in so many parts.
pub(super) fn many_in_parts<const M: usize, T: Send>(
    columns: [&mut [T]; M],
    parts: usize,
    work: impl Fn(usize, [&mut [T]; M]) -> ColumnOutcome + Sync,
) -> ColumnOutcome {
    if parts <= 1 {
        return work(0, columns);
    }
    let rows = columns.first().map_or(0, |column| column.len());
    let each = rows.div_ceil(parts).next_multiple_of(super::cells::BLOCK);
    let mut outcomes = vec![ColumnOutcome::default(); rows.div_ceil(each)];
    let mut rest = columns.map(|column| column.chunks_mut(each));
    thread::scope(|scope| {
        let work = &work;
        for (part, outcome) in outcomes.iter_mut().enumerate() {
            let slots = rest.each_mut().map(|chunks| chunks.next().unwrap_or_default());
            scope.spawn(move || *outcome = work(part * each, slots));
        }
    });
    joined(outcomes)
}

fn joined(outcomes: Vec<ColumnOutcome>) -> ColumnOutcome {
    outcomes.into_iter().fold(ColumnOutcome::default(), |all, one| ColumnOutcome {
        refused: all.refused + one.refused,
        first: all.first.or(one.first),
    })
}
