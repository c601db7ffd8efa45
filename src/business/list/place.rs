use crate::{reader::Problems, text::Position};
use std::fmt;

/// Where a row stands: its line in a text, or its place in a list.
#[derive(Debug, Clone, Copy)]
pub(in crate::business) enum Place {
    /// The line of a text, counted from 1, the header included.
    Line(usize),
    /// The item of a list, counted from 1.
    Item(usize),
    /// The text or the list as a whole.
    Whole,
}

impl Place {
    /// Adds what is wrong with a column of the row.
    pub(in crate::business) fn say(self, problems: &mut Problems, column: &str, message: impl fmt::Display) {
        let message = message.to_string();
        match self {
            Self::Line(line) => problems.say(Some(Position { line, column: 1 }), column, message),
            Self::Item(item) => problems.say(None, &format!("service[{item}].{column}"), message),
            Self::Whole => problems.say(None, column, message),
        }
    }
}
