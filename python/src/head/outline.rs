//! Wrappers of `foilwork::head`: whether the outline reads solid or soft.

use super::strand::Profile;
use crate::{answer::answer, bounds::Estimate, error::raise, sequence::Sequence};
use foilwork::{head, quantity::Share};
use pyo3::prelude::*;

answer! {
    in "foilwork.head";
    /// Hair of one section on the outline.
    ///
    /// Args:
    ///     section: the section.
    ///     hair_percent: how much of all the hair grows there.
    ///     taken_percent: of the hair there, what the section takes.
    ///     profile: how that is covered along the strand.
    ///
    /// Raises:
    ///     FoilworkError: a share outside 0 to 100 %.
    ///
    /// Examples:
    ///     >>> from foilwork.head import OutlinePart, profile
    ///     >>> OutlinePart("hairline", hair_percent=5, taken_percent=45, profile=profile("weave", 30)).taken_percent
    ///     45.0
    OutlinePart {
        /// The section.
        section: String,
        /// How much of all the hair grows there, in percent.
        hair_percent: f64,
        /// Of the hair there, what the section takes, in percent.
        taken_percent: f64,
        /// How that is covered along the strand.
        profile: Profile,
    }
    impl {
        #[new]
        #[pyo3(signature = (section, *, hair_percent, taken_percent, profile))]
        fn new(section: String, hair_percent: f64, taken_percent: f64, profile: Profile) -> PyResult<Self> {
            for share in [hair_percent, taken_percent] {
                Share::from_percent(share).map_err(raise)?;
            }
            Ok(Self { section, hair_percent, taken_percent, profile })
        }
    }
}

answer! {
    in "foilwork.head";
    /// What to change so that the outline reads as wanted: the share of a section, or how it starts.
    OutlineChange {
        /// The section.
        section: String,
        /// Of its hair, what is light behind its start, in percent.
        light_percent: f64,
        /// What would have to be, in percent; the same where only its start is to change.
        wanted_percent: f64,
        /// Whether its start has to be blended: it is a line, and not at the scalp.
        blend_start: bool,
        /// The same in words.
        advice: String,
    }
}

answer! {
    in "foilwork.head";
    /// How solid the outline reads; made by ``read_outline``.
    OutlineLook {
        /// Of the hair of the outline, what is light behind its start, in percent.
        light_percent: Estimate<f64>,
        /// ``"solid"`` or ``"soft"`` by the best estimate; ``None`` where it is neither.
        reads: Option<String>,
        /// Whether it reads as wanted; ``None`` where nothing is asked for.
        as_wanted: Option<bool>,
        /// Whether the bounds say the same, and not only the best estimate; ``None`` where nothing is asked for.
        sure: Option<bool>,
        /// What to change when it does not, the change that does most first; all of them together are enough.
        changes: Vec<OutlineChange>,
    }
}

/// Whether the outline reads solid, soft, or neither, and the sections to change where that is not as wanted.
///
/// Args:
///     parts: the hair of sections on the outline.
///     wish: ``"solid"`` or ``"soft"``; without one it is only read.
///
/// Returns:
///     An ``OutlineLook``, or ``None`` without a section there.
///
/// Raises:
///     FoilworkError: another wish.
///
/// Source:
///     Assumed: solid from 70 % of light hair on, soft up to 50 % where no section begins in a line away from the scalp.
///
/// Examples:
///     >>> from foilwork.head import OutlinePart, profile, read_outline
///     >>> woven = [OutlinePart("hairline", hair_percent=5, taken_percent=45, profile=profile("weave", 30))]
///     >>> read_outline(woven, "soft").as_wanted
///     True
///     >>> read_outline(woven, "solid").changes[0].advice
///     'make 70 % of the hair in "hairline" light instead of 45 %'
#[pyfunction]
#[pyo3(signature = (parts, wish = None))]
pub fn read_outline(parts: Sequence<OutlinePart>, wish: Option<&str>) -> PyResult<Option<OutlineLook>> {
    let part = |part: &'_ OutlinePart| {
        Ok::<_, PyErr>((
            Share::from_percent(part.hair_percent).map_err(raise)?,
            Share::from_percent(part.taken_percent).map_err(raise)?,
            part.profile.core()?,
        ))
    };
    let mut all = Vec::with_capacity(parts.0.len());
    for one in &parts.0 {
        let (hair, taken, profile) = part(one)?;
        all.push(head::OutlinePart { section: &one.section, hair, taken: taken.into(), profile });
    }
    let wish = wish.map(str::parse).transpose().map_err(raise)?;
    let change = |change: &head::OutlineChange| OutlineChange {
        section: change.section.clone(),
        light_percent: change.light.percent(),
        wanted_percent: change.wanted.percent(),
        blend_start: change.blend_start,
        advice: change.advice(),
    };
    Ok(head::read_outline(&all, wish).map(|look| OutlineLook {
        light_percent: look.light.into(),
        reads: look.reads.map(|reads| reads.code().to_owned()),
        as_wanted: look.as_wanted,
        sure: look.sure,
        changes: look.changes.iter().map(change).collect(),
    }))
}
