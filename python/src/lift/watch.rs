//! Wrappers of `foilwork::lift`: looks, what a level seen says, and the strain on the fibre.

use super::{
    belief::Belief,
    book::StrandReading,
    lightening::TimeTo,
    situation::{Situation, minutes},
};
use crate::{answer::answer, bounds::Estimate, colour::AnyLevel, error::raise, sequence::Sequence};
use foilwork::{lift, quantity::Duration};
use pyo3::prelude::*;

/// When to look at a section, in min from its first strand; the last is the limit itself.
///
/// Args:
///     limit_min: the longest that a strand may carry the mixture.
///     texture: ``"fine"``, ``"medium"`` or ``"coarse"``.
///
/// Returns:
///     The minutes.
///
/// Raises:
///     FoilworkError: a time out of range, or another texture.
///
/// Source:
///     First after 15 to 20 min, then every 5 to 10 (``"check-interval"``); 10 min on fine hair is common practice.
///
/// Examples:
///     >>> from foilwork.lift import looks
///     >>> looks(28)
///     [15.0, 20.0, 25.0, 28.0]
#[pyfunction]
#[pyo3(signature = (limit_min, texture = "medium"))]
pub fn looks(limit_min: f64, texture: &str) -> PyResult<Vec<f64>> {
    let texture = texture.parse().map_err(raise)?;
    Ok(lift::looks(texture, minutes(limit_min)?).into_iter().map(Duration::min).collect())
}

answer! {
    in "foilwork.lift";
    /// What a level seen in mid-service says.
    AfterLook {
        /// What to do: ``"rinse"``, ``"go-on"``, ``"fresh-mix"`` or ``"next-visit"``.
        next: String,
        /// Why, in words.
        why: String,
        /// What is believed of this hair now.
        belief: Belief,
        /// When the target is reached, from the first strand.
        reached: TimeTo,
        /// The chance in percent that it is reached by the limit.
        chance_by_limit_percent: f64,
        /// When to look again, in min.
        look_again_min: Option<f64>,
    }
}

/// Revise what is believed by what is seen, and say what follows: rinse, go on, a fresh mix, or another visit.
///
/// It knows level and time only. Comfort, heat, swelling and elasticity come first, and any of them means rinse.
///
/// Args:
///     belief: what was known before.
///     situation: the mixture and the hair.
///     start_level: the level at the start.
///     target_level: the level wanted.
///     at_min: min since the first strand.
///     seen_level: the level seen now.
///     limit_min: how long it is planned to be on; the longest that a strand may carry the mixture, unless ``longest_min`` is given.
///     longest_min: the longest that its products allow: from ``limit_min`` until then it is left on as long as looks show that the
///         level is not there.
///     reader: how it was read: ``"eye"`` or ``"instrument"``.
///
/// Returns:
///     What to do, why, and the forecast as it is now.
///
/// Raises:
///     FoilworkError: a value out of range, or another reader.
///
/// Examples:
///     >>> from foilwork.lift import Belief, Situation, after_look
///     >>> seen = after_look(Belief(), Situation(4), start_level=5, target_level=8, at_min=20, seen_level=8, limit_min=45)
///     >>> seen.next
///     'rinse'
#[pyfunction]
#[pyo3(signature = (belief, situation, *, start_level, target_level, at_min, seen_level, limit_min, longest_min = None, reader = "eye"))]
pub fn after_look(
    py: Python<'_>,
    belief: Belief,
    situation: Situation,
    start_level: AnyLevel,
    target_level: AnyLevel,
    at_min: f64,
    seen_level: AnyLevel,
    limit_min: f64,
    longest_min: Option<f64>,
    reader: &str,
) -> PyResult<AfterLook> {
    let look = lift::Look {
        situation: situation.core()?,
        start: start_level.0,
        target: target_level.0,
        at: minutes(at_min)?,
        seen: seen_level.0,
        reader: reader.parse().map_err(raise)?,
        limit: minutes(limit_min)?,
        longest: longest_min.map(minutes).transpose()?,
    };
    let after = lift::after_look(&belief.core, &look);
    let reading = StrandReading {
        situation,
        time_min: at_min,
        before_level: look.start.number(),
        after_level: look.seen.number(),
        reader: reader.to_owned(),
        guest: None,
        product: None,
    };
    let known = Bound::new(py, belief)?.call_method1("after_readings", (vec![reading],))?;
    Ok(AfterLook {
        next: after.next.code().to_owned(),
        why: after.why,
        belief: known.extract()?,
        reached: after.reached.into(),
        chance_by_limit_percent: after.chance_by_limit.percent(),
        look_again_min: after.look_again.map(Duration::min),
    })
}

answer! {
    in "foilwork.lift";
    /// The strain of a series of applications on the fibre; none of its words says that the hair stands it.
    Condition {
        /// Relative oxidation of the fibre: 1 for 40 min at 4 % on the hair at 25 C.
        index: Estimate<f64>,
        /// In words, at the upper bound: ``"slight"``, ``"usual"``, ``"high"`` or ``"severe"``.
        strain: String,
        /// The ids of the citations that the shape rests on.
        sources: Vec<String>,
    }
}

/// How far applications one after another take the fibre: a scale of its own, never read off the level.
///
/// Args:
///     applications: each mixture, and how many min it lies on the hair.
///
/// Returns:
///     An index with bounds and its word.
///
/// Raises:
///     FoilworkError: a time out of range.
///
/// Source:
///     Cysteic acid grows with the square root of time (``"cysteic-acid-square-root"``); the weights are assumed.
///
/// Examples:
///     >>> from foilwork.lift import Situation, condition
///     >>> condition([(Situation(4), 40)]).strain, condition([(Situation(4), 40)] * 3).strain
///     ('usual', 'high')
#[pyfunction]
pub fn condition(applications: Sequence<(Situation, f64)>) -> PyResult<Condition> {
    let one = |(situation, time): (Situation, f64)| Ok((situation.core()?, minutes(time)?));
    let applications = applications.0.into_iter().map(one).collect::<PyResult<Vec<_>>>()?;
    let found = lift::condition(&applications);
    Ok(Condition {
        index: Estimate(found.index.to_array()),
        strain: found.strain.code().to_owned(),
        sources: found.citations.iter().map(|citation| citation.id.to_owned()).collect(),
    })
}
