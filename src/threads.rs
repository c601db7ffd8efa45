//! Long columns shared out among the processors. It knows of nothing but places in columns, so any room may use it.

use std::{
    num::NonZero,
    sync::{Arc, Mutex, OnceLock},
    thread::{self, Scope},
};

/// In how many parts to work rows off: one for each processor, as far as each gets enough of them.
pub(crate) fn share_out(rows: usize, worth_a_thread: usize) -> usize {
    match rows / worth_a_thread.max(1) {
        0 | 1 => 1,
        most => most.min(processors()),
    }
}

/// How many there are; the system is asked once, since that takes as long as some thousand rows.
fn processors() -> usize {
    static PROCESSORS: OnceLock<usize> = OnceLock::new();
    *PROCESSORS.get_or_init(|| thread::available_parallelism().map_or(1, NonZero::get))
}

/// Works columns of one length off in so many parts, each but the last of whole blocks: `work` gets the first place of its
/// part and the part of each column. What they come to is joined in order, so it does not depend on how many there are.
pub(crate) fn in_parts<const M: usize, T: Send, R: Default + Send>(
    columns: [&mut [T]; M],
    (parts, block): (usize, usize),
    work: impl Fn(usize, [&mut [T]; M]) -> R + Sync,
    join: impl Fn(R, R) -> R,
) -> R {
    if parts <= 1 {
        return work(0, columns);
    }
    let (places, block) = (columns.first().map_or(0, |column| column.len()), block.max(1));
    let each = places.div_ceil(parts).next_multiple_of(block).max(block);
    let mut results: Vec<R> = (0..places.div_ceil(each)).map(|_| R::default()).collect();
    let mut rest = columns.map(|column| column.chunks_mut(each));
    thread::scope(|scope| {
        let work = &work;
        for (part, result) in results.iter_mut().enumerate() {
            let (first, slots) = (part * each, rest.each_mut().map(|chunks| chunks.next().unwrap_or_default()));
            // Who shares out takes the last part: a thread that only waits costs as much as one that works.
            if first + each >= places {
                *result = work(first, slots);
            } else {
                on_a_thread(scope, (slots, result), move |(slots, result)| *result = work(first, slots));
            }
        }
    });
    results.into_iter().reduce(join).unwrap_or_default()
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

#[cfg(test)]
mod tests {
    use super::*;

    /// What each part gets is written down, so that the columns tell by whom they were filled.
    #[test]
    fn parts_are_whole_blocks_in_order() {
        for (parts, firsts) in [(1, vec![0]), (2, vec![0, 8]), (3, vec![0, 4, 8]), (9, vec![0, 4, 8])] {
            let mut columns = [[0; 11]; 2];
            let work = |first: usize, [one, other]: [&mut [usize]; 2]| {
                one.fill(first);
                for (slot, place) in other.iter_mut().zip(first..) {
                    *slot = place;
                }
                vec![first]
            };
            let [one, other] = &mut columns;
            let joined = in_parts([one, other], (parts, 4), work, |all, one| [all, one].concat());
            assert_eq!(joined, firsts);
            let [by, places] = columns;
            assert_eq!(places, std::array::from_fn::<_, 11, _>(|place| place));
            assert!((0..11).all(|place| Some(&by[place]) == firsts.iter().rfind(|first| **first <= place)));
        }
        assert_eq!(in_parts([&mut [0_u8; 0][..]], (3, 0), |_, _| 1, |all, one| all + one), 0);
    }

    #[test]
    fn few_rows_stay_together() {
        assert_eq!([0, 99, 100, 199].map(|rows| share_out(rows, 100)), [1; 4]);
        assert!(share_out(200, 100) <= 2 && share_out(usize::MAX, 0) >= 1);
    }
}
