//! Wrappers of `foilwork::head`: darker strands for depth.

use crate::{
    answer::answer,
    bounds::Estimate,
    colour::AnyLevel,
    error::{FoilworkError, raise},
    sequence::Sequence,
};
use foilwork::{head, quantity::Share};
use pyo3::prelude::*;

answer! {
    in "foilwork.head";
    /// Darker strands for depth; made by ``lowlights``.
    Lowlights {
        /// Their level.
        level: f64,
        /// The share of the section's hair that is made darker, in percent, by what it may read as now.
        share_percent: Estimate<f64>,
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
///     >>> 30 < depth.share_percent.best < 60
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
    let found = head::lowlights(now_level.0.into(), wanted_level.0, lowlight_level.0, natural_level.0, light);
    let found =
        found.map_err(|error| FoilworkError::new_err(error.told_with(["`wanted_level`", "`lowlight_level`"])))?;
    Ok(Lowlights {
        level: found.level.number(),
        share_percent: Estimate(found.share.map(Share::percent).to_array()),
        foils: found.foils.map(|foils| Estimate(foils.to_array())),
        light_foils_between: found.light_foils_between,
    })
}

answer! {
    in "foilwork.head";
    /// Light foils of a section that lie together, in a region or in the whole of it.
    ///
    /// Args:
    ///     first: number of its first light foil, in the order of the work.
    ///     last: number of its last light foil.
    ///     region: the region, where the section says where it lies.
    ///     hair_percent: how much of all the hair the section has there.
    ///     inward_percent: how far inside it lies: 0 at the outline, 100 at the crown.
    ///
    /// Raises:
    ///     FoilworkError: a share outside 0 to 100 %.
    ///
    /// Examples:
    ///     >>> from foilwork.head import LightFoils
    ///     >>> LightFoils(1, 6).hair_percent
    ///     100.0
    LightFoils {
        /// Number of its first light foil, in the order of the work.
        first: u32,
        /// Number of its last light foil.
        last: u32,
        /// The region; ``None`` where the section does not say where it lies.
        region: Option<String>,
        /// How much of all the hair the section has there, in percent.
        hair_percent: f64,
        /// How far inside it lies, in percent.
        inward_percent: f64,
    }
    impl {
        #[new]
        #[pyo3(signature = (first, last, region = None, *, hair_percent = 100.0, inward_percent = 100.0))]
        fn new(first: u32, last: u32, region: Option<String>, hair_percent: f64, inward_percent: f64) -> PyResult<Self> {
            for share in [hair_percent, inward_percent] {
                Share::from_percent(share).map_err(raise)?;
            }
            Ok(Self { first, last, region, hair_percent, inward_percent })
        }
    }
}

answer! {
    in "foilwork.head";
    /// Where lowlights go; made by ``lowlight_places``.
    LowlightPlace {
        /// The region; ``None`` where the section does not say where it lies.
        region: Option<String>,
        /// Foils of them there.
        foils: u32,
        /// Numbers of the light foils behind each of which one goes; a number that is there twice has two behind it.
        behind_foils: Vec<u32>,
    }
}

/// Where so many foils of lowlights go: most where most hair lies furthest inside, none on the outline as long as there is
/// another place, and within a region evenly between its light foils.
///
/// Args:
///     foils: how many foils of them.
///     light: the light foils that they go between.
///
/// Returns:
///     A list of ``LowlightPlace``, without the places that get none.
///
/// Raises:
///     FoilworkError: a share out of range.
///
/// Source:
///     Assumed: shares by hair times how far inside it lies.
///
/// Examples:
///     >>> from foilwork.head import LightFoils, lowlight_places
///     >>> lowlight_places(3, [LightFoils(1, 6, "crown", hair_percent=8)])[0].behind_foils
///     [1, 3, 5]
#[pyfunction]
pub fn lowlight_places(foils: u32, light: Sequence<LightFoils>) -> PyResult<Vec<LowlightPlace>> {
    if foils > MOST_FOILS {
        return Err(FoilworkError::new_err(format!("foils {foils} is more than a head has (give up to {MOST_FOILS})")));
    }
    let mut spans = Vec::with_capacity(light.0.len());
    for one in &light.0 {
        let share = |percent| Share::from_percent(percent).map_err(raise);
        spans.push(head::LightFoils {
            region: one.region.as_deref(),
            hair: share(one.hair_percent)?,
            inward: share(one.inward_percent)?,
            first: one.first,
            last: one.last,
        });
    }
    let place = |place: head::LowlightPlace| LowlightPlace {
        region: place.region,
        foils: place.foils,
        behind_foils: place.behind_foils,
    };
    Ok(head::lowlight_places(foils, &spans).into_iter().map(place).collect())
}

/// A list of more would only take memory.
const MOST_FOILS: u32 = 1000;
