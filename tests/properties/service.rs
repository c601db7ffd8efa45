//! Any valid file gives a plan that keeps the laws; any text gives a plan or messages, never a panic.

mod alike;
mod anew;
mod anew_bowls;
mod before;
mod bowls;
mod chosen;
mod clock;
mod consulted;
mod costs;
mod files;
mod hair;
mod ladder;
mod left_open;
mod map;
mod range;
mod shelf;
mod told;

use crate::api::common::example;
use foilwork::{
    finding::{Rule, Verdict},
    head::Technique,
    money::Money,
    quantity::MassFraction,
    reader::Format,
    service::{
        Plan, ServiceFile, WorkStage, parse, plan, plan_text,
        shape::{After, MixPart, Section, WaitFor, Zone},
    },
    sheet::bench_sheet,
    shop::{
        ShadeClass, StrengthBasis,
        shape::{AdditiveEntry, DeveloperEntry, ShadeEntry, TermsEntry},
    },
    source::Interval,
};
use proptest::{
    prelude::*,
    sample::{Index, select},
};

const EXAMPLES: [&str; 3] = ["soft-gradient.toml", "grey-blend.toml", "lowlights.json"];

/// A bare file: one developer of 3 %, so that every strength above it is reached with the random one.
fn bare() -> ServiceFile {
    let text = r#"
format = 1
shop.lightener = [{ name = "powder", ratio = "1:2", on_scalp = true, longest_min = 50 }]
section = [{ name = "1", technique = "weave", share_percent = 1, zone = "lengths", target_level = 9, product = "powder",
             developer = "weak", apply_min = 10, develop_min = 10 }]
[service]
title = "Random"
start = 2026-11-25
jurisdiction = "EU"
[analysis]
natural_level = 6
white_percent = 0
[[shop.developer]]
name = "weak"
strength = "3 % w/w"
strength_basis = "measured"
[[shop.diluent]]
name = "thinner"
"#;
    parse(text, Format::Toml).unwrap()
}

/// A number with two decimals: what people write.
fn hundredths(low: u32, high: u32) -> impl Strategy<Value = f64> {
    (low..=high).prop_map(|n| f64::from(n) / 100.0)
}

fn amount() -> impl Strategy<Value = String> {
    (0u32..100_000).prop_map(|cents| format!("{}.{:02}", cents / 100, cents % 100))
}

fn zone() -> impl Strategy<Value = Zone> {
    select(vec![Zone::Roots, Zone::MidLengths, Zone::Ends, Zone::Lengths, Zone::Whole])
}

fn technique() -> impl Strategy<Value = Technique> {
    select(vec![Technique::Weave, Technique::Slice, Technique::Block, Technique::Freehand, Technique::Regrowth])
}

prop_compose! {
    /// One section; `place` is its place in the file, and `after` points to any earlier one.
    fn section(place: usize)(
        technique in technique(),
        zone in zone(),
        share in hundredths(10, 1000),
        target in hundredths(100, 1200),
        strength in prop::option::of(hundredths(10, 290)),
        shades in prop::collection::vec((select(vec!["J8", "J6"]), hundredths(100, 500)), 0..3),
        ratio in (hundredths(50, 200), hundredths(50, 400)),
        additives in any::<bool>(),
        mix_g in prop::option::of(hundredths(3000, 40_000)),
        apply_min in hundredths(500, 6000),
        develop_min in hundredths(100, 5000),
        foils in prop::option::of(0u32..40),
        after in prop::option::of((any::<Index>(), select(vec![WaitFor::Application, WaitFor::Development, WaitFor::Rinse]))),
        bottle in select(vec!["weak", "strong"]),
    ) -> Section {
        Section {
            name: place.to_string(),
            technique,
            share_percent: Some(share),
            zone,
            target_level: target,
            product: shades.is_empty().then(|| "powder".to_owned()),
            mix: shades.iter().map(|(shade, parts)| MixPart { shade: (*shade).to_owned(), parts: *parts }).collect(),
            developer: strength.is_none().then(|| bottle.to_owned()),
            strength: strength.map(|percent| format!("{percent} % w/w")),
            ratio: Some(format!("{}:{}", ratio.0, ratio.1)),
            additives: if additives { vec!["bond".to_owned()] } else { Vec::new() },
            mix_g,
            foils,
            apply_min: Some(apply_min),
            foil_min: None,
            clean_with: None,
            develop_min,
            after: after
                .filter(|_| place > 1)
                .map(|(i, wait_for)| After { section: (i.index(place - 1) + 1).to_string(), wait_for })
                .into_iter()
                .collect(),
            ..bare().section.swap_remove(0)
        }
    }
}

fn shade(code: &str, level: f64, price: Option<String>) -> ShadeEntry {
    ShadeEntry {
        code: code.to_owned(),
        level,
        class: ShadeClass::Permanent,
        ratio: Some("1:1".to_owned()),
        strongest_developer_ww_percent: Some(9.0),
        pack_g: price.as_ref().map(|_| 60.0),
        price,
        ..ShadeEntry::default()
    }
}

prop_compose! {
    fn terms()(
        wage in prop::option::of(amount()),
        on_costs_percent in prop::option::of(hundredths(0, 10_000)),
        productive_percent in prop::option::of(hundredths(1000, 10_000)),
        overhead in prop::option::of(amount()),
        margin_percent in prop::option::of(hundredths(0, 9000)),
        tax_percent in prop::option::of(hundredths(0, 3000)),
    ) -> TermsEntry {
        TermsEntry {
            wage_per_h: wage,
            on_costs_percent,
            productive_percent,
            overhead_per_h: overhead,
            margin_percent,
            tax_percent,
            ..TermsEntry::default()
        }
    }
}

prop_compose! {
    fn service_file()(
        sections in (1usize..6).prop_flat_map(|n| (1..=n).map(section).collect::<Vec<_>>()),
        strong in hundredths(300, 1200),
        dose_percent in hundredths(200, 1000),
        price in prop::option::of(amount()),
        terms in terms(),
        division in select(vec![0.01, 0.1]),
        capacity in hundredths(3000, 20_000),
        // The order of the file says nothing of the order of the work.
        turned in any::<bool>(),
    ) -> ServiceFile {
        let mut file = bare();
        let shop = file.shop.as_mut().unwrap();
        shop.currency = Some("EUR".to_owned());
        shop.developer.push(DeveloperEntry {
            name: "strong".to_owned(),
            strength: format!("{strong} % w/w"),
            strength_basis: StrengthBasis::SupplierSheet,
            pack_g: price.as_ref().map(|_| 1000.0),
            price: price.clone(),
            ..DeveloperEntry::default()
        });
        shop.shade = vec![shade("J8", 8.0, price), shade("J6", 6.0, None)];
        shop.additive = vec![AdditiveEntry { name: "bond".to_owned(), dose_percent, ..AdditiveEntry::default() }];
        shop.terms = Some(terms);
        file.service.other_work_min = Some(30.0);
        file.salon.scale_division_g = Some(division);
        file.salon.bowl_capacity_g = Some(capacity);
        file.section = sections;
        if turned {
            file.section.reverse();
        }
        file
    }
}

fn ww(strength: &Interval<MassFraction>) -> [f64; 3] {
    strength.to_array().map(MassFraction::ww_percent)
}

/// Mass: what is weighed adds up to the bowl, the bowl is what the recipe asks for to one division, and every part is
/// a whole number of divisions.
fn masses(plan: &Plan, division: f64) -> Result<(), TestCaseError> {
    for bowl in plan.mixes.iter().flat_map(|mix| &mix.bowls) {
        let weighed: f64 = bowl.parts.iter().map(|part| part.weigh.g()).sum();
        let exact: f64 = bowl.parts.iter().map(|part| part.exact.g()).sum();
        prop_assert!((weighed - bowl.total.g()).abs() < 1e-6, "{weighed} g of {} g", bowl.total.g());
        prop_assert!((weighed - exact).abs() <= division / 2.0 + 1e-6, "{weighed} g for {exact} g");
        for part in &bowl.parts {
            let divisions = part.weigh.g() / division;
            prop_assert!((divisions - divisions.round()).abs() < 1e-6, "{} g on {division} g", part.weigh.g());
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn a_valid_file_gives_a_plan_that_keeps_the_laws(file in service_file()) {
        let planned = plan(&file);
        // A small estimate in many bowls can ask for less than the scale shows, which is rightly refused.
        let too_little = |message: &str| {
            message.contains("is less than the scale can show") || message.contains("rounds to nothing on a scale")
        };
        prop_assume!(!planned.as_ref().is_err_and(|problems| problems.0.iter().all(|p| too_little(&p.message))));
        let plan = planned.map_err(|problems| TestCaseError::fail(problems.to_string()))?;
        masses(&plan, file.salon.scale_division_g.unwrap())?;

        // Nothing is stronger than the strongest bottle, and mixing only weakens.
        let strongest = file.shop.as_ref().unwrap().developer.iter().map(|d| d.strength.trim_end_matches(" % w/w").parse::<f64>().unwrap());
        let strongest = strongest.fold(0.0, f64::max);
        for mix in &plan.mixes {
            let (before, on_hair) = (ww(&mix.developer), ww(&mix.on_hair));
            prop_assert!(before.is_sorted() && before[2] <= strongest + 1e-9);
            prop_assert!(on_hair.is_sorted() && on_hair[2] <= strongest);
            let mixed: f64 = mix.bowls.iter().map(|bowl| bowl.total.g() * bowl.count as f64).sum();
            prop_assert!(mixed + 1.0 >= mix.needed.best().g(), "{mixed} g for {} g", mix.needed.best());
        }

        // Everything once, nothing before what it waits for, one pair of hands.
        prop_assert_eq!(plan.order.len(), file.section.len());
        let place = |name: &str| plan.order.iter().position(|step| step.name == name).unwrap();
        for section in &file.section {
            for before in &section.after {
                let (first, then) = (place(&before.section), place(&section.name));
                prop_assert!(first < then);
                let first = &plan.order[first];
                let over = if before.wait_for == WaitFor::Application { first.applied } else { first.rinse_by };
                prop_assert!(over.min() <= plan.order[then].begin.min() + 1e-9);
            }
        }
        for pair in plan.order.windows(2) {
            prop_assert!(pair[0].applied.min() <= pair[1].begin.min() + 1e-9);
        }
        prop_assert!(plan.order.iter().all(|step| step.stage == WorkStage::Section));
        for step in &plan.order {
            let section = file.section.iter().find(|section| section.name == step.name).unwrap();
            // The powder alone has a limit, from the first strand; a strand beyond it stops the plan.
            let limit = section.product.as_ref().and(file.shop.as_ref().unwrap().lightener[0].longest_min);
            let planned = section.apply_min.unwrap() + section.develop_min;
            let beyond = limit.is_some_and(|most| planned > most + 1e-6);
            let kept = if beyond { plan.blocked } else { step.applied <= step.rinse_by };
            prop_assert!(kept);
            let on_hair = step.rinse_by.min() - step.begin.min();
            prop_assert!((on_hair - limit.map_or(planned, |most| planned.min(most))).abs() < 1e-6);
            prop_assert!(step.look_at.iter().all(|at| *at <= step.rinse_by));
        }

        // Nobody declares what these products hold, so that each may release peroxide: the law is never kept for sure.
        prop_assert!(!plan.findings.iter().any(|found| found.rule == Rule::Law && found.verdict == Verdict::Passed));

        // No cent is lost.
        let cost = &plan.money.as_ref().unwrap().cost;
        let sum = Money::total(cost.lines().iter().map(|line| line.amount), cost.total().currency()).unwrap();
        prop_assert_eq!(sum, cost.total());

        // Whatever the plan, the sheet keeps its width and the data its form.
        prop_assert!(bench_sheet(&plan).lines().all(|line| line.chars().count() <= 80));
        prop_assert!(serde_json::to_string(&plan).is_ok());
    }

    #[test]
    fn a_file_written_as_json_is_read_back_unchanged(file in service_file()) {
        let text = serde_json::to_string(&file).unwrap();
        prop_assert_eq!(parse(&text, Format::Json).map_err(|problems| TestCaseError::fail(problems.to_string()))?, file);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(80))]

    #[test]
    fn a_line_less_never_panics(name in select(EXAMPLES.to_vec()), at in any::<Index>()) {
        let text = example(name);
        let lines: Vec<&str> = text.lines().collect();
        let gone = at.index(lines.len());
        let rest: Vec<&str> = lines.iter().enumerate().filter(|(i, _)| *i != gone).map(|(_, line)| *line).collect();
        read(&rest.join("\n"), Format::of_name(name))?;
    }

    #[test]
    fn swapped_characters_never_panic(
        name in select(EXAMPLES.to_vec()),
        swaps in prop::collection::vec((any::<Index>(), any::<Index>()), 1..4),
    ) {
        let mut characters: Vec<char> = example(name).chars().collect();
        for (one, other) in swaps {
            let (one, other) = (one.index(characters.len()), other.index(characters.len()));
            characters.swap(one, other);
        }
        read(&characters.into_iter().collect::<String>(), Format::of_name(name))?;
    }

    #[test]
    fn a_text_that_ends_early_never_panics(name in select(EXAMPLES.to_vec()), at in any::<Index>()) {
        let text = example(name);
        let ends: Vec<usize> = text.char_indices().map(|(i, _)| i).collect();
        read(&text[..ends[at.index(ends.len())]], Format::of_name(name))?;
    }

    #[test]
    fn another_value_never_panics(
        name in select(EXAMPLES.to_vec()),
        at in any::<Index>(),
        value in select(vec![
            "-1", "0", "8.0", "1e1", "-0.0", "1e308", "-1e-308", "nan", "-inf", "99999999999999999999", "0x7fffffffffffffff", "true", "null",
            "[]", "[[]]", "{}", "\"\"", "\"\\u0000\"", "\"1:0\"", "\"0 % w/w\"", "\"1e9 vol\"", "0000-00-00", "\"-\"",
        ]),
    ) {
        let (text, separator) = (example(name), if name.ends_with(".json") { ": " } else { " = " });
        let places: Vec<usize> = text.match_indices(separator).map(|(i, _)| i + separator.len()).collect();
        let begin = places[at.index(places.len())];
        let end = begin + text[begin..].find([',', '\n', '}']).unwrap_or(0);
        read(&format!("{}{value}{}", &text[..begin], &text[end..]), Format::of_name(name))?;
    }

    #[test]
    fn any_text_never_panics(text in "\\PC{0,200}", json in any::<bool>()) {
        read(&text, if json { Format::Json } else { Format::Toml })?;
    }

    #[test]
    fn any_tokens_never_panic(
        tokens in prop::collection::vec(select(vec![
            "format", "=", "1", "\n", "[", "]", "[[", "]]", "section", "shop", ".", "\"", "'", "{", "}", ",", ":", "#",
            "service", "name", "2026-11-25", "mix", "null", "\u{feff}", "\r\n", "\u{1f488}",
        ]), 0..40),
        json in any::<bool>(),
    ) {
        read(&tokens.concat(), if json { Format::Json } else { Format::Toml })?;
    }
}

/// A plan, or messages that each name their place inside the text.
fn read(text: &str, format: Format) -> Result<(), TestCaseError> {
    let Err(problems) = plan_text(text, format) else { return Ok(()) };
    prop_assert!(!problems.0.is_empty());
    let lines = text.matches('\n').count() + 1;
    for problem in &problems.0 {
        let line = problem.at.map(|at| at.line);
        prop_assert!(line.is_some_and(|line| (1..=lines).contains(&line)), "line {line:?} of {lines}: {problem}");
        prop_assert!(!problem.message.is_empty() && !problem.message.contains("this is a fault"), "{problem}");
    }
    Ok(())
}
