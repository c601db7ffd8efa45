//! Colour that deposits: it shows only on hair that is lighter, takes warmth away only with another hue, and never lifts.
//! The rules are common practice.

use super::base::{changed, fine, only_colour, shop, texts, verdicts};
use foilwork::{
    finding::Verdict::{self, NotJudged, Passed, Warning},
    service::{
        Plan, ServiceFile,
        shape::{ExistingColour, HistoryFlag, MixPart, Zone},
    },
    shop::{ShadeClass, shape::ShadeEntry},
};
use rstest::rstest;

/// One toner of one shade on hair lifted to level 9, with a tone wanted there.
fn toned(level: f64, tones: &[&str], wanted: &str) -> Plan {
    changed(fine(), |file| {
        let shade = &mut shop(file).shade[0];
        (shade.level, shade.tones) = (level, tones.iter().map(|tone| (*tone).to_owned()).collect());
        file.section[0].target_tone = Some(wanted.to_owned());
    })
}

// Common practice: a toner is at the hair's level or up to two darker; yellow on pale yellow stays yellow; against it
// stands violet.
#[rstest]
#[case::as_deep(9.0, &["violet"], "beige", Passed, "on hair at level 9")]
#[case::two_darker(7.0, &["violet"], "beige", Passed, "on hair at level 9")]
#[case::far_darker(5.0, &[], "beige", Warning, "4 levels darker than the hair at level 9")]
#[case::lighter(10.0, &["violet"], "beige", Warning, "a toner does not lighten")]
#[case::yellow_on_yellow(9.0, &["yellow"], "beige", Warning, "adds the warmth that is there already (pale yellow)")]
#[case::yellow_for_no_warmth(9.0, &["yellow"], "no warmth", Warning, "adds the warmth that is there already")]
#[case::yellow_for_gold(9.0, &["yellow"], "soft gold", Passed, "on hair at level 9")]
fn toner_on_level_9(
    #[case] level: f64,
    #[case] tones: &[&str],
    #[case] wanted: &str,
    #[case] want: Verdict,
    #[case] words: &str,
) {
    let plan = toned(level, tones, wanted);
    assert_eq!(verdicts(&plan, "toner level"), [want], "{}", texts(&plan, "toner level"));
    assert!(texts(&plan, "toner level").contains(words), "{}", texts(&plan, "toner level"));
}

/// Of a mix the whole counts: a little yellow in a violet mix is still violet, and a clear shade has no level.
#[test]
fn the_mix_is_judged_as_one() {
    let plan = |deposit| {
        changed(fine(), |file| {
            shop(file).shade[0].tones = vec!["violet".to_owned()];
            let of = |code: &str, level, tones: &[&str], deposit_percent| ShadeEntry {
                code: code.to_owned(),
                level,
                tones: tones.iter().map(|tone| (*tone).to_owned()).collect(),
                deposit_percent,
                ..shop(&mut fine()).shade[0].clone()
            };
            let more = [of("J9-oat", 9.0, &["yellow"], None), of("J11-clear", 11.0, &[], Some(deposit))];
            shop(file).shade.extend(more);
            let part = |shade: &str, parts| MixPart { shade: shade.to_owned(), parts };
            file.toner[0].mix = vec![part("J9", 2.0), part("J9-oat", 1.0), part("J11-clear", 1.0)];
        })
    };
    assert_eq!(verdicts(&plan(0.0), "toner level"), [Passed], "{}", texts(&plan(0.0), "toner level"));
    assert_eq!(verdicts(&plan(100.0), "toner level"), [Warning]);
}

/// A look lighter than the hair it goes on is not reached by deposit.
#[rstest]
#[case::as_light(9.0, &[Passed])]
#[case::lighter(10.0, &[Warning])]
fn a_look_that_is_lighter_than_the_hair(#[case] level: f64, #[case] want: &[Verdict]) {
    let plan = changed(fine(), |file| {
        file.toner[0].mix = Vec::new();
        file.toner[0].target = serde_json::from_value(serde_json::json!({ "level": level, "tones": [] })).ok();
    });
    let of = verdicts(&plan, "toner level");
    let telling: Vec<Verdict> = of.iter().copied().filter(|verdict| want.contains(verdict)).collect();
    assert_eq!(telling, want, "{}", texts(&plan, "toner level"));
}

/// Demi- and semi-permanent colour deposit, whatever developer they are mixed with; 6 % lifts with permanent colour.
#[rstest]
#[case::permanent(ShadeClass::Permanent, 7.0, None)]
#[case::demi(ShadeClass::Demi, 7.0, Some(Warning))]
#[case::demi_as_deep(ShadeClass::Demi, 6.0, None)]
fn what_deposits_is_not_asked_to_lift(#[case] class: ShadeClass, #[case] target: f64, #[case] want: Option<Verdict>) {
    let plan = changed(only_colour(), |file| {
        shop(file).shade[1].class = class;
        file.section[0].target_level = target;
    });
    assert_eq!(verdicts(&plan, "lift"), Vec::from_iter(want), "{}", texts(&plan, "lift"));
    assert_eq!(plan.colour[0].exposed.is_some(), class == ShadeClass::Permanent);
}

/// A gloss on lightened lengths counts as a toner does.
#[rstest]
#[case::violet("violet", Passed)]
#[case::yellow("yellow", Warning)]
fn a_gloss_on_lightened_lengths(#[case] tone: &str, #[case] want: Verdict) {
    let plan = changed(only_colour(), |file| {
        file.analysis.existing = vec![ExistingColour {
            zone: Some(Zone::Lengths),
            level: 9.0,
            tone: None,
            artificial: false,
            ..ExistingColour::default()
        }];
        shop(file).shade[0].tones = vec![tone.to_owned()];
        file.section[0].product = Some("J9".to_owned());
        file.section[0].target_level = 9.0;
        file.section[0].target_tone = Some("beige".to_owned());
    });
    assert_eq!(verdicts(&plan, "toner level"), [want], "{}", texts(&plan, "toner level"));
}

/// A mix is written product first: 2:1 is twice as much powder as developer. 45 g are 30 and 15.
#[rstest]
#[case::powder_first("1:2", None)]
#[case::as_much("1:1", None)]
#[case::developer_first("2:1", Some("30 g powder to 15 g developer"))]
fn a_ratio_written_the_wrong_way_round(#[case] ratio: &str, #[case] words: Option<&str>) {
    let lightener = changed(fine(), |file| file.section[0].ratio = Some(ratio.to_owned()));
    assert_eq!(verdicts(&lightener, "ratio"), Vec::from_iter(words.map(|_| Warning)));
    assert!(texts(&lightener, "ratio").contains(words.unwrap_or_default()), "{}", texts(&lightener, "ratio"));
    let colour = changed(only_colour(), |file| file.section[0].ratio = Some(ratio.to_owned()));
    assert_eq!(verdicts(&colour, "ratio"), Vec::from_iter(words.map(|_| Warning)));
}

// Source: "2 x target - natural" is printed for lifting, natural 6 to target 8 with formula 10 (CK-12, citation
// `ck12-blond`). Going darker is deposit: the level wanted (common practice), after warm pigment on lightened hair.
#[rstest]
#[case::lifting(6.0, 8.0, 10.0)]
#[case::going_darker(9.0, 5.0, 5.0)]
#[case::staying(6.0, 6.0, 6.0)]
fn the_shade_for_a_target(#[case] natural: f64, #[case] target: f64, #[case] want: f64) {
    let plan = changed(only_colour(), |file| {
        file.analysis.natural_level = natural;
        file.section[0].target_level = target;
        shop(file).shade[1].level = 5.0;
    });
    let rule = plan.colour[0].level_rule.as_ref().unwrap();
    assert_eq!(rule.shade_for_target_level.map(|level| level.best().number()), Some(want));
    // A shade of level 5 on darker hair would be the mean; on lighter hair it is level 5.
    assert_eq!(rule.pigmented_hair_level.best().number(), 5.0);
}

/// Level 9 that goes to 5 needs warm pigment first, whether the history says so or not.
#[rstest]
fn going_darker_on_hair_that_is_lighter_than_it_grows(#[values(true, false)] flag: bool) {
    let plan = changed(only_colour(), |file: &mut ServiceFile| {
        file.analysis.history = Some(if flag { vec![HistoryFlag::Lightened] } else { Vec::new() });
        file.analysis.existing = vec![ExistingColour {
            zone: Some(Zone::Ends),
            level: 9.0,
            tone: None,
            artificial: false,
            ..ExistingColour::default()
        }];
        file.section[0].target_level = 5.0;
    });
    assert_eq!(verdicts(&plan, "pre-pigmentation"), [Warning]);
    assert!(texts(&plan, "pre-pigmentation").contains("level 9 to level 5"), "{}", texts(&plan, "pre-pigmentation"));
}

/// The margin of the natural level opens what it would turn round.
#[rstest]
#[case::demi_as_deep(6.0, ShadeClass::Demi, None, Some(NotJudged))]
#[case::demi_deeper(5.0, ShadeClass::Demi, None, None)]
#[case::permanent_at_its_limit(8.0, ShadeClass::Permanent, None, Some(NotJudged))]
#[case::permanent_within(7.0, ShadeClass::Permanent, None, None)]
#[case::permanent_beyond(8.6, ShadeClass::Permanent, None, Some(Warning))]
#[case::stated_start(8.0, ShadeClass::Permanent, Some(6.0), None)]
fn a_margin_of_half_a_level(
    #[case] target: f64,
    #[case] class: ShadeClass,
    #[case] start: Option<f64>,
    #[case] want: Option<Verdict>,
) {
    // Natural 6 and 6 % w/w, which lifts two levels at most (citation `nc-cosmetology-7-2`).
    let plan = changed(only_colour(), |file| {
        file.analysis.natural_level_plus_minus = Some(0.5);
        shop(file).shade[1].class = class;
        file.section[0].starting_level = start;
        file.section[0].target_level = target;
    });
    assert_eq!(verdicts(&plan, "lift"), Vec::from_iter(want), "{}", texts(&plan, "lift"));
}

/// What a toner passes on is a plan: nobody has seen the lifted hair yet.
#[test]
fn a_toner_passes_on_the_level_planned() {
    let said = texts(&toned(9.0, &["violet"], "beige"), "toner level");
    assert!(said.contains("the level planned: judge it again on what the strand shows"), "{said}");
}
