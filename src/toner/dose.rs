use super::{Exposed, bench::Bench};
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
    /// The ground: assumed.
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
    let benches = Bench::all(exposed, &[neutraliser, carrier]);
    let balances: Vec<_> = benches.iter().map(balance).collect();
    let (best, chroma_left) = balances.first().copied().unwrap_or((Share::NONE, 0.0));
    let low = balances.iter().fold(best, |low, (share, _)| if *share < low { *share } else { low });
    let high = balances.iter().fold(best, |high, (share, _)| if *share > high { *share } else { high });
    NeutralisingDose {
        balance: Interval::new(low, best, high).unwrap_or_else(|_| Interval::exact(best)),
        chroma_before: exposed.look().lab().chroma(),
        chroma_without: benches.first().map_or(0.0, |bench| chroma(bench, Share::NONE)),
        chroma_left,
        basis: Basis::Assumed,
    }
}

/// The share, to 1 %, that leaves the least chroma, and that chroma.
fn balance(bench: &Bench) -> (Share, f64) {
    (0..=100)
        .filter_map(|percent| Share::from_percent(f64::from(percent)).ok())
        .map(|share| (share, chroma(bench, share)))
        .fold((Share::NONE, f64::INFINITY), |best, one| if one.1 < best.1 { one } else { best })
}

/// Chroma of the hair under a mix with this share of the first shade, the rest being the second.
fn chroma(bench: &Bench, share: Share) -> f64 {
    lab_of_linear(bench.toned([(0, share.fraction()), (1, 1.0 - share.fraction())])).chroma()
}
