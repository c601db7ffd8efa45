use super::{Ratio, RatioError};
use crate::{
    quantity::{Mass, Quantity, Share},
    scale::{Division, WeighError, weigh},
};
use serde::Serialize;

/// The smallest bowls a scale can weigh within a tolerance.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct MinimumBowl {
    /// The smallest bowl that happens to come out within the tolerance.
    #[serde(rename = "first_g")]
    pub first: Mass,
    /// From here on every bowl does, whatever its size.
    #[serde(rename = "always_from_g")]
    pub always_from: Mass,
}

/// In %: below it no scale will do.
pub(crate) const FINEST_TOLERANCE: f64 = 0.01;

/// The finest a search makes sense: a kitchen scale has a few thousand divisions, a laboratory balance a million.
const MOST_DIVISIONS: f64 = 1e6;

/// A minimum that cannot be given.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum MinimumError {
    /// A tolerance of zero asks for a perfect scale.
    #[error("invalid tolerance (got {0}): must be from 0.01 to 100 %")]
    Tolerance(Share),
    /// The scale cannot be used.
    #[error(transparent)]
    Weigh(#[from] WeighError),
    /// The ratio cannot be split.
    #[error(transparent)]
    Ratio(#[from] RatioError),
    /// So small a part that no bowl would do.
    #[error("the smallest part is 1 in {0:.0}: pre-dilute it, no bowl of ordinary size can be weighed to that")]
    TooSmallAPart(f64),
}

/// The least that can be weighed in a ratio on a scale, so that no part's share is off by more than a tolerance.
///
/// `first` is found by trying every bowl from one division up; `always_from` is a bound: a part rounded within a
/// division of its share is off by at most division over mass, so the smallest part must be that heavy.
///
/// # Units
///
/// Masses in g, tolerance in % of a part's share.
///
/// # Errors
///
/// [`MinimumError`] for a tolerance below 0.01 %, or a part so small that it would take a million divisions.
///
/// # Example
///
/// ```
/// use foilwork::{mix::minimum_bowl, quantity::{Mass, Share}};
///
/// let bowl = minimum_bowl(&"1:1.5".parse()?, Mass::from_g(1.0)?, Share::from_percent(5.0)?)?;
/// assert_eq!((bowl.first.g(), bowl.always_from.g()), (5.0, 50.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Arithmetic of rounding; no tabulated value.
pub fn minimum_bowl(ratio: &Ratio, division: Mass, tolerance: Share) -> Result<MinimumBowl, MinimumError> {
    let allowed = tolerance.percent();
    if allowed < FINEST_TOLERANCE {
        return Err(MinimumError::Tolerance(tolerance));
    }
    let scale = Division::new(division)?;
    let one: Vec<Mass> = ratio.split_total(Mass::nearest(1.0))?;
    let smallest = one.iter().map(|p| p.g()).fold(1.0, f64::min);
    let bound = (100.0 / (allowed * smallest)).ceil();
    if bound > MOST_DIVISIONS {
        return Err(MinimumError::TooSmallAPart(1.0 / smallest));
    }
    // Below this many divisions even one of the smallest part is too much of it.
    let mut units = (1.0 / ((1.0 + allowed / 100.0) * smallest)).floor().max(1.0);
    while units < bound {
        let total = scale.of(units).g();
        let bowl = one.iter().map(|p| p.times(total)).collect::<Result<Vec<Mass>, _>>().map_err(RatioError::from)?;
        if weigh(&bowl, division)?.worst_ratio_error_percent() <= allowed {
            break;
        }
        units += 1.0;
    }
    Ok(MinimumBowl { first: scale.of(units), always_from: scale.of(bound) })
}

/// The least a scale can weigh of one thing so that rounding is off by no more than a tolerance: half a division over
/// the tolerance.
///
/// It says nothing of the scale's own accuracy; a worn or unlevel scale needs more.
///
/// # Units
///
/// Masses in g, tolerance in % of the mass.
///
/// # Errors
///
/// [`MinimumError::Tolerance`] below 0.01 %, [`MinimumError::Weigh`] for a division of 0 g.
///
/// # Example
///
/// ```
/// use foilwork::{mix::minimum_mass, quantity::{Mass, Share}};
///
/// assert_eq!(minimum_mass(Mass::from_g(1.0)?, Share::from_percent(5.0)?)?.g(), 10.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Arithmetic of rounding; no tabulated value.
pub fn minimum_mass(division: Mass, tolerance: Share) -> Result<Mass, MinimumError> {
    Division::new(division)?;
    if tolerance.percent() < FINEST_TOLERANCE {
        return Err(MinimumError::Tolerance(tolerance));
    }
    Mass::from_g(least_g(division.g(), tolerance.fraction())).map_err(|error| MinimumError::Ratio(error.into()))
}

/// Half a division in g over a tolerance as a fraction.
#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[inline(always)]
pub(crate) fn least_g(division_g: f64, tolerance: f64) -> f64 {
    division_g * (0.5 / tolerance)
}
