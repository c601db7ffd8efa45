//! In which order the sections are applied, and when each is looked at and rinsed.

use crate::{
    service::request::{Stage, Task},
    source::{Sourced, citations::trade},
};
use serde::Serialize;
use std::{cmp::Reverse, collections::BinaryHeap};

/// One line of the running order. Times are minutes after the first section is begun.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Step {
    /// Place in the order, from one.
    pub number: usize,
    /// The section, toner or root shadow.
    pub name: String,
    /// `section`, `toner` or `root shadow`.
    pub stage: Stage,
    /// When its application begins. Toners count from the end of the last rinse instead.
    pub begin_min: f64,
    /// When its application ends.
    pub applied_min: f64,
    /// When to look at it.
    pub check_min: Vec<f64>,
    /// When it is to be rinsed at the latest.
    pub rinse_by_min: f64,
}

/// First look at a lightener and the look after that.
///
/// Source: retrieved pages collected in the register under `check-interval`: first check after 15 to 20 min, then every
/// 5 to 10 min. The earlier figure of each range is used, since a late look cannot be made up for.
const FIRST_LOOK: Sourced<f64> = Sourced::published(15.0, &trade::CHECK_INTERVAL);
const NEXT_LOOK: Sourced<f64> = Sourced::published(5.0, &trade::CHECK_INTERVAL);

/// The order of the tasks as indices: whatever must come first does, otherwise the order of the file.
pub(super) fn order(tasks: &[Task]) -> Vec<usize> {
    let mut waiting: Vec<usize> = tasks.iter().map(|task| task.after.len()).collect();
    let mut followers: Vec<Vec<usize>> = vec![Vec::new(); tasks.len()];
    for (i, task) in tasks.iter().enumerate() {
        for before in &task.after {
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

/// The running order of one pair of hands: each application begins when the one before it ends.
pub(super) fn steps(tasks: &[Task]) -> Vec<Step> {
    let mut clock = [0.0; 2];
    let [on_the_hair, after_rinsing] = &mut clock;
    order(tasks)
        .into_iter()
        .filter_map(|i| tasks.get(i))
        .enumerate()
        .map(|(i, task)| {
            let now = if task.stage == Stage::Section { &mut *on_the_hair } else { &mut *after_rinsing };
            let begin = *now;
            let applied = begin + task.apply.min();
            *now = applied;
            let rinse_by = applied + task.develop.min();
            Step {
                number: i + 1,
                name: task.name.clone(),
                stage: task.stage,
                begin_min: begin,
                applied_min: applied,
                check_min: looks(task, applied, rinse_by),
                rinse_by_min: rinse_by,
            }
        })
        .collect()
}

/// Lighteners are looked at again and again; colour once, near the end.
fn looks(task: &Task, applied: f64, rinse_by: f64) -> Vec<f64> {
    if !task.lightens {
        return vec![rinse_by];
    }
    let mut looks = Vec::new();
    let mut at = applied + FIRST_LOOK.value;
    while at < rinse_by {
        looks.push(at);
        at += NEXT_LOOK.value;
    }
    looks.push(rinse_by);
    looks
}

/// When the last rinse of the chosen stages is due, in minutes; rinsing itself is not counted.
pub(super) fn end_min(steps: &[Step], stage: impl Fn(Stage) -> bool) -> f64 {
    steps.iter().filter(|step| stage(step.stage)).map(|step| step.rinse_by_min).fold(0.0, f64::max)
}
