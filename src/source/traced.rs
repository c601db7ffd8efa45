use super::{Basis, Interval};
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

impl TracedResult {
    /// A value that may have bounds, as a plain number in its unit.
    pub(crate) fn new(
        what: impl Into<String>,
        value: Interval<f64>,
        unit: &str,
        formula: impl Into<Cow<'static, str>>,
        basis: Basis,
    ) -> Self {
        let TracedInput { what, value, bounds, unit } = TracedInput::new(what, value, unit);
        let (formula, foilwork) = (formula.into(), env!("CARGO_PKG_VERSION"));
        Self { what, value, bounds, unit, formula, inputs: Vec::new(), basis, sources: Vec::new(), foilwork }
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

    pub(crate) fn made_of(self, inputs: impl IntoIterator<Item = TracedInput>) -> Self {
        Self { inputs: inputs.into_iter().collect(), ..self }
    }

    pub(crate) fn resting_on(self, sources: &[&'static str]) -> Self {
        Self { sources: sources.to_vec(), ..self }
    }
}

impl TracedInput {
    /// A value that may have bounds, as a plain number in its unit.
    pub(crate) fn new(what: impl Into<String>, value: Interval<f64>, unit: &str) -> Self {
        let bounds = (!value.is_exact()).then(|| [value.low().to_string(), value.high().to_string()]);
        Self { what: what.into(), value: value.best().to_string(), bounds, unit: unit.to_owned() }
    }

    /// A value that is a decimal, a count or a word.
    pub(crate) fn exact(what: impl Into<String>, value: impl ToString, unit: &str) -> Self {
        Self { what: what.into(), value: value.to_string(), bounds: None, unit: unit.to_owned() }
    }
}
