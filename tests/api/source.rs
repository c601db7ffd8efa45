//! The register of citations: what every room cites.

use foilwork::source::{Citation, Consulted, register};
use std::collections::BTreeMap;

#[test]
fn every_citation_id_is_unique() {
    let mut uses: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for citation in register() {
        uses.entry(citation.id).or_default().push(citation.text);
    }
    let repeated: Vec<_> = uses.into_iter().filter(|(_, texts)| texts.len() > 1).collect();
    assert!(repeated.is_empty(), "cited under one id more than once: {repeated:#?}");
}

#[test]
fn every_citation_id_is_a_short_key() {
    for Citation { id, .. } in register() {
        let plain = id.chars().all(|c| c.is_ascii_alphanumeric() || "-_.".contains(c));
        assert!(plain && !id.is_empty() && id.len() <= 40, "`{id}` is not a short key");
    }
}

#[test]
fn every_citation_can_be_found_again() {
    for Citation { id, text, .. } in register() {
        assert!(text.trim() == *text && text.len() >= 20, "`{id}` does not say enough: {text:?}");
        assert!(!text.contains('\n'), "`{id}` is printed on one line: {text:?}");
    }
}

#[test]
fn what_was_not_looked_up_says_so() {
    for citation in register().filter(|citation| citation.consulted == Consulted::FromMemory) {
        assert!(!citation.is_verified());
        assert!(citation.to_string().ends_with("[from memory, unverified]"), "{citation}");
    }
}
