/// Text made harmless for HTML, inside an element or a quoted attribute.
///
/// # Example
///
/// ```
/// use foilwork::text::escaped;
///
/// assert_eq!(escaped("<b> & \"ash\" & 'gold'"), "&lt;b&gt; &amp; &quot;ash&quot; &amp; &#39;gold&#39;");
/// ```
#[must_use]
pub fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for character in text.chars() {
        match character {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            _ => out.push(character),
        }
    }
    out
}
