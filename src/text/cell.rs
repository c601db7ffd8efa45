//! Text for a cell of a table that a spreadsheet opens.

use std::borrow::Cow;

/// The same text with an apostrophe before every sign from which a spreadsheet would calculate: where the text begins, and
/// behind a separator at which another spreadsheet would split it.
///
/// A name that begins with `=` is otherwise run as a formula on the machine of its reader.
///
/// # Example
///
/// ```
/// use foilwork::text::cell;
///
/// assert_eq!(cell("=1+1"), "'=1+1");
/// assert_eq!(cell("mist;=1+1"), "mist;'=1+1");
/// assert_eq!(cell("J9-mist, 1 + 1 = 2"), "J9-mist, 1 + 1 = 2");
/// ```
#[must_use]
pub fn cell(text: &str) -> Cow<'_, str> {
    let mut out = String::new();
    let mut begins = true;
    for character in text.chars() {
        if begins && is_calculated(character) {
            out.push('\'');
        }
        out.push(character);
        begins = matches!(character, ';' | ',' | '\t' | '\r' | '\n') || (begins && matches!(character, ' ' | '"'));
    }
    if out.len() == text.len() { Cow::Borrowed(text) } else { Cow::Owned(out) }
}

/// The text of a guarded cell: without the apostrophes that [`cell`] puts before signs from which a spreadsheet would calculate.
///
/// # Example
///
/// ```
/// use foilwork::text::{cell, from_cell};
///
/// for text in ["=1+1", "mist;=1+1", "J9-mist, 1 + 1 = 2", "it's"] {
///     assert_eq!(from_cell(&cell(text)), text);
/// }
/// ```
#[must_use]
pub fn from_cell(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut begins = true;
    let mut characters = text.chars().peekable();
    while let Some(character) = characters.next() {
        if begins && character == '\'' && characters.peek().copied().is_some_and(is_calculated) {
            continue;
        }
        out.push(character);
        begins = matches!(character, ';' | ',' | '\t' | '\r' | '\n') || (begins && matches!(character, ' ' | '"'));
    }
    out
}

/// A text on one line: line breaks and other controls become spaces.
pub(crate) fn flat(text: &str) -> String {
    text.chars().map(|c| if c.is_control() { ' ' } else { c }).collect()
}

/// A cell of comma-separated text, on one line and in quotes where it needs them.
pub(crate) fn quoted(cell: &str) -> String {
    let flat = flat(cell);
    // A line that begins with a bracket would be read as one of JSON.
    if flat.contains([',', '"']) || flat.starts_with(['{', '[']) {
        format!("\"{}\"", flat.replace('"', "\"\""))
    } else {
        flat
    }
}

/// The signs that begin a formula, in full width too, and the two that some spreadsheets drop before they look.
const fn is_calculated(character: char) -> bool {
    matches!(character, '=' | '+' | '-' | '@' | '\t' | '\r' | '\u{ff1d}' | '\u{ff0b}' | '\u{ff0d}' | '\u{ff20}')
}
