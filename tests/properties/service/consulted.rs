//! From the plan to the consultation, worked out a second time: the visits on the calendar, what each test changes, what is agreed.

use super::files::{Known, at, bounds, list, number, one, same, varied, word};
use foilwork::{
    reader::Format,
    service::{Evidence, consult, dated_visits, decide, parse},
};
use jiff::{ToSpan, civil::Date};
use serde_json::{Value, json};

/// Whole days, a part of one counted as all of it.
fn later(day: Date, weeks: f64) -> Date {
    day.checked_add(((weeks * 7.0 - 1e-6).ceil() as i64).days()).unwrap()
}

/// The least, usual and most of each gap are those of the section that needs longest; the days add up from visit to visit.
#[test]
fn visits_lie_as_far_apart_as_the_section_that_needs_longest() {
    let mut held = 0;
    for one in varied() {
        let lift = list(&one.data, "lift");
        let visits = serde_json::to_value(dated_visits(&one.plan)).unwrap();
        let visits = visits.as_array().unwrap();
        let most = lift.iter().map(|lift| list(lift, "visits").len()).max().unwrap_or(0);
        assert_eq!(visits.len(), most, "{}", one.name);
        let start: Date = word(&one.data, "start")[..10].parse().unwrap();
        let mut days = [start; 3];
        for (place, visit) in visits.iter().enumerate() {
            let of = |lift| list(lift, "visits").get(place);
            let there: Vec<(&Value, &Value)> = lift.iter().filter_map(|lift| Some((lift, of(lift)?))).collect();
            let names = |found: Vec<&Value>| -> Vec<String> {
                found.into_iter().map(|lift| word(lift, "section").to_owned()).collect()
            };
            let told = |key: &str| -> Vec<String> {
                list(visit, key).iter().map(|name| name.as_str().unwrap().to_owned()).collect()
            };
            assert_eq!(number(visit, "number"), place as f64 + 1.0);
            assert_eq!(told("sections"), names(there.iter().map(|one| one.0).collect()), "{}", one.name);
            let reached = there.iter().filter(|(_, visit)| number(visit, "chance_percent.best") >= 80.0);
            assert_eq!(told("reached"), names(reached.map(|one| one.0).collect()), "{}", one.name);
            let gaps: Vec<[f64; 3]> = there
                .iter()
                .filter(|(_, visit)| !visit["after_weeks"].is_null())
                .map(|(_, visit)| bounds(visit, "after_weeks"))
                .collect();
            assert_eq!(gaps.is_empty(), visit["after_weeks"].is_null() && place == 0, "{}: {visit}", one.name);
            if let Some(longest) = gaps.into_iter().reduce(|a, b| [0, 1, 2].map(|i| a[i].max(b[i]))) {
                assert_eq!(bounds(visit, "after_weeks"), longest, "{}", one.name);
                assert!(!visit["after_basis"].is_null(), "{}", one.name);
                days = [0, 1, 2].map(|i| later(days[i], longest[i]));
                held += 1;
            }
            let got = ["earliest", "usual", "latest"].map(|key| word(visit, key).to_owned());
            assert_eq!(got, days.map(|day| day.to_string()), "{}: {visit}", one.name);
        }
    }
    assert!(held > 5, "{held}");
}

/// Stops, warnings and open questions, without what rests on the minutes in the chair.
fn weighty(one: &Known) -> Vec<String> {
    let counts = |found: &&Value| {
        ["stop", "warning", "not-judged"].contains(&word(found, "verdict")) && found["rule"] != "list-price"
    };
    list(&one.data, "findings").iter().filter(counts).map(Value::to_string).collect()
}

/// The slowest section by the median; none where a section never reaches its target.
fn slowest(one: &Known) -> Option<f64> {
    let medians: Option<Vec<f64>> =
        list(&one.data, "lift").iter().map(|lift| lift["reached"]["median_min"].as_f64()).collect();
    medians.filter(|all| !all.is_empty()).map(|all| all.into_iter().fold(0.0, f64::max))
}

const RESULTS: [Option<&str>; 4] = [Some("clear"), Some("reaction"), Some("pending"), None];

/// Each result of each test: the file with it is planned anew and held against the plan as it stands.
fn effects_of(base: &Known, applied: &str) {
    let file = parse(&base.file.to_string(), Format::Json).unwrap();
    let consulted = serde_json::to_value(consult(&file, &Evidence::default()).unwrap()).unwrap();
    let metal = ["metallic-salts", "henna"].iter().any(|flag| {
        list(&base.file, "analysis.history").iter().any(|one| one == flag)
            || list(&base.data, "hair.history_told").iter().any(|one| one == flag)
    });
    let mut want: Vec<(&str, Option<&str>, Value)> = Vec::new();
    for (kind, field) in [("skin", "skin_test"), ("strand", "strand_test"), ("incompatibility", "incompatibility_test")]
    {
        for result in RESULTS {
            let stated = at(&base.file, &format!("analysis.{field}.result")).as_str();
            if kind == "incompatibility" && !metal && stated != result && result != Some("reaction") {
                continue;
            }
            let applied = at(&base.file, &format!("analysis.{field}.applied")).as_str().unwrap_or(applied);
            let test = result.map(|result| json!({ "applied": applied, "result": result }));
            want.push((kind, result, json!({ format!("analysis.{field}"): test })));
        }
    }
    for result in [Some("good"), Some("reduced"), Some("poor"), None] {
        want.push(("elasticity", result, json!({ "analysis.elasticity": result })));
    }
    for result in [Some("low"), Some("normal"), Some("high"), Some("uneven"), None] {
        want.push(("porosity", result, json!({ "analysis.porosity": result })));
    }
    let got = list(&consulted, "tests");
    assert_eq!(got.len(), want.len(), "{}", base.name);
    let (before, now) = (weighty(base), slowest(base));
    for (effect, (kind, result, change)) in got.iter().zip(want) {
        let what = format!("{}: {kind}: {result:?}", base.name);
        assert_eq!((word(effect, "test"), effect["result"].as_str()), (kind, result), "{what}");
        let field = change.as_object().unwrap().keys().next().unwrap();
        let there = at(&base.file, field);
        let stated = if there.is_object() { &there["result"] } else { there };
        assert_eq!(effect["stated"] == true, stated.as_str() == result, "{what}");
        let then = if effect["stated"] == true { base.clone() } else { base.with(change) };
        assert_eq!(effect["go"], serde_json::to_value(decide(&then.plan).go).unwrap(), "{what}");
        let after = weighty(&then);
        let told = |key: &str| -> Vec<String> {
            list(effect, key).iter().filter(|found| found["rule"] != "list-price").map(Value::to_string).collect()
        };
        let only = |these: &[String], those: &[String]| -> Vec<String> {
            these.iter().filter(|found| !those.contains(found)).cloned().collect()
        };
        assert_eq!(told("adds"), only(&after, &before), "{what}");
        assert_eq!(told("lifts"), only(&before, &after), "{what}");
        let median = slowest(&then);
        assert_eq!(effect["slowest"]["median_min"].as_f64(), median, "{what}");
        let factor = median.zip(now).map(|(then, now)| then / now);
        assert_eq!(effect["time_factor"].is_null(), factor.is_none(), "{what}");
        same(effect["time_factor"].as_f64().unwrap_or(0.0), factor.unwrap_or(0.0), &what);
    }
}

#[test]
fn each_result_of_a_test_is_the_plan_with_it_against_the_plan_without() {
    let base = one("soft-gradient");
    effects_of(base, "2026-11-23T10:00:00");
    // Without the test it would have been applied as long before the start as the house waits, else two days.
    let untested = json!({ "analysis.skin_test": null, "analysis.strand_test": null, "salon.skin_test_wait_h": 30 });
    effects_of(&base.with(untested), "2026-11-24T04:00:00");
    let bare = json!({ "analysis.skin_test": null, "salon.skin_test_wait_h": null, "service.start": "2026-11-25" });
    effects_of(&base.with(bare), "2026-11-23T00:00:00");
    effects_of(
        &base.with(json!({ "analysis.history": ["henna"], "analysis.porosity": "high" })),
        "2026-11-23T10:00:00",
    );
    effects_of(&one("grey-blend").with(json!({ "analysis.history": ["metallic-salts"] })), "2026-11-23T10:00:00");
}

/// Wishes first, then steps before the colour, then what each section aims at; what is not sure is not promised.
#[test]
fn what_is_agreed_is_what_is_wished_and_planned() {
    let mut held = [0; 5];
    for one in varied().iter().step_by(5).chain([one("staged"), one("lowlights"), one("finish")]) {
        let file = parse(&one.file.to_string(), Format::Json).unwrap();
        let consulted = serde_json::to_value(consult(&file, &Evidence::default()).unwrap()).unwrap();
        let agreement = &consulted["agreement"];
        let (mut planned, mut not_promised) = (Vec::new(), Vec::new());
        for wish in list(&one.data, "consulted.wishes") {
            let zone = word(wish, "zone").replace('-', " ");
            let (level, tolerance) = (number(wish, "level"), number(wish, "tolerance_levels"));
            let tone = wish["tone"].as_str().map(|tone| format!(", {tone}")).unwrap_or_default();
            let dislikes = wish["dislikes"].as_str().map(|words| format!("; what you do not like now: {words}"));
            planned.push(format!(
                "{zone}: you wish level {level}{tone}, {tolerance} levels lighter or darker is still right{}",
                dislikes.unwrap_or_default()
            ));
            if let Some(why) = wish["why_not"].as_str() {
                not_promised.push(format!("{zone}: level {level} is wished; {why}"));
                held[0] += 1;
            } else if wish["is_sure"] == false {
                let reach = "we aim there, and cannot say that one visit reaches it";
                not_promised.push(format!("{zone}: level {level} is wished; {reach}"));
                held[1] += 1;
            }
        }
        let steps: Vec<&Value> = list(&one.data, "first_steps").iter().filter(|step| step["planned"] == true).collect();
        for step in &steps {
            let of = |kind: &str| list(step, "parts").iter().find(|part| part["kind"] == kind);
            let with = match (of("remover"), of("lightener")) {
                (Some(remover), _) => format!("a remover ({})", word(remover, "product")),
                (None, Some(lightener)) => format!("lightener ({})", word(lightener, "product")),
                (None, None) => "a remover or with lightener".to_owned(),
            };
            let what = match word(step, "step") {
                "pre-soften" => "white hair is opened with developer".to_owned(),
                "pre-pigment" => "warm colour is put back".to_owned(),
                "pre-lighten" => "your hair is lightened".to_owned(),
                _ => format!("colour that is in the hair is taken out, with {with}"),
            };
            planned.push(format!("{}: before the colour, {what}", word(step, "section")));
        }
        let unsure: Vec<&str> = list(&one.data, "lift")
            .iter()
            .filter(|lift| bounds(lift, "chance_percent")[0] < 80.0)
            .map(|lift| word(lift, "section"))
            .collect();
        if !unsure.is_empty() {
            not_promised.push(format!("perhaps not in one visit: {}", foilwork::text::list(&unsure, "and")));
        }
        if !list(&one.data, "consulted.gaps").is_empty() {
            not_promised.push("how hair takes it whose past nobody knows: there we test a strand first".to_owned());
            held[2] += 1;
        }
        let told = |key: &str| -> Vec<String> {
            list(agreement, key).iter().map(|text| text.as_str().unwrap().to_owned()).collect()
        };
        planned.extend(list(&one.data, "colour").iter().map(|section| {
            let tone = section["target_tone"].as_str().map(|tone| format!(", {tone}")).unwrap_or_default();
            format!("{}: we aim at level {}{tone}", word(section, "section"), number(section, "target_level"))
        }));
        assert_eq!(told("planned"), planned, "{}", one.name);
        let light = |kind: &str| {
            list(&one.data, "mixes")
                .iter()
                .any(|mix| list(mix, "bowls.0.parts").iter().any(|part| part["kind"] == kind))
        };
        let before = steps.iter().any(|step| ["clean-first", "pre-lighten"].contains(&word(step, "step")));
        let weakens = told("risks").iter().any(|risk| risk.starts_with("Lightening weakens hair"));
        assert_eq!(weakens, light("lightener") || before, "{}", one.name);
        assert_eq!(told("not_promised"), not_promised, "{}", one.name);
        let dated = list(&consulted, "visits");
        let visits = match dated {
            [] => Vec::new(),
            [_] if unsure.is_empty() => vec!["One visit should do, if your hair goes along.".to_owned()],
            [_] => vec!["One visit may do; that is not sure.".to_owned()],
            [_, rest @ ..] => {
                held[3] += 1;
                let last = &dated[dated.len() - 1];
                let many = dated.len();
                let first = if last["reached"] == last["sections"] {
                    format!(
                        "It takes about {many} visits, if your hair goes along; before each we test how it stretches."
                    )
                } else {
                    format!(
                        "Even {many} visits may not be enough; before each we test how your hair stretches, and plan anew."
                    )
                };
                let each = rest.iter().map(|visit| {
                    let [number, earliest, usual] = ["number", "earliest", "usual"].map(|key| &visit[key]);
                    let (earliest, usual) = (earliest.as_str().unwrap(), usual.as_str().unwrap());
                    format!("Visit {number}: not before {earliest}, usually about {usual}.")
                });
                [first].into_iter().chain(each).collect()
            }
        };
        assert_eq!(told("visits"), visits, "{}", one.name);
        held[4] += steps.len();
    }
    assert!([0, 2, 3, 4].iter().all(|place| held[*place] > 0), "{held:?}");
}
