//! How what many records come to comes about.

use super::{
    GroupBy, KeptRecord, Learned, Rebooking, Summary, Takings,
    lessons::{Figures, lessons_of},
    once::counted_once,
    summary::{grouped, of_both, summary},
};
use crate::{
    hair::{GrowthRate, Weeks, growth},
    money::{amount, of},
    quantity::Quantity,
    source::{Basis, Interval, TracedInput, TracedResult},
};

const WASTE: &str = "left over / weighed x 100";
const PROFIT: &str = "net prices - costs";
const MARGIN: &str = "profit / net prices x 100";
const GEOMETRIC: &str = "geometric mean; bounds by Student's distribution of the logarithms, 80 of 100 cases";
const ARITHMETIC: &str = "mean; bounds by Student's distribution, 80 of 100 cases";
const ALONE: &str = "the only figure";
const REGROWTH: &str = "regrowth that shows above such a start / growth, by the weeks of a month";

/// More figures than this are not listed one by one: how many there are is.
const LISTED: usize = 100;

/// How waste, profit and margin of each group of records come about.
///
/// # Example
///
/// ```
/// use foilwork::history::{GroupBy, read_records, trace_summaries};
///
/// let line = "{\"format\":1,\"on\":\"2026-11-25\",\"title\":\"gloss\",\"currency\":\"EUR\",\"cost\":\"40.00\",\"price\":\"60.00\"}\n";
/// let trail = trace_summaries(&read_records(line).records, GroupBy::Service);
/// assert_eq!((trail[0].what.as_str(), trail[0].worked.as_deref()), ("gloss: profit", Some("60.00 - 40.00")));
/// ```
#[must_use]
pub fn trace_summaries(records: &[KeptRecord], by: GroupBy) -> Vec<TracedResult> {
    let once = counted_once(records);
    let groups = grouped(&once.records, by);
    groups.iter().flat_map(|(name, records)| of_group(&summary(name, records), records)).collect()
}

fn of_group(found: &Summary, records: &[&KeptRecord]) -> Vec<TracedResult> {
    let name = if found.of.is_empty() { "not stated" } else { &found.of };
    let (weighed, left) = of_both(records);
    let waste = found.waste_percent.map(|waste| {
        let grams = |what: &str, mass_g: f64| TracedInput::new(what, Interval::exact(mass_g), "g");
        let inputs = [grams("left over", left), grams("weighed", weighed)].map(|one| one.resting(Basis::Measured));
        TracedResult::new(
            format!("{name}: waste"),
            Interval::exact(waste),
            "% of what was weighed",
            WASTE,
            Basis::Measured,
        )
        .made_of(inputs)
    });
    waste.into_iter().chain(found.money.iter().flat_map(|one| takings(name, one))).collect()
}

fn takings(name: &str, one: &Takings) -> Vec<TracedResult> {
    let (prices, costs) = (of("net prices", one.price), of("costs", one.cost));
    let services = TracedInput::exact("services", one.services, "services");
    let profit = amount(&format!("{name}: profit"), one.profit, PROFIT, Basis::Stated).made_of([
        prices.clone(),
        costs,
        services,
    ]);
    let margin = one.margin_percent.map(|margin| {
        TracedResult::exact(format!("{name}: margin"), margin, "% of the price", MARGIN, Basis::Stated)
            .made_of([of("profit", one.profit), prices])
    });
    [profit].into_iter().chain(margin).collect()
}

/// How the figures that records teach come about.
///
/// # Example
///
/// ```
/// use foilwork::history::{read_records, trace_lessons};
///
/// let line = |min: u32| format!(
///     "{{\"format\":1,\"on\":\"2026-11-25\",\"title\":\"foils\",\"colourist\":\"W.\",\"section\":[{{\"name\":\"nape\",\"foils\":10,\
///      \"apply_min\":{min}}}]}}\n"
/// );
/// let trail = trace_lessons(&read_records(&(line(9) + &line(16))).records);
/// assert_eq!(trail[0].worked.as_deref(), Some("(0.9 x 1.6) ^ (1 / 2)"));
/// ```
#[must_use]
pub fn trace_lessons(records: &[KeptRecord]) -> Vec<TracedResult> {
    let once = counted_once(records);
    let figures = Figures::of(&once.records);
    let found = lessons_of(&once, &figures);
    let mut trail = Vec::new();
    for (one, factors) in found.demand.iter().zip(figures.demand.values()) {
        let whose = one.technique.map_or_else(|| "all sections".to_owned(), |technique| technique.to_string());
        trail.push(learned(format!("grams used over grams expected, {whose}"), "times", &one.factor, factors, true));
    }
    for (one, minutes) in found.foils.iter().zip(figures.foils.values()) {
        let who = one.colourist.as_deref().unwrap_or("nobody named");
        trail.push(learned(format!("minutes for a foil, {who}"), "min", &one.min_per_foil, minutes, true));
    }
    let weeks = found.weeks_between_visits.as_ref();
    trail.extend(weeks.map(|one| learned("weeks between visits".to_owned(), "weeks", one, &figures.gaps, true)));
    let off = found.level_off.as_ref();
    trail.extend(
        off.map(|one| learned("level that came out less level wanted".to_owned(), "levels", one, &figures.off, false)),
    );
    trail
}

fn learned(what: String, unit: &str, of: &Learned, figures: &[f64], geometric: bool) -> TracedResult {
    // A logarithm is of what is above zero.
    let used: Vec<f64> = figures.iter().copied().filter(|figure| !geometric || *figure > 0.0).collect();
    let value = match (of.mean_low, of.mean_high) {
        (Some(low), Some(high)) => Interval::ordered(low, of.mean, high),
        _ => Interval::exact(of.mean),
    };
    let formula = match (of.mean_low, geometric) {
        (None, _) => ALONE,
        (Some(_), true) => GEOMETRIC,
        (Some(_), false) => ARITHMETIC,
    };
    let found = TracedResult::new(what, value, unit, formula, Basis::Measured);
    let listed = if used.len() > LISTED { &[] } else { used.as_slice() };
    let told: Vec<String> = listed.iter().map(ToString::to_string).collect();
    let found = match (told.as_slice(), geometric) {
        ([], _) => found,
        ([alone], _) => found.working(alone.clone()),
        (_, true) => found.working(format!("({}) ^ (1 / {})", told.join(" x "), told.len())),
        (_, false) => {
            let told: Vec<String> = told.iter().map(|one| format!("({one})")).collect();
            found.working(format!("({}) / {}", told.join(" + "), told.len()))
        }
    };
    let count = TracedInput::exact("figures", of.count, "figures").resting(Basis::Measured);
    let each = (1..).zip(listed).map(|(place, figure)| {
        TracedInput::new(format!("figure {place}"), Interval::exact(*figure), unit).resting(Basis::Measured)
    });
    found.made_of([count].into_iter().chain(each))
}

impl Rebooking {
    /// How the weeks until the regrowth shows come about.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{history::rebooking, reader::Format, service::plan_text};
    ///
    /// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
    /// let found = rebooking(&plan).expect("three sections in foils").trail(&plan);
    /// assert_eq!((found.what.as_str(), found.unit.as_str()), ("crown: weeks until regrowth shows", "weeks"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn trail(&self, plan: &crate::service::Plan) -> TracedResult {
        let section = plan.head.sections.iter().find(|one| one.section == self.section);
        let start = section.map(|one| TracedInput::exact("start", one.softness, "word"));
        let rate = TracedInput::new("growth", plan.head.growth.map(Quantity::in_unit), GrowthRate::UNIT);
        let what = format!("{}: weeks until regrowth shows", self.section);
        TracedResult::new(what, self.after.map(Weeks::weeks), "weeks", REGROWTH, self.basis)
            .made_of(start.into_iter().chain([rate]))
            .resting_on(&growth(None).citation.map(|one| one.id).into_iter().collect::<Vec<_>>())
    }
}
