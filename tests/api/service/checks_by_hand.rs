//! The checks of a plan at their edges, with their whole sentences: levels to lift, white hair, pH, minutes, what lies beside what.

use super::base::{changed, fine, only_colour, only_lightener, shop, texts, verdicts};
use foilwork::{
    finding::Rule,
    finding::Verdict::{self, NotJudged, Note, Passed, Stop, Warning},
    service::{
        Plan, ServiceFile,
        shape::{Elasticity, HistoryFlag, Porosity, Scalp, Test, TestResult},
    },
    shop::CountsFrom,
};
use rstest::rstest;
use serde_json::json;

fn strength(file: &mut ServiceFile, ww: f64) {
    shop(file).developer[0].strength = format!("{ww} % w/w");
}

/// Common practice: one session on dark natural hair reaches about 3 levels at 10 vol, 5 at 20, 6 at 30 and 7 at 40, read with 3 % for each 10 vol:
/// the classes meet half way. What is asked for exactly passes, half a level more is warned of; where the hair may be read half a level too light,
/// the same holds for what it then comes to.
#[rstest]
#[case(3.0, 3.0)]
#[case(4.4, 3.0)]
#[case(4.5, 5.0)]
#[case(7.4, 5.0)]
#[case(7.5, 6.0)]
#[case(10.4, 6.0)]
#[case(10.5, 7.0)]
#[case(12.0, 7.0)]
fn lightener_has_its_levels_in_one_session(#[case] ww: f64, #[case] most: f64) {
    let plan = |target: f64, unsure: Option<f64>| {
        changed(only_lightener(), |file| {
            (file.analysis.natural_level, file.analysis.natural_level_plus_minus) = (2.0, unsure);
            file.section[0].target_level = target;
            strength(file, ww);
        })
    };
    assert_eq!(verdicts(&plan(2.0 + most, None), "lift"), []);
    let beyond = plan(2.5 + most, None);
    assert_eq!(verdicts(&beyond, "lift"), [Warning]);
    let said = texts(&beyond, "lift");
    assert!(said.starts_with(&format!("top: {:.1} levels at {ww:.1} %", most + 0.5)), "{said}");
    let about =
        format!("where one session reaches about {most} (give or take 2): agree on a series, or test a strand\n");
    assert!(said.ends_with(&about), "{said}");
    let unsure = plan(2.0 + most, Some(0.5));
    assert_eq!(verdicts(&unsure, "lift"), [NotJudged]);
    let said = texts(&unsure, "lift");
    assert!(
        said.starts_with(&format!(
            "top: {most:.1} levels, {:.1} if the natural level is read too light, at",
            most + 0.5
        )),
        "{said}"
    );
    assert_eq!(verdicts(&plan(1.5 + most, Some(0.5)), "lift"), []);
}

/// Lightener that is to lift nothing is warned of, and where only a reading too dark makes it lift, that is not judged.
#[rstest]
#[case(6.0, None, Some((Warning, "top: lightener, but the target level 6 is not lighter than level 6\n")))]
#[case(5.5, None, Some((Warning, "top: lightener, but the target level 5.5 is not lighter than level 6\n")))]
#[case(6.5, None, None)]
#[case(6.5, Some(0.5), Some((NotJudged, "top: lightener, and the target level 6.5 is not lighter than level 6.5 if the natural level is read too dark\n")))]
#[case(6.6, Some(0.5), None)]
fn lightener_lifts_something(#[case] target: f64, #[case] unsure: Option<f64>, #[case] want: Option<(Verdict, &str)>) {
    let plan = changed(only_lightener(), |file| {
        file.analysis.natural_level_plus_minus = unsure;
        file.section[0].target_level = target;
    });
    assert_eq!(verdicts(&plan, "lift"), Vec::from_iter(want.map(|(verdict, _)| verdict)));
    assert_eq!(texts(&plan, "lift"), want.map_or("", |(_, text)| text));
}

/// Source: the study guide that the rule names: 10 vol deposits only, 20 vol lifts to 2 levels, 30 vol to 3, 40 vol to 4, with 3 % for each 10 vol.
#[rstest]
#[case(3.0, 0.0)]
#[case(4.4, 0.0)]
#[case(4.5, 2.0)]
#[case(7.4, 2.0)]
#[case(7.5, 3.0)]
#[case(10.4, 3.0)]
#[case(10.5, 4.0)]
#[case(12.0, 4.0)]
fn permanent_colour_lifts_by_its_developer(#[case] ww: f64, #[case] most: f64) {
    let plan = |up: f64, unsure: Option<f64>| {
        changed(only_colour(), |file| {
            (file.analysis.natural_level, file.analysis.natural_level_plus_minus) = (4.0, unsure);
            file.section[0].target_level = 4.0 + up;
            shop(file).shade[1].level = 4.0 + up;
            strength(file, ww);
        })
    };
    let lifted = |plan: &Plan| {
        let of = plan.findings.iter().filter(|one| one.rule == Rule::Lift && one.text.contains("with colour and"));
        of.map(|one| (one.verdict, one.text.clone())).collect::<Vec<_>>()
    };
    assert_eq!(lifted(&plan(most, None)), []);
    for (up, unsure, verdict, words) in [
        (most + 0.5, None, Warning, format!("{:.1} levels", most + 0.5)),
        (
            most,
            Some(0.5),
            NotJudged,
            format!("{most:.1} levels, {:.1} if the natural level is read too light,", most + 0.5),
        ),
    ] {
        let found = lifted(&plan(up, unsure));
        assert_eq!(found.len(), 1, "{found:?}");
        assert_eq!(found[0].0, verdict);
        assert!(found[0].1.starts_with(&format!("top: {words} with colour and {ww:.1} %")), "{}", found[0].1);
        assert!(found[0].1.ends_with(&format!("which lifts {most:.0} at most on natural hair")), "{}", found[0].1);
    }
}

/// Colour that deposits lifts nothing, whatever its developer.
#[rstest]
#[case(6.0, None, None)]
#[case(5.0, None, None)]
#[case(6.5, None, Some((Warning, "0.5 levels")))]
#[case(6.0, Some(0.5), Some((NotJudged, "0.0 levels, 0.5 if the natural level is read too light,")))]
fn a_deposit_lifts_nothing(#[case] target: f64, #[case] unsure: Option<f64>, #[case] want: Option<(Verdict, &str)>) {
    let plan = changed(only_colour(), |file| {
        (file.section[0].product, file.section[0].target_level) = (Some("J9".to_owned()), target);
        file.analysis.natural_level_plus_minus = unsure;
        shop(file).shade[0].level = target;
    });
    let of = plan.findings.iter().filter(|one| one.rule == Rule::Lift && one.text.contains("deposits"));
    let found: Vec<_> = of.map(|one| (one.verdict, one.text.clone())).collect();
    assert_eq!(found.len(), usize::from(want.is_some()), "{found:?}");
    if let (Some((verdict, words)), [found]) = (want, found.as_slice()) {
        assert_eq!(found.0, verdict);
        assert!(found.1.starts_with(&format!("top: {words} lighter with ")), "{}", found.1);
        assert!(
            found
                .1
                .ends_with("which deposits and does not lift: lighten first, or choose a target as deep as the hair"),
            "{}",
            found.1
        );
    }
}

/// Common practice: a shade above 8 covers white hair only in part, from 30 of 100 white hairs on.
#[rstest]
#[case(8.0, 60.0, false)]
#[case(8.1, 60.0, true)]
#[case(9.0, 30.0, true)]
#[case(9.0, 29.9, false)]
fn light_shades_cover_white_hair_in_part(#[case] shade: f64, #[case] white: f64, #[case] told: bool) {
    let plan = changed(only_colour(), |file| {
        file.analysis.white_percent = Some(white);
        shop(file).shade[1].level = shade;
        file.section[0].target_level = shade;
    });
    let said = texts(&plan, "white-hair");
    assert_eq!(said.contains(&format!("top: {white} % white, shade J6 covers it only in part\n")), told, "{said}");
}

/// Common practice, the trade's table: for 40 % white 33 to 50 % of the shades are natural. By hand in parts of ten.
#[rstest]
#[case(3.0, 7.0, Warning, "30 %")]
#[case(1.0, 2.0, Passed, "33 %")]
#[case(4.0, 6.0, Passed, "40 %")]
#[case(5.0, 5.0, Passed, "50 %")]
#[case(6.0, 4.0, Warning, "60 %")]
fn white_hair_wants_natural_shade(
    #[case] natural: f64,
    #[case] toned: f64,
    #[case] want: Verdict,
    #[case] words: &str,
) {
    let plan = changed(only_colour(), |file| {
        file.analysis.white_percent = Some(40.0);
        let mut warm = shop(file).shade[1].clone();
        (warm.code, warm.tones) = ("J6-warm".to_owned(), vec!["yellow".to_owned()]);
        shop(file).shade.push(warm);
        file.section[0].product = None;
        let mix = json!([{ "shade": "J6", "parts": natural }, { "shade": "J6-warm", "parts": toned }]);
        file.section[0].mix = serde_json::from_value(mix).unwrap();
    });
    let exact = natural / (natural + toned) >= 0.33;
    assert!(exact || want == Warning);
    assert_eq!(verdicts(&plan, "white-hair"), [want], "{}", texts(&plan, "white-hair"));
    let told = format!("top: {words} of the shades are natural; for 40 % white the trade takes 33 to 50 %\n");
    assert_eq!(texts(&plan, "white-hair"), told);
}

/// A stated mix below the least of the estimate is warned of, one below half of its best figure noted; the estimate is that of the plan which
/// mixes by it.
#[test]
fn a_mix_that_is_too_little_is_told() {
    let plan = |mix_g: Option<f64>| {
        changed(only_lightener(), |file| {
            file.analysis.length_cm = Some(30.0);
            file.section[0].mix_g = mix_g;
        })
    };
    let needed = plan(None).head.sections[0].takes.unwrap();
    let (low, half) = (needed.low().g(), needed.best().g() / 2.0);
    let enough = low.max(half);
    let told = |mix_g: f64| (verdicts(&plan(Some(mix_g)), "amount"), texts(&plan(Some(mix_g)), "amount"));
    let (found, said) = told((low - 0.2).floor());
    assert_eq!(found, [Warning]);
    assert!(
        said.starts_with(&format!("top: {} g stated is less than the least that this hair takes", (low - 0.2).floor())),
        "{said}"
    );
    assert_eq!(told(enough + 0.2).0, []);
    if low + 0.4 < half {
        let (found, said) = told(f64::midpoint(low, half));
        assert_eq!(found, [Note]);
        assert!(said.contains("g stated is less than half of what this hair takes"), "{said}");
    }
}

/// The most alkaline mix in print has pH 10.3; what its maker states at that is told as stated, more is warned of.
#[rstest]
#[case(10.3, Passed, "top: pH 10.3 of \"powder\" as its maker states it\n")]
#[case(
    10.4,
    Warning,
    "top: \"powder\" mixes to pH 10.4, above the 10.3 of mixes in print: it swells the hair and irritates the skin more; keep it off the scalp, look \
     earlier, rinse and acidify well\n"
)]
fn ph_is_held_against_print(#[case] ph: f64, #[case] want: Verdict, #[case] words: &str) {
    let plan = changed(only_lightener(), |file| shop(file).lightener[0].mixed_ph = Some(ph));
    assert_eq!((verdicts(&plan, "alkalinity"), texts(&plan, "alkalinity").as_str()), (vec![want], words));
}

/// 20 min to apply and 30 to develop against 50: whole minutes are left for the development, or none.
#[rstest]
#[case(20.0, 30.0, CountsFrom::FirstStrand, None)]
#[case(20.0, 31.0, CountsFrom::FirstStrand, Some("51 min (20 min to apply, 31 min to develop)"))]
#[case(48.5, 31.0, CountsFrom::FirstStrand, Some("80 min (48.5 min to apply, 31 min to develop)"))]
#[case(49.5, 1.0, CountsFrom::FirstStrand, Some("50 min (49.5 min to apply, 1 min to develop)"))]
#[case(30.0, 50.0, CountsFrom::EndOfApplication, None)]
#[case(30.0, 50.5, CountsFrom::EndOfApplication, Some("50.5 min of development"))]
fn a_strand_carries_no_product_too_long(
    #[case] apply: f64,
    #[case] develop: f64,
    #[case] from: CountsFrom,
    #[case] carried: Option<&str>,
) {
    let way_out = match apply {
        20.0 => "develop 30 min at most, or split the section",
        48.5 => "develop 1 min at most, or split the section",
        _ => "split the section",
    };
    let want = carried.map_or_else(String::new, |carried| {
        if from == CountsFrom::FirstStrand {
            let allowed = "its entry allows 50 min from the first strand";
            format!("top: its first strand would carry \"powder\" for {carried}, {allowed}: {way_out}\n")
        } else {
            format!("top: {carried}, \"powder\" allows 50 min from the end of the application: shorten it\n")
        }
    });
    let plan = changed(only_lightener(), |file| {
        (file.section[0].apply_min, file.section[0].develop_min) = (Some(apply), develop);
        shop(file).lightener[0].longest_counts_from = Some(from);
    });
    assert_eq!(texts(&plan, "time"), want);
    assert_eq!(verdicts(&plan, "time"), vec![Stop; usize::from(!want.is_empty())]);
}

/// Two sections of lightener: an hour of applying is no warning, a minute more is.
#[rstest]
#[case(30.0, "")]
#[case(31.0, "61 min of applying lightener: the first foils are done before the last are on\n")]
fn an_hour_of_applying_is_the_most(#[case] second: f64, #[case] want: &str) {
    let plan = changed(only_lightener(), |file| {
        let mut nape = file.section[0].clone();
        (nape.name, nape.apply_min, nape.develop_min) = ("nape".to_owned(), Some(second), 10.0);
        file.section[0].apply_min = Some(30.0);
        file.section[0].develop_min = 20.0;
        file.section.push(nape);
    });
    assert_eq!(texts(&plan, "pace"), want);
}

/// The whole sentences of what comes before what.
#[test]
fn what_comes_before_what_is_told_in_whole_sentences() {
    let second = |file: &mut ServiceFile, target: f64| {
        let mut nape = file.section[0].clone();
        (nape.name, nape.target_level) = ("nape".to_owned(), target);
        file.section.push(nape);
    };
    let hairline = changed(only_lightener(), |file| {
        second(file, 9.0);
        second(file, 9.0);
        file.section[2].name = "crown".to_owned();
        file.section[0].hairline = true;
    });
    let want =
        "top: the hairline, finest and fastest, is on before nape, crown: put it on last, or look at it sooner\n";
    assert_eq!(texts(&hairline, "sequence"), want);
    let one_foil = changed(only_lightener(), |file| {
        second(file, 6.0);
        file.section[1].product = Some("J6".to_owned());
        file.section[0].same_foil_as = vec!["nape".to_owned()];
    });
    let want = "nape: level 6 is painted after the level 9 of top in one foil: the darkest first\n";
    assert_eq!(texts(&one_foil, "sequence"), want);
    let untoned = changed(only_lightener(), |file| file.section[0].target_tone = Some("beige".to_owned()));
    let want = "top: \"beige\" is wanted and no toner goes on it: what lightener leaves is the underlying pigment\n";
    assert_eq!(texts(&untoned, "untoned"), want);
    let apart = changed(only_lightener(), |file| {
        second(file, 9.0);
        file.section[1].develop_min = 25.0;
    });
    let want = "top: due at the basin at minute 50 while on the hair stay nape (to 65): rinse it apart and keep the other foils dry\n";
    assert_eq!(texts(&apart, "rinse"), want);
}

/// Depth at the root: as deep as it grows, deeper, or within a reading; a shadow may be a level lighter and still join it.
#[rstest]
#[case(6.0, None, Passed)]
#[case(6.5, None, Passed)]
#[case(7.0, None, Passed)]
#[case(7.1, None, Warning)]
#[case(6.0, Some(0.5), NotJudged)]
#[case(6.5, Some(0.5), Passed)]
fn a_shadow_joins_the_base(#[case] shade: f64, #[case] unsure: Option<f64>, #[case] want: Verdict) {
    let plan = changed(fine(), |file| {
        file.analysis.natural_level_plus_minus = unsure;
        shop(file).shade[1].level = shade;
    });
    assert_eq!(verdicts(&plan, "depth-at-root"), [want], "{}", texts(&plan, "depth-at-root"));
}

/// What a doctor is asked about is one warning each; straightened or open hair is warned of where peroxide goes on it, and by no other colour.
#[test]
fn health_and_earlier_services_are_told_one_by_one() {
    let semi = || {
        let mut file = only_colour();
        (file.section[0].product, file.section[0].developer) = (Some("J8-veil".to_owned()), None);
        file
    };
    for (flags, want) in [
        (vec![HistoryFlag::SkinDisease], 1),
        (vec![HistoryFlag::Medicine, HistoryFlag::Pregnancy], 2),
        (vec![HistoryFlag::HairLoss, HistoryFlag::SkinDisease, HistoryFlag::Medicine, HistoryFlag::Pregnancy], 4),
        (vec![HistoryFlag::Asthma], 0),
    ] {
        let plan = changed(semi(), |file| file.analysis.history = Some(flags));
        assert_eq!(verdicts(&plan, "health"), vec![Warning; want]);
        assert_eq!(verdicts(&plan, "airways"), [], "no lightener is mixed");
    }
    let permed =
        |file: ServiceFile| changed(file, |file| file.analysis.history = Some(vec![HistoryFlag::StraightenedOrPermed]));
    assert_eq!(
        [verdicts(&permed(only_colour()), "earlier-service"), verdicts(&permed(semi()), "earlier-service")],
        [vec![Warning], vec![]]
    );
    for porosity in Porosity::ALL {
        let open = matches!(porosity, Porosity::High | Porosity::Uneven);
        for (file, peroxide) in [(only_colour(), true), (semi(), false)] {
            let plan = changed(file, |file| file.analysis.porosity = Some(*porosity));
            assert_eq!(verdicts(&plan, "porosity").len(), usize::from(open && peroxide), "{porosity}");
        }
    }
    let reacted = |file: ServiceFile| {
        let plan = changed(file, |file| file.analysis.history = Some(vec![HistoryFlag::ReactionToLightener]));
        verdicts(&plan, "earlier-reaction")
    };
    assert_eq!([reacted(only_lightener()), reacted(only_colour())], [vec![Stop], vec![Warning]]);
    let scalp = changed(semi(), |file| file.analysis.scalp = Some(Scalp::Broken));
    assert_eq!(texts(&scalp, "scalp"), "broken: wait until it has healed\n");
}

/// Hours and minutes of a skin test, cut off: by hand 47 h 59 min before ten o'clock is 10:01 two days before; the whole of a bare day is its last
/// second. Older than its days by the earliest moment of its day.
#[rstest]
#[case("2026-11-23T10:00", "clear, applied 48 h before (rule 48 h)\n")]
#[case("2026-11-23T10:01", "applied 47 h 59 min before the start, your rule asks for 48 h: move the start\n")]
#[case("2026-11-23T09:15:30", "clear, applied 48 h 44 min before (rule 48 h)\n")]
#[case("2026-11-25T09:59", "applied 0 h 1 min before the start, your rule asks for 48 h: move the start\n")]
fn a_skin_test_is_told_to_the_minute(#[case] applied: &str, #[case] want: &str) {
    let plan = changed(fine(), |file| file.analysis.skin_test.as_mut().unwrap().applied = applied.to_owned());
    assert_eq!(texts(&plan, "skin-test"), want);
}

/// By hand: 18 November at midnight is seven days and ten hours before ten o'clock on the 25th, 7.4 days.
#[test]
fn an_old_skin_test_is_told_with_its_days() {
    let plan = changed(fine(), |file| file.analysis.skin_test.as_mut().unwrap().applied = "2026-11-18".to_owned());
    assert_eq!(texts(&plan, "skin-test-age"), "7 days old, your rule allows 7: test again\n");
    let plan = changed(fine(), |file| file.analysis.skin_test.as_mut().unwrap().applied = "2026-11-12".to_owned());
    assert_eq!(texts(&plan, "skin-test-age"), "13 days old, your rule allows 7: test again\n");
}

/// The same section with colour that needs no developer.
fn only_semi() -> ServiceFile {
    let mut file = only_colour();
    (file.section[0].product, file.section[0].developer) = (Some("J8-veil".to_owned()), None);
    file
}

/// A stated test of this result, applied then.
fn test(result: TestResult, applied: &str) -> Option<Test> {
    Some(Test { applied: applied.to_owned(), result })
}

const BEFORE: &str = "2026-11-24T10:00";

fn sorted(mut verdicts: Vec<Verdict>) -> Vec<Verdict> {
    verdicts.sort();
    verdicts
}

/// Metal salts by every history, every test and with and without peroxide, by the rule said again: a test that reacted stops, salts and henna need a
/// clear one, and what is not read yet holds up peroxide alone. A clear one that is dated after the start is none, and that is said.
#[test]
fn metal_salts_by_every_history_and_test() {
    let histories = [
        None,
        Some(vec![]),
        Some(vec![HistoryFlag::Henna]),
        Some(vec![HistoryFlag::MetallicSalts]),
        Some(vec![HistoryFlag::MetallicSalts, HistoryFlag::Henna]),
    ];
    for history in histories {
        for (result, applied) in [
            (None, BEFORE),
            (Some(TestResult::Clear), BEFORE),
            (Some(TestResult::Clear), "2026-11-25T10:00"),
            (Some(TestResult::Clear), "2026-11-25T10:01"),
            (Some(TestResult::Pending), BEFORE),
            (Some(TestResult::Pending), "2026-11-26"),
            (Some(TestResult::Reaction), BEFORE),
            (Some(TestResult::Reaction), "2026-11-26"),
        ] {
            for (file, peroxide) in [(only_colour(), true), (only_semi(), false)] {
                let plan = changed(file, |file| {
                    file.analysis.history.clone_from(&history);
                    file.analysis.incompatibility_test = result.and_then(|result| test(result, applied));
                });
                let has = |flag| history.as_ref().is_some_and(|flags| flags.contains(&flag));
                let late = result == Some(TestResult::Clear) && applied == "2026-11-25T10:01";
                let (clear, reacted) =
                    (result == Some(TestResult::Clear) && !late, result == Some(TestResult::Reaction));
                let mut want = if late { vec![Warning] } else { Vec::new() };
                if reacted || has(HistoryFlag::MetallicSalts) && !clear || has(HistoryFlag::Henna) && !clear {
                    want.push(Stop);
                } else if has(HistoryFlag::MetallicSalts) {
                    want.push(Warning);
                } else if result == Some(TestResult::Pending) {
                    want.push(if peroxide { Stop } else { NotJudged });
                } else if clear || history.is_some() {
                    want.push(Passed);
                }
                let found = verdicts(&plan, "metal-salts");
                assert_eq!(sorted(found), sorted(want), "{history:?} {result:?} {applied} {peroxide}");
            }
        }
    }
}

/// How the hair stretches by every answer and service, and what a strand showed by every answer, in time and after the start.
#[test]
fn stretch_and_strand_by_every_answer() {
    for elasticity in [None, Some(Elasticity::Good), Some(Elasticity::Reduced), Some(Elasticity::Poor)] {
        for (file, lightener, peroxide) in
            [(only_lightener(), true, true), (only_colour(), false, true), (only_semi(), false, false)]
        {
            let want = match elasticity {
                Some(Elasticity::Poor) if lightener => Some(Stop),
                Some(Elasticity::Poor) if peroxide => Some(Warning),
                Some(Elasticity::Reduced) if lightener => Some(Warning),
                None if lightener => Some(NotJudged),
                _ => None,
            };
            let stretched = changed(file.clone(), |file| file.analysis.elasticity = elasticity);
            assert_eq!(
                verdicts(&stretched, "elasticity"),
                Vec::from_iter(want),
                "{elasticity:?} {lightener} {peroxide}"
            );
            for (result, applied) in [
                (None, BEFORE),
                (Some(TestResult::Clear), BEFORE),
                (Some(TestResult::Clear), "2026-11-25T10:00"),
                (Some(TestResult::Clear), "2026-11-25T10:01"),
                (Some(TestResult::Pending), BEFORE),
                (Some(TestResult::Reaction), "2026-11-26"),
            ] {
                let plan = changed(file.clone(), |file| {
                    file.analysis.elasticity = elasticity;
                    file.analysis.strand_test = result.and_then(|result| test(result, applied));
                });
                let want = match result {
                    Some(TestResult::Reaction) => Stop,
                    Some(TestResult::Clear) if applied == "2026-11-25T10:01" => Warning,
                    Some(TestResult::Clear) if elasticity == Some(Elasticity::Poor) => NotJudged,
                    Some(TestResult::Clear) => Passed,
                    _ => Warning,
                };
                assert_eq!(verdicts(&plan, "strand-test"), [want], "{result:?} {applied} {elasticity:?}");
            }
        }
    }
}

/// A developer as strong as an entry allows passes, a tenth of a percent more stops; colour may be as much as its developer and no more.
#[rstest]
#[case(6.0, 6.0, Passed)]
#[case(6.1, 6.0, Stop)]
#[case(6.0, 12.0, Passed)]
fn a_developer_is_no_stronger_than_its_product_allows(#[case] ww: f64, #[case] most: f64, #[case] want: Verdict) {
    for file in [only_lightener(), only_colour()] {
        let plan = changed(file, |file| {
            strength(file, ww);
            shop(file).lightener[0].strongest_developer_ww_percent = Some(most);
            shop(file).shade[1].strongest_developer_ww_percent = Some(most);
        });
        assert_eq!(verdicts(&plan, "developer"), [want], "{}", texts(&plan, "developer"));
    }
    for (ratio, told) in [("1:1", 0), ("1.1:1", 1), ("1:2", 0)] {
        let plan = changed(only_colour(), |file| file.section[0].ratio = Some(ratio.to_owned()));
        assert_eq!(verdicts(&plan, "ratio"), vec![Warning; told], "{}", texts(&plan, "ratio"));
    }
}
