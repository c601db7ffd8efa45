use std::fmt;

/// Where in a list a problem sits.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub enum Place {
    /// The row of column names.
    Header,
    /// A line of a text, counted from 1, the header included.
    Line(u64),
    /// An item of a list, counted from 1.
    Item(usize),
    /// The terms of the business: wages, rent, tax.
    Terms,
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Header => f.write_str("header"),
            Self::Line(line) => write!(f, "line {line}"),
            Self::Item(item) => write!(f, "item {item}"),
            Self::Terms => f.write_str("business terms"),
        }
    }
}

/// One thing wrong with a list. All that is wrong is reported together.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{place}, {column}: {problem}")]
pub struct TableProblem {
    /// Where.
    pub place: Place,
    /// Which column or field.
    pub column: String,
    /// What is wrong, and the way out.
    pub problem: String,
}

impl TableProblem {
    pub(super) fn new(place: Place, column: &str, problem: impl fmt::Display) -> Self {
        Self { place, column: column.to_owned(), problem: problem.to_string() }
    }
}
