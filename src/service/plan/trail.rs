//! The way from what was stated to what the plan says: each result with its inputs, its formula and its sources.

use super::{Bowl, Mix, MoneyPlan, Plan, SectionLift};
use crate::{
    quantity::{MassFraction, Quantity},
    source::{
        Basis, Interval,
        citations::{lift, money},
    },
};
use serde::Serialize;

/// A result of a plan and how it came about. Numbers are decimal text, in full.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct TracedResult {
    /// What it is.
    pub what: String,
    /// Its value, for an estimate the best.
    pub value: String,
    /// Its bounds, where it is an estimate.
    pub bounds: Option<[String; 2]>,
    /// Its unit.
    pub unit: String,
    /// How it is found.
    pub formula: &'static str,
    /// From what.
    pub inputs: Vec<TracedInput>,
    /// What it rests on.
    pub basis: Basis,
    /// The citations behind it, by their ids in the register; none where it is arithmetic.
    pub sources: Vec<&'static str>,
    /// The version of foilwork that found it.
    pub foilwork: &'static str,
}

/// One number that goes into a result.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct TracedInput {
    /// What it is.
    pub what: String,
    /// Its value.
    pub value: String,
    /// Its bounds, where it is an estimate.
    pub bounds: Option<[String; 2]>,
    /// Its unit.
    pub unit: String,
}

impl Plan {
    /// How each main result came about: strength on the hair bowl by bowl, level of each lightened section, time in the
    /// chair, cost and price.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{reader::Format, service::plan_text};
    ///
    /// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
    /// let first = &plan.trail()[0];
    /// assert_eq!(first.what, "nape: strength on the hair, bowl 1");
    /// assert!(first.inputs.iter().any(|input| input.what == "developer 6, weighed" && input.value == "30"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn trail(&self) -> Vec<TracedResult> {
        let bowls =
            self.mixes.iter().flat_map(|mix| (1..).zip(&mix.bowls).map(move |(place, bowl)| on_hair(mix, bowl, place)));
        let lift = self.lift.iter().map(level);
        let money = self.money.iter().flat_map(amounts);
        bowls.chain(lift).chain([chair(self)]).chain(money).collect()
    }
}

fn found(what: String, value: &Interval<f64>, unit: &str, formula: &'static str, basis: Basis) -> TracedResult {
    let (value, bounds) = told(value);
    TracedResult {
        what,
        value,
        bounds,
        unit: unit.to_owned(),
        formula,
        inputs: Vec::new(),
        basis,
        sources: Vec::new(),
        foilwork: env!("CARGO_PKG_VERSION"),
    }
}

impl TracedResult {
    fn made_of(self, inputs: impl IntoIterator<Item = TracedInput>) -> Self {
        Self { inputs: inputs.into_iter().collect(), ..self }
    }

    fn resting_on(self, sources: &[&'static str]) -> Self {
        Self { sources: sources.to_vec(), ..self }
    }
}

fn input<Q: Quantity>(what: impl Into<String>, value: Interval<Q>) -> TracedInput {
    let (value, bounds) = told(&value.map(Q::in_unit));
    TracedInput { what: what.into(), value, bounds, unit: Q::UNIT.to_owned() }
}

fn told(value: &Interval<f64>) -> (String, Option<[String; 2]>) {
    let bounds = (!value.is_exact()).then(|| [value.low().to_string(), value.high().to_string()]);
    (value.best().to_string(), bounds)
}

fn exact(what: impl Into<String>, value: impl ToString, unit: &str) -> TracedInput {
    TracedInput { what: what.into(), value: value.to_string(), bounds: None, unit: unit.to_owned() }
}

/// Conservation of mass and of peroxide.
fn on_hair(mix: &Mix, bowl: &Bowl, place: usize) -> TracedResult {
    let formula = "sum of grams times % w/w, over the sum of grams, as weighed";
    let value = bowl.on_hair.map(MassFraction::ww_percent);
    let parts = bowl.parts.iter().flat_map(|part| {
        let weighed = input(format!("{}, weighed", part.product), Interval::exact(part.weigh));
        [weighed, input(format!("{}, peroxide", part.product), part.peroxide)]
    });
    let what = format!("{}: strength on the hair, bowl {place}", mix.name);
    found(what, &value, "% w/w", formula, mix.strength_basis).made_of(parts)
}

fn level(section: &SectionLift) -> TracedResult {
    let formula = "level after the time by the lift law with the levers listed; median and 80 of 100 cases";
    let value = section.first_strand.map(crate::colour::Level::number);
    let start = section.from_level.map(crate::colour::Level::number);
    let (best, bounds) = told(&start);
    let mut inputs = vec![
        TracedInput { what: "level at the start".to_owned(), value: best, bounds, unit: "level".to_owned() },
        input("strength on the hair", section.on_hair),
        input("temperature of the mix", Interval::exact(section.temperature)),
        input("time of the first strand", Interval::exact(section.limit)),
        exact("strand readings", section.readings, "readings"),
    ];
    inputs.extend(section.levers.iter().map(|lever| {
        let (value, bounds) = told(&lever.times);
        TracedInput { what: format!("lever: {}", lever.lever), value, bounds, unit: "times".to_owned() }
    }));
    let basis = if section.readings > 0 { Basis::Measured } else { Basis::Assumed };
    found(format!("{}: level of the first strand at the rinse", section.section), &value, "level", formula, basis)
        .made_of(inputs)
        .resting_on(&[lift::LIGHTENING_SERIES.id])
}

fn chair(plan: &Plan) -> TracedResult {
    let chair = &plan.chair;
    let value = Interval::exact(chair.total.min());
    let other = chair.other_work.map(|other| input("other work", Interval::exact(other)));
    let parts = [
        input("first brush to last rinse", Interval::exact(chair.sections)),
        input("toners and root shadow after it", Interval::exact(chair.after_rinse)),
    ];
    found("time in the chair".to_owned(), &value, "min", "sum", Basis::Derived).made_of(parts.into_iter().chain(other))
}

fn amounts(plan: &MoneyPlan) -> Vec<TracedResult> {
    let currency = plan.cost.total().currency().code();
    let amount = |what: &str, value: crate::money::Money, formula, basis| TracedResult {
        value: value.decimal().to_string(),
        ..found(what.to_owned(), &Interval::exact(0.0), currency, formula, basis)
    };
    let lines = plan.cost.lines().iter().map(|line| exact(line.what.clone(), line.amount.decimal(), currency));
    let basis = plan.cost.basis().unwrap_or(Basis::Stated);
    let mut results = vec![
        amount("cost", plan.cost.total(), "sum of the lines, each rounded once", basis)
            .made_of(lines)
            .resting_on(&[money::COSTING_A_SERVICE.id]),
    ];
    results.extend(plan.price.as_ref().map(|set| {
        amount("net price", set.price, "cost / (1 - margin), which is cost x (1 + mark-up)", Basis::Derived)
            .made_of([
                exact("cost", set.cost.decimal(), currency),
                exact("margin", set.margin.percent().round_dp(6).normalize(), "% of the price"),
                exact("mark-up", set.markup.percent().round_dp(6).normalize(), "% of the cost"),
            ])
            .resting_on(&[money::CONTEMPORARY_MATHEMATICS.id])
    }));
    results.extend(plan.taxed.as_ref().map(|taxed| {
        amount("gross price", taxed.gross, "net + tax", Basis::Derived)
            .made_of([exact("net", taxed.net.decimal(), currency), exact("tax", taxed.tax.decimal(), currency)])
            .resting_on(&[money::CALCULATING_VAT.id])
    }));
    results
}
