//! Where a field stands in a text: problems that show only in planning know their field, not their line.

use super::{Format, Node, Problems, tree};
use crate::text::Position;

impl Problems {
    /// The same problems, each with the place of its field, or of the table the field is missing from.
    pub(in crate::service) fn located(self, text: &str, format: Format) -> Self {
        let (root, _) = tree(text, format);
        let mut problems = self.0;
        for problem in &mut problems {
            problem.at = problem.at.or_else(|| place(&root, &problem.field));
        }
        Self::sorted(problems)
    }
}

/// The place of the deepest part of a path such as `section[2].strength` that the file has.
fn place(root: &Node, field: &str) -> Option<Position> {
    let mut here = root;
    for step in field.split('.') {
        let (key, index) = match step.split_once('[') {
            Some((key, index)) => (key, index.trim_end_matches(']').parse::<usize>().ok()),
            None => (step, None),
        };
        let Some(next) = here.get(key) else { break };
        here = next;
        let Some(index) = index else { continue };
        match index.checked_sub(1).and_then(|i| here.items().get(i)) {
            Some(item) => here = item,
            None => break,
        }
    }
    (!field.is_empty()).then_some(here.at)
}
