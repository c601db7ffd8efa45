use super::ColumnOutcome;
use std::{
    num::NonZero,
    sync::{Arc, Mutex},
    thread::{self, Scope},
};

/// Rows of a rule that is asked row by row below which starting a thread costs more than it saves.
pub(super) const WORTH_A_THREAD: usize = 16_384;

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
            on_a_thread(scope, (slots, outcome), move |(slots, outcome)| *outcome = work(part * each, slots));
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
            on_a_thread(scope, (slots, outcome), move |(slots, outcome)| *outcome = work(part * each, slots));
        }
    });
    joined(outcomes)
}

/// Works a part off beside the others, or here and now where the system gives no further thread.
fn on_a_thread<'scope, P: Send + 'scope>(
    scope: &'scope Scope<'scope, '_>,
    part: P,
    work: impl FnOnce(P) + Copy + Send + 'scope,
) {
    // The part waits where both can take it: a thread that was not begun has dropped what it was to do.
    let waiting = Arc::new(Mutex::new(Some(part)));
    let theirs = Arc::clone(&waiting);
    let take = |waiting: &Mutex<Option<P>>| waiting.lock().ok().and_then(|mut part| part.take());
    let begun = thread::Builder::new().spawn_scoped(scope, move || {
        if let Some(part) = take(&theirs) {
            work(part);
        }
    });
    if begun.is_err()
        && let Some(part) = take(&waiting)
    {
        work(part);
    }
}

fn joined(outcomes: Vec<ColumnOutcome>) -> ColumnOutcome {
    outcomes.into_iter().fold(ColumnOutcome::default(), |all, one| ColumnOutcome {
        refused: all.refused + one.refused,
        first: all.first.or(one.first),
    })
}
