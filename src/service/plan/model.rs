use super::{
    Booking, Caution, ChairTime, ChosenStrength, Contrast, DayPlan, FirstStep, Hair, HeadPlan, Mix, MoneyPlan,
    NotComputed, OrderBasis, SaidBefore, SectionColour, SectionLift, Start, StatedNotUsed, Step, StockPlan,
    TogetherPlan,
};
use crate::{
    finding::{Finding, Verdict},
    limits::Jurisdiction,
    quantity::Mass,
    service::request::DefaultUsed,
    shop::Habits,
};
use schemars::JsonSchema;
use serde::Serialize;

/// A service plan: what to weigh, in which order, what was checked, what it costs.
///
/// Everything in it is typed; as plain data every number stands in a field named after its unit and every estimate is
/// `{low, best, high}`. [`plan_schema`](crate::service::plan_schema) describes that form.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Plan {
    /// Version of the form of this data.
    pub format: u32,
    /// Version of foilwork that made it.
    pub foilwork: &'static str,
    /// Whether any finding says stop: then do not begin.
    pub blocked: bool,
    /// What the service is called.
    pub title: String,
    /// When it starts, as the file says.
    pub start: Start,
    /// A code for the guest.
    pub guest: Option<String>,
    /// Who works.
    pub colourist: Option<String>,
    /// Whose law the limits are from.
    pub jurisdiction: Option<Jurisdiction>,
    /// What the scale counts in; not part of the plain data, as the service file has it.
    #[serde(skip)]
    pub scale_division: Mass,
    /// How the shop writes; it changes sheets and cards, no number.
    pub habits: Habits,
    /// Notes of the file.
    pub notes: Option<String>,
    /// The hair as stated.
    pub hair: Hair,
    /// Checks, the worst first.
    pub findings: Vec<Finding>,
    /// What was said before the service, held against the plan; absent where the file has no consultation.
    pub consulted: Option<SaidBefore>,
    /// Whose order the running order is.
    pub order_basis: OrderBasis,
    /// Steps before the colour, planned or asked for; the planned ones come before the running order.
    pub first_steps: Vec<FirstStep>,
    /// The running order.
    pub order: Vec<Step>,
    /// How long the chair is taken.
    pub chair: ChairTime,
    /// Who does what when, in the order of the sheet and in the best order; absent for more than 40 sections.
    pub day: Option<DayPlan>,
    /// What each section needs of colour.
    pub colour: Vec<SectionColour>,
    /// How far sections that lie beside each other are apart.
    pub contrasts: Vec<Contrast>,
    /// The strengths that the plan chose, where sections left theirs out.
    pub strengths: Vec<ChosenStrength>,
    /// What makes those sections finish together, or why they do not.
    pub together: Vec<TogetherPlan>,
    /// How light each lightened section gets, how fast, how sure.
    pub lift: Vec<SectionLift>,
    /// What to mix, in the running order.
    pub mixes: Vec<Mix>,
    /// What is taken from the shelf, against what is in hand.
    pub stock: StockPlan,
    /// Hair and foils, section by section, and how the head will read.
    pub head: HeadPlan,
    /// What to book it as, and what the price list says for it.
    pub booking: Booking,
    /// What it costs and what to charge; absent without prices.
    pub money: Option<MoneyPlan>,
    /// Cautions for what is in the bowls.
    pub cautions: Vec<Caution>,
    /// Defaults that were used because the file did not say.
    pub defaults: Vec<DefaultUsed>,
    /// What a reader might look for and will not find, with the reason.
    pub not_computed: Vec<NotComputed>,
    /// Facts of the file that no check or computation reads.
    pub stated_not_used: Vec<StatedNotUsed>,
}

impl Plan {
    /// The version of the form of the data; it changes when a reader of the former one would misread it.
    pub const FORMAT: u32 = 1;

    /// What stands above everything else where a finding says stop.
    pub(crate) fn banner(&self) -> Option<String> {
        let stops = self.findings.iter().filter(|finding| finding.verdict == Verdict::Stop).count();
        let text = if stops == 1 { "1 finding says".to_owned() } else { format!("{stops} findings say") };
        self.blocked.then(|| format!("*** DO NOT BEGIN: {text} STOP. Resolve it first. ***"))
    }
}
