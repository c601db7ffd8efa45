use crate::text::{Position, count, shortened};

/// One thing wrong with a file: where, what, and the way out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problem {
    /// Where it stands; `None` when the text as a whole is meant, or when there is no text.
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
#[derive(Debug, Clone, Default, PartialEq, Eq, thiserror::Error)]
pub struct Problems(pub Vec<Problem>);

impl Problems {
    /// Adds one.
    pub(crate) fn say(&mut self, at: Option<Position>, field: &str, message: impl Into<String>) {
        self.0.push(Problem { at, field: field.to_owned(), message: message.into() });
    }

    /// `value`, or the problems where there are any.
    pub(crate) fn or<T>(self, value: T) -> Result<T, Self> {
        if self.0.is_empty() { Ok(value) } else { Err(self.sorted()) }
    }

    /// By line; problems of the same line keep their order: what is there first, then what is missing.
    pub(crate) fn sorted(mut self) -> Self {
        self.0.sort_by_key(|p| p.at.map(|at| at.line));
        self
    }
}

/// So many problems are told; a file with more has one cause that repeats itself.
const TOLD: usize = 100;

impl Problems {
    /// The problems as lines to print: the first hundred, and how many more there are.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::reader::{Problem, Problems};
    ///
    /// let one = Problem { at: None, field: "toner[1].mix_g".into(), message: "too little".into() };
    /// let lines: Vec<String> = Problems(vec![one; 102]).lines().collect();
    /// assert_eq!(lines.len(), 101);
    /// assert_eq!(lines.last().map(String::as_str), Some("and 2 more problems: mend these first"));
    /// ```
    pub fn lines(&self) -> impl Iterator<Item = String> {
        let more = self.0.len().saturating_sub(TOLD);
        let more =
            (more > 0).then(|| format!("and {}: mend these first", count(more, "more problem", "more problems")));
        self.0.iter().take(TOLD).map(|problem| shortened(&problem.to_string()).into_owned()).chain(more)
    }
}

impl std::fmt::Display for Problems {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        for (i, line) in self.lines().enumerate() {
            if i > 0 {
                f.write_str("\n")?;
            }
            f.write_str(&line)?;
        }
        Ok(())
    }
}

/// Puts the name of the field in front of any error.
pub(crate) trait InField<T> {
    /// The value, or the error as the problem of `field`.
    fn in_field(self, field: &str) -> Result<T, Problems>;
}

impl<T, E: std::fmt::Display> InField<T> for Result<T, E> {
    fn in_field(self, field: &str) -> Result<T, Problems> {
        self.map_err(|error| Problems(vec![Problem { at: None, field: field.to_owned(), message: error.to_string() }]))
    }
}
