//! A step that is planned before the colour goes on the same guest: what would stop its lightener, its peroxide or its dye in a
//! section stops it in a step. What each flag asks for is that of sections (`consultation.rs`, with its sources).

use super::base::{changed, only_colour, only_lightener, texts, verdicts};
use foilwork::{
    finding::{
        Rule,
        Verdict::{self, NotJudged, Note, Stop, Warning},
    },
    head::ExtraStep::{self, CleanFirst, PrePigment, PreSoften},
    reader::Format,
    service::{
        Evidence, Plan, ServiceFile, consult, mixing_cards, parse, plan,
        shape::{Elasticity, HistoryFlag, PastEntry, PastWork, Test, TestResult},
    },
    sheet::{agreement_page, guest_page},
};
use rstest::rstest;
use serde_json::json;

type Change = fn(&mut ServiceFile);

/// Colour without peroxide or oxidative dye.
fn only_semi() -> ServiceFile {
    let mut file = only_colour();
    (file.section[0].product, file.section[0].developer) = (Some("J8-veil".to_owned()), None);
    file
}

fn with(file: ServiceFile, step: Option<ExtraStep>, change: impl FnOnce(&mut ServiceFile)) -> Plan {
    changed(file, |file| {
        file.section[0].first = step.into_iter().collect();
        change(file);
    })
}

fn flag(file: &mut ServiceFile, flag: HistoryFlag) {
    file.analysis.history = Some(vec![flag]);
}

/// Lightener before colour, which alone asks for less.
#[rstest]
#[case::reaction("earlier reaction", |file: &mut ServiceFile| flag(file, HistoryFlag::ReactionToLightener), &[Warning], &[Stop])]
#[case::asthma("airways", |file: &mut ServiceFile| flag(file, HistoryFlag::Asthma), &[], &[Warning])]
#[case::poor("elasticity", |file: &mut ServiceFile| file.analysis.elasticity = Some(Elasticity::Poor), &[Warning], &[Stop])]
#[case::reduced("elasticity", |file: &mut ServiceFile| file.analysis.elasticity = Some(Elasticity::Reduced), &[], &[Warning])]
#[case::not_stretched("elasticity", |file: &mut ServiceFile| file.analysis.elasticity = None, &[], &[NotJudged])]
#[case::lightened("overlap", |file: &mut ServiceFile| flag(file, HistoryFlag::Lightened), &[], &[Warning])]
#[case::coloured("earlier service", |file: &mut ServiceFile| flag(file, HistoryFlag::PermanentColour), &[], &[Warning])]
fn cleaning_asks_what_lightener_asks(
    #[case] rule: &str,
    #[case] change: Change,
    #[case] colour: &[Verdict],
    #[case] cleaned: &[Verdict],
) {
    assert_eq!(verdicts(&with(only_colour(), None, change), rule), colour);
    let plan = with(only_colour(), Some(CleanFirst), change);
    assert_eq!(verdicts(&plan, rule), cleaned, "{}", texts(&plan, rule));
    // What the section's own lightener asks for is not said twice.
    assert_eq!(verdicts(&with(only_lightener(), Some(CleanFirst), change), rule), cleaned);
}

/// Peroxide or dye before colour that has neither.
#[rstest]
#[case::young(CleanFirst, "age", |file: &mut ServiceFile| flag(file, HistoryFlag::UnderSixteen), &[Stop])]
#[case::young_softened(PreSoften, "age", |file: &mut ServiceFile| flag(file, HistoryFlag::UnderSixteen), &[Stop])]
#[case::young_dyed(PrePigment, "age", |file: &mut ServiceFile| flag(file, HistoryFlag::UnderSixteen), &[Stop])]
#[case::permed(PreSoften, "earlier service", |file: &mut ServiceFile| flag(file, HistoryFlag::StraightenedOrPermed), &[Warning])]
#[case::tattoo(PrePigment, "black henna", |file: &mut ServiceFile| flag(file, HistoryFlag::BlackHennaTattoo), &[Warning])]
#[case::poor(PreSoften, "elasticity", |file: &mut ServiceFile| file.analysis.elasticity = Some(Elasticity::Poor), &[Warning])]
#[case::salts_unread(PreSoften, "metal salts", |file: &mut ServiceFile| {
    file.analysis.incompatibility_test = Some(Test { applied: "2026-11-23T10:00".to_owned(), result: TestResult::Pending });
}, &[Stop])]
#[case::lately(CleanFirst, "earlier service", |file: &mut ServiceFile| {
    let (on, what) = (Some("2026-11-18".to_owned()), PastWork::Lightener);
    let past = vec![PastEntry { on, what, formula: Some("powder".to_owned()), zone: None, place: None }];
    file.consultation = Some(foilwork::service::shape::ConsultationEntry { past, ..Default::default() });
}, &[Warning])]
fn a_step_brings_peroxide_and_dye(
    #[case] step: ExtraStep,
    #[case] rule: &str,
    #[case] change: Change,
    #[case] want: &[Verdict],
) {
    let open = |plan: &Plan| {
        let mut found = verdicts(plan, rule);
        found.retain(|verdict| matches!(verdict, Stop | Warning));
        found
    };
    assert_eq!(open(&with(only_semi(), None, change)), []);
    let plan = with(only_semi(), Some(step), change);
    assert_eq!(open(&plan), want, "{}", texts(&plan, rule));
}

/// The label of hair colour asks for the skin test, and what is put back before is hair colour; a semi-permanent shade is none.
#[test]
fn pre_pigment_asks_for_the_skin_test() {
    let untested = |file: &mut ServiceFile| file.analysis.skin_test = None;
    assert_eq!(verdicts(&with(only_lightener(), None, untested), "skin test"), [Warning]);
    assert_eq!(verdicts(&with(only_lightener(), Some(PrePigment), untested), "skin test"), [Stop]);
}

/// Level 9 under colour, natural 6: the powder that cleans it meets hair that is lighter already.
#[test]
fn cleaning_lightened_hair_is_on_its_card() {
    let plan = with(only_colour(), Some(CleanFirst), |file| {
        file.analysis.existing =
            serde_json::from_value(json!([{ "zone": "whole", "level": 9, "artificial": true }])).unwrap();
    });
    let said = texts(&plan, "overlap");
    assert!(said.starts_with("top, clean out the artificial pigment first: fresh mix on hair"), "{said}");
    // What is said of the step itself is on its card too.
    let card = &mixing_cards(&plan)[0];
    for (rule, verdict) in [(Rule::Overlap, Warning), (Rule::EarlierService, Warning), (Rule::FirstStep, Note)] {
        assert!(card.findings.iter().any(|one| one.rule == rule && one.verdict == verdict), "{rule}: {card:#?}");
    }
}

/// Who signs reads of the lightener that comes first, and that lightener weakens hair.
#[test]
fn both_pages_to_sign_name_the_step() {
    let shown = |step: Option<ExtraStep>| {
        let mut file = only_colour();
        file.section[0].first = step.into_iter().collect();
        let consultation = consult(&file, &Evidence::default()).unwrap();
        [guest_page(&plan(&file).unwrap()), agreement_page(&consultation)]
    };
    for page in shown(Some(CleanFirst)) {
        assert!(page.contains("Lightening weakens hair"), "{page}");
        let (_, planned) = page.split_once("What we plan").unwrap();
        assert!(
            planned
                .contains("top: before the colour, colour that is in the hair is taken out, with lightener (powder)")
        );
    }
    for page in shown(Some(PreSoften)).into_iter().chain(shown(None)) {
        assert!(!page.contains("Lightening weakens hair"));
    }
    assert!(
        shown(Some(PreSoften))
            .iter()
            .all(|page| page.contains("top: before the colour, white hair is opened with developer"))
    );
}

/// A flag stops the page, whichever page it is.
#[test]
fn a_reaction_to_lightener_leaves_nothing_to_sign() {
    let mut file = parse(&super::base::example("grey-blend.toml"), Format::Toml).unwrap();
    file.section[0].first = vec![CleanFirst];
    file.analysis.history = Some(vec![HistoryFlag::ReactionToLightener]);
    assert!(plan(&file).unwrap().blocked);
    assert!(!guest_page(&plan(&file).unwrap()).contains("class=\"sign\""));
}
