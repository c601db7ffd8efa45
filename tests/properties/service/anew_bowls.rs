//! What the checks say of times on the hair, developers, bowls, shelf and white hair, worked out a second time from the plan's masses and
//! the file's own words.

use super::{
    anew::{entry, held, lightens, plans, said, section, steps},
    files::{Known, list, number, number_or, product},
};
use foilwork::{
    colour::Level,
    quantity::{Duration, Mass, MassFraction},
    service::{Mix, PartKind, Step},
    shop::CountsFrom,
    text::{number as decimal, range, span},
};
use serde_json::Value;

/// Lighteners and shades of a mix, with what the shop says of each.
fn products<'k>(one: &'k Known, mix: &'k Mix) -> impl Iterator<Item = (&'k str, &'k Value)> {
    let of = |kind: PartKind| kind == PartKind::Lightener || kind == PartKind::Colour;
    let parts = mix.bowls[0].parts.iter().filter(move |part| of(part.kind));
    parts.map(|part| (part.product.as_str(), product(&one.file, &part.product)))
}

/// What stands in the name of a step before the colour.
fn of_a_step(one: &Known, text: &str) -> bool {
    let (_, text) = text.split_once(' ').unwrap();
    one.plan.first_steps.iter().any(|step| text.starts_with(&step.name()))
}

/// The first strand carries it for the application and the development, the last for the development alone.
#[test]
fn no_product_is_longer_on_the_hair_than_its_entry_lets_it_be_without_a_word() {
    let mut seen = 0;
    for one in plans() {
        let mut want = Vec::new();
        for (step, mix) in steps(one) {
            let name = &step.name;
            let min = |field: &str, usual: f64| Duration::from_min(number_or(entry(one, step), field, usual)).unwrap();
            let (apply, develop) =
                (Duration::from_min(step.applied.min() - step.begin.min()).unwrap(), min("develop_min", 0.0));
            for (product, facts) in products(one, mix) {
                let Some(most) = facts["longest_min"].as_f64() else {
                    want.push(format!(
                        "not-judged {name}: the longest development of \"{product}\" is not on the shelf"
                    ));
                    continue;
                };
                let on = apply.min() + develop.min();
                let from: CountsFrom =
                    facts["longest_counts_from"].as_str().map_or(CountsFrom::FirstStrand, |from| from.parse().unwrap());
                if from == CountsFrom::EndOfApplication && develop.min() > most + 1e-6 {
                    want.push(format!(
                        "stop {name}: {develop} of development, \"{product}\" allows {most} min from the end of the application: \
                         shorten it"
                    ));
                }
                if from == CountsFrom::FirstStrand && on > most + 1e-6 {
                    let left = (most - apply.min() + 1e-9).floor();
                    let less = format!("develop {left:.0} min at most, or split the section");
                    let way_out = if left >= 1.0 { less } else { "split the section".to_owned() };
                    want.push(format!(
                        "stop {name}: its first strand would carry \"{product}\" for {on:.0} min ({} to apply, {develop} to \
                         develop), its entry allows {most} min from the first strand: {way_out}",
                        decimal(apply.min(), 6) + " min"
                    ));
                }
            }
        }
        want.sort();
        seen += want.len();
        assert_eq!(said(one, "time", |text| !of_a_step(one, text)), want, "{}", one.name);
    }
    assert!(seen > 15, "{seen}");
}

/// Of each lightener and shade that is mixed with peroxide.
#[test]
fn the_developer_is_held_against_every_product_that_it_is_mixed_with() {
    let mut seen = 0;
    for one in plans() {
        let mut want = Vec::new();
        for (step, mix) in steps(one).filter(|(_, mix)| mix.ratio.is_some()) {
            let (name, strongest) = (&step.name, mix.developer.high());
            for (product, facts) in products(one, mix) {
                let most = facts["strongest_developer_ww_percent"]
                    .as_f64()
                    .map(|most| MassFraction::from_ww_percent(most).unwrap());
                want.push(match most {
                    None => format!("not-judged {name}: the strongest developer for \"{product}\" is not on the shelf"),
                    Some(most) if strongest > most => format!(
                        "stop {name}: developer {strongest:.2} with \"{product}\", which takes {most} at most: use a weaker one"
                    ),
                    Some(most) => {
                        // A bottle that nobody measured is known to a tenth.
                        let measured = mix.oxidant().all(|part| {
                            part.kind != PartKind::Developer
                                || self::product(&one.file, &part.product)["strength_basis"] == "measured"
                        });
                        let strongest = decimal(strongest.ww_percent(), if measured { 2 } else { 1 });
                        format!("passed {name} {strongest} of {most} for \"{product}\"")
                    }
                });
            }
        }
        want.sort();
        seen += want.len();
        assert_eq!(said(one, "developer", |text| !of_a_step(one, text)), want, "{}", one.name);
    }
    assert!(seen > 300, "{seen}");
}

/// The mass of the shades against that of the developer; a part that the scale moves by more than a tenth.
#[test]
fn a_bowl_that_stands_on_its_head_or_on_a_coarse_scale_is_told() {
    held(
        "ratio",
        |text| text.contains("more colour than developer"),
        1,
        |one| {
            let of = |(step, mix): (&Step, &Mix)| {
                let sum = |kinds: [PartKind; 2]| -> f64 {
                    let parts = mix.bowls[0].parts.iter().filter(|part| kinds.contains(&part.kind));
                    parts.map(|part| part.weigh.g()).sum()
                };
                let colour = sum([PartKind::Colour, PartKind::Lightener]);
                let developer = sum([PartKind::Developer, PartKind::Diluent]);
                let [product, liquid] = [colour, developer].map(|g| decimal(g, 6) + " g");
                let text = format!(
                    "warning {}: more colour than developer: {product} colour to {liquid} developer; the ratio is written colour \
                 first, 1:2 is one part of colour to two of developer",
                    step.name
                );
                (mix.ratio.is_some() && !lightens(mix) && colour > developer).then_some(text)
            };
            steps(one).filter_map(of).collect()
        },
    );
    held(
        "scale",
        |_| true,
        1,
        |one| {
            let of = |(step, mix): (&Step, &Mix)| {
                let off = mix.bowls[0].worst_ratio_error_percent;
                let text = format!(
                    "warning {}: rounding to the scale moves a part by {off:.0} %: mix more at once, or use a finer scale",
                    step.name
                );
                (off > 10.0).then_some(text)
            };
            steps(one).filter_map(of).collect()
        },
    );
}

/// What is short, what may run short, and what could be taken instead.
#[test]
fn what_the_shelf_does_not_cover_is_told_with_its_grams() {
    held(
        "stock",
        |_| true,
        4,
        |one| {
            let mut found = Vec::new();
            for line in &one.plan.stock.products {
                let Some(there) = line.in_hand else { continue };
                let (verdict, said) = match line.wanted {
                    wanted if wanted.high() <= there => continue,
                    wanted if wanted.best() <= there => ("note", "may run short"),
                    _ => ("warning", "not enough in hand"),
                };
                let instead: Vec<String> =
                    line.instead.iter().map(|one| format!("{} ({})", one.product, one.why)).collect();
                let way_out = match instead.as_slice() {
                    [] => "get more, or mix less".to_owned(),
                    _ => format!("get more, or take instead: {}", instead.join("; ")),
                };
                let (product, wanted): (_, String) = (&line.product, range(&line.wanted, 0));
                found.push(format!("{verdict} {product}: {said}, {wanted} g wanted and {there:.0} there: {way_out}"));
            }
            for line in &one.plan.stock.consumables {
                let Some((wanted, there)) = line.wanted_pieces.zip(line.in_hand_pieces) else { continue };
                let (verdict, said) = match wanted {
                    wanted if wanted.high() <= there => continue,
                    wanted if wanted.best() <= there => ("note", "may run short"),
                    _ => ("warning", "not enough in hand"),
                };
                let pieces = span(&wanted, |pieces| pieces.to_string());
                found.push(format!("{verdict} {}: {said}, {pieces} wanted and {there} there: get more", line.name));
            }
            found
        },
    );
}

/// A permanent shade above level 8 on white hair from 30 % on; and the share of natural shade where the trade puts it.
#[test]
fn white_hair_is_told_of_every_bowl_of_permanent_colour() {
    held(
        "white-hair",
        |_| true,
        6,
        |one| {
            let mut found = Vec::new();
            let white = one.plan.hair.white.best();
            for (step, mix) in steps(one).filter(|(step, mix)| section(step) && !lightens(mix) && white.percent() > 0.0)
            {
                let shades: Vec<(&str, &Value, Mass)> = mix
                    .products()
                    .map(|part| (part.product.as_str(), product(&one.file, &part.product), part.exact))
                    .collect();
                if shades.iter().all(|(_, facts, _)| facts["class"] == "permanent") {
                    let all: f64 = shades.iter().map(|part| part.2.g()).sum();
                    let neutral = shades.iter().filter(|(_, facts, _)| list(facts, "tones").is_empty());
                    let percent = 100.0 * neutral.map(|part| part.2.g()).sum::<f64>() / all;
                    let usual = foilwork::mix::natural_share(white).share;
                    let (low, high) = (usual.low().percent(), usual.high().percent());
                    let fits = percent >= low - 1e-6 && percent <= high + 1e-6;
                    found.push(format!(
                    "{} {}: {percent:.0} % of the shades are natural; for {white} white the trade takes {low:.0} to {high:.0} %",
                    if fits { "passed" } else { "warning" },
                    step.name
                ));
                }
                for (code, facts, _) in shades {
                    let level = Level::new(number(facts, "level")).unwrap();
                    if facts["class"] == "permanent" && level.number() > 8.0 && white.percent() >= 30.0 {
                        found
                            .push(format!("warning {}: {white} white, shade {code} covers it only in part", step.name));
                    }
                }
            }
            found
        },
    );
}
