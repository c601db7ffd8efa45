//! Wrappers of `foilwork::mix`: what the trade does about white hair, what to watch, what is the wrong way round.

use super::weighing::mass;
use crate::{answer::answer, bounds::Estimate, error::raise, finding::Finding, sequence::Sequence};
use foilwork::{
    mix::{self, Hazard, handling_advice as points},
    quantity::Share,
};
use pyo3::prelude::*;

answer! {
    in "foilwork.mix";
    /// The share of natural shade that covers white hair; made by :func:`natural_share`.
    NaturalShare {
        /// Least, usual and most share among the shades of the formula, in percent.
        share_percent: Estimate<f64>,
        /// What it rests on.
        basis: String,
        /// Id of the source that prints the point at half white.
        printed_point: String,
    }
}

/// How much natural shade the trade adds to cover a share of white hair: a convention, with its range.
///
/// Args:
///     white_percent: share of white hair in percent.
///
/// Returns:
///     The share of natural shade among the shades of the formula.
///
/// Examples:
///     >>> from foilwork.mix import natural_share
///     >>> low, usual, high = natural_share(50).share_percent
///     >>> low, usual, high
///     (33.0, 50.0, 67.0)
///
/// Source:
///     Common practice; half at half is printed in a trade article.
#[pyfunction]
pub fn natural_share(white_percent: f64) -> PyResult<NaturalShare> {
    let found = mix::natural_share(Share::from_percent(white_percent).map_err(raise)?);
    Ok(NaturalShare {
        share_percent: found.share.into(),
        basis: found.basis.code().to_owned(),
        printed_point: found.printed_point.id.to_owned(),
    })
}

/// Warn of a powder lightener that holds more powder than developer: a ratio written the wrong way round.
///
/// Args:
///     powder_g: mass of the powder in g.
///     developer_g: mass of the developer in g.
///
/// Returns:
///     A warning, or None.
///
/// Raises:
///     FoilworkError: a mass out of range.
///
/// Examples:
///     >>> from foilwork.mix import check_lightener
///     >>> check_lightener(12, 6).verdict, check_lightener(6, 12)
///     ('warning', None)
///
/// Source:
///     Common practice.
#[pyfunction]
pub fn check_lightener(powder_g: f64, developer_g: f64) -> PyResult<Option<Finding>> {
    Ok(mix::check_lightener(mass(powder_g)?, mass(developer_g)?).as_ref().map(Finding::from))
}

answer! {
    in "foilwork.mix";
    /// One point of the handling checklist; made by :func:`handling_advice`.
    HandlingAdvice {
        /// When: ``"before"``, ``"mixing"``, ``"applying"`` or ``"after"``.
        stage: String,
        /// What to do.
        text: String,
        /// The hazards it is about; none: every bowl.
        about: Vec<String>,
        /// Ids of its sources; none: common practice.
        sources: Vec<String>,
    }
}

/// The handling checklist for what is in a bowl, in the order of the work. It informs; it decides nothing.
///
/// Args:
///     hazards: any of ``"peroxide"``, ``"persulfate"``, ``"ammonia"``, ``"oxidative-dye"``, ``"resorcinol"``,
///         ``"unknown"``.
///
/// Returns:
///     The points.
///
/// Raises:
///     FoilworkError: for an unknown code.
///
/// Examples:
///     >>> from foilwork.mix import handling_advice
///     >>> handling_advice(["persulfate"])[0].stage
///     'before'
#[pyfunction]
pub fn handling_advice(hazards: Sequence<String>) -> PyResult<Vec<HandlingAdvice>> {
    let hazards = hazards.0;
    let hazards: Vec<Hazard> = hazards.iter().map(|code| code.parse()).collect::<Result<_, _>>().map_err(raise)?;
    let point = |point: &&mix::HandlingAdvice| HandlingAdvice {
        stage: point.stage.code().to_owned(),
        text: point.text.to_owned(),
        about: point.about.iter().map(|hazard| hazard.code().to_owned()).collect(),
        sources: point.sources.iter().map(|id| (*id).to_owned()).collect(),
    };
    Ok(points(&hazards).iter().map(point).collect())
}
