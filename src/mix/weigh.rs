use crate::quantity::{Mass, Quantity};
use serde::Serialize;

/// One part on the scale.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Weighed {
    /// The mass the recipe asks for.
    #[serde(rename = "wanted_g")]
    pub wanted: Mass,
    /// The mass to put on the scale, a whole number of divisions.
    #[serde(rename = "weighed_g")]
    pub weighed: Mass,
    /// How far this part's share of the bowl is from the recipe's, in percent of the share; negative is too little.
    ratio_error_percent: f64,
}

impl Weighed {
    /// How far this part's share of the bowl is from the recipe's, in percent of that share; negative is too little.
    #[must_use]
    pub const fn ratio_error_percent(&self) -> f64 {
        self.ratio_error_percent
    }

    /// Whether the recipe wants some of it and the scale cannot show any.
    #[must_use]
    pub fn vanishes(&self) -> bool {
        self.wanted.g() > 0.0 && self.weighed.g() == 0.0
    }
}

/// A bowl as the scale can weigh it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Weighing {
    parts: Vec<Weighed>,
    #[serde(rename = "division_g")]
    division: Mass,
    #[serde(rename = "total_g")]
    total: Mass,
}

impl Weighing {
    /// The parts, in the order given.
    #[must_use]
    pub fn parts(&self) -> &[Weighed] {
        &self.parts
    }

    /// The division of the scale.
    #[must_use]
    pub const fn division(&self) -> Mass {
        self.division
    }

    /// The total wanted, rounded to the division; the weighed parts add up to it.
    #[must_use]
    pub const fn total(&self) -> Mass {
        self.total
    }

    /// The largest deviation of a part's share from the recipe, in percent of that share, without sign.
    #[must_use]
    pub fn worst_ratio_error_percent(&self) -> f64 {
        self.parts.iter().map(|p| p.ratio_error_percent.abs()).fold(0.0, f64::max)
    }

    /// Parts that the recipe wants and the scale cannot show: weigh a bigger bowl or use a finer scale.
    pub fn vanished(&self) -> impl Iterator<Item = usize> + '_ {
        self.parts.iter().enumerate().filter(|(_, part)| part.vanishes()).map(|(at, _)| at)
    }
}

/// Masses that cannot be weighed on this scale.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum WeighError {
    /// Nothing on the scale.
    #[error("there is nothing to weigh (total 0 g): give at least one part above 0 g")]
    Nothing,
    /// A scale divided into nothing.
    #[error("invalid division of the scale (got {0}): must be above 0 g, for example 0.1 g or 1 g")]
    Division(Mass),
    /// The whole bowl disappears in one division.
    #[error("the bowl of {total} rounds to nothing on a scale of {division}: use a finer scale or a bigger bowl")]
    Coarse {
        /// The bowl.
        total: Mass,
        /// The division.
        division: Mass,
    },
    /// More divisions than can be counted exactly.
    #[error("the bowl of {total} is too many divisions of {division} to count exactly (at most 9e15)")]
    Fine {
        /// The bowl.
        total: Mass,
        /// The division.
        division: Mass,
    },
}

/// Rounds parts to a scale so that they add up to the rounded total and the worst error of ratio is the least possible.
///
/// The total is rounded to the nearest division (a tie goes to the even one). Each part starts at its nearest division;
/// what is missing or too much goes, one division at a time, where it spoils a part's own share least. For a largest
/// relative error that is exact: no other set of whole divisions with that total has a smaller one.
///
/// # Units
///
/// Masses in g, errors in percent of a part's share.
///
/// # Errors
///
/// [`WeighError`] when there is nothing to weigh or the division does not suit the bowl.
///
/// # Example
///
/// ```
/// use foilwork::{mix::weigh, quantity::Mass};
///
/// let parts = [Mass::from_g(33.34)?, Mass::from_g(33.33)?, Mass::from_g(33.33)?];
/// let bowl = weigh(&parts, Mass::from_g(1.0)?)?;
/// let grams: Vec<f64> = bowl.parts().iter().map(|p| p.weighed.g()).collect();
/// assert_eq!(grams, [34.0, 33.0, 33.0]);
/// assert_eq!(bowl.total().g(), 100.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Greedy increments for separable convex resource allocation: T. Ibaraki and N. Katoh, Resource Allocation Problems,
/// MIT Press, 1988 (from memory); checked by brute force in the tests.
pub fn weigh(parts: &[Mass], division: Mass) -> Result<Weighing, WeighError> {
    let total: Mass = parts.iter().copied().sum();
    if total.g() <= 0.0 {
        return Err(WeighError::Nothing);
    }
    let scale = Scale::new(division)?;
    let units = scale.nearest(total);
    if units > 9e15 {
        return Err(WeighError::Fine { total, division });
    }
    if units < 1.0 {
        return Err(WeighError::Coarse { total, division });
    }
    let mut shares: Vec<Allotment> =
        parts.iter().map(|part| Allotment::nearest(units * part.g() / total.g())).collect();
    settle(&mut shares, units);
    let weighed = |(part, share): (&Mass, &Allotment)| Weighed {
        wanted: *part,
        weighed: scale.mass(share.units),
        ratio_error_percent: share.error_percent(),
    };
    let parts = parts.iter().zip(&shares).map(weighed).collect();
    Ok(Weighing { parts, division, total: scale.mass(units) })
}

/// One part in whole divisions, and its unrounded share of the rounded total.
#[derive(Debug, Clone, Copy)]
struct Allotment {
    quota: f64,
    units: f64,
}

impl Allotment {
    fn nearest(quota: f64) -> Self {
        Self { quota, units: quota.round_ties_even() }
    }

    fn error_percent(self) -> f64 {
        if self.quota > 0.0 { 100.0 * (self.units - self.quota) / self.quota } else { 0.0 }
    }

    /// The error after one step, or nothing when the step is impossible.
    fn after(self, step: f64) -> Option<f64> {
        let moved = Self { units: self.units + step, ..self };
        (self.quota > 0.0 && moved.units >= 0.0).then(|| moved.error_percent().abs())
    }
}

/// Moves single divisions until the parts add up, always where the resulting error is smallest.
fn settle(shares: &mut [Allotment], units: f64) {
    loop {
        let missing = units - shares.iter().map(|s| s.units).sum::<f64>();
        let step = if missing > 0.5 {
            1.0
        } else if missing < -0.5 {
            -1.0
        } else {
            return;
        };
        let cheapest = shares
            .iter_mut()
            .filter_map(|share| share.after(step).map(|error| (error, share)))
            .min_by(|(a, _), (b, _)| a.total_cmp(b));
        match cheapest {
            Some((_, share)) => share.units += step,
            None => return,
        }
    }
}

/// A division, with its reciprocal where that is a whole number: 675 tenths are 67.5, not 67.500 000 000 000 01.
#[derive(Clone, Copy)]
pub(super) struct Scale {
    division: f64,
    per_gram: Option<f64>,
}

impl Scale {
    pub(super) fn new(division: Mass) -> Result<Self, WeighError> {
        let value = division.g();
        let per_gram = (1.0 / value).round();
        if value > 0.0 && per_gram.is_finite() {
            let whole = per_gram >= 1.0 && (per_gram * value - 1.0).abs() < 1e-12;
            Ok(Self { division: value, per_gram: whole.then_some(per_gram) })
        } else {
            Err(WeighError::Division(division))
        }
    }

    /// The nearest whole number of divisions; a tie goes to the even one.
    pub(super) fn nearest(self, mass: Mass) -> f64 {
        self.per_gram.map_or(mass.g() / self.division, |n| mass.g() * n).round_ties_even()
    }

    pub(super) fn mass(self, units: f64) -> Mass {
        let grams = self.per_gram.map_or(units * self.division, |n| units / n);
        Mass::nearest(grams)
    }
}
