//! A result and its inputs, as they are told.

use crate::{
    quantity::Quantity,
    source::{Basis, Interval},
};
use serde::Serialize;
use std::borrow::Cow;

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
    pub formula: Cow<'static, str>,
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

pub(super) fn found(
    what: String,
    value: &Interval<f64>,
    unit: &str,
    formula: impl Into<Cow<'static, str>>,
    basis: Basis,
) -> TracedResult {
    let (value, bounds) = told(value);
    TracedResult {
        what,
        value,
        bounds,
        unit: unit.to_owned(),
        formula: formula.into(),
        inputs: Vec::new(),
        basis,
        sources: Vec::new(),
        foilwork: env!("CARGO_PKG_VERSION"),
    }
}

impl TracedResult {
    pub(super) fn made_of(self, inputs: impl IntoIterator<Item = TracedInput>) -> Self {
        Self { inputs: inputs.into_iter().collect(), ..self }
    }

    pub(super) fn resting_on(self, sources: &[&'static str]) -> Self {
        Self { sources: sources.to_vec(), ..self }
    }
}

pub(super) fn input<Q: Quantity>(what: impl Into<String>, value: Interval<Q>) -> TracedInput {
    let (value, bounds) = told(&value.map(Q::in_unit));
    TracedInput { what: what.into(), value, bounds, unit: Q::UNIT.to_owned() }
}

pub(super) fn told(value: &Interval<f64>) -> (String, Option<[String; 2]>) {
    let bounds = (!value.is_exact()).then(|| [value.low().to_string(), value.high().to_string()]);
    (value.best().to_string(), bounds)
}

pub(super) fn exact(what: impl Into<String>, value: impl ToString, unit: &str) -> TracedInput {
    TracedInput { what: what.into(), value: value.to_string(), bounds: None, unit: unit.to_owned() }
}
