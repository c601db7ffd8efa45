//! What other rooms do for a plan: toners found for a look, compositions held against the law, bottles chosen by cost.

use super::base::{changed, fine, only_lightener, shop, texts, verdicts};
use foilwork::{
    finding::Verdict::{NotJudged, Note, Stop},
    service::{ServiceFile, plan, shape::ToneTarget},
    shop::{
        ShadeClass,
        shape::{DeveloperEntry, ShadeEntry},
    },
};
use rstest::rstest;

/// A violet and a neutral demi-permanent shade of level 9, and a look that is wanted instead of a mix.
fn wanting(file: &mut ServiceFile) {
    let shade = |code: &str, tones: &[&str]| ShadeEntry {
        code: code.to_owned(),
        level: 9.0,
        tones: tones.iter().map(|tone| (*tone).to_owned()).collect(),
        class: ShadeClass::Demi,
        ratio: Some("1:2".to_owned()),
        ..ShadeEntry::default()
    };
    shop(file).shade.extend([shade("J9-mist", &["violet"]), shade("J9-ember", &["orange"])]);
    file.toner[0].mix.clear();
    file.toner[0].target = Some(ToneTarget { level: 9.0, tones: Vec::new() });
}

/// The complement of the yellow of level 9 is violet (the wheel of any colour textbook), so a neutral look needs some.
#[test]
fn a_toner_is_found_and_weighed_for_a_look() {
    let plan = changed(fine(), wanting);
    let mix = plan.mixes.iter().find(|mix| mix.name == "veil").unwrap();
    let products: Vec<&str> = mix.products().map(|part| part.product.as_str()).collect();
    assert!(products.contains(&"J9-mist") && !products.contains(&"J9-ember"), "{products:?}");
    // 60 g at 1:2 are 20 g of shades and 40 g of developer.
    let shades: f64 = mix.products().map(|part| part.weigh.g()).sum();
    let developer: f64 = mix.oxidant().map(|part| part.weigh.g()).sum();
    assert!((shades - 20.0).abs() < 0.06 && (developer - 40.0).abs() < 0.06, "{shades} and {developer}");
    assert_eq!(verdicts(&plan, "toner found"), [Note], "{}", texts(&plan, "toner found"));
}

/// A section names a look as a toner does, and a toner does not lighten (common practice): the shade of level 10 that is
/// the very look is left out on hair at level 9.
#[test]
fn no_shade_lighter_than_the_hair_is_found() {
    let plan = |level: f64| {
        changed(only_lightener(), |file| {
            let shade =
                |code: &str, level| ShadeEntry { code: code.to_owned(), level, ..shop(&mut fine()).shade[0].clone() };
            shop(file).shade.push(shade("J10", 10.0));
            let section = &mut file.section[0];
            (section.product, section.starting_level) = (None, Some(level));
            section.target = Some(ToneTarget { level: 10.0, tones: Vec::new() });
        })
    };
    let found = |plan: &foilwork::service::Plan| -> Vec<String> {
        plan.mixes[0].products().map(|part| part.product.clone()).collect()
    };
    let (on_nine, on_ten) = (plan(9.0), plan(10.0));
    assert!(!found(&on_nine).contains(&"J10".to_owned()), "{:?}", found(&on_nine));
    assert!(found(&on_ten).contains(&"J10".to_owned()), "{:?}", found(&on_ten));
    // The mix in words, and that no shade holds the violet that is named against pale yellow.
    assert_eq!(verdicts(&on_nine, "toner found"), [Note, Note]);
    assert!(texts(&on_nine, "toner found").contains("violet is named against pale yellow"));
}

/// A reading inside the margin that would choose other shades leaves the choice open, and only such a reading.
#[rstest]
fn the_margin_of_the_natural_level_opens_the_choice(#[values(0.0, 0.5, 3.0)] margin: f64) {
    let at = |natural: f64, margin: f64| {
        changed(fine(), |file| {
            wanting(file);
            let oat = ShadeEntry { code: "J8-oat".to_owned(), level: 8.0, ..shop(file).shade[3].clone() };
            shop(file).shade.push(oat);
            file.analysis.natural_level = natural;
            file.analysis.natural_level_plus_minus = Some(margin);
            file.toner[0].target = Some(ToneTarget { level: 8.5, tones: vec!["violet".to_owned()] });
        })
    };
    let codes = |natural: f64| {
        let plan = at(natural, 0.0);
        let mix = plan.mixes.iter().find(|mix| mix.name == "veil").unwrap();
        let mut codes: Vec<String> = mix.products().map(|part| part.product.clone()).collect();
        codes.sort();
        codes
    };
    let other = [6.0 - margin, 6.0 + margin].into_iter().filter(|natural| codes(*natural) != codes(6.0)).count();
    let plan = at(6.0, margin);
    let open = verdicts(&plan, "toner found").into_iter().filter(|verdict| *verdict == NotJudged).count();
    assert_eq!(open, other, "{}", texts(&plan, "toner found"));
}

#[test]
fn a_look_without_a_shade_that_deposits_is_refused_with_its_field() {
    let mut file = fine();
    wanting(&mut file);
    shop(&mut file).shade.retain(|shade| shade.class != ShadeClass::Demi);
    let want = "toner[1].target: the shop has no demi-permanent shade to find a toner from: add one, or name the mix";
    assert_eq!(plan(&file).unwrap_err().to_string(), want);
}

// Source: 2 Na2CO3 . 3 H2O2 has a molar mass of 2 x 105.99 + 3 x 34.01 = 314.0 g/mol, so 32.5 % of it is H2O2; Regulation
// (EC) No 1223/2009, Annex III, entry 12(a): 12 % of H2O2 present or released on hair. 15 g powder with half percarbonate
// bring 15 x 0.5 x 0.325 = 2.44 g, 30 g developer of 12 % bring 3.6 g: 6.04 g in 45 g are 13.4 %.
#[test]
fn peroxide_that_a_declared_powder_releases_counts() {
    let plan = changed(only_lightener(), |file| {
        shop(file).developer[0].strength = "12 % w/w".to_owned();
        let powder = &mut shop(file).lightener[0];
        powder.composition = serde_json::from_value(serde_json::json!([
            { "substance": "sodium percarbonate", "cas": "15630-89-4", "ww_percent": 50 },
            { "substance": "water", "cas": "7732-18-5", "ww_percent": 50 },
        ]))
        .unwrap();
        powder.declared_in_full = true;
    });
    assert!(verdicts(&plan, "law").contains(&Stop), "{}", texts(&plan, "law"));
    assert!(plan.blocked);
}

/// What a maker does not declare could be anything: with part of a composition known the bowl is never "within".
#[test]
fn a_composition_declared_in_part_is_open() {
    let plan = changed(only_lightener(), |file| {
        let powder = &mut shop(file).lightener[0];
        powder.composition =
            serde_json::from_value(serde_json::json!([{ "substance": "water", "cas": "7732-18-5", "ww_percent": 5 }]))
                .unwrap();
    });
    let law = verdicts(&plan, "law");
    assert!(law.contains(&NotJudged), "{}", texts(&plan, "law"));
}

fn bottle(name: &str, strength: &str, price: Option<&str>) -> DeveloperEntry {
    DeveloperEntry {
        name: name.to_owned(),
        strength: strength.to_owned(),
        pack_g: price.map(|_| 1000.0),
        price: price.map(str::to_owned),
        ..DeveloperEntry::default()
    }
}

/// Which bottles 4.5 % w/w is blended from.
fn blended(bottles: Vec<DeveloperEntry>) -> Vec<String> {
    let plan = changed(only_lightener(), |file| {
        shop(file).currency = Some("EUR".to_owned());
        shop(file).developer = bottles;
        file.section[0].developer = None;
        file.section[0].strength = Some("4.5 % w/w".to_owned());
    });
    plan.mixes[0].oxidant().map(|part| part.product.clone()).collect()
}

/// Half 6 and half 3 cost 9 a kilogram. One part 12 to five of 3 costs (12 + 5 x 4)/6 = 5.33 when 3 costs 4.
#[test]
fn the_cheapest_bottles_are_taken_where_every_price_is_known() {
    let priced = vec![
        bottle("3", "3 % w/w", Some("4.00")),
        bottle("6", "6 % w/w", Some("14.00")),
        bottle("12", "12 % w/w", Some("12.00")),
    ];
    assert_eq!(blended(priced), ["12", "3"]);
}

/// Without prices the two nearest are taken, because a weighing error then changes the strength least.
#[test]
fn without_prices_the_nearest_bottles_are_taken() {
    let unpriced = vec![bottle("3", "3 % w/w", None), bottle("6", "6 % w/w", None), bottle("12", "12 % w/w", None)];
    assert_eq!(blended(unpriced), ["6", "3"]);
}

/// 30 g of 4.5 % need 15 g of 6 %, of which 5 g are left: 12 % has to help.
#[test]
fn what_is_in_hand_limits_the_blend() {
    let mut unpriced = vec![bottle("3", "3 % w/w", None), bottle("6", "6 % w/w", None), bottle("12", "12 % w/w", None)];
    unpriced[1].in_hand_g = Some(5.0);
    assert!(blended(unpriced).contains(&"12".to_owned()));
}

/// By hand: 60 g at 1:2 hold 20 g of shades, so the grams that the plan names for the look are 20 together, whatever the scale shows.
#[rstest]
fn the_grams_that_are_named_are_those_of_the_bowl(#[values(0.1, 0.5, 1.0)] division_g: f64) {
    let plan = changed(fine(), |file| {
        wanting(file);
        file.salon.scale_division_g = Some(division_g);
    });
    let text = texts(&plan, "toner found");
    let named = text.split(" g of ").map(|before| before.rsplit(' ').next().unwrap_or_default().parse::<f64>());
    let sum: f64 = named.filter_map(Result::ok).sum();
    assert!((sum - 20.0).abs() < 1e-6, "{sum}: {text}");
}
