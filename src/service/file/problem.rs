use crate::text::Position;

/// One thing wrong with a file: where, what, and the way out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problem {
    /// Where it stands; `None` when the text as a whole is meant.
    pub at: Option<Position>,
    /// The field, for example `section[2].share_percent`; empty for the file as a whole.
    pub field: String,
    /// What is wrong, with the value, the allowed range and the way out.
    pub message: String,
}

impl std::fmt::Display for Problem {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        if let Some(at) = self.at {
            write!(f, "line {}: ", at.line)?;
        }
        if !self.field.is_empty() {
            write!(f, "{}: ", self.field)?;
        }
        f.write_str(&self.message)
    }
}

/// Everything wrong with a file, in the order of the lines.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub struct Problems(pub Vec<Problem>);

impl Problems {
    /// Sorts by line; problems of the same line keep their order: what is there first, then what is missing.
    pub(super) fn sorted(mut problems: Vec<Problem>) -> Self {
        problems.sort_by_key(|p| p.at.map(|at| at.line));
        Self(problems)
    }
}

impl std::fmt::Display for Problems {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        for (i, problem) in self.0.iter().enumerate() {
            if i > 0 {
                f.write_str("\n")?;
            }
            write!(f, "{problem}")?;
        }
        Ok(())
    }
}
