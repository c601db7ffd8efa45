//! Checks of the consultation: history, scalp, hair, and the tests that were done.

use super::{
    Verdict::{NotJudged, Passed, Stop, Warning},
    finding::Findings,
};
use crate::{
    service::{
        file::Moment,
        request::{ItemKind, Request},
        shape::{Elasticity, HistoryFlag, Scalp, ShadeClass, Test, TestResult},
    },
    source::{COMMON_PRACTICE, citations::trade},
};

/// Adds the findings of the consultation.
pub(super) fn check(request: &Request, findings: &mut Findings) {
    history(request, findings);
    scalp_and_hair(request, findings);
    skin_test(request, findings);
    strand_test(request, findings);
}

/// Whether any mix holds oxidative colour.
fn has_oxidative_colour(request: &Request) -> bool {
    request.tasks.iter().flat_map(|task| &task.products).any(|(i, _)| {
        request
            .items
            .get(*i)
            .is_some_and(|item| matches!(item.kind, ItemKind::Shade { class, .. } if class != ShadeClass::Semi))
    })
}

fn history(request: &Request, findings: &mut Findings) {
    let analysis = &request.file.analysis;
    let has = |flag| analysis.has(flag);
    let colour = has_oxidative_colour(request);
    let incompatibility = analysis.incompatibility_test.as_ref().map(|test| test.result);
    match (has(HistoryFlag::MetallicSalts), incompatibility) {
        (_, Some(TestResult::Reaction)) => findings.add(
            Stop,
            "metal salts",
            "the incompatibility test reacted: no peroxide on this hair",
            trade::INCOMPATIBILITY,
        ),
        (true, Some(TestResult::Clear)) => findings.add(
            Warning,
            "metal salts",
            "metallic salts in the history, incompatibility test clear: watch the strand test for heat and bubbles",
            trade::INCOMPATIBILITY,
        ),
        (true, _) => findings.add(
            Stop,
            "metal salts",
            "metallic salts in the history and no clear incompatibility test: test cut hair first",
            trade::INCOMPATIBILITY,
        ),
        (false, _) if has(HistoryFlag::Henna) && incompatibility != Some(TestResult::Clear) => findings.add(
            Stop,
            "metal salts",
            "henna in the history, which may hold metal salts: do the incompatibility test first",
            trade::INCOMPATIBILITY,
        ),
        (false, Some(TestResult::Clear)) => {
            findings.add(Passed, "metal salts", "incompatibility test clear", trade::INCOMPATIBILITY);
        }
        _ if analysis.history.is_some() => {
            findings.add(Passed, "metal salts", "none in the history", trade::INCOMPATIBILITY);
        }
        _ => {}
    }
    if analysis.history.is_none() {
        let text = "not stated: ask, then enter `analysis.history`, [] if there is nothing to tell";
        findings.add(NotJudged, "history", text, trade::CONSULTATION);
    }
    if has(HistoryFlag::ReactionToHairColour) {
        findings.add(
            Stop,
            "earlier reaction",
            "a reaction to hair colour in the history: do not colour; refer to a doctor",
            trade::EU_DYE_LABEL,
        );
    }
    if colour && has(HistoryFlag::UnderSixteen) {
        findings.add(Stop, "age", "oxidative colour is not meant for anyone under sixteen", trade::EU_DYE_LABEL);
    }
    if colour && has(HistoryFlag::BlackHennaTattoo) {
        let text =
            "a black-henna tattoo raises the risk of allergy to oxidative colour: agree with the guest, test skin";
        findings.add(Warning, "black henna", text, trade::EU_DYE_LABEL);
    }
    if request.tasks.iter().any(|task| task.lightens) && has(HistoryFlag::Lightened) {
        let text = "lightened before: keep fresh mix off the lightened lengths and test their elasticity";
        findings.add(Warning, "overlap", text, trade::CONSULTATION);
    }
}

fn scalp_and_hair(request: &Request, findings: &mut Findings) {
    let analysis = &request.file.analysis;
    match analysis.scalp {
        Some(Scalp::Intact) => findings.add(Passed, "scalp", "stated intact", trade::EU_DYE_LABEL),
        Some(Scalp::Irritated) => {
            findings.add(Stop, "scalp", "irritated: wait until it has healed", trade::EU_DYE_LABEL);
        }
        Some(Scalp::Broken) => findings.add(Stop, "scalp", "broken: wait until it has healed", trade::EU_DYE_LABEL),
        None => findings.add(NotJudged, "scalp", "not stated: look, then enter `analysis.scalp`", trade::CONSULTATION),
    }
    let lightens = request.tasks.iter().any(|task| task.lightens);
    match (analysis.elasticity, lightens) {
        (Some(Elasticity::Poor), true) => {
            findings.add(Stop, "elasticity", "poor: do not lighten; treat and test again", trade::CONSULTATION)
        }
        (Some(Elasticity::Reduced), true) => findings.add(
            Warning,
            "elasticity",
            "reduced: lower the strength or the target, and test during the service",
            trade::CONSULTATION,
        ),
        (None, true) => {
            let text = "not stated: stretch a damp strand, then enter `analysis.elasticity`";
            findings.add(NotJudged, "elasticity", text, trade::CONSULTATION);
        }
        _ => {}
    }
}

fn skin_test(request: &Request, findings: &mut Findings) {
    let colour = has_oxidative_colour(request);
    let missing = if colour { Stop } else { Warning };
    let Some(test) = &request.file.analysis.skin_test else {
        let text = "none recorded: test with the products of this service first, then enter `analysis.skin_test`";
        return findings.add(missing, "skin test", text, trade::SKIN_TEST_US_CA);
    };
    match test.result {
        TestResult::Reaction => {
            return findings.add(Stop, "skin test", "reacted: do not go on; refer to a doctor", trade::EU_DYE_LABEL);
        }
        TestResult::Pending => {
            return findings.add(missing, "skin test", "not read yet: wait for it", trade::SKIN_TEST_US_CA);
        }
        TestResult::Clear => {}
    }
    let Some(age) = age_in_hours(test, request.start) else {
        let text = format!("applied {} is not before the start {}", test.applied, request.file.service.start);
        return findings.add(Stop, "skin test", text, COMMON_PRACTICE);
    };
    let salon = &request.file.salon;
    let source = salon.skin_test_source.as_deref().unwrap_or("your own rule, no source given");
    match salon.skin_test_wait_h {
        // Sources disagree (24 h, 48 h, some advise against it): the rule is the user's to state.
        None => findings.add(
            NotJudged,
            "skin test",
            format!(
                "clear, applied {:.0} h before; the waiting time is not judged: enter `salon.skin_test_wait_h` by the \
                 rule that binds you",
                age.0
            ),
            trade::SKIN_TEST_US_CA,
        ),
        Some(wait) if age.0 < wait => {
            let text = format!("applied {:.0} h before the start, your rule asks for {wait} h: move the start", age.0);
            findings.add(Stop, "skin test", text, source);
        }
        Some(wait) => {
            findings.add(Passed, "skin test", format!("clear, applied {:.0} h before (rule {wait} h)", age.0), source);
        }
    }
    if let Some(valid) = salon.skin_test_valid_days
        && age.1 > valid * 24.0
    {
        let text = format!("{:.0} days old, your rule allows {valid}: test again", age.1 / 24.0);
        findings.add(missing, "skin test age", text, source);
    }
}

fn strand_test(request: &Request, findings: &mut Findings) {
    let test = request.file.analysis.strand_test.as_ref();
    match test.map(|test| test.result) {
        Some(TestResult::Clear) if test.is_some_and(|test| age_in_hours(test, request.start).is_none()) => {
            let text = "its date is after the start: correct `analysis.strand_test.applied`";
            findings.add(Warning, "strand test", text, COMMON_PRACTICE);
        }
        Some(TestResult::Clear) => findings.add(Passed, "strand test", "done, hair sound", trade::CONSULTATION),
        Some(TestResult::Reaction) => {
            findings.add(Stop, "strand test", "the strand did not stand it: do not go on", trade::CONSULTATION);
        }
        Some(TestResult::Pending) | None => findings.add(
            Warning,
            "strand test",
            "none: neither time nor level is known before one; without it a lift forecast spans two levels either way",
            trade::CONSULTATION,
        ),
    }
}

/// Hours between a test and the start: at least, and at most. Nothing if the test comes after the start.
fn age_in_hours(test: &Test, start: Moment) -> Option<(f64, f64)> {
    let applied: Moment = test.applied.parse().ok()?;
    let hours = |from: jiff::civil::DateTime, to: jiff::civil::DateTime| to.duration_since(from).as_secs_f64() / 3600.0;
    let least = hours(applied.latest, start.earliest);
    let most = hours(applied.earliest, start.latest);
    (most >= 0.0).then_some((least.max(0.0), most))
}
