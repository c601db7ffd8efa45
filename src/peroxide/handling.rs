use crate::{
    choice::choice,
    quantity::MassFraction,
    source::{Citation, Interval},
};
use serde::Serialize;

/// One end of a range of strengths.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct StrengthBound {
    /// The strength.
    #[serde(rename = "ww_percent")]
    pub strength: MassFraction,
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
    pub lower: Option<StrengthBound>,
    /// Upper end.
    pub upper: Option<StrengthBound>,
    /// What to bear in mind.
    pub note: &'static str,
    /// The source.
    pub citation: &'static Citation,
}

choice! {
    /// How a fact bears on a strength that is known only within bounds.
    Bearing: "bearing" {
        /// The whole span is in the range.
        Applies = "applies",
        /// A part of the span is: treat it as if it applied.
        MayApply = "may-apply" => "may apply",
        /// The fact is about the substance, at no particular strength.
        Substance = "substance",
    }
}

impl HandlingFact {
    /// How the fact bears on a strength; `None` when it does not.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{peroxide::{Bearing, HANDLING_FACTS}, quantity::MassFraction, source::Interval};
    ///
    /// let eye_damage = HANDLING_FACTS.iter().find(|fact| fact.code == "H318").ok_or("no such fact")?;
    /// let [low, best, high] = [7.5, 8.0, 8.5].map(MassFraction::from_ww_percent);
    /// assert_eq!(eye_damage.bears_on(Interval::new(low?, best?, high?)?), Some(Bearing::MayApply));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn bears_on(&self, strength: Interval<MassFraction>) -> Option<Bearing> {
        if self.lower.is_none() && self.upper.is_none() {
            return Some(Bearing::Substance);
        }
        let (low, high) = (strength.low(), strength.high());
        if self.holds(low) && self.holds(high) {
            return Some(Bearing::Applies);
        }
        // Not whole, so a part at most: the span reaches into the range from below, from above, or past both ends.
        let below =
            self.lower.is_some_and(|bound| high < bound.strength || (high == bound.strength && !bound.included));
        let above = self.upper.is_some_and(|bound| low > bound.strength || (low == bound.strength && !bound.included));
        if below || above { None } else { Some(Bearing::MayApply) }
    }

    fn holds(&self, strength: MassFraction) -> bool {
        let past = |bound: StrengthBound, beyond: bool| beyond || (bound.included && strength == bound.strength);
        self.lower.is_none_or(|bound| past(bound, strength > bound.strength))
            && self.upper.is_none_or(|bound| past(bound, strength < bound.strength))
    }
}
