//! What is refused is refused from its border on, and not before it: both sides of each.

use super::base::{changed, fine, near, only_colour, only_lightener, shop, verdicts};
use foilwork::{
    finding::Verdict::{Note, Warning},
    head::Technique,
    service::{Plan, ServiceFile, StockCover, plan, shape::Zone},
};
use rstest::rstest;
use serde_json::{Value, json};

/// Hair of 20 cm, the section by its grams.
fn of_20_cm(file: &mut ServiceFile) {
    file.analysis.length_cm = Some(20.0);
    let top = &mut file.section[0];
    (top.zone, top.technique, top.start_cm) = (Zone::Whole, Technique::Block, Some(10.0));
}

fn fits(file: ServiceFile, change: impl FnOnce(&mut ServiceFile)) -> bool {
    let mut file = file;
    change(&mut file);
    plan(&file).is_ok()
}

/// Of hair of 20 cm: a start lies within it, what follows the start ends with it, bands lie within it and do not cover each other.
#[rstest]
#[case::start(json!({"start": 19.9, "over": 0.1}), json!({"start": 20.0}))]
#[case::transition(json!({"start": 10.0, "over": 10.0}), json!({"start": 10.0, "over": 10.1}))]
#[case::ends_between(json!({"ends": 19.9}), json!({"ends": 20.0}))]
#[case::a_band_to_the_ends(json!({"bands": [[3, 20]]}), json!({"bands": [[3, 20.1]]}))]
#[case::a_band_of_some_length(json!({"bands": [[19.9, 20]]}), json!({"bands": [[20, 21]]}))]
#[case::a_band_forward(json!({"bands": [[3, 3.1]]}), json!({"bands": [[3, 3]]}))]
#[case::bands_that_touch(json!({"bands": [[3, 8], [8, 12]]}), json!({"bands": [[3, 8], [7.9, 12]]}))]
#[case::a_shadow(json!({"shadow": 20.0}), json!({"shadow": 20.1}))]
fn within_the_hair(#[case] inside: Value, #[case] outside: Value) {
    for (of, want) in [(inside, true), (outside, false)] {
        let number = |name: &str| of.get(name).and_then(Value::as_f64);
        let found = fits(fine(), |file| {
            of_20_cm(file);
            let top = &mut file.section[0];
            (top.start_cm, top.transition_cm) =
                (number("start").or(top.start_cm), number("over").or(top.transition_cm));
            if let Some(from) = number("ends") {
                top.taken_percent = Some(50.0);
                top.ends_between = serde_json::from_value(json!({ "from_cm": from, "percent": 50 })).unwrap();
            }
            if let Some(bands) = of.get("bands").and_then(Value::as_array) {
                let bands = bands
                    .iter()
                    .map(|band| json!({ "from_cm": band[0], "to_cm": band[1], "level": 5, "artificial": true }));
                file.analysis.existing = serde_json::from_value(bands.collect()).unwrap();
            }
            let shadow = file.root_shadow.as_mut().unwrap();
            shadow.length_cm = number("shadow").or(shadow.length_cm);
        });
        assert_eq!(found, want, "{of}");
    }
}

/// 240 min of application at most: of a hundred foils 2.4 min each.
#[rstest]
#[case(2.4, true)]
#[case(2.41, false)]
fn a_section_takes_four_hours_at_most(#[case] foil_min: f64, #[case] want: bool) {
    let found = fits(only_lightener(), |file| {
        let top = &mut file.section[0];
        (top.apply_min, top.foil_min, top.foils) = (None, Some(foil_min), Some(100));
    });
    assert_eq!(found, want);
}

/// As many white hairs as were counted may be white, and no more.
#[rstest]
#[case(100, true)]
#[case(101, false)]
fn no_more_hairs_are_white_than_were_counted(#[case] white: u32, #[case] want: bool) {
    let found = fits(only_lightener(), |file| {
        file.analysis.white_percent = None;
        file.analysis.white_counts =
            serde_json::from_value(json!([{"region": "crown", "white": white, "counted": 100}])).unwrap();
    });
    assert_eq!(found, want);
}

/// The root of a zone in cm: 2.5 where nothing is known, half of short hair, what has grown in (0.37 mm a day, `hair-growth-1986`),
/// the first band wherever it stands in the list; the last third of the rest are the ends.
#[rstest]
#[case::usual(20.0, None, &[], 2.5)]
#[case::short(4.0, None, &[], 2.0)]
#[case::shorter_than_both(3.0, None, &[], 1.5)]
#[case::grown(20.0, Some(8.0), &[], 2.072)]
#[case::grown_beyond_half(3.0, Some(8.0), &[], 1.5)]
#[case::nothing_has_grown(20.0, Some(0.0), &[], 2.5)]
#[case::first_band(20.0, Some(8.0), &[8.0, 3.0], 3.0)]
#[case::first_band_first(20.0, None, &[3.0, 8.0], 3.0)]
fn roots_lengths_and_ends(#[case] length: f64, #[case] weeks: Option<f64>, #[case] bands: &[f64], #[case] root: f64) {
    let of = |zone: Zone, start: Option<f64>| {
        let plan = changed(only_lightener(), |file| {
            of_20_cm(file);
            let hair = &mut file.analysis;
            (hair.length_cm, hair.weeks_since_colour) = (Some(length), weeks);
            let bands =
                bands.iter().map(|from| json!({"from_cm": from, "to_cm": from + 1.0, "level": 5, "artificial": true}));
            hair.existing = serde_json::from_value(bands.collect()).unwrap();
            let top = &mut file.section[0];
            (top.zone, top.start_cm, top.transition_cm, top.mix_g) = (zone, start, Some(0.0), Some(45.0));
        });
        plan.head.sections[0].zones.iter().map(|one| one.hair.best().g()).collect::<Vec<_>>()
    };
    // A block over the whole strand has hair in each zone as long as the zone.
    let third = root + (length - root) * 2.0 / 3.0;
    let whole = of(Zone::Whole, Some(0.0));
    assert_eq!(whole.len(), 3);
    let of_a_cm = whole.iter().sum::<f64>() / length;
    for (got, want) in whole.iter().zip([root, third - root, length - third]) {
        near(got / of_a_cm, want, 1e-6 * length.max(1.0));
    }
    // A block at the root begins a fortieth of the length from the scalp, as the technique does.
    near(of(Zone::Roots, None).iter().sum::<f64>() / of_a_cm, root - length / 40.0, 1e-6 * length);
    near(of(Zone::MidLengths, None).iter().sum::<f64>() / of_a_cm, third - root, 1e-6 * length);
    near(of(Zone::Lengths, None).iter().sum::<f64>() / of_a_cm, length - root, 1e-6 * length);
    near(of(Zone::Ends, None).iter().sum::<f64>() / of_a_cm, length - third, 1e-6 * length);
}

/// Lighter than level 8 a permanent shade covers white hair only in part, from 30 % white on (common practice). The shades are all
/// natural, which the trade takes for all white hair.
#[rstest]
#[case(8.0, 30.0, 0)]
#[case(8.1, 30.0, 1)]
#[case(8.1, 29.9, 0)]
#[case(8.1, 100.0, 1)]
fn light_shades_on_white_hair(#[case] level: f64, #[case] white: f64, #[case] want: usize) {
    let plan = changed(only_colour(), |file| {
        file.analysis.white_percent = Some(white);
        shop(file).shade[1].level = level;
    });
    let said = plan.findings.iter().filter(|found| found.text.contains("covers it only in part")).count();
    assert_eq!(said, want);
}

/// 15 g of powder are wanted. Where the mix may take more, what is in hand may run short before it is short.
#[rstest]
#[case(15.0, StockCover::Covered)]
#[case(14.9, StockCover::Short)]
fn in_hand_to_the_gram(#[case] in_hand: f64, #[case] want: StockCover) {
    let plan = changed(only_lightener(), |file| shop(file).lightener[0].in_hand_g = Some(in_hand));
    let powder = plan.stock.products.iter().find(|line| line.product == "powder").unwrap();
    assert_eq!(powder.cover, want);
}

/// Grams that are worked out have bounds: their high end is covered, or it may run short, or it is short.
#[test]
fn an_estimate_may_run_short() {
    let estimated = |in_hand: Option<f64>| {
        let plan = changed(only_lightener(), |file| {
            of_20_cm(file);
            file.section[0].mix_g = None;
            shop(file).lightener[0].in_hand_g = in_hand;
        });
        let powder = plan.stock.products.iter().find(|line| line.product == "powder").unwrap().clone();
        (powder.wanted, powder.cover)
    };
    let [_, best, high] = estimated(None).0.to_array().map(|mass| mass.g());
    assert!(high > best);
    for (in_hand, want) in [
        (high + 0.001, StockCover::Covered),
        (high - 0.001, StockCover::MayRunShort),
        (best + 0.001, StockCover::MayRunShort),
        (best - 0.001, StockCover::Short),
    ] {
        assert_eq!(estimated(Some(in_hand)).1, want, "{in_hand}");
    }
}

/// A weave of it, for which a gram of hair takes 2.5 g, and 1.2 at least: less than half.
fn woven(mix_g: Option<f64>) -> Plan {
    changed(only_lightener(), |file| {
        of_20_cm(file);
        (file.section[0].technique, file.section[0].mix_g) = (Technique::Weave, mix_g);
    })
}

/// What is stated below the least that the hair takes is a warning, below half of the best a note, and else nothing is said.
#[test]
fn grams_that_are_stated_are_held_against_the_hair() {
    let amounts = |grams| verdicts(&woven(Some(grams)), "amount");
    let [low, best, _] = woven(None).mixes[0].needed.to_array().map(|mass| mass.g());
    assert!(low > 0.0 && low + 0.01 < best / 2.0 - 0.01, "{low} {best}");
    assert_eq!(amounts(low - 0.01), [Warning]);
    assert_eq!(amounts(low + 0.01), [Note]);
    assert_eq!(amounts(best / 2.0 - 0.01), [Note]);
    assert_eq!(amounts(best / 2.0 + 0.01), []);
    assert_eq!(amounts(best), []);
}

/// More than an hour of applying lightener: the first foils are done before the last are on (common practice).
#[rstest]
#[case(30.0, false)]
#[case(30.1, true)]
fn an_hour_of_applying(#[case] minutes: f64, #[case] want: bool) {
    let plan = changed(only_lightener(), |file| {
        let mut other = file.section[0].clone();
        (other.name, other.apply_min) = ("nape".to_owned(), Some(minutes));
        file.section[0].apply_min = Some(30.0);
        file.section.push(other);
    });
    assert_eq!(verdicts(&plan, "pace").contains(&Warning), want);
}
