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
        assert!(is_kebab(id) && id.len() <= 40, "`{id}` is not a short key");
    }
}

/// Lower case, words joined by single hyphens.
fn is_kebab(id: &str) -> bool {
    let plain = |word: &str| word.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit());
    id.split('-').all(|word| !word.is_empty() && plain(word))
}

/// Where addresses may lead: institutions, publishers, makers. Everything else is found by its title.
const HOSTS: &[&str] = &[
    "active-oxygens.evonik.com",
    "api.fda.gov",
    "assist.asta.edu.au",
    "chem-textbook.ucalgary.ca",
    "chem.libretexts.org",
    "ciaaw.org",
    "de.m.wikipedia.org",
    "doi.org",
    "environmental.fmc.com",
    "eur-lex.europa.eu",
    "fa.kfda.go.kr",
    "flrules.elaws.us",
    "icm.education",
    "jamanetwork.com",
    "old.iupac.org",
    "openstax.org",
    "register.ofqual.gov.uk",
    "teachersinstitute.yale.edu",
    "training.gov.au",
    "vu.edu.au",
    "www-users.york.ac.uk",
    "www.chem.queensu.ca",
    "www.echa.europa.eu",
    "www.engineeringtoolbox.com",
    "www.gatewayqualifications.org.uk",
    "www.gov.uk",
    "www.hmrc.gov.uk",
    "www.peroxychem.com",
    "www.red-seal.ca",
    "www.six-group.com",
    "www.ukstandards.org.uk",
    "www.vu.edu.au",
];

fn data_files() -> Vec<std::path::PathBuf> {
    let folders = std::fs::read_dir("tests/data").unwrap().map(|folder| folder.unwrap().path());
    let files = folders.filter(|path| path.is_dir()).flat_map(|folder| std::fs::read_dir(folder).unwrap());
    files.map(|file| file.unwrap().path()).collect()
}

#[test]
fn the_sources_of_the_data_have_the_same_kind_of_key() {
    let mut seen = 0;
    for path in data_files() {
        if !path.file_name().is_some_and(|name| name.to_string_lossy().ends_with("sources.csv")) {
            continue;
        }
        for row in csv::Reader::from_path(&path).unwrap().records() {
            let row = row.unwrap();
            let id = row.get(0).unwrap_or_default();
            assert!(is_kebab(id) && id.len() <= 45, "{}: `{id}` is not a short key", path.display());
            seen += 1;
        }
    }
    assert!(seen > 100, "the walk finds sources");
}

#[test]
fn addresses_lead_to_institutions() {
    for path in data_files() {
        let Ok(text) = std::fs::read_to_string(&path) else { continue };
        for rest in text.split("://").skip(1) {
            let host = rest.split(['/', ',', '"', ' ', '\n', '\r']).next().unwrap_or_default();
            assert!(HOSTS.contains(&host), "{}: {host} is not on the list: cite it by its title", path.display());
        }
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
