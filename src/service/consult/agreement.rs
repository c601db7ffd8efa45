use super::{AgreedPrice, Consent, DatedVisit, Decision, Go};
use crate::{
    service::{NOT_YET, Plan, shape::HistoryFlag},
    text::{count, list, number},
};
use schemars::JsonSchema;
use serde::Serialize;

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
    /// What has to be settled before we begin; while there is any, nothing is signed.
    pub before: Vec<String>,
    /// What it costs, from-to; absent without prices.
    pub price: Option<AgreedPrice>,
    /// Whose agreement is needed; the guest's always.
    pub who: Vec<Consent>,
    /// Whether it may be signed: no check says stop.
    pub may_be_signed: bool,
}

impl Agreement {
    pub(super) fn of(plan: &Plan, decision: &Decision, visits: &[DatedVisit], price: Option<AgreedPrice>) -> Self {
        Self {
            planned: planned(plan),
            visits: in_visits(visits),
            not_promised: not_promised(plan),
            risks: plan.risks(),
            before: before(plan, decision),
            price,
            who: decision.consents.clone(),
            may_be_signed: decision.go != Go::Stop,
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
    said.extend(plan.colour.iter().map(|section| {
        let tone = section.target_tone.as_deref().map(|tone| format!(", {tone}")).unwrap_or_default();
        format!("{}: we aim at {}{tone}", section.section, section.target_level)
    }));
    said
}

fn in_visits(visits: &[DatedVisit]) -> Vec<String> {
    let [_, ..] = visits else { return Vec::new() };
    if visits.len() == 1 {
        return vec!["One visit should do, if your hair goes along.".to_owned()];
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
        }
    }
    let unsure: Vec<String> = plan
        .lift
        .iter()
        .filter(|lift| lift.chance.low() < crate::lift::OFTEN)
        .map(|lift| lift.section.clone())
        .collect();
    if !unsure.is_empty() {
        said.push(format!("perhaps not in one visit: {}", list(&unsure, "and")));
    }
    said
}

/// In the guest's words, without the fields and products of the findings.
fn before(plan: &Plan, decision: &Decision) -> Vec<String> {
    let mut said = Vec::new();
    if decision.go == Go::Stop {
        said.push(NOT_YET.to_owned());
    }
    for consent in decision.consents.iter().filter(|consent| consent.agreed_on.is_none()) {
        let to: Vec<String> = consent.to.iter().map(|rule| rule.words().to_owned()).collect();
        said.push(format!("The {} has to agree ({}).", consent.who, list(&to, "and")));
    }
    if plan.hair.skin_test.is_none() {
        said.push("A skin test is made and read first.".to_owned());
    }
    if plan.hair.history.is_none() || plan.consulted.iter().any(|one| !one.gaps.is_empty()) {
        said.push("Tell us all that was done to your hair before; what nobody knows we test on a strand.".to_owned());
    }
    if plan.hair.has(HistoryFlag::UnderSixteen) {
        said.push("For anyone under sixteen the labels and a guardian decide.".to_owned());
    }
    said
}
