//! Wrappers of `foilwork::mix` and `foilwork::scale`: what a scale can weigh, and the strength as applied.

use super::ratio::Ratio;
use crate::{
    answer::answer,
    bounds::{Estimate, Stated},
    columns::{Column, OnRefusal, apply_kernel},
    error::{FoilworkError, raise},
    sequence::Sequence,
    target::How,
};
use foilwork::{
    column::{self, Cells},
    mix::{self, MinimumError},
    quantity::{InvalidQuantity, Mass, MassFraction, Share},
    scale,
};
use pyo3::prelude::*;

pub fn mass(grams: f64) -> PyResult<Mass> {
    Mass::from_g(grams).map_err(raise)
}

pub fn masses(grams: &[f64]) -> PyResult<Vec<Mass>> {
    grams.iter().map(|g| Mass::from_g(*g)).collect::<Result<_, InvalidQuantity>>().map_err(raise)
}

answer! {
    in "foilwork.mix";
    /// One step on the scale; made by :meth:`Weighing.tare_order`.
    TareStep as tuple {
        /// The part, counted from 0.
        part: usize,
        /// What to add, in g.
        add_g: f64,
        /// What the scale then shows, in g.
        reading_g: f64,
    }
}

answer! {
    in "foilwork.mix";
    /// The strength of a bowl as meant and as weighed; made by :meth:`Weighing.strength_shift`.
    StrengthShift {
        /// The strength by the recipe, in % w/w.
        wanted_ww_percent: Estimate<f64>,
        /// The strength of what is on the scale, in % w/w.
        weighed_ww_percent: Estimate<f64>,
        /// Change of the best estimate by rounding, in percentage points w/w.
        percentage_points: f64,
    }
}

answer! {
    in "foilwork.mix";
    /// A bowl as the scale can weigh it; made by :func:`weigh`.
    Weighing {
        /// What to put on the scale, in g, in the order of the recipe.
        masses_g: Vec<f64>,
        /// What the recipe wants, in g.
        wanted_g: Vec<f64>,
        /// The division of the scale, in g.
        division_g: f64,
        /// The total on the scale in g.
        total_g: f64,
        /// How far each part's share of the bowl is from the recipe, in percent of the share; negative is too little.
        ratio_errors_percent: Vec<f64>,
        /// The largest of them without sign; no other weighing with this total has a smaller one.
        worst_ratio_error_percent: f64,
        /// Parts (counted from 0) that the recipe wants and the scale cannot show.
        vanished: Vec<usize>,
    }
    impl {
        /// What rounding does to the strength of the bowl.
        ///
        /// Args:
        ///     strengths_ww_percent: strength of each part in % w/w, as a number or (low, best, high); missing ones are 0.
        ///
        /// Returns:
        ///     The strength as meant and as weighed.
        ///
        /// Raises:
        ///     FoilworkError: a strength outside 0 to 100 % w/w.
        fn strength_shift(&self, strengths_ww_percent: Sequence<Stated<MassFraction>>) -> PyResult<StrengthShift> {
            let strengths_ww_percent = strengths_ww_percent.0;
            let strengths: Vec<_> = strengths_ww_percent.into_iter().map(|s| s.0).collect();
            let shift = self.weighing()?.strength_shift(&strengths).map_err(raise)?;
            Ok(StrengthShift {
                wanted_ww_percent: shift.wanted.into(),
                weighed_ww_percent: shift.weighed.into(),
                percentage_points: shift.percentage_points(),
            })
        }

        /// The order on the scale: smallest first.
        ///
        /// Args:
        ///     last: the part (counted from 0) that comes last whatever its mass: the developer.
        ///
        /// Returns:
        ///     The steps.
        #[pyo3(signature = (last = None))]
        fn tare_order(&self, last: Option<usize>) -> PyResult<Vec<TareStep>> {
            let step = |step: &mix::TareStep| TareStep {
                part: step.part,
                add_g: step.add.g(),
                reading_g: step.reading.g(),
            };
            Ok(self.weighing()?.tare_order(last).iter().map(step).collect())
        }
    }
}

impl Weighing {
    fn weighing(&self) -> PyResult<scale::Weighing> {
        scale::weigh(&masses(&self.wanted_g)?, mass(self.division_g)?).map_err(raise)
    }
}

impl From<scale::Weighing> for Weighing {
    fn from(found: scale::Weighing) -> Self {
        let each = |of: fn(&scale::Weighed) -> f64| found.parts().iter().map(of).collect();
        Self {
            masses_g: each(|part| part.weighed.g()),
            wanted_g: each(|part| part.wanted.g()),
            division_g: found.division().g(),
            total_g: found.total().g(),
            ratio_errors_percent: each(scale::Weighed::ratio_error_percent),
            worst_ratio_error_percent: found.worst_ratio_error_percent(),
            vanished: found.vanished().collect(),
        }
    }
}

/// Round parts to a scale: they add up to the rounded total, and the worst error of ratio is the least possible.
///
/// Args:
///     masses_g: masses of the parts in g.
///     division_g: division of the scale in g.
///
/// Returns:
///     The weighing.
///
/// Raises:
///     FoilworkError: when there is nothing to weigh, or the division does not suit the bowl.
///
/// Examples:
///     >>> from foilwork.mix import weigh
///     >>> weigh([33.34, 33.33, 33.33], 1).masses_g
///     [34.0, 33.0, 33.0]
///     >>> bowl = weigh([20.4, 40.8], 1)
///     >>> [(step.part, step.reading_g) for step in bowl.tare_order(last=0)]
///     [(1, 41.0), (0, 61.0)]
///     >>> round(bowl.strength_shift([0, 9]).percentage_points, 3)
///     0.049
///
/// Source:
///     Greedy increments for separable convex allocation (Ibaraki and Katoh 1988, from memory); checked by brute force.
#[pyfunction]
pub fn weigh(masses_g: Sequence<f64>, division_g: f64) -> PyResult<Weighing> {
    let masses_g = masses_g.0;
    Ok(scale::weigh(&masses(&masses_g)?, mass(division_g)?).map_err(raise)?.into())
}

/// Strength of the mixed bowl: the mass-weighted mean of the strengths of its parts.
///
/// Args:
///     masses_g: masses of the parts in g.
///     strengths_ww_percent: strength of each part in % w/w, as a number or (low, best, high). An additive has 0.
///
/// Returns:
///     The strength in % w/w, with its bounds.
///
/// Raises:
///     FoilworkError: when the bowl is empty, or the lists differ in length.
///
/// Examples:
///     >>> from foilwork.mix import as_applied
///     >>> as_applied([30, 60], [0, 9])
///     Bounds(low=6.0, best=6.0, high=6.0)
///
/// Source:
///     Conservation of solute mass.
#[pyfunction]
pub fn as_applied(
    masses_g: Sequence<f64>,
    strengths_ww_percent: Sequence<Stated<MassFraction>>,
) -> PyResult<Estimate<f64>> {
    let masses_g = masses_g.0;
    let strengths_ww_percent = strengths_ww_percent.0;
    if masses_g.len() != strengths_ww_percent.len() {
        let (parts, given) = (masses_g.len(), strengths_ww_percent.len());
        return Err(FoilworkError::new_err(format!(
            "{parts} masses and {given} strengths: give one strength for each part (0 for an additive)"
        )));
    }
    let parts: Vec<_> = masses(&masses_g)?.into_iter().zip(strengths_ww_percent.into_iter().map(|s| s.0)).collect();
    mix::as_applied(&parts).map(Estimate::from).map_err(raise)
}

answer! {
    in "foilwork.mix";
    /// From which mass on a ratio can be weighed; made by :func:`minimum_bowl`.
    MinimumBowl as tuple {
        /// The smallest bowl that happens to be within the tolerance, in g.
        first_g: f64,
        /// The mass from which on every bowl is, in g.
        always_from_g: f64,
    }
}

/// The least that can be weighed in a ratio so that no part's share is off by more than a tolerance.
///
/// Args:
///     ratio: the ratio.
///     division_g: division of the scale in g.
///     tolerance_percent: largest error of a part's share, in percent of that share.
///
/// Returns:
///     The smallest bowl within the tolerance, and from where on every bowl is; it unpacks.
///
/// Raises:
///     FoilworkError: for a tolerance below 0.01 %, or a part too small for any scale.
///
/// Examples:
///     >>> from foilwork.mix import Ratio, minimum_bowl
///     >>> minimum_bowl(Ratio("1:1.5"), 1, 5)
///     MinimumBowl(first_g=5.0, always_from_g=50.0)
#[pyfunction]
pub fn minimum_bowl(ratio: &Ratio, division_g: f64, tolerance_percent: f64) -> PyResult<MinimumBowl> {
    let tolerance = Share::from_percent(tolerance_percent).map_err(raise)?;
    let bowl = mix::minimum_bowl(&ratio.0, mass(division_g)?, tolerance).map_err(raise)?;
    Ok(MinimumBowl { first_g: bowl.first.g(), always_from_g: bowl.always_from.g() })
}

/// The least a scale can weigh of one thing so that rounding is off by no more than a tolerance.
///
/// Args:
///     division_g: division of the scale in g, a number or an array.
///     tolerance_percent: largest error in percent of the mass, a number or an array that broadcasts with it.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
///     out: an array of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     The mass in g, half a division over the tolerance: a float for numbers, else a float64 array.
///
/// Raises:
///     FoilworkError: for a tolerance below 0.01 %, or a division of 0 g.
///
/// Examples:
///     >>> from foilwork.mix import minimum_mass
///     >>> minimum_mass(1, 5)
///     10.0
#[pyfunction]
#[pyo3(
    signature = (division_g, tolerance_percent, *, errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(division_g, tolerance_percent, *, errors='raise', out=None, where=None)"
)]
pub fn minimum_mass<'py>(
    py: Python<'py>,
    division_g: Column<'py>,
    tolerance_percent: Column<'py>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Bound<'py, PyAny>> {
    let rule = |[division, tolerance]: [f64; 2]| {
        let range = |error: InvalidQuantity| MinimumError::Ratio(error.into());
        let tolerance = Share::from_percent(tolerance).map_err(range)?;
        Ok::<_, MinimumError>([mix::minimum_mass(Mass::from_g(division).map_err(range)?, tolerance)?.g()])
    };
    let kernel = |[a, b]: [Cells<'_>; 2], [out]: [&mut [f64]; 1]| column::minimum_masses(a, b, out);
    let [found] = apply_kernel(py, [&division_g, &tolerance_percent], How::new(errors, out, r#where)?, rule, kernel)?;
    Ok(found)
}
