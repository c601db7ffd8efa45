//! Every field of a service file is used by a check or a computation, shown as it is, or named as stated and not used.

use super::base::{changed, fine, only_colour};
use foilwork::{
    colour::Instrument,
    hair::{DensityByEye, Texture},
    service::{
        Plan, ServiceFile,
        shape::{ExistingColour, Zone},
    },
};
use serde_json::Value;
use std::collections::BTreeSet;

/// The leaves below a schema, as paths with `[]` for the items of a list.
fn leaves(schema: &Value, root: &Value, path: &str, found: &mut BTreeSet<String>) {
    let named = schema.get("$ref").and_then(Value::as_str).and_then(|name| name.strip_prefix("#/$defs/"));
    if let Some(name) = named {
        return leaves(&root["$defs"][name], root, path, found);
    }
    let either = ["anyOf", "oneOf", "allOf"].iter().filter_map(|key| schema.get(key)?.as_array()).flatten();
    let tables: Vec<&Value> =
        either.filter(|one| one.get("$ref").is_some() || one.get("properties").is_some()).collect();
    if !tables.is_empty() {
        return tables.into_iter().for_each(|one| leaves(one, root, path, found));
    }
    if let Some(properties) = schema.get("properties").and_then(Value::as_object) {
        for (name, below) in properties {
            let path = if path.is_empty() { name.clone() } else { format!("{path}.{name}") };
            leaves(below, root, &path, found);
        }
    } else if let Some(items) = schema.get("items") {
        leaves(items, root, &format!("{path}[]"), found);
    } else {
        found.insert(path.to_owned());
    }
}

fn table() -> Vec<(String, String, String)> {
    let mut rows = csv::Reader::from_path("tests/data/service/fields.csv").unwrap();
    rows.deserialize().map(Result::unwrap).collect()
}

/// The shop's fields are facts of products and prices, held by the tests of the shop.
#[test]
fn every_field_has_its_use_on_the_list() {
    let schema: Value = serde_json::from_str(include_str!("../../../examples/service.schema.json")).unwrap();
    let mut found = BTreeSet::new();
    leaves(&schema, &schema, "", &mut found);
    let of_service: BTreeSet<String> = found.into_iter().filter(|path| !path.starts_with("shop.")).collect();
    assert!(of_service.contains("analysis.natural_level"), "the walk finds fields");
    let listed: BTreeSet<String> = table().into_iter().map(|row| row.0).collect();
    assert_eq!(of_service, listed, "say in tests/data/service/fields.csv what uses each field");
    for (field, how, by) in table() {
        assert!(["used", "shown", "stated, not used"].contains(&how.as_str()), "{field}: {how}");
        assert_eq!(how == "used", !by.is_empty(), "{field}: what uses it?");
    }
}

fn everything_stated() -> Plan {
    changed(fine(), |file| {
        file.analysis.texture = Some(Texture::Fine);
        file.analysis.density = Some(DensityByEye::Medium);
        file.analysis.length_cm = Some(40.0);
        file.analysis.existing = vec![ExistingColour {
            zone: Some(Zone::Ends),
            level: 7.0,
            tone: Some("gold".to_owned()),
            artificial: false,
            ..ExistingColour::default()
        }];
        file.section[0].target_tone = Some("no warmth".to_owned());
        file.section[0].area = serde_json::from_value(serde_json::json!("nape")).ok();
    })
}

#[test]
fn what_nothing_reads_is_named() {
    let named: BTreeSet<&str> = everything_stated().stated_not_used.iter().map(|fact| fact.field).collect();
    let listed = table();
    let listed: BTreeSet<&str> =
        listed.iter().filter(|row| row.1 == "stated, not used").map(|row| row.0.as_str()).collect();
    assert_eq!(named, listed);
    assert!(everything_stated().to_string().contains("STATED, NOT USED"));
}

fn reading() -> Option<String> {
    Some("57.0, 4.5, 28.6".to_owned())
}

fn orange() -> Option<String> {
    Some("orange".to_owned())
}

/// A fact that another one outweighs is named too, so that nobody relies on it.
#[test]
fn what_another_fact_outweighs_is_named() {
    let named = |change: fn(&mut ServiceFile)| {
        let plan = changed(fine(), change);
        plan.stated_not_used.iter().map(|fact| fact.field).collect::<Vec<_>>()
    };
    assert!(named(|_| ()).is_empty());
    assert_eq!(
        named(|file| (file.section[0].measured, file.section[0].seen) = (reading(), orange())),
        ["section[].seen"]
    );
    assert_eq!(named(|file| (file.analysis.measured, file.analysis.seen) = (reading(), orange())), ["analysis.seen"]);
    assert_eq!(
        named(|file| file.section[0].measured_with = Some(Instrument::Spectrophotometer)),
        ["section[].measured_with"]
    );
    assert_eq!(named(|file| file.finish.within_min = Some(5.0)), ["finish"]);
    let own = named(|file| {
        file.analysis.seen = orange();
        file.section.iter_mut().for_each(|section| section.seen = orange());
    });
    assert_eq!(own, ["analysis.seen"]);
}

/// A fact is used as soon as there is what it is for: a reading for an instrument, lightener for a cover, a map for a part.
#[test]
fn what_is_needed_is_not_named() {
    let named = |file: ServiceFile, change: fn(&mut ServiceFile)| {
        changed(file, change).stated_not_used.iter().map(|fact| fact.field).collect::<Vec<_>>()
    };
    let instrument = |file: &mut ServiceFile| file.analysis.measured_with = Some(Instrument::Spectrophotometer);
    assert_eq!(named(fine(), instrument), ["analysis.measured_with"]);
    let read = |file: &mut ServiceFile| {
        (file.analysis.measured, file.analysis.measured_with) = (reading(), Some(Instrument::Spectrophotometer));
    };
    assert_eq!(named(fine(), read), [""; 0]);
    let of_section = |file: &mut ServiceFile| {
        let section = &mut file.section[0];
        (section.measured, section.measured_with) = (reading(), Some(Instrument::Spectrophotometer));
    };
    assert_eq!(named(fine(), of_section), [""; 0]);
    let cover = |file: &mut ServiceFile| file.section[0].cover = Some(foilwork::lift::Cover::Foil);
    assert_eq!(named(only_colour(), cover), ["section[].cover"]);
    assert_eq!(named(fine(), cover), [""; 0]);
    assert_eq!(named(fine(), |file| file.finish.tolerance_levels = Some(0.5)), ["finish"]);
    let part = |file: &mut ServiceFile| file.service.part = Some(foilwork::head::PartLine::Left);
    assert_eq!(named(fine(), part), ["service.part"]);
    let on_the_map = |file: &mut ServiceFile| {
        file.service.part = Some(foilwork::head::PartLine::Left);
        file.section[0].share_percent = Some(5.0);
        file.section[0].regions = serde_json::from_str(r#"[{"name": "crown"}]"#).unwrap();
    };
    assert_eq!(named(fine(), on_the_map), [""; 0]);
    let seen_alone = |file: &mut ServiceFile| file.analysis.seen = orange();
    assert_eq!(named(fine(), seen_alone), [""; 0]);
}
