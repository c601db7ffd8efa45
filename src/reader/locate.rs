//! Where a field stands in a text: problems that show only later know their field, not their line.

use super::{Format, Node, Problems, document::tree};
use crate::text::Position;

impl Problems {
    /// The same problems, each with the place of its field, or of the table the field is missing from.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::reader::{Format, Problem, Problems};
    ///
    /// let problem = Problem { at: None, field: "toner[1].mix_g".into(), message: "too little".into() };
    /// let located = Problems(vec![problem]).located("[[toner]]\nmix_g = 1", Format::Toml);
    /// assert_eq!(located.to_string(), "line 2: toner[1].mix_g: too little");
    /// ```
    #[must_use]
    pub fn located(mut self, text: &str, format: Format) -> Self {
        let (root, _) = tree(text, format);
        for problem in &mut self.0 {
            problem.at = problem.at.or_else(|| place(&root, &problem.field));
        }
        self.sorted()
    }
}

/// The place of the deepest part of a path such as `section[2].strength` that the file has.
fn place(root: &Node, field: &str) -> Option<Position> {
    if field.is_empty() {
        return None;
    }
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
    here.at
}
