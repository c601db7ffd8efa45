use super::Choice;

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

/// The known word that is most like `word`, when one is like it at all.
///
/// # Example
///
/// ```
/// use foilwork::choice::nearest;
///
/// assert_eq!(nearest("developper", ["developer", "lightener"]), Some("developer"));
/// assert_eq!(nearest("quux", ["developer", "lightener"]), None);
/// ```
#[must_use]
pub fn nearest<'w>(word: &str, known: impl IntoIterator<Item = &'w str>) -> Option<&'w str> {
    // Jaro-Winkler favours a common beginning, which is what most slips of the finger keep.
    let word = word.trim().to_lowercase();
    known
        .into_iter()
        .map(|candidate| (strsim::jaro_winkler(&word, &candidate.to_lowercase()), candidate))
        .filter(|(likeness, _)| *likeness > 0.8)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, candidate)| candidate)
}
