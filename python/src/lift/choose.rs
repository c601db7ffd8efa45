//! Wrappers of `foilwork::lift`: which strength, how many visits.

use super::{
    belief::Belief,
    lightening::Lightening,
    situation::{Situation, minutes},
};
use crate::{
    answer::answer,
    bounds::{Estimate, Stated},
    colour::{AnyLevel, StatedLevel},
    error::raise,
    sequence::Sequence,
};
use foilwork::{
    colour::Level,
    lift,
    quantity::{MassFraction, Share},
    source::Interval,
};
use pyo3::prelude::*;

answer! {
    in "foilwork.lift";
    /// How sure a strength is to reach the target within its time.
    StrengthChance {
        /// The strength on the hair, in % w/w.
        on_hair_ww_percent: Estimate<f64>,
        /// The chance in percent that the target is reached within the limit, with what it is from either bound of the start.
        chance_percent: Estimate<f64>,
        /// Level at the limit: median and 80 % interval.
        level: Estimate<f64>,
    }
}

impl From<&lift::StrengthChance> for StrengthChance {
    fn from(row: &lift::StrengthChance) -> Self {
        Self {
            on_hair_ww_percent: row.on_hair.into(),
            chance_percent: Estimate::by(row.chance, Share::percent),
            level: Estimate::by(row.level, Level::number),
        }
    }
}

/// The chance that each strength reaches the target within the limit, weakest first.
///
/// Args:
///     belief: what is known of this hair.
///     situation: the mixture and the hair; its strength is replaced by each of those given.
///     on_hair_ww_percent: strengths on the hair, in % w/w, each a number or its bounds.
///     start_level: the level now, or its bounds as far as its reading may be off.
///     target_level: the level wanted.
///     limit_min: the longest that a strand may carry the mixture.
///
/// Returns:
///     A row for each strength.
///
/// Raises:
///     FoilworkError: a value out of range.
///
/// Examples:
///     >>> from foilwork.lift import Belief, Situation, chances, gentlest
///     >>> rows = chances(Belief(), Situation(4), [2, 4, 6], start_level=5, target_level=7, limit_min=45)
///     >>> rows[0].chance_percent.best < rows[2].chance_percent.best
///     True
///     >>> gentlest(rows, 99.9) is None
///     True
#[pyfunction]
#[pyo3(signature = (belief, situation, on_hair_ww_percent, *, start_level, target_level, limit_min))]
pub fn chances(
    belief: Belief,
    situation: Situation,
    on_hair_ww_percent: Sequence<Stated<MassFraction>>,
    start_level: StatedLevel,
    target_level: AnyLevel,
    limit_min: f64,
) -> PyResult<Vec<StrengthChance>> {
    let on_hair: Vec<Interval<MassFraction>> = on_hair_ww_percent.0.iter().map(|stated| stated.0).collect();
    let levels = (start_level.0, target_level.0);
    let rows = lift::chances(&belief.core, &situation.core()?, &on_hair, levels, minutes(limit_min)?);
    Ok(rows.iter().map(Into::into).collect())
}

/// The gentlest strength that reaches the target within the limit with at least this chance, from the best estimate of the start.
///
/// Args:
///     rows: what ``chances`` gave.
///     wanted_percent: the chance wanted, in percent.
///
/// Returns:
///     The row, or ``None`` when even the strongest does not.
///
/// Raises:
///     FoilworkError: the chance is not 0 to 100 %.
///
/// Examples:
///     >>> from foilwork.lift import Belief, Situation, chances, gentlest
///     >>> rows = chances(Belief(), Situation(4), [2, 4, 6], start_level=5, target_level=6, limit_min=45)
///     >>> gentlest(rows, 80).on_hair_ww_percent.best
///     2.0
#[pyfunction]
pub fn gentlest(rows: Sequence<StrengthChance>, wanted_percent: f64) -> PyResult<Option<StrengthChance>> {
    let wanted = Share::from_percent(wanted_percent).map_err(raise)?.percent();
    Ok(rows.0.into_iter().find(|row| row.chance_percent.0[1] >= wanted))
}

answer! {
    in "foilwork.lift";
    /// What one of several equal applications brings.
    Visit {
        /// Weeks since the visit before, by what the hair has been through by then; ``None`` for the first.
        after_weeks: Option<Estimate<f64>>,
        /// What those weeks rest on: ``"common-practice"`` where the strain is slight or usual, ``"assumed"`` beyond it.
        after_basis: Option<String>,
        /// What has grown since the first visit, in cm; ``None`` for the first.
        regrowth_cm: Option<Estimate<f64>>,
        /// Level after it: median and 80 % interval.
        level: Estimate<f64>,
        /// The chance in percent that the target is reached with it, with what it is from either bound of the start.
        chance_percent: Estimate<f64>,
        /// What all visits so far do to the fibre: ``"slight"``, ``"usual"``, ``"high"`` or ``"severe"``.
        strain: String,
        /// The same as an index: 1 for 40 min at 4 % on the hair.
        strain_index: Estimate<f64>,
        /// What level, chance and strain rest on: ``"assumed"``, for the levers of the law are.
        basis: String,
    }
}

/// A series of visits with the same mixture and time, until the target is reached with the wanted chance.
///
/// Args:
///     start: the hair and the mixture.
///     target_level: the level wanted.
///     each_min: how long each application lies on the hair.
///     wanted_percent: the chance wanted, in percent.
///     most: the most visits.
///
/// Returns:
///     The visits, with the weeks between them by the strain so far: common practice after a usual application, assumed
///     beyond it. Waiting does not undo oxidation: test elasticity before each.
///
/// Raises:
///     FoilworkError: a value out of range.
///
/// Examples:
///     >>> from foilwork.lift import Lightening, Situation, series
///     >>> visits = series(Lightening(Situation(3), 3), 9, each_min=40)
///     >>> visits[1].level.best > visits[0].level.best
///     True
///     >>> visits[1].after_weeks, visits[1].strain
///     (Bounds(low=2.0, best=4.0, high=6.0), 'high')
#[pyfunction]
#[pyo3(signature = (start, target_level, *, each_min, wanted_percent = 80.0, most = 3))]
pub fn series(
    start: Lightening,
    target_level: AnyLevel,
    each_min: f64,
    wanted_percent: f64,
    most: u8,
) -> PyResult<Vec<Visit>> {
    let wanted = Share::from_percent(wanted_percent).map_err(raise)?;
    let visits = lift::series(&start.core, target_level.0, minutes(each_min)?, wanted, most);
    Ok(visits.into_iter().map(Into::into).collect())
}

impl From<lift::Visit> for Visit {
    fn from(visit: lift::Visit) -> Self {
        Self {
            after_weeks: visit.after.map(Into::into),
            after_basis: visit.after_basis.map(|basis| basis.code().to_owned()),
            regrowth_cm: visit.regrowth.map(Into::into),
            level: Estimate::by(visit.level, Level::number),
            chance_percent: Estimate::by(visit.chance, Share::percent),
            strain: visit.strain.code().to_owned(),
            strain_index: Estimate(visit.strain_index.to_array()),
            basis: visit.basis.code().to_owned(),
        }
    }
}
