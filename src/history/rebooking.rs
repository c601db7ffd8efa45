use crate::{
    hair::Weeks,
    service::{Plan, Start, later},
    source::{Basis, Interval},
    text::range,
};
use schemars::JsonSchema;
use serde::Serialize;

/// When to come back, by the section whose regrowth shows first.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Rebooking {
    /// The section.
    pub section: String,
    /// Weeks until its regrowth shows.
    #[serde(rename = "after_weeks")]
    pub after: Interval<Weeks>,
    /// The first day on which it may show.
    pub earliest: Start,
    /// The day on which it is expected to show.
    pub usual: Start,
    /// The last day.
    pub latest: Start,
    /// Why, in words.
    pub why: String,
    /// What the estimate rests on.
    pub basis: Basis,
}

/// When regrowth will show, from the start line of each section and the growth of this hair: the section that shows first
/// decides. None for a plan without a section.
///
/// # Example
///
/// ```
/// use foilwork::{history::rebooking, reader::Format, service::plan_text};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let back = rebooking(&plan).expect("three sections in foils");
/// assert_eq!(back.section, "crown");
/// assert!(back.earliest.earliest() > plan.start.earliest());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Growth is published ([`growth`](crate::hair::growth)); how much regrowth shows above each kind of start is assumed
/// ([`line_shows_after`](crate::head::line_shows_after)).
#[must_use]
pub fn rebooking(plan: &Plan) -> Option<Rebooking> {
    let weeks = |one: &crate::service::SectionPlan| one.line_shows_after.best().weeks();
    let first = plan.head.sections.iter().min_by(|a, b| weeks(a).total_cmp(&weeks(b)))?;
    let after = first.line_shows_after;
    let start = plan.start.earliest().date();
    let [earliest, usual, latest] = after.to_array().map(|weeks| Start::Day(later(start, weeks)));
    let why = format!(
        "{}: the start ({}) lies at {} cm; hair grows {} cm in a month",
        first.section,
        first.softness,
        range(&first.start, 1),
        range(&plan.head.growth, 2)
    );
    Some(Rebooking { section: first.section.clone(), after, earliest, usual, latest, why, basis: Basis::Assumed })
}
