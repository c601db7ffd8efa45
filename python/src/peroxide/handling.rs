//! Handling facts.

use crate::error::raise;
use foilwork::{
    peroxide::{self, StrengthBound},
    quantity::MassFraction,
    source::Interval,
};
use pyo3::prelude::*;

/// What a law or a transport list says about a range of strengths; made by ``handling_facts``.
///
/// A fact about the text, not advice. Nothing here says that a strength is harmless.
#[pyclass(frozen, get_all)]
#[derive(Clone)]
pub struct HandlingFact {
    /// Where it holds: ``"EU"``, ``"UK"``, or ``"UN"`` for transport.
    jurisdiction: &'static str,
    /// The text.
    scheme: &'static str,
    /// Class or status.
    class_name: &'static str,
    /// Hazard statement or UN number; empty where there is none.
    code: &'static str,
    /// Lower end in % w/w and whether it is in the range, or None.
    lower: Option<(f64, bool)>,
    /// Upper end in % w/w and whether it is in the range, or None.
    upper: Option<(f64, bool)>,
    /// What to bear in mind.
    note: &'static str,
    /// The source.
    source: String,
    /// ``"applies"``, ``"may apply"`` (part of the span is in the range: treat it as if it applied) or ``"substance"``.
    bearing: &'static str,
}

#[pymethods]
impl HandlingFact {
    fn __repr__(&self) -> String {
        let Self { jurisdiction, class_name, code, bearing, .. } = self;
        format!("<{jurisdiction}: {class_name} {code} ({bearing})>")
    }
}

/// What classification, transport and precursor law say about a strength of hydrogen peroxide.
///
/// Args:
///     strength_ww: Strength in % w/w, or its lower bound.
///     high_ww: Its upper bound in % w/w, when the strength is known only within bounds.
///
/// Returns:
///     A list of ``HandlingFact``, in the order of the texts. Other components, the pack and local law can add to it.
///
/// Raises:
///     FoilworkError: A strength out of range, or bounds out of order.
///
/// Source:
///     Cited with each fact.
///
/// >>> from foilwork.peroxide import handling_facts
/// >>> [fact.code for fact in handling_facts(12) if fact.bearing == "applies" and fact.code]
/// ['H318', 'UN 2984']
#[pyfunction]
#[pyo3(signature = (strength_ww, high_ww = None))]
pub fn handling_facts(strength_ww: f64, high_ww: Option<f64>) -> PyResult<Vec<HandlingFact>> {
    let [low, high] =
        [strength_ww, high_ww.unwrap_or(strength_ww)].map(|w| MassFraction::from_percent_ww(w).map_err(raise));
    let low = low?;
    let ends = |bound: Option<StrengthBound>| bound.map(|bound| (bound.strength.percent_ww(), bound.included));
    let found =
        peroxide::handling_facts(Interval::new(low, low, high?).map_err(raise)?).map(|(fact, bearing)| HandlingFact {
            jurisdiction: fact.jurisdiction,
            scheme: fact.scheme,
            class_name: fact.class,
            code: fact.code,
            lower: ends(fact.lower),
            upper: ends(fact.upper),
            note: fact.note,
            source: fact.citation.to_string(),
            bearing: bearing.words(),
        });
    Ok(found.collect())
}
