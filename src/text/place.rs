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
    /// How many characters stand before each block of bytes: a whole file may be one line.
    before: Vec<usize>,
}

/// The bytes of a block.
const BLOCK: usize = 256;

/// Every character has one byte that does not continue it.
fn characters(bytes: &[u8]) -> usize {
    bytes.iter().filter(|byte| **byte & 0xC0 != 0x80).count()
}

impl<'t> Lines<'t> {
    /// Finds where the lines of a text begin.
    #[must_use]
    pub fn of(text: &'t str) -> Self {
        let after_breaks = text.match_indices('\n').map(|(at, _)| at + 1);
        let begins = std::iter::once(0).chain(after_breaks).collect();
        let mut before = vec![0];
        let mut sum = 0;
        before.extend(text.as_bytes().chunks(BLOCK).map(|block| {
            sum += characters(block);
            sum
        }));
        Self { text, begins, before }
    }

    /// How many characters begin before a byte offset.
    fn characters_before(&self, offset: usize) -> usize {
        let block = offset / BLOCK;
        let rest = self.text.as_bytes().get(block * BLOCK..offset).unwrap_or_default();
        self.before.get(block).copied().unwrap_or(0) + characters(rest)
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
        let column = self.characters_before(offset) - self.characters_before(begin) + 1;
        Position { line, column }
    }

    /// The line of a byte offset.
    #[must_use]
    pub fn line(&self, offset: usize) -> usize {
        self.begins.partition_point(|begin| *begin <= offset)
    }

    /// The line on which a record of a separated list begins; zero when the reader does not know the record's place.
    ///
    /// The reader's own count is one too small behind a line that ends in CR LF: it stops after the CR, so that the LF is
    /// still to come. Empty lines are skipped in the same way.
    pub(crate) fn of_record(&self, place: Option<&csv::Position>) -> usize {
        let Some(from) = place.and_then(|place| usize::try_from(place.byte()).ok()) else { return 0 };
        let rest = self.text.as_bytes().get(from..).unwrap_or_default();
        let ends = rest.iter().take_while(|byte| matches!(byte, b'\r' | b'\n')).count();
        self.line(from + ends)
    }
}
