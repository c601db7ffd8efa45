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
