//! The trail: each result can be worked from its inputs by its formula, and cites what is in the register.

use super::common::school;
use foilwork::{
    business::list::{parse_csv, price_services},
    money::SetPrice,
    peroxide::{Conditions, Strength, StrengthUnit, trace_blend, trace_conversion},
    quantity::{Mass, MassFraction},
    reader::Format,
    service::plan_text,
    shop::{Shop, parse_shop},
    source::{Basis, Interval, TracedInput, TracedResult, register},
    text::trail_text,
};

fn trail() -> Vec<TracedResult> {
    plan_text(include_str!("../../examples/soft-gradient.toml"), Format::Toml).unwrap().trail()
}

fn number(text: &str) -> f64 {
    text.parse().unwrap()
}

fn inputs<'r>(result: &'r TracedResult, ends: &str) -> Vec<&'r TracedInput> {
    result.inputs.iter().filter(|input| input.what.ends_with(ends)).collect()
}

/// Conservation of peroxide, worked from the inputs alone.
#[test]
fn strengths_follow_from_their_inputs() {
    let trail = trail();
    let strengths: Vec<_> = trail.iter().filter(|result| result.what.contains("strength on the hair")).collect();
    assert_eq!(strengths.len(), 6);
    for result in strengths {
        let (grams, percents) = (inputs(result, ", weighed"), inputs(result, ", peroxide"));
        let grams: Vec<f64> = grams.iter().map(|input| number(&input.value)).collect();
        let held: f64 = grams.iter().zip(percents).map(|(g, input)| g * number(&input.value)).sum();
        let worked = held / grams.iter().sum::<f64>();
        assert!((worked - number(&result.value)).abs() < 1e-9, "{}: {worked} and {}", result.what, result.value);
    }
}

/// Sums of minutes and of cents.
#[test]
fn sums_follow_from_their_inputs() {
    let trail = trail();
    for what in ["time in the chair", "cost", "gross price"] {
        let result = trail.iter().find(|result| result.what == what).unwrap();
        let sum: f64 = result.inputs.iter().map(|input| number(&input.value)).sum();
        assert!((sum - number(&result.value)).abs() < 1e-6, "{what}: {sum} and {}", result.value);
    }
}

#[test]
fn every_result_says_unit_basis_version_and_known_sources() {
    let ids: Vec<&str> = register().map(|citation| citation.id).collect();
    for result in trail() {
        assert!(!result.unit.is_empty() && !result.formula.is_empty() && !result.inputs.is_empty(), "{}", result.what);
        assert_eq!(result.foilwork, env!("CARGO_PKG_VERSION"));
        assert!(result.sources.iter().all(|id| ids.contains(id)), "{:?}", result.sources);
    }
}

#[test]
fn an_estimate_keeps_its_bounds() {
    let trail = trail();
    let lift = trail.iter().find(|result| result.what.contains("level of the first strand")).unwrap();
    let [low, high] = lift.bounds.as_ref().unwrap();
    assert!(number(low) < number(&lift.value) && number(&lift.value) < number(high));
    let text = trail_text(&trail);
    // To two decimals at least, cut, not rounded.
    let begins = |number: &str| number.chars().take(number.find('.').unwrap_or(number.len()) + 3).collect::<String>();
    assert!(text.contains(&begins(low)) && text.contains(&begins(&lift.value)), "{text}");
    assert!(text.lines().all(|line| line.chars().count() <= 80));
}

/// An estimate in six significant digits; the noise of a float, past fifteen of them, gone; what is exact as it is.
#[test]
fn a_text_shows_no_more_digits_than_mean_something() {
    let shown = |value: &str, bounds: Option<[&str; 2]>| {
        let result = TracedResult {
            value: value.to_owned(),
            bounds: bounds.map(|bounds| bounds.map(str::to_owned)),
            ..trail().remove(0)
        };
        trail_text(&[result]).lines().next().unwrap().split_once(" = ").unwrap().1.to_owned()
    };
    assert_eq!(shown("8.62700771147215", Some(["6.5", "10.71262062621784"])), "8.62701 (6.5 to 10.7126) % w/w");
    assert_eq!(shown("0.000123456789", Some(["0", "1234567"])), "0.000123457 (0 to 1234567) % w/w");
    assert_eq!(shown("11.200000000000001", None), "11.2 % w/w");
    assert_eq!(shown("1234567.50", None), "1234567.50 % w/w");
}

/// The shop of the example with a card fee and a list of prices: each number is worked here from those above it.
fn priced(terms: &str) -> Vec<TracedResult> {
    let text = include_str!("../../examples/soft-gradient.toml").replace("margin_percent = 25\n", terms);
    plan_text(&text, Format::Toml).unwrap().trail()
}

fn result<'t>(trail: &'t [TracedResult], what: &str) -> &'t TracedResult {
    trail.iter().find(|result| result.what == what).unwrap_or_else(|| panic!("no {what}"))
}

fn given(result: &TracedResult, what: &str) -> f64 {
    number(&inputs(result, what).first().unwrap_or_else(|| panic!("{}: no {what}", result.what)).value)
}

/// `N = C + F + f N (1 + t) + m N`, then the next price of the list, then the tax taken out of it.
#[test]
fn a_price_of_the_list_is_worked_from_what_was_asked_for() {
    let terms = "margin_percent = 25\ncard_percent = 1.5\ncard_fixed = \"0.10\"\nprice_step = \"5.00\"\nprice_ending = \"4.90\"\n";
    let trail = priced(terms);
    let asked = result(&trail, "net price that is asked for");
    let (cost, fixed) = (given(asked, "cost"), given(asked, "fixed card fee"));
    let (margin, fee, tax) = (given(asked, "margin, as asked for") / 100.0, given(asked, "card fee") / 100.0, 0.19);
    assert_eq!((margin, fee, fixed), (0.25, 0.015, 0.1));
    let net = (cost + fixed) / (1.0 - margin - fee * (1.0 + tax));
    assert!((net - number(&asked.value)).abs() <= 0.005, "{net} and {}", asked.value);
    let gross = number(&result(&trail, "gross price").value);
    assert!((gross % 5.0 - 4.9).abs() < 1e-9 && (gross - net * 1.19).abs() <= 5.0);
    let moved = result(&trail, "net price");
    assert!((gross / 1.19 - number(&moved.value)).abs() <= 0.005);
    let left = result(&trail, "margin that comes out");
    let (net, fee) = (given(left, "net price"), given(left, "card fee, of this price"));
    assert!((fee - (gross * 0.015 + 0.1)).abs() <= 0.005);
    assert!(((net - cost - fee) / net * 100.0 - number(&left.value)).abs() < 1e-4);
}

/// The class costs 118.00; without a tax rate the shop is taken to keep all of it, and that is told as assumed, not left out.
#[test]
fn a_price_of_the_list_without_a_tax_says_that_none_is_stated() {
    let text = include_str!("../../examples/grey-blend.toml");
    let trail = |text: &str| plan_text(text, Format::Toml).unwrap().trail();
    let taxed = trail(text);
    assert_eq!(given(result(&taxed, "net price by the price list"), "tax"), 20.0);
    assert!(text.contains(
        "tax_percent = 20
"
    ));
    let untaxed = trail(&text.replace(
        "tax_percent = 20
",
        "",
    ));
    let net = result(&untaxed, "net price by the price list");
    assert_eq!((net.value.as_str(), net.basis), ("118.00", Basis::Assumed));
    let tax = net.inputs.iter().find(|one| one.what == "tax, none being stated").unwrap();
    assert_eq!((tax.value.as_str(), tax.basis), ("0", Some(Basis::Assumed)));
    assert_eq!(result(&untaxed, "margin that comes out").basis, Basis::Assumed);
}

/// A price is no better founded than the wages and packs that somebody stated, nor than the minutes of bowls, looks, walks and
/// rinses, which are assumed where nobody did.
#[test]
fn a_price_rests_on_what_its_cost_rests_on() {
    let text = include_str!("../../examples/soft-gradient.toml");
    let small = "[salon]\nmix_bowl_min = 3\nlook_min = 1\nrinse_section_min = 3\nbasin_walk_min = 2\n";
    let stated = text.replace("[salon]\n", small);
    for (text, basis) in [(text, Basis::Assumed), (stated.as_str(), Basis::Stated)] {
        let trail = plan_text(text, Format::Toml).unwrap().trail();
        for what in ["cost", "net price", "gross price", "time in the chair"] {
            assert_eq!(result(&trail, what).basis, basis, "{what}");
        }
    }
}

/// 60 an hour over the cost, by the minutes in the chair.
#[test]
fn a_price_by_the_hour_is_planned() {
    let trail = priced("per_chair_h = \"60\"\n");
    let net = result(&trail, "net price");
    let worked = given(net, "cost") + 60.0 * given(net, "minutes in the chair") / 60.0;
    assert!((worked - number(&net.value)).abs() <= 0.005, "{worked} and {}", net.value);
}

/// The amount for an hour goes over all costs but the overhead: 15 min at 2 x 18.00 an hour are 9.00, 40 min at 60.00 are
/// 40.00. A price alone does not know its minutes, so that it has no line for them.
#[test]
fn a_price_by_the_hour_names_its_minutes_or_has_no_line() {
    let shop = "currency = \"EUR\"\n[terms]\nwage_per_h = \"18.00\"\nproductive_percent = 50\n\
                overhead_per_h = \"10.00\"\nper_chair_h = \"60.00\"";
    let business = Shop::new(&parse_shop(shop, Format::Toml).unwrap()).unwrap().business().unwrap();
    let list = parse_csv("service,class,hands_on_min,chair_min\ntoner,long,15,40\n", business.currency).unwrap();
    let table = price_services(&list, &business).unwrap();
    let trail = table.trail();
    let net = result(&trail, "toner, long: net price");
    assert_eq!(net.value, "49.00");
    let told = ["cost, without overhead and card fee", "amount for an hour", "minutes in the chair"];
    assert_eq!(told.map(|what| given(net, what)), [9.0, 60.0, 40.0]);
    let line = &table.lines[0];
    let set = SetPrice::of(line.cost, line.net).unwrap();
    let alone = set.trail(Some(business.rule.target));
    assert_eq!(alone.iter().map(|one| one.what.as_str()).collect::<Vec<_>>(), ["profit", "margin", "mark-up"]);
}

/// Grams by share of the bowl, foils by whole rows, mixture by foil.
#[test]
fn toners_and_foils_follow_from_their_inputs() {
    let panel = "panel = { width_cm = 8.0, height_cm = 6.0, count = 2, subsection_mm = 6, left_between_mm = 6 }\napply_min = 16";
    let text = include_str!("../../examples/soft-gradient.toml").replace("foils = 14\napply_min = 16", panel);
    let trail = plan_text(&text, Format::Toml).unwrap().trail();
    let mut met = [0; 3];
    for result in &trail {
        if result.what.ends_with("against the warmth") {
            let grams = given(result, "takes most warmth away") / 100.0 * given(result, "all shades of the bowl");
            assert!((grams - number(&result.value)).abs() < 1e-9, "{}", result.what);
            met[0] += 1;
        } else if result.what.ends_with("mixture for a foil") {
            let grams = given(result, "mixture the hair takes") / given(result, "foils");
            assert!((grams - number(&result.value)).abs() < 1e-9, "{}", result.what);
            met[1] += 1;
        } else if result.what.contains("under the toner") {
            assert!(inputs(result, ", weighed").len() > 1 && result.bounds.is_some());
            met[2] += 1;
        } else if result.what.ends_with("mixture the hair takes") && inputs(result, "film on the scalp").is_empty() {
            let grams = given(result, "hair that is covered") * given(result, "taken up");
            assert!((grams - number(&result.value)).abs() < 1e-9, "{}", result.what);
        }
    }
    assert!(met.iter().all(|count| *count > 0), "{met:?}");
    // (60 + 6) / (6 + 6) are five whole rows, on two panels.
    let foils = result(&trail, "crown: foils");
    let rows = (given(foils, "height of a panel") + given(foils, "left between"))
        / (given(foils, "subsection") + given(foils, "left between"));
    assert!((rows - 5.5).abs() < 1e-9 && foils.value == "10" && given(foils, "panels") == 2.0);
}

/// The share of the first is (target - other) / (this - other), by hand: at the least (4 - 1) / (11 - 1), at best
/// (5 - 0.5) / (10 - 0.5), at the most 6 / 9.
#[test]
fn grams_of_a_blend_keep_the_bounds_of_its_strengths() {
    let between = |low: f64, best: f64, high: f64| {
        Interval::new(low, best, high).unwrap().try_map(MassFraction::from_ww_percent).unwrap()
    };
    let (stock, weak, target) = (between(9.0, 10.0, 11.0), between(0.0, 0.5, 1.0), between(4.0, 5.0, 6.0));
    let hundred = Mass::from_g(100.0).unwrap();
    let [first, second] = trace_blend(("stock", stock), ("weak", weak), target, hundred).unwrap();
    for (part, hand) in [(first, [30.0, 450.0 / 9.5, 600.0 / 9.0]), (second, [300.0 / 9.0, 500.0 / 9.5, 70.0])] {
        let [low, high] = part.bounds.unwrap();
        for (told, hand) in [low, part.value, high].iter().zip(hand) {
            assert!((number(told) - hand).abs() < 1e-9, "{}: {told} and {hand}", part.what);
        }
    }
    // All of one of two equal ones; what is exact stays so.
    let six = between(6.0, 6.0, 6.0);
    let [all, none] = trace_blend(("one", six), ("two", six), six, hundred).unwrap();
    assert_eq!((all.value.as_str(), none.value.as_str(), all.bounds, none.bounds), ("100", "0", None, None));
}

#[test]
fn a_strength_in_its_own_unit_is_stated_and_another_derived() {
    let bottle = Strength::of(6.0, StrengthUnit::WwPercent).unwrap();
    let basis = |unit| trace_conversion(bottle, unit, &Conditions::default()).unwrap().basis;
    assert_eq!((basis(StrengthUnit::WwPercent), basis(StrengthUnit::MolPerKg)), (Basis::Stated, Basis::Derived));
}

/// A model without a publication is no arithmetic.
#[test]
fn what_is_assumed_without_a_source_says_so() {
    let (mut models, mut sums) = (0, 0);
    for result in trail().into_iter().filter(|result| result.sources.is_empty()) {
        let text = trail_text(std::slice::from_ref(&result));
        let arithmetic = matches!(result.basis, Basis::Derived | Basis::Stated);
        let want = if arithmetic { "; arithmetic; foilwork" } else { "; no source; foilwork" };
        assert!(text.contains(want), "{text}");
        *(if arithmetic { &mut sums } else { &mut models }) += 1;
    }
    assert!(models > 0 && sums > 0, "{models} {sums}");
}

/// Wherever the numbers are put into a formula, the line comes to the value beside it: to the cent, to six decimals of a
/// percentage, else to the last figure.
#[test]
fn every_line_with_its_numbers_comes_to_its_value() {
    let mut all = priced("margin_percent = 25\ncard_percent = 1.5\ncard_fixed = \"0.10\"\n");
    let units = [StrengthUnit::WwPercent, StrengthUnit::Volumes, StrengthUnit::MolPerKg];
    for (from, number) in units.into_iter().zip([6.0, 20.0, 1.8]) {
        let bottle = Strength::of(number, from).unwrap();
        all.extend(units.map(|to| trace_conversion(bottle, to, &Conditions::default()).unwrap()));
    }
    let business = Shop::new(&parse_shop(include_str!("../../examples/juniper_and_tide.toml"), Format::Toml).unwrap());
    let business = business.unwrap().business().unwrap();
    let list = include_str!("../../examples/juniper_and_tide_services.csv");
    all.extend(price_services(&parse_csv(list, business.currency).unwrap(), &business).unwrap().trail());
    let exact = |percent| Interval::exact(MassFraction::from_ww_percent(percent).unwrap());
    let hundred = Mass::from_g(100.0).unwrap();
    all.extend(trace_blend(("stock", exact(12.0)), ("weak", exact(3.0)), exact(4.5), hundred).unwrap());
    let (mut steps, mut worked) = (0, 0);
    for one in &all {
        let Some(line) = one.worked.as_deref() else { continue };
        let (Some(found), Ok(value)) = (school(line), one.value.parse::<f64>()) else { continue };
        let within = match one.unit.as_str() {
            "EUR" => 0.005 + 1e-9,
            unit if unit.starts_with('%') => 1e-4,
            _ => 1e-6 * value.abs().max(1.0),
        };
        // A percentage goes in as a part of one, and so it may come out.
        let hundred = if one.unit.starts_with('%') { 100.0 } else { 1.0 };
        let near = [found, hundred * found].iter().any(|found| (found - value).abs() <= within);
        assert!(near, "{} = {} {}: {line} = {found}", one.what, one.value, one.unit);
        worked += 1;
        steps += usize::from(one.formula.contains(" = "));
    }
    assert!(worked > 20 && steps > 3, "{worked} {steps}");
}
