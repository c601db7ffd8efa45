use super::{Choice, UnknownChoice};

/// Reads a code or its words, in any case, with hyphens or spaces between words and spaces around them.
pub(crate) fn parse<C: Choice>(text: &str) -> Result<C, UnknownChoice> {
    if let Some(known) = C::ALL.iter().find(|choice| choice.code() == text) {
        return Ok(*known);
    }
    let word = text.trim();
    let plain = |c: char| if matches!(c, ' ' | '_') { '-' } else { c.to_ascii_lowercase() };
    let same = |known: &str| word.chars().map(plain).eq(known.chars().map(plain));
    let named =
        |choice: &&C| same(choice.code()) || same(choice.words()) || choice.synonyms().iter().any(|known| same(known));
    C::ALL.iter().find(named).copied().ok_or_else(|| UnknownChoice::of::<C>(text))
}
