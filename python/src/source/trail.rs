use crate::answer::answer;
use foilwork::source;

answer! {
    in "foilwork.source";
    /// One number that goes into a result.
    TracedInput {
        /// What it is.
        what: String,
        /// Its value as decimal text, for an estimate the best.
        value: String,
        /// Its lower and its upper bound, where it is an estimate.
        bounds: Option<(String, String)>,
        /// Its unit.
        unit: String,
        /// What it rests on, where that is known apart from the result.
        basis: Option<String>,
    }
}

answer! {
    in "foilwork.source";
    /// A result and how it came about.
    TracedResult {
        /// What it is.
        what: String,
        /// Its value as decimal text, for an estimate the best.
        value: String,
        /// Its lower and its upper bound, where it is an estimate.
        bounds: Option<(String, String)>,
        /// Its unit.
        unit: String,
        /// How it is found.
        formula: String,
        /// The same with the numbers put in; ``None`` where it is no arithmetic, as of a model.
        worked: Option<String>,
        /// From what.
        inputs: Vec<TracedInput>,
        /// What it rests on.
        basis: String,
        /// The citations behind it, by their ids; none where it is arithmetic or no source is known.
        sources: Vec<String>,
        /// The version of foilwork that found it.
        foilwork: String,
    }
}

fn pair(bounds: Option<[String; 2]>) -> Option<(String, String)> {
    bounds.map(|[low, high]| (low, high))
}

impl From<source::TracedResult> for TracedResult {
    fn from(result: source::TracedResult) -> Self {
        let input = |input: source::TracedInput| TracedInput {
            what: input.what,
            value: input.value,
            bounds: pair(input.bounds),
            unit: input.unit,
            basis: input.basis.map(|basis| basis.code().to_owned()),
        };
        Self {
            what: result.what,
            value: result.value,
            bounds: pair(result.bounds),
            unit: result.unit,
            formula: result.formula.clone().into_owned(),
            worked: result.worked,
            inputs: result.inputs.into_iter().map(input).collect(),
            basis: result.basis.code().to_owned(),
            sources: result.sources.into_iter().map(str::to_owned).collect(),
            foilwork: result.foilwork.to_owned(),
        }
    }
}
