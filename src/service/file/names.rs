use crate::{choice::nearest, reader::Node};
use std::collections::HashSet;

/// The names of one list, found quickly.
pub(super) struct Names<'n> {
    in_order: Vec<&'n str>,
    known: HashSet<&'n str>,
}

/// A list of at most so many names is told whole.
const TOLD: usize = 12;

impl<'n> Names<'n> {
    pub(super) fn of(items: &'n [Node], key: &str) -> Self {
        let in_order: Vec<&str> = items.iter().filter_map(|item| item.get(key)?.text()).collect();
        Self { known: in_order.iter().copied().collect(), in_order }
    }

    pub(super) fn and(&self, more: &Self) -> Self {
        let in_order: Vec<&str> = self.in_order.iter().chain(&more.in_order).copied().collect();
        Self { known: in_order.iter().copied().collect(), in_order }
    }

    pub(super) fn has(&self, name: &str) -> bool {
        self.known.contains(name)
    }

    /// What there is instead of a name that is not there.
    pub(super) fn instead_of(&self, name: &str, what: &str) -> String {
        match self.in_order.len() {
            0 => format!("there is no {what} in this file"),
            few if few <= TOLD => format!("the file has {}", self.in_order.join(", ")),
            many => {
                let hint = nearest(name, self.in_order.iter().copied());
                let hint = hint.map(|near| format!("did you mean \"{near}\"? ")).unwrap_or_default();
                format!("{hint}the file has {many} of them")
            }
        }
    }
}
