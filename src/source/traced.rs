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

#[cfg(test)]
mod tests {
    use super::*;

    /// Every part stands where it was put, and what is added takes none of the others away. 3 times 4 is said; a working of one's own
    /// is kept.
    #[test]
    fn a_result_keeps_all_that_it_was_made_of() {
        let inputs = || [TracedInput::exact("a", 3, "g"), TracedInput::exact("b", 4, "").resting(Basis::Measured)];
        let plain = TracedResult::exact("product", "12", "g", "a x b", Basis::Derived);
        assert_eq!((plain.what.as_str(), plain.value.as_str(), plain.unit.as_str()), ("product", "12", "g"));
        assert_eq!(
            (&*plain.formula, plain.basis, &plain.bounds, &plain.worked),
            ("a x b", Basis::Derived, &None, &None)
        );
        let made = plain.clone().made_of(inputs()).resting_on(&["one", "two"]);
        assert_eq!((made.worked.as_deref(), made.value.as_str(), made.unit.as_str()), (Some("3 x 4"), "12", "g"));
        assert_eq!((made.inputs.len(), made.sources.as_slice(), made.basis), (2, &["one", "two"][..], Basis::Derived));
        assert_eq!((made.inputs[0].value.as_str(), made.inputs[0].basis), ("3", None));
        let [_, b] = inputs();
        assert_eq!(
            (b.what.as_str(), b.value.as_str(), b.unit.as_str(), b.basis),
            ("b", "4", "", Some(Basis::Measured))
        );
        let own = plain.clone().working("3 + 3 + 3 + 3").made_of(inputs());
        assert_eq!((own.worked.as_deref(), own.inputs.len(), own.value.as_str()), (Some("3 + 3 + 3 + 3"), 2, "12"));
        let wide = TracedResult::new("w", Interval::ordered(1.0, 2.0, 4.0), "g", "a", Basis::Assumed).working("1 + 1");
        assert_eq!((wide.value.as_str(), wide.bounds), ("2", Some(["1".to_owned(), "4".to_owned()])));
        assert_eq!((wide.worked.as_deref(), wide.foilwork), (Some("1 + 1"), env!("CARGO_PKG_VERSION")));
    }
}
