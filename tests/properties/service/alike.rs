//! What is one service, however it is written down: in which order, in which form, with which names.

use super::files::{Known, at, examples, list, named, one, some, varied, word};
use foilwork::{
    reader::Format,
    service::{parse, plan},
};
use serde_json::{Value, json};

/// The same as a TOML text: every table inline, every text in the escapes that both forms share.
fn as_toml(value: &Value) -> String {
    match value {
        Value::Object(map) => {
            let fields: Vec<String> =
                map.iter().map(|(key, value)| format!("\"{key}\" = {}", as_toml(value))).collect();
            format!("{{ {} }}", fields.join(", "))
        }
        Value::Array(entries) => format!("[{}]", entries.iter().map(as_toml).collect::<Vec<_>>().join(", ")),
        other => other.to_string(),
    }
}

#[test]
fn a_service_in_toml_and_in_json_is_one() {
    for one in some() {
        let lines = one.file.as_object().unwrap().iter().map(|(key, value)| format!("{key} = {}\n", as_toml(value)));
        let file = parse(&lines.collect::<String>(), Format::Toml).unwrap_or_else(|why| panic!("{}: {why}", one.name));
        let data = serde_json::to_value(plan(&file).unwrap()).unwrap();
        assert!(data == one.data, "{}", one.name);
    }
}

/// What lies in the bowls and on the hair of a task, whatever stands around it.
fn chemistry(one: &Known, name: &str) -> Value {
    let mut mix = named(list(&one.data, "mixes"), "name", name).clone();
    if let Some(mix) = mix.as_object_mut() {
        mix.remove("findings");
    }
    let mut lift = named(list(&one.data, "lift"), "section", name).clone();
    if let Some(lift) = lift.as_object_mut() {
        for on_the_clock in ["reached_on_clock", "looks", "seen"] {
            lift.remove(on_the_clock);
        }
    }
    let mut head = named(list(&one.data, "head.sections"), "section", name).clone();
    if let Some(head) = head.as_object_mut() {
        for counted_through in ["first_foil", "last_foil", "lowlight_places"] {
            head.remove(counted_through);
        }
    }
    let colour = named(list(&one.data, "colour"), "section", name);
    json!({ "mix": mix, "lift": lift, "head": head, "colour": colour })
}

fn names<'k>(one: &'k Known, kinds: &[&str]) -> Vec<&'k str> {
    kinds.iter().flat_map(|kind| list(&one.file, kind)).map(|entry| word(entry, "name")).collect()
}

fn alike(one: &Known, other: &Known, names: &[&str], what: &str) {
    for name in names {
        let (before, after) = (chemistry(one, name), chemistry(other, name));
        assert!(!before["mix"].is_null(), "{}: {name}", one.name);
        assert_eq!(after, before, "{}: {what}: {name}", one.name);
    }
}

/// Whether the plan times its sections to each other, so that none stands alone.
fn leaves_strengths_open(one: &Known) -> bool {
    !list(&one.data, "together").is_empty()
}

#[test]
fn sections_in_another_order_in_the_file_are_mixed_and_lift_alike() {
    for one in some().filter(|one| !leaves_strengths_open(one)) {
        let turned = one.changed(|file| file["section"].as_array_mut().unwrap().reverse());
        alike(one, &turned, &names(one, &["section", "toner"]), "sections turned");
        for key in ["look", "zones", "hair_g", "service_class"] {
            assert_eq!(turned.data["head"][key].is_null(), one.data["head"][key].is_null(), "{}: {key}", one.name);
        }
        assert_eq!(turned.data["head"]["zones"], one.data["head"]["zones"], "{}", one.name);
        assert_eq!(turned.data["booking"]["service_class"], one.data["booking"]["service_class"], "{}", one.name);
    }
}

#[test]
fn toners_in_another_order_are_the_same_toners() {
    for one in some() {
        let turned = one.changed(|file| {
            if let Some(toners) = file["toner"].as_array_mut() {
                toners.reverse();
            }
        });
        alike(one, &turned, &names(one, &["section", "toner"]), "toners turned");
        assert_eq!(turned.data["colour"], one.data["colour"], "{}", one.name);
    }
}

#[test]
fn a_shelf_in_another_order_gives_the_same_bowls() {
    for one in some() {
        let turned = one.changed(|file| {
            for kind in ["developer", "lightener", "additive", "consumable", "class_price"] {
                if let Some(entries) = file["shop"][kind].as_array_mut() {
                    entries.reverse();
                }
            }
        });
        // With which lightener hair is cleaned or lightened first goes by the order of the shop.
        if list(&one.data, "first_steps").is_empty() {
            alike(one, &turned, &names(one, &["section", "toner"]), "shelf turned");
            assert_eq!(turned.data["order"], one.data["order"], "{}", one.name);
            assert_eq!(turned.data["money"]["cost"]["total"], one.data["money"]["cost"]["total"], "{}", one.name);
            assert_eq!(turned.data["booking"], one.data["booking"], "{}", one.name);
        }
    }
}

/// Sections that nothing else in the file names, so that they can be left out.
fn can_go(one: &Known) -> Vec<usize> {
    let sections = list(&one.file, "section");
    let named_elsewhere = |name: &str| {
        let by_sections = sections.iter().any(|other| {
            let lists = ["beside", "same_foil_as"].iter().any(|key| list(other, key).iter().any(|one| one == name));
            lists || list(other, "after").iter().any(|after| after["section"] == name)
        });
        by_sections
            || list(&one.file, "toner").iter().any(|toner| list(toner, "sections").iter().any(|one| one == name))
    };
    (0..sections.len())
        .filter(|place| sections.len() > 1 && !named_elsewhere(word(&sections[*place], "name")))
        .collect()
}

#[test]
fn a_section_less_changes_nothing_of_the_others_bowls_and_lift() {
    let mut held = 0;
    for one in varied().iter().filter(|one| !leaves_strengths_open(one)) {
        for place in can_go(one) {
            let gone = word(&list(&one.file, "section")[place], "name");
            let less = one.changed(|file| drop(file["section"].as_array_mut().unwrap().remove(place)));
            let mut left = names(one, &["section"]);
            left.retain(|name| *name != gone);
            alike(one, &less, &left, gone);
            held += 1;
        }
    }
    assert!(held > 5, "{held}");
}

#[test]
fn a_section_more_at_the_end_leaves_the_others_where_they_were() {
    let mut held = 0;
    for one in some().filter(|one| !leaves_strengths_open(one)) {
        let mut last = list(&one.file, "section").last().unwrap().clone();
        last["name"] = json!("one more");
        for (field, none) in [
            ("after", json!([])),
            ("beside", json!([])),
            ("regions", json!([])),
            ("first", json!([])),
            ("used_g", Value::Null),
        ] {
            last[field] = none;
        }
        last["share_percent"] = json!(0.5);
        let mut file = one.file.clone();
        file["section"].as_array_mut().unwrap().push(last.clone());
        // A head has only so much hair in a zone.
        let Ok(more) = Known::of(&one.name, &file) else { continue };
        held += 1;
        alike(one, &more, &names(one, &["section"]), "one more");
        let begins = |plan: &Known| -> Vec<Value> {
            let steps = list(&plan.data, "order")
                .iter()
                .filter(|step| step["stage"] == "section" && step["name"] != "one more");
            steps
                .map(|step| json!([step["name"], step["begin_min"], step["applied_min"], step["rinse_by_min"]]))
                .collect()
        };
        assert_eq!(begins(&more), begins(one), "{}", one.name);
        let free = list(&one.data, "order").iter().rfind(|step| step["stage"] == "section").unwrap();
        let added = named(list(&more.data, "order"), "name", "one more");
        assert_eq!(added["begin_min"], free["applied_min"], "{}", one.name);
    }
    assert!(held > 5, "{held}");
}

#[test]
fn without_toners_and_shadow_the_sections_are_the_same() {
    for one in some() {
        let bare = one.changed(|file| {
            file["toner"] = json!([]);
            file["root_shadow"] = Value::Null;
        });
        for section in list(&one.file, "section") {
            let name = word(section, "name");
            let parts = |plan: &Known| named(list(&plan.data, "mixes"), "name", name)["bowls"].clone();
            let step = |plan: &Known| named(list(&plan.data, "order"), "name", name).clone();
            // A lightener that cleans first may be mixed with a bottle that is kept for toners.
            assert_eq!(parts(&bare), parts(one), "{}: {name}", one.name);
            assert_eq!(step(&bare), step(one), "{}: {name}", one.name);
        }
        assert_eq!(number_of(&bare, "toner") + number_of(&bare, "root-shadow"), 0, "{}", one.name);
    }
}

fn number_of(one: &Known, stage: &str) -> usize {
    list(&one.data, "mixes").iter().filter(|mix| mix["stage"] == stage).count()
}

/// 1 to 2 is 2 to 4, and one part to two parts is three to six.
#[test]
fn a_ratio_and_parts_say_only_how_things_stand_to_each_other() {
    for one in some() {
        let other = one.changed(|file| {
            for part in ["section", "toner"] {
                for entry in file[part].as_array_mut().into_iter().flatten() {
                    for shade in entry["mix"].as_array_mut().into_iter().flatten() {
                        shade["parts"] = json!(3.0 * shade["parts"].as_f64().unwrap());
                    }
                }
            }
            for kind in ["lightener", "shade"] {
                for entry in file["shop"][kind].as_array_mut().into_iter().flatten() {
                    let Some((a, b)) = entry["ratio"].as_str().and_then(|ratio| ratio.split_once(':')) else {
                        continue;
                    };
                    let [a, b] = [a, b].map(|part| 2.0 * part.trim().parse::<f64>().unwrap());
                    entry["ratio"] = json!(format!("{a}:{b}"));
                }
            }
        });
        for (before, after) in list(&one.data, "mixes").iter().zip(list(&other.data, "mixes")) {
            assert_eq!((&after["name"], &after["needed_g"]), (&before["name"], &before["needed_g"]), "{}", one.name);
            let weighed = |mix: &Value| -> Vec<Value> {
                list(mix, "bowls.0.parts").iter().map(|part| json!([part["product"], part["weigh_g"]])).collect()
            };
            assert_eq!(weighed(after), weighed(before), "{}: {}", one.name, before["name"]);
        }
        assert_eq!(other.data["order"], one.data["order"], "{}", one.name);
        assert_eq!(other.data["money"]["cost"], one.data["money"]["cost"], "{}", one.name);
    }
}

/// Days in a text, a fortnight later.
fn later(text: &str) -> String {
    let mut moved = String::new();
    let mut at = 0;
    while at < text.len() {
        let day =
            text.get(at..at + 10).filter(|day| day.starts_with("20") && day.as_bytes()[4] == b'-').and_then(|day| {
                day.parse::<jiff::civil::Date>().ok().map(|day| day.saturating_add(jiff::Span::new().days(14)))
            });
        match day {
            Some(day) => {
                moved.push_str(&day.to_string());
                at += 10;
            }
            None => {
                let next = text[at..].chars().next().unwrap();
                moved.push(next);
                at += next.len_utf8();
            }
        }
    }
    moved
}

/// Everything that is dated goes along: tests, earlier services, agreements.
#[test]
fn the_same_service_a_fortnight_later_is_the_same() {
    for one in some() {
        let moved: Value = serde_json::from_str(&later(&one.file.to_string())).unwrap();
        let moved = Known::of(&one.name, &moved).unwrap();
        for key in ["start", "consulted", "order", "day", "lift", "head", "colour", "stock", "money", "mixes"] {
            let want = later(&one.data[key].to_string());
            let got = moved.data[key].to_string();
            assert!(got == want, "{}: {key}: {got} and {want}", one.name);
        }
        // Acts keep their dates.
        let said = |plan: &Known, move_on: &dyn Fn(&str) -> String| -> Vec<String> {
            let found = list(&plan.data, "findings").iter();
            found.map(|found| format!("{}: {}", found["verdict"], move_on(word(found, "text")))).collect()
        };
        assert_eq!(said(&moved, &str::to_owned), said(one, &later), "{}", one.name);
    }
}

/// Nothing of a plan reads the clock of the wall.
#[test]
fn an_hour_later_is_the_same_service_an_hour_later() {
    let base = one("soft-gradient");
    let later = base.with(json!({ "service.start": "2026-11-25T11:00:00" }));
    for key in ["order", "day", "mixes", "lift", "head", "stock", "colour", "money", "chair"] {
        assert_eq!(base.data[key], later.data[key], "{key}");
    }
}

/// The place of a field in plain data: lists are counted from one in `section[2].on_scalp`.
fn place(field: &str) -> String {
    let parts = field.split('.').map(|part| match part.trim_end_matches(']').split_once('[') {
        Some((list, place)) => format!("{list}.{}", place.parse::<usize>().unwrap() - 1),
        None => part.to_owned(),
    });
    parts.collect::<Vec<_>>().join(".")
}

/// What a plan reckons, without what it rests on and what it says.
fn reckoned(value: &Value) -> Value {
    match value {
        Value::Object(map) => {
            let kept = map.iter().filter(|(key, _)| !["findings", "defaults", "levers"].contains(&key.as_str()));
            kept.map(|(key, value)| (key.clone(), reckoned(value))).collect()
        }
        Value::Array(entries) => entries.iter().map(reckoned).collect(),
        Value::String(_) => Value::Null,
        other => other.clone(),
    }
}

#[test]
fn a_default_is_of_a_field_that_is_not_stated_and_written_down_changes_no_number() {
    let mut held = 0;
    for one in examples() {
        for used in list(&one.data, "defaults") {
            let field = place(word(used, "field"));
            assert!(at(&one.file, &field).is_null(), "{}: {field} is stated", one.name);
            let (kind, value) = used["value"].as_object().unwrap().iter().next().unwrap();
            // An estimate is more than its best number, and from when a time counts is told beside it.
            if value.is_object() || kind == "counts_from" {
                continue;
            }
            let stated = one.with(json!({ field.clone(): value }));
            assert!(list(&stated.data, "defaults").iter().all(|other| other["field"] != used["field"]), "{field}");
            for key in ["mixes", "order", "day", "chair", "lift", "head", "money", "stock", "colour"] {
                assert_eq!(reckoned(&stated.data[key]), reckoned(&one.data[key]), "{}: {field}: {key}", one.name);
            }
            held += 1;
        }
    }
    assert!(held > 30, "{held}");
}

/// A name says nothing: with others the plan is the same, but for the names.
#[test]
fn sections_under_other_names_are_the_same_sections() {
    for file in ["finish-together", "staged-lightening", "grey-blend", "lowlights"] {
        let one = one(file);
        let names: Vec<String> = names(one, &["section"]).into_iter().map(str::to_owned).collect();
        let rename = |value: &mut Value| {
            let place = names.iter().position(|name| value == name.as_str());
            if let Some(place) = place {
                *value = json!(format!("part{place}"));
            }
        };
        let other = one.changed(|file| {
            for section in file["section"].as_array_mut().unwrap() {
                rename(&mut section["name"]);
                for after in section["after"].as_array_mut().into_iter().flatten() {
                    rename(&mut after["section"]);
                }
            }
            for toner in file["toner"].as_array_mut().into_iter().flatten() {
                toner["sections"].as_array_mut().into_iter().flatten().for_each(rename);
            }
        });
        for key in
            ["mixes", "order", "day", "chair", "lift", "head", "money", "stock", "colour", "together", "strengths"]
        {
            assert_eq!(reckoned(&other.data[key]), reckoned(&one.data[key]), "{}: {key}", one.name);
        }
        let verdicts = |plan: &Known| -> Vec<Value> {
            list(&plan.data, "findings").iter().map(|finding| json!([finding["rule"], finding["verdict"]])).collect()
        };
        assert_eq!(verdicts(&other), verdicts(one), "{}", one.name);
    }
}

#[test]
fn seconds_and_zeros_that_say_nothing_change_nothing() {
    for one in examples() {
        let other = one.changed(|file| {
            let text = file["service"]["start"].as_str().unwrap().trim_end_matches(":00").to_owned();
            file["service"]["start"] = json!(if text.len() == 13 { format!("{text}:00") } else { text });
        });
        assert!(other.data == one.data, "{}", one.name);
    }
}
