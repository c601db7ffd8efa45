use crate::{
    quantity::{Quantity, Share},
    source::{Basis, Citation, Interval, citations},
};
use serde::Serialize;

/// The share of a natural (neutral) shade in a formula that covers white hair.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct NaturalShare {
    /// Share of the natural shade among the shades of the formula, with the range the trade gives.
    #[serde(rename = "share_percent")]
    pub share: Interval<Share>,
    /// Always a convention of the trade.
    pub basis: Basis,
    /// The one point of it that is in print.
    pub printed_point: &'static Citation,
}

/// Corners of the convention: percent of white, then the least, usual and most share of natural shade in percent.
///
/// Rows of the trade: under 25-30 % white, 0-25 %; 30-50 %, 33-50 %; 50-75 %, 50-67 %; 75-100 %, 67-100 %. The usual
/// share runs straight from corner to corner and so passes the printed half-and-half at 50 %.
const CORNERS: [(f64, f64); 6] = [(0.0, 0.0), (25.0, 25.0), (30.0, 33.0), (50.0, 50.0), (75.0, 67.0), (100.0, 100.0)];

/// How much natural shade the trade adds to cover a share of white hair: a convention, with its range.
///
/// It is about coverage only; resistance, level and developer decide too, and a strand test decides last.
///
/// # Units
///
/// Both in percent: of the hair, and of the shades in the formula (developer not counted).
///
/// # Example
///
/// ```
/// use foilwork::{mix::natural_share, quantity::Share};
///
/// let half = natural_share(Share::from_percent(50.0)?);
/// assert_eq!((half.share.low().percent(), half.share.best().percent(), half.share.high().percent()), (33.0, 50.0, 67.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Common practice; half natural at half white is printed in a trade article (`grey-article` of the register).
#[must_use]
pub fn natural_share(white: Share) -> NaturalShare {
    let percent = white.percent();
    // Where two rows meet, or the border itself is vague, the range covers both.
    let (low, high) = match percent {
        p if p < 25.0 => (0.0, 25.0),
        p if p < 30.0 => (0.0, 50.0),
        p if p < 50.0 => (33.0, 50.0),
        p if p <= 50.0 => (33.0, 67.0),
        p if p < 75.0 => (50.0, 67.0),
        p if p <= 75.0 => (50.0, 100.0),
        _ => (67.0, 100.0),
    };
    let [low, best, high] = [low, between_corners(percent).clamp(low, high), high].map(Share::nearest);
    let share = Interval::ordered(low, best, high);
    NaturalShare { share, basis: Basis::CommonPractice, printed_point: &citations::mix::GREY_ARTICLE }
}

fn between_corners(white: f64) -> f64 {
    let pairs = CORNERS.iter().zip(CORNERS.iter().skip(1));
    let mut inside = pairs.filter(|((from, _), (to, _))| *from <= white && white <= *to);
    inside.next().map_or(100.0, |((x0, y0), (x1, y1))| y0 + (y1 - y0) * (white - x0) / (x1 - x0))
}
