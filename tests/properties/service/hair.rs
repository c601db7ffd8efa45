//! How much hair there is and what it takes: shares of one head, counted once.

use super::files::{Known, at, bounds, examples, list, named, number, one, same, varied, word};
use serde_json::{Value, json};

fn each_section(mut law: impl FnMut(&Known, &Value)) {
    for one in varied() {
        list(&one.data, "head.sections").iter().for_each(|section| law(one, section));
    }
}

#[test]
fn a_section_has_its_share_of_the_hairs() {
    each_section(|one, section| {
        let share = number(section, "share_percent") / 100.0;
        for (got, all) in bounds(section, "hairs").into_iter().zip(bounds(&one.data, "head.head_hairs")) {
            same(got, all * share, &format!("{}: {}", one.name, section["section"]));
        }
        let entry = named(list(&one.file, "section"), "name", word(section, "section"));
        if let Some(stated) = entry["share_percent"].as_f64() {
            assert_eq!(number(section, "share_percent"), stated, "{}", one.name);
        }
    });
}

#[test]
fn the_hair_of_the_head_is_its_mass_per_length_times_its_length() {
    let mut held = 0;
    for one in varied() {
        let head = &one.data["head"];
        let Some(long) = one.file["analysis"]["length_cm"].as_f64() else {
            assert!(head["hair_g"].is_null() && list(head, "zones").is_empty(), "{}", one.name);
            continue;
        };
        let hair = bounds(head, "hair_g");
        for (got, of_cm) in hair.into_iter().zip(bounds(head, "mass_per_length_g_per_cm")) {
            same(got, of_cm * long, &one.name);
        }
        // Roots, mid-lengths and ends are all of it.
        for (bound, all) in hair.into_iter().enumerate() {
            let sum: f64 = list(head, "zones").iter().map(|zone| bounds(zone, "hair_g")[bound]).sum();
            same(sum, all, &one.name);
        }
        held += 1;
    }
    assert!(held > 15, "{held}");
}

#[test]
fn the_zones_of_a_section_are_its_hair_and_none_has_more_than_the_head() {
    each_section(|one, section| {
        let zones = list(section, "zones");
        assert_eq!(zones.is_empty(), section["hair_g"].is_null(), "{}", one.name);
        if zones.is_empty() {
            return;
        }
        let what = format!("{}: {}", one.name, section["section"]);
        let sum: f64 = zones.iter().map(|zone| bounds(zone, "hair_g")[1]).sum();
        same(sum, bounds(section, "hair_g")[1], &what);
        let surface: f64 = zones.iter().map(|zone| bounds(zone, "surface_cm2")[1]).sum();
        same(surface, bounds(section, "surface_cm2")[1], &what);
        for zone in zones {
            let all = named(list(&one.data, "head.zones"), "zone", word(zone, "zone"));
            assert!(bounds(zone, "hair_g")[1] <= bounds(all, "hair_g")[1] + 1e-6, "{what}: {zone}");
        }
        let hair = bounds(section, "hair_g")[1];
        assert!(
            hair <= bounds(&one.data, "head.hair_g")[1] * number(section, "share_percent") / 100.0
                + bounds(section, "takes_g")[2],
            "{what}"
        );
    });
}

#[test]
fn foils_are_counted_through_without_a_gap() {
    let mut held = 0;
    for one in varied() {
        let mut laid = 0.0;
        for section in list(&one.data, "head.sections") {
            let foils = if section["foils"].is_null() { 0.0 } else { bounds(section, "foils")[1] };
            if foils == 0.0 {
                assert!(section["first_foil"].is_null() && section["last_foil"].is_null(), "{}", one.name);
                continue;
            }
            assert_eq!(
                (number(section, "first_foil"), number(section, "last_foil")),
                (laid + 1.0, laid + foils),
                "{}",
                one.name
            );
            laid += foils;
            held += 1;
        }
        let counted: f64 = list(&one.data, "head.look.places")
            .iter()
            .filter_map(|place| Some(place["last_foil"].as_f64()? - place["first_foil"].as_f64()? + 1.0))
            .sum();
        assert!(counted <= laid, "{}: {counted} of {laid}", one.name);
    }
    assert!(held > 50, "{held}");
}

#[test]
fn the_mixture_for_a_foil_is_that_of_the_section_shared_out() {
    let mut held = 0;
    each_section(|one, section| {
        if section["mix_per_foil_g"].is_null() {
            return;
        }
        let (foils, takes) = (bounds(section, "foils"), bounds(section, "takes_g"));
        if foils[0] == foils[2] && section["ends_between"].is_null() {
            for (got, all) in bounds(section, "mix_per_foil_g").into_iter().zip(takes) {
                same(got * foils[1], all, &format!("{}: {}", one.name, section["section"]));
            }
            held += 1;
        }
    });
    assert!(held > 20, "{held}");
}

#[test]
fn twice_the_share_is_twice_the_hair_and_what_it_takes() {
    for one in examples() {
        for (place, entry) in list(&one.file, "section").iter().enumerate() {
            let Some(share) = entry["share_percent"].as_f64() else { continue };
            // A region bears only so much.
            if !list(entry, "regions").is_empty() {
                continue;
            }
            let [once, twice] = [share / 2.0, share].map(|share| {
                one.with(
                    json!({ format!("section.{place}.share_percent"): share, format!("section.{place}.mix_g"): null }),
                )
            });
            let section =
                |plan: &Known| named(list(&plan.data, "head.sections"), "section", word(entry, "name")).clone();
            let (small, large) = (section(&once), section(&twice));
            for field in ["hairs", "hair_g", "takes_g", "surface_cm2", "film_g"] {
                if small[field].is_null() {
                    continue;
                }
                for (small, large) in bounds(&small, field).into_iter().zip(bounds(&large, field)) {
                    same(large, 2.0 * small, &format!("{}: {}: {field}", one.name, entry["name"]));
                }
            }
            let needed =
                |plan: &Known| bounds(named(list(&plan.data, "mixes"), "name", word(entry, "name")), "needed_g");
            for (small, large) in needed(&once).into_iter().zip(needed(&twice)) {
                same(large, 2.0 * small, &format!("{}: {}", one.name, entry["name"]));
            }
        }
    }
}

#[test]
fn longer_hair_takes_no_less() {
    for one in examples().iter().filter(|one| !one.file["analysis"]["length_cm"].is_null()) {
        let open = one.changed(|file| {
            for section in file["section"].as_array_mut().unwrap() {
                section["mix_g"] = Value::Null;
            }
        });
        let mut before: Vec<f64> = Vec::new();
        for long in [20.0, 30.0, 45.0, 60.0] {
            let plan = open.with(json!({ "analysis.length_cm": long }));
            let needed: Vec<f64> = list(&plan.data, "mixes")
                .iter()
                .filter(|mix| mix["stage"] == "section")
                .map(|mix| bounds(mix, "needed_g")[1])
                .collect();
            assert!(
                before.iter().zip(&needed).all(|(short, long)| short <= &(long + 1e-6)),
                "{}: {before:?}, {needed:?}",
                one.name
            );
            before = needed;
        }
    }
}

/// What is picked, weighed by its stretch, reads between the hair that is left and the target.
#[test]
fn levels_along_the_strand_follow_each_other_from_scalp_to_ends() {
    let mut held = 0;
    each_section(|one, section| {
        let stretches = list(section, "along.stretches");
        let Some(first) = stretches.first() else { return };
        assert_eq!(number(first, "from_cm"), 0.0, "{}", one.name);
        for pair in stretches.windows(2) {
            assert_eq!(pair[0]["to_cm"], pair[1]["from_cm"], "{}", one.name);
        }
        assert!(stretches.iter().all(|one| number(one, "from_cm") < number(one, "to_cm")), "{}", one.name);
        same(number(stretches.last().unwrap(), "to_cm"), number(&one.file, "analysis.length_cm"), &one.name);
        held += 1;
    });
    assert!(held > 20, "{held}");
}

#[test]
fn the_regrowth_shows_later_where_the_colour_begins_farther_from_the_scalp() {
    let base = one("soft-gradient");
    let mut before = [0.0; 3];
    for start in [0.5, 1.0, 3.0, 6.0] {
        let plan = base.with(json!({ "section.1.start_cm": start }));
        let crown = named(list(&plan.data, "head.sections"), "section", "crown");
        assert_eq!(bounds(crown, "start_cm"), [start; 3]);
        let weeks = bounds(crown, "line_shows_after_weeks");
        assert!(weeks.iter().zip(before).all(|(now, before)| *now >= before), "{weeks:?} after {before:?}");
        before = weeks;
    }
}

/// Without texture or density stated, and with them, each head has the hairs of its density.
#[test]
fn denser_or_coarser_hair_is_no_less_hair() {
    for one in examples().iter().filter(|one| !one.file["analysis"]["length_cm"].is_null()) {
        for (field, ladder) in [("density", ["low", "medium", "high"]), ("texture", ["fine", "medium", "coarse"])] {
            let masses: Vec<f64> = ladder
                .iter()
                .map(|word| one.with(json!({ format!("analysis.{field}"): word })))
                .map(|plan| bounds(&plan.data, "head.hair_g")[1])
                .collect();
            assert!(masses.is_sorted() && masses[0] < masses[2], "{}: {field}: {masses:?}", one.name);
        }
    }
}

/// What took more than is usual once is counted on again: an earlier use moves the amount to its side.
#[test]
fn what_was_used_before_moves_the_amount_to_its_side() {
    let base = one("soft-gradient").with(json!({ "section.0.mix_g": null }));
    let mut before = 0.0;
    for used in [20.0, 40.0, 60.0, 80.0] {
        let plan = base.with(json!({ "section.0.used_g": used }));
        let needed = bounds(named(list(&plan.data, "mixes"), "name", "nape"), "needed_g");
        let wide = bounds(named(list(&base.data, "mixes"), "name", "nape"), "needed_g");
        assert!(needed[1] > before, "{used}: {needed:?}");
        assert!(needed[2] / needed[0] < wide[2] / wide[0], "{used}: {needed:?} and {wide:?}");
        assert_eq!(at(&plan.data, "head.sections.0.used_g").as_f64(), Some(used));
        before = needed[1];
    }
}
