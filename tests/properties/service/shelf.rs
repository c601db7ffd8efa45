//! What is taken from the shelf, what is missing of it, and what could stand in.

use super::files::{Known, bounds, examples, in_bowls, list, named, number, product, same, varied, word};
use serde_json::{Value, json};

fn each_line(mut law: impl FnMut(&Known, &Value)) {
    for one in varied() {
        list(&one.data, "stock.products").iter().for_each(|line| law(one, line));
    }
}

/// Of the bowls as weighed, of steps before the colour as they are estimated.
#[test]
fn the_shelf_gives_what_the_bowls_and_first_steps_take() {
    each_line(|one, line| {
        let name = word(line, "product");
        let mut sum = 0.0;
        for bowl in list(&one.data, "mixes").iter().flat_map(|mix| list(mix, "bowls")) {
            let parts = list(bowl, "parts").iter().filter(|part| part["product"] == name);
            sum += parts.map(|part| number(part, "weigh_g") * number(bowl, "count")).sum::<f64>();
        }
        for step in list(&one.data, "first_steps").iter().filter(|step| step["planned"] == true) {
            let parts = list(step, "parts").iter().filter(|part| part["product"] == name);
            sum += parts.map(|part| bounds(part, "mass_g")[1]).sum::<f64>();
        }
        same(bounds(line, "wanted_g")[1], sum, &format!("{}: {name}", one.name));
    });
}

/// A mix that may be half as much takes half as much of each product.
#[test]
fn the_bounds_of_a_product_go_with_the_bounds_of_its_mixes() {
    each_line(|one, line| {
        let name = word(line, "product");
        let mut sums = [0.0; 3];
        for mix in list(&one.data, "mixes") {
            let needed = bounds(mix, "needed_g");
            for bowl in list(mix, "bowls") {
                for part in list(bowl, "parts").iter().filter(|part| part["product"] == name) {
                    let grams = number(part, "weigh_g") * number(bowl, "count");
                    sums.iter_mut().zip(needed).for_each(|(sum, bound)| *sum += grams * bound / needed[1]);
                }
            }
        }
        for step in list(&one.data, "first_steps").iter().filter(|step| step["planned"] == true) {
            for part in list(step, "parts").iter().filter(|part| part["product"] == name) {
                sums.iter_mut().zip(bounds(part, "mass_g")).for_each(|(sum, bound)| *sum += bound);
            }
        }
        for (got, want) in bounds(line, "wanted_g").into_iter().zip(sums) {
            same(got, want, &format!("{}: {name}", one.name));
        }
    });
}

#[test]
fn what_is_missing_is_what_is_wanted_over_what_is_there() {
    let mut held = 0;
    each_line(|one, line| {
        let what = format!("{}: {line}", one.name);
        let there = product(&one.file, word(line, "product"))["in_hand_g"].as_f64();
        assert_eq!(line["in_hand_g"].as_f64(), there, "{what}");
        let Some(there) = there else {
            assert!(line["missing_g"].is_null() && line["cover"] == "not-counted", "{what}");
            return;
        };
        let wanted = bounds(line, "wanted_g");
        for (missing, wanted) in bounds(line, "missing_g").into_iter().zip(wanted) {
            same(missing, (wanted - there).max(0.0), &what);
        }
        let want = match wanted {
            [_, _, high] if high <= there => "covered",
            [_, best, _] if best <= there => "may-run-short",
            _ => "short",
        };
        assert_eq!(line["cover"], want, "{what}");
        assert!(want != "covered" || list(line, "instead").is_empty(), "{what}");
        held += 1;
    });
    assert!(held > 30, "{held}");
}

#[test]
fn a_larger_stock_never_covers_less() {
    let rank =
        |line: &Value| ["short", "may-run-short", "covered"].iter().position(|cover| line["cover"] == *cover).unwrap();
    for one in examples() {
        for (place, bottle) in list(&one.file, "shop.developer").iter().enumerate() {
            let mut before = 0;
            for grams in [1.0, 30.0, 60.0, 120.0, 5000.0] {
                let mut file = one.file.clone();
                file["shop"]["developer"][place]["in_hand_g"] = json!(grams);
                // A blend that the shelf cannot make is refused.
                let Ok(plan) = Known::of(&one.name, &file) else { continue };
                let line = named(list(&plan.data, "stock.products"), "product", word(bottle, "name"));
                // With little of it another bottle may be taken.
                let now = if line.is_null() { 0 } else { rank(line) };
                assert!(line.is_null() || now >= before, "{}: {grams} g of {line}", one.name);
                before = now;
            }
            assert!(before == 2 || before == 0, "{}: five kilograms are enough", one.name);
        }
    }
}

/// What stands in is another product, and there is enough of it.
#[test]
fn what_stands_in_is_there() {
    let mut held = 0;
    each_line(|one, line| {
        for instead in list(line, "instead") {
            assert_ne!(instead["product"], line["product"], "{}", one.name);
            for name in word(instead, "product").split(" + ") {
                let facts = product(&one.file, name);
                assert!(!facts.is_null(), "{}: {name} is not in the shop", one.name);
                let enough = facts["in_hand_g"].as_f64().unwrap_or(f64::INFINITY);
                let alone = !word(instead, "product").contains(" + ");
                assert!(
                    !alone || line["kind"] == "additive" || enough >= bounds(line, "wanted_g")[2],
                    "{}: {instead}",
                    one.name
                );
                held += 1;
            }
        }
    });
    assert!(held > 3, "{held}");
}

/// With everything counted and nothing there, all of it is missing.
#[test]
fn an_empty_shelf_misses_everything() {
    for one in examples() {
        let empty = one.changed(|file| {
            for kind in ["lightener", "shade", "additive"] {
                for entry in file["shop"][kind].as_array_mut().into_iter().flatten() {
                    entry["in_hand_g"] = json!(0);
                }
            }
        });
        for line in list(&empty.data, "stock.products") {
            if ["lightener", "colour", "additive"].contains(&word(line, "kind")) {
                assert_eq!(line["cover"], "short", "{}: {line}", one.name);
                assert_eq!(line["missing_g"], line["wanted_g"], "{}: {line}", one.name);
            }
        }
        assert_eq!(in_bowls(&one.data), in_bowls(&empty.data), "{}", one.name);
    }
}
