//! What `fields.csv` says of each field is tried out: another value of a field that is used changes what the plan works
//! out, another value of one that is not changes only what the plan repeats.

use super::base::fine;
use foilwork::{
    reader::Format,
    service::{parse, plan},
    sheet::bench_sheet,
};
use serde_json::{Map, Value};
use std::collections::BTreeMap;

/// What a plan repeats from its file, beside what it works out.
const REPEATED: [&str; 9] =
    ["title", "guest", "colourist", "notes", "start", "jurisdiction", "hair", "defaults", "stated_not_used"];

/// Fields whose other value no plan takes: the next format, hair that no section has, and a shop whose file nobody reads here.
const REFUSED: [&str; 3] = ["format", "service.rest", "shop_file"];

/// Sets places such as `section.0.apply_min`; nothing removes one, and a place after the last of a list adds it.
pub(crate) fn set(file: &mut Value, changes: &Map<String, Value>) {
    for (path, value) in changes {
        let value = match value.as_str().and_then(|text| text.strip_prefix("copy of ")) {
            Some(other) => file.pointer(&format!("/{}", other.replace('.', "/"))).unwrap().clone(),
            None => value.clone(),
        };
        let (parents, last) = path.rsplit_once('.').unwrap_or(("", path));
        let mut at = &mut *file;
        for part in parents.split('.').filter(|part| !part.is_empty()) {
            at = match part.parse::<usize>() {
                Ok(place) => &mut at[place],
                Err(_) => &mut at[part],
            };
            if at.is_null() {
                *at = Value::Object(Map::new());
            }
        }
        match (at, last.parse::<usize>()) {
            (Value::Array(list), Ok(place)) if place == list.len() => list.push(value),
            (Value::Array(list), Ok(place)) => list[place] = value,
            (at, _) => at[last] = value,
        }
    }
}

/// Empty fields are left out, as a file would.
pub(crate) fn without_nulls(value: Value) -> Value {
    match value {
        Value::Object(map) => {
            Value::Object(map.into_iter().filter(|(_, v)| !v.is_null()).map(|(k, v)| (k, without_nulls(v))).collect())
        }
        Value::Array(list) => Value::Array(list.into_iter().map(without_nulls).collect()),
        other => other,
    }
}

/// What the plan works out, the sheet, and what it names as not used; or why there is no plan.
fn worked_out(file: &Value) -> Result<(Value, String, Vec<String>), String> {
    let text = without_nulls(file.clone()).to_string();
    let plan = parse(&text, Format::Json).and_then(|file| plan(&file)).map_err(|problems| problems.to_string())?;
    let mut data = serde_json::to_value(&plan).unwrap();
    let unused = plan.stated_not_used.iter().map(|fact| fact.field.to_owned()).collect();
    for key in REPEATED {
        data.as_object_mut().unwrap().remove(key);
    }
    Ok((data, bench_sheet(&plan), unused))
}

fn object(text: &str) -> Map<String, Value> {
    if text.is_empty() { Map::new() } else { serde_json::from_str(text).unwrap() }
}

#[test]
fn what_the_list_says_of_each_field_is_so() {
    let rows = |name: &str| csv::Reader::from_path(format!("tests/data/service/{name}")).unwrap();
    let changes: BTreeMap<String, (String, String)> = rows("field_changes.csv")
        .deserialize()
        .map(Result::unwrap)
        .map(|(field, given, change)| (field, (given, change)))
        .collect();
    let mut wrong = Vec::new();
    for row in rows("fields.csv").deserialize() {
        let (field, how, _): (String, String, String) = row.unwrap();
        let Some((given, change)) = changes.get(&field) else {
            wrong.push(format!("{field}: give another value for it in tests/data/service/field_changes.csv"));
            continue;
        };
        let mut file = serde_json::to_value(fine()).unwrap();
        set(&mut file, &object(given));
        let before = match worked_out(&file) {
            Ok(before) => before,
            Err(problems) => {
                wrong.push(format!("{field}: the file before the change: {problems}"));
                continue;
            }
        };
        set(&mut file, &object(change));
        let after = worked_out(&file);
        // What is refused is read; that must be meant.
        if let (Err(problems), false) = (&after, REFUSED.contains(&field.as_str())) {
            wrong.push(format!("{field}: the file after the change: {problems}"));
            continue;
        }
        let after = after.as_ref();
        let same = after.is_ok_and(|after| after.0 == before.0);
        match (how.as_str(), same) {
            ("used", true) => wrong.push(format!("{field}: used, but the plan works out the same")),
            ("shown", true) if after.is_ok_and(|after| after.1 == before.1) => {
                wrong.push(format!("{field}: shown, but the sheet is the same"));
            }
            ("stated, not used", true) if !after.is_ok_and(|after| after.2.contains(&field)) => {
                wrong.push(format!("{field}: not used, and not named so"));
            }
            ("stated, not used", false) => wrong.push(format!("{field}: not used, but the plan changes")),
            _ => {}
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
