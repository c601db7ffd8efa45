//! What occupational standards ask a colourist to record, against the fields of a service file.
//!
//! The standards are named row by row in `tests/data/service/recorded_fields.csv` and described in `sources.csv` beside
//! it. What they ask for and a service file has no field for stands in `unrecorded.csv`, with what to do instead.

use foilwork::service::service_schema;
use serde::Deserialize;
use serde_json::Value;
use std::collections::BTreeSet;

#[derive(Deserialize)]
struct Recorded {
    what: String,
    standards: String,
    how: String,
    schema_path: String,
}

#[derive(Deserialize)]
struct Unrecorded {
    what: String,
    standards: String,
    instead: String,
}

#[derive(Deserialize)]
struct Source {
    source_id: String,
    title: String,
    issuer: String,
    section: String,
    url: String,
    how: String,
}

fn rows<T: for<'de> Deserialize<'de>>(text: &str) -> Vec<T> {
    csv::Reader::from_reader(text.as_bytes()).deserialize().collect::<Result<_, _>>().unwrap()
}

fn recorded() -> Vec<Recorded> {
    rows(include_str!("../data/service/recorded_fields.csv"))
}

fn unrecorded() -> Vec<Unrecorded> {
    rows(include_str!("../data/service/unrecorded.csv"))
}

/// The schema of a field such as `section.mix.shade`, looking through lists, optional fields and definitions.
fn field<'s>(root: &'s Value, path: &str) -> Option<&'s Value> {
    path.split('.')
        .try_fold(root, |table, name| resolve(root, resolve(root, table).get("properties")?.get(name)?).into())
}

fn resolve<'s>(root: &'s Value, schema: &'s Value) -> &'s Value {
    let target = schema.get("$ref").and_then(Value::as_str).and_then(|name| root.pointer(name.strip_prefix('#')?));
    match target.or_else(|| schema.pointer("/anyOf/0")).or_else(|| schema.get("items")) {
        Some(inner) => resolve(root, inner),
        None => schema,
    }
}

/// The words that a field may have.
fn words(schema: &Value) -> Vec<&str> {
    let choices = schema.get("oneOf").and_then(Value::as_array).into_iter().flatten();
    choices.filter_map(|choice| choice.get("const")?.as_str()).collect()
}

#[test]
fn what_the_standards_ask_to_record_has_a_field() {
    let schema = service_schema();
    for Recorded { what, standards, schema_path, .. } in recorded() {
        let (path, word) = schema_path.split_once('=').map_or((schema_path.as_str(), None), |(p, w)| (p, Some(w)));
        let found = field(&schema, path).unwrap_or_else(|| panic!("{what} ({standards}): no field {path}"));
        if let Some(word) = word {
            assert!(words(found).contains(&word), "{what} ({standards}): {path} cannot be {word}");
        }
    }
}

#[test]
fn a_path_that_is_not_there_is_not_found() {
    let schema = service_schema();
    assert!(field(&schema, "analysis.mood").is_none());
    assert!(field(&schema, "section.mix.level").is_none());
    assert!(!words(field(&schema, "section.technique").unwrap()).contains(&"braid"));
}

#[test]
fn every_standard_is_described() {
    let sources: Vec<Source> = rows(include_str!("../data/service/sources.csv"));
    for source in &sources {
        let found = [&source.title, &source.issuer, &source.section].iter().all(|words| !words.is_empty());
        let address = source.url.is_empty() || source.url.starts_with("http");
        assert!(found && address, "{}: title, issuer and section tell where it stands", source.source_id);
        assert_eq!(source.how, "retrieved", "{}", source.source_id);
    }
    let described: BTreeSet<String> = sources.into_iter().map(|source| source.source_id).collect();
    let named: BTreeSet<String> = recorded()
        .into_iter()
        .map(|row| row.standards)
        .chain(unrecorded().into_iter().map(|row| row.standards))
        .flat_map(|ids| ids.split(' ').map(str::to_owned).collect::<Vec<_>>())
        .collect();
    assert_eq!(named, described);
}

#[test]
fn gaps_are_named_with_what_to_do_instead() {
    let schema = service_schema();
    for Unrecorded { what, instead, .. } in unrecorded() {
        assert!(!instead.is_empty(), "{what}");
        if let Some(path) = instead.split(' ').next().filter(|word| word.contains('.')) {
            assert!(field(&schema, path).is_some(), "{what}: {path}");
        }
    }
    assert!(recorded().iter().all(|row| matches!(row.how.as_str(), "retrieved" | "common practice")));
}
