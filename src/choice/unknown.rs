use super::{Choice, nearest};

/// Text that is none of the words to choose from.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("unknown {what} \"{got}\": give one of {}{}", .choices.join(", "), .nearest.map(|word| format!(" (did you mean {word}?)")).unwrap_or_default())]
pub struct UnknownChoice {
    /// What was to be chosen.
    pub what: &'static str,
    /// The text that was given.
    pub got: String,
    /// The codes to choose from.
    pub choices: &'static [&'static str],
    /// The code that is most like the text, when one is.
    pub nearest: Option<&'static str>,
}

impl UnknownChoice {
    /// The error for a text that is no `C`.
    pub(crate) fn of<C: Choice>(got: &str) -> Self {
        Self { what: C::WHAT, got: got.to_owned(), choices: C::CODES, nearest: nearest(got, C::CODES.iter().copied()) }
    }
}
