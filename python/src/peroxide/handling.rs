//! Handling facts.

use crate::{answer::answer, bounds::Stated};
use foilwork::{peroxide, quantity::MassFraction};
use pyo3::prelude::*;

answer! {
    in "foilwork.peroxide";
    /// One end of a range of strengths.
    StrengthBound {
        /// The strength in % w/w.
        ww_percent: f64,
        /// Whether this very strength is in the range.
        included: bool,
    }
}

answer! {
    in "foilwork.peroxide";
    /// What a law or a transport list says about a range of strengths; made by ``handling_facts``.
    ///
    /// A fact about the text, not advice. Nothing here says that a strength is harmless.
    HandlingFact {
        /// Where it holds: ``"EU"``, ``"UK"``, or ``"UN"`` for transport.
        jurisdiction: String,
        /// The text.
        scheme: String,
        /// Class or status.
        class_name: String,
        /// Hazard statement or UN number; empty where there is none.
        code: String,
        /// Lower end, or None.
        lower: Option<StrengthBound>,
        /// Upper end, or None.
        upper: Option<StrengthBound>,
        /// What to bear in mind.
        note: String,
        /// The id of the source, as ``foilwork.source.resolve`` takes it.
        source: String,
        /// ``"applies"``, ``"may-apply"`` (part of the span is in the range: treat it as if it applied) or ``"substance"``.
        bearing: String,
    }
}

/// What classification, transport and precursor law say about a strength of hydrogen peroxide.
///
/// Args:
///     strength_ww_percent: strength in % w/w, a number, or ``Bounds`` when it is known only within them.
///
/// Returns:
///     The facts in the order of the texts. Other components, the pack and local law can add to them.
///
/// Raises:
///     FoilworkError: a strength out of range, or bounds out of order.
///
/// Source:
///     Cited with each fact.
///
/// Examples:
///     >>> from foilwork.peroxide import handling_facts
///     >>> [fact.code for fact in handling_facts(12) if fact.bearing == "applies" and fact.code]
///     ['H318', 'UN 2984']
#[pyfunction]
pub fn handling_facts(strength_ww_percent: Stated<MassFraction>) -> Vec<HandlingFact> {
    let end = |bound: peroxide::StrengthBound| StrengthBound {
        ww_percent: bound.strength.ww_percent(),
        included: bound.included,
    };
    let found = peroxide::handling_facts(strength_ww_percent.0).map(|(fact, bearing)| HandlingFact {
        jurisdiction: fact.jurisdiction.to_owned(),
        scheme: fact.scheme.to_owned(),
        class_name: fact.class.to_owned(),
        code: fact.code.to_owned(),
        lower: fact.lower.map(end),
        upper: fact.upper.map(end),
        note: fact.note.to_owned(),
        source: fact.citation.id.to_owned(),
        bearing: bearing.code().to_owned(),
    });
    found.collect()
}
