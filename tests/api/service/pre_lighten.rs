//! Colour that cannot lift so far: the hair is lightened to its level before it, by common practice.

use super::base::{changed, near, only_colour, texts, verdicts};
use foilwork::{
    finding::Verdict::{NotJudged, Note, Passed, Stop, Warning},
    head::{ExtraStep, StepEnd},
    service::{Plan, ServiceFile, mixing_cards, shape::HistoryFlag},
};

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
    assert!(verdicts(&plan, "lift").is_empty(), "{}", texts(&plan, "lift"));
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
