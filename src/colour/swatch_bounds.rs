//! Swatches whose starting point is an estimate: the same best, wider bounds.

use super::{Level, Swatch, space::lab_of};
use crate::source::Interval;

impl Swatch {
    /// Natural hair whose level is an estimate, such as a reading with its margin: under every set of assumptions what is
    /// darker than the best estimate is that of the darkest level, what is lighter that of the lightest.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::{Level, Swatch}, source::Interval};
    ///
    /// let level = Level::new;
    /// let (sure, off) = (level(6.0)?, Interval::new(level(5.5)?, level(6.0)?, level(6.5)?)?);
    /// let (narrow, wide) = (Swatch::natural(sure).lightness(), Swatch::natural_within(off).lightness());
    /// assert!(wide.low() < narrow.low() && wide.high() > narrow.high() && wide.best() == narrow.best());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn natural_within(level: Interval<Level>) -> Self {
        let (mut best, darkest, lightest) =
            (Self::natural(level.best()), Self::natural(level.low()), Self::natural(level.high()));
        let [_, middle, _] = best.best_sample();
        let ends = darkest.samples.into_iter().zip(lightest.samples);
        for (sample, (dark, light)) in best.samples.iter_mut().zip(ends) {
            let [_, y, _] = *sample;
            if y < middle {
                *sample = dark;
            } else if y > middle {
                *sample = light;
            }
        }
        best
    }

    /// The same best estimate with bounds that reach as far as two other colours do, such as those of the two ends of a
    /// reading's margin: under every set of assumptions the one of the three that moves farthest the way the set moves it;
    /// the two sets that move least give their places to the best estimates of the ends.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::{Level, Swatch};
    ///
    /// let lifted = |from: f64| Ok::<_, foilwork::colour::InvalidLevel>(Swatch::lightened(Level::new(from)?, Level::new(9.0)?));
    /// let (sure, ends) = (lifted(5.0)?, [lifted(4.0)?, lifted(6.0)?]);
    /// let wide = sure.widened_to(&ends).redness();
    /// assert!(wide.best() == sure.redness().best());
    /// assert!(ends.iter().all(|end| wide.contains(end.redness().best())));
    /// # Ok::<(), foilwork::colour::InvalidLevel>(())
    /// ```
    #[must_use]
    pub fn widened_to(&self, ends: &[Self; 2]) -> Self {
        let from = lab_of(self.best_sample());
        let away = |sample: [f64; 3]| {
            let to = lab_of(sample);
            [to.l() - from.l(), to.a() - from.a(), to.b() - from.b()]
        };
        let along = |way: [f64; 3], other: [f64; 3]| way.iter().zip(other).map(|(a, b)| a * b).sum::<f64>();
        let mut samples = self.samples;
        let mut moved: Vec<(usize, f64)> = Vec::new();
        let [darker, lighter] = ends;
        let theirs = darker.samples.iter().zip(&lighter.samples);
        for (i, (sample, (dark, light))) in samples.iter_mut().zip(theirs).enumerate().skip(1) {
            let way = away(*sample);
            let mut farthest = along(way, way);
            moved.push((i, farthest));
            for other in [dark, light] {
                let far = along(way, away(*other));
                if far > farthest {
                    (*sample, farthest) = (*other, far);
                }
            }
        }
        moved.sort_by(|a, b| a.1.total_cmp(&b.1));
        for ((i, _), end) in moved.into_iter().zip(ends) {
            if let Some(sample) = samples.get_mut(i) {
                *sample = end.best_sample();
            }
        }
        let mut wide = *self;
        wide.samples = samples;
        wide
    }
}
