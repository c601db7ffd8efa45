//! What a check says, where two of its sentences come to the same verdict: only its words tell which of them was meant.

use super::base::{changed, fine, only_colour, only_lightener, shop, texts, verdicts};
use foilwork::{
    finding::Verdict::{self, NotJudged, Passed, Stop, Warning},
    service::{
        ServiceFile,
        shape::{Elasticity, HistoryFlag, Porosity, Test, TestResult},
    },
};
use rstest::rstest;

type Change = fn(&mut ServiceFile);

/// Two days before the start, which is on 25 November 2026 at ten.
const BEFORE: &str = "2026-11-23T10:00";
const START: &str = "2026-11-25T10:00";

fn test(applied: &str, result: TestResult) -> Option<Test> {
    Some(Test { applied: applied.to_owned(), result })
}

fn told(flag: HistoryFlag) -> Option<Vec<HistoryFlag>> {
    Some(vec![flag])
}

/// A shade that needs no developer, and nothing else: no peroxide comes to the hair.
fn without_peroxide() -> ServiceFile {
    let mut file = only_colour();
    let section = &mut file.section[0];
    (section.product, section.developer, section.target_level) = (Some("J8-veil".to_owned()), None, 6.0);
    file
}

/// A reaction is worse than a test that is not read, and salts that are stated are more than henna that may hold some (the training
/// pages on the incompatibility test). A test begun at the start itself is not after it.
#[rstest]
#[case::reacted(&[], BEFORE, TestResult::Reaction, "the incompatibility test reacted", &[Stop])]
#[case::salts_and_reacted(&[HistoryFlag::MetallicSalts], BEFORE, TestResult::Reaction, "the incompatibility test reacted", &[Stop])]
#[case::salts_unread(&[HistoryFlag::MetallicSalts], BEFORE, TestResult::Pending, "no clear incompatibility test", &[Stop])]
#[case::salts_clear(&[HistoryFlag::MetallicSalts], BEFORE, TestResult::Clear, "watch the strand test", &[Warning])]
#[case::henna_unread(&[HistoryFlag::Henna], BEFORE, TestResult::Pending, "henna in the history", &[Stop])]
#[case::henna_clear(&[HistoryFlag::Henna], BEFORE, TestResult::Clear, "incompatibility test clear", &[Passed])]
#[case::both(&[HistoryFlag::Henna, HistoryFlag::MetallicSalts], BEFORE, TestResult::Clear, "watch the strand test", &[Warning])]
#[case::unread(&[], BEFORE, TestResult::Pending, "is not read yet", &[Stop])]
#[case::clear(&[], BEFORE, TestResult::Clear, "incompatibility test clear", &[Passed])]
#[case::clear_at_the_start(&[], START, TestResult::Clear, "incompatibility test clear", &[Passed])]
#[case::reacted_too_late(&[], "2026-11-26", TestResult::Reaction, "the incompatibility test reacted", &[Stop])]
fn of_metal_salts(
    #[case] history: &[HistoryFlag],
    #[case] applied: &str,
    #[case] result: TestResult,
    #[case] words: &str,
    #[case] want: &[Verdict],
) {
    let plan = changed(only_lightener(), |file| {
        file.analysis.history = Some(history.to_vec());
        file.analysis.incompatibility_test = test(applied, result);
    });
    assert_eq!(verdicts(&plan, "metal salts"), want, "{}", texts(&plan, "metal salts"));
    assert!(texts(&plan, "metal salts").contains(words), "{}", texts(&plan, "metal salts"));
}

/// Where no peroxide comes to the hair a test that nobody has read holds nothing up, and yet settles nothing.
#[test]
fn an_unread_test_without_peroxide_is_open() {
    let plan = changed(without_peroxide(), |file| {
        file.analysis.incompatibility_test = test(BEFORE, TestResult::Pending);
    });
    assert_eq!(verdicts(&plan, "metal salts"), [NotJudged]);
}

/// Every word of the history has its own sentence, beside lightener, beside oxidative colour and beside neither.
#[rstest]
#[case::dye(HistoryFlag::ReactionToHairColour, "earlier-reaction", "a reaction to hair colour", [Some(Stop); 3])]
#[case::lightener(HistoryFlag::ReactionToLightener, "earlier-reaction", "a reaction to lightener", [Some(Stop), Some(Warning), Some(Warning)])]
#[case::asthma(HistoryFlag::Asthma, "airways", "asthma", [Some(Warning), None, None])]
#[case::tattoo(HistoryFlag::BlackHennaTattoo, "black henna", "a black-henna tattoo", [None, Some(Warning), None])]
#[case::skin(HistoryFlag::SkinDisease, "health", "a disease of the skin", [Some(Warning); 3])]
#[case::medicine(HistoryFlag::Medicine, "health", "medicine", [Some(Warning); 3])]
#[case::pregnancy(HistoryFlag::Pregnancy, "health", "pregnant or nursing", [Some(Warning); 3])]
#[case::loss(HistoryFlag::HairLoss, "health", "more hair falls out", [Some(Warning); 3])]
#[case::permed(HistoryFlag::StraightenedOrPermed, "earlier-service", "straightened or permed", [Some(Warning), Some(Warning), None])]
#[case::young(HistoryFlag::UnderSixteen, "age", "sixteen", [Some(Stop), Some(Stop), None])]
fn of_the_history(
    #[case] flag: HistoryFlag,
    #[case] rule: &str,
    #[case] words: &str,
    #[case] want: [Option<Verdict>; 3],
) {
    for (file, want) in [only_lightener(), only_colour(), without_peroxide()].into_iter().zip(want) {
        let plan = changed(file, |file| file.analysis.history = told(flag));
        assert_eq!(verdicts(&plan, rule), Vec::from_iter(want), "{}", texts(&plan, rule));
        let said = texts(&plan, rule);
        assert!(want.is_none() || said.contains(words), "{said}");
    }
}

/// The label of oxidative colour names the age, the label of a lightener may name another one.
#[test]
fn of_an_age_it_says_whose_label_that_is() {
    let young = |file: ServiceFile| {
        texts(&changed(file, |file| file.analysis.history = told(HistoryFlag::UnderSixteen)), "age")
    };
    let dye = "oxidative colour is not meant for anyone under sixteen";
    assert_eq!((young(only_colour()).trim(), young(fine()).trim()), (dye, dye));
    assert!(young(only_lightener()).contains("a lightener's label may say another age"));
}

/// Open hair takes up peroxide sooner; without it the sentence has nothing to say.
#[rstest]
#[case(Porosity::High, true)]
#[case(Porosity::Uneven, true)]
#[case(Porosity::Normal, false)]
#[case(Porosity::Low, false)]
fn of_porosity_beside_peroxide(#[case] porosity: Porosity, #[case] want: bool) {
    let sooner = |file: ServiceFile| {
        let plan = changed(file, |file| file.analysis.porosity = Some(porosity));
        texts(&plan, "porosity").contains("the mix works faster where the hair is open")
    };
    assert_eq!([sooner(only_lightener()), sooner(only_colour()), sooner(without_peroxide())], [want, want, false]);
}

/// Poor hair is not lightened, whatever else goes on; colour with peroxide weakens it; without peroxide nothing does.
#[rstest]
#[case::lightener_and_colour(fine(), Some((Stop, "poor: do not lighten")))]
#[case::lightener(only_lightener(), Some((Stop, "poor: do not lighten")))]
#[case::colour(only_colour(), Some((Warning, "poor: colour with peroxide")))]
#[case::neither(without_peroxide(), None)]
fn of_poor_hair(#[case] file: ServiceFile, #[case] want: Option<(Verdict, &str)>) {
    let plan = changed(file, |file| file.analysis.elasticity = Some(Elasticity::Poor));
    assert_eq!(verdicts(&plan, "elasticity"), Vec::from_iter(want.map(|(verdict, _)| verdict)));
    assert!(texts(&plan, "elasticity").contains(want.map_or("", |(_, words)| words)));
}

/// A test of the strand done at the start is not after it, and one of poor hair that failed failed.
#[rstest]
#[case::at_the_start(START, TestResult::Clear, Elasticity::Good, Passed, "done, hair sound")]
#[case::after_it("2026-11-25T10:01", TestResult::Clear, Elasticity::Good, Warning, "its date is after the start")]
#[case::poor(BEFORE, TestResult::Clear, Elasticity::Poor, NotJudged, "test again before relying on it")]
#[case::poor_and_after("2026-11-26", TestResult::Clear, Elasticity::Poor, Warning, "its date is after the start")]
#[case::poor_and_failed(BEFORE, TestResult::Reaction, Elasticity::Poor, Stop, "the strand did not stand it")]
#[case::reduced(BEFORE, TestResult::Clear, Elasticity::Reduced, Passed, "done, hair sound")]
#[case::failed_after_it("2026-11-26", TestResult::Reaction, Elasticity::Good, Stop, "the strand did not stand it")]
#[case::unread(BEFORE, TestResult::Pending, Elasticity::Good, Warning, "none: neither time nor level is known")]
fn of_the_strand_test(
    #[case] applied: &str,
    #[case] result: TestResult,
    #[case] elasticity: Elasticity,
    #[case] want: Verdict,
    #[case] words: &str,
) {
    let plan = changed(only_lightener(), |file| {
        file.analysis.strand_test = test(applied, result);
        file.analysis.elasticity = Some(elasticity);
    });
    assert_eq!(verdicts(&plan, "strand test"), [want]);
    assert!(texts(&plan, "strand test").contains(words), "{}", texts(&plan, "strand test"));
}

/// From the 23rd at 10:00 to the 25th at 10:00 are 48 h; a quarter of an hour later 47 h 45 min; from the 18th at 9:00 to the 25th at
/// 10:00 7 days and an hour, 169 h.
#[rstest]
#[case("2026-11-23T10:00", Passed, "clear, applied 48 h before (rule 48 h)")]
#[case("2026-11-23T10:15", Stop, "applied 47 h 45 min before the start, your rule asks for 48 h: move the start")]
#[case("2026-11-18T09:00", Passed, "clear, applied 169 h before (rule 48 h)")]
#[case("2026-11-25T09:30", Stop, "applied 0 h 30 min before the start, your rule asks for 48 h: move the start")]
fn of_the_hours_since_the_skin_test(#[case] applied: &str, #[case] want: Verdict, #[case] words: &str) {
    let plan = changed(only_lightener(), |file| file.analysis.skin_test = test(applied, TestResult::Clear));
    assert_eq!((verdicts(&plan, "skin test"), texts(&plan, "skin test").trim()), (vec![want], words));
}

/// A test of ten days where seven are the rule: it holds up oxidative colour and is a warning beside lightener alone.
#[test]
fn an_old_skin_test_is_worse_beside_colour() {
    let old = |file| changed(file, |file| file.analysis.skin_test = test("2026-11-15T10:00", TestResult::Clear));
    for (file, want) in [(only_colour(), Stop), (only_lightener(), Warning)] {
        let plan = old(file);
        assert_eq!(verdicts(&plan, "skin test age"), [want]);
        assert_eq!(texts(&plan, "skin test age").trim(), "10 days old, your rule allows 7: test again");
    }
}

/// How a developer of 6 % stands to what is allowed on the scalp: by the shelf, by the house, by nobody. The trade keeps lightener on
/// the scalp to 20 volumes, which is 6 % (common practice).
#[rstest]
#[case::allowed(|file: &mut ServiceFile| scalp(file, Some(true), Some(6.0), None), &[(Passed, "on the scalp by")])]
#[case::above(|file: &mut ServiceFile| scalp(file, Some(true), Some(5.9), None), &[(Stop, "touches the scalp, where")])]
#[case::above_if_no_gap(|file: &mut ServiceFile| roots(file, Some(5.9), None), &[(NotJudged, "touches the scalp if no gap is left, where")])]
#[case::a_gap(|file: &mut ServiceFile| scalp(file, Some(false), Some(5.9), None), &[])]
#[case::house_above(|file: &mut ServiceFile| scalp(file, Some(true), None, Some(5.9)), &[(Stop, "use a weaker one")])]
#[case::nobody(|file: &mut ServiceFile| scalp(file, Some(true), None, None), &[(NotJudged, "is not on the shelf: enter `strongest_on_scalp_ww_percent` of \"powder\"")])]
#[case::nobody_and_strong(
    |file: &mut ServiceFile| {
        scalp(file, Some(true), None, None);
        shop(file).developer[0].strength = "9 % w/w".to_owned();
    },
    &[(Warning, "developer 9 % touches the scalp, where the trade keeps lightener to")]
)]
#[case::not_there_at_all(
    |file: &mut ServiceFile| {
        scalp(file, Some(true), Some(1.0), None);
        shop(file).lightener[0].on_scalp = false;
    },
    &[(Stop, "\"powder\" touches the scalp, which its entry does not allow")]
)]
fn of_a_developer_on_the_scalp(#[case] change: Change, #[case] want: &[(Verdict, &str)]) {
    let plan = changed(only_lightener(), change);
    let said = texts(&plan, "on scalp");
    assert_eq!(verdicts(&plan, "on scalp"), want.iter().map(|(verdict, _)| *verdict).collect::<Vec<_>>(), "{said}");
    assert!(want.iter().all(|(_, words)| said.contains(words)), "{said}");
}

fn scalp(file: &mut ServiceFile, touches: Option<bool>, shelf: Option<f64>, house: Option<f64>) {
    file.section[0].on_scalp = touches;
    let powder = &mut shop(file).lightener[0];
    (powder.on_scalp, powder.strongest_on_scalp_ww_percent) = (true, shelf);
    file.salon.strongest_on_scalp_ww_percent = house;
}

/// Foils at the roots: whether a gap is left, nobody says.
fn roots(file: &mut ServiceFile, shelf: Option<f64>, house: Option<f64>) {
    scalp(file, None, shelf, house);
    file.section[0].zone = foilwork::service::shape::Zone::Roots;
}
