//! What a plan says: bounds in order, names that are in the file, the worst first, a reason for everything.

use super::files::{all, list, varied, word};
use foilwork::reader::Format;
use foilwork::service::{Evidence, consult, decide, mixing_cards, parse};
use serde_json::Value;

/// Every object of plain data.
fn each<'v>(value: &'v Value, path: &str, visit: &mut impl FnMut(&str, &'v Value)) {
    visit(path, value);
    match value {
        Value::Object(map) => map.iter().for_each(|(key, value)| each(value, &format!("{path}.{key}"), visit)),
        Value::Array(entries) => entries.iter().for_each(|value| each(value, path, visit)),
        _ => {}
    }
}

#[test]
fn every_number_with_bounds_has_them_in_order_whatever_the_file_states() {
    let mut held = 0;
    for one in all() {
        each(&one.data, "", &mut |path, value| {
            if let (Some(low), Some(best), Some(high)) =
                (value["low"].as_f64(), value["best"].as_f64(), value["high"].as_f64())
            {
                assert!(low <= best && best <= high, "{}: {path}: {value}", one.name);
                held += 1;
            }
            let Some(number) = value.as_f64() else { return };
            let can_be_less =
                ["level", "lab_", "change", "redder", "yellower", "lighter", "intense", "over_", "place", "_percent"];
            assert!(
                number >= 0.0 || can_be_less.iter().any(|part| path.contains(part)),
                "{}: {path}: {number}",
                one.name
            );
            let of_share = ["share_percent", "chance_percent", "light_percent", "taken_percent"]
                .iter()
                .any(|end| path.contains(end));
            assert!(!of_share || (0.0..=100.0).contains(&number), "{}: {path}: {number}", one.name);
        });
    }
    assert!(held > 10_000, "{held}");
}

#[test]
fn the_worst_is_said_first_with_a_source_and_a_stop_blocks() {
    let ladder = ["stop", "warning", "not-judged", "note", "passed"];
    for one in all() {
        let found = list(&one.data, "findings");
        let places: Vec<usize> =
            found.iter().map(|found| ladder.iter().position(|verdict| found["verdict"] == *verdict).unwrap()).collect();
        assert!(places.is_sorted(), "{}", one.name);
        assert_eq!(one.data["blocked"] == true, places.first() == Some(&0), "{}", one.name);
        for found in found {
            let text = word(found, "text");
            assert!(
                !list(found, "sources").is_empty() && !text.is_empty() && !text.ends_with('.'),
                "{}: {found}",
                one.name
            );
            for wrong in ["NaN", "inf ", "  ", "-0 ", "{", "}"] {
                assert!(!text.contains(wrong), "{}: {text}", one.name);
            }
        }
        assert_eq!(one.plan.to_string().contains("DO NOT BEGIN"), one.plan.blocked, "{}", one.name);
    }
}

/// Texts in quotes are names of the file, or words of it.
#[test]
fn what_a_finding_names_in_quotes_is_in_the_file_or_a_field_of_it() {
    let mut held = 0;
    for one in varied() {
        let file = one.file.to_string();
        for found in list(&one.data, "findings") {
            let text = word(found, "text");
            for name in text.split('"').skip(1).step_by(2).flat_map(|quoted| quoted.split("\" and \"")) {
                assert!(file.contains(name), "{}: {name}: {text}", one.name);
                held += 1;
            }
        }
    }
    assert!(held > 60, "{held}");
}

#[test]
fn findings_of_a_mix_are_in_the_list_and_name_it() {
    let mut held = 0;
    for one in varied() {
        let found = list(&one.data, "findings");
        for mix in list(&one.data, "mixes") {
            let places: Vec<usize> =
                list(mix, "findings").iter().map(|place| place.as_u64().unwrap() as usize).collect();
            assert!(places.is_sorted_by(|a, b| a < b), "{}: {places:?}", one.name);
            for place in places {
                let text = word(&found[place], "text");
                // What finishes together is told of all of them.
                let of_all = found[place]["rule"] == "finish-together";
                assert!(of_all || text.contains(word(mix, "name")), "{}: {}: {text}", one.name, mix["name"]);
                held += 1;
            }
        }
    }
    assert!(held > 300, "{held}");
}

/// Whether sections finish together concerns each of them.
#[test]
fn each_of_those_that_finish_together_is_told_of_it() {
    let mut held = 0;
    for one in varied() {
        for section in list(&one.data, "together").iter().flat_map(|group| list(group, "sections")) {
            let mix = list(&one.data, "mixes").iter().find(|mix| mix["name"] == section["section"]).unwrap();
            let told =
                list(mix, "findings").iter().map(|place| &one.data["findings"][place.as_u64().unwrap() as usize]);
            assert_eq!(told.filter(|found| found["rule"] == "finish-together").count(), 1, "{}: {section}", one.name);
            held += 1;
        }
    }
    assert!(held > 5, "{held}");
}

/// A card carries the findings of its mix, and every stop of the plan.
#[test]
fn cards_carry_the_findings_of_their_mix_and_all_stops() {
    for one in varied() {
        let stops = one.plan.findings.iter().filter(|found| found.verdict == foilwork::finding::Verdict::Stop).count();
        for card in mixing_cards(&one.plan) {
            assert_eq!(card.blocked, one.plan.blocked, "{}", one.name);
            assert_eq!(card.guest, one.plan.guest, "{}", one.name);
            assert!(card.stops.len() <= stops && (card.stops.is_empty() == (stops == 0)), "{}", one.name);
            assert!(card.findings.iter().all(|found| one.plan.findings.contains(found)), "{}: {}", one.name, card.name);
            if let Some(mix) = one.plan.mixes.iter().find(|mix| mix.name == card.name) {
                let own: Vec<_> = mix.findings.iter().map(|place| &one.plan.findings[*place]).collect();
                assert!(card.findings.iter().all(|found| own.contains(&found)), "{}: {}", one.name, card.name);
            }
        }
    }
}

/// A consultation decides by what the plan found: any stop ends it, anything else that is no work of the bench restricts it.
#[test]
fn a_consultation_goes_as_far_as_the_worst_finding_lets_it() {
    for one in varied() {
        let decision = decide(&one.plan);
        let data = serde_json::to_value(&decision).unwrap();
        let of =
            |verdict: &str| list(&one.data, "findings").iter().filter(move |found| found["verdict"] == verdict).count();
        assert_eq!(list(&data, "stops").len(), of("stop"), "{}", one.name);
        let weighed = list(&data, "restrictions").len()
            + list(&data, "open").len()
            + data["for_the_bench"].as_u64().unwrap() as usize;
        assert_eq!(weighed, of("warning") + of("not-judged"), "{}", one.name);
        let want = if of("stop") > 0 {
            "stop"
        } else if list(&data, "restrictions").is_empty() && list(&data, "open").is_empty() {
            "proceed"
        } else {
            "restrict"
        };
        assert_eq!(data["go"], want, "{}", one.name);
        let rules: Vec<&Value> =
            list(&data, "stops").iter().chain(list(&data, "restrictions")).map(|found| &found["rule"]).collect();
        for consent in list(&data, "consents") {
            assert!(list(consent, "to").iter().all(|rule| rules.contains(&rule)), "{}: {consent}", one.name);
        }
    }
}

/// What is planned of the service stays what it is, whoever reads it: the consultation shows the plan's own hair, price and visits.
#[test]
fn a_consultation_shows_the_plan_it_is_of() {
    for one in varied().iter().step_by(9) {
        let file = parse(&one.file.to_string(), Format::Json).unwrap();
        let consulted = consult(&file, &Evidence::default()).unwrap();
        assert_eq!(consulted.decision, decide(&one.plan), "{}", one.name);
        let data = serde_json::to_value(&consulted).unwrap();
        // A series is worth naming as enough where all come to 80 of 100 with its last visit.
        let last = |lift: &Value| {
            list(lift, "visits").last().is_some_and(|visit| visit["chance_percent"]["best"].as_f64() >= Some(80.0))
        };
        let text = data.to_string();
        if text.contains("80 of 100 reach it") {
            let all = list(&one.data, "lift").iter().all(last);
            assert_eq!(text.contains("then 80 of 100 reach it by the best estimate"), all, "{}", one.name);
        }
        let sections: Vec<&str> = list(&one.file, "section").iter().map(|section| word(section, "name")).collect();
        let mut held = 0;
        each(&data, "", &mut |path, value| {
            if let (true, Some(name)) = (path.ends_with(".section"), value.as_str()) {
                assert!(sections.contains(&name), "{}: {path}: {name}", one.name);
                held += 1;
            }
        });
        assert!(held > 0 || list(&one.data, "lift").is_empty(), "{}", one.name);
    }
}

/// Fields that nothing reads are fields of the file, and what is not computed has a reason.
#[test]
fn what_is_not_used_is_stated_and_what_is_missing_has_a_reason() {
    for one in all() {
        for unused in list(&one.data, "stated_not_used") {
            let last = word(unused, "field").rsplit('.').next().unwrap().trim_end_matches("[]");
            assert!(one.file.to_string().contains(&format!("\"{last}\"")), "{}: {unused}", one.name);
            assert!(!word(unused, "why").is_empty(), "{}", one.name);
        }
        let mut seen = Vec::new();
        for missing in list(&one.data, "not_computed") {
            assert!(!word(missing, "why").is_empty() && !seen.contains(&&missing["what"]), "{}: {missing}", one.name);
            seen.push(&missing["what"]);
        }
    }
}
