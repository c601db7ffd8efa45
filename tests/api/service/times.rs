//! Times on the hair: they count from the first strand, and no time is shown beyond a limit.
//!
//! First look after 15 to 20 min, then every 5 to 10 (citation `check-interval`, of which the earlier figures are taken);
//! 10 min on fine hair (common practice). The rest is addition.

use super::base::{changed, fine, only_colour, only_lightener, shop, texts, verdicts};
use foilwork::{
    finding::Verdict::{self, NotJudged, Stop, Warning},
    hair::Texture,
    quantity::Duration,
    service::{Plan, ServiceFile, Start, mixing_cards},
    sheet::{bench_sheet, card_sheet},
    shop::CountsFrom::{self, EndOfApplication, FirstStrand},
    shop::Habits,
};
use rstest::rstest;

fn minutes(times: &[Duration]) -> Vec<f64> {
    times.iter().map(|time| time.min()).collect()
}

/// A section of 20 min before the one that the base has.
fn second_in_line(file: &mut ServiceFile) {
    let mut first = file.section[0].clone();
    first.name = "nape".to_owned();
    file.section.insert(0, first);
}

/// From the first strand it is on for 20 min of application and 30 of development; from the end of the application 30.
#[rstest]
#[case::first_strand_at_the_limit(Some(50.0), None, None)]
#[case::first_strand_beyond(Some(49.0), None, Some(Stop))]
#[case::said_to_count_from_the_first_strand(Some(49.0), Some(FirstStrand), Some(Stop))]
#[case::end_at_the_limit(Some(30.0), Some(EndOfApplication), None)]
#[case::end_beyond(Some(29.0), Some(EndOfApplication), Some(Stop))]
#[case::not_on_the_shelf(None, None, Some(NotJudged))]
fn longest_time(#[case] longest_min: Option<f64>, #[case] from: Option<CountsFrom>, #[case] want: Option<Verdict>) {
    let plan = changed(only_colour(), |file| {
        (shop(file).shade[1].longest_min, shop(file).shade[1].longest_counts_from) = (longest_min, from);
    });
    assert_eq!(verdicts(&plan, "time"), Vec::from_iter(want));
    assert_eq!(plan.blocked, want == Some(Stop));
    let plan = changed(only_lightener(), |file| {
        let powder = &mut shop(file).lightener[0];
        (powder.longest_min, powder.longest_counts_from) = (longest_min, from);
    });
    assert_eq!(verdicts(&plan, "time"), Vec::from_iter(want));
}

/// 80 min to apply and 30 to develop are 110 min on the first strand of a 50 min product.
#[test]
fn a_first_strand_far_beyond_the_limit_stops_the_plan() {
    let plan = changed(only_lightener(), |file| file.section[0].apply_min = Some(80.0));
    assert!(plan.blocked);
    assert_eq!(verdicts(&plan, "time"), [Stop]);
    let text = texts(&plan, "time");
    assert!(
        text.contains("110 min") && text.contains("allows 50 min from the first strand: split the section"),
        "{text}"
    );
    assert_eq!(plan.order[0].rinse_by.min(), 50.0);
    assert_eq!(minutes(&plan.order[0].look_at), [15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0]);
}

/// A toner counts like everything else: 5 min to apply and 16 to develop are 21 of 20.
#[test]
fn a_toner_has_its_limit_too() {
    let plan = changed(fine(), |file| file.toner[0].develop_min = 16.0);
    assert_eq!(verdicts(&plan, "time"), [Stop]);
    assert!(texts(&plan, "time").contains("develop 15 min at most"), "{}", texts(&plan, "time"));
    assert_eq!(plan.order[1].rinse_by.min(), 20.0);
}

/// Begun at minute 20 with a limit of 45: the first strand is at its limit at minute 65, applied at 40; counted from the
/// end of the application at minute 85.
#[rstest]
#[case(FirstStrand, 65.0)]
#[case(EndOfApplication, 85.0)]
fn nothing_is_rinsed_beyond_a_limit(#[case] from: CountsFrom, #[case] rinse_by: f64) {
    let plan = changed(only_lightener(), |file| {
        second_in_line(file);
        file.section[1].develop_min = 50.0;
        let powder = &mut shop(file).lightener[0];
        (powder.longest_min, powder.longest_counts_from) = (Some(45.0), Some(from));
    });
    let step = &plan.order[1];
    assert_eq!((step.begin.min(), step.applied.min(), step.rinse_by.min()), (20.0, 40.0, rinse_by));
    assert!(step.look_at.iter().all(|at| *at <= step.rinse_by));
    let card = mixing_cards(&plan).swap_remove(1);
    assert_eq!(card.minutes.rinse_by, step.rinse_by);
    assert!(!bench_sheet(&plan).contains(" 90\n"), "{}", bench_sheet(&plan));
}

/// Begun at 0, applied at 20, rinsed by 50. The last strand is due 15 min after 20, on fine hair 10 min.
#[rstest]
#[case::not_stated(None, &[15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0], 35.0)]
#[case::coarse(Some(Texture::Coarse), &[15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0], 35.0)]
#[case::fine(Some(Texture::Fine), &[10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0], 30.0)]
fn looks_count_from_the_first_strand(#[case] texture: Option<Texture>, #[case] looks: &[f64], #[case] last: f64) {
    let plan = changed(only_lightener(), |file| file.analysis.texture = texture);
    assert_eq!(minutes(&plan.order[0].look_at), looks);
    assert_eq!(plan.order[0].look_at_last.map(|at| at.min()), Some(last));
    let card = card_sheet(&mixing_cards(&plan), &Habits::default()).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(card.contains(&format!("look at the hair 10:{}", looks[0])), "{card}");
    assert!(card.contains(&format!("the last strand from 10:{last}")), "{card}");
}

/// Colour is looked at when it is rinsed.
#[test]
fn colour_has_one_look() {
    let plan = changed(only_colour(), |_| {});
    assert_eq!((minutes(&plan.order[0].look_at), plan.order[0].look_at_last), (vec![50.0], None));
}

/// The nape is put on until 20 and then the top until 40: the looks at 25, 30 and 35 find no free hand; those at 15, in
/// the nape's own application, and at 20 and 40, between two applications, do.
#[test]
fn looks_that_fall_into_another_application_are_said() {
    let plan = changed(only_lightener(), second_in_line);
    assert_eq!(verdicts(&plan, "look"), [Warning]);
    let text = texts(&plan, "look");
    assert!(text.contains("nape: looks at minute 25, 30, 35 fall into the application of top"), "{text}");
    assert_eq!(verdicts(&changed(only_lightener(), |_| {}), "look"), []);
}

fn plan_of(from: Option<CountsFrom>) -> Plan {
    changed(only_lightener(), |file| shop(file).lightener[0].longest_counts_from = from)
}

/// Where the entry does not say from when its limit counts, the sheet says what was taken.
#[test]
fn the_default_of_the_limit_is_printed() {
    let line = "shop.lightener[1].longest_counts_from = the first strand";
    assert!(bench_sheet(&plan_of(None)).contains(line));
    assert!(!bench_sheet(&plan_of(Some(FirstStrand))).contains("longest_counts_from"));
}

/// Seconds are told where they are stated, and left out where they are none.
#[test]
fn a_start_is_told_as_it_is_stated() {
    let at = |text: &str| Start::At(text.parse().unwrap()).to_string();
    assert_eq!(at("2026-11-25T10:00:00"), "2026-11-25 10:00");
    assert_eq!(at("2026-11-25T10:00:30"), "2026-11-25 10:00:30");
    assert_eq!(Start::Day("2026-11-25".parse().unwrap()).to_string(), "2026-11-25");
}

/// Where a look is wanted any shade may be found, so the reading of each shade's longest time is told; a lightener nobody takes has none.
#[test]
fn the_longest_time_of_every_shade_that_may_be_found_is_told() {
    let told = |wanted: bool| {
        let plan = changed(fine(), |file| {
            file.root_shadow = None;
            shop(file).shade[1].longest_counts_from = None;
            let spare = foilwork::shop::shape::LightenerEntry {
                name: "spare".to_owned(),
                longest_counts_from: None,
                ..shop(file).lightener[0].clone()
            };
            shop(file).lightener.push(spare);
            if wanted {
                file.toner[0].mix.clear();
                file.toner[0].target = serde_json::from_str(r#"{ "level": 9, "tones": [] }"#).unwrap();
            }
        });
        let fields = plan.defaults.iter().map(|one| one.field.to_string());
        fields.filter(|field| field.contains("longest_counts_from")).collect::<Vec<_>>()
    };
    assert_eq!(told(true), ["shop.shade[2].longest_counts_from"]);
    assert_eq!(told(false), [""; 0]);
}
