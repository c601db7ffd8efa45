//! Whole sentences with easy numbers, and files that are refused, on both sides of what decides between them.

use super::base::{changed, fine, only_colour, only_lightener, shop, texts, verdicts};
use foilwork::{
    finding::Verdict::{self, NotJudged, Note, Passed, Stop, Warning},
    head::{ExtraStep, Technique},
    reader::Format,
    service::{
        Plan, ServiceFile, parse, plan,
        shape::{HistoryFlag, Test, TestResult, Zone},
    },
    shop::{StrengthBasis, shape::ShadeEntry},
};
use rstest::rstest;
use serde_json::json;

/// The service starts at ten on 25 November; minutes are cut off. A bare day may have been as late as its last second, and as old as
/// its first.
#[rstest]
#[case("2026-11-23T10:00", Passed, "clear, applied 48 h before (rule 48 h)")]
#[case("2026-11-23T09:30", Passed, "clear, applied 48 h 30 min before (rule 48 h)")]
#[case("2026-11-23T10:00:01", Stop, "applied 47 h 59 min before the start, your rule asks for 48 h: move the start")]
#[case("2026-11-24T22:00", Stop, "applied 12 h before the start, your rule asks for 48 h: move the start")]
#[case("2026-11-23", Stop, "applied 34 h before the start, your rule asks for 48 h: move the start")]
#[case("2026-11-22", Passed, "clear, applied 58 h before (rule 48 h)")]
#[case("2026-11-25T10:00", Stop, "applied 0 h before the start, your rule asks for 48 h: move the start")]
#[case("2026-11-25T10:01", Stop, "applied 2026-11-25 10:01 is not before the start 2026-11-25 10:00")]
fn a_skin_test_is_told_with_its_hours(#[case] applied: &str, #[case] verdict: Verdict, #[case] want: &str) {
    let with = |wait: Option<f64>| {
        changed(fine(), |file| {
            file.analysis.skin_test = Some(Test { applied: applied.to_owned(), result: TestResult::Clear });
            file.salon.skin_test_wait_h = wait;
        })
    };
    let plan = with(Some(48.0));
    assert_eq!((texts(&plan, "skin-test"), verdicts(&plan, "skin-test")), (format!("{want}\n"), vec![verdict]));
    // Without a rule the waiting is not judged.
    let open = with(None);
    if want.contains("applied 48 h 30 min") {
        let want = "clear, applied 48 h 30 min before; the waiting time is not judged: enter `salon.skin_test_wait_h` by the rule \
                    that binds you\n";
        assert_eq!((texts(&open, "skin-test").as_str(), verdicts(&open, "skin-test")), (want, vec![NotJudged]));
    }
}

/// Seven days, counted from the earliest to the latest that both can be.
#[rstest]
#[case("2026-11-18T10:00", "2026-11-25T10:00", None)]
#[case("2026-11-18T09:59", "2026-11-25T10:00", Some("7 days old, your rule allows 7: test again\n"))]
#[case("2026-11-15T10:00", "2026-11-25T10:00", Some("10 days old, your rule allows 7: test again\n"))]
#[case("2026-11-18T10:00", "2026-11-25", Some("8 days old, your rule allows 7: test again\n"))]
fn a_skin_test_grows_old(#[case] applied: &str, #[case] start: &str, #[case] want: Option<&str>) {
    for (file, verdict) in [(fine(), Stop), (only_lightener(), Warning)] {
        let plan = changed(file, |file| {
            file.service.start = start.to_owned();
            file.analysis.skin_test = Some(Test { applied: applied.to_owned(), result: TestResult::Clear });
        });
        assert_eq!(texts(&plan, "skin-test-age"), want.unwrap_or_default());
        assert_eq!(verdicts(&plan, "skin-test-age"), Vec::from_iter(want.map(|_| verdict)));
    }
    let reacted = changed(fine(), |file| {
        file.analysis.skin_test = Some(Test { applied: applied.to_owned(), result: TestResult::Reaction });
    });
    assert_eq!(texts(&reacted, "skin-test"), "reacted: do not go on; refer to a doctor\n");
}

/// A strand that was tested by the start counts; on hair that is stated poor it is made again.
#[rstest]
#[case("2026-11-25T10:00", "clear", "good", Passed, "done, hair sound")]
#[case(
    "2026-11-25T10:01",
    "clear",
    "good",
    Warning,
    "its date is after the start: correct `analysis.strand_test.applied`"
)]
#[case("2026-11-25T10:01", "reaction", "good", Stop, "the strand did not stand it: do not go on")]
#[case(
    "2026-11-23T10:00",
    "clear",
    "poor",
    NotJudged,
    "clear, but the elasticity is stated poor: test again before relying on it"
)]
#[case("2026-11-23T10:00", "reaction", "poor", Stop, "the strand did not stand it: do not go on")]
#[case(
    "2026-11-23T10:00",
    "pending",
    "good",
    Warning,
    "none: neither time nor level is known before one; without it a lift forecast spans two levels either way"
)]
fn a_strand_test_is_told(
    #[case] applied: &str,
    #[case] result: &str,
    #[case] elasticity: &str,
    #[case] verdict: Verdict,
    #[case] want: &str,
) {
    let plan = changed(fine(), |file| {
        file.analysis.strand_test = serde_json::from_value(json!({ "applied": applied, "result": result })).ok();
        file.analysis.elasticity = serde_json::from_value(json!(elasticity)).ok();
    });
    assert_eq!((texts(&plan, "strand-test"), verdicts(&plan, "strand-test")), (format!("{want}\n"), vec![verdict]));
}

/// Ten foils of 2 min by the salon are 20 min; half a minute either way is no other time. What is assumed contradicts nobody.
#[rstest]
#[case(19.49, Some(2.0), true)]
#[case(19.5, Some(2.0), false)]
#[case(20.5, Some(2.0), false)]
#[case(20.51, Some(2.0), true)]
#[case(45.0, None, false)]
fn minutes_that_say_two_things_are_told(#[case] apply: f64, #[case] foil: Option<f64>, #[case] told: bool) {
    let plan = changed(only_lightener(), |file| {
        (file.section[0].apply_min, file.salon.foil_min) = (Some(apply), foil);
    });
    let text = format!(
        "top: by `section[1].apply_min` it takes {apply} min, by `salon.foil_min` (2 min a foil) 20 min: the first is planned; \
         leave it out, or correct the other\n"
    );
    assert_eq!(texts(&plan, "pace"), if told { text } else { String::new() });
    assert_eq!(verdicts(&plan, "pace"), if told { vec![Note] } else { Vec::new() });
}

/// Lowlights that are as dark as what is wanted are all of its hair; darker ones would do, but not darker than what grows in.
#[rstest]
#[case(6.5, "(give a lighter `reads_as_level` or darker lowlights)")]
#[case(6.0, "(give a lighter `reads_as_level`)")]
fn lowlights_over_all_of_the_hair_are_told(#[case] level: f64, #[case] way_out: &str) {
    let plan = changed(only_lightener(), |file| {
        file.section[0].taken_percent = Some(100.0);
        file.section[0].lowlights = serde_json::from_value(json!({ "level": level, "reads_as_level": level })).unwrap();
    });
    let want = format!("top: lowlights of level {level} over all of its hair: no light hair remains {way_out}\n");
    assert_eq!(texts(&plan, "head-reads"), want);
    assert_eq!(verdicts(&plan, "head-reads"), [Warning]);
    assert!(plan.head.sections[0].lowlight_places.is_empty());
}

/// A measured strength is known to a hundredth, one by the label to a tenth; the law counts a label a sixth higher.
#[rstest]
#[case(StrengthBasis::Measured, "top, pre-soften 5.55 % w/w of 12 %")]
#[case(StrengthBasis::Label, "top, pre-soften 6.5 % w/w of 12 %")]
fn the_law_tells_a_step_as_well_as_it_is_known(#[case] basis: StrengthBasis, #[case] want: &str) {
    let plan = changed(only_colour(), |file| {
        (shop(file).developer[0].strength, shop(file).developer[0].strength_basis) = ("5.55 % w/w".to_owned(), basis);
        file.section[0].first = vec![ExtraStep::PreSoften];
    });
    let law = texts(&plan, "law");
    assert!(law.lines().any(|line| line == want), "{law}");
}

/// A light deposit does not show on darker hair; from 30 % white on it shows on that (common practice).
#[rstest]
#[case(0.0, true)]
#[case(29.9, true)]
#[case(30.0, false)]
#[case(100.0, false)]
fn a_light_gloss_shows_on_white_hair(#[case] white: f64, #[case] told: bool) {
    let plan = changed(only_colour(), |file| {
        file.analysis.white_percent = Some(white);
        let top = &mut file.section[0];
        (top.product, top.developer) = (Some("J8-veil".to_owned()), None);
    });
    assert_eq!(verdicts(&plan, "toner-level").contains(&Warning), told, "{}", texts(&plan, "toner-level"));
}

/// Hair that was coloured or lightened before, where nobody says which: asked for only where its place is not stated.
#[rstest]
#[case(&[HistoryFlag::Lightened], None, [false, true])]
#[case(&[HistoryFlag::Lightened], Some((8.0, false)), [false, false])]
#[case(&[HistoryFlag::Lightened], Some((6.0, true)), [false, true])]
#[case(&[HistoryFlag::PermanentColour], None, [true, false])]
#[case(&[HistoryFlag::PermanentColour], Some((8.0, false)), [true, false])]
#[case(&[HistoryFlag::PermanentColour], Some((6.0, true)), [false, false])]
#[case(&[], None, [false, false])]
fn what_was_done_before_is_asked_for_where_it_lies(
    #[case] history: &[HistoryFlag],
    #[case] there: Option<(f64, bool)>,
    #[case] want: [bool; 2],
) {
    let plan = changed(only_lightener(), |file| {
        file.analysis.history = Some(history.to_vec());
        (file.section[0].zone, file.section[0].on_scalp) = (Zone::Ends, Some(false));
        if let Some((level, artificial)) = there {
            let roots = json!([{ "zone": "roots", "level": level, "artificial": artificial }]);
            file.analysis.existing = serde_json::from_value(roots).unwrap();
        }
    });
    let colour = "lightener over permanent colour: it lifts unevenly and may stop at an orange; test a strand, or clean the colour \
                  first; say in `analysis.existing` where it is\n";
    let light = "lightened before: keep fresh mix off the lightened lengths and test their elasticity; say in `analysis.existing` \
                 where they are\n";
    assert_eq!(texts(&plan, "earlier-service"), if want[0] { colour } else { "" });
    assert_eq!(texts(&plan, "overlap"), if want[1] { light } else { "" });
}

fn refused(file: &ServiceFile) -> String {
    parse(&serde_json::to_string(file).unwrap(), Format::Json).map_or_else(|told| told.to_string(), |_| String::new())
}

/// A section that names itself, in any of its lists, and one that is there.
#[rstest]
#[case("after", json!([{ "section": "top" }]), "section[1].after[1].section: a section cannot come after itself: remove it")]
#[case("beside", json!(["nape", "top"]), "section[1].beside[2]: a section cannot lie beside itself: remove it")]
#[case("same_foil_as", json!(["top"]), "section[1].same_foil_as[1]: a section shares its own foils anyway: remove it")]
#[case("after", json!([{ "section": "nape" }]), "")]
#[case("beside", json!(["nape"]), "")]
#[case("same_foil_as", json!(["nape"]), "")]
#[case("beside", json!(["rim"]), "section[1].beside[1]: no section is called \"rim\": the file has top, nape")]
fn a_section_names_others(#[case] field: &str, #[case] names: serde_json::Value, #[case] want: &str) {
    let mut file = serde_json::to_value(only_lightener()).unwrap();
    let mut nape = file["section"][0].clone();
    nape["name"] = json!("nape");
    file["section"].as_array_mut().unwrap().push(nape);
    file["section"][0][field] = names;
    let file: ServiceFile = serde_json::from_value(file).unwrap();
    let told = refused(&file);
    assert_eq!(
        told.split_once(want).map(|(_, rest)| rest),
        Some(if want.is_empty() { told.as_str() } else { "" }),
        "{told}"
    );
    assert_eq!(told.is_empty(), want.is_empty(), "{told}");
}

/// Shares of one zone are no more than all of it; those of another are apart.
#[rstest]
#[case([60.0, 40.0], Zone::Lengths, "")]
#[case([60.0, 40.1], Zone::Lengths, "section: the shares of zone \"lengths\" add up to 100.1 %: lower them to 100 % or less")]
#[case([60.0, 60.0], Zone::Roots, "")]
fn a_zone_is_shared_out_once(#[case] shares: [f64; 2], #[case] second: Zone, #[case] want: &str) {
    let mut file = only_lightener();
    let mut other = file.section[0].clone();
    (other.name, other.zone, other.share_percent) = ("other".to_owned(), second, Some(shares[1]));
    file.section[0].share_percent = Some(shares[0]);
    file.section.push(other);
    let told = refused(&file);
    assert!(told.ends_with(want) && told.is_empty() == want.is_empty(), "{told}");
}

/// A dozen names are told, of more the one that is alike.
#[rstest]
#[case(
    10,
    "no lightener or shade is called \"J6-4x\": the file has powder, J6-1, J6-2, J6-3, J6-4, J6-5, J6-6, J6-7, J6-8, J6-9, J6-10, J9"
)]
#[case(11, "no lightener or shade is called \"J6-4x\": did you mean \"J6-4\"? the file has 13 of them")]
fn a_name_that_is_not_there_is_told_with_what_is(#[case] shades: usize, #[case] want: &str) {
    let mut file = only_colour();
    let shelf = shop(&mut file);
    let six = shelf.shade[1].clone();
    let nine = shelf.shade[0].clone();
    shelf.shade = (1..=shades).map(|i| ShadeEntry { code: format!("J6-{i}"), ..six.clone() }).chain([nine]).collect();
    file.section[0].product = Some("J6-4x".to_owned());
    let told = refused(&file);
    assert!(told.ends_with(want), "{told}");
}

/// Shades of two ratios need one that is stated, wherever they are mixed; those of one ratio, or of none, do not.
#[rstest]
#[case(&["1:2", "1:2"], None, true)]
#[case(&["1:2", "1:1"], None, false)]
#[case(&["1:2", "1:1"], Some("1:1.5"), true)]
fn shades_of_two_ratios_need_a_word(#[case] ratios: &[&str], #[case] stated: Option<&str>, #[case] fits: bool) {
    let told = |change: &dyn Fn(&mut ServiceFile, serde_json::Value)| {
        let mut file = fine();
        let nine = shop(&mut file).shade[0].clone();
        for (place, ratio) in ratios.iter().enumerate() {
            let (code, ratio) = (format!("mist {place}"), Some((*ratio).to_owned()));
            shop(&mut file).shade.push(ShadeEntry { code, ratio, ..nine.clone() });
        }
        change(&mut file, json!([{ "shade": "mist 0", "parts": 1 }, { "shade": "mist 1", "parts": 1 }]));
        // By the reader, and by who makes a plan of what was made in code.
        assert_eq!(plan(&file).is_ok(), fits);
        refused(&file)
    };
    let mixed = [
        told(&|file, mix| {
            file.toner[0].mix = serde_json::from_value(mix).unwrap();
            file.toner[0].ratio = stated.map(str::to_owned);
        }),
        told(&|file, mix| {
            let shadow = file.root_shadow.as_mut().unwrap();
            shadow.mix = serde_json::from_value(mix).unwrap();
            shadow.ratio = stated.map(str::to_owned);
        }),
    ];
    for told in mixed {
        assert_eq!(told.is_empty(), fits, "{told}");
        let words = "its shades have different ratios, 1:2 and 1:1: say in `ratio` which one holds";
        assert!(fits || told.replace(" : ", ":").contains(words), "{told}");
    }
}

/// Thirty foils of a gradient go to the foils that nobody counted of hair that is picked or combed in its regions, by its share.
#[test]
fn the_foils_of_a_gradient_go_to_sections_that_count_none() {
    let with = |change: fn(&mut ServiceFile)| -> Vec<Option<u32>> {
        let plan: Plan = changed(only_lightener(), |file| {
            file.analysis.length_cm = Some(30.0);
            file.gradient = serde_json::from_value(json!({
                "start_outline_cm": 1, "start_interior_cm": 5, "share_outline_percent": 70, "share_interior_percent": 20,
                "foils": 30,
            }))
            .ok();
            let first = file.section.remove(0);
            for (name, share) in [("crown", 2.0), ("top", 1.0), ("front", 1.0), ("back", 3.0), ("nape", 1.0)] {
                let mut one = first.clone();
                (one.name, one.share_percent, one.foils) = (name.to_owned(), Some(share), None);
                one.regions = serde_json::from_value(json!([{ "name": name }])).unwrap();
                file.section.push(one);
            }
            change(file);
        });
        plan.head.sections.iter().map(|section| section.foils.map(|foils| foils.best())).collect()
    };
    // Two, one, one, three and one of eight parts: 7.5, 3.75, 3.75, 11.25 and 3.75 (the largest remainders go up).
    assert_eq!(with(|_| ()), [Some(7), Some(4), Some(4), Some(11), Some(4)]);
    let mixed = with(|file| {
        file.section[1].foils = Some(9);
        (file.section[2].technique, file.section[2].apply_min) = (Technique::Freehand, Some(10.0));
        file.section[3].panel = serde_json::from_value(json!({ "width_cm": 8, "height_cm": 6, "count": 2 })).ok();
        file.section[4].regions.clear();
    });
    assert_eq!((mixed[0], mixed[1], mixed[2], mixed[4]), (Some(30), Some(9), None, None));
    assert!(mixed[3].is_some_and(|foils| foils != 30), "{mixed:?}");
    // Two parts and one of three.
    let two = with(|file| file.section.truncate(2));
    assert_eq!(two, [Some(20), Some(10)]);
}
