//! The register of citations.

use super::{data, fine};
use foilwork::source::register;
use std::collections::BTreeSet;

#[test]
fn every_citation_is_listed_once_with_how_it_was_consulted() {
    let listed = data(&["sources"]);
    let listed = listed.as_array().unwrap();
    let ids: BTreeSet<_> = listed.iter().map(|row| row["id"].as_str().unwrap()).collect();
    assert_eq!((ids.len(), listed.len()), (register().count(), register().count()));
    let known = ["retrieved", "library", "computed", "from-memory", "common-practice"];
    let text = fine(&["sources"]);
    for row in listed {
        assert!(known.contains(&row["consulted"].as_str().unwrap()), "{row}");
        assert!(text.lines().any(|line| line.starts_with(&format!("{} [", row["id"].as_str().unwrap()))), "{row}");
    }
    let from_memory = listed.iter().filter(|row| row["consulted"] == "from-memory").count();
    assert!(from_memory > 0);
    assert_eq!(text.matches("[from memory, unverified]").count(), from_memory);
}

/// Source: the CODATA constant that the ideal molar volume rests on is exact since 2019.
#[test]
fn the_gas_constant_is_cited() {
    assert!(fine(&["sources"]).contains("8.314 462 618 J/(mol K)"));
}
