//! Where on the head things lie, in which order the house works, and what was wished.

use super::files::{Known, at, bounds, list, named, number, one, same, word};
use serde_json::{Value, json};

fn region(name: &str, place: [f64; 4]) -> Value {
    let [left, top, width, height] = place;
    json!({ "name": name, "area_percent": 50, "outline": name == "one", "front": false, "place": {
        "left_percent": left, "top_percent": top, "width_percent": width, "height_percent": height } })
}

/// Two halves of a head at two places, a section on each.
fn halves(first: [f64; 4], second: [f64; 4]) -> Result<Known, String> {
    let base = one("staged");
    let mut file = base.file.clone();
    file["region"] = json!([region("one", first), region("other", second)]);
    for (place, name) in ["one", "other"].iter().enumerate() {
        file["section"][place]["regions"] = json!([{ "name": name }]);
        file["section"][place]["share_percent"] = json!(20);
    }
    Known::of("halves", &file)
}

/// Twenty by twenty each: apart where either way they are twenty or more from each other.
#[test]
fn regions_lie_over_each_other_where_both_ways_they_are_nearer_than_they_are_wide() {
    for across in [-30.0, -20.0, -19.9, -5.0, 0.0, 10.0, 20.0, 30.0] {
        for down in [-30.0, -20.0, -10.0, 0.0, 5.0, 19.9, 20.0, 30.0] {
            let found = halves([40.0, 40.0, 20.0, 20.0], [40.0 + across, 40.0 + down, 20.0, 20.0]);
            let over = f64::abs(across) < 20.0 && f64::abs(down) < 20.0;
            assert_eq!(found.is_err(), over, "{across}, {down}: {:?}", found.err());
        }
    }
    for (place, fits) in [
        ([80.0, 80.0, 20.0, 20.0], true),
        ([80.1, 80.0, 20.0, 20.0], false),
        ([80.0, 80.1, 20.0, 20.0], false),
        ([80.0, 80.0, 20.1, 20.0], false),
        ([80.0, 80.0, 20.0, 20.1], false),
    ] {
        assert_eq!(halves([0.0, 0.0, 20.0, 20.0], place).is_ok(), fits, "{place:?}");
    }
}

/// All of the map is its width and height; half of it begins and ends half way.
#[test]
fn a_place_in_percent_is_that_part_of_the_map() {
    let places = |first, second| -> Vec<[f64; 4]> {
        let plan = halves(first, second).unwrap();
        let regions = list(&plan.data, "head.look.template.regions");
        regions.iter().map(|region| [0, 1, 2, 3].map(|i| region["place"][i].as_f64().unwrap())).collect()
    };
    let split = places([0.0, 0.0, 100.0, 50.0], [0.0, 50.0, 100.0, 50.0]);
    let (wide, high) = (split[0][2], 2.0 * split[0][3]);
    assert_eq!(split, [[0.0, 0.0, wide, high / 2.0], [0.0, high / 2.0, wide, high / 2.0]]);
    let apart = places([10.0, 20.0, 30.0, 40.0], [50.0, 70.0, 25.0, 20.0]);
    let want = [[10.0, 20.0, 30.0, 40.0], [50.0, 70.0, 25.0, 20.0]];
    for (got, want) in apart.iter().zip(want) {
        for (i, all) in [wide, high, wide, high].into_iter().enumerate() {
            same(got[i], want[i] / 100.0 * all, "place");
        }
    }
}

/// A section in two regions has its foils in them one after the other, as much as its hair is there: of 24 foils on a half and on 30 %
/// of the other half 18.46 and 5.54 are 18 and 6.
#[test]
fn the_foils_of_a_section_are_laid_out_over_its_regions_by_their_hair() {
    for percent in [10.0, 30.0, 50.0, 100.0] {
        let base = halves([0.0, 0.0, 100.0, 50.0], [0.0, 50.0, 100.0, 50.0]).unwrap();
        let plan = base.with(json!({
            "section.0.regions": [{ "name": "one" }, { "name": "other", "percent": percent }],
            "section.1.regions": [{ "name": "one", "percent": 5 }],
            "section.1.share_percent": 1,
            "section.0.regions.0.percent": 90,
        }));
        let section = named(list(&plan.data, "head.sections"), "section", "back");
        let places: Vec<&Value> =
            list(&plan.data, "head.look.places").iter().filter(|place| place["section"] == "back").collect();
        let mut next = number(section, "first_foil");
        for (place, hair) in places.iter().zip([90.0, percent]) {
            let here = number(place, "last_foil") - number(place, "first_foil") + 1.0;
            assert_eq!(number(place, "first_foil"), next, "{percent}: {place}");
            assert!((here - 24.0 * hair / (90.0 + percent)).abs() < 1.0, "{percent}: {place}");
            assert_eq!(number(place, "of_region_percent"), hair, "{percent}");
            next += here;
        }
        assert_eq!(next, number(section, "last_foil") + 1.0, "{percent}");
    }
}

/// Whose regrowth shows first where the hair is parted: of all that lie there.
#[test]
fn the_part_shows_the_first_line_of_what_lies_along_it() {
    let mut seen = Vec::new();
    for part in ["none", "centre", "left", "right"] {
        let plan = one("soft-gradient").with(json!({ "service.part": part }));
        let found = at(&plan.data, "head.look.part");
        let regions = list(found, "regions");
        let there = list(&plan.data, "head.look.places").iter().filter(|place| regions.contains(&place["region"]));
        let weeks = there.map(|place| {
            let section = named(list(&plan.data, "head.sections"), "section", word(place, "section"));
            bounds(section, "line_shows_after_weeks")
        });
        let first = weeks.reduce(|a, b| if b[1] < a[1] { b } else { a });
        assert_eq!(found["line_shows_after_weeks"].is_null(), first.is_none(), "{part}: {found}");
        if let Some(first) = first {
            assert_eq!(bounds(found, "line_shows_after_weeks"), first, "{part}");
            seen.push(part);
        }
    }
    assert!(seen.contains(&"centre") && !seen.contains(&"none"), "{seen:?}");
}

/// Roots, then what is not root in three parts of which the last is the ends.
#[test]
fn of_what_is_not_root_a_third_is_the_ends() {
    for long in [12.0, 25.0, 48.0, 70.0] {
        let plan = one("soft-gradient").with(json!({ "analysis.length_cm": long }));
        let zones = list(&plan.data, "head.zones");
        let hair = |zone: &str| bounds(named(zones, "zone", zone), "hair_g");
        let (roots, mid, ends) = (hair("roots"), hair("mid-lengths"), hair("ends"));
        for bound in 0..3 {
            same(mid[bound], 2.0 * ends[bound], &format!("{long} cm"));
            let of_cm = bounds(&plan.data, "head.mass_per_length_g_per_cm")[bound];
            same(roots[bound], of_cm * 2.5, &format!("{long} cm"));
        }
    }
}

/// Of 50 % taken as much is left as is taken, of 25 % three times as much; of it so many percent are painted.
#[test]
fn ends_between_foils_are_of_the_hair_that_the_foils_leave() {
    for (taken, percent) in [(50.0, 50.0), (25.0, 50.0), (80.0, 100.0), (50.0, 10.0)] {
        let with = |ends: Value| {
            one("staged").with(json!({
                "section.0.share_percent": 10, "section.0.taken_percent": taken, "section.0.mix_g": null,
                "section.0.transition_cm": 0, "section.0.ends_between": ends,
            }))
        };
        let plan = with(json!({ "from_cm": 20, "percent": percent }));
        let section = &list(&plan.data, "head.sections")[0];
        let share = 10.0 * (100.0 - taken) / taken * percent / 100.0;
        same(number(section, "ends_between.share_percent"), share, "share");
        let of_cm = bounds(&plan.data, "head.mass_per_length_g_per_cm");
        for (got, of_cm) in bounds(section, "ends_between.hair_g").into_iter().zip(of_cm) {
            same(got, of_cm * share / 100.0 * (38.0 - 20.0), "hair of the ends");
        }
        let without = with(Value::Null);
        let bare = &list(&without.data, "head.sections")[0];
        for field in ["hair_g", "takes_g"] {
            let sum: Vec<f64> = bounds(bare, field)
                .iter()
                .zip(bounds(section, &format!("ends_between.{field}")))
                .map(|(a, b)| a + b)
                .collect();
            assert!(bounds(section, field).iter().zip(sum).all(|(got, want)| (got - want).abs() < 1e-6), "{field}");
        }
        // More of it is light there.
        let at_the_ends = |plan: &Value| bounds(list(plan, "along.stretches").last().unwrap(), "level")[1];
        assert!(at_the_ends(section) > at_the_ends(bare) + 0.01, "{taken}, {percent}");
    }
}

/// What lies in bands is all of the strand, from the scalp to the ends, and natural hair between what is stated.
#[test]
fn bands_that_are_stated_and_what_is_between_them_are_the_whole_strand() {
    let with = |bands: Value| {
        let mut file = one("soft-gradient").file.clone();
        file["analysis"]["existing"] = bands;
        Known::of("bands", &file)
    };
    let band =
        |from: f64, to: f64, level: f64| json!({ "from_cm": from, "to_cm": to, "level": level, "artificial": true });
    for (first, second) in [((0.0, 10.0), (10.0, 48.0)), ((3.0, 10.0), (20.0, 40.0)), ((5.0, 20.0), (20.0, 47.0))] {
        let plan = with(json!([band(second.0, second.1, 8.0), band(first.0, first.1, 4.0)])).unwrap();
        let found = list(&plan.data, "hair.strand.bands");
        let mut end = 0.0;
        for one in found {
            assert_eq!(number(one, "from_cm"), end, "{found:?}");
            end = number(one, "to_cm");
            let at = (number(one, "from_cm"), end);
            let want = if at == first {
                4.0
            } else if at == second {
                8.0
            } else {
                6.0
            };
            assert_eq!((number(one, "level"), one["artificial"] == true), (want, want != 6.0), "{found:?}");
        }
        assert_eq!(end, 48.0, "{found:?}");
        let natural = if first.0 > 0.0 { first.0 } else { 0.0 };
        assert_eq!(at(&plan.data, "head.natural_cm").as_f64(), Some(natural));
    }
    for (from, to, fits) in
        [(0.0, 48.0, true), (48.0, 50.0, false), (10.0, 48.1, false), (10.0, 10.0, false), (20.0, 10.0, false)]
    {
        assert_eq!(with(json!([band(from, to, 8.0)])).is_ok(), fits, "{from} to {to}");
    }
    assert!(with(json!([band(0.0, 10.0, 8.0), band(9.9, 20.0, 7.0)])).is_err(), "one over the other");
}

/// The pairs of the rules, in the order of the work.
fn pairs(plan: &Known, rule: &str) -> Vec<(String, String)> {
    let found = list(&plan.data, "day.rules").iter().filter(|one| one["rule"] == rule);
    let mut found: Vec<_> = found.map(|one| (word(one, "first").to_owned(), word(one, "then").to_owned())).collect();
    found.sort();
    found
}

/// Each rule of the house alone, on three sections that wait for nothing: which pairs it orders is read off the sections.
#[test]
fn a_rule_of_the_house_orders_the_pairs_that_it_names_and_no_others() {
    for variant in 0..16_u32 {
        let bit = |place: u32| variant >> place & 1 == 1;
        let targets = [7.5, if bit(0) { 7.0 } else { 7.5 }, if bit(1) { 8.0 } else { 7.5 }];
        let develop = [36.0, if bit(2) { 20.0 } else { 38.0 }, 30.0];
        let roots = [bit(3), false, bit(0)];
        let hairline = [false, bit(1), bit(2)];
        for rule in ["darkest-first", "slowest-first", "mid-lengths-first", "outline-first"] {
            let plan = one("finish-together").changed(|file| {
                file["salon"]["order_rules"] = json!([rule]);
                for (place, section) in file["section"].as_array_mut().unwrap().iter_mut().enumerate() {
                    section["after"] = json!([]);
                    section["developer"] = json!("developer 6");
                    section["target_level"] = json!(targets[place]);
                    section["develop_min"] = json!(develop[place]);
                    section["apply_min"] = json!(10);
                    section["zone"] = json!(if roots[place] { "roots" } else { "lengths" });
                    section["hairline"] = json!(hairline[place]);
                }
                file["section"][0]["same_foil_as"] = json!(["sides"]);
                file["section"][2]["same_foil_as"] = json!(["sides"]);
            });
            let one_foil = |a: usize, b: usize| a.abs_diff(b) == 1;
            let names = ["nape", "sides", "hairline"];
            let mut want = Vec::new();
            for a in 0..3 {
                for b in (0..3).filter(|b| *b != a) {
                    let orders = match rule {
                        "darkest-first" => one_foil(a, b) && targets[a] < targets[b],
                        "slowest-first" => develop[a] > develop[b],
                        "mid-lengths-first" => roots[b] && !roots[a],
                        _ => hairline[a] && !hairline[b],
                    };
                    if orders {
                        want.push((names[a].to_owned(), names[b].to_owned()));
                    }
                }
            }
            want.sort();
            assert_eq!(pairs(&plan, rule), want, "{rule}: {targets:?}, {develop:?}, {roots:?}, {hairline:?}");
            assert_eq!(list(&plan.data, "day.rules").len(), want.len(), "{rule}");
        }
    }
}

/// Held where every section aims within the tolerance and none is expected below it; sure by the low ends.
#[test]
fn a_wish_is_held_where_targets_and_forecasts_reach_it() {
    let mut seen = [0; 3];
    for level in [5.0, 5.5, 6.0, 7.0, 7.5, 8.0, 8.5, 9.0] {
        for tolerance in [0.1, 0.5, 1.0, 3.0] {
            let plan = one("staged").with(json!({
                "consultation.wish.0.level": level, "consultation.wish.0.tolerance_levels": tolerance,
            }));
            let wish = &list(&plan.data, "consulted.wishes")[0];
            let sections = list(wish, "sections");
            assert_eq!(sections.len(), 2);
            let aimed = sections.iter().all(|one| (number(one, "target_level") - level).abs() <= tolerance + 1e-9);
            let reached = |bound: usize| {
                sections.iter().all(|one| bounds(one, "forecast_level")[bound] >= level - tolerance - 1e-9)
            };
            assert_eq!(wish["why_not"].is_null(), aimed && reached(1), "{level} within {tolerance}: {wish}");
            assert_eq!(
                wish["is_sure"] == true,
                aimed && reached(1) && reached(0),
                "{level} within {tolerance}: {wish}"
            );
            if wish["is_sure"] == true {
                let told = list(&plan.data, "findings")
                    .iter()
                    .find(|found| found["rule"] == "wish" && word(found, "text").starts_with("lengths: level"));
                assert!(word(told.unwrap(), "text").contains("by the low end of its forecast"), "{told:?}");
            }
            seen[usize::from(aimed) + usize::from(aimed && reached(1))] += 1;
            for one in sections {
                let lift = named(list(&plan.data, "lift"), "section", word(one, "section"));
                assert_eq!(one["forecast_level"], lift["last_strand_level"]);
            }
        }
    }
    assert!(seen.iter().all(|seen| *seen > 0), "{seen:?}");
}

/// The ends may be as old as the slowest growth makes them: what is known since then is all there is to know.
#[test]
fn the_past_of_the_ends_is_open_where_they_may_be_older_than_what_is_known() {
    let base = one("staged");
    let start: jiff::civil::Date = "2026-12-02".parse().unwrap();
    let mut open = Vec::new();
    for weeks in [100, 150, 200, 251, 252, 300] {
        let since = start.saturating_sub(jiff::Span::new().weeks(weeks));
        let plan = base.with(json!({ "consultation.known_since": since.to_string() }));
        let oldest = bounds(&plan.data, "consulted.oldest_weeks")[2];
        let gaps =
            list(&plan.data, "consulted.gaps").iter().filter(|gap| gap["since"].is_null() && !gap["until"].is_null());
        assert_eq!(gaps.count() == 1, oldest > weeks as f64, "{weeks} of {oldest}");
        open.push(oldest > weeks as f64);
    }
    assert!(open.contains(&true) && open.contains(&false));
}
