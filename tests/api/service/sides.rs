//! Both sides of what decides between two sentences or two sections, and what is added up where one thing is named twice.

use super::{
    base::{changed, fine, only_colour, only_lightener, shop, texts, verdicts},
    consult::{consulted, staged, with},
};
use foilwork::{
    finding::Verdict::{Note, Stop, Warning},
    head::ExtraStep,
    history::keep,
    record::replay,
    service::{
        AlternativeKind, Plan, ServiceFile,
        shape::{HistoryFlag, MixPart, ToneTarget},
    },
    sheet::guest_page,
    shop::{ShadeClass, shape::ShadeEntry},
};
use rstest::rstest;
use serde_json::json;

/// Common practice: one session of lightener reaches about 3 levels with a developer weaker than 4.5 %, 5 from there, 6 from 7.5 % and
/// 7 from 10.5 %.
#[rstest]
#[case("4.49 % w/w", 4.0, 7.0, 7.1)]
#[case("4.5 % w/w", 4.0, 9.0, 9.1)]
#[case("7.49 % w/w", 4.0, 9.0, 9.1)]
#[case("7.5 % w/w", 3.0, 9.0, 9.1)]
#[case("10.49 % w/w", 3.0, 9.0, 9.1)]
#[case("10.5 % w/w", 2.0, 9.0, 9.1)]
fn lightener_has_a_most(#[case] strength: &str, #[case] natural: f64, #[case] within: f64, #[case] beyond: f64) {
    lifted(only_lightener(), strength, natural, within, beyond);
}

/// Common practice: permanent colour lifts nothing with a developer weaker than 4.5 %, 2 levels from there, 3 from 7.5 % and 4 from
/// 10.5 %.
#[rstest]
#[case("4.49 % w/w", 6.0, 6.0, 6.1)]
#[case("4.5 % w/w", 6.0, 8.0, 8.1)]
#[case("7.49 % w/w", 6.0, 8.0, 8.1)]
#[case("7.5 % w/w", 5.0, 8.0, 8.1)]
#[case("10.49 % w/w", 5.0, 8.0, 8.1)]
#[case("10.5 % w/w", 5.0, 9.0, 9.1)]
fn colour_has_a_most(#[case] strength: &str, #[case] natural: f64, #[case] within: f64, #[case] beyond: f64) {
    lifted(only_colour(), strength, natural, within, beyond);
}

#[track_caller]
fn lifted(file: ServiceFile, strength: &str, natural: f64, within: f64, beyond: f64) {
    for (target, want) in [(within, &[][..]), (beyond, &[Warning])] {
        let plan = changed(file.clone(), |file| {
            shop(file).developer[0].strength = strength.to_owned();
            (file.analysis.natural_level, file.section[0].target_level) = (natural, target);
        });
        assert_eq!(verdicts(&plan, "lift"), want, "{target}: {}", texts(&plan, "lift"));
    }
}

/// A shade that is named twice goes into the bowl twice, and is told once with its sum. By hand: 60 g at 1:2 hold 20 g of shades; 240 g
/// are 80 g, in bowls of 120 g at most.
#[rstest]
#[case::once(&["J9"], 60.0, 20.0)]
#[case::twice(&["J9", "J9"], 60.0, 20.0)]
#[case::two_bowls(&["J9", "J9"], 240.0, 80.0)]
#[case::one_in_two_bowls(&["J9"], 240.0, 80.0)]
fn what_is_named_twice_is_added_up(#[case] mix: &[&str], #[case] mix_g: f64, #[case] want: f64) {
    let plan = changed(fine(), |file| {
        let part = |shade: &&str| MixPart { shade: (*shade).to_owned(), parts: 1.0 };
        (file.toner[0].mix, file.toner[0].mix_g) = (mix.iter().map(part).collect(), mix_g);
    });
    let record = keep(&plan, &replay(&[]));
    let veil = record.section.iter().find(|one| one.name == "veil").unwrap();
    let shades: Vec<f64> = veil.part.iter().filter(|one| one.product == "J9").map(|one| one.mass_g).collect();
    assert!(shades.len() == 1 && (shades[0] - want).abs() < 0.11, "{shades:?} for {want}");
    let all: f64 = veil.part.iter().map(|one| one.mass_g).sum();
    assert!((all - mix_g).abs() < 0.21, "{all}");
}

/// A shadow lies on the lightest of the light strands, whichever the file names first: the shade found for it is that which would be
/// found on these alone.
#[test]
fn a_shadow_is_found_for_the_lightest_strands() {
    let found = |targets: &[f64]| {
        let plan = changed(fine(), |file| {
            file.toner.clear();
            let shade = |code: &str, level: f64, tones: &[&str]| ShadeEntry {
                code: code.to_owned(),
                level,
                tones: tones.iter().map(|tone| (*tone).to_owned()).collect(),
                class: ShadeClass::Demi,
                ratio: Some("1:1".to_owned()),
                ..ShadeEntry::default()
            };
            let more = [shade("J6-d", 6.0, &[]), shade("J7-d", 7.0, &[]), shade("J7-ash", 7.0, &["blue"])];
            shop(file).shade.extend(more);
            let shadow = file.root_shadow.as_mut().unwrap();
            shadow.mix.clear();
            shadow.target = Some(ToneTarget { level: 7.0, tones: Vec::new() });
            let first = file.section.remove(0);
            for (place, target) in targets.iter().enumerate() {
                let mut one = first.clone();
                (one.name, one.target_level) = (format!("part {place}"), *target);
                file.section.push(one);
            }
        });
        (texts(&plan, "toner found"), shades(&plan))
    };
    let (light, dark) = (found(&[9.0]), found(&[7.5]));
    assert_ne!(light, dark);
    for targets in [&[9.0, 7.5][..], &[7.5, 9.0], &[7.5, 9.0, 8.0]] {
        assert_eq!(found(targets), light, "{targets:?}");
    }
}

fn shades(plan: &Plan) -> Vec<String> {
    let shadow = plan.mixes.iter().find(|mix| mix.name.starts_with("root shadow")).unwrap();
    shadow.products().map(|part| format!("{} {}", part.weigh, part.product)).collect()
}

/// An hour of lightener, no more: the minutes of a toner or of colour are no lightener.
#[test]
fn only_lightener_is_counted_for_the_pace() {
    let paced = |file, minutes| {
        let plan = changed(file, |file: &mut ServiceFile| {
            (file.section[0].apply_min, file.section[0].foils) = (Some(minutes), None);
        });
        texts(&plan, "pace").contains("of applying lightener")
    };
    assert_eq!([paced(fine(), 58.0), paced(only_colour(), 90.0), paced(only_lightener(), 61.0)], [false, false, true]);
}

/// In one foil a shade as deep as the one before it is in order.
#[test]
fn two_alike_in_one_foil_have_no_order() {
    let plan = changed(only_lightener(), |file| {
        let mut other = file.section[0].clone();
        other.name = "nape".to_owned();
        file.section.push(other);
        file.section[0].same_foil_as = vec!["nape".to_owned()];
    });
    assert_eq!(verdicts(&plan, "sequence"), [], "{}", texts(&plan, "sequence"));
}

/// Peroxide and metal salts react: a step that brings it is stopped where the history has them, and only there. What puts warmth back
/// without a developer brings none.
#[rstest]
#[case::salts(ExtraStep::PreLighten, &[HistoryFlag::MetallicSalts], true)]
#[case::none(ExtraStep::PreLighten, &[], false)]
#[case::henna(ExtraStep::PreLighten, &[HistoryFlag::Henna], false)]
#[case::warmth(ExtraStep::PrePigment, &[HistoryFlag::MetallicSalts], false)]
fn a_step_that_brings_peroxide_to_salts_is_stopped(
    #[case] step: ExtraStep,
    #[case] history: &[HistoryFlag],
    #[case] stopped: bool,
) {
    let plan = changed(only_colour(), |file| {
        file.section[0].first = vec![step];
        file.analysis.history = Some(history.to_vec());
        shop(file).shade[0].class = ShadeClass::Semi;
        (shop(file).shade[0].ratio, shop(file).shade[0].level) = (None, 6.0);
        shop(file).shade[0].tones = vec!["orange".to_owned()];
        shop(file).shade[0].strongest_developer_ww_percent = Some(0.0);
    });
    let said = texts(&plan, "step before");
    assert_eq!(said.contains("brings peroxide to metallic salts"), stopped, "{said}");
    assert_eq!(verdicts(&plan, "step before").contains(&Stop), stopped);
    // Hair of level 6 that is to be level 6 asks for neither.
    let asked = plan.first_steps.iter().any(|step| step.asked_for);
    assert_eq!(verdicts(&plan, "step before").contains(&Note) || said.contains("is planned, and"), !asked, "{said}");
}

/// One visit should do where every section reaches its target in 80 of 100 cases by the low end of the forecast, and else it may.
#[rstest]
fn one_visit_should_do_or_may(#[values(6.5, 7.0, 7.5, 8.0, 9.0)] target: f64) {
    let mut file = fine();
    file.section[0].target_level = target;
    let found = consulted(&file);
    let plan = changed(file, |_| ());
    let sure = plan.lift.iter().all(|lift| lift.chance.low().percent() >= 80.0);
    let said = &found.agreement.visits;
    match found.visits.len() {
        0 => assert!(said.is_empty()),
        1 => {
            let want = if sure {
                "One visit should do, if your hair goes along."
            } else {
                "One visit may do; that is not sure."
            };
            assert_eq!(said, &[want]);
        }
        _ => assert!(!sure && said.len() == found.visits.len()),
    }
    let perhaps = found.agreement.not_promised.iter().any(|text| text == "perhaps not in one visit: top");
    assert_eq!(perhaps, !sure && !plan.lift.is_empty());
}

/// A series says how many visits, that they may not be enough where not every section arrives, and when the next is due.
#[test]
fn a_series_says_when_and_how_often() {
    let found = consulted(&staged());
    let (said, visits) = (&found.agreement.visits, &found.visits);
    assert!(visits.len() > 1 && said.len() == visits.len(), "{said:?}");
    let last = visits.last().unwrap();
    let begins = if last.reached == last.sections { "It takes about " } else { "Even " };
    assert!(said[0].starts_with(&format!("{begins}{} visits", visits.len())), "{said:?}");
    for (visit, line) in visits.iter().zip(said).skip(1) {
        let want = format!("Visit {}: not before {}, usually about {}.", visit.number, visit.earliest, visit.usual);
        assert_eq!(line, &want);
    }
}

/// What keeps both pages from being signed, each from its own fact and no other.
#[rstest]
#[case::nothing(|_: &mut ServiceFile| (), &[])]
#[case::history(|file: &mut ServiceFile| file.analysis.history = None, &["Tell us all that was done"])]
#[case::no_test(|file: &mut ServiceFile| file.analysis.skin_test = None, &["A skin test is made"])]
#[case::asthma(|file: &mut ServiceFile| file.analysis.history = Some(vec![HistoryFlag::Asthma]), &["The doctor has to agree (asthma)."])]
#[case::tattoo(|file: &mut ServiceFile| file.analysis.history = Some(vec![HistoryFlag::BlackHennaTattoo]), &[])]
#[case::young(
    |file: &mut ServiceFile| file.analysis.history = Some(vec![HistoryFlag::UnderSixteen]),
    &["We cannot begin yet.", "The guardian has to agree (your age).", "For anyone under sixteen"]
)]
fn before_anybody_signs(#[case] change: fn(&mut ServiceFile), #[case] want: &[&str]) {
    let mut file = with(|_| ());
    (file.toner, file.root_shadow) = (Vec::new(), None);
    change(&mut file);
    let found = consulted(&file);
    let before = &found.agreement.before;
    assert_eq!(before.len(), want.len(), "{before:?}");
    assert!(before.iter().zip(want).all(|(said, want)| said.starts_with(want)), "{before:?}");
    assert_eq!(found.agreement.may_be_signed, want.is_empty());
}

/// What the bowl holds is taken and nothing else is; of what is not the gentlest it is said so. Five levels are for lightener alone;
/// from 6 to 7 colour does it (bounds of the trade).
#[rstest]
#[case(4.0, 9.0, "it ")]
#[case(6.0, 7.0, "the bowl holds it, though: ")]
fn of_the_class_that_is_taken(#[case] natural: f64, #[case] target: f64, #[case] begins: &str) {
    let mut file = only_lightener();
    (file.analysis.natural_level, file.section[0].target_level) = (natural, target);
    let found = consulted(&file);
    let classes = || found.alternatives.iter().filter(|one| one.about == AlternativeKind::ProductClass);
    assert!(classes().count() > 2);
    for one in classes() {
        let lightener = one.option == "lightener";
        assert_eq!(one.taken, lightener, "{}", one.option);
        let said = [
            one.why.starts_with("it "),
            one.why.contains("the gentlest"),
            one.why.contains("the bowl holds it, though"),
        ];
        let gentlest = one.why.contains("the gentlest that does it; the bowl holds lightener");
        if lightener {
            assert!(one.why.starts_with(begins) && !said[1], "{}", one.why);
        } else {
            assert!(said[0] == gentlest && !said[2], "{}: {}", one.option, one.why);
        }
    }
    let gentler = classes().filter(|one| one.why.contains("the gentlest")).count();
    assert_eq!(gentler, usize::from(target < 9.0));
}

/// A remover that holds persulfate or peroxide, either of them, may lighten, and the guest is told what lightening does; one that
/// holds neither does not.
#[rstest]
#[case(true, true, true)]
#[case(true, false, true)]
#[case(false, true, true)]
#[case(false, false, false)]
fn a_remover_that_may_lighten_is_told_of(#[case] persulfate: bool, #[case] peroxide: bool, #[case] told: bool) {
    let plan = changed(only_colour(), |file| {
        let remover = json!({ "name": "remover", "persulfate": persulfate, "peroxide": peroxide });
        shop(file).remover = vec![serde_json::from_value(remover).unwrap()];
        file.section[0].first = vec![ExtraStep::CleanFirst];
        file.section[0].clean_with = Some("remover".to_owned());
    });
    assert_eq!(guest_page(&plan).contains("Lightening weakens hair"), told);
}
