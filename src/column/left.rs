//! For the tests: what a kernel has left to the rule of its room. A row that it could have vouched for comes to the same number,
//! only later, so nothing else tells.

use std::cell::RefCell;

/// What was left since it was last asked for.
#[derive(Debug, Default, PartialEq, Eq)]
pub(super) struct Left {
    /// How many blocks were gone over row by row.
    pub(super) blocks: usize,
    /// Which rows the rule was asked about.
    pub(super) rows: Vec<usize>,
}

thread_local! {
    static LEFT: RefCell<Left> = RefCell::default();
}

pub(super) fn block() {
    LEFT.with_borrow_mut(|left| left.blocks += 1);
}

pub(super) fn row(row: usize) {
    LEFT.with_borrow_mut(|left| left.rows.push(row));
}

pub(super) fn taken() -> Left {
    LEFT.take()
}
