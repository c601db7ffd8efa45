use crate::{
    hair::Weeks,
    lift::Visit,
    service::{Plan, Start},
    source::{Basis, Interval},
};
use jiff::{ToSpan, civil::Date};
use schemars::JsonSchema;
use serde::Serialize;

/// A visit of a staged series on the calendar.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct DatedVisit {
    /// Which visit, from one.
    pub number: usize,
    /// Weeks to leave since the visit before; absent for the first.
    #[serde(rename = "after_weeks")]
    pub after: Option<Interval<Weeks>>,
    /// What those weeks, and so the days, rest on.
    #[serde(rename = "after_basis")]
    pub after_basis: Option<Basis>,
    /// The first day on which it may be, each gap before it as short as it may be.
    pub earliest: Start,
    /// The day with the usual gaps.
    pub usual: Start,
    /// The day with the longest of the usual gaps.
    pub latest: Start,
    /// The sections that are still to be lightened on it.
    pub sections: Vec<String>,
    /// Those of them that reach their target with it in 80 of 100 cases.
    pub reached: Vec<String>,
}

/// The series on the calendar: each section stays in it until it reaches its target in 80 of 100 cases, or to the fourth
/// visit. The gap before a visit is the longest that one of its sections needs.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::{dated_visits, plan_text}};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let visits = dated_visits(&plan);
/// assert_eq!(visits[0].earliest.to_string(), "2026-11-25");
/// assert!(visits.iter().all(|visit| visit.earliest.earliest() <= visit.latest.earliest()));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn dated_visits(plan: &Plan) -> Vec<DatedVisit> {
    let start = plan.start.earliest().date();
    let most = plan.lift.iter().map(|lift| lift.visits.len()).max().unwrap_or_default();
    let mut days = [start; 3];
    let mut visits = Vec::with_capacity(most);
    for place in 0..most {
        let of = |visits: &[Visit]| visits.get(place).copied();
        let there: Vec<_> = plan.lift.iter().filter_map(|lift| Some((lift, of(&lift.visits)?))).collect();
        let after = there.iter().filter_map(|(_, visit)| visit.after).reduce(|a, b| a.combine(b, longer));
        if let Some(weeks) = after {
            for (day, weeks) in days.iter_mut().zip(weeks.to_array()) {
                *day = later(*day, weeks);
            }
        }
        let [earliest, usual, latest] = days.map(Start::Day);
        // The last of a section's visits either reaches the target or is the last that is looked ahead to.
        let reached = there.iter().filter(|(_, visit)| visit.chance.best() >= crate::lift::OFTEN);
        visits.push(DatedVisit {
            number: place + 1,
            after,
            after_basis: there.iter().filter_map(|(_, visit)| visit.after_basis).reduce(Basis::weaker),
            earliest,
            usual,
            latest,
            reached: reached.map(|(lift, _)| lift.section.clone()).collect(),
            sections: there.iter().map(|(lift, _)| lift.section.clone()).collect(),
        });
    }
    visits
}

fn longer(a: Weeks, b: Weeks) -> Weeks {
    if b > a { b } else { a }
}

/// So many weeks later, in whole days: a part of a day counts as the whole of it, so that no gap is cut short. A day that no
/// calendar has is the last that it has.
pub(crate) fn later(day: Date, weeks: Weeks) -> Date {
    let days = (weeks.weeks() * 7.0 - 1e-6).ceil().max(0.0);
    day.checked_add((days as i64).days()).unwrap_or(Date::MAX)
}
