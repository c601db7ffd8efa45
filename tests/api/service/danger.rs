//! What can hurt: airways, age, earlier reactions, earlier services, and peroxide that nobody declared.

use super::base::{changed, fine, only_lightener, shop, texts, verdicts};
use foilwork::{
    finding::Verdict::{self, NotJudged, Passed, Stop, Warning},
    service::{
        Plan, ServiceFile,
        shape::{Elasticity, HistoryFlag, Porosity},
    },
};
use rstest::rstest;

fn with(file: ServiceFile, flag: HistoryFlag) -> Plan {
    changed(file, |file| file.analysis.history = Some(vec![flag]))
}

/// Source: citations `hse-coshh-hairdressing` and `macan-2022`: persulfates sensitise airways and skin.
#[rstest]
#[case::reaction(HistoryFlag::ReactionToLightener, "earlier-reaction", Stop)]
#[case::asthma(HistoryFlag::Asthma, "airways", Warning)]
#[case::relaxed(HistoryFlag::StraightenedOrPermed, "earlier-service", Warning)]
#[case::coloured(HistoryFlag::PermanentColour, "earlier-service", Warning)]
fn history_is_held_against_lightener(#[case] flag: HistoryFlag, #[case] rule: &str, #[case] want: Verdict) {
    assert_eq!(verdicts(&with(only_lightener(), flag), rule), [want]);
    let without = changed(only_lightener(), |file| file.analysis.history = Some(Vec::new()));
    assert!(!verdicts(&without, rule).contains(&want));
}

/// Source: Regulation (EC) No 1223/2009, Annex III: the warning of oxidative dyes is for persons under the age of 16. A
/// lightener-only service of an under-sixteen is held up too, in words that say whose rule that is.
#[test]
fn an_under_sixteen_is_never_planned_in_silence() {
    let plan = with(only_lightener(), HistoryFlag::UnderSixteen);
    assert_eq!(verdicts(&plan, "age"), [Stop]);
    assert!(plan.blocked);
    assert!(texts(&plan, "age").contains("its own instructions, the law and a guardian"), "{}", texts(&plan, "age"));
}

/// Source: common practice; the cautions stand before every mix of persulfate, whatever the findings say.
#[test]
fn cautions_of_a_lightener_name_airways_age_and_hot_foils() {
    let plan = changed(only_lightener(), |_| {});
    let cautions: Vec<&str> = plan.cautions.iter().map(|caution| caution.text).collect();
    let has = |words: &str| cautions.iter().any(|text| text.contains(words));
    assert!(has("persulfates sensitise airways and skin"));
    assert!(has("a foil that gets hot, swells or bubbles: open it and rinse at once"));
    assert!(has("not meant for anyone under sixteen"));
}

/// Source: Regulation (EC) No 1223/2009, Annex III, entry 12: hydrogen peroxide "present or released". A powder that
/// nobody declares may release any amount, so the bowl is never within, however weak its developer.
#[rstest]
fn an_undeclared_product_never_passes_the_law(#[values("0.5 % w/w", "3 % w/w", "11 % w/w")] strength: &str) {
    let plan = |declared| {
        changed(only_lightener(), |file| {
            shop(file).developer[0].strength = strength.to_owned();
            shop(file).lightener[0].declared_in_full = declared;
        })
    };
    assert_eq!(verdicts(&plan(true), "law"), [Passed]);
    assert_eq!(verdicts(&plan(false), "law"), [NotJudged]);
    assert!(texts(&plan(false), "law").contains("\"powder\" may release more peroxide"));
}

#[test]
fn poor_elasticity_takes_the_word_from_a_clear_strand() {
    let plan = changed(only_lightener(), |file| file.analysis.elasticity = Some(Elasticity::Poor));
    assert_eq!(verdicts(&plan, "strand-test"), [NotJudged]);
    assert_eq!(verdicts(&plan, "elasticity"), [Stop]);
}

#[rstest]
fn open_hair_is_warned_of(#[values(Porosity::High, Porosity::Uneven)] porosity: Porosity) {
    let plan = changed(fine(), |file| file.analysis.porosity = Some(porosity));
    assert!(verdicts(&plan, "porosity").contains(&Warning));
}
