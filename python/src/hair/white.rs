//! Wrappers of `foilwork::hair`: white hair by counts.

use crate::{answer::answer, bounds::Estimate, error::raise, sequence::Sequence};
use foilwork::{
    hair::{self, WhiteCount},
    quantity::Share,
};
use pyo3::prelude::*;

answer! {
    in "foilwork.hair";
    /// How much of the hair is white; made by ``white_share``.
    WhiteShare {
        /// Of all the hair, in percent.
        white_percent: Estimate<f64>,
        /// How much of the hair was counted; the rest is taken like it, with the bounds of its least and most white region.
        counted_percent: f64,
        /// The regions that were counted.
        regions: Vec<String>,
    }
}

/// The share of white hair from counts in some regions, each weighed by its share of the hair.
///
/// Args:
///     counts: for each region its name, its share of all the hair in percent, white hairs, hairs looked at.
///
/// Returns:
///     A ``WhiteShare``, or ``None`` when nothing was counted.
///
/// Raises:
///     FoilworkError: a share outside 0 to 100 %, or more white hairs than were looked at.
///
/// Source:
///     Bounds of each count by Wilson's score (80 of 100), independent of each other.
///
/// Examples:
///     >>> from foilwork.hair import white_share
///     >>> white_share([("sides", 30, 60, 100), ("back", 70, 10, 100)]).white_percent.best
///     25.0
#[pyfunction]
pub fn white_share(counts: Sequence<(String, f64, u32, u32)>) -> PyResult<Option<WhiteShare>> {
    let count = |(region, share, white, counted): (String, f64, u32, u32)| {
        if white > counted {
            let text = format!("{region}: {white} white of {counted} counted cannot be (correct one of the two)");
            return Err(crate::error::FoilworkError::new_err(text));
        }
        Ok(WhiteCount { region, share: Share::from_percent(share).map_err(raise)?, white, counted })
    };
    let counts = counts.0.into_iter().map(count).collect::<PyResult<Vec<_>>>()?;
    Ok(hair::white_share(&counts).map(|found| WhiteShare {
        white_percent: found.white.into(),
        counted_percent: found.counted.percent(),
        regions: found.regions,
    }))
}
