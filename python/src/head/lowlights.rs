//! Wrappers of `foilwork::head`: darker strands for depth.

use crate::{
    answer::answer,
    bounds::Estimate,
    colour::AnyLevel,
    error::{FoilworkError, raise},
};
use foilwork::{head, quantity::Share};
use pyo3::prelude::*;

answer! {
    /// Darker strands for depth; made by ``lowlights``.
    Lowlights {
        /// Their level.
        level: f64,
        /// The share of the section's hair that is made darker, in percent.
        share_percent: f64,
        /// Foils of them; ``None`` where the hair of a foil is not known.
        foils: Option<Estimate<u32>>,
        /// Light foils between two of them, so that they lie evenly; ``None`` where none are counted.
        light_foils_between: Option<u32>,
    }
}

/// How much of a section to take darker so that it reads at a deeper level, and in how many foils.
///
/// Args:
///     now_level: what it reads as now.
///     wanted_level: what it is to read as.
///     lowlight_level: the level of the darker strands.
///     natural_level: the natural base; nothing at the root is darker than it.
///     per_foil_percent: the share of its hair that is in one light foil, where that is known.
///     light_foils: how many light foils it has, where they are counted.
///
/// Returns:
///     A ``Lowlights``.
///
/// Raises:
///     FoilworkError: strands darker than the natural base, or a wish that they cannot fulfil; both levels are named.
///
/// Source:
///     Light adds up in reflectance: ``(now - wanted) / (now - lowlight)``.
///
/// Examples:
///     >>> from foilwork.head import lowlights
///     >>> depth = lowlights(9, 8, lowlight_level=6, natural_level=6, per_foil_percent=5, light_foils=12)
///     >>> 30 < depth.share_percent < 60
///     True
#[pyfunction]
#[pyo3(signature = (now_level, wanted_level, *, lowlight_level, natural_level, per_foil_percent = None, light_foils = None))]
pub fn lowlights(
    now_level: AnyLevel,
    wanted_level: AnyLevel,
    lowlight_level: AnyLevel,
    natural_level: AnyLevel,
    per_foil_percent: Option<f64>,
    light_foils: Option<u32>,
) -> PyResult<Lowlights> {
    let per_foil = per_foil_percent.map(Share::from_percent).transpose().map_err(raise)?;
    let light = per_foil.map(|per_foil| (per_foil, light_foils.unwrap_or(0)));
    let found = head::lowlights(now_level.0, wanted_level.0, lowlight_level.0, natural_level.0, light);
    let found =
        found.map_err(|error| FoilworkError::new_err(error.told_with(["`wanted_level`", "`lowlight_level`"])))?;
    Ok(Lowlights {
        level: found.level.number(),
        share_percent: found.share.percent(),
        foils: found.foils.map(|foils| Estimate(foils.to_array())),
        light_foils_between: found.light_foils_between,
    })
}
