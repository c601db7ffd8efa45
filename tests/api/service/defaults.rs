//! Every default is printed with its ground, and goes away when the file says it.

use super::base::{changed, fine, shop};
use foilwork::{
    service::{DefaultUsed, LeftOutCost, ServiceFile, shape::Salon},
    sheet::bench_sheet,
    shop::{CountsFrom, Per, shape::ConsumableEntry},
    source::Basis,
};
use rstest::rstest;

/// Nothing is stated that has a default.
fn silent() -> ServiceFile {
    let mut file = fine();
    file.salon = Salon::default();
    shop(&mut file).developer[0].strength = "6 % w/v".to_owned();
    shop(&mut file).lightener[0].longest_counts_from = None;
    file.section[0].mix_g = None;
    file.section[0].on_scalp = None;
    file.toner[0].apply_min = None;
    if let Some(shadow) = &mut file.root_shadow {
        shadow.apply_min = None;
    }
    shop(&mut file).currency = Some("EUR".to_owned());
    shop(&mut file).consumable = vec![ConsumableEntry {
        name: "foil".to_owned(),
        price: "18.00".to_owned(),
        pack_pieces: 500,
        pieces: None,
        per: Per::Foil,
        in_hand_pieces: None,
    }];
    file
}

fn fields(defaults: &[DefaultUsed]) -> Vec<&str> {
    defaults.iter().map(|default| default.field.as_str()).collect()
}

const ALL: [&str; 18] = [
    "salon.scale_division_g",
    "salon.bowl_capacity_g",
    "salon.working_life_min",
    "salon.room_c",
    "salon.people",
    "salon.basins",
    "salon.mix_bowl_min",
    "salon.look_min",
    "salon.rinse_section_min",
    "salon.basin_walk_min",
    "salon.stay_longer_min",
    "shop.developer[1].cream",
    "section[1].on_scalp",
    "section[1].mix_g",
    "toner[1].apply_min",
    "root_shadow.apply_min",
    "shop.lightener[1].longest_counts_from",
    "shop.consumable[1].pieces",
];

#[test]
fn every_default_is_listed_with_its_ground_and_printed() {
    let plan = changed(silent(), |_| {});
    let (mut listed, mut all) = (fields(&plan.defaults), ALL.to_vec());
    listed.sort_unstable();
    all.sort_unstable();
    assert_eq!(listed, all);
    let sheet = bench_sheet(&plan);
    for default in &plan.defaults {
        assert!(!default.value.to_string().is_empty() && !default.sources.is_empty(), "{default:?}");
        assert!(!matches!(default.basis, Basis::Stated | Basis::Measured), "{default:?}");
        assert!(sheet.contains(&format!("- {} = {}", default.field, default.value)), "{default:?}\n{sheet}");
    }
}

#[rstest]
#[case("salon.scale_division_g", |file: &mut ServiceFile| file.salon.scale_division_g = Some(1.0))]
#[case("salon.bowl_capacity_g", |file: &mut ServiceFile| file.salon.bowl_capacity_g = Some(120.0))]
#[case("salon.working_life_min", |file: &mut ServiceFile| file.salon.working_life_min = Some(30.0))]
#[case("salon.room_c", |file: &mut ServiceFile| file.salon.room_c = Some(20.0))]
#[case("salon.people", |file: &mut ServiceFile| file.salon.people = Some(1))]
#[case("salon.basins", |file: &mut ServiceFile| file.salon.basins = Some(1))]
#[case("salon.mix_bowl_min", |file: &mut ServiceFile| file.salon.mix_bowl_min = Some(3.0))]
#[case("salon.look_min", |file: &mut ServiceFile| file.salon.look_min = Some(1.0))]
#[case("salon.rinse_section_min", |file: &mut ServiceFile| file.salon.rinse_section_min = Some(3.0))]
#[case("salon.basin_walk_min", |file: &mut ServiceFile| file.salon.basin_walk_min = Some(2.0))]
#[case("salon.stay_longer_min", |file: &mut ServiceFile| file.salon.stay_longer_min = Some(10.0))]
#[case("shop.developer[1].cream", |file: &mut ServiceFile| shop(file).developer[0].cream = Some(true))]
#[case("shop.developer[1].cream", |file: &mut ServiceFile| shop(file).developer[0].cream = Some(false))]
#[case("shop.developer[1].cream", |file: &mut ServiceFile| shop(file).developer[0].density_g_per_ml = Some(1.0))]
#[case("shop.developer[1].cream", |file: &mut ServiceFile| shop(file).developer[0].strength = "6 % w/w".into())]
#[case("section[1].on_scalp", |file: &mut ServiceFile| file.section[0].on_scalp = Some(false))]
#[case("section[1].mix_g", |file: &mut ServiceFile| file.section[0].mix_g = Some(36.0))]
#[case("toner[1].apply_min", |file: &mut ServiceFile| file.toner[0].apply_min = Some(5.0))]
#[case("root_shadow.apply_min", |file: &mut ServiceFile| file.root_shadow.as_mut().unwrap().apply_min = Some(5.0))]
#[case("shop.lightener[1].longest_counts_from", |file: &mut ServiceFile| {
    shop(file).lightener[0].longest_counts_from = Some(CountsFrom::EndOfApplication);
})]
#[case("shop.consumable[1].pieces", |file: &mut ServiceFile| shop(file).consumable[0].pieces = Some(1))]
fn a_default_goes_away_when_the_field_is_stated(#[case] field: &str, #[case] state: fn(&mut ServiceFile)) {
    let plan = changed(silent(), state);
    let left: Vec<&str> = ALL.into_iter().filter(|other| *other != field).collect();
    let mut listed = fields(&plan.defaults);
    listed.sort_by_key(|listed| ALL.iter().position(|other| other == listed));
    assert_eq!(listed, left);
}

/// Common practice: 180 g of lightener (120 to 300 g) for a full head of fine weaves, of which the section is 20 %.
#[test]
fn an_amount_that_is_not_stated_is_an_estimate_with_bounds() {
    let plan = changed(silent(), |_| {});
    let needed = plan.mixes[0].needed;
    assert!((needed.low().g() - 24.0).abs() < 1e-9 && (needed.best().g() - 36.0).abs() < 1e-9, "{needed:?}");
    assert!((needed.high().g() - 60.0).abs() < 1e-9, "{needed:?}");
    assert_eq!(plan.mixes[0].needed_basis, Basis::CommonPractice);
    assert!(bench_sheet(&plan).contains("36 (24 to 60) g needed [common practice]"));
}

/// A number of foils that nobody stated costs nothing on the sheet, which must be said.
#[test]
fn foils_that_are_not_counted_are_left_out_aloud() {
    let left_out = |foils| {
        let plan = changed(silent(), |file| file.section[0].foils = foils);
        plan.money
            .unwrap()
            .left_out
            .iter()
            .any(|cost| cost.what == LeftOutCost::Foils && cost.of.as_deref() == Some("top"))
    };
    assert!(left_out(None));
    assert!(!left_out(Some(0)) && !left_out(Some(12)));
}

/// Each by hand: what is usual on a bench (assumed), the trade's amounts, the strength of a clear solution.
#[test]
fn every_default_is_what_is_usual() {
    let plan = changed(silent(), |_| {});
    let want = [
        ("salon.scale_division_g", "1 g", "a scale that shows whole grams"),
        ("salon.bowl_capacity_g", "120 g", "an ordinary tint bowl"),
        ("salon.working_life_min", "30 min", "between most active and spent"),
        ("salon.room_c", "20 C", "an ordinary heated room"),
        ("salon.people", "1", "one, where no more are stated"),
        ("salon.basins", "1", "one, where no more are stated"),
        ("salon.mix_bowl_min", "3 min", "weighing and mixing a bowl"),
        ("salon.look_min", "1 min", "a walk over the open foils"),
        ("salon.rinse_section_min", "3 min", "rinsing a section"),
        ("salon.basin_walk_min", "2 min", "bringing the guest to the basin"),
        ("salon.stay_longer_min", "10 min", "between one look and the next"),
        ("shop.developer[1].cream", "true", "that of a clear solution"),
        ("section[1].on_scalp", "false", "it begins away from the roots"),
        ("section[1].mix_g", "36 g (24 g to 60 g)", "the trade's full-head amount times the share"),
        ("toner[1].apply_min", "5 min", "applied at the basin in a few minutes"),
        ("root_shadow.apply_min", "5 min", "applied at the basin in a few minutes"),
        ("shop.lightener[1].longest_counts_from", "the first strand", "the stricter reading"),
        ("shop.consumable[1].pieces", "1", "one for each foil"),
    ];
    for (field, value, why) in want {
        let used = plan.defaults.iter().find(|used| used.field == field).unwrap();
        assert_eq!(used.value.to_string(), value, "{field}");
        assert!(used.sources[0].text.contains(why), "{field}: {:?}", used.sources);
    }
    // A piece for the service is another one; strengths that are left open have a window and a tolerance.
    let open = changed(silent(), |file| {
        shop(file).consumable[0].per = Per::Service;
        file.section[0].developer = None;
        file.section[0].on_scalp = None;
        file.section[0].technique = foilwork::head::Technique::Regrowth;
    });
    for (field, value, why) in [
        ("shop.consumable[1].pieces", "1", "one for the service"),
        ("finish.within_min", "10 min", "between one look and the next"),
        ("finish.tolerance_levels", "0.5 levels", "a level is read to the half step"),
        ("section[1].on_scalp", "true", "at the scalp, and no foil in between"),
        ("section[1].cover", "open air", "the technique has no foil"),
    ] {
        let used = open.defaults.iter().find(|used| used.field == field).unwrap_or_else(|| panic!("{field}"));
        assert_eq!(used.value.to_string(), value, "{field}");
        assert!(used.sources[0].text.contains(why), "{field}: {:?}", used.sources);
    }
    assert!(plan.defaults.iter().all(|used| !used.field.starts_with("finish.")));
}
