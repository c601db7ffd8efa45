use super::spread::BOUND;
use crate::{
    quantity::{Quantity, Share},
    source::Interval,
};
use serde::Serialize;

/// White hairs counted in one region.
#[derive(Debug, Clone, PartialEq)]
pub struct WhiteCount {
    /// What the region is called.
    pub region: String,
    /// Its share of all the hair.
    pub share: Share,
    /// Hairs that are white.
    pub white: u32,
    /// Hairs that were looked at.
    pub counted: u32,
}

/// How much of the hair is white.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WhiteShare {
    /// Of all the hair.
    #[serde(rename = "white_percent")]
    pub white: Interval<Share>,
    /// How much of the hair was counted; the rest is taken like it, with the bounds of its least and most white region.
    #[serde(rename = "counted_percent")]
    pub counted: Share,
    /// The regions that were counted.
    pub regions: Vec<String>,
}

/// The share of white hair from counts in some regions, each weighed by its share of the hair; none when nothing was counted.
///
/// # Example
///
/// ```
/// use foilwork::{hair::{WhiteCount, white_share}, quantity::Share};
///
/// let count = |region: &str, percent, white| {
///     Ok::<_, foilwork::quantity::InvalidQuantity>(WhiteCount {
///         region: region.to_owned(), share: Share::from_percent(percent)?, white, counted: 100,
///     })
/// };
/// let found = white_share(&[count("sides", 30.0, 60)?, count("back", 70.0, 10)?]);
/// assert_eq!(found.map(|found| found.white.best().percent()), Some(25.0));
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
///
/// # Source
///
/// Bounds of each count by Wilson's score (80 of 100), independent of each other.
#[must_use]
pub fn white_share(counts: &[WhiteCount]) -> Option<WhiteShare> {
    let counted: Vec<(f64, Interval<f64>, &str)> = counts
        .iter()
        .filter(|count| count.counted > 0 && count.share > Share::NONE)
        .map(|count| (count.share.fraction(), score(count.white, count.counted), count.region.as_str()))
        .collect();
    let total: f64 = counted.iter().map(|(share, ..)| share).sum();
    if total <= 0.0 {
        return None;
    }
    let best = counted.iter().map(|(share, white, _)| share / total * white.best()).sum::<f64>();
    let away = |bound: fn(&Interval<f64>) -> f64| {
        let square =
            |(share, white, _): &(f64, Interval<f64>, &str)| (share / total * (bound(white) - white.best())).powi(2);
        counted.iter().map(square).sum::<f64>().sqrt()
    };
    let (low, high) = (best - away(Interval::low), best + away(Interval::high));
    // What nobody counted may be as white as the least or the most white region.
    let missing = (1.0 - total).max(0.0);
    let least = counted.iter().map(|(_, white, _)| white.low()).fold(low, f64::min);
    let most = counted.iter().map(|(_, white, _)| white.high()).fold(high, f64::max);
    let whole = |edge: f64, rest: f64| edge * (1.0 - missing) + rest * missing;
    let share = |fraction: f64| Share::nearest(fraction * 100.0);
    Some(WhiteShare {
        white: Interval::ordered(whole(low, least), best, whole(high, most)).map(share),
        counted: share(total),
        regions: counted.iter().map(|(.., region)| (*region).to_owned()).collect(),
    })
}

/// Wilson's score interval around a counted share.
fn score(white: u32, counted: u32) -> Interval<f64> {
    let n = f64::from(counted);
    let p = f64::from(white.min(counted)) / n;
    let z2 = BOUND * BOUND;
    let middle = (p + z2 / (2.0 * n)) / (1.0 + z2 / n);
    let half = BOUND / (1.0 + z2 / n) * (p * (1.0 - p) / n + z2 / (4.0 * n * n)).sqrt();
    Interval::ordered(middle - half, p, middle + half)
}
