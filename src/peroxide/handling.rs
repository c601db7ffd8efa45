use super::handling_facts::FACTS;
use crate::{
    quantity::MassFraction,
    source::{Citation, Interval},
};
use serde::Serialize;

/// One end of a range of strengths, in % w/w.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Bound {
    /// The strength, in % w/w.
    pub percent_ww: f64,
    /// Whether this very strength is in the range.
    pub included: bool,
}

/// What a law or a transport list says about a range of strengths.
///
/// A fact about the text, not advice: other components, the pack and local law can add to it, and nothing here says that
/// a strength is harmless. Texts that print `%` without a basis are read as % w/w.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct HandlingFact {
    /// Where it holds: `EU`, `UK`, or `UN` for transport.
    pub jurisdiction: &'static str,
    /// The text.
    pub scheme: &'static str,
    /// Class or status.
    pub class: &'static str,
    /// Hazard statement or UN number; empty where there is none.
    pub code: &'static str,
    /// Lower end; with neither end, the fact is about the substance and not about a strength.
    pub lower: Option<Bound>,
    /// Upper end.
    pub upper: Option<Bound>,
    /// What to bear in mind.
    pub note: &'static str,
    /// The source.
    pub citation: &'static Citation,
}

/// How a fact bears on a strength that is known only within bounds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Handling {
    /// The whole span is in the range.
    Applies,
    /// A part of the span is: treat it as if it applied.
    MayApply,
    /// The fact is about the substance, at no particular strength.
    Substance,
}

/// Every fact that bears on a strength, in the order of the texts.
///
/// # Units
///
/// Strength in % w/w, with its bounds.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::handling, quantity::MassFraction, source::Interval};
///
/// let twelve = Interval::exact(MassFraction::from_percent_ww(12.0)?);
/// let codes: Vec<_> = handling(twelve).map(|(fact, _)| fact.code).filter(|code| !code.is_empty()).collect();
/// assert_eq!(codes, ["H318", "H302; H332", "UN 2984"]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Cited with each fact.
pub fn handling(strength: Interval<MassFraction>) -> impl Iterator<Item = (&'static HandlingFact, Handling)> {
    FACTS.iter().filter_map(move |fact| Some((fact, fact.bears_on(strength)?)))
}

impl HandlingFact {
    /// Every fact there is.
    #[must_use]
    pub const fn all() -> &'static [Self] {
        FACTS
    }

    /// How the fact bears on a strength; `None` when it does not.
    #[must_use]
    pub fn bears_on(&self, strength: Interval<MassFraction>) -> Option<Handling> {
        if self.lower.is_none() && self.upper.is_none() {
            return Some(Handling::Substance);
        }
        let (low, high) = (strength.low().percent_ww(), strength.high().percent_ww());
        if self.holds(low) && self.holds(high) {
            return Some(Handling::Applies);
        }
        // Not whole, so a part at most: the span reaches into the range from below, from above, or past both ends.
        let below =
            self.lower.is_some_and(|bound| high < bound.percent_ww || (high == bound.percent_ww && !bound.included));
        let above =
            self.upper.is_some_and(|bound| low > bound.percent_ww || (low == bound.percent_ww && !bound.included));
        if below || above { None } else { Some(Handling::MayApply) }
    }

    fn holds(&self, percent_ww: f64) -> bool {
        let past = |bound: Bound, beyond: bool| beyond || (bound.included && percent_ww == bound.percent_ww);
        self.lower.is_none_or(|bound| past(bound, percent_ww > bound.percent_ww))
            && self.upper.is_none_or(|bound| past(bound, percent_ww < bound.percent_ww))
    }
}
