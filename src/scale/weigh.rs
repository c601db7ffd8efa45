use super::{division::Division, error::WeighError};
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
///
/// # Example
///
/// ```
/// use foilwork::{quantity::Mass, scale::weigh};
///
/// // 0.3 g of an additive in 60 g: a scale that counts whole grams shows none of it.
/// let g = Mass::from_g;
/// let bowl = weigh(&[g(0.3)?, g(59.7)?], g(1.0)?)?;
/// assert_eq!((bowl.division(), bowl.total()), (g(1.0)?, g(60.0)?));
/// assert_eq!(bowl.vanished().collect::<Vec<_>>(), [0]);
/// assert!(bowl.parts()[0].vanishes());
/// assert_eq!(bowl.parts()[0].ratio_error_percent(), -100.0); // all of it is missing
/// assert_eq!(bowl.worst_ratio_error_percent(), 100.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Weighing {
    parts: Vec<Weighed>,
    #[serde(rename = "division_g")]
    division: Mass,
    #[serde(rename = "total_g")]
    total: Mass,
}

/// The divisions that scales are made with, below 1 g, in g.
const SCALES_G: [f64; 9] = [0.5, 0.2, 0.1, 0.05, 0.02, 0.01, 0.005, 0.002, 0.001];

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

    /// The total wanted, rounded to the division, less what is not in hand; the weighed parts add up to it.
    #[must_use]
    pub const fn total(&self) -> Mass {
        self.total
    }

    /// The largest deviation of a part's share from the recipe, in percent of that share, without sign.
    #[must_use]
    pub fn worst_ratio_error_percent(&self) -> f64 {
        self.parts.iter().map(|p| p.ratio_error_percent.abs()).fold(0.0, f64::max)
    }

    /// The same, refused when the scale cannot show a part that the recipe wants.
    ///
    /// # Errors
    ///
    /// [`WeighError::Vanishes`] with the scale that would show it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{quantity::Mass, scale::weigh};
    ///
    /// let bowl = weigh(&[Mass::from_g(0.3)?, Mass::from_g(59.7)?], Mass::from_g(1.0)?)?;
    /// let refused = bowl.all_shown().unwrap_err().to_string();
    /// assert!(refused.contains("use a scale of 0.2 g or finer"), "{refused}");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn all_shown(self) -> Result<Self, WeighError> {
        match self.parts.iter().find(|part| part.vanishes()) {
            Some(part) => Err(WeighError::Vanishes {
                wanted: part.wanted,
                division: self.division,
                finer: SCALES_G.iter().map(|&g| Mass::nearest(g)).find(|&g| g <= part.wanted && g < self.division),
            }),
            None => Ok(self),
        }
    }

    /// Parts that the recipe wants and the scale cannot show: weigh a bigger bowl or use a finer scale.
    pub fn vanished(&self) -> impl Iterator<Item = usize> + '_ {
        self.parts.iter().enumerate().filter(|(_, part)| part.vanishes()).map(|(at, _)| at)
    }
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
/// use foilwork::{quantity::Mass, scale::weigh};
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
/// Greedy increments for separable convex resource allocation: [Ibaraki and
/// Katoh, 1988](crate::source::citations::mix::IBARAKI_KATOH_1988) (from memory); checked by brute force in the tests.
pub fn weigh(parts: &[Mass], division: Mass) -> Result<Weighing, WeighError> {
    let parts: Vec<(Mass, Option<Mass>)> = parts.iter().map(|&part| (part, None)).collect();
    weigh_in_hand(&parts, division)
}

/// The same when some parts come from a bottle that is nearly empty: each part with what is in hand of it, where that is
/// limited.
///
/// No part is asked for more than is in hand; where the bottles cannot make up the rounded total, it is that much less.
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
/// use foilwork::{quantity::Mass, scale::weigh_in_hand};
///
/// let g = Mass::from_g;
/// let bowl = weigh_in_hand(&[(g(9.7)?, Some(g(9.7)?)), (g(19.4)?, None)], g(1.0)?)?;
/// let grams: Vec<f64> = bowl.parts().iter().map(|p| p.weighed.g()).collect();
/// assert_eq!(grams, [9.0, 20.0]); // not 10 g: the bottle holds 9.7 g
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// As [`weigh`].
pub fn weigh_in_hand(parts: &[(Mass, Option<Mass>)], division: Mass) -> Result<Weighing, WeighError> {
    let scale = Division::new(division)?;
    let total: Mass = parts.iter().map(|(mass, _)| *mass).sum();
    if total == Mass::ZERO {
        return Err(WeighError::Nothing);
    }
    let units = scale.nearest(total);
    if units > 9e15 {
        return Err(WeighError::Fine { total, division });
    }
    if units < 1.0 {
        return Err(WeighError::Coarse { total, division });
    }
    let share = |&(part, in_hand): &(Mass, Option<Mass>)| {
        let most = in_hand.map_or(f64::INFINITY, |mass| scale.within(mass));
        Allotment::nearest(units * part.g() / total.g(), most)
    };
    let mut shares: Vec<Allotment> = parts.iter().map(share).collect();
    settle(&mut shares, units);
    let weighed = |((part, _), share): (&(Mass, Option<Mass>), &Allotment)| Weighed {
        wanted: *part,
        weighed: scale.of(share.units),
        ratio_error_percent: share.error_percent(),
    };
    let units = shares.iter().map(|share| share.units).sum();
    let parts = parts.iter().zip(&shares).map(weighed).collect();
    Ok(Weighing { parts, division, total: scale.of(units) })
}

/// One part in whole divisions, its unrounded share of the rounded total, and the most there is of it.
#[derive(Debug, Clone, Copy)]
struct Allotment {
    quota: f64,
    units: f64,
    most: f64,
}

impl Allotment {
    fn nearest(quota: f64, most: f64) -> Self {
        Self { quota, units: quota.round_ties_even().min(most), most }
    }

    fn error_percent(self) -> f64 {
        if self.quota > 0.0 { 100.0 * (self.units - self.quota) / self.quota } else { 0.0 }
    }

    /// The error after one step; none when the step is impossible.
    fn after(self, step: f64) -> Option<f64> {
        let moved = Self { units: self.units + step, ..self };
        (self.quota > 0.0 && moved.units >= 0.0 && moved.units <= self.most).then(|| moved.error_percent().abs())
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
