use super::{Basis, Interval, TracedInput, worked::worked};
use serde::Serialize;
use std::borrow::Cow;

/// A result and how it came about. Numbers are decimal text, in full.
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
    pub formula: Cow<'static, str>,
    /// The same with the numbers put in; none where it is no arithmetic, as of a model.
    pub worked: Option<String>,
    /// From what.
    pub inputs: Vec<TracedInput>,
    /// What it rests on.
    pub basis: Basis,
    /// The citations behind it, by their ids in the register; none where it is arithmetic or no source
    /// is known, which [`basis`](Self::basis) tells apart.
    pub sources: Vec<&'static str>,
    /// The version of foilwork that found it.
    pub foilwork: &'static str,
}

impl TracedResult {
    /// A value that may have bounds, as a plain number in its unit.
    pub(crate) fn new(
        what: impl Into<String>,
        value: Interval<f64>,
        unit: &str,
        formula: impl Into<Cow<'static, str>>,
        basis: Basis,
    ) -> Self {
        let TracedInput { what, value, bounds, unit, .. } = TracedInput::new(what, value, unit);
        let (formula, foilwork) = (formula.into(), env!("CARGO_PKG_VERSION"));
        let (worked, inputs, sources) = (None, Vec::new(), Vec::new());
        Self { what, value, bounds, unit, formula, worked, inputs, basis, sources, foilwork }
    }

    /// A value that is a decimal, a count or a word.
    pub(crate) fn exact(
        what: impl Into<String>,
        value: impl ToString,
        unit: &str,
        formula: impl Into<Cow<'static, str>>,
        basis: Basis,
    ) -> Self {
        Self { value: value.to_string(), ..Self::new(what, Interval::exact(0.0), unit, formula, basis) }
    }

    /// From these inputs, whose numbers are put into the formula.
    pub(crate) fn made_of(self, inputs: impl IntoIterator<Item = TracedInput>) -> Self {
        let inputs: Vec<TracedInput> = inputs.into_iter().collect();
        Self { worked: self.worked.or_else(|| worked(&self.formula, &inputs)), inputs, ..self }
    }

    /// The formula with the numbers put in, where its words alone do not tell how.
    pub(crate) fn working(self, worked: impl Into<String>) -> Self {
        Self { worked: Some(worked.into()), ..self }
    }

    pub(crate) fn resting_on(self, sources: &[&'static str]) -> Self {
        Self { sources: sources.to_vec(), ..self }
    }
}
