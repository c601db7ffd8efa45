//! What is asked and looked at before the service, each answer in a table: what is said of it, whatever else is in the bowls, and nothing
//! more.

use super::base::{changed, only_colour, only_lightener};
use foilwork::{
    colour::Level,
    finding::{
        Rule,
        Verdict::{self, NotJudged, Passed, Stop, Warning},
    },
    service::{
        Plan, ServiceFile,
        shape::{Elasticity, HistoryFlag, Porosity, Scalp, Test, TestResult},
    },
    shop::StrengthBasis,
};
use serde_json::json;

/// What is in the bowl: lightener with peroxide, oxidative colour with peroxide, or semi-permanent colour as it comes.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
enum Bowl {
    Lightener,
    Colour,
    Semi,
}

const BOWLS: [Bowl; 3] = [Bowl::Lightener, Bowl::Colour, Bowl::Semi];

fn plan(bowl: Bowl, change: impl FnOnce(&mut ServiceFile)) -> Plan {
    let file = if bowl == Bowl::Lightener { only_lightener() } else { only_colour() };
    changed(file, |file| {
        if bowl == Bowl::Semi {
            let top = &mut file.section[0];
            (top.product, top.developer) = (Some("J8-veil".to_owned()), None);
        }
        change(file);
    })
}

/// The verdicts and texts of a rule.
fn said(plan: &Plan, rule: Rule) -> Vec<(Verdict, &str)> {
    let of = plan.findings.iter().filter(|found| found.rule == rule);
    of.map(|found| (found.verdict, found.text.as_str())).collect()
}

/// The sentences of what a guest tells, in the words of the sources: labels (EU), a regulator's page on lightener, common practice.
fn of_history(flag: HistoryFlag, bowl: Bowl) -> Vec<(Rule, Verdict, &'static str)> {
    use HistoryFlag as Told;
    let (light, colour, peroxide) = (bowl == Bowl::Lightener, bowl == Bowl::Colour, bowl != Bowl::Semi);
    let one = |when: bool, rule: Rule, verdict: Verdict, text: &'static str| {
        if when { vec![(rule, verdict, text)] } else { Vec::new() }
    };
    let health = |text: &'static str| one(true, Rule::Health, Warning, text);
    match flag {
        Told::ReactionToHairColour => one(
            true,
            Rule::EarlierReaction,
            Stop,
            "a reaction to hair colour in the history: do not colour; refer to a doctor",
        ),
        Told::ReactionToLightener if light => one(
            true,
            Rule::EarlierReaction,
            Stop,
            "a reaction to lightener in the history: do not lighten; refer to a doctor",
        ),
        Told::ReactionToLightener => one(
            true,
            Rule::EarlierReaction,
            Warning,
            "a reaction to lightener in the history: keep lightener away from this guest; refer to a doctor",
        ),
        Told::Asthma => one(
            light,
            Rule::Airways,
            Warning,
            "asthma in the history: persulfate dust and spray can set it off; ask for a doctor's advice first, mix away from the \
             guest, in moving air, and stop at the first cough",
        ),
        Told::UnderSixteen if colour => {
            one(true, Rule::Age, Stop, "oxidative colour is not meant for anyone under sixteen")
        }
        Told::UnderSixteen => one(
            light,
            Rule::Age,
            Stop,
            "under sixteen: the label of hair colour rules it out; a lightener's label may say another age, so do not begin before \
             its own instructions, the law and a guardian allow it",
        ),
        Told::BlackHennaTattoo => one(
            colour,
            Rule::BlackHenna,
            Warning,
            "a black-henna tattoo raises the risk of allergy to oxidative colour: agree with the guest, test skin",
        ),
        Told::SkinDisease => {
            health("a disease of the skin: ask the doctor who treats it, and begin on sound skin only")
        }
        Told::Medicine => health("medicine: ask a doctor or pharmacist whether skin or hair react differently with it"),
        Told::Pregnancy => health("pregnant or nursing: ask a doctor; keep the mix off the scalp, or wait"),
        Told::HairLoss => {
            health("more hair falls out than usual: have a doctor look first; no pull, no heat, less strength")
        }
        Told::StraightenedOrPermed => one(
            peroxide,
            Rule::EarlierService,
            Warning,
            "straightened or permed before: the fibre is weaker; lower the strength, keep the gap that the product asks for, and \
             test a strand",
        ),
        // Salts and henna have their own test; where lightened and coloured hair lies is asked for elsewhere.
        _ => Vec::new(),
    }
}

const HEARD: [Rule; 7] = [
    Rule::EarlierReaction,
    Rule::Airways,
    Rule::Age,
    Rule::BlackHenna,
    Rule::Health,
    Rule::EarlierService,
    Rule::History,
];

/// One answer, and two together: each has its own sentence and takes none away.
#[test]
fn what_a_guest_tells_is_said_by_what_is_in_the_bowls() {
    let elsewhere = [HistoryFlag::Lightened, HistoryFlag::PermanentColour];
    let flags = || HistoryFlag::ALL.iter().copied().filter(move |flag| !elsewhere.contains(flag));
    for bowl in BOWLS {
        for first in flags() {
            for second in flags() {
                let plan = plan(bowl, |file| file.analysis.history = Some(vec![first, second]));
                let mut want = of_history(first, bowl);
                if second != first {
                    want.extend(of_history(second, bowl));
                }
                for rule in HEARD {
                    let mut got = said(&plan, rule);
                    let mut want: Vec<_> = want.iter().filter(|one| one.0 == rule).map(|one| (one.1, one.2)).collect();
                    got.sort_unstable();
                    want.sort_unstable();
                    assert_eq!(got, want, "{rule}: {bowl:?}, {first}, {second}");
                }
            }
        }
        let silent = plan(bowl, |file| file.analysis.history = None);
        let ask = "not stated: ask, then enter `analysis.history`, [] if there is nothing to tell";
        assert_eq!(said(&silent, Rule::History), [(NotJudged, ask)]);
        assert_eq!(said(&plan(bowl, |file| file.analysis.history = Some(vec![])), Rule::History), []);
    }
}

/// Metal in the hair: a reaction stops whatever was told; salts want a clear test, and stay a warning with it; henna wants one as well;
/// a test that was begun is waited for, before peroxide. One that is dated after the start (at ten) is none, but if it reacted.
#[test]
fn metal_in_the_hair_is_tested_before_peroxide() {
    let tests = [
        None,
        Some(("2026-11-20", TestResult::Clear)),
        Some(("2026-11-25T10:00", TestResult::Clear)),
        Some(("2026-11-20", TestResult::Pending)),
        Some(("2026-11-20", TestResult::Reaction)),
        Some(("2026-11-26", TestResult::Clear)),
        Some(("2026-11-26", TestResult::Pending)),
        Some(("2026-11-26", TestResult::Reaction)),
    ];
    let (salts, henna) = (HistoryFlag::MetallicSalts, HistoryFlag::Henna);
    for bowl in BOWLS {
        for history in [None, Some(vec![]), Some(vec![salts]), Some(vec![henna]), Some(vec![henna, salts])] {
            for test in tests {
                let plan = plan(bowl, |file| {
                    file.analysis.history.clone_from(&history);
                    let of = |(applied, result): (&str, TestResult)| Test { applied: applied.to_owned(), result };
                    file.analysis.incompatibility_test = test.map(of);
                });
                let told = |flag: &HistoryFlag| history.as_ref().is_some_and(|all| all.contains(flag));
                let late = test.is_some_and(|test| test.0 == "2026-11-26");
                let result = test.map(|test| test.1).filter(|result| !late || *result != TestResult::Clear);
                let (clear, reacted) = (result == Some(TestResult::Clear), result == Some(TestResult::Reaction));
                let mut want = Vec::new();
                want.extend((late && test.is_some_and(|test| test.1 == TestResult::Clear)).then_some((
                    Warning,
                    "the date of the incompatibility test is after the start, so it does not count: correct \
                     `analysis.incompatibility_test.applied`",
                )));
                want.extend(if reacted {
                    Some((Stop, "the incompatibility test reacted: no peroxide on this hair"))
                } else if told(&salts) && clear {
                    let text = "metallic salts in the history, incompatibility test clear: watch the strand test for heat and \
                                bubbles";
                    Some((Warning, text))
                } else if told(&salts) {
                    let text = "metallic salts in the history and no clear incompatibility test: test cut hair first";
                    Some((Stop, text))
                } else if told(&henna) && !clear {
                    let text = "henna in the history, which may hold metal salts: do the incompatibility test first";
                    Some((Stop, text))
                } else if clear {
                    Some((Passed, "incompatibility test clear"))
                } else if result.is_some() {
                    let verdict = if bowl == Bowl::Semi { NotJudged } else { Stop };
                    Some((verdict, "the incompatibility test is not read yet: no peroxide before it is clear"))
                } else {
                    history.is_some().then_some((Passed, "none in the history"))
                });
                let mut got = said(&plan, Rule::MetalSalts);
                got.sort_unstable();
                want.sort_unstable();
                assert_eq!(got, want, "{bowl:?}, {history:?}, {test:?}");
            }
        }
    }
}

#[test]
fn scalp_stretch_and_porosity_are_said_by_what_is_in_the_bowls() {
    for bowl in BOWLS {
        for (scalp, want) in [
            (Some(Scalp::Intact), (Passed, "stated intact")),
            (Some(Scalp::Irritated), (Stop, "irritated: wait until it has healed")),
            (Some(Scalp::Broken), (Stop, "broken: wait until it has healed")),
            (None, (NotJudged, "not stated: look, then enter `analysis.scalp`")),
        ] {
            assert_eq!(said(&plan(bowl, |file| file.analysis.scalp = scalp), Rule::Scalp), [want]);
        }
        for stretch in Elasticity::ALL.iter().copied().map(Some).chain([None]) {
            let want = match (stretch, bowl) {
                (Some(Elasticity::Poor), Bowl::Lightener) => Some((Stop, "poor: do not lighten; treat and test again")),
                (Some(Elasticity::Poor), Bowl::Colour) => {
                    let text = "poor: colour with peroxide weakens it further; treat and test again, or deposit without peroxide";
                    Some((Warning, text))
                }
                (Some(Elasticity::Reduced), Bowl::Lightener) => {
                    Some((Warning, "reduced: lower the strength or the target, and test during the service"))
                }
                (None, Bowl::Lightener) => {
                    Some((NotJudged, "not stated: stretch a damp strand, then enter `analysis.elasticity`"))
                }
                _ => None,
            };
            let plan = plan(bowl, |file| file.analysis.elasticity = stretch);
            assert_eq!(said(&plan, Rule::Elasticity), Vec::from_iter(want), "{bowl:?}, {stretch:?}");
        }
        for porosity in Porosity::ALL.iter().copied().map(Some).chain([None]) {
            let open = matches!(porosity, Some(Porosity::High | Porosity::Uneven)) && bowl != Bowl::Semi;
            let text = "porosity high or uneven: the mix works faster where the hair is open; look earlier, and expect the darker \
                        and cooler end of a toner";
            let want = open.then_some((Warning, text));
            let plan = plan(bowl, |file| file.analysis.porosity = porosity);
            assert_eq!(said(&plan, Rule::Porosity), Vec::from_iter(want), "{bowl:?}, {porosity:?}");
        }
    }
}

/// Levels of the trade by developer (10, 20, 30 and 40 vol at 3, 6, 9 and 12 %, parted half way): powder on dark hair in a session 3, 5,
/// 6 and 7 levels; permanent colour on natural hair 0, 2, 3 and 4. As many as that are no word, more are one; where only a natural level
/// that is read too light makes them more, it is open.
#[test]
fn levels_beyond_what_a_developer_does_are_told() {
    let strengths = [3.0, 4.49, 4.5, 6.0, 7.49, 7.5, 9.0, 10.49, 10.5, 12.0];
    for bowl in [Bowl::Lightener, Bowl::Colour] {
        for strength in strengths {
            let step = [4.5, 7.5, 10.5].iter().filter(|edge| strength >= **edge).count();
            let most = if bowl == Bowl::Lightener { [3.0, 5.0, 6.0, 7.0][step] } else { [0.0, 2.0, 3.0, 4.0][step] };
            for (over, margin) in
                [(-1.0, 0.0), (0.0, 0.0), (0.5, 0.0), (0.0, 0.5), (-0.5, 0.5), (0.5, 0.5), (-1.0, 0.5)]
            {
                let change: f64 = most + over;
                if change < 0.5 && bowl == Bowl::Lightener {
                    continue;
                }
                let plan = plan(bowl, |file| {
                    let shelf = file.shop.as_mut().unwrap();
                    shelf.developer[0].strength = format!("{strength} % w/w");
                    shelf.developer[0].strength_basis = StrengthBasis::Measured;
                    let (natural, target) = (4.0, 4.0 + change);
                    (file.analysis.natural_level, file.section[0].target_level) = (natural, target);
                    file.analysis.natural_level_plus_minus = Some(margin);
                });
                let levels = if change > most {
                    format!("{change:.1} levels")
                } else {
                    format!("{change:.1} levels, {:.1} if the natural level is read too light,", change + margin)
                };
                let text = if bowl == Bowl::Lightener {
                    format!(
                        "top: {levels} at {strength:.1} % w/w, where one session reaches about {most} (give or take 2): agree on a \
                         series, or test a strand"
                    )
                } else {
                    format!(
                        "top: {levels} with colour and {strength:.1} % w/w developer, which lifts {most} at most on natural hair"
                    )
                };
                let verdict = match change {
                    change if change > most => Some(Warning),
                    change if change + margin > most => Some(NotJudged),
                    _ => None,
                };
                let got = said(&plan, Rule::Lift);
                let want = verdict.map(|verdict| (verdict, text.as_str()));
                assert_eq!(got, Vec::from_iter(want), "{bowl:?}, {strength} %, {over}, {margin}");
            }
        }
    }
}

/// Lightener for a target that is as dark as the hair, or that is so if the natural level is read too dark; hair that is lightened
/// already has no reading.
#[test]
fn lightener_for_a_target_that_is_no_lighter_is_told() {
    let told = |target: f64, margin: f64, lightened: Option<f64>| {
        let plan = plan(Bowl::Lightener, |file| {
            file.analysis.natural_level_plus_minus = Some(margin);
            file.section[0].target_level = target;
            if let Some(level) = lightened {
                let there = json!([{ "zone": "whole", "level": level, "artificial": false }]);
                file.analysis.existing = serde_json::from_value(there).unwrap();
            }
        });
        said(&plan, Rule::Lift).into_iter().map(|(verdict, text)| (verdict, text.to_owned())).collect::<Vec<_>>()
    };
    let level = |number: f64| Level::new(number).unwrap();
    let not = |target: f64, from: f64| {
        let (target, from) = (level(target), level(from));
        vec![(Warning, format!("top: lightener, but the target {target} is not lighter than {from}"))]
    };
    let maybe = |target: f64, from: f64| {
        let (target, from) = (level(target), level(from));
        let why = "if the natural level is read too dark";
        vec![(NotJudged, format!("top: lightener, and the target {target} is not lighter than {from} {why}"))]
    };
    assert_eq!(told(6.0, 0.0, None), not(6.0, 6.0));
    assert_eq!(told(5.0, 0.5, None), not(5.0, 6.0));
    assert_eq!(told(6.5, 0.0, None), []);
    assert_eq!(told(6.5, 0.5, None), maybe(6.5, 6.5));
    assert_eq!(told(6.5, 1.0, None), maybe(6.5, 7.0));
    assert_eq!(told(7.0, 0.5, None), []);
    assert_eq!(told(8.0, 0.5, Some(8.0)), not(8.0, 8.0));
    assert_eq!(told(9.0, 0.5, Some(8.0)), []);
}
