use super::{Basis, Interval};
use serde::Serialize;

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
    /// What it rests on, where that is known apart from the result.
    pub basis: Option<Basis>,
}

impl TracedInput {
    /// A value that may have bounds, as a plain number in its unit.
    pub(crate) fn new(what: impl Into<String>, value: Interval<f64>, unit: &str) -> Self {
        let bounds = (!value.is_exact()).then(|| [value.low().to_string(), value.high().to_string()]);
        Self { what: what.into(), value: value.best().to_string(), bounds, unit: unit.to_owned(), basis: None }
    }

    /// A value that is a decimal, a count or a word.
    pub(crate) fn exact(what: impl Into<String>, value: impl ToString, unit: &str) -> Self {
        Self { what: what.into(), value: value.to_string(), bounds: None, unit: unit.to_owned(), basis: None }
    }

    /// What this number rests on.
    pub(crate) fn resting(self, basis: Basis) -> Self {
        Self { basis: Some(basis), ..self }
    }
}
