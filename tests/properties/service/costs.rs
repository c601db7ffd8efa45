//! What it costs: each line grams, pieces or minutes times a price, rounded once; the sum of the lines; the price by its rule.

use super::files::{Known, at, bounds, cents, examples, list, named, number, price, product, varied, word};
use serde_json::{Value, json};

/// Plans with a table of costs.
fn priced() -> impl Iterator<Item = (&'static Known, &'static Value)> {
    varied().iter().filter(|one| !one.data["money"].is_null()).map(|one| (one, &one.data["money"]))
}

/// Rounded once to the cent, halves included.
fn once(got: &Value, want: f64, what: &str) {
    assert!((cents(got) - want).abs() <= 0.5 + 1e-6, "{what}: {got} for {want}");
}

#[test]
fn the_sum_of_the_lines_is_the_total() {
    for (one, money) in priced() {
        let sum: f64 = list(money, "cost.lines").iter().map(|line| cents(&line["amount"])).sum();
        assert_eq!(sum, cents(&money["cost"]["total"]), "{}", one.name);
        let shares: f64 = list(money, "cost.lines").iter().map(|line| price(&line["share_percent"]) / 100.0).sum();
        assert!(sum == 0.0 || (shares - 100.0).abs() < 2.5, "{}: {shares} %", one.name);
    }
}

/// Grams of the bowls, and of the steps before the colour, that are paid for, in the order of the lines.
fn weighed(one: &Known) -> Vec<(String, String, f64)> {
    let mut found = Vec::new();
    for mix in list(&one.data, "mixes") {
        for (bowl, part) in
            list(mix, "bowls").iter().flat_map(|bowl| list(bowl, "parts").iter().map(move |part| (bowl, part)))
        {
            let grams = number(part, "weigh_g") * number(bowl, "count");
            found.push((word(mix, "name").to_owned(), word(part, "product").to_owned(), grams));
        }
    }
    for step in list(&one.data, "first_steps").iter().filter(|step| step["planned"] == true) {
        for part in list(step, "parts") {
            found.push((word(step, "section").to_owned(), word(part, "product").to_owned(), number(part, "weigh_g")));
        }
    }
    found
}

#[test]
fn a_product_costs_its_grams_times_the_price_of_a_gram_rounded_once() {
    let mut held = 0;
    for (one, money) in priced() {
        let lines =
            list(money, "cost.lines").iter().filter(|line| ["product", "additive"].contains(&word(line, "kind")));
        let parts = weighed(one);
        let has_price = |name: &str| !product(&one.file, name)["price"].is_null();
        let mut parts = parts.iter().filter(|(_, name, _)| has_price(name));
        for line in lines {
            let (section, name, grams) = parts.next().unwrap_or_else(|| panic!("{}: {line} of nothing", one.name));
            assert_eq!((word(line, "section"), word(line, "what")), (section.as_str(), name.as_str()), "{}", one.name);
            let facts = product(&one.file, name);
            once(
                &line["amount"],
                grams * price(&facts["price"]) / number(facts, "pack_g"),
                &format!("{}: {line}", one.name),
            );
            let is_additive = list(&one.file, "shop.additive").iter().any(|one| one["name"] == name.as_str());
            assert_eq!(line["kind"] == "additive", is_additive, "{}: {line}", one.name);
            held += 1;
        }
        assert!(parts.next().is_none(), "{}: a part costs nothing", one.name);
    }
    assert!(held > 200, "{held}");
}

#[test]
fn what_has_no_price_is_named_as_left_out_once() {
    for (one, money) in priced() {
        let mut want: Vec<String> = weighed(one).into_iter().map(|part| part.1).collect();
        want.retain(|name| product(&one.file, name)["price"].is_null());
        let left = list(money, "left_out").iter().filter(|left| left["what"] == "pack-price");
        let mut got: Vec<String> = left.map(|left| word(left, "of").to_owned()).collect();
        want.sort();
        want.dedup();
        got.sort();
        assert_eq!(got, want, "{}", one.name);
    }
}

fn terms(one: &Known) -> &Value {
    at(&one.file, "shop.terms")
}

/// Wage and on-costs for every hour at work, of which only a share is with a guest.
#[test]
fn labour_is_the_time_of_hands_at_what_a_paid_hour_costs() {
    for (one, money) in priced() {
        let line = named(list(money, "cost.lines"), "kind", "labour");
        let wage = &terms(one)["wage_per_h"];
        assert_eq!(line.is_null(), wage.is_null(), "{}", one.name);
        if line.is_null() {
            continue;
        }
        let part = |field: &str, without: f64| terms(one)[field].as_f64().unwrap_or(without) / 100.0;
        let hours = |field: &str| terms(one)[field].as_f64();
        let of_hours = hours("paid_h").zip(hours("productive_h")).map(|(paid, productive)| productive / paid);
        let with_a_guest = of_hours.unwrap_or_else(|| part("productive_percent", 100.0));
        let hour = price(wage) * (1.0 + part("on_costs_percent", 0.0)) / with_a_guest;
        once(&line["amount"], hour * number(&one.data, "chair.hands_on_min") / 60.0, &one.name);
    }
}

#[test]
fn overhead_is_the_time_in_the_chair() {
    for (one, money) in priced() {
        let line = named(list(money, "cost.lines"), "kind", "overhead");
        let hour = match (&terms(one)["overhead_per_h"], &terms(one)["overhead"]) {
            (Value::Null, Value::Null) => {
                assert!(line.is_null(), "{}", one.name);
                continue;
            }
            // A year of it over all the chairs and the hours of each that are sold.
            (Value::Null, year) => {
                price(year) / number(terms(one), "chairs") / number(terms(one), "productive_h_per_chair")
            }
            (hour, _) => price(hour),
        };
        once(&line["amount"], hour * number(&one.data, "chair.total_min") / 60.0, &one.name);
    }
}

/// One of a piece for each foil, so many for the service.
#[test]
fn consumables_cost_their_pieces() {
    let mut held = 0;
    for (one, money) in priced() {
        let foils: f64 = list(&one.data, "head.sections")
            .iter()
            .filter(|section| !section["foils"].is_null())
            .map(|section| bounds(section, "foils")[1])
            .sum();
        for consumable in list(&one.file, "shop.consumable") {
            let name = word(consumable, "name");
            let pieces = consumable["pieces"].as_f64().unwrap_or(1.0);
            let used = if consumable["per"] == "foil" { foils * pieces } else { pieces };
            let cost = used * price(&consumable["price"]) / number(consumable, "pack_pieces");
            once(&named(list(money, "cost.lines"), "what", name)["amount"], cost, &format!("{}: {name}", one.name));
            let stocked = named(list(&one.data, "stock.consumables"), "name", name);
            if !stocked["wanted_pieces"].is_null() {
                assert_eq!(bounds(stocked, "wanted_pieces")[1], used, "{}: {name}", one.name);
                once(&stocked["cost"], cost, &format!("{}: {name}", one.name));
                let [low, best, high] = ["cost_low", "cost", "cost_high"].map(|field| cents(&stocked[field]));
                assert!(low <= best && best <= high, "{}: {stocked}", one.name);
            }
            held += 1;
        }
    }
    assert!(held > 20, "{held}");
}

/// A margin is a share of the price, a mark-up one of the cost; an hour in the chair brings its amount over the cost.
#[test]
fn the_price_meets_what_the_terms_ask_for() {
    let mut held = [0; 3];
    for (one, money) in priced().filter(|(_, money)| money["priced_by"]["moved"] == false) {
        let by = &money["priced_by"];
        let percent = |field: &str| by[field].as_str().map(|text| text.parse::<f64>().unwrap() / 100.0);
        let (cost, net) = (cents(&money["cost"]["total"]), cents(&money["price"]["price"]));
        let paid = net - cents(&by["card_fee"]);
        let want = match (percent("margin_percent"), percent("markup_percent")) {
            (Some(margin), _) => {
                held[0] += 1;
                cost + margin * net
            }
            (_, Some(markup)) => {
                held[1] += 1;
                cost + markup * (cost + cents(&by["card_fee"]))
            }
            _ => {
                held[2] += 1;
                cost + cents(&by["per_chair_h"]) * number(&one.data, "chair.total_min") / 60.0
            }
        };
        assert!((paid - want).abs() <= 2.0, "{}: {paid} for {want}", one.name);
        assert!(cents(&by["target_net"]) <= net + 0.5, "{}: {by}", one.name);
    }
    assert!(held.iter().all(|held| *held > 0), "{held:?}");
}

#[test]
fn what_the_guest_pays_is_the_price_and_its_tax() {
    for (one, money) in priced().filter(|(_, money)| !money["taxed"].is_null()) {
        let [net, tax, gross] = ["net", "tax", "gross"].map(|field| cents(&money["taxed"][field]));
        assert_eq!(net + tax, gross, "{}", one.name);
        let rate = number(terms(one), "tax_percent") / 100.0;
        assert!((tax - net * rate).abs() <= 1.0, "{}: {tax} of {net}", one.name);
    }
}

#[test]
fn a_price_that_the_list_moved_is_one_of_the_list() {
    let mut held = 0;
    for (one, money) in priced().filter(|(one, _)| !terms(one)["price_step"].is_null()) {
        let (step, ending) = (price(&terms(one)["price_step"]), price(&terms(one)["price_ending"]));
        let gross = cents(&money["taxed"]["gross"]);
        assert!(((gross - ending) % step).abs() < 1e-6, "{}: {gross}", one.name);
        held += 1;
    }
    assert!(held > 0);
}

#[test]
fn cost_and_price_lie_between_what_the_hair_takes_least_and_most() {
    let mut held = 0;
    for (one, money) in priced().filter(|(_, money)| !money["cost_range"].is_null()) {
        let cost = cents(&money["cost"]["total"]);
        let [least, most] = ["least", "most"].map(|end| cents(&money["cost_range"][end]));
        assert!(least <= cost && cost <= most && least < most, "{}: {least}, {cost}, {most}", one.name);
        if !money["range"].is_null() {
            for (end, cost) in [("least", least), ("most", most)] {
                assert_eq!(cents(&money["range"][end]["cost"]), cost, "{}", one.name);
            }
            let net = cents(&money["price"]["price"]);
            let [low, high] = ["least", "most"].map(|end| cents(&money["range"][end]["net"]));
            assert!(low <= net && net <= high, "{}: {low}, {net}, {high}", one.name);
        }
        held += 1;
    }
    assert!(held > 10, "{held}");
}

/// Every amount of the shop, but the times and shares.
fn prices(file: &mut Value, change: &dyn Fn(f64) -> String) {
    for kind in ["developer", "lightener", "shade", "additive", "diluent", "remover", "consumable"] {
        for entry in file["shop"][kind].as_array_mut().into_iter().flatten() {
            if let Some(amount) = entry["price"].as_str() {
                entry["price"] = json!(change(amount.parse().unwrap()));
            }
        }
    }
    for field in ["wage_per_h", "overhead_per_h", "overhead"] {
        if let Some(amount) = file["shop"]["terms"][field].as_str() {
            file["shop"]["terms"][field] = json!(change(amount.parse().unwrap()));
        }
    }
}

#[test]
fn twice_every_price_is_twice_every_cost_within_the_cent_that_was_rounded() {
    for one in examples() {
        let dear = one.changed(|file| prices(file, &|amount| format!("{:.2}", 2.0 * amount)));
        let [before, after] = [one, &dear].map(|one| list(&one.data, "money.cost.lines"));
        assert!(!before.is_empty() && before.len() == after.len(), "{}", one.name);
        for (before, after) in before.iter().zip(after) {
            let (was, is) = (cents(&before["amount"]), cents(&after["amount"]));
            assert!((is - 2.0 * was).abs() <= 1.0, "{}: {before} and {after}", one.name);
        }
        for key in ["order", "day", "lift", "head", "colour", "chair"] {
            assert_eq!(one.data[key], dear.data[key], "{}: {key}", one.name);
        }
    }
}

#[test]
fn a_pack_twice_as_large_at_twice_the_price_costs_the_same() {
    for one in examples() {
        let large = one.changed(|file| {
            for kind in ["developer", "lightener", "shade", "additive", "diluent", "consumable"] {
                for entry in file["shop"][kind].as_array_mut().into_iter().flatten() {
                    let Some(amount) = entry["price"].as_str() else { continue };
                    entry["price"] = json!(format!("{:.2}", 2.0 * amount.parse::<f64>().unwrap()));
                    for size in ["pack_g", "pack_pieces"] {
                        if let Some(pieces) = entry[size].as_u64() {
                            entry[size] = json!(2 * pieces);
                        } else if let Some(grams) = entry[size].as_f64() {
                            entry[size] = json!(2.0 * grams);
                        }
                    }
                }
            }
        });
        assert_eq!(one.data["money"], large.data["money"], "{}", one.name);
        assert_eq!(one.data["mixes"], large.data["mixes"], "{}", one.name);
    }
}

/// Names of currencies apart, for both have hundred cents.
#[test]
fn another_currency_is_the_same_numbers() {
    for one in examples() {
        let other = one.with(json!({ "shop.currency": "CHF" }));
        let was = word(&one.file, "shop.currency");
        let renamed = other.data["money"].to_string().replace("CHF", was);
        assert_eq!(renamed, one.data["money"].to_string(), "{}", one.name);
    }
}

/// The price of the list and what the time beyond the one included costs; without its tax net.
#[test]
fn the_list_charges_its_price_and_the_time_over_it() {
    let mut held = 0;
    for one in varied() {
        let booking = &one.data["booking"];
        let listed = named(list(&one.file, "shop.class_price"), "class", word(booking, "service_class"));
        assert_eq!(booking["price"].is_null(), listed.is_null(), "{}", one.name);
        assert_eq!(booking["price_why_not"].is_null(), !listed.is_null(), "{}", one.name);
        if listed.is_null() {
            continue;
        }
        let over =
            listed["included_min"].as_f64().map_or(0.0, |included| number(&one.data, "chair.total_min") - included);
        let extra = listed["per_extra_h"].as_str().map_or(0.0, |hour| hour.parse::<f64>().unwrap() * 100.0);
        once(&booking["extra"], over.max(0.0) / 60.0 * extra, &one.name);
        assert_eq!(
            cents(&booking["price"]),
            price(&listed["price"]).round() + cents(&booking["extra"]),
            "{}",
            one.name
        );
        if let Some(rate) = terms(one)["tax_percent"].as_f64() {
            once(&booking["net"], cents(&booking["price"]) / (1.0 + rate / 100.0), &one.name);
        } else {
            assert!(booking["net"].is_null(), "{}", one.name);
        }
        held += 1;
    }
    assert!(held > 3, "{held}");
}
