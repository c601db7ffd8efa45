/// A place in a text, both counted from one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Position {
    /// Line.
    pub line: usize,
    /// Column, in characters.
    pub column: usize,
}

impl Position {
    /// Where every text begins.
    pub const START: Self = Self { line: 1, column: 1 };
}

/// A text that knows where its lines begin, so that every place in it is found quickly.
pub struct Lines<'t> {
    text: &'t str,
    begins: Vec<usize>,
}

impl<'t> Lines<'t> {
    /// Finds where the lines of a text begin.
    #[must_use]
    pub fn of(text: &'t str) -> Self {
        let after_breaks = text.match_indices('\n').map(|(at, _)| at + 1);
        Self { text, begins: std::iter::once(0).chain(after_breaks).collect() }
    }

    /// The text itself.
    #[must_use]
    pub const fn text(&self) -> &'t str {
        self.text
    }

    /// The place of a byte offset; offsets past the end give the end.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::text::{Lines, Position};
    ///
    /// let lines = Lines::of("level = 6\ntone = \"violet\"\n");
    /// assert_eq!(lines.position(17), Position { line: 2, column: 8 });
    /// assert_eq!(lines.line(0), 1);
    /// ```
    #[must_use]
    pub fn position(&self, offset: usize) -> Position {
        let offset = offset.min(self.text.len());
        let line = self.line(offset);
        let begin = line.checked_sub(1).and_then(|before| self.begins.get(before)).copied().unwrap_or(0);
        let column = self.text.get(begin..offset).unwrap_or_default().chars().count() + 1;
        Position { line, column }
    }

    /// The line of a byte offset.
    #[must_use]
    pub fn line(&self, offset: usize) -> usize {
        self.begins.partition_point(|begin| *begin <= offset)
    }
}
