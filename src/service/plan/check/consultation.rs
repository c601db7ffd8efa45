//! History, scalp, hair, and the strand test.

use super::{
    super::{Hair, Start, findings::Findings},
    brings::Brings,
};
use crate::{
    finding::{
        Rule,
        Verdict::{NotJudged, Passed, Stop, Warning},
    },
    service::shape::{Elasticity, HistoryFlag, Porosity, Scalp, TestResult},
    source::{
        COMMON_PRACTICE,
        citations::{mix, trade},
    },
};

pub(super) fn check(hair: &Hair, brings: Brings, start: Start, findings: &mut Findings) {
    metal_salts(hair, brings.peroxide, start, findings);
    history(hair, brings, findings);
    scalp(hair, findings);
    elasticity(hair, brings, findings);
}

fn metal_salts(hair: &Hair, peroxide: bool, start: Start, findings: &mut Findings) {
    // What is tested after the service has begun is not tested.
    let in_time = hair.incompatibility_test.filter(|test| test.applied.earliest() <= start.latest());
    if in_time.is_none() && hair.incompatibility_test.is_some_and(|test| test.result == TestResult::Clear) {
        let text = "the date of the incompatibility test is after the start, so it does not count: correct \
                    `analysis.incompatibility_test.applied`";
        findings.add(Rule::MetalSalts, Warning, text, COMMON_PRACTICE);
    }
    let tested = in_time.or(hair.incompatibility_test.filter(|test| test.result != TestResult::Clear));
    let tested = tested.map(|test| test.result);
    let (verdict, text) = match (hair.has(HistoryFlag::MetallicSalts), tested) {
        (_, Some(TestResult::Reaction)) => (Stop, "the incompatibility test reacted: no peroxide on this hair"),
        (true, Some(TestResult::Clear)) => (
            Warning,
            "metallic salts in the history, incompatibility test clear: watch the strand test for heat and bubbles",
        ),
        (true, _) => (Stop, "metallic salts in the history and no clear incompatibility test: test cut hair first"),
        (false, tested) if hair.has(HistoryFlag::Henna) && tested != Some(TestResult::Clear) => {
            (Stop, "henna in the history, which may hold metal salts: do the incompatibility test first")
        }
        (false, Some(TestResult::Clear)) => (Passed, "incompatibility test clear"),
        // A test is done because something is suspected: until it is read, peroxide has to wait.
        (false, Some(_)) => {
            let text = "the incompatibility test is not read yet: no peroxide before it is clear";
            (if peroxide { Stop } else { NotJudged }, text)
        }
        _ if hair.history.is_some() => (Passed, "none in the history"),
        _ => return,
    };
    findings.add(Rule::MetalSalts, verdict, text, trade::INCOMPATIBILITY);
}

fn history(hair: &Hair, brings: Brings, findings: &mut Findings) {
    let colour = brings.oxidative_colour;
    if hair.history.is_none() {
        let text = "not stated: ask, then enter `analysis.history`, [] if there is nothing to tell";
        findings.add(Rule::History, NotJudged, text, trade::CONSULTATION);
    }
    if hair.has(HistoryFlag::ReactionToHairColour) {
        let text = "a reaction to hair colour in the history: do not colour; refer to a doctor";
        findings.add(Rule::EarlierReaction, Stop, text, trade::EU_DYE_LABEL);
    }
    if hair.has(HistoryFlag::ReactionToLightener) {
        // Persulfates sensitise: what was a rash or a cough can be worse the next time.
        let (verdict, text) = if brings.lightener {
            (Stop, "a reaction to lightener in the history: do not lighten; refer to a doctor")
        } else {
            (Warning, "a reaction to lightener in the history: keep lightener away from this guest; refer to a doctor")
        };
        findings.add(Rule::EarlierReaction, verdict, text, mix::HSE_COSHH_HAIRDRESSING);
    }
    if brings.lightener && hair.has(HistoryFlag::Asthma) {
        let text = "asthma in the history: persulfate dust and spray can set it off; ask for a doctor's advice first, mix away \
                    from the guest, in moving air, and stop at the first cough";
        findings.add(Rule::Airways, Warning, text, mix::HSE_COSHH_HAIRDRESSING);
    }
    if hair.has(HistoryFlag::UnderSixteen) {
        if colour {
            let text = "oxidative colour is not meant for anyone under sixteen";
            findings.add(Rule::Age, Stop, text, trade::EU_DYE_LABEL);
        } else if brings.peroxide {
            let text = "under sixteen: the label of hair colour rules it out; a lightener's label may say another age, so do \
                        not begin before its own instructions, the law and a guardian allow it";
            findings.add(Rule::Age, Stop, text, COMMON_PRACTICE);
        }
    }
    if colour && hair.has(HistoryFlag::BlackHennaTattoo) {
        let text =
            "a black-henna tattoo raises the risk of allergy to oxidative colour: agree with the guest, test skin";
        findings.add(Rule::BlackHenna, Warning, text, trade::EU_DYE_LABEL);
    }
    health(hair, findings);
    earlier_service(hair, brings, findings);
}

/// What a doctor should be asked about: no study tells that any of them forbids it, none that it does no harm.
fn health(hair: &Hair, findings: &mut Findings) {
    let told = [
        (HistoryFlag::SkinDisease, "a disease of the skin: ask the doctor who treats it, and begin on sound skin only"),
        (HistoryFlag::Medicine, "medicine: ask a doctor or pharmacist whether skin or hair react differently with it"),
        (HistoryFlag::Pregnancy, "pregnant or nursing: ask a doctor; keep the mix off the scalp, or wait"),
        (
            HistoryFlag::HairLoss,
            "more hair falls out than usual: have a doctor look first; no pull, no heat, less strength",
        ),
    ];
    for (_, text) in told.into_iter().filter(|(flag, _)| hair.has(*flag)) {
        findings.add(Rule::Health, Warning, text, COMMON_PRACTICE);
    }
}

/// What the history says was done to the hair, where this service adds to it.
fn earlier_service(hair: &Hair, brings: Brings, findings: &mut Findings) {
    if brings.peroxide && hair.has(HistoryFlag::StraightenedOrPermed) {
        let text = "straightened or permed before: the fibre is weaker; lower the strength, keep the gap that the product \
                    asks for, and test a strand";
        findings.add(Rule::EarlierService, Warning, text, trade::CONSULTATION);
    }
    if brings.peroxide && matches!(hair.porosity, Some(Porosity::High | Porosity::Uneven)) {
        let text = "porosity high or uneven: the mix works faster where the hair is open; look earlier, and expect the darker \
                    and cooler end of a toner";
        findings.add(Rule::Porosity, Warning, text, COMMON_PRACTICE);
    }
}

fn scalp(hair: &Hair, findings: &mut Findings) {
    let (verdict, text, source) = match hair.scalp {
        Some(Scalp::Intact) => (Passed, "stated intact", trade::EU_DYE_LABEL),
        Some(Scalp::Irritated) => (Stop, "irritated: wait until it has healed", trade::EU_DYE_LABEL),
        Some(Scalp::Broken) => (Stop, "broken: wait until it has healed", trade::EU_DYE_LABEL),
        None => (NotJudged, "not stated: look, then enter `analysis.scalp`", trade::CONSULTATION),
    };
    findings.add(Rule::Scalp, verdict, text, source);
}

fn elasticity(hair: &Hair, brings: Brings, findings: &mut Findings) {
    let (verdict, text) = match hair.elasticity {
        Some(Elasticity::Poor) if brings.peroxide && !brings.lightener => (
            Warning,
            "poor: colour with peroxide weakens it further; treat and test again, or deposit without peroxide",
        ),
        _ if !brings.lightener => return,
        Some(Elasticity::Poor) => (Stop, "poor: do not lighten; treat and test again"),
        Some(Elasticity::Reduced) => {
            (Warning, "reduced: lower the strength or the target, and test during the service")
        }
        None => (NotJudged, "not stated: stretch a damp strand, then enter `analysis.elasticity`"),
        _ => return,
    };
    findings.add(Rule::Elasticity, verdict, text, trade::CONSULTATION);
}

pub(super) fn strand_test(hair: &Hair, start: Start, findings: &mut Findings) {
    let (verdict, text) = match hair.strand_test {
        Some(test) if test.result == TestResult::Clear && test.applied.earliest() > start.latest() => {
            let text = "its date is after the start: correct `analysis.strand_test.applied`";
            return findings.add(Rule::StrandTest, Warning, text, COMMON_PRACTICE);
        }
        Some(test) if test.result == TestResult::Clear && hair.elasticity == Some(Elasticity::Poor) => {
            (NotJudged, "clear, but the elasticity is stated poor: test again before relying on it")
        }
        Some(test) if test.result == TestResult::Clear => (Passed, "done, hair sound"),
        Some(test) if test.result == TestResult::Reaction => (Stop, "the strand did not stand it: do not go on"),
        _ => (
            Warning,
            "none: neither time nor level is known before one; without it a lift forecast spans two levels either way",
        ),
    };
    findings.add(Rule::StrandTest, verdict, text, trade::CONSULTATION);
}
