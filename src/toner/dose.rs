use super::{Exposed, predictor::Predictor};
use crate::{
    colour::{Shade, lab_of_linear},
    quantity::Share,
    source::{Basis, Interval},
};

/// How much of a neutralising shade balances the exposed warmth, in a mix with a carrier shade.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NeutralisingDose {
    /// Share of the neutralising shade that leaves the least chroma, with its bounds over the assumptions of the model.
    /// More than the best estimate over-neutralises by the model; more than the upper bound under all assumptions.
    pub balance: Interval<Share>,
    /// Chroma before toning, best estimate.
    pub chroma_before: f64,
    /// Chroma under the carrier alone, best estimate.
    pub chroma_without: f64,
    /// Chroma left at balance, best estimate; what is left cannot be removed with this shade.
    pub chroma_left: f64,
    /// The basis: assumed.
    pub basis: Basis,
}

/// The dose of `neutraliser` in a mix with `carrier` (a neutral or clear shade) that brings the exposed pigment closest
/// to grey.
///
/// # Example
///
/// ```
/// use foilwork::{
///     colour::{Hue, Level, Shade, Tone},
///     toner::{Exposed, neutralising_dose},
/// };
///
/// let level = Level::new(9.0)?;
/// let violet = Shade::new("9-7", level, Tone::of(Hue::Violet))?;
/// let neutral = Shade::new("9-0", level, Tone::neutral())?;
/// let dose = neutralising_dose(&Exposed::lightened(Level::new(5.0)?, level), &violet, &neutral);
/// assert!(dose.chroma_left < dose.chroma_before);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn neutralising_dose(exposed: &Exposed, neutraliser: &Shade, carrier: &Shade) -> NeutralisingDose {
    let predictors = Predictor::all(exposed, &[neutraliser, carrier]);
    let balances: Vec<_> = predictors.iter().map(balance).collect();
    let (best, chroma_left) = balances.first().copied().unwrap_or((Share::NONE, 0.0));
    let widen = |all: Interval<Share>, (share, _): &(Share, f64)| all.widened_to(Interval::exact(*share));
    let balance = balances.iter().fold(Interval::exact(best), widen);
    NeutralisingDose {
        balance,
        chroma_before: exposed.look().lab().chroma(),
        chroma_without: predictors.first().map_or(0.0, |predictor| chroma(predictor, Share::NONE)),
        chroma_left,
        basis: Basis::Assumed,
    }
}

/// The share, to 1 %, that leaves the least chroma, and that chroma.
fn balance(predictor: &Predictor) -> (Share, f64) {
    (0..=100)
        .filter_map(|percent| Share::from_percent(f64::from(percent)).ok())
        .map(|share| (share, chroma(predictor, share)))
        .fold((Share::NONE, f64::INFINITY), |best, one| if one.1 < best.1 { one } else { best })
}

/// Chroma of the hair under a mix with this share of the first shade, the rest being the second.
fn chroma(predictor: &Predictor, share: Share) -> f64 {
    lab_of_linear(predictor.toned([(0, share.fraction()), (1, 1.0 - share.fraction())])).chroma()
}
