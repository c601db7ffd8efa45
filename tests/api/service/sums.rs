//! What is added up, counted once or told in words, by hand.

use super::{
    base::{changed, fine, near, only_colour, only_lightener, shop, texts, verdicts},
    consult::{consulted, with},
};
use foilwork::{
    finding::Verdict::{NotJudged, Warning},
    head::Technique,
    service::{
        ChairClock, Plan, ServiceFile,
        shape::{After, HouseRule, PastEntry, PastPlace, PastWork, WaitFor, Zone},
    },
    shop::{ShadeClass, shape::AdditiveEntry},
};
use rstest::rstest;
use serde_json::json;

/// More sections like the first, under these names.
fn also(file: &mut ServiceFile, names: &[&str]) {
    for name in names {
        let mut one = file.section[0].clone();
        one.name = (*name).to_owned();
        file.section.push(one);
    }
}

/// Two applications of 20 min, one of 5 for the toner, and 12 min of other work, where no day is laid out: the way to the basin takes
/// longer than the toner may be on.
#[test]
fn hands_on_are_applications_and_other_work() {
    let mut file = fine();
    file.root_shadow = None;
    let plan = changed(file, |file| {
        also(file, &["nape"]);
        file.service.other_work_min = Some(12.0);
        file.salon.basin_walk_min = Some(25.0);
    });
    assert_eq!(plan.chair.clock, ChairClock::Sheet);
    near(plan.chair.hands_on.min(), 20.0 + 20.0 + 5.0 + 12.0, 1e-9);
    near(plan.chair.total.min(), plan.chair.sections.min() + plan.chair.after_rinse.min() + 12.0, 1e-9);
}

/// Sections that name each other are one pair, whoever names whom first.
#[test]
fn each_pair_is_held_against_each_other_once() {
    let plan = changed(only_lightener(), |file| {
        also(file, &["nape", "sides"]);
        for (place, beside) in [&["nape"][..], &["top", "sides"], &["nape"]].into_iter().enumerate() {
            file.section[place].beside = beside.iter().map(|name| (*name).to_owned()).collect();
        }
    });
    let pairs: Vec<(&str, &str)> = plan.contrasts.iter().map(|one| (one.first.as_str(), one.second.as_str())).collect();
    assert_eq!(pairs, [("top", "nape"), ("nape", "sides")]);
}

/// What the service says itself, the house does not say again.
#[test]
fn a_rule_stands_once() {
    let rules = |wait: Option<WaitFor>| {
        let plan: Plan = changed(only_lightener(), |file| {
            also(file, &["nape"]);
            file.section[0].hairline = true;
            file.salon.order_rules = Some(vec![HouseRule::OutlineFirst]);
            if let Some(wait) = wait {
                file.section[1].after = vec![After { section: "top".to_owned(), wait_for: wait }];
            }
        });
        plan.day.unwrap().rules.iter().map(|one| (one.first.clone(), one.then.clone(), one.rinsed)).collect::<Vec<_>>()
    };
    let top_first = |rinsed| vec![("top".to_owned(), "nape".to_owned(), rinsed)];
    assert_eq!(rules(None), top_first(false));
    assert_eq!(rules(Some(WaitFor::Application)), top_first(false));
    assert_eq!(rules(Some(WaitFor::Rinse)), top_first(true));
}

/// Natural shade is for white hair under permanent colour: lightener leaves no colour, and no other colour takes it.
#[rstest]
#[case::permanent(Some(ShadeClass::Permanent), true)]
#[case::demi(Some(ShadeClass::Demi), false)]
#[case::lightener(None, false)]
fn natural_shade_is_for_permanent_colour(#[case] class: Option<ShadeClass>, #[case] want: bool) {
    let base = if class.is_some() { only_colour() } else { only_lightener() };
    let plan = changed(base, |file| {
        file.analysis.white_percent = Some(50.0);
        if let Some(class) = class {
            shop(file).shade[1].class = class;
        }
    });
    assert_eq!(plan.colour[0].natural_shade.is_some(), want);
}

/// 0.37 mm a day (`hair-growth-1986`): 20 cm are 541 days or 17.8 months, 10 cm 8.9.
#[rstest]
#[case(20.0, "the ends are about 18 months old (")]
#[case(10.0, "the ends are about 9 months old (")]
fn the_ends_are_as_old_as_the_hair_is_long(#[case] length_cm: f64, #[case] want: &str) {
    let mut file = with(|entry| entry.known_since = None);
    file.analysis.length_cm = Some(length_cm);
    let gaps = consulted(&file).said.unwrap().gaps;
    assert!(gaps[0].text.contains(want), "{}", gaps[0].text);
    file.analysis.length_cm = None;
    let gaps = consulted(&file).said.unwrap().gaps;
    assert!(gaps[0].text.contains("how old the ends are is not known either"), "{}", gaps[0].text);
}

/// What was done and when is known, and with what is not: a strand is tested there first.
#[test]
fn an_unknown_formula_is_a_gap() {
    let past = |formula: Option<&str>| PastEntry {
        on: Some("2026-01-01".to_owned()),
        what: PastWork::Toner,
        formula: formula.map(str::to_owned),
        zone: None,
        place: None::<PastPlace>,
    };
    let gaps = |formula| consulted(&with(|entry| entry.past = vec![past(formula)])).said.unwrap().gaps;
    let told = gaps(None);
    assert_eq!(told.len(), 1);
    assert_eq!(told[0].text, "toner on 2026-01-01: the formula is not known: test a strand there first");
    assert_eq!(gaps(Some("J9 1:2")), []);
}

/// 500 cm2 of 200 hairs are 100 000 round hairs of 70 um, each of 3848 um2, or 3.848 cm2 in all: at 1.32 g/cm3 5.08 g for each cm. A
/// block of a fifth of it from 2 to 20 cm, all of it covered, has 18 cm painted, 18.3 g; without foil a gram of hair takes 1.5 g,
/// from 1.0 to 2.5 (assumed), which is 27.4 g, from 18.3 to 45.7. A use repeats another within a factor of 1.2. What would be one on a
/// tenth of that hair, or on ten times as much, does not fit: 2.74 g are at most 2.74 x 1.2 / 1.0 / 3.6 = 0.9 g for each cm, 274 g at
/// least 274 / 1.2 / 2.5 / 3.6 = 25.4.
#[rstest]
#[case::best(27.4, true)]
#[case::takes_little(18.3, true)]
#[case::takes_much(45.7, true)]
#[case::a_tenth(2.74, false)]
#[case::ten_times(274.0, false)]
fn a_past_use_fits_the_hair_as_it_is_stated(#[case] used_g: f64, #[case] fits: bool) {
    let plan = changed(only_lightener(), |file| {
        let hair = &mut file.analysis;
        (hair.scalp_cm2, hair.hairs_per_cm2) = (Some(500.0), Some(200.0));
        (hair.diameter_um, hair.length_cm) = (Some(70.0), Some(20.0));
        let top = &mut file.section[0];
        (top.technique, top.zone, top.share_percent) = (Technique::Block, Zone::Whole, Some(20.0));
        (top.start_cm, top.transition_cm, top.foils) = (Some(2.0), Some(0.0), None);
        (top.mix_g, top.used_g) = (None, Some(used_g));
    });
    let stated = plan.head.sections[0].hair.unwrap();
    near(stated.best().g(), 5.08 * 0.2 * 18.0, 0.2);
    assert_eq!(
        texts(&plan, "amount").contains("what was used before speaks of"),
        !fits,
        "{used_g}: {}",
        texts(&plan, "amount")
    );
}

/// 20 volumes lift two levels at most (7.2 of the study guide of North Carolina): from 6 to 8 is as much, and half a level more where
/// the hair is read half a level too light.
#[test]
fn levels_are_told_with_what_they_may_come_to() {
    let lift = |off: Option<f64>, target: f64| {
        let plan = changed(only_colour(), |file| {
            file.analysis.natural_level_plus_minus = off;
            file.section[0].target_level = target;
            shop(file).shade[1].level = 10.0;
        });
        (verdicts(&plan, "lift"), texts(&plan, "lift"))
    };
    let (verdicts, said) = lift(Some(0.5), 8.0);
    assert!(verdicts.contains(&NotJudged), "{said}");
    assert!(said.contains("2.0 levels, 2.5 if the natural level is read too light,"), "{said}");
    let (verdicts, said) = lift(None, 8.5);
    assert!(verdicts.contains(&Warning) && said.contains("2.5 levels") && !said.contains("read too light"), "{said}");
    assert!(!lift(None, 8.0).1.contains("levels,"));
}

/// What is declared with nothing of it is not the same.
#[rstest]
#[case(1.0, true)]
#[case(0.0, false)]
fn nothing_of_a_substance_replaces_none(#[case] ww_percent: f64, #[case] offered: bool) {
    let additive = |name: &str, ww_percent: f64, in_hand_g: Option<f64>| AdditiveEntry {
        name: name.to_owned(),
        dose_percent: 3.0,
        in_hand_g,
        composition: serde_json::from_value(json!([
            { "substance": "water", "cas": "7732-18-5", "ww_percent": 85 },
            { "substance": "citric acid", "ww_percent": ww_percent },
        ]))
        .unwrap(),
        ..AdditiveEntry::default()
    };
    let plan = changed(only_lightener(), |file| {
        file.section[0].additives = vec!["keep".to_owned()];
        shop(file).additive.extend([additive("keep", 8.0, Some(0.1)), additive("other", ww_percent, None)]);
    });
    let keep = plan.stock.products.iter().find(|line| line.product == "keep").unwrap();
    assert_eq!(keep.instead.iter().any(|one| one.product == "other"), offered);
}

/// The sections that the forecast does not hold by its low end are named; of an easy target none is.
#[rstest]
#[case(9.5, Some("perhaps not in one visit: top and nape"))]
#[case(6.2, None)]
fn what_one_visit_may_not_do_is_not_promised(#[case] target: f64, #[case] want: Option<&str>) {
    let mut file = with(|_| ());
    also(&mut file, &["nape"]);
    for section in &mut file.section {
        section.target_level = target;
    }
    let found = consulted(&file).agreement.not_promised;
    let told = found.iter().find(|text| text.starts_with("perhaps not in one visit: ")).map(String::as_str);
    assert_eq!(told, want, "{found:?}");
}

/// Half of a fifth of the head is taken, so that another fifth is left: of its ends, from 10 cm on, half are painted, half as much
/// hair for each cm as the section has. The last third of what is not root begins at 14.17 cm. Surface goes with the hair.
#[test]
fn painted_ends_count_in_their_zones() {
    let zones = |ends: bool| {
        let plan = changed(only_lightener(), |file| {
            file.analysis.length_cm = Some(20.0);
            let top = &mut file.section[0];
            (top.zone, top.technique, top.mix_g) = (Zone::Whole, Technique::Block, None);
            (top.start_cm, top.transition_cm, top.taken_percent) = (Some(0.0), Some(0.0), Some(50.0));
            top.ends_between =
                serde_json::from_value(json!(ends.then(|| json!({ "from_cm": 10, "percent": 50 })))).unwrap();
        });
        let of = |zone: &foilwork::service::ZoneHair| (zone.hair.best().g(), zone.surface.best().cm2());
        plan.head.sections[0].zones.iter().map(of).collect::<Vec<_>>()
    };
    let (without, with) = (zones(false), zones(true));
    let third = 2.5 + 17.5 * 2.0 / 3.0;
    for (place, (own, painted)) in
        [(2.5, 0.0), (third - 2.5, third - 10.0), (20.0 - third, 20.0 - third)].into_iter().enumerate()
    {
        let more = 1.0 + painted / 2.0 / own;
        near(with[place].0 / without[place].0, more, 1e-6);
        near(with[place].1 / without[place].1, more, 1e-6);
    }
}

/// A strength that is chosen is held against the hair with all that goes into the bowl: the additive thins it as it does in the mix.
#[rstest]
#[case(&[], 4.0)]
#[case(&["bond"], 4.0 / 1.03)]
fn additives_thin_a_strength_that_is_chosen(#[case] additives: &[&str], #[case] want: f64) {
    let plan = changed(only_lightener(), |file| {
        let top = &mut file.section[0];
        (top.developer, top.mix_g, top.target_level) = (None, Some(500.0), 10.0);
        top.additives = additives.iter().map(|name| (*name).to_owned()).collect();
    });
    // 6 % w/w in 1:2 is 4 % on the hair; 3 % more in the bowl make 4 / 1.03 of it.
    let chosen = &plan.strengths[0];
    near(chosen.developer.best().ww_percent(), 6.0, 1e-9);
    near(chosen.on_hair.best().ww_percent(), want, 1e-6);
    near(plan.mixes[0].on_hair.best().ww_percent(), want, 0.01);
}
