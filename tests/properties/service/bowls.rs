//! What goes into a bowl: sums, ratio, parts, dose, strength.

use super::files::{Known, at, bounds, list, named, number, product, same, some, varied, word};
use serde_json::{Value, json};

/// Every bowl with its mix and the plan it is of.
fn each_bowl(mut law: impl FnMut(&Known, &Value, &Value)) {
    let mut seen = 0;
    for one in varied() {
        for mix in list(&one.data, "mixes") {
            for bowl in list(mix, "bowls") {
                law(one, mix, bowl);
                seen += 1;
            }
        }
    }
    assert!(seen > 100, "only {seen} bowls");
}

/// Grams of the parts of some kinds, exact.
fn grams(bowl: &Value, kinds: &[&str]) -> f64 {
    list(bowl, "parts")
        .iter()
        .filter(|part| kinds.contains(&word(part, "kind")))
        .map(|part| number(part, "exact_g"))
        .sum()
}

const PRODUCTS: [&str; 2] = ["lightener", "colour"];
const LIQUIDS: [&str; 2] = ["developer", "diluent"];

fn division(one: &Known) -> f64 {
    at(&one.file, "salon.scale_division_g").as_f64().unwrap_or(0.1)
}

#[test]
fn the_scale_shows_the_running_sum_of_what_is_weighed() {
    each_bowl(|one, mix, bowl| {
        let mut sum = 0.0;
        for part in list(bowl, "parts") {
            sum += number(part, "weigh_g");
            same(number(part, "scale_shows_g"), sum, &format!("{}: {}", one.name, mix["name"]));
        }
        same(number(bowl, "total_g"), sum, &format!("{}: {}", one.name, mix["name"]));
    });
}

/// The remainders of rounding are given out one division at a time, so that no part is off by a whole one.
#[test]
fn every_part_is_whole_divisions_within_one_of_its_exact_mass() {
    each_bowl(|one, mix, bowl| {
        let division = division(one);
        let exact: f64 = list(bowl, "parts").iter().map(|part| number(part, "exact_g")).sum();
        for part in list(bowl, "parts") {
            let (weigh, exact) = (number(part, "weigh_g"), number(part, "exact_g"));
            let whole = weigh / division;
            assert!((whole - whole.round()).abs() < 1e-6, "{}: {part}", one.name);
            assert!((weigh - exact).abs() < division + 1e-9, "{}: {part}", one.name);
        }
        let off = (number(bowl, "total_g") - exact).abs();
        assert!(off <= division / 2.0 + 1e-9, "{}: {}: {off}", one.name, mix["name"]);
    });
}

#[test]
fn the_worst_error_of_the_ratio_is_the_worst_of_its_parts() {
    each_bowl(|one, mix, bowl| {
        let parts = list(bowl, "parts");
        let (exact, total) = (parts.iter().map(|part| number(part, "exact_g")).sum::<f64>(), number(bowl, "total_g"));
        let off = |part: &Value| {
            let (is, should) = (number(part, "weigh_g") / total, number(part, "exact_g") / exact);
            100.0 * (is / should - 1.0).abs()
        };
        let worst = parts.iter().map(off).fold(0.0, f64::max);
        same(number(bowl, "worst_ratio_error_percent"), worst, &format!("{}: {}", one.name, mix["name"]));
    });
}

#[test]
fn products_and_developer_stand_in_the_ratio_of_the_mix() {
    each_bowl(|one, mix, bowl| {
        let (solid, liquid) = (grams(bowl, &PRODUCTS), grams(bowl, &LIQUIDS));
        let what = format!("{}: {}", one.name, mix["name"]);
        let Some(ratio) = mix["ratio"].as_str() else { return same(liquid, 0.0, &what) };
        let (left, right) = ratio.split_once(':').unwrap();
        let (a, b): (f64, f64) = (left.trim().parse().unwrap(), right.trim().parse().unwrap());
        same(solid * b, liquid * a, &what);
    });
}

/// What the file mixes in parts.
fn in_parts(one: &Known, name: &str) -> Vec<(String, f64)> {
    let of = |entries: &[Value]| {
        let found = entries.iter().find(|entry| entry["name"] == name);
        found.map(|entry| list(entry, "mix").to_vec()).unwrap_or_default()
    };
    let mut parts = of(list(&one.file, "section"));
    parts.extend(of(list(&one.file, "toner")));
    if name.starts_with("root shadow") {
        parts.extend(list(&one.file, "root_shadow.mix").to_vec());
    }
    parts.iter().map(|part| (word(part, "shade").to_owned(), number(part, "parts"))).collect()
}

#[test]
fn shades_share_the_product_as_their_parts_say() {
    let mut held = 0;
    each_bowl(|one, mix, bowl| {
        let parts = in_parts(one, word(mix, "name"));
        let (all, solid) = (parts.iter().map(|part| part.1).sum::<f64>(), grams(bowl, &PRODUCTS));
        for (shade, part) in parts {
            let weighed = named(list(bowl, "parts"), "product", &shade);
            same(number(weighed, "exact_g") * all, solid * part, &format!("{}: {shade}", one.name));
            held += 1;
        }
    });
    assert!(held > 60, "{held}");
}

#[test]
fn an_additive_is_its_dose_of_the_mix() {
    let mut held = 0;
    each_bowl(|one, _, bowl| {
        let mixed = grams(bowl, &PRODUCTS) + grams(bowl, &LIQUIDS);
        for part in list(bowl, "parts").iter().filter(|part| part["kind"] == "additive") {
            let dose = number(product(&one.file, word(part, "product")), "dose_percent");
            same(number(part, "exact_g"), mixed * dose / 100.0, &one.name);
            held += 1;
        }
    });
    assert!(held > 20, "{held}");
}

#[test]
fn all_bowls_together_hold_what_is_needed() {
    for one in varied() {
        for mix in list(&one.data, "mixes") {
            let of = |bowl: &Value| number(bowl, "count") * (grams(bowl, &PRODUCTS) + grams(bowl, &LIQUIDS));
            let mixed: f64 = list(mix, "bowls").iter().map(of).sum();
            same(mixed, bounds(mix, "needed_g")[1], &format!("{}: {}", one.name, mix["name"]));
            let made: f64 = list(mix, "bowls").iter().map(|bowl| number(bowl, "count") * number(bowl, "total_g")).sum();
            let left = (made - bounds(mix, "needed_g")[1]).max(0.0);
            same(number(mix, "leftover_g"), left, &format!("{}: {}", one.name, mix["name"]));
        }
    }
}

#[test]
fn no_bowl_holds_more_than_fits() {
    each_bowl(|one, mix, bowl| {
        let fits = at(&one.file, "salon.bowl_capacity_g").as_f64().unwrap_or(120.0);
        let mixed = grams(bowl, &PRODUCTS) + grams(bowl, &LIQUIDS);
        assert!(mixed <= fits + 1e-6, "{}: {}: {mixed} of {fits}", one.name, mix["name"]);
    });
}

/// A bowl is fresh when it is begun, and the last lasts to the end of the application.
#[test]
fn a_bowl_follows_before_the_one_before_is_too_old() {
    each_bowl(|one, mix, bowl| {
        let after: Vec<f64> = list(bowl, "mixed_after_min").iter().map(|at| at.as_f64().unwrap()).collect();
        let lasts = number(bowl, "use_within_min");
        let step = named(list(&one.data, "order"), "name", word(mix, "name"));
        let applying = number(step, "applied_min") - number(step, "begin_min");
        assert_eq!((after[0], after.len() as f64), (0.0, number(bowl, "count")), "{}: {}", one.name, mix["name"]);
        let ends = after.iter().skip(1).chain([&applying]);
        for (mixed, next) in after.iter().zip(ends) {
            assert!(next > mixed && next - mixed <= lasts + 1e-6, "{}: {}: {after:?}", one.name, mix["name"]);
        }
    });
}

#[test]
fn the_peroxide_on_the_hair_is_what_the_bottles_bring() {
    each_bowl(|one, mix, bowl| {
        let what = format!("{}: {}", one.name, mix["name"]);
        for (bound, of_mix) in bounds(mix, "on_hair_ww_percent").into_iter().enumerate() {
            let brings = |part: &Value| number(part, "weigh_g") * bounds(part, "peroxide_ww_percent")[bound];
            let brought: f64 = list(bowl, "parts").iter().map(brings).sum();
            same(bounds(bowl, "on_hair_ww_percent")[bound] * number(bowl, "total_g"), brought, &what);
            same(of_mix * number(bowl, "total_g"), brought, &what);
        }
    });
}

/// What the pharmacopoeia lets a solution so labelled be off is a sixth: 2.5 to 3.5 % where 3 is written.
#[test]
fn a_bottle_that_nobody_measured_may_be_off_by_a_sixth() {
    let mut held = 0;
    each_bowl(|one, mix, bowl| {
        let mut may = [0.0; 3];
        for part in list(bowl, "parts") {
            let brings = bounds(part, "peroxide_ww_percent");
            let measured = product(&one.file, word(part, "product"))["strength_basis"] == "measured";
            let off = if measured { [1.0; 3] } else { [5.0 / 6.0, 1.0, 7.0 / 6.0] };
            held += i32::from(!measured && brings[1] > 0.0);
            for (bound, sum) in may.iter_mut().enumerate() {
                *sum += number(part, "weigh_g") * brings[bound] * off[bound] / number(bowl, "total_g");
            }
        }
        for (got, want) in bounds(mix, "on_hair_as_labelled_ww_percent").into_iter().zip(may) {
            same(got, want, &format!("{}: {}", one.name, mix["name"]));
        }
    });
    assert!(held > 50, "{held}");
}

/// The strength in the words of the file, of a section, toner or shadow.
fn asked(one: &Known, name: &str) -> Option<f64> {
    let entries = list(&one.file, "section").iter().chain(list(&one.file, "toner"));
    let entry = entries.clone().find(|entry| entry["name"] == name).unwrap_or(&one.file["root_shadow"]);
    entry["strength"].as_str()?.strip_suffix(" % w/w")?.parse().ok()
}

#[test]
fn a_blend_has_the_strength_that_is_asked_for() {
    let mut held = 0;
    each_bowl(|one, mix, bowl| {
        let Some(want) = asked(one, word(mix, "name")) else { return };
        let what = format!("{}: {}", one.name, mix["name"]);
        same(bounds(mix, "developer_ww_percent")[1], want, &what);
        let liquids = || list(bowl, "parts").iter().filter(|part| LIQUIDS.contains(&word(part, "kind")));
        let brought: f64 = liquids().map(|part| number(part, "exact_g") * bounds(part, "peroxide_ww_percent")[1]).sum();
        same(brought / grams(bowl, &LIQUIDS), want, &what);
        let strengths: Vec<f64> = liquids().map(|part| bounds(part, "peroxide_ww_percent")[1]).collect();
        assert!(strengths.is_sorted_by(|a, b| a >= b), "{what}: the strongest first: {strengths:?}");
        held += 1;
    });
    assert!(held > 10, "{held}");
}

#[test]
fn what_nobody_declares_in_full_is_named() {
    each_bowl(|one, mix, bowl| {
        let open = |part: &&Value| product(&one.file, word(part, "product"))["declared_in_full"] != true;
        let mut want: Vec<&str> = list(bowl, "parts")
            .iter()
            .filter(|part| part["kind"] != "developer")
            .filter(open)
            .map(|part| word(part, "product"))
            .collect();
        let mut got: Vec<&str> = list(mix, "undeclared").iter().filter_map(Value::as_str).collect();
        got.retain(|name| list(&one.file, "shop.developer").iter().all(|bottle| bottle["name"] != *name));
        want.sort_unstable();
        got.sort_unstable();
        assert_eq!(got, want, "{}: {}", one.name, mix["name"]);
    });
}

#[test]
fn a_stated_amount_is_needed_as_it_stands() {
    for one in varied() {
        for entry in list(&one.file, "section").iter().chain(list(&one.file, "toner")) {
            let Some(mass) = entry["mix_g"].as_f64() else { continue };
            let mix = named(list(&one.data, "mixes"), "name", word(entry, "name"));
            assert_eq!(bounds(mix, "needed_g"), [mass; 3], "{}: {}", one.name, mix["name"]);
            assert_eq!(mix["needed_basis"], "stated", "{}: {}", one.name, mix["name"]);
        }
    }
}

/// On a scale so fine that nothing is rounded away, in a bowl that holds it all.
#[test]
fn twice_the_mix_is_twice_of_everything_in_it() {
    for one in some() {
        let wide =
            json!({ "salon.scale_division_g": 0.01, "salon.bowl_capacity_g": 1000, "salon.working_life_min": 120 });
        // With little in hand another blend may be cheaper for more of it.
        let once = one.with(wide).changed(|file| {
            for bottle in file["shop"]["developer"].as_array_mut().into_iter().flatten() {
                bottle["in_hand_g"] = Value::Null;
            }
        });
        let twice = once.changed(|file| {
            for part in ["section", "toner"] {
                for entry in file[part].as_array_mut().into_iter().flatten() {
                    if let Some(mass) = entry["mix_g"].as_f64() {
                        entry["mix_g"] = json!(2.0 * mass);
                    }
                }
            }
        });
        for (a, b) in list(&once.data, "mixes").iter().zip(list(&twice.data, "mixes")) {
            let (a_bowl, b_bowl) = (at(a, "bowls.0"), at(b, "bowls.0"));
            if a["needed_basis"] != "stated" || a["stage"] == "root-shadow" || a_bowl["count"] != b_bowl["count"] {
                continue;
            }
            for (small, large) in list(a_bowl, "parts").iter().zip(list(b_bowl, "parts")) {
                same(number(large, "exact_g"), 2.0 * number(small, "exact_g"), &format!("{}: {small}", one.name));
            }
            let [low, best, high] = bounds(a, "on_hair_ww_percent");
            let doubled = bounds(b, "on_hair_ww_percent");
            for (got, want) in doubled.into_iter().zip([low, best, high]) {
                assert!((got - want).abs() < 0.01, "{}: {got} % and {want} %", one.name);
            }
        }
    }
}
