//! Text from a file or a command made harmless for a terminal, and short enough to be read.

use std::borrow::Cow;

/// The most characters of one line of a message: beyond it the middle is left out.
const LONGEST_LINE: usize = 1_000;
/// How many of them are kept in front of what is left out; the rest is kept behind it, where the way out stands.
const HEAD: usize = 600;

/// The same text with every character that a terminal would obey, or that would turn the direction of what follows,
/// shown as a sign of its own. Line breaks and tabs stay.
///
/// A name from a file could otherwise clear the screen, set the window's title, or make a line read backwards.
///
/// # Example
///
/// ```
/// use foilwork::text::inert;
///
/// assert_eq!(inert("ash\u{1b}[2J"), "ash␛[2J");
/// assert_eq!(inert("ash\u{202e}dlog"), "ash<U+202E>dlog");
/// assert_eq!(inert("ماسة, née Ōé\n"), "ماسة, née Ōé\n");
/// ```
#[must_use]
pub fn inert(text: &str) -> Cow<'_, str> {
    if !text.contains(is_active) {
        return Cow::Borrowed(text);
    }
    let mut out = String::with_capacity(text.len());
    for character in text.chars() {
        match character {
            // The pictures of the control characters stand in the same order as the characters themselves.
            '\0'..='\u{1f}' if is_active(character) => {
                out.extend(char::from_u32(0x2400 + u32::from(character)));
            }
            '\u{7f}' => out.push('\u{2421}'),
            _ if is_active(character) => out.push_str(&format!("<U+{:04X}>", u32::from(character))),
            _ => out.push(character),
        }
    }
    Cow::Owned(out)
}

/// Whether a character may stand in a name: it acts on nothing and does not end the line.
///
/// # Example
///
/// ```
/// use foilwork::text::is_shown;
///
/// assert!(is_shown('é') && is_shown(' '));
/// assert!(!is_shown('\n') && !is_shown('\t') && !is_shown('\u{202e}'));
/// ```
#[must_use]
pub const fn is_shown(character: char) -> bool {
    !is_active(character) && !matches!(character, '\n' | '\t')
}

/// Whether a character acts on what shows it, or on the characters beside it, instead of being shown.
///
/// # Example
///
/// ```
/// use foilwork::text::is_active;
///
/// assert!(is_active('\u{1b}') && is_active('\u{2028}') && is_active('\u{202e}'));
/// assert!(!is_active('\n') && !is_active('\t') && !is_active('é'));
/// ```
#[must_use]
pub const fn is_active(character: char) -> bool {
    let is_control = matches!(character, '\0'..='\u{1f}' | '\u{7f}'..='\u{9f}') && !matches!(character, '\n' | '\t');
    let is_separator = matches!(character, '\u{2028}' | '\u{2029}');
    // The marks, embeddings, overrides and isolates of the bidirectional algorithm (Unicode Standard Annex 9).
    let turns =
        matches!(character, '\u{61c}' | '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
    // The byte order mark and the tags are not shown at all.
    let is_hidden = matches!(character, '\u{feff}' | '\u{e0000}'..='\u{e007f}');
    is_control || is_separator || turns || is_hidden
}

/// A line of a message that shows no more of a long value than can be read: its beginning and its end.
///
/// # Example
///
/// ```
/// use foilwork::text::shortened;
///
/// assert_eq!(shortened("give 1 to 3"), "give 1 to 3");
/// let long = shortened(&format!("\"{}\" is no level: give 1 to 12", "9".repeat(5_000))).into_owned();
/// assert!(long.chars().count() < 1_100 && long.ends_with("is no level: give 1 to 12"));
/// ```
#[must_use]
pub fn shortened(line: &str) -> Cow<'_, str> {
    // Most lines are short in bytes as well.
    if line.len() <= LONGEST_LINE {
        return Cow::Borrowed(line);
    }
    let count = line.chars().count();
    if count <= LONGEST_LINE {
        return Cow::Borrowed(line);
    }
    let left_out = count - LONGEST_LINE;
    let head: String = line.chars().take(HEAD).collect();
    let tail: String = line.chars().skip(HEAD + left_out).collect();
    Cow::Owned(format!("{head} [... {left_out} characters ...] {tail}"))
}
