//! What is stricter, stronger, longer, darker or lighter moves a plan to its own side, and never back.

use super::files::{Known, bounds, examples, in_bowls, list, named, number, one, word};
use foilwork::reader::Format;
use foilwork::service::{Evidence, parse, plan_with};
use serde_json::{Value, json};

/// How bad the worst of some rules is: 0 nothing said, 1 passed, to 5 stop.
fn worst(one: &Known, rules: &[&str], of: &str) -> usize {
    let ladder = ["passed", "note", "not-judged", "warning", "stop"];
    let found = list(&one.data, "findings").iter();
    let found = found.filter(|found| rules.contains(&word(found, "rule")) && word(found, "text").contains(of));
    found.map(|found| 1 + ladder.iter().position(|verdict| found["verdict"] == *verdict).unwrap()).max().unwrap_or(0)
}

/// From loose to strict: what is said never gets better on the way, and differs at its ends.
fn only_worse(steps: &[Known], rules: &[&str], of: &str, what: &str) {
    let said: Vec<usize> = steps.iter().map(|one| worst(one, rules, of)).collect();
    assert!(said.is_sorted(), "{what}: {said:?}");
    assert!(said[0] < said[said.len() - 1], "{what}: never said: {said:?}");
}

fn steps(base: &Known, field: &str, values: &[Value]) -> Vec<Known> {
    values.iter().map(|value| base.with(json!({ field: value }))).collect()
}

#[test]
fn a_stricter_product_never_passes_a_developer_that_a_looser_one_refuses() {
    for (name, field) in [
        ("soft-gradient", "shop.lightener.0.strongest_developer_ww_percent"),
        ("grey-blend", "shop.shade.0.strongest_developer_ww_percent"),
        ("staged", "shop.lightener.0.strongest_developer_ww_percent"),
    ] {
        let limits = [12.0, 9.0, 6.6, 6.0, 5.9, 3.0, 1.0].map(Value::from);
        only_worse(&steps(one(name), field, &limits), &["developer"], "", name);
    }
}

#[test]
fn a_shorter_product_time_never_passes_what_a_longer_one_refuses() {
    for (name, field) in [
        ("soft-gradient", "shop.lightener.0.longest_min"),
        ("grey-blend", "shop.shade.0.longest_min"),
        ("lowlights", "shop.shade.0.longest_min"),
    ] {
        let limits = [90.0, 60.0, 50.0, 45.0, 30.0, 20.0, 10.0].map(Value::from);
        only_worse(&steps(one(name), field, &limits), &["time"], "", name);
    }
}

#[test]
fn more_peroxide_never_gets_better_before_the_law() {
    for law in ["EU", "UK", "JP"] {
        let base = one("soft-gradient").with(json!({
            "service.jurisdiction": law, "shop.lightener.0.ratio": "1:9",
            "section.1.strength": "1.9 % w/w", "section.2.strength": "1.9 % w/w",
        }));
        let strengths: Vec<Value> = [3, 6, 9, 12, 14, 16, 20].map(|percent| json!(format!("{percent} % w/w"))).into();
        only_worse(&steps(&base, "shop.developer.1.strength", &strengths), &["law"], "nape: hydrogen", law);
    }
}

/// The house wants an answer after 48 hours and one that is no older than its days.
#[test]
fn a_skin_test_nearer_to_the_service_or_longer_ago_is_never_better() {
    let base = one("soft-gradient");
    let dated = |days: &[&str]| -> Vec<Known> {
        days.iter().map(|day| base.with(json!({ "analysis.skin_test.applied": format!("2026-11-{day}") }))).collect()
    };
    only_worse(&dated(&["22T10:00", "23T09:59", "23T10:01", "24T10:00", "25T09:00"]), &["skin-test"], "", "nearer");
    only_worse(&dated(&["22T10:00", "19T10:00", "17T10:00", "01T10:00"]), &["skin-test-age", "skin-test"], "", "older");
}

/// One more of what the guest tells of never makes the plan pass.
#[test]
fn what_is_told_of_the_past_never_makes_a_plan_better() {
    for base in examples() {
        let count = |plan: &Known, wanted: &[&str]| {
            list(&plan.data, "findings").iter().filter(|found| wanted.contains(&word(found, "verdict"))).count()
        };
        for told in
            ["metallic-salts", "black-henna-tattoo", "asthma", "skin-disease", "pregnancy", "hair-loss", "henna"]
        {
            let mut history = list(&base.file, "analysis.history").to_vec();
            history.push(json!(told));
            let mut file = base.file.clone();
            file["analysis"]["history"] = json!(history);
            let after = Known::of(&base.name, &file).unwrap();
            for wanted in [&["stop"][..], &["stop", "warning"], &["stop", "warning", "not-judged"]] {
                assert!(count(&after, wanted) >= count(base, wanted), "{}: {told}", base.name);
            }
            assert_eq!(in_bowls(&after.data), in_bowls(&base.data), "{}: {told}", base.name);
        }
    }
}

/// The forecast of one section.
fn lift<'k>(one: &'k Known, section: &str) -> &'k Value {
    named(list(&one.data, "lift"), "section", section)
}

/// Low, best and high of a number of the forecast, along some steps, all in one direction.
fn all_move(steps: &[Known], section: &str, field: &str, up: bool, what: &str) {
    for bound in 0..3 {
        let found: Vec<f64> = steps.iter().map(|one| bounds(lift(one, section), field)[bound]).collect();
        let sorted = found.is_sorted_by(|a, b| if up { *a <= b + 1e-9 } else { *a >= b - 1e-9 });
        assert!(sorted, "{what}: {field}: {found:?}");
    }
    let ends = [&steps[0], &steps[steps.len() - 1]].map(|one| bounds(lift(one, section), field)[1]);
    assert!((ends[0] - ends[1]).abs() > 1e-6, "{what}: {field} does not move: {ends:?}");
}

fn values(numbers: &[f64]) -> Vec<Value> {
    numbers.iter().copied().map(Value::from).collect()
}

#[test]
fn a_higher_target_is_reached_less_often_and_never_earlier() {
    for (name, section) in [("soft-gradient", "crown"), ("staged", "back")] {
        let targets = steps(
            one(name),
            &format!("section.{}.target_level", place(one(name), section)),
            &values(&[7.0, 7.5, 8.0, 9.0, 10.0]),
        );
        all_move(&targets, section, "chance_percent", false, name);
        all_move(&targets, section, "chance_with_a_fresh_mix_percent", false, name);
        for end in ["early_min", "median_min", "late_min"] {
            let at: Vec<f64> = targets
                .iter()
                .map(|one| lift(one, section)["reached"][end].as_f64().unwrap_or(f64::INFINITY))
                .collect();
            assert!(at.is_sorted(), "{name}: {end}: {at:?}");
        }
        let visits: Vec<usize> = targets.iter().map(|one| list(lift(one, section), "visits").len()).collect();
        assert!(visits.is_sorted(), "{name}: {visits:?}");
    }
}

fn place(one: &Known, section: &str) -> usize {
    list(&one.file, "section").iter().position(|entry| entry["name"] == section).unwrap()
}

#[test]
fn longer_on_the_hair_is_lighter_and_more_strain() {
    let base = one("soft-gradient").with(json!({ "shop.lightener.0.longest_min": 120 }));
    let longer = steps(&base, "section.0.develop_min", &values(&[5.0, 15.0, 30.0, 45.0, 60.0]));
    for field in ["first_strand_level", "last_strand_level", "chance_percent", "strain_index"] {
        all_move(&longer, "nape", field, true, "longer");
    }
    for plan in &longer {
        let step = named(list(&plan.data, "order"), "name", "nape");
        let on_hair = number(step, "rinse_by_min") - number(step, "begin_min");
        assert_eq!(number(lift(plan, "nape"), "limit_min"), on_hair);
    }
}

#[test]
fn a_stronger_developer_or_a_warmer_room_lifts_no_less() {
    let base = one("soft-gradient");
    let strong: Vec<Value> = ["2 % w/w", "3 % w/w", "4.5 % w/w", "6 % w/w"].map(Value::from).into();
    let stronger = steps(base, "section.1.strength", &strong);
    for field in ["first_strand_level", "last_strand_level", "chance_percent", "strain_index", "on_hair_ww_percent"] {
        all_move(&stronger, "crown", field, true, "stronger");
    }
    let warmer = steps(base, "salon.room_c", &values(&[16.0, 20.0, 24.0, 28.0]));
    for field in ["first_strand_level", "chance_percent"] {
        all_move(&warmer, "crown", field, true, "warmer");
    }
}

#[test]
fn a_darker_base_ends_darker_and_has_further_to_go() {
    for (name, section) in [("soft-gradient", "crown"), ("soft-gradient", "nape")] {
        let base = one(name).changed(|file| file["analysis"]["existing"] = json!([]));
        let darker = steps(&base, "analysis.natural_level", &values(&[7.0, 6.0, 5.0, 4.0, 3.0]));
        for field in ["first_strand_level", "chance_percent", "from_level", "rule_level"] {
            all_move(&darker, section, field, false, name);
        }
        let changes: Vec<f64> = darker
            .iter()
            .map(|one| bounds(named(list(&one.data, "colour"), "section", section), "change_levels")[1])
            .collect();
        assert!(changes.is_sorted() && changes[0] < changes[4], "{changes:?}");
    }
}

#[test]
fn levels_to_move_are_the_target_less_what_is_there() {
    for one in examples() {
        for colour in list(&one.data, "colour") {
            let (from, target) = (bounds(colour, "from_level"), number(colour, "target_level"));
            let entry = named(list(&one.file, "section"), "name", word(colour, "section"));
            assert_eq!(target, number(entry, "target_level"), "{}", one.name);
            let mut want = from.map(|from| target - from);
            want.sort_by(f64::total_cmp);
            let got = bounds(colour, "change_levels");
            assert!(
                got.iter().zip(want).all(|(got, want)| (got - want).abs() < 1e-9),
                "{}: {got:?}, {want:?}",
                one.name
            );
        }
    }
}

/// A strand of this guest that got lighter than was thought moves the forecast up, a darker one down; either narrows it.
#[test]
fn strands_move_the_forecast_to_their_side() {
    let base = one("soft-gradient");
    let strand = |after: f64| {
        json!([{ "product": "Foam Line powder", "developer": "developer 6", "time_min": 40, "before_level": 6.0,
                 "after_level": after, "reader": "eye" }])
    };
    let told: Vec<Known> =
        [7.0, 7.5, 8.0, 8.5, 9.5].iter().map(|after| base.with(json!({ "strand": strand(*after) }))).collect();
    for section in ["nape", "crown"] {
        for field in ["first_strand_level", "chance_percent"] {
            all_move(&told, section, field, true, "strands");
        }
        let wide = |one: &Known| {
            let [low, _, high] = bounds(lift(one, section), "first_strand_level");
            high - low
        };
        assert!(told.iter().all(|one| wide(one) < wide(base)), "{section}");
        assert!(told.iter().all(|one| number(lift(one, section), "readings") == 1.0), "{section}");
        assert_eq!(number(lift(base, section), "readings"), 0.0);
    }
    // Of another product nothing of this guest is told of the clay, but her hair is.
    assert!(told.iter().all(|one| number(lift(one, "hairline"), "readings") >= 1.0));
}

/// A strand that came to the same level with a weaker developer, in a colder place or drying tells of hair that lifts more readily.
#[test]
fn what_a_strand_was_mixed_and_kept_with_moves_the_forecast() {
    let base = one("soft-gradient");
    let told = |field: &str, value: Value| {
        let mut strand = json!({ "product": "Foam Line powder", "developer": "developer 6", "time_min": 40, "before_level": 6.0,
                                 "after_level": 8.0, "reader": "eye", "temperature_c": 20, "cover": "foil" });
        strand[field] = value;
        base.with(json!({ "strand": [strand] }))
    };
    let readily = |field: &str, values: [Value; 2]| {
        let [hard, ready] = values.map(|value| bounds(lift(&told(field, value), "crown"), "first_strand_level")[1]);
        assert!(ready > hard + 0.01, "{field}: {hard} and {ready}");
    };
    readily("developer", [json!("developer 6"), json!("developer 3")]);
    readily("temperature_c", [json!(32), json!(18)]);
    readily("cover", [json!("foil"), json!("open-air")]);
    readily("time_min", [json!(50), json!(25)]);
    readily("before_level", [json!(6.5), json!(5.5)]);
}

/// The plan with a level seen in mid-service, as plain data.
fn seen(base: &Known, look: &str) -> Value {
    let file = parse(&base.file.to_string(), Format::Json).unwrap();
    let evidence = Evidence { seen: vec![look.parse().unwrap()], ..Evidence::default() };
    serde_json::to_value(plan_with(&file, &evidence).unwrap()).unwrap()
}

#[test]
fn a_look_moves_the_forecast_to_what_was_seen() {
    let base = one("soft-gradient");
    let levels = [6.5, 7.0, 7.5, 8.0, 8.5, 9.0];
    let plans: Vec<Value> = levels.iter().map(|level| seen(base, &format!("nape={level}@30"))).collect();
    let nape = |plan: &Value| named(list(plan, "lift"), "section", "nape").clone();
    let best: Vec<f64> = plans.iter().map(|plan| bounds(&nape(plan), "first_strand_level")[1]).collect();
    assert!(best.is_sorted() && best[0] < best[5], "{best:?}");
    for (plan, level) in plans.iter().zip(levels) {
        let told = nape(plan);
        let told = list(&told, "seen");
        assert_eq!((told.len(), number(&told[0], "level"), number(&told[0], "at_min")), (1, level, 30.0));
        // What is there is rinsed; what is not is looked at again, before its time is over.
        assert_eq!(told[0]["next"] == "rinse", level >= 9.0, "{}", told[0]);
        if let Some(again) = told[0]["look_again_min"].as_f64() {
            assert!(again > 30.0 && again <= 48.0, "{}", told[0]);
        }
        assert_eq!(in_bowls(plan), in_bowls(&base.data));
        assert_eq!(plan["order"], base.data["order"]);
    }
}

/// The trade's rule, two levels either way: what one session reaches from where the hair starts, on the scale.
#[test]
fn the_rule_of_the_developer_is_two_levels_either_way() {
    for one in examples() {
        for lift in list(&one.data, "lift") {
            let [low, best, high] = bounds(lift, "rule_level");
            let [from_low, from, from_high] = bounds(lift, "from_level");
            let lifts = best - from;
            if best < 12.0 && high < 12.0 {
                assert!((high - (from_high + lifts + 2.0)).abs() < 1e-9, "{}: {lift}", one.name);
            }
            assert!((low - (from_low + (lifts - 2.0).max(0.0))).abs() < 1e-9 || best == 12.0, "{}: {lift}", one.name);
        }
    }
}

#[test]
fn the_looks_of_the_forecast_are_those_of_the_sheet_and_only_get_lighter() {
    for one in examples() {
        for lift in list(&one.data, "lift") {
            let step = named(list(&one.data, "order"), "name", word(lift, "section"));
            let at: Vec<&Value> = list(lift, "looks").iter().map(|look| &look["at_min"]).collect();
            assert_eq!(at, list(step, "look_at_min").iter().collect::<Vec<_>>(), "{}", one.name);
            let begin = number(step, "begin_min");
            for look in list(lift, "looks") {
                assert!((number(look, "at_min") - begin - number(look, "on_hair_min")).abs() < 1e-9, "{}", one.name);
            }
            for bound in 0..3 {
                let levels: Vec<f64> = list(lift, "looks").iter().map(|look| bounds(look, "level")[bound]).collect();
                assert!(levels.is_sorted(), "{}: {levels:?}", one.name);
            }
            let last = list(lift, "looks").last().unwrap();
            assert_eq!(last["level"], lift["first_strand_level"], "{}", one.name);
            let clock = |end: &str| lift["reached_on_clock"][end].as_f64();
            let own = |end: &str| lift["reached"][end].as_f64();
            for end in ["early_min", "median_min", "late_min"] {
                let apart = clock(end).zip(own(end)).map_or(0.0, |(clock, own)| clock - own - begin);
                assert!(apart.abs() < 1e-6 && clock(end).is_some() == own(end).is_some(), "{}: {lift}", one.name);
            }
        }
    }
}
