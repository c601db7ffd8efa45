//! Colour that cannot lift so far: the hair is lightened to its level before it, by common practice.

use super::base::{changed, near, only_colour, shop, texts, verdicts};
use foilwork::{
    finding::Verdict::{NotJudged, Note, Passed, Stop, Warning},
    head::{ExtraStep, StepEnd},
    service::{Plan, ServiceFile, mixing_cards, shape::HistoryFlag},
    shop::CountsFrom,
};
use rstest::rstest;

/// Level 6 to a vivid level 8 with a semi-permanent shade, which lifts nothing.
fn vivid(first: &[ExtraStep], change: impl FnOnce(&mut ServiceFile)) -> Plan {
    changed(only_colour(), |file| {
        let top = &mut file.section[0];
        (top.product, top.developer, top.ratio) = (Some("J8-veil".to_owned()), None, None);
        (top.target_level, top.mix_g) = (8.0, Some(40.0));
        top.first = first.to_vec();
        change(file);
    })
}

#[test]
fn what_colour_cannot_lift_is_asked_for_and_named() {
    let plan = vivid(&[], |_| ());
    let [step] = plan.first_steps.as_slice() else { panic!("{:#?}", plan.first_steps) };
    assert_eq!((step.step, step.planned, step.asked_for), (ExtraStep::PreLighten, false, true));
    assert_eq!(verdicts(&plan, "step before"), [Note]);
    // Without it the colour is told not to reach its level.
    assert!(verdicts(&plan, "lift").contains(&Warning), "{}", texts(&plan, "lift"));
    // Half a level is within a reading, and what is to go darker needs no lightener.
    assert!(vivid(&[], |file| file.section[0].target_level = 6.5).first_steps.is_empty());
    assert!(vivid(&[], |file| file.section[0].target_level = 5.0).first_steps.is_empty());
}

/// 40 g of colour in foil are on 26.7 g of hair; 1.5 g of lightener on a gram are 40 g, of which a third is powder at 1:2. It is
/// brushed on in 10 min, lies 25, and is rinsed: 5 min more, walk and basin.
#[test]
fn pre_lightening_in_grams_and_minutes() {
    let plan = vivid(&[ExtraStep::PreLighten], |_| ());
    let [step] = plan.first_steps.as_slice() else { panic!("{:#?}", plan.first_steps) };
    assert_eq!((step.planned, step.asked_for, step.then), (true, true, StepEnd::Rinse));
    near(step.mix.best().g(), 40.0 / 1.5 * 1.5, 1e-9);
    for (part, (product, grams)) in step.parts.iter().zip([("powder", 13.3), ("developer", 26.7)]) {
        assert_eq!(part.product, product);
        near(part.weigh.g(), grams, 1e-9);
    }
    near(step.over.unwrap().best().min(), 10.0 + 25.0 + 5.0, 1e-9);
    // Two thirds of 6 %.
    near(step.on_hair.unwrap().best().ww_percent(), 6.0 * 26.7 / 40.0, 1e-9);
    // The colour has the hair that it needs now; the law sees lightener on the head.
    assert_eq!(verdicts(&plan, "lift"), [NotJudged], "{}", texts(&plan, "lift"));
    assert!(texts(&plan, "lift").contains("no forecast for a step before: test a strand"));
    assert!(verdicts(&plan, "step before").is_empty(), "{}", texts(&plan, "step before"));
    assert!(verdicts(&plan, "law").iter().all(|verdict| [Passed, NotJudged].contains(verdict)));
    assert!(texts(&plan, "law").contains("lighten to the level wanted first"), "{}", texts(&plan, "law"));
    assert!(plan.cautions.iter().any(|caution| caution.text.contains("dust")));
    assert_eq!(mixing_cards(&plan)[0].name, "top, lighten to the level wanted first");
}

#[test]
fn pre_lightening_is_judged_like_lightener() {
    let salts = vivid(&[ExtraStep::PreLighten], |file| file.analysis.history = Some(vec![HistoryFlag::MetallicSalts]));
    assert!(verdicts(&salts, "step before").contains(&Stop));
    // Level 2 to 8 is six levels, where 6 % reach five in a session.
    let far = vivid(&[ExtraStep::PreLighten], |file| file.analysis.natural_level = 2.0);
    assert_eq!(verdicts(&far, "lift"), [Warning]);
    assert!(texts(&far, "lift").contains("6.0 levels to be lifted"), "{}", texts(&far, "lift"));
}

/// The colour that follows is judged on what is planned, and on nothing that anybody saw: level 8 on level 8, not on 6.
#[test]
fn colour_after_pre_lightening_is_judged_on_the_level_planned() {
    let plan = vivid(&[ExtraStep::PreLighten], |_| ());
    assert_eq!(verdicts(&plan, "toner level"), [Passed], "{}", texts(&plan, "toner level"));
    let said = texts(&plan, "toner level");
    assert!(said.contains("level 8") && said.contains("judge it again on what the strand shows"), "{said}");
    assert_eq!(verdicts(&vivid(&[], |_| ()), "toner level"), [Warning]);
    // A shade of level 8 on hair that is lightened to 7 only.
    assert_eq!(
        verdicts(&vivid(&[ExtraStep::PreLighten], |file| file.section[0].target_level = 7.0), "toner level"),
        [Warning]
    );
}

/// Without a lightener nothing is lightened: the colour still deposits, and a remover takes no natural pigment (common practice).
#[test]
fn without_a_lightener_the_lift_stays_unreached() {
    let plan = vivid(&[ExtraStep::PreLighten], |file| {
        shop(file).lightener.clear();
        file.section[0].product = Some("J8-veil".to_owned());
    });
    assert!(plan.first_steps[0].parts.is_empty());
    assert!(verdicts(&plan, "lift").contains(&Warning), "{}", texts(&plan, "lift"));
    assert!(texts(&plan, "lift").contains("deposits and does not lift"), "{}", texts(&plan, "lift"));
    assert!(verdicts(&plan, "toner level").contains(&Warning));
    let said = texts(&plan, "step before");
    assert!(said.contains("choose a target as deep as the hair, or another lightener"), "{said}");
    assert!(!said.contains("remover"), "{said}");
}

/// It is brushed on in 5, 10 or 20 min (a quarter, half or all of 20) and lies 10, 25 or 45.
#[rstest]
#[case::far_too_long(Some(15.0), CountsFrom::FirstStrand, Some((Stop, "35 (15 to 65) min")))]
#[case::at_its_longest(Some(50.0), CountsFrom::FirstStrand, Some((Warning, "35 (15 to 65) min")))]
#[case::brush_and_all(Some(65.0), CountsFrom::FirstStrand, None)]
#[case::too_long(Some(20.0), CountsFrom::EndOfApplication, Some((Stop, "25 (10 to 45) min")))]
#[case::brush_apart(Some(45.0), CountsFrom::EndOfApplication, None)]
#[case::not_on_the_shelf(None, CountsFrom::FirstStrand, Some((NotJudged, "is not on the shelf")))]
fn pre_lightening_keeps_to_the_products_own_time(
    #[case] longest: Option<f64>,
    #[case] from: CountsFrom,
    #[case] expected: Option<(foilwork::finding::Verdict, &str)>,
) {
    let plan = vivid(&[ExtraStep::PreLighten], |file| {
        let powder = &mut shop(file).lightener[0];
        (powder.longest_min, powder.longest_counts_from) = (longest, longest.map(|_| from));
    });
    let of_powder: Vec<_> = plan
        .findings
        .iter()
        .filter(|found| found.rule == foilwork::finding::Rule::Time && found.text.contains("\"powder\""))
        .map(|found| (found.verdict, found.text.as_str()))
        .collect();
    match (expected, of_powder.as_slice()) {
        (None, []) => {}
        (Some((verdict, words)), [(found, text)]) => {
            assert!(*found == verdict && text.contains(words), "{found:?} {text}");
        }
        (_, found) => panic!("{found:#?}"),
    }
}

/// Artificial level 5 to 8 with permanent colour of level 6, which cannot lift it (common practice).
fn coloured(first: &[ExtraStep]) -> Plan {
    changed(only_colour(), |file| {
        file.analysis.existing =
            serde_json::from_value(serde_json::json!([{ "zone": "whole", "level": 5, "artificial": true }])).unwrap();
        file.section[0].target_level = 8.0;
        file.section[0].first = first.to_vec();
    })
}

/// A shade darker than the hair leaves its own level, and level 8 asks for a shade of level 8: the level rules, by hand.
#[test]
fn the_level_rules_count_the_lightening_that_is_planned() {
    let without = coloured(&[]);
    let rule = without.colour[0].level_rule.as_ref().unwrap();
    assert!(rule.no_shade_for_target.as_ref().unwrap().contains("cannot lift coloured hair"));
    let plan = coloured(&[ExtraStep::PreLighten]);
    let rule = plan.colour[0].level_rule.as_ref().unwrap();
    assert_eq!(rule.no_shade_for_target, None);
    assert_eq!(rule.pigmented_hair_level.to_array().map(|level| level.number()), [6.0; 3]);
    assert_eq!(rule.shade_for_target_level.unwrap().to_array().map(|level| level.number()), [8.0; 3]);
    let flat = plan.to_string().split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        flat.contains("lift 3 first") && flat.contains("after the step before, from level 8, by the level rules"),
        "{flat}"
    );
    assert!(!flat.contains("nothing stated asks for it") && !flat.contains("remove it or lighten it first"), "{flat}");
}

/// Nobody knows the level that cleaning leaves: the colour is neither condemned nor praised before.
#[test]
fn what_cleaning_leaves_decides() {
    assert_eq!(verdicts(&coloured(&[]), "lift"), [Warning]);
    let plan = coloured(&[ExtraStep::CleanFirst]);
    assert_eq!(verdicts(&plan, "lift"), [NotJudged], "{}", texts(&plan, "lift"));
    assert!(texts(&plan, "lift").contains("what cleaning leaves decides"), "{}", texts(&plan, "lift"));
    let flat = plan.to_string().split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        flat.contains("after cleaning") && flat.contains("what cleaning leaves decides which shade it needs"),
        "{flat}"
    );
    assert!(!flat.contains("cannot lift coloured hair") && !flat.contains("does not lift the artificial"), "{flat}");
    // Nor do the data say what the sheet does not.
    assert!(coloured(&[]).colour[0].level_rule.is_some() && plan.colour[0].level_rule.is_none());
}
