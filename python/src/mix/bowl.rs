//! Wrappers of `foilwork::mix`: ratios, weighing, strength as applied, bowls.

use super::recipe::{Additive, Recipe};
use crate::{
    bounds::{Estimate, Stated},
    error::raise,
};
use foilwork::{
    mix::{self, BowlRequest, Pace},
    quantity::{Duration, InvalidQuantity, Mass, MassFraction, Share},
    scale,
};
use pyo3::prelude::*;
use rust_decimal::Decimal;

pub fn mass(grams: f64) -> PyResult<Mass> {
    Mass::from_g(grams).map_err(raise)
}

pub fn masses(grams: &[f64]) -> PyResult<Vec<Mass>> {
    grams.iter().map(|g| Mass::from_g(*g)).collect::<Result<_, InvalidQuantity>>().map_err(raise)
}

/// A mixing ratio by mass, kept as the exact decimals that were written.
///
/// Args:
///     text: parts joined by ``:`` or ``+``, for example ``"1:1.5"``, ``"1+2"`` or ``"3:1:6"``.
///
/// Raises:
///     FoilworkError: with the position of the character that cannot be read.
///
/// Examples:
///     >>> from foilwork.mix import Ratio
///     >>> Ratio("1:1.5").split_total(75)
///     [30.0, 45.0]
///     >>> str(Ratio("1+2")), Ratio("1:1.5").lowest_terms()
///     ('1+2', [2, 3])
#[pyclass(frozen, eq, module = "foilwork.mix")]
#[derive(PartialEq)]
pub struct Ratio(pub mix::Ratio);

#[pymethods]
impl Ratio {
    #[new]
    fn new(text: &str) -> PyResult<Self> {
        text.parse().map(Self).map_err(raise)
    }

    /// The parts as written, exact.
    #[getter]
    fn parts(&self) -> Vec<Decimal> {
        self.0.parts().to_vec()
    }

    /// The same ratio in the smallest whole numbers.
    fn lowest_terms(&self) -> Vec<u128> {
        self.0.lowest_terms()
    }

    /// Whether both ratios weigh out alike, as ``1:1.5`` and ``2:3`` do.
    fn same_mix(&self, other: &Self) -> bool {
        self.0.same_mix(&other.0)
    }

    /// The masses in g that make up ``total_g``; nothing is rounded.
    fn split_total(&self, total_g: f64) -> PyResult<Vec<f64>> {
        let parts = self.0.split_total(mass(total_g)?).map_err(raise)?;
        Ok(parts.iter().map(|part| part.g()).collect())
    }

    /// The shares of a total as decimals of 28 digits, in the unit of the total.
    fn split_decimal(&self, total: Decimal) -> PyResult<Vec<Decimal>> {
        self.0.split_decimal(total).map_err(raise)
    }

    /// All masses in g when part ``part`` (counted from 0) weighs ``mass_g``.
    fn given_part(&self, part: usize, mass_g: f64) -> PyResult<Vec<f64>> {
        let parts = self.0.given_part(part, mass(mass_g)?).map_err(raise)?;
        Ok(parts.iter().map(|part| part.g()).collect())
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> String {
        format!("Ratio('{}')", self.0)
    }
}

/// A bowl as the scale can weigh it; made by :func:`weigh`.
#[pyclass(frozen, module = "foilwork.mix")]
pub struct Weighing(scale::Weighing);

#[pymethods]
impl Weighing {
    /// What to put on the scale, in g, in the order of the recipe.
    #[getter]
    fn masses_g(&self) -> Vec<f64> {
        self.0.parts().iter().map(|part| part.weighed.g()).collect()
    }

    /// The total on the scale in g.
    #[getter]
    fn total_g(&self) -> f64 {
        self.0.total().g()
    }

    /// How far each part's share of the bowl is from the recipe, in percent of the share; negative is too little.
    #[getter]
    fn ratio_errors_percent(&self) -> Vec<f64> {
        self.0.parts().iter().map(scale::Weighed::ratio_error_percent).collect()
    }

    /// The largest of them without sign; no other weighing with this total has a smaller one.
    #[getter]
    fn worst_ratio_error_percent(&self) -> f64 {
        self.0.worst_ratio_error_percent()
    }

    /// Parts (counted from 0) that the recipe wants and the scale cannot show.
    #[getter]
    fn vanished(&self) -> Vec<usize> {
        self.0.vanished().collect()
    }

    /// Change of the bowl's strength by rounding, in percentage points w/w.
    ///
    /// ``strengths_ww_percent`` gives the strength of each part in % w/w, as a number or (low, best, high);
    /// missing ones are 0.
    fn strength_shift_percentage_points(&self, strengths_ww_percent: Vec<Stated<MassFraction>>) -> PyResult<f64> {
        let strengths: Vec<_> = strengths_ww_percent.into_iter().map(|s| s.0).collect();
        Ok(self.0.strength_shift(&strengths).map_err(raise)?.percentage_points())
    }

    /// The order on the scale: smallest first, ``last`` (the developer) last.
    ///
    /// Each step is (part, mass to add in g, reading in g).
    #[pyo3(signature = (last = None))]
    fn tare_order(&self, last: Option<usize>) -> Vec<(usize, f64, f64)> {
        self.0.tare_order(last).iter().map(|step| (step.part, step.add.g(), step.reading.g())).collect()
    }

    fn __repr__(&self) -> String {
        format!("<foilwork.mix.Weighing {:?} g>", self.masses_g())
    }
}

/// Round parts to a scale: they add up to the rounded total, and the worst error of ratio is the least possible.
///
/// Args:
///     masses_g: masses of the parts in g.
///     division_g: division of the scale in g.
///
/// Raises:
///     FoilworkError: when there is nothing to weigh, or the division does not suit the bowl.
///
/// Examples:
///     >>> from foilwork.mix import weigh
///     >>> weigh([33.34, 33.33, 33.33], 1).masses_g
///     [34.0, 33.0, 33.0]
///
/// Source:
///     Greedy increments for separable convex allocation (Ibaraki and Katoh 1988, from memory); checked by brute force.
#[pyfunction]
pub fn weigh(masses_g: Vec<f64>, division_g: f64) -> PyResult<Weighing> {
    scale::weigh(&masses(&masses_g)?, mass(division_g)?).map(Weighing).map_err(raise)
}

/// Strength of the mixed bowl: the mass-weighted mean of the strengths of its parts.
///
/// Args:
///     masses_g: masses of the parts in g.
///     strengths_ww_percent: strength of each part in % w/w, as a number or (low, best, high). An additive has 0.
///
/// Returns:
///     Lower bound, best estimate and upper bound in % w/w.
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
pub fn as_applied(masses_g: Vec<f64>, strengths_ww_percent: Vec<Stated<MassFraction>>) -> PyResult<Estimate<f64>> {
    if masses_g.len() != strengths_ww_percent.len() {
        let (parts, given) = (masses_g.len(), strengths_ww_percent.len());
        return Err(crate::error::FoilworkError::new_err(format!(
            "{parts} masses and {given} strengths: give one strength for each part (0 for an additive)"
        )));
    }
    let parts: Vec<_> = masses(&masses_g)?.into_iter().zip(strengths_ww_percent.into_iter().map(|s| s.0)).collect();
    mix::as_applied(&parts).map(Estimate::from).map_err(raise)
}

/// The least that can be weighed in a ratio so that no part's share is off by more than a tolerance.
///
/// Args:
///     ratio: the ratio.
///     division_g: division of the scale in g.
///     tolerance_percent: largest error of a part's share, in percent of that share.
///
/// Returns:
///     The smallest bowl that happens to be within the tolerance, and the mass from which on every bowl is, in g.
///
/// Raises:
///     FoilworkError: for a tolerance below 0.01 %, or a part too small for any scale.
///
/// Examples:
///     >>> from foilwork.mix import Ratio, minimum_bowl
///     >>> minimum_bowl(Ratio("1:1.5"), 1, 5)
///     (5.0, 50.0)
#[pyfunction]
pub fn minimum_bowl(ratio: &Ratio, division_g: f64, tolerance_percent: f64) -> PyResult<(f64, f64)> {
    let tolerance = Share::from_percent(tolerance_percent).map_err(raise)?;
    let bowl = mix::minimum_bowl(&ratio.0, mass(division_g)?, tolerance).map_err(raise)?;
    Ok((bowl.first.g(), bowl.always_from.g()))
}

/// The least a scale can weigh of one thing so that rounding is off by no more than a tolerance.
///
/// Args:
///     division_g: division of the scale in g.
///     tolerance_percent: largest error in percent of the mass.
///
/// Returns:
///     The mass in g: half a division over the tolerance.
///
/// Raises:
///     FoilworkError: for a tolerance below 0.01 %, or a division of 0 g.
///
/// Examples:
///     >>> from foilwork.mix import minimum_mass
///     >>> minimum_mass(1, 5)
///     10.0
#[pyfunction]
pub fn minimum_mass(division_g: f64, tolerance_percent: f64) -> PyResult<f64> {
    let tolerance = Share::from_percent(tolerance_percent).map_err(raise)?;
    Ok(mix::minimum_mass(mass(division_g)?, tolerance).map_err(raise)?.g())
}

/// One fresh bowl of a :class:`BowlPlan`. Times count in min from the start of the first mixing.
#[pyclass(frozen, get_all, module = "foilwork.mix")]
pub struct Bowl {
    /// Mass to mix in g, residue included.
    mixed_g: f64,
    /// Mass that goes onto the hair in g.
    applied_g: f64,
    /// When to start mixing.
    mix_at_min: f64,
    /// When it is mixed and application goes on.
    ready_at_min: f64,
    /// When the last of it is on the hair.
    empty_at_min: f64,
    /// When it must no longer be used.
    use_by_min: f64,
}

#[pymethods]
impl Bowl {
    fn __repr__(&self) -> String {
        format!(
            "<foilwork.mix.Bowl {:.1} g, mix at {:.0} min, use by {:.0} min>",
            self.mixed_g, self.mix_at_min, self.use_by_min
        )
    }
}

/// Fresh bowls in the order of mixing; made by :func:`bowls`.
#[pyclass(frozen, module = "foilwork.mix")]
pub struct BowlPlan(mix::BowlPlan);

#[pymethods]
impl BowlPlan {
    /// The bowls, all of one size.
    #[getter]
    fn bowls(&self) -> Vec<Bowl> {
        let bowl = |b: &mix::FreshBowl| Bowl {
            mixed_g: b.mixed.g(),
            applied_g: b.applied.g(),
            mix_at_min: b.mix_at.min(),
            ready_at_min: b.ready_at.min(),
            empty_at_min: b.empty_at.min(),
            use_by_min: b.use_by.min(),
        };
        self.0.bowls().iter().map(bowl).collect()
    }

    /// Everything mixed in g, which is what the bowls cost.
    #[getter]
    fn mixed_g(&self) -> f64 {
        self.0.mixed().g()
    }

    /// Everything that reaches the hair in g.
    #[getter]
    fn applied_g(&self) -> f64 {
        self.0.applied().g()
    }

    /// Mixed and thrown away, in g.
    #[getter]
    fn leftover_g(&self) -> f64 {
        self.0.leftover().g()
    }

    /// The recipe of each bowl: ``base`` scaled so that base and additives together fill it.
    #[pyo3(signature = (base, additives = vec![]), text_signature = "($self, base, additives=())")]
    fn recipes(&self, base: &Recipe, additives: Vec<Additive>) -> PyResult<Vec<Recipe>> {
        let additives: Vec<mix::Addition> = additives.into_iter().map(|a| a.0).collect();
        let recipes = self.0.recipes(&base.0, &additives).map_err(raise)?;
        Ok(recipes.into_iter().map(Recipe).collect())
    }

    /// What each product loses: (product, mass put into bowls, mass of that thrown away), in g.
    #[pyo3(signature = (base, additives = vec![]), text_signature = "($self, base, additives=())")]
    fn leftovers(&self, base: &Recipe, additives: Vec<Additive>) -> PyResult<Vec<(String, f64, f64)>> {
        let additives: Vec<mix::Addition> = additives.into_iter().map(|a| a.0).collect();
        let leftovers = self.0.leftovers(&base.0, &additives).map_err(raise)?;
        Ok(leftovers.into_iter().map(|l| (l.product, l.used.g(), l.wasted.g())).collect())
    }

    fn __repr__(&self) -> String {
        format!("<foilwork.mix.BowlPlan {} bowls, {:.1} g>", self.0.bowls().len(), self.mixed_g())
    }
}

/// Number, size and mixing times of fresh bowls.
///
/// Args:
///     total_g: product that must reach the hair, in g.
///     capacity_g: the most one bowl holds, in g.
///     working_life_min: how long a mixed bowl may be used, in min, from the product's directions.
///     pace_g_per_min: how fast product goes onto the hair, in g/min.
///     mixing_min: time application stands still for each mixing, in min.
///     residue_g: what stays behind in bowl and brush, in g.
///
/// Raises:
///     FoilworkError: when a bowl could put nothing on the hair, or hundreds would be needed.
///
/// Examples:
///     >>> from foilwork.mix import bowls
///     >>> plan = bowls(200, 120, 40, 2)
///     >>> len(plan.bowls), round(plan.mixed_g)
///     (3, 200)
#[pyfunction]
#[pyo3(signature = (total_g, capacity_g, working_life_min, pace_g_per_min, *, mixing_min = 0.0, residue_g = 0.0))]
pub fn bowls(
    total_g: f64,
    capacity_g: f64,
    working_life_min: f64,
    pace_g_per_min: f64,
    mixing_min: f64,
    residue_g: f64,
) -> PyResult<BowlPlan> {
    let minutes = |min| Duration::from_min(min).map_err(raise);
    let pace = Pace::from_g_per_min(pace_g_per_min).map_err(raise)?;
    let request = BowlRequest::new(mass(total_g)?, mass(capacity_g)?, minutes(working_life_min)?, pace)
        .mixing(minutes(mixing_min)?)
        .residue(mass(residue_g)?);
    mix::bowls(&request).map(BowlPlan).map_err(raise)
}
