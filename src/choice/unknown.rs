use super::{Choice, nearest};

/// Text that is none of the words to choose from.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("unknown {what} \"{got}\": give one of {}{}", .choices.join(", "), self.way_out())]
pub struct UnknownChoice {
    /// What was to be chosen.
    pub what: &'static str,
    /// The text that was given.
    pub got: String,
    /// The codes to choose from.
    pub choices: &'static [&'static str],
    /// The way out, where there is more to say than which choices there are.
    pub hint: Option<&'static str>,
}

impl UnknownChoice {
    /// The error for a text that is no `C`.
    pub(crate) fn of<C: Choice>(got: &str) -> Self {
        Self { what: C::WHAT, got: got.to_owned(), choices: C::CODES, hint: C::hint(got) }
    }

    /// The code that is most like the text, when one is.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::limits::Purpose;
    ///
    /// assert_eq!("lightning".parse::<Purpose>().unwrap_err().nearest(), Some("lightening"));
    /// ```
    #[must_use]
    pub fn nearest(&self) -> Option<&'static str> {
        nearest(&self.got, self.choices.iter().copied())
    }

    fn way_out(&self) -> String {
        match (self.hint, self.nearest()) {
            (Some(hint), _) => format!(" ({hint})"),
            (None, Some(word)) => format!(" (did you mean {word}?)"),
            (None, None) => String::new(),
        }
    }
}
