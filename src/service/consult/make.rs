use super::{
    Agreement, Alternative, DatedVisit, Decision, TestEffect, alternatives::alternatives, decision::decide,
    price::agreed_price, series::dated_visits, what_if::what_tests_change,
};
use crate::{
    reader::{InField, Problems},
    service::{Evidence, Plan, SaidBefore, ServiceFile, Start, plan::plan_without_day, plan_with},
    shop::Habits,
};
use schemars::JsonSchema;
use serde::Serialize;

/// A consultation come to its decision: what was said, whether to go on, what each test changes, what else there was.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ConsultationPlan {
    /// Version of the form of this data.
    pub format: u32,
    /// What the service is called.
    pub title: String,
    /// A code for the guest.
    pub guest: Option<String>,
    /// Who works.
    pub colourist: Option<String>,
    /// When the service starts.
    pub start: Start,
    /// How the shop writes; it changes sheets, no number.
    pub habits: Habits,
    /// What was said; absent where the file has no consultation.
    pub said: Option<SaidBefore>,
    /// Whether to go on, and who has to agree.
    pub decision: Decision,
    /// What every result of every test changes.
    pub tests: Vec<TestEffect>,
    /// The visits on the calendar; empty where nothing is lightened.
    pub visits: Vec<DatedVisit>,
    /// What was considered, taken or not, each with its reason.
    pub alternatives: Vec<Alternative>,
    /// Developers that were not tried, because the plans for them would be too many.
    pub not_tried: usize,
    /// What is agreed with the guest.
    pub agreement: Agreement,
}

/// From a service file to the decision: plans it, folds what the checks found, and plans it anew for each result of a test
/// and for each other developer.
///
/// # Errors
///
/// [`Problems`], as for [`plan_with`].
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::{Evidence, Go, TestKind, consult, parse}};
///
/// let file = parse(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let found = consult(&file, &Evidence::default())?;
/// let poor = found.tests.iter().find(|one| one.test == TestKind::Elasticity && one.result.as_deref() == Some("poor"));
/// assert_eq!(poor.map(|one| one.go), Some(Go::Stop));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn consult(file: &ServiceFile, evidence: &Evidence) -> Result<ConsultationPlan, Problems> {
    let plan = plan_with(file, evidence)?;
    consultation(file, evidence, &plan)
}

fn consultation(file: &ServiceFile, evidence: &Evidence, plan: &Plan) -> Result<ConsultationPlan, Problems> {
    let decision = decide(plan);
    // Other plans are made without a day, on the clock of the sheet: they are held against this one made so too.
    let alike = plan_without_day(file, evidence)?;
    let visits = dated_visits(plan);
    let (alternatives, not_tried) = alternatives(file, evidence, (plan, &alike), &decision)?;
    let price = agreed_price(plan, visits.len()).in_field("shop.terms")?;
    Ok(ConsultationPlan {
        format: Plan::FORMAT,
        title: plan.title.clone(),
        guest: plan.guest.clone(),
        colourist: plan.colourist.clone(),
        start: plan.start,
        habits: plan.habits,
        tests: what_tests_change(file, evidence, &alike, decision.go)?,
        agreement: Agreement::of(plan, &decision, &visits, price),
        said: plan.consulted.clone(),
        decision,
        visits,
        alternatives,
        not_tried,
    })
}
