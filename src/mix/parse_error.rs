use std::fmt;

/// How much of a text is shown before the offending character.
const POINTED_BEFORE: usize = 60;
/// And from it on.
const POINTED_AFTER: usize = 20;

/// A written ratio or recipe that cannot be read, with the place where reading stopped.
///
/// # Example
///
/// ```
/// use foilwork::mix::Ratio;
///
/// let error = "1:x".parse::<Ratio>().unwrap_err();
/// assert_eq!((error.what(), error.text(), error.position()), ("ratio", "1:x", 3));
/// assert_eq!(error.expected(), "a number above 0 such as 1 or 1.5");
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ParseError {
    pub(super) what: &'static str,
    pub(super) text: String,
    pub(super) at: usize,
    pub(super) expected: &'static str,
}

impl ParseError {
    /// What was being read, for example `ratio`.
    #[must_use]
    pub const fn what(&self) -> &'static str {
        self.what
    }

    /// The text as it was given.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The offending character, counted from 1; one past the end when the text stops too early.
    #[must_use]
    pub const fn position(&self) -> usize {
        self.at + 1
    }

    /// What would have been fine there.
    #[must_use]
    pub const fn expected(&self) -> &'static str {
        self.expected
    }

    /// The text around the offending character, with a caret under it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::Ratio;
    ///
    /// let error = "1:x".parse::<Ratio>().unwrap_err();
    /// assert_eq!((error.position(), error.pointer().as_str()), (3, "1:x\n  ^"));
    /// ```
    #[must_use]
    pub fn pointer(&self) -> String {
        // Only what stands around the place: a line of a terminal is short, and a text may be very long.
        let from = self.at.saturating_sub(POINTED_BEFORE);
        let around: String = self.text.chars().skip(from).take(POINTED_BEFORE + POINTED_AFTER).collect();
        format!("{around}\n{}^", " ".repeat(self.at - from))
    }
}

impl fmt::Display for ParseError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "invalid {} (got \"{}\"): ", self.what, self.text)?;
        match self.text.chars().nth(self.at) {
            Some(found) => write!(f, "\"{found}\" at character {}, expected {}", self.position(), self.expected),
            None => write!(f, "ends at character {}, expected {}", self.position(), self.expected),
        }
    }
}

impl std::error::Error for ParseError {}

/// Reads a text character by character and remembers where it is.
pub(super) struct Cursor<'t> {
    what: &'static str,
    text: &'t str,
    byte: usize,
}

impl<'t> Cursor<'t> {
    pub(super) const fn new(what: &'static str, text: &'t str) -> Self {
        Self { what, text, byte: 0 }
    }

    pub(super) fn rest(&self) -> &'t str {
        self.text.get(self.byte..).unwrap_or_default()
    }

    pub(super) fn peek(&self) -> Option<char> {
        self.rest().chars().next()
    }

    pub(super) fn bump(&mut self) {
        self.byte += self.peek().map_or(0, char::len_utf8);
    }

    /// Skips blanks and says whether there were any.
    pub(super) fn blanks(&mut self) -> bool {
        !self.take_while(char::is_whitespace).is_empty()
    }

    pub(super) fn take_while(&mut self, keep: impl Fn(char) -> bool) -> &'t str {
        let rest = self.rest();
        let taken = rest.find(|c| !keep(c)).and_then(|end| rest.get(..end)).unwrap_or(rest);
        self.byte += taken.len();
        taken
    }

    /// The error for the character the cursor stands on.
    pub(super) fn expected(&self, expected: &'static str) -> ParseError {
        self.expected_at(self.byte, expected)
    }

    /// The error for an earlier byte, as returned by [`mark`](Self::mark).
    pub(super) fn expected_at(&self, byte: usize, expected: &'static str) -> ParseError {
        let at = self.text.get(..byte).map_or(0, |before| before.chars().count());
        ParseError { what: self.what, text: self.text.to_owned(), at, expected }
    }

    pub(super) const fn mark(&self) -> usize {
        self.byte
    }
}
