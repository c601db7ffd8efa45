//! History, scalp, hair and tests: each rule, on both sides of it.

use super::base::{changed, fine, only_colour, only_lightener, texts, verdicts};
use foilwork::{
    finding::Verdict::{self, NotJudged, Passed, Stop, Warning},
    service::{
        ServiceFile,
        shape::{Elasticity, HistoryFlag, Scalp, Test, TestResult},
    },
};
use rstest::rstest;

type Change = fn(&mut ServiceFile);

fn test(applied: &str, result: TestResult) -> Option<Test> {
    Some(Test { applied: applied.to_owned(), result })
}

const BEFORE: &str = "2026-11-23T10:00";

// Source: three training pages on the incompatibility test (heat, bubbles, colour change or breaking mean stop); the
// UK and Australian standards ask for the test when metal salts are suspected.
#[rstest]
#[case::clean(&[], None, Some(Passed))]
#[case::salts_untested(&[HistoryFlag::MetallicSalts], None, Some(Stop))]
#[case::salts_pending(&[HistoryFlag::MetallicSalts], Some(TestResult::Pending), Some(Stop))]
#[case::salts_clear(&[HistoryFlag::MetallicSalts], Some(TestResult::Clear), Some(Warning))]
#[case::salts_reacted(&[HistoryFlag::MetallicSalts], Some(TestResult::Reaction), Some(Stop))]
#[case::clean_but_reacted(&[], Some(TestResult::Reaction), Some(Stop))]
// The UK and Australian standards: the test comes before the service, so a pending one is none.
#[case::clean_but_pending(&[], Some(TestResult::Pending), Some(Stop))]
#[case::henna_untested(&[HistoryFlag::Henna], None, Some(Stop))]
#[case::henna_pending(&[HistoryFlag::Henna], Some(TestResult::Pending), Some(Stop))]
#[case::henna_clear(&[HistoryFlag::Henna], Some(TestResult::Clear), Some(Passed))]
fn metal_salts(
    #[case] history: &[HistoryFlag],
    #[case] incompatibility: Option<TestResult>,
    #[case] want: Option<Verdict>,
) {
    let plan = changed(fine(), |file| {
        file.analysis.history = Some(history.to_vec());
        file.analysis.incompatibility_test = incompatibility.and_then(|result| test(BEFORE, result));
    });
    assert_eq!(verdicts(&plan, "metal salts"), Vec::from_iter(want));
}

/// What nobody asked is unknown, not clean.
#[test]
fn a_history_that_is_not_stated_is_open() {
    let plan = changed(fine(), |file| file.analysis.history = None);
    assert_eq!(verdicts(&plan, "history"), [NotJudged]);
    assert_eq!(verdicts(&plan, "metal salts"), []);
    let plan = changed(fine(), |_| {});
    assert_eq!(verdicts(&plan, "history"), []);
}

// Source: Regulation (EC) No 1223/2009, Annex III, label wording of the oxidative hair dyes: not under sixteen, not
// after an earlier reaction, black-henna tattoos raise the risk of allergy.
#[rstest]
#[case::reaction_with_dye("earlier reaction", HistoryFlag::ReactionToHairColour, only_colour(), Some(Stop))]
#[case::reaction_without_dye("earlier reaction", HistoryFlag::ReactionToHairColour, only_lightener(), Some(Stop))]
#[case::young_with_dye("age", HistoryFlag::UnderSixteen, only_colour(), Some(Stop))]
#[case::young_without_dye("age", HistoryFlag::UnderSixteen, only_lightener(), Some(Stop))]
#[case::black_henna_with_dye("black henna", HistoryFlag::BlackHennaTattoo, only_colour(), Some(Warning))]
#[case::black_henna_without_dye("black henna", HistoryFlag::BlackHennaTattoo, only_lightener(), None)]
#[case::lightened_with_lightener("overlap", HistoryFlag::Lightened, only_lightener(), Some(Warning))]
#[case::lightened_with_dye("overlap", HistoryFlag::Lightened, only_colour(), None)]
fn history_flags(
    #[case] check: &str,
    #[case] flag: HistoryFlag,
    #[case] file: ServiceFile,
    #[case] want: Option<Verdict>,
) {
    assert_eq!(verdicts(&changed(file.clone(), |_| {}), check), [], "without the flag");
    let plan = changed(file, |file| file.analysis.history = Some(vec![flag]));
    assert_eq!(verdicts(&plan, check), Vec::from_iter(want));
}

/// Semi-permanent colour needs no developer and is not the oxidative colour of the law.
#[test]
fn semi_permanent_colour_is_not_oxidative() {
    let plan = changed(only_colour(), |file| {
        let section = &mut file.section[0];
        (section.product, section.developer) = (Some("J8-veil".to_owned()), None);
        file.analysis.history = Some(vec![HistoryFlag::UnderSixteen]);
        file.analysis.skin_test = None;
    });
    assert_eq!(verdicts(&plan, "age"), []);
    assert_eq!(verdicts(&plan, "skin test"), [Warning]);
    assert_eq!(plan.mixes[0].on_hair.high().ww_percent(), 0.0);
    assert_eq!(verdicts(&plan, "law"), []);
}

#[rstest]
#[case::intact(Some(Scalp::Intact), Passed)]
#[case::irritated(Some(Scalp::Irritated), Stop)]
#[case::broken(Some(Scalp::Broken), Stop)]
#[case::not_stated(None, NotJudged)]
fn state_of_the_scalp(#[case] scalp: Option<Scalp>, #[case] want: Verdict) {
    assert_eq!(verdicts(&changed(fine(), |file| file.analysis.scalp = scalp), "scalp"), [want]);
}

#[rstest]
#[case::good(Some(Elasticity::Good), None)]
#[case::reduced(Some(Elasticity::Reduced), Some(Warning))]
#[case::poor(Some(Elasticity::Poor), Some(Stop))]
#[case::not_stated(None, Some(NotJudged))]
fn stretch_and_return(#[case] elasticity: Option<Elasticity>, #[case] want: Option<Verdict>) {
    let plan = changed(fine(), |file| file.analysis.elasticity = elasticity);
    assert_eq!(verdicts(&plan, "elasticity"), Vec::from_iter(want), "lightening");
    let plan = changed(only_colour(), |file| file.analysis.elasticity = elasticity);
    // Colour with peroxide weakens poor hair further: worth a warning, no more.
    let alone = Vec::from_iter(want.filter(|verdict| *verdict == Stop).map(|_| Warning));
    assert_eq!(verdicts(&plan, "elasticity"), alone, "colour alone");
}

#[rstest]
#[case::none(|file: &mut ServiceFile| file.analysis.skin_test = None, Stop, Warning)]
#[case::pending(|file: &mut ServiceFile| file.analysis.skin_test = test(BEFORE, TestResult::Pending), Stop, Warning)]
#[case::reacted(|file: &mut ServiceFile| file.analysis.skin_test = test(BEFORE, TestResult::Reaction), Stop, Stop)]
#[case::clear(|_: &mut ServiceFile| {}, Passed, Passed)]
#[case::no_rule(|file: &mut ServiceFile| file.salon.skin_test_wait_h = None, NotJudged, NotJudged)]
#[case::after_the_start(|file: &mut ServiceFile| file.analysis.skin_test = test("2026-11-25T10:01", TestResult::Clear), Stop, Stop)]
fn skin_test(#[case] change: Change, #[case] with_dye: Verdict, #[case] without_dye: Verdict) {
    assert_eq!(verdicts(&changed(fine(), change), "skin test"), [with_dye]);
    assert_eq!(verdicts(&changed(only_lightener(), change), "skin test"), [without_dye]);
}

/// The service starts on 25 November at 10:00 and the house rule asks for 48 h.
#[rstest]
#[case::to_the_minute("2026-11-23T10:00", Passed)]
#[case::a_minute_short("2026-11-23T10:01", Stop)]
// A date alone may mean any time of that day; the latest counts: 22 November 23:59:59 is 58 h before.
#[case::day_that_is_early_enough("2026-11-22", Passed)]
// 23 November 23:59:59 is 34 h before.
#[case::day_that_may_be_too_late("2026-11-23", Stop)]
fn skin_test_wait(#[case] applied: &str, #[case] want: Verdict) {
    let plan = changed(fine(), |file| file.analysis.skin_test = test(applied, TestResult::Clear));
    assert_eq!(verdicts(&plan, "skin test"), [want], "{}", texts(&plan, "skin test"));
}

/// Seven days before 25 November 10:00 is 18 November 10:00.
#[rstest]
#[case::to_the_minute("2026-11-18T10:00", None)]
#[case::a_minute_over("2026-11-18T09:59", Some(Stop))]
// The earliest moment of the day counts here.
#[case::day_that_may_be_too_early("2026-11-18", Some(Stop))]
#[case::next_day("2026-11-19", None)]
fn skin_test_age(#[case] applied: &str, #[case] want: Option<Verdict>) {
    let plan = changed(fine(), |file| file.analysis.skin_test = test(applied, TestResult::Clear));
    assert_eq!(verdicts(&plan, "skin test age"), Vec::from_iter(want));
    let plan = changed(fine(), |file| {
        file.analysis.skin_test = test(applied, TestResult::Clear);
        file.salon.skin_test_valid_days = None;
    });
    assert_eq!(verdicts(&plan, "skin test age"), [], "no rule, no judgement");
}

#[rstest]
#[case::clear(|_: &mut ServiceFile| {}, Passed)]
#[case::none(|file: &mut ServiceFile| file.analysis.strand_test = None, Warning)]
#[case::pending(|file: &mut ServiceFile| file.analysis.strand_test = test(BEFORE, TestResult::Pending), Warning)]
#[case::failed(|file: &mut ServiceFile| file.analysis.strand_test = test(BEFORE, TestResult::Reaction), Stop)]
#[case::after_the_start(|file: &mut ServiceFile| file.analysis.strand_test = test("2026-11-26", TestResult::Clear), Warning)]
fn strand_test(#[case] change: Change, #[case] want: Verdict) {
    assert_eq!(verdicts(&changed(fine(), change), "strand test"), [want]);
}

/// A test that is dated after the start was not done before it: metal salts stay untested.
#[rstest]
#[case::before("2026-11-24", &[HistoryFlag::MetallicSalts], &[Warning])]
#[case::after("2026-11-26", &[HistoryFlag::MetallicSalts], &[Stop, Warning])]
#[case::after_without_salts("2026-11-26", &[], &[Warning, Passed])]
fn an_incompatibility_test_comes_first(
    #[case] applied: &str,
    #[case] history: &[HistoryFlag],
    #[case] want: &[Verdict],
) {
    let plan = changed(fine(), |file| {
        file.analysis.history = Some(history.to_vec());
        file.analysis.incompatibility_test = test(applied, TestResult::Clear);
    });
    assert_eq!(verdicts(&plan, "metal salts"), want);
}
