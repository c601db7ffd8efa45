//! What a plan leaves open or does not read, found a second time in the words of the file; and on what a look rests.

use super::{
    anew::plans,
    files::{Known, at, bounds, list, named, number, one, product, word},
};
use crate::api::service::{base::fine, field_use::without_nulls};
use foilwork::{quantity::Share, text::in_hundred};
use serde_json::{Value, json};

fn is_in_foil(section: &Value) -> bool {
    ["weave", "slice", "back-comb", "freehand-in-foil"].contains(&word(section, "technique"))
}

fn lightens(one: &Known, section: &Value) -> bool {
    section["product"].as_str().is_some_and(|name| !named(list(&one.file, "shop.lightener"), "name", name).is_null())
}

fn is_open(one: &Known, section: &Value) -> bool {
    lightens(one, section) && section["developer"].is_null() && section["strength"].is_null()
}

/// What is not computed, by the file: a list in the order in which it is told.
fn not_computed(one: &Known) -> Vec<&'static str> {
    let sections = list(&one.file, "section");
    let lit = sections.iter().any(|section| lightens(one, section));
    let open = sections.iter().any(|section| is_open(one, section));
    let curl = &one.file["analysis"]["curl"];
    // Every product that is mixed with developer states its pH, or the pH of the mixes is not known.
    let no_ph = list(&one.data, "mixes").iter().filter(|mix| !mix["ratio"].is_null()).any(|mix| {
        let parts = list(mix, "bowls.0.parts").iter();
        let mut products = parts.filter(|part| ["lightener", "colour"].contains(&word(part, "kind")));
        products.any(|part| product(&one.file, word(part, "product"))["mixed_ph"].is_null())
    });
    let all = [
        ("lift-against-time", !lit),
        ("finish-together", lit && !open),
        ("hair-mass", one.file["analysis"]["length_cm"].is_null()),
        ("curl", !curl.is_null() && curl != "straight"),
        ("foil-layout", sections.iter().any(|section| is_in_foil(section) && section["panel"].is_null())),
        ("dark-foils", sections.iter().any(|section| !section["lowlights"].is_null())),
        ("compositions", list(&one.data, "mixes").iter().any(|mix| !list(mix, "undeclared").is_empty())),
        ("ph", no_ph),
        ("money", at(&one.file, "shop.currency").is_null()),
        ("toner", lit && list(&one.file, "toner").is_empty()),
    ];
    all.into_iter().filter(|(_, missing)| *missing).map(|(what, _)| what).collect()
}

#[test]
fn what_is_not_computed_is_named_and_nothing_else() {
    let mut seen: Vec<&str> = Vec::new();
    let ph = |name: &str| {
        let stated = one(name).changed(|file| {
            for kind in ["lightener", "shade"] {
                for entry in file["shop"][kind].as_array_mut().into_iter().flatten() {
                    entry["mixed_ph"] = json!(9.5);
                }
            }
        });
        let places = list(&stated.file, "shop.lightener").len();
        let without = (0..places).map(|place| stated.with(json!({ format!("shop.lightener.{place}.mixed_ph"): null })));
        without.chain([stated.clone()]).collect::<Vec<_>>()
    };
    let more: Vec<Known> = ["soft-gradient", "gloss"].into_iter().flat_map(ph).collect();
    for one in plans().iter().chain(&more) {
        let got: Vec<&str> = list(&one.data, "not_computed").iter().map(|missing| word(missing, "what")).collect();
        let want = not_computed(one);
        assert_eq!(got, want, "{}", one.name);
        seen.extend(want);
    }
    seen.sort_unstable();
    let often = |what: &&str| seen.iter().filter(|seen| *seen == what).count();
    let each = [
        "lift-against-time",
        "finish-together",
        "hair-mass",
        "curl",
        "foil-layout",
        "dark-foils",
        "compositions",
        "ph",
        "money",
        "toner",
    ];
    assert!(each.iter().all(|what| often(what) > 0), "{seen:?}");
}

/// What the file states and nothing reads, by the file: in the order of the list.
fn not_used(one: &Known) -> Vec<&'static str> {
    let (analysis, sections) = (&one.file["analysis"], list(&one.file, "section"));
    let has = |value: &Value, field: &str| !value[field].is_null();
    let own = sections.iter().all(|section| has(section, "measured") || has(section, "seen"));
    let mapped = sections.iter().any(|section| !list(section, "regions").is_empty());
    let asks = |section: &Value| {
        let counted = has(section, "foils") || has(section, "panel");
        let placed = has(section, "share_percent") && (has(section, "start_cm") || has(section, "over_directed"));
        !(list(section, "regions").is_empty() || counted && placed)
    };
    let finish = &one.file["finish"];
    let all = [
        ("analysis.measured", has(analysis, "measured") && own),
        ("analysis.seen", has(analysis, "seen") && (own || has(analysis, "measured"))),
        ("analysis.measured_with", has(analysis, "measured_with") && !has(analysis, "measured")),
        ("analysis.existing[].tone", list(analysis, "existing").iter().any(|there| has(there, "tone"))),
        ("section[].area", sections.iter().any(|section| has(section, "area"))),
        ("section[].cover", sections.iter().any(|section| has(section, "cover") && !lightens(one, section))),
        ("section[].seen", sections.iter().any(|section| has(section, "seen") && has(section, "measured"))),
        (
            "section[].measured_with",
            sections.iter().any(|section| has(section, "measured_with") && !has(section, "measured")),
        ),
        ("gradient", has(&one.file, "gradient") && !sections.iter().any(asks)),
        ("service.outline", has(&one.file["service"], "outline") && !mapped),
        ("service.part", has(&one.file["service"], "part") && !mapped),
        (
            "finish",
            (has(finish, "within_min") || has(finish, "tolerance_levels"))
                && !sections.iter().any(|section| is_open(one, section)),
        ),
    ];
    all.into_iter().filter(|(_, unused)| *unused).map(|(field, _)| field).collect()
}

/// Ways to fill in a few fields of the small service with two sections, drawn by a fixed rule: each field in each of its ways.
fn filled(seed: usize) -> Value {
    let mut file = without_nulls(serde_json::to_value(fine()).unwrap());
    let mut drawn = seed;
    let mut draw = |ways: usize| {
        drawn = (drawn * 1_103_515_245 + 12_345) % 2_147_483_648;
        (drawn >> 8) % ways
    };
    file["analysis"]["length_cm"] = json!(30);
    let mut second = file["section"][0].clone();
    second["name"] = json!("second");
    if draw(2) == 0 {
        second["product"] = json!("J6");
        second["target_level"] = json!(6);
    }
    file["section"].as_array_mut().unwrap().push(second);
    let looks = |value: &mut Value, ways: usize| {
        if ways & 1 == 1 {
            value["measured"] = json!("57, 5, 28");
        }
        if ways & 2 == 2 {
            value["seen"] = json!("orange");
        }
        if ways & 4 == 4 {
            value["measured_with"] = json!("calibrated-photograph");
        }
    };
    looks(&mut file["analysis"], draw(8));
    let tone = [Value::Null, json!("gold")][draw(2)].clone();
    file["analysis"]["existing"] = json!([{ "zone": "ends", "level": 7.5, "tone": tone, "artificial": false }]);
    for (place, region) in ["crown", "top"].into_iter().enumerate() {
        let section = &mut file["section"][place];
        section["share_percent"] = json!(4);
        looks(section, draw(8));
        if draw(3) == 0 {
            section["area"] = json!("the parting");
        }
        if draw(3) == 0 {
            section["cover"] = json!("film");
        }
        if draw(2) == 0 {
            section["regions"] = json!([{ "name": region }]);
        }
        match draw(4) {
            0 => section["start_cm"] = json!(2),
            1 => section["over_directed"] = json!({ "ahead_cm": 2, "out_cm": 5, "panel_depth_cm": 4 }),
            2 => section["share_percent"] = Value::Null,
            _ => {}
        }
        match draw(3) {
            0 => section["foils"] = Value::Null,
            1 => {
                section["foils"] = Value::Null;
                section["panel"] = json!({ "width_cm": 8, "height_cm": 6 });
            }
            _ => {}
        }
        if draw(4) == 0 {
            section["developer"] = Value::Null;
        }
    }
    if draw(2) == 0 {
        file["gradient"] = json!({ "start_outline_cm": 1, "start_interior_cm": 4, "share_outline_percent": 60,
                                   "share_interior_percent": 20, "foils": 20 });
    }
    file["service"]["outline"] = [Value::Null, json!("soft")][draw(2)].clone();
    file["service"]["part"] = [Value::Null, json!("left")][draw(2)].clone();
    match draw(3) {
        0 => file["finish"] = json!({ "within_min": 5 }),
        1 => file["finish"] = json!({ "tolerance_levels": 1 }),
        _ => {}
    }
    file
}

#[test]
fn what_is_stated_and_not_read_is_named_and_nothing_else() {
    let drawn = (1..400).filter_map(|seed| Known::of(&format!("draw {seed}"), &filled(seed)).ok());
    let drawn: Vec<Known> = drawn.take(90).collect();
    assert!(drawn.len() > 60, "{}", drawn.len());
    let mut seen: Vec<&str> = Vec::new();
    for one in plans().iter().chain(&drawn) {
        let got: Vec<&str> = list(&one.data, "stated_not_used").iter().map(|unused| word(unused, "field")).collect();
        let want = not_used(one);
        assert_eq!(got, want, "{}: {}", one.name, one.file);
        seen.extend(want);
    }
    seen.sort_unstable();
    seen.dedup();
    assert!(seen.len() >= 11, "{seen:?}");
}

/// A look of the head is that of the targets: it says which section is the least likely to reach its own, and how likely.
#[test]
fn a_look_rests_on_the_section_that_is_least_likely() {
    let mut held = 0;
    for one in plans() {
        let chance = |lift: &Value| bounds(lift, "chance_percent");
        let least = list(&one.data, "lift").iter().reduce(|a, b| if chance(b)[1] < chance(a)[1] { b } else { a });
        for found in list(&one.data, "findings").iter().filter(|found| found["rule"] == "head-reads") {
            let text = word(found, "text");
            if !text.contains("reads so ") {
                continue;
            }
            let Some(least) = least else {
                assert!(!text.contains("reaches its target"), "{}: {text}", one.name);
                continue;
            };
            let [low, best, high] = chance(least).map(|percent| in_hundred(Share::from_percent(percent).unwrap()));
            let told = if chance(least)[0] == chance(least)[2] { best } else { format!("{best} ({low} to {high})") };
            let want = format!(", if every section reaches its target ({}: {told} of 100)", word(least, "section"));
            assert!(text.contains("does not read so") || text.ends_with(&want), "{}: {text}: {want}", one.name);
            let sure = number(least, "chance_percent.best") >= 50.0;
            assert!(found["verdict"] != "passed" || sure, "{}: {text}", one.name);
            held += 1;
        }
    }
    assert!(held > 0, "{held}");
}

/// From when a longest time counts is a default of each lightener and shade that states one and is used, and of every shade where a look
/// is searched for.
#[test]
fn from_when_a_time_counts_is_a_default_of_what_is_used() {
    let (mut held, mut searched_once) = (0, false);
    let silent = |name: &str, more: Value| {
        one(name).with(more).changed(|file| {
            for kind in ["lightener", "shade"] {
                for (place, entry) in file["shop"][kind].as_array_mut().into_iter().flatten().enumerate() {
                    // Every third of them says so itself.
                    if place % 3 != 2 {
                        entry["longest_counts_from"] = Value::Null;
                    }
                }
            }
        })
    };
    let look = json!({ "section.0.target": { "level": 9, "tones": ["violet"] }, "section.0.mix": [] });
    for one in [
        silent("soft-gradient", json!({})),
        silent("soft-gradient", json!({ "shop.lightener.0.longest_min": null, "shop.shade.0.longest_min": null })),
        silent("grey-blend", json!({})),
        silent("staged", json!({})),
        silent("gloss", json!({})),
        silent("gloss", look),
        silent("lowlights", json!({})),
    ] {
        let entries =
            ["section", "toner"].into_iter().flat_map(|kind| list(&one.file, kind)).chain([&one.file["root_shadow"]]);
        let searched = entries.clone().any(|entry| entry["target"].is_object());
        let names = |name: &str| {
            entries
                .clone()
                .any(|entry| entry["product"] == name || list(entry, "mix").iter().any(|part| part["shade"] == name))
        };
        let mut want = Vec::new();
        for (kind, key) in [("lightener", "name"), ("shade", "code")] {
            for (place, product) in list(&one.file, &format!("shop.{kind}")).iter().enumerate() {
                let used = names(word(product, key)) || (searched && kind == "shade");
                if used && !product["longest_min"].is_null() && product["longest_counts_from"].is_null() {
                    want.push(format!("shop.{kind}[{}].longest_counts_from", place + 1));
                }
            }
        }
        let told = list(&one.data, "defaults").iter().map(|used| word(used, "field").to_owned());
        let told: Vec<String> = told.filter(|field| field.ends_with("longest_counts_from")).collect();
        assert_eq!(told, want, "{}", one.name);
        held += want.len();
        searched_once |= searched && want.len() > 1;
    }
    assert!(held > 8 && searched_once, "{held}");
}
