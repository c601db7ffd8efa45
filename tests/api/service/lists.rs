//! Lists of a plan in their order: cautions, costs that are left out, what stands in for an additive, habits of a first file.

use super::base::{changed, fine, only_colour, only_lightener, shop};
use foilwork::{
    colour::Naming,
    head::ExtraStep,
    limits::Jurisdiction,
    mix::{Hazard, handling_advice},
    money::Currency,
    reader::Format,
    service::{LeftOut, LeftOutCost, Plan, ServiceFile, starter},
    shop::{Country, parse_shop, shape::AdditiveEntry},
};
use rstest::rstest;
use serde_json::{Value, json};

/// What a bowl brings, whatever its maker says of it: lightener persulfate, a developer peroxide, colour that needs one its dyes with
/// ammonia and resorcinol, colour that needs none something unknown; a remover what it holds. Two general cautions stand before.
fn cautions_are(plan: &Plan, hazards: &[Hazard]) {
    let got: Vec<&str> = plan.cautions.iter().map(|caution| caution.text).collect();
    let want: Vec<&str> = handling_advice(hazards).into_iter().map(|advice| advice.text).collect();
    assert_eq!(got[2..], want, "{hazards:?}");
    assert!(got[0].contains("own instructions and local law") && got[1].contains("test a strand"), "{got:?}");
    assert!(plan.cautions.iter().all(|caution| !caution.sources.is_empty()));
}

#[test]
fn cautions_are_those_of_what_is_in_the_bowls() {
    use Hazard::{Ammonia, OxidativeDye, Peroxide, Persulfate, Resorcinol, Unknown};
    let dyes = [OxidativeDye, Ammonia, Resorcinol];
    cautions_are(&changed(only_lightener(), |_| ()), &[Peroxide, Persulfate]);
    cautions_are(&changed(only_colour(), |_| ()), &[&[Peroxide][..], &dyes].concat());
    let semi = |file: &mut ServiceFile| {
        let top = &mut file.section[0];
        (top.product, top.developer) = (Some("J8-veil".to_owned()), None);
    };
    cautions_are(&changed(only_colour(), semi), &[Unknown]);
    cautions_are(&changed(fine(), |_| ()), &[&[Peroxide, Persulfate][..], &dyes].concat());
    let before = |step: ExtraStep| {
        changed(only_colour(), |file| {
            semi(file);
            file.section[0].first = vec![step];
        })
    };
    cautions_are(&before(ExtraStep::PreSoften), &[Unknown, Peroxide]);
    cautions_are(&before(ExtraStep::PreLighten), &[Unknown, Peroxide, Persulfate]);
    cautions_are(&before(ExtraStep::CleanFirst), &[Unknown, Peroxide, Persulfate]);
    cautions_are(&before(ExtraStep::PrePigment), &[&[Unknown][..], &dyes].concat());
    for (persulfate, peroxide, hazards) in [
        (true, true, &[Unknown, Peroxide, Persulfate][..]),
        (true, false, &[Unknown, Persulfate]),
        (false, true, &[Unknown, Peroxide]),
        (false, false, &[Unknown]),
    ] {
        let plan = changed(only_colour(), |file| {
            semi(file);
            let out = json!({ "name": "out", "persulfate": persulfate, "peroxide": peroxide });
            shop(file).remover = vec![serde_json::from_value(out).unwrap()];
            (file.section[0].first, file.section[0].clean_with) = (vec![ExtraStep::CleanFirst], Some("out".to_owned()));
        });
        cautions_are(&plan, hazards);
    }
    // A step that is only asked for brings nothing.
    let asked = changed(only_colour(), |file| {
        semi(file);
        file.section[0].target_level = 8.0;
    });
    assert!(asked.first_steps.iter().any(|step| !step.planned));
    cautions_are(&asked, &[Unknown]);
}

#[rstest]
#[case(LeftOutCost::PackPrice, Some("clay"), "clay: no price in the shop", None)]
#[case(LeftOutCost::Foils, Some("nape"), "foils of nape", Some("foils"))]
#[case(LeftOutCost::Labour, None, "labour", Some("shop.terms.wage_per_h"))]
#[case(LeftOutCost::OnCosts, None, "on-costs of the wage", Some("shop.terms.on_costs_percent"))]
#[case(LeftOutCost::PaidHours, None, "paid hours without a guest", Some("shop.terms.productive_percent"))]
#[case(LeftOutCost::OtherWork, None, "consultation, drying", Some("service.other_work_min"))]
#[case(LeftOutCost::Overhead, None, "overhead", Some("shop.terms.overhead_per_h"))]
fn a_cost_that_is_left_out_names_its_field(
    #[case] what: LeftOutCost,
    #[case] of: Option<&str>,
    #[case] words: &str,
    #[case] field: Option<&str>,
) {
    let left_out = LeftOut { what, of: of.map(str::to_owned) };
    assert_eq!((left_out.to_string().as_str(), left_out.field()), (words, field));
}

/// Products first, then foils, then what is paid by time: each where the file does not say it, and once.
#[test]
fn what_a_price_leaves_out_is_told_in_its_order() {
    let told = |change: &dyn Fn(&mut ServiceFile)| -> Vec<String> {
        let plan = changed(fine(), |file| {
            shop(file).currency = Some("EUR".to_owned());
            shop(file).consumable = vec![
                serde_json::from_value(json!({ "name": "foil", "price": "18.00", "pack_pieces": 500, "per": "foil" }))
                    .unwrap(),
            ];
            change(file);
        });
        plan.money.unwrap().left_out.iter().map(ToString::to_string).collect()
    };
    let unpriced = ["powder", "developer", "J9", "J6"].map(|name| format!("{name}: no price in the shop"));
    let terms =
        |stated: Value| move |file: &mut ServiceFile| shop(file).terms = serde_json::from_value(stated.clone()).ok();
    let want = |rest: &[&str]| [&unpriced[..], &rest.iter().map(|one| (*one).to_owned()).collect::<Vec<_>>()].concat();
    assert_eq!(told(&|_| ()), want(&["labour", "overhead"]));
    let wage = terms(json!({ "wage_per_h": "15.00" }));
    assert_eq!(
        told(&wage),
        want(&["on-costs of the wage", "paid hours without a guest", "consultation, drying", "overhead"])
    );
    let all =
        json!({ "wage_per_h": "15.00", "on_costs_percent": 20, "productive_percent": 70, "overhead_per_h": "9.00" });
    let all = terms(all);
    assert_eq!(told(&all), want(&["consultation, drying"]));
    let timed = |file: &mut ServiceFile| {
        all(file);
        file.service.other_work_min = Some(20.0);
        file.section[0].foils = None;
    };
    assert_eq!(told(&timed), want(&["foils of top"]));
}

/// Who declares most that is alike comes first, of as many the first of the shop, two at most: by number where both have one, else by
/// name whatever its letters; what neither holds, and water, is nothing alike.
#[test]
fn an_additive_is_replaced_by_those_that_declare_most_alike() {
    let of = |name: &str, held: &[(&str, Option<&str>, f64)]| AdditiveEntry {
        name: name.to_owned(),
        dose_percent: 3.0,
        in_hand_g: Some(100.0),
        composition: held
            .iter()
            .map(|(substance, cas, percent)| {
                let entry = json!({ "substance": substance, "cas": cas, "ww_percent": percent });
                serde_json::from_value(crate::api::service::field_use::without_nulls(entry)).unwrap()
            })
            .collect(),
        ..AdditiveEntry::default()
    };
    let (acid, sugar) = (Some("77-92-9"), Some("57-50-1"));
    let keep = AdditiveEntry {
        in_hand_g: Some(0.1),
        ..of(
            "keep",
            &[("acid", acid, 5.0), ("moss", None, 2.0), ("fern", None, 0.0), ("water", Some("7732-18-5"), 80.0)],
        )
    };
    let instead = |others: &[AdditiveEntry]| -> Vec<String> {
        let plan = changed(fine(), |file| {
            file.section[0].additives = vec!["keep".to_owned()];
            shop(file).additive.push(keep.clone());
            shop(file).additive.extend(others.to_vec());
        });
        let line = plan.stock.products.iter().find(|line| line.product == "keep").unwrap();
        line.instead.iter().map(|one| format!("{}: {}", one.product, one.why)).collect()
    };
    let why = |alike: &str| format!("declares {alike} too, dose 3 % instead of 3 %: by its own leaflet");
    let number = of("number", &[("another name", acid, 1.0)]);
    let name = of("name", &[("MOSS", sugar, 1.0)]);
    let both = of("both", &[("Moss", None, 1.0), ("acid", acid, 1.0)]);
    let others = [
        of("nothing", &[("water", Some("7732-18-5"), 90.0), ("fern", None, 3.0)]),
        of("none of it", &[("acid", acid, 0.0), ("moss", None, 0.0)]),
        of("other number", &[("acid", sugar, 5.0)]),
    ];
    assert_eq!(instead(&others), [""; 0]);
    let with = |more: &[&AdditiveEntry]| {
        let mut all = others.to_vec();
        all.extend(more.iter().map(|one| (*one).clone()));
        instead(&all)
    };
    assert_eq!(with(&[&number, &name]), [format!("number: {}", why("acid")), format!("name: {}", why("moss"))]);
    assert_eq!(
        with(&[&name, &number, &both]),
        [format!("both: {}", why("acid and moss")), format!("name: {}", why("moss"))]
    );
}

/// By hand, country by country: whose measures and names are written there.
#[test]
fn a_first_shop_has_the_habits_of_its_country() {
    let of = |jurisdiction: Jurisdiction| {
        let text = starter(jurisdiction, Currency::from_code("EUR").unwrap()).shop;
        let habits = parse_shop(&text, Format::Toml).unwrap().habits.unwrap();
        (habits.country, habits.ounces, habits.volume_labels, habits.level_names)
    };
    use Jurisdiction::{Australia, Canada, China, GreatBritain, Japan, NewZealand, Poland, UnitedStates};
    let (us, european) = (Some(Naming::Us), Some(Naming::European));
    for jurisdiction in Jurisdiction::ALL.iter().copied() {
        let want = match jurisdiction {
            UnitedStates => (Some(Country::UnitedStates), true, true, us),
            GreatBritain => (Some(Country::UnitedKingdom), true, true, european),
            Canada => (Some(Country::Canada), false, true, us),
            Australia => (Some(Country::Australia), false, true, european),
            NewZealand => (Some(Country::NewZealand), false, true, european),
            China => (Some(Country::China), false, false, european),
            Japan => (Some(Country::Japan), false, false, european),
            Poland => (Some(Country::Poland), false, false, european),
            _ => (None, false, false, european),
        };
        assert_eq!(of(jurisdiction), want, "{jurisdiction}");
    }
}
