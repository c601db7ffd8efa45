//! Steps before the colour: their grams, their minutes, and what waits for them.

use super::files::{Known, at, bounds, list, named, number, product, same, varied, word};
use foilwork::service::mixing_cards;
use serde_json::{Value, json};

fn planned(one: &Known) -> impl Iterator<Item = &Value> {
    list(&one.data, "first_steps").iter().filter(|step| step["planned"] == true)
}

fn each(mut law: impl FnMut(&Known, &Value, &str)) {
    let mut held = 0;
    for one in varied() {
        for step in list(&one.data, "first_steps") {
            law(one, step, &format!("{}: {}", one.name, step["section"]));
            held += 1;
        }
    }
    assert!(held > 8, "{held}");
}

#[test]
fn a_step_is_weighed_of_its_parts() {
    each(|one, step, what| {
        let parts = list(step, "parts");
        assert_eq!(parts.is_empty(), !step["why_not"].is_null(), "{what}");
        for bound in 0..3 {
            let sum: f64 = parts.iter().map(|part| bounds(part, "mass_g")[bound]).sum();
            assert!(parts.is_empty() || (sum - bounds(step, "mix_g")[bound]).abs() < 1e-6, "{what}: {sum}");
        }
        let division = at(&one.file, "salon.scale_division_g").as_f64().unwrap_or(0.1);
        for part in parts {
            let (weigh, exact) = (number(part, "weigh_g"), bounds(part, "mass_g")[1]);
            assert!((weigh - exact).abs() <= division / 2.0 + 1e-9, "{what}: {part}");
            assert!((weigh / division - (weigh / division).round()).abs() < 1e-6, "{what}: {part}");
        }
    });
}

/// The ratio of the lightener, in a bowl of lightener and one developer; the strength is what the developer brings to it.
#[test]
fn what_cleans_or_lightens_first_is_mixed_as_its_maker_says() {
    let mut held = 0;
    each(|one, step, what| {
        let Some([powder, liquid]) = list(step, "parts").first_chunk::<2>() else { return };
        let ratio = word(product(&one.file, word(powder, "product")), "ratio").split_once(':').unwrap();
        let (a, b): (f64, f64) = (ratio.0.parse().unwrap(), ratio.1.parse().unwrap());
        same(bounds(powder, "mass_g")[1] * b, bounds(liquid, "mass_g")[1] * a, what);
        let bottle = word(product(&one.file, word(liquid, "product")), "strength");
        let Some(strength) = bottle.strip_suffix(" % w/w").and_then(|text| text.parse::<f64>().ok()) else { return };
        let (dry, wet) = (number(powder, "weigh_g"), number(liquid, "weigh_g"));
        same(bounds(step, "on_hair_ww_percent")[1], strength * wet / (dry + wet), what);
        held += 1;
    });
    assert!(held > 4, "{held}");
}

/// Without foil a gram of hair takes 1.5 g, from 1.0 to 2.5 (assumed).
#[test]
fn a_step_on_all_of_the_hair_takes_what_that_hair_takes() {
    let mut held = 0;
    each(|one, step, what| {
        let section = named(list(&one.data, "head.sections"), "section", word(step, "section"));
        if section["hair_g"].is_null() || !["clean-first", "pre-lighten"].contains(&word(step, "step")) {
            return;
        }
        let takes = [1.0, 1.5, 2.5];
        for ((got, hair), take) in bounds(step, "mix_g").into_iter().zip(bounds(section, "hair_g")).zip(takes) {
            same(got, hair * take, what);
        }
        held += 1;
    });
    assert!(held > 4, "{held}");
}

/// One after the other by the same hands: each bowl is mixed when the step before is over.
#[test]
fn steps_follow_each_other_and_the_colour_follows_them() {
    let mut held = 0;
    for one in varied() {
        let mut free = [0.0; 3];
        let mix = number(&one.data, "day.floor.mix_min");
        for (place, step) in planned(one).enumerate() {
            let what = format!("{}: {}", one.name, step["section"]);
            let [begin, apply, applied, develop, due, over] =
                ["begin_min", "apply_min", "applied_min", "develop_min", "due_min", "over_min"]
                    .map(|field| bounds(step, field));
            for bound in 0..3 {
                let mixed = if place == 0 { 0.0 } else { mix };
                same(begin[bound], free[bound] + mixed, &what);
                same(applied[bound], begin[bound] + apply[bound], &what);
                same(due[bound], applied[bound] + develop[bound], &what);
                let rinsed = step["then"] == "rinse";
                let basin = number(&one.data, "day.floor.walk_min") + number(&one.data, "day.floor.rinse_min");
                same(over[bound], due[bound] + if rinsed { basin } else { 0.0 }, &what);
                let hands = bounds(step, "hands_min")[bound] - mix - if rinsed { basin } else { 0.0 };
                assert!(hands >= apply[bound] - 1e-6 && hands <= apply[bound] + develop[bound], "{what}: {hands}");
            }
            free = over;
            held += 1;
        }
        let first = &list(&one.data, "order")[0];
        if planned(one).next().is_some() {
            same(number(first, "begin_min"), free[1], &one.name);
        } else {
            assert_eq!(number(first, "begin_min"), 0.0, "{}", one.name);
        }
    }
    assert!(held > 4, "{held}");
}

#[test]
fn a_step_that_is_not_planned_has_no_place_on_the_clock() {
    each(|_, step, what| {
        for field in ["begin_min", "applied_min", "due_min", "over_min"] {
            assert_eq!(step[field].is_null(), step["planned"] == false, "{what}: {field}");
        }
        assert!(step["planned"] == true || step["asked_for"] == true, "{what}");
    });
}

/// A step that is planned moves the sections behind it, and nothing in their bowls.
#[test]
fn a_step_less_begins_earlier_and_mixes_the_same() {
    for one in varied().iter().filter(|one| planned(one).next().is_some()) {
        let less = one.changed(|file| {
            for section in file["section"].as_array_mut().unwrap() {
                section["first"] = json!([]);
            }
        });
        assert_eq!(planned(&less).count(), 0, "{}", one.name);
        let after = number(&list(&one.data, "order")[0], "begin_min");
        for (with, without) in list(&one.data, "order").iter().zip(list(&less.data, "order")) {
            let later = if with["stage"] == "section" { after } else { 0.0 };
            for field in ["begin_min", "applied_min", "rinse_by_min"] {
                same(number(with, field), number(without, field) + later, &format!("{}: {}", one.name, with["name"]));
            }
        }
        for (with, without) in list(&one.data, "mixes").iter().zip(list(&less.data, "mixes")) {
            assert_eq!((&with["name"], &with["bowls"]), (&without["name"], &without["bowls"]), "{}", one.name);
        }
        same(number(&less.data, "chair.first_steps_min"), 0.0, &one.name);
    }
}

/// A card for each, with the parts of the step and its own end; what is not weighed has no parts.
#[test]
fn every_planned_step_has_its_card_before_the_bowls() {
    for one in varied() {
        let cards = serde_json::to_value(mixing_cards(&one.plan)).unwrap();
        let cards = cards.as_array().unwrap();
        let steps: Vec<&Value> = planned(one).collect();
        assert!(cards.iter().skip(steps.len()).all(|card| card["then"].is_null()), "{}", one.name);
        for (card, step) in cards.iter().zip(steps) {
            let what = format!("{}: {}", one.name, step["section"]);
            assert_eq!((&card["then"], &card["mind"]), (&step["then"], &step["mind"]), "{what}");
            let mut sum = 0.0;
            for (part, want) in list(card, "parts").iter().zip(list(step, "parts")) {
                sum += number(want, "weigh_g");
                assert_eq!((&part["product"], &part["weigh_g"]), (&want["product"], &want["weigh_g"]), "{what}");
                same(number(part, "scale_shows_g"), sum, &what);
            }
            assert_eq!(list(card, "parts").len(), list(step, "parts").len(), "{what}");
            same(number(card, "total_g"), sum, &what);
            let exact: f64 = list(step, "parts").iter().map(|part| bounds(part, "mass_g")[1]).sum();
            let off = |part: &Value| {
                100.0 * (number(part, "weigh_g") * exact / (sum * bounds(part, "mass_g")[1]) - 1.0).abs()
            };
            let worst = list(step, "parts").iter().map(off).fold(0.0, f64::max);
            same(number(card, "worst_ratio_error_percent"), worst, &what);
            let [early, _, late] = bounds(step, "due_min");
            let ends = bounds(card, "minutes.ends_min");
            assert!(ends[0] <= early + 1e-6 && late <= ends[2] + 1e-6, "{what}: {ends:?}");
            assert!(word(card, "name").contains(word(step, "section")), "{what}");
        }
    }
}
