//! Strengths that the plan chose: each reason against what its own numbers say, and what is told of finishing together against its
//! minutes.

use super::files::{Known, bounds, list, named, number, one, product, word};
use foilwork::{quantity::Duration, text::number as decimal};
use serde_json::{Value, json};

fn plans() -> Vec<Known> {
    let base = one("finish-together");
    let mut found = vec![base.clone()];
    for targets in [[6.5, 7.0, 7.5], [7.5, 8.5, 7.0], [8.5, 7.5, 9.0], [10.0, 7.5, 7.5], [7.0, 7.0, 10.0]] {
        for (within, develop) in [(10.0, 36.0), (1.0, 36.0), (30.0, 15.0), (0.0, 30.0)] {
            found.push(base.with(json!({
                "finish.within_min": within, "section.0.develop_min": develop,
                "section.0.target_level": targets[0], "section.1.target_level": targets[1],
                "section.2.target_level": targets[2],
            })));
        }
    }
    // Each by itself, where one takes longer to put on than it may be on the hair, or waits for a rinse.
    found.push(base.with(json!({ "section.2.developer": null, "shop.lightener.0.longest_min": 11 })));
    found.push(base.with(json!({ "section.1.after.0.wait_for": "rinse", "section.2.developer": null })));
    // Other work between two of them.
    for (place, between) in [(0, 25.0), (1, 40.0)] {
        found.push(base.changed(|file| {
            let mut other = file["section"][0].clone();
            other["name"] = json!("between");
            (other["product"], other["mix"]) = (Value::Null, json!([{ "shade": "J7-drift", "parts": 1 }]));
            (other["developer"], other["target_level"]) = (json!("toner developer"), json!(5));
            (other["apply_min"], other["share_percent"]) = (json!(between), json!(3));
            file["section"].as_array_mut().unwrap().insert(place + 1, other);
        }));
    }
    found
}

/// "7.4 after 40 min, level 8 by then in 30 of 100 cases", whatever stands before it.
fn level_and_minutes(why: &str) -> (f64, f64) {
    let (told, _) = why.split_once(" by then in ").unwrap_or_else(|| panic!("{why}"));
    let told = told.rsplit([';', ':']).next().unwrap().trim();
    let mut words = told.split(' ');
    let level = words.next().unwrap().parse().unwrap();
    (level, words.nth(1).unwrap().parse().unwrap())
}

#[test]
fn a_strength_is_chosen_and_others_are_rejected_for_what_they_reach() {
    let mut seen: Vec<String> = Vec::new();
    for one in plans() {
        for chosen in list(&one.data, "strengths") {
            let (section, why) = (word(chosen, "section"), word(chosen, "why"));
            let entry = named(list(&one.file, "section"), "name", section);
            let what = format!("{}: {section}: {why}", one.file["section"]);
            let together = list(&one.data, "together")
                .iter()
                .any(|group| list(group, "sections").iter().any(|one| one["section"] == section));
            let target = number(entry, "target_level");
            let reaches = |text: &str| {
                let after = text.contains(" after about ");
                let (level, _) = level_and_minutes(text);
                assert!(level >= target - 0.051 || !after, "{what}: {text}");
                assert!(level <= target + 0.051 || after, "{what}: {text}");
                after
            };
            // The middle strand gets what is planned or allowed, less half of the application.
            let (apply, develop) = (number(entry, "apply_min"), number(entry, "develop_min"));
            let longest = product(&one.file, word(entry, "product"))["longest_min"].as_f64().unwrap_or(f64::INFINITY);
            let minutes = ((apply + develop).min(longest) - apply / 2.0).max(0.0);
            assert!((level_and_minutes(why).1 - minutes).abs() <= 0.5 + 1e-9, "{what}: {minutes}");
            let enough = reaches(why);
            let begins = match (together, enough) {
                (true, true) => "the weakest with which all finish together: ",
                (true, false) => "the nearest that the shelf has: ",
                (false, true) => "the weakest that reaches the target in its own time: ",
                (false, false) => "the strongest that may be used: ",
            };
            assert!(why.starts_with(begins), "{what}: {begins}");
            seen.push(begins.to_owned());
            let own = bounds(chosen, "developer_ww_percent")[1];
            let rejected = list(chosen, "rejected");
            let strengths: Vec<f64> = rejected.iter().map(|other| number(other, "developer_ww_percent")).collect();
            assert!(strengths.is_sorted(), "{what}: {strengths:?}");
            for (other, strength) in rejected.iter().zip(&strengths) {
                let why = word(other, "why");
                if why.contains(" takes ") || why.starts_with("the shelf") || why.starts_with("cannot") {
                    seen.push("refused".to_owned());
                    continue;
                }
                let begins = match *strength < own {
                    true if reaches(why) => "too slow to finish with the others: ",
                    true => "too weak: ",
                    false if enough => "not needed: a weaker one does it",
                    false => "does not fit the times of the others: ",
                };
                assert!(why.starts_with(begins), "{what}: {strength}: {why}");
                seen.push(begins.to_owned());
            }
            // Every bottle is chosen or has its reason, and so have the next blends on either side.
            for bottle in list(&one.file, "shop.developer") {
                let Some(percent) = word(bottle, "strength").strip_suffix(" % w/w") else { continue };
                let percent: f64 = percent.parse().unwrap();
                let told = strengths.iter().chain([&own]).any(|known| (known - percent).abs() < 1e-6);
                assert!(told, "{what}: {percent} of {strengths:?}");
            }
        }
    }
    seen.sort();
    seen.dedup();
    assert!(seen.len() >= 7, "{seen:#?}");
}

#[test]
fn what_is_told_of_finishing_together_is_what_its_minutes_say() {
    let mut seen = [0; 4];
    for one in plans() {
        for group in list(&one.data, "together") {
            let sections = list(group, "sections");
            let [short, asked] = ["short_levels", "window_asked_min"].map(|key| number(group, key));
            let asked_min = Duration::from_min(asked).unwrap();
            let needed = group["window_needed_min"].as_f64();
            if sections.is_empty() {
                let why = word(group, "why_not");
                assert!(why.ends_with("; each is timed by itself") && group["rinse_min"].is_null(), "{why}");
                assert_eq!((short, needed), (0.0, None), "{group}");
                seen[0] += 1;
                continue;
            }
            assert_eq!(needed.is_none(), short > 0.0, "{group}");
            let want = match needed {
                None => Some(format!(
                    "no strength of the shelf brings all to their targets in their times: the nearest falls {} levels short; \
                     agree on a lower target or a second visit, or allow more time where the product does",
                    decimal(short, 1)
                )),
                Some(window) if window > asked => Some(format!(
                    "not within {asked_min} of each other: the nearest is {} min; apply in another order, split the longest \
                     section, or work with a helper",
                    decimal(window, 0)
                )),
                Some(_) => None,
            };
            seen[1 + usize::from(short > 0.0) + 2 * usize::from(want.is_some() && short == 0.0)] += 1;
            assert_eq!(group["why_not"].as_str(), want.as_deref(), "{group}");
            let rinse = number(group, "rinse_min");
            let reached: Vec<f64> = sections.iter().filter_map(|one| one["reaches_min"].as_f64()).collect();
            assert_eq!(reached.len(), if short > 0.0 { 0 } else { sections.len() }, "{group}");
            // Each begins when hands are free, has all on before the rinse, and is on the sheet at the same minutes.
            let steps = list(&one.data, "order");
            let first = number(named(steps, "name", word(&sections[0], "section")), "begin_min");
            for section in sections {
                let step = named(steps, "name", word(section, "section"));
                let begin = number(section, "begin_min");
                assert!((number(step, "begin_min") - first - begin).abs() < 1e-6, "{section} and {step}");
                let due = first + rinse.max(number(step, "applied_min") - first);
                assert!(number(step, "rinse_by_min") <= due + 1e-6, "{group} and {step}");
                let level = bounds(section, "at_rinse_level");
                assert!(level[0] < level[2], "{section}");
            }
            let found = list(&one.data, "findings")
                .iter()
                .find(|found| found["rule"] == "finish-together" && found["verdict"] == "passed");
            if let (Some(found), None, 1) = (found, &want, list(&one.data, "together").len()) {
                let names: Vec<&str> = sections.iter().map(|one| word(one, "section")).collect();
                let text = format!(
                    "{}: by the medians of the forecast within {asked_min}, rinsed {} min after the first brush; strands decide",
                    names.join(", "),
                    decimal(rinse, 0)
                );
                assert_eq!(word(found, "text"), text);
            }
        }
    }
    assert!(seen[..3].iter().all(|seen| *seen > 0), "{seen:?}");
}
