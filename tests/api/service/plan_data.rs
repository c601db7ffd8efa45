//! The plan as plain data: its schema is current, every number says its unit, every estimate keeps its bounds.

use super::base::{changed, example, fine, only_colour, shop};
use foilwork::{
    colour::{Chroma, Lightness, Redness, Yellowness},
    finding::Rule,
    hair::{GrowthRate, HairCount, MassPerLength, Weeks},
    quantity::{Area, Duration, Length, Mass, MassFraction, Quantity, Share, Temperature},
    reader::Format,
    service::{
        Unknown, plan_schema, plan_text,
        shape::{ExistingColour, Zone},
    },
};
use rstest::rstest;
use serde_json::{Map, Value};

const EXAMPLES: [&str; 3] = ["soft-gradient.toml", "grey-blend.toml", "lowlights.json"];

#[test]
fn the_schema_in_examples_is_current() {
    let written: Value = serde_json::from_str(&example("plan.schema.json")).unwrap();
    assert!(written == plan_schema(), "renew it: foilwork schema --plan --output examples/plan.schema.json");
}

/// How a unit ends the name of a field: the keys of the quantities, and those of the level scale.
fn key(unit: &str) -> &'static str {
    let keys = [
        (Mass::UNIT, Mass::KEY),
        (MassFraction::UNIT, MassFraction::KEY),
        (Duration::UNIT, Duration::KEY),
        (Share::UNIT, Share::KEY),
        (Length::UNIT, Length::KEY),
        (Area::UNIT, Area::KEY),
        (Temperature::UNIT, Temperature::KEY),
        (Lightness::UNIT, Lightness::KEY),
        (Redness::UNIT, Redness::KEY),
        (Yellowness::UNIT, Yellowness::KEY),
        (HairCount::UNIT, "hair"),
        (MassPerLength::UNIT, MassPerLength::KEY),
        (Weeks::UNIT, "week"),
        (GrowthRate::UNIT, GrowthRate::KEY),
        (Chroma::UNIT, Chroma::KEY),
        ("level", "level"),
        ("levels", "level"),
    ];
    keys.iter().find(|(known, _)| *known == unit).map(|(_, key)| *key).unwrap_or_else(|| panic!("unknown unit {unit}"))
}

/// The units of all numbers that a schema leads to without passing through a field with a name of its own.
fn units<'s>(schema: &'s Value, root: &'s Value, found: &mut Vec<&'s str>) {
    found.extend(schema.get("x-unit").and_then(Value::as_str));
    if let Some(name) = schema.get("$ref").and_then(Value::as_str) {
        let target = root.pointer(name.trim_start_matches('#')).unwrap();
        // The bounds of an interval take the name of the field that holds it.
        if is_interval(target) {
            units(&target["properties"]["best"], root, found);
        }
    }
    for key in ["anyOf", "items", "prefixItems"] {
        match schema.get(key) {
            Some(Value::Array(inner)) => inner.iter().for_each(|inner| units(inner, root, found)),
            Some(inner) => units(inner, root, found),
            None => {}
        }
    }
}

fn is_interval(schema: &Value) -> bool {
    let fields = schema.get("properties").and_then(Value::as_object);
    fields.is_some_and(|fields| ["low", "best", "high"].iter().all(|name| fields.contains_key(*name)))
}

fn tables<'s>(schema: &'s Value, visit: &mut impl FnMut(&'s Map<String, Value>)) {
    match schema {
        Value::Object(keywords) => {
            if let Some(Value::Object(fields)) = keywords.get("properties")
                && !is_interval(schema)
            {
                visit(fields);
            }
            keywords.values().for_each(|inner| tables(inner, visit));
        }
        Value::Array(items) => items.iter().for_each(|inner| tables(inner, visit)),
        _ => {}
    }
}

#[test]
fn the_name_of_every_number_ends_with_its_unit() {
    let root = plan_schema();
    let mut seen = 0;
    tables(&root, &mut |fields| {
        for (name, schema) in fields {
            let mut found = Vec::new();
            units(schema, &root, &mut found);
            for unit in found {
                seen += 1;
                assert!(name.trim_end_matches('s').ends_with(key(unit)), "{name} is in {unit}");
            }
        }
    });
    assert!(seen > 25, "only {seen} numbers with a unit");
}

#[rstest]
fn the_data_has_the_fields_of_the_schema(#[values(0, 1, 2)] which: usize) {
    let name = EXAMPLES[which];
    let plan = plan_text(&example(name), Format::of_name(name)).unwrap();
    let data = serde_json::to_value(&plan).unwrap();
    let schema = plan_schema();
    let names = |value: &Value| value.as_object().unwrap().keys().cloned().collect::<Vec<_>>();
    assert_eq!(names(&data), names(&schema["properties"]));
    assert_eq!((&data["format"], &data["blocked"]), (&Value::from(1), &Value::from(false)));
}

#[test]
fn the_data_says_that_a_plan_is_blocked() {
    let blocked = changed(fine(), |file| file.analysis.scalp = None);
    assert_eq!(serde_json::to_value(&blocked).unwrap()["blocked"], false, "unknown does not block");
    let blocked = changed(fine(), |file| file.analysis.elasticity = Some(foilwork::service::shape::Elasticity::Poor));
    assert_eq!(serde_json::to_value(&blocked).unwrap()["blocked"], true);
}

#[test]
fn findings_are_the_worst_first_and_each_names_a_rule_and_a_source() {
    for name in EXAMPLES {
        let plan = plan_text(&example(name), Format::of_name(name)).unwrap();
        assert!(plan.findings.is_sorted_by_key(|finding| finding.verdict), "{name}");
        for finding in &plan.findings {
            assert!(Rule::ALL.contains(&finding.rule) && !finding.sources.is_empty(), "{finding:?}");
        }
    }
}

/// A natural level that may be off by 3 levels leaves its bounds on the lift: 6 to 9 is 3, and 0 to 6 in the bounds.
#[test]
fn a_stated_margin_reaches_the_lift() {
    let plan = changed(fine(), |file| file.analysis.natural_level_plus_minus = Some(3.0));
    let change = plan.colour[0].change_levels.to_array().map(|change| change.levels());
    assert_eq!(change, [0.0, 3.0, 6.0]);
}

/// A label of 20 volumes in a cream is an estimate, and stays one in every number that is worked out from it.
#[test]
fn a_strength_with_bounds_stays_one() {
    let plan = changed(only_colour(), |file| {
        shop(file).developer[0].strength = "20 vol label".to_owned();
        shop(file).developer[0].cream = Some(true);
    });
    let mix = &plan.mixes[0];
    assert!(!mix.developer.is_exact() && !mix.on_hair.is_exact() && !mix.bowls[0].on_hair.is_exact());
    // Colour to developer is 1:1, so half of each bound lies on the hair.
    for (on_hair, developer) in mix.on_hair.to_array().iter().zip(mix.developer.to_array()) {
        assert!((2.0 * on_hair.ww_percent() - developer.ww_percent()).abs() < 1e-9);
    }
    assert!(plan_text(&example(EXAMPLES[1]), Format::Toml).unwrap().mixes.iter().any(|mix| !mix.on_hair.is_exact()));
    assert!(changed(fine(), |_| {}).mixes.iter().all(|mix| mix.on_hair.is_exact()));
}

/// What is missing is listed while it is missing: the compositions are not, once every product is declared in full.
#[test]
fn undeclared_compositions_are_listed_while_there_are_any() {
    let listed = |declared| {
        let plan = changed(fine(), |file| shop(file).lightener[0].declared_in_full = declared);
        plan.not_computed.iter().any(|missing| missing.what == Unknown::Compositions)
    };
    assert!(listed(false) && !listed(true));
}

/// Lightened ends hold no artificial colour and are not natural for that.
#[rstest]
#[case::lightened(8.0, false, "level 8, lighter than it grows, no artificial colour")]
#[case::as_it_grows(6.0, false, "level 6, natural")]
#[case::coloured(8.0, true, "level 8, artificial colour")]
fn the_sheet_says_what_hair_it_is(#[case] level: f64, #[case] artificial: bool, #[case] want: &str) {
    let plan = changed(fine(), |file| {
        file.analysis.existing =
            vec![ExistingColour { zone: Some(Zone::Ends), level, tone: None, artificial, ..ExistingColour::default() }];
    });
    let sheet = plan.to_string().split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(sheet.contains(&format!("ends {want}")), "{sheet}");
}
