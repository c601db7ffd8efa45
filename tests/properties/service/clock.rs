//! When what is put on, looked at and rinsed: on the sheet, on the cards, and by hands and basin.

use super::files::{
    Known, all_state_it, at, bounds, examples, in_bowls, list, named, number, number_or, product, same, some, varied,
    word,
};
use foilwork::service::mixing_cards;
use serde_json::{Value, json};

fn what(one: &Known, step: &Value) -> String {
    format!("{}: {}", one.name, step["name"])
}

/// The entry of the file that a step is of.
fn entry<'k>(one: &'k Known, step: &Value) -> &'k Value {
    match word(step, "stage") {
        "section" => named(list(&one.file, "section"), "name", word(step, "name")),
        "toner" => named(list(&one.file, "toner"), "name", word(step, "name")),
        _ => &one.file["root_shadow"],
    }
}

/// Minutes of putting on, as the file says or as the plan counts them on the foils.
fn applying(one: &Known, step: &Value) -> f64 {
    let stated = entry(one, step)["apply_min"].as_f64();
    let counted = named(list(&one.data, "head.sections"), "section", word(step, "name"));
    stated.unwrap_or_else(|| if counted.is_null() { 5.0 } else { bounds(counted, "applying.apply_min")[1] })
}

/// One pair of hands goes on when it is free and what it waits for is over; what finishes together may wait longer.
#[test]
fn a_section_begins_when_hands_are_free_and_what_it_waits_for_is_over() {
    for one in varied() {
        let timed: Vec<&str> = list(&one.data, "together")
            .iter()
            .flat_map(|group| list(group, "sections"))
            .map(|section| word(section, "section"))
            .collect();
        let steps = list(&one.data, "order");
        let mut free = [number(&one.data, "chair.first_steps_min"), 0.0];
        if one.data["chair"]["clock"] == "day" && free[0] > 0.0 {
            // On the clock of the day the first bowl is mixed before the first brush.
            free[0] = number(&steps[0], "begin_min");
        }
        for (place, step) in steps.iter().enumerate() {
            let hands = &mut free[usize::from(step["stage"] != "section")];
            let over = |wait: &Value| {
                let first = named(&steps[..place], "name", word(wait, "section"));
                let wait = wait["wait_for"].as_str().unwrap_or("application");
                let rinsed = matches!(wait, "development" | "rinse");
                number(first, if rinsed { "rinse_by_min" } else { "applied_min" })
            };
            let want = list(entry(one, step), "after").iter().map(over).fold(*hands, f64::max);
            let begin = number(step, "begin_min");
            if timed.contains(&word(step, "name")) {
                assert!(begin >= want - 1e-6, "{}: {begin}, not before {want}", what(one, step));
            } else {
                same(begin, want, &what(one, step));
            }
            same(number(step, "applied_min"), begin + applying(one, step), &what(one, step));
            *hands = number(step, "applied_min");
        }
    }
}

/// What the products of a step allow on the first strand: from the end of the application where the maker counts so.
fn allowed(one: &Known, step: &Value) -> f64 {
    let mix = named(list(&one.data, "mixes"), "name", word(step, "name"));
    let own = |part: &Value| {
        let facts = product(&one.file, word(part, "product"));
        let most = facts["longest_min"].as_f64()?;
        Some(most + if facts["longest_counts_from"] == "end-of-application" { applying(one, step) } else { 0.0 })
    };
    list(mix, "bowls.0.parts").iter().filter_map(own).fold(f64::INFINITY, f64::min)
}

#[test]
fn it_is_rinsed_as_planned_or_where_its_product_says_so_earlier() {
    for one in varied() {
        for step in list(&one.data, "order") {
            let on_hair = number(step, "rinse_by_min") - number(step, "begin_min");
            let planned = applying(one, step) + number(entry(one, step), "develop_min");
            let want = planned.min(allowed(one, step));
            if one.data["together"].as_array().is_some_and(Vec::is_empty) {
                same(on_hair, want, &what(one, step));
            } else {
                assert!(on_hair <= want + 1e-6, "{}: {on_hair} of {want}", what(one, step));
            }
        }
    }
}

#[test]
fn bowls_are_mixed_so_long_after_the_begin_as_the_mix_says() {
    for one in varied() {
        for (step, mix) in list(&one.data, "order").iter().zip(list(&one.data, "mixes")) {
            assert_eq!((&step["name"], &step["stage"]), (&mix["name"], &mix["stage"]), "{}", one.name);
            let after = list(mix, "bowls").iter().flat_map(|bowl| list(bowl, "mixed_after_min"));
            let want: Vec<f64> = after.map(|after| number(step, "begin_min") + after.as_f64().unwrap()).collect();
            let got = list(step, "mix_at_min");
            assert_eq!(got.len(), want.len(), "{}", what(one, step));
            for (got, want) in got.iter().zip(want) {
                same(got.as_f64().unwrap(), want, &what(one, step));
            }
        }
    }
}

/// Lightener from its first look on again and again and at the rinse, colour when it is rinsed; no two looks farther apart than the
/// first is from the second.
#[test]
fn every_look_is_before_the_rinse_and_the_last_at_it() {
    for one in varied() {
        for step in list(&one.data, "order") {
            let looks: Vec<f64> = list(step, "look_at_min").iter().map(|at| at.as_f64().unwrap()).collect();
            let (begin, rinse) = (number(step, "begin_min"), number(step, "rinse_by_min"));
            assert!(looks.is_sorted_by(|a, b| a < b) && looks[0] > begin, "{}: {looks:?}", what(one, step));
            assert_eq!(looks.last(), Some(&rinse), "{}", what(one, step));
            let gaps: Vec<f64> = looks.windows(2).map(|pair| pair[1] - pair[0]).collect();
            assert!(gaps.iter().all(|gap| *gap <= gaps[0] + 1e-6), "{}: {looks:?}", what(one, step));
            if let Some(last) = step["look_at_last_min"].as_f64() {
                assert!(looks.contains(&last) && last < rinse, "{}: {last} of {looks:?}", what(one, step));
                // The last strand gets as long to its first look as the first strand.
                let first = looks[0] - begin;
                let due = number(step, "applied_min") + first;
                assert!(last >= due - 1e-6 && last - due <= gaps[0] + 1e-6, "{}: {last} for {due}", what(one, step));
            }
        }
    }
}

#[test]
fn everything_of_the_file_is_in_the_order_once() {
    for one in varied() {
        let names = |key: &str| list(&one.file, key).iter().map(|entry| word(entry, "name").to_owned());
        let mut want: Vec<String> = names("section").chain(names("toner")).collect();
        let steps = list(&one.data, "order");
        let shadow = |step: &&Value| step["stage"] == "root-shadow";
        assert_eq!(
            steps.iter().filter(shadow).count(),
            usize::from(!one.file["root_shadow"].is_null()),
            "{}",
            one.name
        );
        let mut got: Vec<String> =
            steps.iter().filter(|step| !shadow(step)).map(|step| word(step, "name").to_owned()).collect();
        let numbers: Vec<f64> = steps.iter().map(|step| number(step, "number")).collect();
        assert_eq!(numbers, (1..=steps.len()).map(|place| place as f64).collect::<Vec<_>>(), "{}", one.name);
        want.sort();
        got.sort();
        assert_eq!(got, want, "{}", one.name);
        let sheet = one.plan.to_string();
        for name in want {
            assert!(sheet.contains(&name), "{}: {name} is not on the sheet", one.name);
        }
        let sections: Vec<&Value> =
            list(&one.data, "head.sections").iter().map(|section| &section["section"]).collect();
        let coloured: Vec<&Value> = list(&one.data, "colour").iter().map(|section| &section["section"]).collect();
        let ordered: Vec<&Value> =
            steps.iter().filter(|step| step["stage"] == "section").map(|step| &step["name"]).collect();
        assert!(sections == ordered && coloured == ordered, "{}: {sections:?}, {coloured:?}", one.name);
    }
}

#[test]
fn the_chair_is_taken_for_the_sections_what_comes_after_and_other_work() {
    for one in varied() {
        let chair = &one.data["chair"];
        let other = chair["other_work_min"].as_f64();
        assert_eq!(other, one.file["service"]["other_work_min"].as_f64(), "{}", one.name);
        let parts = number(chair, "sections_min") + number(chair, "after_rinse_min");
        same(number(chair, "total_min"), parts + other.unwrap_or(0.0), &one.name);
        let before: f64 = list(&one.data, "first_steps")
            .iter()
            .filter(|step| step["planned"] == true)
            .map(|step| bounds(step, if chair["clock"] == "day" { "hands_min" } else { "apply_min" })[1])
            .sum();
        let day = &one.data["day"];
        if chair["clock"] == "day" {
            let hands =
                |order: &str| list(day, &format!("{order}.hands_min")).iter().filter_map(Value::as_f64).sum::<f64>();
            let all = before + hands("proposed") + hands("after_rinse") + other.unwrap_or(0.0);
            same(number(chair, "hands_on_min"), all, &one.name);
            let rinsed = number(chair, "first_steps_min") + number(day, "proposed.finish_min");
            same(number(chair, "sections_min"), rinsed, &one.name);
            let booked = number(&one.data, "booking.book_min");
            assert!(booked % 15.0 == 0.0 && booked >= number(chair, "total_min") - 1e-6, "{}: {booked}", one.name);
            assert!(booked - number(chair, "total_min") < 15.0, "{}: {booked}", one.name);
        } else {
            let steps = list(&one.data, "order");
            let applied: f64 = steps.iter().map(|step| applying(one, step)).sum();
            same(number(chair, "hands_on_min"), before + applied + other.unwrap_or(0.0), &one.name);
            let rinsed = |stage: bool| {
                let of = steps.iter().filter(|step| (step["stage"] == "section") == stage);
                of.map(|step| number(step, "rinse_by_min")).fold(0.0, f64::max)
            };
            same(number(chair, "sections_min"), rinsed(true), &one.name);
            same(number(chair, "after_rinse_min"), rinsed(false), &one.name);
        }
    }
}

/// Every order that a plan lays out on the clock.
fn laid_out(one: &Known) -> impl Iterator<Item = (&'static str, &Value)> {
    let orders = ["as_planned", "proposed", "after_rinse"].map(|key| (key, at(&one.data, &format!("day.{key}"))));
    orders.into_iter().filter(|(_, order)| !order.is_null())
}

#[test]
fn nobody_has_hands_in_two_places_and_no_basin_two_heads() {
    let mut held = 0;
    for one in varied() {
        let people = number(&one.data, "day.floor.people");
        for (key, order) in laid_out(one) {
            let pieces = list(order, "pieces");
            for (place, a) in pieces.iter().enumerate() {
                let (from, to) = (number(a, "from_min"), number(a, "to_min"));
                assert!(
                    from >= 0.0 && to > from && to <= number(order, "finish_min") + 1e-6,
                    "{}: {key}: {a}",
                    one.name
                );
                assert!(number(a, "person") < people, "{}: {key}: {a}", one.name);
                for b in pieces[place + 1..].iter().filter(|b| b["person"] == a["person"]) {
                    let apart = number(b, "from_min") >= to - 1e-6 || number(b, "to_min") <= from + 1e-6;
                    assert!(apart, "{}: {key}: {a} and {b}", one.name);
                    held += 1;
                }
            }
            for (person, hands) in list(order, "hands_min").iter().enumerate() {
                let own = pieces.iter().filter(|piece| number(piece, "person") == person as f64);
                let sum: f64 = own.map(|piece| number(piece, "to_min") - number(piece, "from_min")).sum();
                same(hands.as_f64().unwrap(), sum, &one.name);
            }
        }
    }
    assert!(held > 1000, "{held}");
}

#[test]
fn on_the_clock_of_the_day_everything_is_on_before_it_is_rinsed() {
    for one in varied() {
        for (key, order) in laid_out(one) {
            let mut visits = Vec::new();
            for times in list(order, "sections") {
                let what = format!("{}: {key}: {}", one.name, times["name"]);
                let [start, applied, rinse, rinsed] =
                    ["start_min", "applied_min", "rinse_min", "rinsed_min"].map(|field| number(times, field));
                assert!(start < applied && applied <= rinse + 1e-6 && rinse <= rinsed, "{what}");
                same(number(times, "on_hair_min"), rinse - start, &what);
                same(rinsed - rinse, number(&one.data, "day.floor.rinse_min"), &what);
                assert!(rinsed <= number(order, "finish_min") + 1e-6, "{what}");
                if key != "after_rinse" {
                    let work = named(list(&one.data, "day.work"), "name", word(times, "name"));
                    assert!(applied - start >= number(work, "apply_min") - 1e-6, "{what}");
                    assert!(rinse - applied >= number(work, "develop_min") - 1e-6, "{what}");
                    same(number(times, "spare_min"), number(work, "longest_min") - (rinse - start), &what);
                }
                visits.push(number(times, "visit"));
            }
            let most = visits.iter().copied().fold(0.0, f64::max);
            assert_eq!(number(order, "visits"), most, "{}: {key}: {visits:?}", one.name);
        }
    }
}

#[test]
fn the_proposed_order_keeps_its_rules_and_loses_nothing() {
    for one in varied() {
        let day = &one.data["day"];
        let sections = list(day, "proposed.sections");
        for rule in list(day, "rules").iter().filter(|_| !sections.is_empty()) {
            let (first, then) =
                (named(sections, "name", word(rule, "first")), named(sections, "name", word(rule, "then")));
            let over = number(first, if rule["rinsed"] == true { "rinsed_min" } else { "applied_min" });
            assert!(over <= number(then, "start_min") + 1e-6, "{}: {rule}", one.name);
        }
        let finish = |order: &str| at(day, order)["finish_min"].as_f64();
        if let (Some(planned), Some(best)) = (finish("as_planned"), finish("proposed")) {
            same(number(day, "order_saves_min"), (planned - best).max(0.0), &one.name);
            let later = day["house_rules_cost_min"].as_f64();
            assert_eq!(later.is_some(), best > planned, "{}: {best} for {planned}", one.name);
            same(later.unwrap_or(0.0), (best - planned).max(0.0), &one.name);
        }
        if let Some(best) = finish("proposed") {
            same(number(day, "finish_min"), best + finish("after_rinse").unwrap_or(0.0), &one.name);
            assert!(number(day, "helper_saves_min") >= 0.0, "{}", one.name);
        }
    }
}

#[test]
fn the_work_of_the_day_is_that_of_the_sheet() {
    for one in varied() {
        let steps: Vec<&Value> = list(&one.data, "order").iter().filter(|step| step["stage"] == "section").collect();
        let works = list(&one.data, "day.work");
        assert_eq!(works.len(), steps.len(), "{}", one.name);
        for (work, step) in works.iter().zip(steps) {
            assert_eq!(work["name"], step["name"], "{}", one.name);
            same(number(work, "apply_min"), applying(one, step), &what(one, step));
            assert_eq!(number(work, "bowls"), list(step, "mix_at_min").len() as f64, "{}", what(one, step));
            let stated = number(entry(one, step), "develop_min");
            assert!(number(work, "develop_min") <= stated + 1e-6, "{}", what(one, step));
            assert!(number(work, "longest_min") <= allowed(one, step) + 1e-6, "{}", what(one, step));
            let more = number_or(&one.file, "salon.stay_longer_min", 10.0);
            // What not every product states ends as planned.
            let stay = if all_state_it(one, step) { more } else { 0.0 };
            let may = (applying(one, step) + stated + stay).min(allowed(one, step));
            assert!(number(work, "longest_min") >= may - 1e-6, "{}", what(one, step));
            // Fresh bowls are mixed while the first strands carry it.
            let mixing = (number(work, "bowls") - 1.0) * number(&one.data, "day.floor.mix_min");
            let (on, develop) = (applying(one, step) + mixing, number(work, "develop_min"));
            assert!(develop == 0.0 || on + develop <= number(work, "longest_min") + 1e-6, "{}", what(one, step));
            let foils = entry(one, step)["foils"].as_f64().filter(|foils| *foils > 0.0);
            assert!(foils.is_none() || work["foils"].as_f64() == foils, "{}", what(one, step));
        }
    }
}

#[test]
fn a_longer_development_is_rinsed_as_much_later_as_its_product_allows() {
    for one in examples() {
        for (place, section) in list(&one.file, "section").iter().enumerate() {
            let mut before = f64::NEG_INFINITY;
            for develop in [10.0, 20.0, 35.0, 60.0] {
                let after = one.with(json!({ format!("section.{place}.develop_min"): develop }));
                let step = named(list(&after.data, "order"), "name", word(section, "name")).clone();
                let on_hair = number(&step, "rinse_by_min") - number(&step, "begin_min");
                assert!(on_hair >= before - 1e-6, "{}: {on_hair} after {before}", what(one, &step));
                assert!(on_hair <= applying(&after, &step) + develop + 1e-6, "{}", what(one, &step));
                before = on_hair;
            }
        }
    }
}

#[test]
fn ten_more_minutes_of_other_work_are_ten_more_in_the_chair_and_nowhere_else() {
    for one in some() {
        let stated = one.file["service"]["other_work_min"].as_f64().unwrap_or(0.0);
        let (less, more) = (
            one.with(json!({ "service.other_work_min": stated })),
            one.with(json!({ "service.other_work_min": stated + 10.0 })),
        );
        for field in ["total_min", "hands_on_min"] {
            same(number(&more.data["chair"], field), number(&less.data["chair"], field) + 10.0, &one.name);
        }
        for key in ["order", "day", "lift", "head", "stock", "colour"] {
            assert_eq!(less.data[key], more.data[key], "{}: {key}", one.name);
        }
        assert_eq!(in_bowls(&less.data), in_bowls(&more.data), "{}", one.name);
    }
}

/// Toners and shadow count from the last rinse of a section, and the clock from the start of the service.
#[test]
fn cards_say_the_minutes_of_the_sheet_on_one_clock() {
    for one in varied() {
        let cards = serde_json::to_value(mixing_cards(&one.plan)).unwrap();
        let cards: Vec<&Value> = cards.as_array().unwrap().iter().filter(|card| card["then"].is_null()).collect();
        let steps = list(&one.data, "order");
        let bowls: usize = steps.iter().map(|step| list(step, "mix_at_min").len()).sum();
        assert_eq!(cards.len(), bowls, "{}", one.name);
        let sections = steps.iter().filter(|step| step["stage"] == "section");
        let rinsed = sections.map(|step| number(step, "rinse_by_min")).fold(0.0, f64::max);
        for card in cards {
            let step = named(steps, "name", word(card, "name"));
            let mix = named(list(&one.data, "mixes"), "name", word(card, "name"));
            let from = if card["stage"] == "section" { 0.0 } else { rinsed };
            let bowl = number(card, "bowl") as usize;
            let mixed = from + list(step, "mix_at_min")[bowl - 1].as_f64().unwrap();
            same(number(card, "minutes.mixed_at_min"), mixed, &what(one, step));
            same(number(card, "minutes.use_by_min"), mixed + number(mix, "bowls.0.use_within_min"), &what(one, step));
            same(number(card, "minutes.rinse_by_min"), from + number(step, "rinse_by_min"), &what(one, step));
            let looks = list(step, "look_at_min").iter().map(|at| from + at.as_f64().unwrap());
            for (got, want) in list(card, "minutes.look_at_min").iter().zip(looks) {
                same(got.as_f64().unwrap(), want, &what(one, step));
            }
            assert_eq!(card["parts"], mix["bowls"][0]["parts"], "{}", what(one, step));
            assert_eq!(card["total_g"], mix["bowls"][0]["total_g"], "{}", what(one, step));
            assert_eq!(number(card, "bowls"), list(step, "mix_at_min").len() as f64, "{}", what(one, step));
            on_the_clock(one, card);
        }
    }
}

/// Ten in the morning and 81 minutes are 11:21; without a time of day there is no clock.
fn on_the_clock(one: &Known, card: &Value) {
    let start: Result<jiff::civil::DateTime, _> = word(&one.data, "start").parse();
    let timed = word(&one.data, "start").contains('T');
    assert_eq!(card["clock"].is_null(), !timed, "{}", one.name);
    let Some(start) = start.ok().filter(|_| timed) else { return };
    for (minutes, clock) in [("mixed_at_min", "mixed_at"), ("use_by_min", "use_by"), ("rinse_by_min", "rinse_by")] {
        let at: jiff::civil::DateTime = word(&card["clock"], clock).parse().unwrap();
        let seconds = at.duration_since(start).as_secs_f64();
        assert!((seconds / 60.0 - number(&card["minutes"], minutes)).abs() < 1.0 / 59.0, "{}: {card}", one.name);
    }
}
