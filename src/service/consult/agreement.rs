use super::{AgreedPrice, Consent, DatedVisit, Decision, Go};
use crate::{
    finding::{Rule, Verdict},
    lift::OFTEN,
    service::{
        NOT_YET, Plan, decide, guest_words,
        shape::{HistoryFlag, Party, TestResult},
    },
    text::{count, list, number},
};
use schemars::JsonSchema;
use serde::Serialize;
use std::collections::BTreeSet;

/// What is agreed with the guest, in words that need no trade: sentences to read, and who signs.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Agreement {
    /// What is planned, zone by zone or section by section.
    pub planned: Vec<String>,
    /// How many visits, and when at the earliest.
    pub visits: Vec<String>,
    /// What may not come out as wished.
    pub not_promised: Vec<String>,
    /// What may go wrong.
    pub risks: Vec<String>,
    /// Rules of which a check says stop or warns: what the guest is told of each stands on the page.
    pub warned: Vec<Rule>,
    /// Rules that nobody can judge yet.
    pub open: Vec<Rule>,
    /// What has to be settled first; while there is any, nothing is signed. The guest's own agreement is the page.
    pub before: Vec<String>,
    /// What it costs, from-to; absent without prices.
    pub price: Option<AgreedPrice>,
    /// Whose agreement is needed; the guest's always.
    pub who: Vec<Consent>,
    /// Whether it may be signed: no check says stop, and nothing has to be settled first.
    pub may_be_signed: bool,
}

impl Agreement {
    pub(super) fn of(plan: &Plan, decision: &Decision, visits: &[DatedVisit], price: Option<AgreedPrice>) -> Self {
        let before = before(plan, decision);
        let rules = |verdicts: &[Verdict]| {
            let found: BTreeSet<Rule> =
                plan.findings.iter().filter(|one| verdicts.contains(&one.verdict)).map(|one| one.rule).collect();
            found.into_iter().collect()
        };
        Self {
            planned: planned(plan),
            visits: in_visits(plan, visits),
            not_promised: not_promised(plan),
            risks: plan.risks(),
            warned: rules(&[Verdict::Stop, Verdict::Warning]),
            open: rules(&[Verdict::NotJudged]),
            may_be_signed: before.is_empty(),
            before,
            price,
            who: decision.consents.clone(),
        }
    }
}

fn planned(plan: &Plan) -> Vec<String> {
    let wishes = plan.consulted.iter().flat_map(|consulted| &consulted.wishes);
    let mut said: Vec<String> = wishes
        .map(|wish| {
            let tone = wish.tone.as_deref().map(|tone| format!(", {tone}")).unwrap_or_default();
            let dislikes = wish
                .dislikes
                .as_deref()
                .map(|words| format!("; what you do not like now: {words}"))
                .unwrap_or_default();
            format!(
                "{}: you wish {}{tone}, {} levels lighter or darker is still right{dislikes}",
                wish.zone,
                wish.level,
                number(wish.tolerance_levels.levels(), 2)
            )
        })
        .collect();
    said.extend(plan.told_first());
    said.extend(plan.colour.iter().map(|section| {
        let tone = section.target_tone.as_deref().map(|tone| format!(", {tone}")).unwrap_or_default();
        format!("{}: we aim at {}{tone}", section.section, section.target_level)
    }));
    said
}

/// The sections that may not reach their target in one visit: by the low end of the estimate.
fn unsure(plan: &Plan) -> Vec<String> {
    let unsure = plan.lift.iter().filter(|lift| lift.chance.low() < OFTEN);
    unsure.map(|lift| lift.section.clone()).collect()
}

fn in_visits(plan: &Plan, visits: &[DatedVisit]) -> Vec<String> {
    let [_, ..] = visits else { return Vec::new() };
    if visits.len() == 1 {
        let said = if unsure(plan).is_empty() {
            "One visit should do, if your hair goes along."
        } else {
            "One visit may do; that is not sure."
        };
        return vec![said.to_owned()];
    }
    let whole = count(visits.len(), "visit", "visits");
    let all = visits.last().is_some_and(|last| last.reached == last.sections);
    let mut said = vec![if all {
        format!("It takes about {whole}, if your hair goes along; before each we test how it stretches.")
    } else {
        format!("Even {whole} may not be enough; before each we test how your hair stretches, and plan anew.")
    }];
    said.extend(
        visits.iter().skip(1).map(|visit| {
            format!("Visit {}: not before {}, usually about {}.", visit.number, visit.earliest, visit.usual)
        }),
    );
    said
}

fn not_promised(plan: &Plan) -> Vec<String> {
    let mut said = Vec::new();
    for wish in plan.consulted.iter().flat_map(|consulted| &consulted.wishes) {
        if let Some(why) = &wish.why_not {
            said.push(format!("{}: {} is wished; {why}", wish.zone, wish.level));
        } else if !wish.is_sure {
            let reach = "we aim there, and cannot say that one visit reaches it";
            said.push(format!("{}: {} is wished; {reach}", wish.zone, wish.level));
        }
    }
    let unsure = unsure(plan);
    if !unsure.is_empty() {
        said.push(format!("perhaps not in one visit: {}", list(&unsure, "and")));
    }
    if plan.consulted.iter().any(|one| !one.gaps.is_empty()) {
        said.push("how hair takes it whose past nobody knows: there we test a strand first".to_owned());
    }
    said
}

/// What keeps a page from being signed, whichever page it is; nothing where it may be signed.
pub(crate) fn before_signing(plan: &Plan) -> Vec<String> {
    before(plan, &decide(plan))
}

/// What keeps the page from being signed, in the guest's words, without the fields and products of the findings.
fn before(plan: &Plan, decision: &Decision) -> Vec<String> {
    let mut said = Vec::new();
    if decision.go == Go::Stop {
        said.push(NOT_YET.to_owned());
    }
    let asked = |consent: &&Consent| consent.agreed_on.is_none() && consent.who != Party::Guest;
    for consent in decision.consents.iter().filter(asked) {
        let to: Vec<String> = guest_words::names(consent.to.iter().copied()).into_iter().map(str::to_owned).collect();
        let anew = if consent.lapsed.is_empty() { "" } else { " again, for something has changed or it was long ago" };
        said.push(format!("The {} has to agree{anew} ({}).", consent.who, list(&to, "and")));
    }
    // After a reaction another test settles nothing.
    let reacted = plan.hair.skin_test.is_some_and(|test| test.result == TestResult::Reaction);
    let untested = plan.findings.iter().any(|one| {
        matches!(one.rule, Rule::SkinTest | Rule::SkinTestAge)
            && matches!(one.verdict, Verdict::Stop | Verdict::Warning)
    });
    if untested && !reacted {
        said.push("A skin test is made and read first.".to_owned());
    }
    if plan.hair.history.is_none() {
        said.push("Tell us all that was done to your hair before; what nobody knows we test on a strand.".to_owned());
    }
    if plan.hair.has(HistoryFlag::UnderSixteen) {
        said.push("For anyone under sixteen the labels and a guardian decide.".to_owned());
    }
    said
}
