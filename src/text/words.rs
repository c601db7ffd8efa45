/// So many of a thing, in words that agree with the number.
///
/// # Example
///
/// ```
/// use foilwork::text::count;
///
/// assert_eq!(count(1, "bowl", "bowls"), "1 bowl");
/// assert_eq!(count(0, "bowl", "bowls"), "0 bowls");
/// ```
#[must_use]
pub fn count(number: usize, one: &str, many: &str) -> String {
    format!("{number} {}", if number == 1 { one } else { many })
}

/// Items in a sentence, with a word such as `and` or `or` before the last.
///
/// # Example
///
/// ```
/// use foilwork::text::list;
///
/// assert_eq!(list(["root", "mid-length", "ends"], "and"), "root, mid-length and ends");
/// assert_eq!(list(["root", "ends"], "or"), "root or ends");
/// assert_eq!(list(["root"], "or"), "root");
/// ```
#[must_use]
pub fn list<T: AsRef<str>>(items: impl IntoIterator<Item = T>, word: &str) -> String {
    let mut items: Vec<T> = items.into_iter().collect();
    let Some(last) = items.pop() else { return String::new() };
    if items.is_empty() {
        return last.as_ref().to_owned();
    }
    let before: Vec<&str> = items.iter().map(AsRef::as_ref).collect();
    format!("{} {word} {}", before.join(", "), last.as_ref())
}
