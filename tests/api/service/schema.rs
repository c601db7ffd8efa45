//! The JSON Schema of a service file: the copy in `examples` is current, and the checker understands all of it.

use super::base::example;
use foilwork::{
    reader::Format,
    service::{parse, service_schema},
};
use serde_json::{Map, Value};
use std::collections::BTreeSet;

/// Keywords that the checker acts upon.
const CHECKED: [&str; 15] = [
    "$ref",
    "anyOf",
    "items",
    "maxItems",
    "maxLength",
    "maximum",
    "minItems",
    "minLength",
    "minimum",
    "oneOf",
    "properties",
    "required",
    "type",
    "x-lines",
    "x-parse",
];

/// Keywords that only inform, or whose meaning the checker has built in: no table takes unknown fields, and a choice is
/// one of the `const` words of its `oneOf`.
///
/// `allOf` (this or that), `enum` and `pattern` say what the reader of a field and the check of names say in words.
const INFORMING: [&str; 12] = [
    "$defs",
    "$schema",
    "additionalProperties",
    "allOf",
    "const",
    "default",
    "description",
    "enum",
    "format",
    "pattern",
    "title",
    "x-unit",
];

/// Calls `visit` on every schema inside a schema, itself included.
fn walk<'s>(schema: &'s Value, visit: &mut impl FnMut(&'s Map<String, Value>)) {
    let Some(keywords) = schema.as_object() else { return };
    visit(keywords);
    for key in ["properties", "$defs"] {
        keywords.get(key).and_then(Value::as_object).into_iter().flatten().for_each(|(_, inner)| walk(inner, visit));
    }
    for key in ["anyOf", "oneOf"] {
        keywords.get(key).and_then(Value::as_array).into_iter().flatten().for_each(|inner| walk(inner, visit));
    }
    keywords.get("items").into_iter().for_each(|inner| walk(inner, visit));
}

#[test]
fn the_schema_in_examples_is_current() {
    let written: Value = serde_json::from_str(&example("service.schema.json")).unwrap();
    assert!(written == service_schema(), "renew it: foilwork schema --output examples/service.schema.json");
}

#[test]
fn schema_uses_only_known_keywords() {
    let known: BTreeSet<&str> = CHECKED.into_iter().chain(INFORMING).collect();
    let mut used = BTreeSet::new();
    let schema = service_schema();
    walk(&schema, &mut |keywords| used.extend(keywords.keys().map(String::as_str)));
    assert_eq!(used.difference(&known).collect::<Vec<_>>(), Vec::<&&str>::new());
    // A keyword that is never used would make this list a wish.
    assert_eq!(known.difference(&used).collect::<Vec<_>>(), Vec::<&&str>::new());
}

#[test]
fn every_table_of_the_schema_refuses_unknown_fields() {
    walk(&service_schema(), &mut |keywords| {
        if keywords.contains_key("properties") {
            assert_eq!(keywords.get("additionalProperties"), Some(&Value::Bool(false)), "{keywords:?}");
        }
    });
}

/// The checker reads `anyOf` as "this or nothing", `oneOf` as a list of words, and of two types the one that fits; anything
/// else would pass unchecked.
#[test]
fn alternatives_of_the_schema_are_optional_fields_and_lists_of_words() {
    walk(&service_schema(), &mut |keywords| {
        if let Some([one, other]) = keywords.get("anyOf").and_then(Value::as_array).map(Vec::as_slice) {
            assert!(one.get("$ref").is_some() && other["type"] == "null", "{keywords:?}");
        } else {
            assert!(!keywords.contains_key("anyOf"), "{keywords:?}");
        }
        for choice in keywords.get("oneOf").and_then(Value::as_array).into_iter().flatten() {
            assert!(choice.get("const").is_some_and(Value::is_string), "{choice}");
        }
        if let Some(kinds) = keywords.get("type").and_then(Value::as_array) {
            // A value may be left out, or be a number where it is exact and a table where it has bounds.
            assert_eq!(kinds.len(), 2, "{keywords:?}");
            let bounded = kinds == &["number", "object"].map(Value::from);
            assert!(bounded || kinds.contains(&Value::from("null")), "{keywords:?}");
        }
    });
}

/// What the checker lets pass, the typed shape can read: the two come from one definition, but by two derivations.
#[test]
fn a_file_with_every_optional_field_null_is_one_without_them() {
    let mut all: Value = serde_json::from_str(&example("lowlights.json")).unwrap();
    let bare = all.clone();
    let schema = service_schema();
    add_nulls(&mut all, &schema, &schema);
    assert_ne!(all, bare);
    let read = |value: &Value| parse(&value.to_string(), Format::Json).unwrap();
    assert_eq!(read(&all), read(&bare));
}

/// Writes `null` into every optional field that is absent.
fn add_nulls(value: &mut Value, schema: &Value, root: &Value) {
    let mut schema = schema;
    while let Some(inner) =
        schema.get("$ref").map(|name| &root[name.as_str().unwrap()]).or_else(|| schema.pointer("/anyOf/0"))
    {
        schema = match schema.get("$ref").and_then(Value::as_str) {
            Some(name) => root.pointer(name.strip_prefix('#').unwrap()).unwrap(),
            None => inner,
        };
    }
    match value {
        Value::Object(fields) => {
            for (name, inner) in schema["properties"].as_object().unwrap() {
                match fields.get_mut(name) {
                    Some(present) => add_nulls(present, inner, root),
                    None => drop(fields.insert(name.clone(), Value::Null)),
                }
            }
        }
        Value::Array(items) => items.iter_mut().for_each(|item| add_nulls(item, &schema["items"], root)),
        _ => {}
    }
}
