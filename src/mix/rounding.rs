use super::{AsAppliedError, as_applied};
use crate::{
    quantity::{Mass, MassFraction},
    scale::{Division, Weighed, Weighing},
    source::Interval,
};
use serde::Serialize;

/// What rounding to the scale does to the strength of the bowl.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct StrengthShift {
    /// Strength of the bowl as the recipe has it.
    #[serde(rename = "wanted_ww_percent")]
    pub wanted: Interval<MassFraction>,
    /// Strength of the bowl as weighed.
    #[serde(rename = "weighed_ww_percent")]
    pub weighed: Interval<MassFraction>,
}

impl StrengthShift {
    /// Weighed minus wanted, best estimates, in percentage points w/w.
    #[must_use]
    pub fn percentage_points(&self) -> f64 {
        self.weighed.best().ww_percent() - self.wanted.best().ww_percent()
    }
}

/// One step on the scale: add this until it shows that.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct TareStep {
    /// Which part, counted from 0 in the order of the recipe.
    pub part: usize,
    /// How much to add.
    #[serde(rename = "add_g")]
    pub add: Mass,
    /// What the scale shows then, when only the empty bowl was tared.
    #[serde(rename = "reading_g")]
    pub reading: Mass,
}

impl Weighing {
    /// The strength of the bowl wanted and weighed, from the strengths of its parts in the same order.
    ///
    /// Strengths that are missing count as 0 % w/w, as for an additive.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{quantity::{Mass, MassFraction}, scale::weigh, source::Interval};
    ///
    /// let bowl = weigh(&[Mass::from_g(30.4)?, Mass::from_g(45.3)?], Mass::from_g(5.0)?)?;
    /// let strength = |percent| MassFraction::from_ww_percent(percent).map(Interval::exact);
    /// let shift = bowl.strength_shift(&[strength(0.0)?, strength(6.0)?])?;
    /// assert_eq!(format!("{:+.3}", shift.percentage_points()), "+0.010");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    ///
    /// As [`as_applied`].
    pub fn strength_shift(&self, strengths: &[Interval<MassFraction>]) -> Result<StrengthShift, AsAppliedError> {
        let none = std::iter::repeat(Interval::exact(MassFraction::ZERO));
        let strengths = || strengths.iter().copied().chain(none.clone());
        let mixed = |mass: fn(&Weighed) -> Mass| {
            let parts: Vec<_> = self.parts().iter().map(mass).zip(strengths()).collect();
            as_applied(&parts)
        };
        Ok(StrengthShift { wanted: mixed(|p| p.wanted)?, weighed: mixed(|p| p.weighed)? })
    }

    /// The order in which to weigh: smallest part first, what starts the reaction last.
    ///
    /// A slip with a small part spoils its share most and is then cheapest to start over; `last` (usually the
    /// developer) goes in when everything else is right, because it starts the clock. Ties keep the order of the recipe.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{quantity::Mass, scale::weigh};
    ///
    /// // shade, developer, additive: additive first, developer last
    /// let bowl = weigh(&[Mass::from_g(30.0)?, Mass::from_g(45.0)?, Mass::from_g(2.0)?], Mass::from_g(1.0)?)?;
    /// let readings: Vec<(usize, f64)> = bowl.tare_order(Some(1)).iter().map(|s| (s.part, s.reading.g())).collect();
    /// assert_eq!(readings, [(2, 2.0), (0, 32.0), (1, 77.0)]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Source
    ///
    /// Common practice; the readings are sums.
    #[must_use]
    pub fn tare_order(&self, last: Option<usize>) -> Vec<TareStep> {
        let mut order: Vec<(usize, Mass)> = self.parts().iter().map(|p| p.weighed).enumerate().collect();
        order.sort_by(|(a, x), (b, y)| (last == Some(*a)).cmp(&(last == Some(*b))).then(x.g().total_cmp(&y.g())));
        let mut units = 0.0;
        let scale = Division::new(self.division()).ok();
        let step = |(part, add): (usize, Mass)| {
            // Readings are whole divisions too: summed as such, they show no stray last digits.
            units += scale.map_or(0.0, |s| s.nearest(add));
            TareStep { part, add, reading: scale.map_or(add, |s| s.of(units)) }
        };
        order.into_iter().map(step).collect()
    }
}
