//! How a consultation comes to its decision and its price.

use super::{AgreedPrice, ConsultationPlan, Decision};
use crate::{
    money::{amount, of},
    source::{Basis, TracedInput, TracedResult},
};
use std::borrow::Cow;

const DECISION: &str = "STOP where a check says stop; else RESTRICT where one warns or does not know; else proceed";
const VISIT: &str = "price of the list, or of the costs as the hair takes less or more mixture";
const ALL: &str = "price at most x visits";

impl ConsultationPlan {
    /// How the decision, and what the guest pays, come about; where the price is one of costs, the trail of the plan leads to it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{reader::Format, service::{Evidence, consult, parse}};
    ///
    /// let file = parse(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
    /// let trail = consult(&file, &Evidence::default())?.trail();
    /// assert_eq!((trail[0].what.as_str(), trail[0].value.as_str()), ("decision", "restrict"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn trail(&self) -> Vec<TracedResult> {
        let price = self.agreement.price.iter().flat_map(priced);
        [decided(&self.decision)].into_iter().chain(price).collect()
    }
}

fn decided(decision: &Decision) -> TracedResult {
    let Decision { stops, restrictions, open, .. } = decision;
    let found = || stops.iter().chain(restrictions).chain(open);
    let inputs = found().map(|one| TracedInput::exact(one.rule.words(), &one.text, one.verdict.code()));
    let checks =
        [("checks that say stop", stops), ("checks that warn", restrictions), ("checks that do not know", open)]
            .map(|(what, found)| TracedInput::exact(what, found.len(), "checks"));
    let mut sources: Vec<&'static str> = found()
        .flat_map(|one| &one.sources)
        .filter_map(|reason| match reason.id {
            Some(Cow::Borrowed(id)) => Some(id),
            _ => None,
        })
        .collect();
    sources.sort_unstable();
    sources.dedup();
    TracedResult::exact("decision", decision.go.code(), "word", DECISION, Basis::Derived)
        .made_of(checks.into_iter().chain(inputs))
        .resting_on(&sources)
}

fn priced(price: &AgreedPrice) -> Vec<TracedResult> {
    let ends = (price.low != price.high).then(|| [price.low, price.high].map(|end| end.decimal().to_string()));
    let basis = if ends.is_some() { Basis::Assumed } else { Basis::Stated };
    let at_most = of("price at most", price.high);
    let visit = TracedResult { bounds: ends, ..amount("price of this visit", price.planned, VISIT, basis) }
        .made_of([of("price at least", price.low), at_most.clone()]);
    let all = amount("price of all visits at most", price.all_visits_high, ALL, basis)
        .made_of([at_most, TracedInput::exact("visits", price.visits, "visits")]);
    vec![visit, all]
}
