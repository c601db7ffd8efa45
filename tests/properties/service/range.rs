//! How far cost and price may move, worked out from the bowls; when a section comes off, and what stands in the way of a look.

use super::files::{Known, all_state_it, bounds, cents, list, named, number, price, product, same, some, varied, word};
use serde_json::{Value, json};

/// Of what is planned of a mix, what is made where the hair takes least, and most: whole bowls, one at least; and all that the hair
/// of the section may take, no less than is planned.
fn made(one: &Known, mix: &Value) -> [f64; 2] {
    let (bowl, count) = (number(mix, "bowls.0.total_g"), number(mix, "bowls.0.count"));
    let [low, _, high] = bounds(mix, "needed_g");
    let section = named(list(&one.data, "head.sections"), "section", word(mix, "name"));
    let hair = if section["takes_g"].is_null() { 0.0 } else { bounds(section, "takes_g")[2] };
    let least = (low / bowl - 1e-9).ceil().max(1.0).min(count) / count;
    [least, (high.max(hair) / (bowl * count)).max(1.0)]
}

fn cost(one: &Known, name: &str, grams: f64) -> f64 {
    let facts = product(&one.file, name);
    if facts["price"].is_null() {
        return 0.0;
    }
    // Halves are rounded away from zero; what floating point leaves behind is no half.
    (grams * price(&facts["price"]) / number(facts, "pack_g") + 1e-9).round()
}

#[test]
fn the_cost_moves_with_what_is_mixed_and_with_nothing_else() {
    let mut held = 0;
    let counts = |one: &&Known| !one.data["money"].is_null();
    for one in varied().iter().filter(counts) {
        let money = &one.data["money"];
        let other =
            list(money, "cost.lines").iter().filter(|line| !["product", "additive"].contains(&word(line, "kind")));
        let mut sums = [other.map(|line| cents(&line["amount"])).sum::<f64>(); 2];
        for mix in list(&one.data, "mixes") {
            let factors = made(one, mix);
            for part in list(mix, "bowls.0.parts") {
                let grams = number(part, "weigh_g") * number(mix, "bowls.0.count");
                for (sum, factor) in sums.iter_mut().zip(factors) {
                    *sum += cost(one, word(part, "product"), grams * factor);
                }
            }
        }
        for step in list(&one.data, "first_steps").iter().filter(|step| step["planned"] == true) {
            for part in list(step, "parts") {
                let [low, _, high] = bounds(part, "mass_g");
                sums[0] += cost(one, word(part, "product"), low);
                sums[1] += cost(one, word(part, "product"), high);
            }
        }
        let total = cents(&money["cost"]["total"]);
        let told = &money["cost_range"];
        let [least, most] = ["least", "most"].map(|end| if told.is_null() { total } else { cents(&told[end]) });
        assert!((least - sums[0]).abs() <= 1.0 && (most - sums[1]).abs() <= 1.0, "{}: {told} for {sums:?}", one.name);
        assert_eq!(told.is_null(), least == most, "{}", one.name);
        held += i32::from(!told.is_null());
    }
    assert!(held > 15, "{held}");
}

/// At its longest where every product states it, else as planned; and looks at the last strand begin where one is due.
#[test]
fn a_section_comes_off_when_its_products_say_so_or_as_planned() {
    let mut held = [0; 4];
    for one in varied() {
        for (step, mix) in list(&one.data, "order").iter().zip(list(&one.data, "mixes")) {
            let what = format!("{}: {}", one.name, step["name"]);
            let [begin, applied, rinse] = ["begin_min", "applied_min", "rinse_by_min"].map(|field| number(step, field));
            let own = list(mix, "bowls.0.parts").iter().filter_map(|part| {
                let facts = product(&one.file, word(part, "product"));
                let from_the_end = facts["longest_counts_from"] == "end-of-application";
                Some(facts["longest_min"].as_f64()? + if from_the_end { applied - begin } else { 0.0 })
            });
            let own = own.fold(f64::INFINITY, f64::min);
            let want = if all_state_it(one, step) && own.is_finite() { rinse.max(begin + own) } else { rinse };
            same(number(step, "off_by_min"), want, &what);
            held[usize::from(want > rinse + 1e-6)] += 1;
            let looks: Vec<f64> = list(step, "look_at_min").iter().map(|at| at.as_f64().unwrap()).collect();
            let lightener = list(mix, "bowls.0.parts").iter().any(|part| part["kind"] == "lightener");
            if !lightener {
                assert_eq!((looks.as_slice(), step["look_at_last_min"].is_null()), (&[rinse][..], true), "{what}");
                held[2] += 1;
            } else if step["look_at_last_min"].is_null() && looks.len() > 1 {
                // No look before the rinse is as late on the last strand as the first was on the first.
                let due = applied + looks[0] - begin;
                assert!(looks.iter().all(|look| *look < due - 1e-6 || *look >= rinse - 1e-6), "{what}: {looks:?}");
                held[3] += 1;
            }
        }
    }
    assert!(held.iter().all(|held| *held > 0), "{held:?}");
}

/// One bowl of a mix that is stated holds as much; with a price for every gram, half the price is half the least and the most.
#[test]
fn twice_every_price_of_a_product_is_twice_what_it_moves_the_cost() {
    for one in some().filter(|one| !one.data["money"]["cost_range"].is_null()) {
        let dear = one.changed(|file| {
            for kind in ["developer", "lightener", "shade", "additive", "diluent", "remover"] {
                for entry in file["shop"][kind].as_array_mut().into_iter().flatten() {
                    if let Some(amount) = entry["price"].as_str() {
                        entry["price"] = json!(format!("{:.2}", 2.0 * amount.parse::<f64>().unwrap()));
                    }
                }
            }
        });
        let moves = |one: &Known| {
            let [least, most] = ["least", "most"].map(|end| cents(&one.data["money"]["cost_range"][end]));
            most - least
        };
        let parts: usize = list(&one.data, "mixes").iter().map(|mix| list(mix, "bowls.0.parts").len()).sum();
        assert!((moves(&dear) - 2.0 * moves(one)).abs() <= 3.0 * parts as f64, "{}", one.name);
    }
}
