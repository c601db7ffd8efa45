//! In which order the tasks are worked.

use crate::{choice::choice, service::request::Task};
use std::{cmp::Reverse, collections::BinaryHeap};

choice! {
    /// Whose order the sections are worked in.
    OrderBasis: "basis of the order" {
        /// They stand in the file like that.
        File = "file" => "the file's",
        /// One of them waits for another that stands further down in the file.
        Plan = "plan" => "the plan's, since a section waits for one that stands below it in the file",
    }
}

impl OrderBasis {
    /// Of the places in the file, in the order of the work.
    pub(super) fn of(places: impl Iterator<Item = usize>) -> Self {
        if places.is_sorted() { Self::File } else { Self::Plan }
    }
}

/// The order of the tasks as indices: whatever must come first does, otherwise the order of the file.
pub(super) fn order(tasks: &[Task]) -> Vec<usize> {
    let mut waiting: Vec<usize> = tasks.iter().map(|task| task.after.len()).collect();
    let mut followers: Vec<Vec<usize>> = vec![Vec::new(); tasks.len()];
    for (i, task) in tasks.iter().enumerate() {
        for (before, _) in &task.after {
            if let Some(list) = followers.get_mut(*before) {
                list.push(i);
            }
        }
    }
    let free = waiting.iter().enumerate().filter(|(_, before)| **before == 0);
    let mut ready: BinaryHeap<Reverse<usize>> = free.map(|(i, _)| Reverse(i)).collect();
    let mut order = Vec::with_capacity(tasks.len());
    while let Some(Reverse(i)) = ready.pop() {
        order.push(i);
        for follower in followers.get(i).into_iter().flatten() {
            let Some(before) = waiting.get_mut(*follower) else { continue };
            *before -= 1;
            if *before == 0 {
                ready.push(Reverse(*follower));
            }
        }
    }
    // Circles were refused when the file was read; if one came by another way, keep the order of the file.
    order.extend(waiting.iter().enumerate().filter(|(_, before)| **before > 0).map(|(i, _)| i));
    order
}
